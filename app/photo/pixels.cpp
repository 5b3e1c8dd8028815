#include "app/photo/pixels.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace sillwalk::app {

namespace {

constexpr std::size_t channels = 3;

std::size_t index(int width, int x, int y) {
    return (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) * channels;
}

struct Place {
    int x = 0, y = 0;
};

/// Where the pixel of the upright picture lies in the stored one.
Place stored_place(Orientation orientation, const Pixels& stored, int x, int y) {
    const int right = stored.width - 1;
    const int bottom = stored.height - 1;
    switch (orientation) {
        case Orientation::top_left:
            return {x, y};
        case Orientation::top_right:
            return {right - x, y};
        case Orientation::bottom_right:
            return {right - x, bottom - y};
        case Orientation::bottom_left:
            return {x, bottom - y};
        case Orientation::left_top:
            return {y, x};
        case Orientation::right_top:
            return {y, bottom - x};
        case Orientation::right_bottom:
            return {right - y, bottom - x};
        case Orientation::left_bottom:
            return {right - y, x};
    }
    return {x, y};
}

/// A narrower picture of the same height. Weights are whole numbers: shares of `from` parts of a new pixel.
Pixels narrowed(const Pixels& pixels, int width) {
    Pixels out{width, pixels.height, {}};
    out.rgb.resize(index(width, 0, pixels.height));
    const std::int64_t from = pixels.width;
    for (int x = 0; x < width; ++x) {
        const std::int64_t start = x * from;
        const std::int64_t end = start + from;
        const int first = static_cast<int>(start / width);
        const int last = static_cast<int>((end - 1) / width);
        for (int y = 0; y < pixels.height; ++y) {
            std::int64_t sum[channels] = {};
            for (int source = first; source <= last; ++source) {
                const std::int64_t left = std::int64_t{source} * width;
                const std::int64_t weight = std::min(end, left + width) - std::max(start, left);
                const std::uint8_t* pixel = &pixels.rgb[index(pixels.width, source, y)];
                for (std::size_t c = 0; c < channels; ++c) sum[c] += weight * pixel[c];
            }
            std::uint8_t* made = &out.rgb[index(width, x, y)];
            for (std::size_t c = 0; c < channels; ++c) made[c] = static_cast<std::uint8_t>((sum[c] + from / 2) / from);
        }
    }
    return out;
}

}  // namespace

Pixels upright(const Pixels& stored, Orientation orientation) {
    const bool turned = orientation >= Orientation::left_top;
    Pixels out{turned ? stored.height : stored.width, turned ? stored.width : stored.height, {}};
    out.rgb.resize(stored.rgb.size());
    for (int y = 0; y < out.height; ++y) {
        for (int x = 0; x < out.width; ++x) {
            const Place from = stored_place(orientation, stored, x, y);
            std::copy_n(&stored.rgb[index(stored.width, from.x, from.y)], channels, &out.rgb[index(out.width, x, y)]);
        }
    }
    return out;
}

Pixels shrunk(Pixels pixels, int longest_px) {
    EXPECT_CONTRACT(longest_px > 0);
    const int longest = std::max(pixels.width, pixels.height);
    if (longest <= longest_px) return pixels;
    const auto scaled = [&](int edge) {
        return static_cast<int>(std::max<std::int64_t>(1, (std::int64_t{edge} * longest_px + longest / 2) / longest));
    };
    const int width = scaled(pixels.width);
    const int height = scaled(pixels.height);
    // Height by the same rule: lying on its side, rows are columns.
    const Pixels narrow = upright(narrowed(pixels, width), Orientation::left_top);
    return upright(narrowed(narrow, height), Orientation::left_top);
}

}  // namespace sillwalk::app
