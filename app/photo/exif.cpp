#include "app/photo/exif.hpp"

#include <cstddef>
#include <cstdint>

namespace sillwalk::app {

namespace {

using namespace std::string_view_literals;

constexpr std::uint32_t orientation_tag = 0x0112, type_short = 3;
constexpr std::size_t entry_size = 12;

/// Whole numbers at an offset of a block, in the block's byte order; empty beyond its end.
struct Block {
    std::string_view bytes;
    bool little = false;

    [[nodiscard]] std::optional<std::uint32_t> number(std::size_t offset, std::size_t size) const {
        if (offset > bytes.size() || bytes.size() - offset < size) return std::nullopt;
        std::uint32_t value = 0;
        for (std::size_t i = 0; i < size; ++i) {
            const std::size_t at = offset + (little ? size - 1 - i : i);
            value = value << 8U | static_cast<std::uint8_t>(bytes[at]);
        }
        return value;
    }
};

std::optional<Orientation> orientation_of_tiff(std::string_view tiff) {
    const std::string_view order = tiff.substr(0, 2);
    if (order != "II" && order != "MM") return std::nullopt;
    const Block block{tiff, order == "II"};
    if (block.number(2, 2) != 42U) return std::nullopt;
    const auto directory = block.number(4, 4);
    if (!directory) return std::nullopt;
    const auto count = block.number(*directory, 2);
    for (std::uint32_t i = 0; count && i < *count; ++i) {
        const std::size_t entry = std::size_t{*directory} + 2 + entry_size * i;
        const auto tag = block.number(entry, 2);
        if (!tag) return std::nullopt;
        if (*tag != orientation_tag) continue;
        const auto value = block.number(entry + 8, 2);
        const bool is_one_short = block.number(entry + 2, 2) == type_short && block.number(entry + 4, 4) == 1U;
        if (!is_one_short || !value || *value < 1 || *value > 8) return std::nullopt;
        return static_cast<Orientation>(*value);
    }
    return std::nullopt;
}

}  // namespace

std::optional<Orientation> exif_orientation(std::string_view jpeg) {
    const Block file{jpeg, false};
    if (file.number(0, 2) != 0xFFD8U) return std::nullopt;
    constexpr std::string_view exif_head = "Exif\0\0"sv;
    std::size_t at = 2;
    for (;;) {
        while (file.number(at, 2) == 0xFFFFU) ++at;  // fill bytes before a marker
        const auto marker = file.number(at, 2);
        const auto length = file.number(at + 2, 2);
        if (!marker || !length || *marker < 0xFFC0U || *length < 2) return std::nullopt;
        if (*marker == 0xFFDAU || *marker == 0xFFD9U) return std::nullopt;  // the picture itself begins, or ends
        const std::string_view body = jpeg.substr(at + 4).substr(0, *length - 2);
        if (*marker == 0xFFE1U && body.substr(0, exif_head.size()) == exif_head) {
            return orientation_of_tiff(body.substr(exif_head.size()));
        }
        at += 2 + std::size_t{*length};
    }
}

}  // namespace sillwalk::app
