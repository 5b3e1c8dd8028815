#pragma once
/// Points, rectangles and colours of the screen, in framebuffer pixels, y downwards. No library types.

#include <algorithm>
#include <cstdint>

namespace sillwalk::ui {

struct Point {
    float x = 0;
    float y = 0;
    friend bool operator==(const Point&, const Point&) = default;
};
inline Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
inline Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
inline Point operator*(Point a, float factor) {
    return {a.x * factor, a.y * factor};
}

struct Rect {
    float x0 = 0;
    float y0 = 0;
    float x1 = 0;
    float y1 = 0;
    friend bool operator==(const Rect&, const Rect&) = default;

    [[nodiscard]] float width() const { return x1 - x0; }
    [[nodiscard]] float height() const { return y1 - y0; }
    [[nodiscard]] Point center() const { return {(x0 + x1) / 2, (y0 + y1) / 2}; }
    [[nodiscard]] bool empty() const { return x1 <= x0 || y1 <= y0; }
    [[nodiscard]] bool contains(Point p) const { return p.x >= x0 && p.x < x1 && p.y >= y0 && p.y < y1; }
    [[nodiscard]] Rect intersected(const Rect& other) const {
        return {std::max(x0, other.x0), std::max(y0, other.y0), std::min(x1, other.x1), std::min(y1, other.y1)};
    }
    [[nodiscard]] bool overlaps(const Rect& other) const { return !intersected(other).empty(); }
    [[nodiscard]] Rect inset(float dx, float dy) const { return {x0 + dx, y0 + dy, x1 - dx, y1 - dy}; }
    [[nodiscard]] Rect inset(float d) const { return inset(d, d); }
    [[nodiscard]] Rect moved(float dx, float dy) const { return {x0 + dx, y0 + dy, x1 + dx, y1 + dy}; }

    /// Cut a strip off this rectangle and return it; `gap` more is dropped between the two.
    Rect cut_left(float size, float gap = 0) {
        const Rect strip{x0, y0, x0 + size, y1};
        x0 += size + gap;
        return strip;
    }
    Rect cut_right(float size, float gap = 0) {
        const Rect strip{x1 - size, y0, x1, y1};
        x1 -= size + gap;
        return strip;
    }
    Rect cut_top(float size, float gap = 0) {
        const Rect strip{x0, y0, x1, y0 + size};
        y0 += size + gap;
        return strip;
    }
    Rect cut_bottom(float size, float gap = 0) {
        const Rect strip{x0, y1 - size, x1, y1};
        y1 -= size + gap;
        return strip;
    }
};

/// sRGB with straight alpha, 8 bits each.
struct Color {
    std::uint8_t r = 0;
    std::uint8_t g = 0;
    std::uint8_t b = 0;
    std::uint8_t a = 255;
    friend bool operator==(const Color&, const Color&) = default;
    [[nodiscard]] constexpr Color with_alpha(std::uint8_t alpha) const { return {r, g, b, alpha}; }
};
/// From 0xRRGGBB.
[[nodiscard]] constexpr Color rgb(std::uint32_t code) {
    return {static_cast<std::uint8_t>(code >> 16 & 255U), static_cast<std::uint8_t>(code >> 8 & 255U),
            static_cast<std::uint8_t>(code & 255U), 255};
}

}  // namespace sillwalk::ui
