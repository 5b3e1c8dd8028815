#include "app/storage/ballast.hpp"

#include "app/storage/files.hpp"

#include <cstdio>

namespace sillwalk::app {

namespace {
constexpr std::int64_t room_beside = 4;
}

bool Ballast::keep() {
    if (there()) return true;
    if (free_bytes(path_) < room_beside * bytes_) return false;
    if (fill_file(path_, bytes_)) return true;
    std::remove(path_.c_str());  // half a ballast would only take space
    return false;
}

bool Ballast::drop() {
    return there() && std::remove(path_.c_str()) == 0;
}

bool Ballast::there() const {
    return file_exists(path_);
}

}  // namespace sillwalk::app
