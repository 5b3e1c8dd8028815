#include "app/core/ids.hpp"

#include "app/bundle/uuid.hpp"

namespace sillwalk::app {

void count_up(RandomBytes& bytes, std::size_t from_the_right) {
    for (std::size_t i = bytes.size() - from_the_right; i-- > 0;) {
        if (++bytes[i] != 0) return;
    }
}

std::string IdMaker::next() {
    const std::string id = uuid_v7(utc_ms_, random_);
    count_up(random_);
    return id;
}

}  // namespace sillwalk::app
