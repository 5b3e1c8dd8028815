#include "app/bundle/uuid.hpp"

#include <boost/uuid/name_generator_sha1.hpp>
#include <boost/uuid/string_generator.hpp>
#include <boost/uuid/uuid.hpp>
#include <boost/uuid/uuid_io.hpp>

namespace sillwalk::app {

std::string uuid_v7(std::int64_t unix_ms, const std::array<std::uint8_t, 10>& random) {
    boost::uuids::uuid uuid{};
    for (int i = 0; i < 6; ++i) uuid.data[i] = static_cast<std::uint8_t>(unix_ms >> (8 * (5 - i)));
    for (int i = 0; i < 10; ++i) uuid.data[6 + i] = random[static_cast<std::size_t>(i)];
    uuid.data[6] = static_cast<std::uint8_t>(0x70 | (uuid.data[6] & 0x0f));
    uuid.data[8] = static_cast<std::uint8_t>(0x80 | (uuid.data[8] & 0x3f));
    return boost::uuids::to_string(uuid);
}

std::string uuid_v5(std::string_view name_space, std::string_view name) {
    const boost::uuids::uuid space = boost::uuids::string_generator()(std::string(name_space));
    return boost::uuids::to_string(boost::uuids::name_generator_sha1(space)(std::string(name)));
}

bool is_uuid(std::string_view text) {
    if (text.size() != 36) return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool dash = i == 8 || i == 13 || i == 18 || i == 23;
        const bool hex = (text[i] >= '0' && text[i] <= '9') || (text[i] >= 'a' && text[i] <= 'f');
        if (dash ? text[i] != '-' : !hex) return false;
    }
    return true;
}

}  // namespace sillwalk::app
