#pragma once
/// Where drawings go: the screen, or a page of the hand-over. Drawings are made of these few strokes only,
/// so that screen and sheet cannot disagree.

#include "app/ui/draw/type_style.hpp"
#include "app/ui/geometry.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <span>
#include <string_view>

namespace sillwalk::ui {

struct TextStyle {
    TextRole role = TextRole::body;
    Weight weight = Weight::regular;
    Color color;
    Align align = Align::left;
};

/// All that decides how a shape looks, but for where it stands. Each kind of shape has its own meaning of the sizes.
struct ShapeKey {
    enum Kind : std::uint32_t { filled_box, box, disc, ring, dashed_box, hatching, tape, icon, mark };
    Kind kind = filled_box;
    std::uint32_t which = 0;  ///< icon, mark, or how far a tape is filled
    std::array<float, 6> sizes{};
    Color ink{}, ground{};
};

class Canvas {
public:
    virtual ~Canvas() = default;

    virtual void line(Point from, Point to, Color color, float width) = 0;
    virtual void polyline(std::span<const Point> points, Color color, float width, bool closed = false) = 0;
    virtual void fill_polygon(std::span<const Point> convex, Color color) = 0;
    virtual void fill_rect(const Rect& rect, Color color, float radius = 0) = 0;
    /// The stroke lies inside the rectangle.
    virtual void stroke_rect(const Rect& rect, Color color, float width, float radius = 0) = 0;
    virtual void fill_circle(Point center, float radius, Color color) = 0;
    /// The stroke lies inside the circle.
    virtual void stroke_circle(Point center, float radius, Color color, float width) = 0;
    /// `at.x` is the left end, middle or right end by style.align; `at.y` is the baseline.
    virtual void text(Point at, std::string_view utf8, const TextStyle& style) = 0;
    /// Draws a shape about `at`, no part of it further from there than `reach`. A canvas may remember it by its key.
    virtual void shape(const ShapeKey& key, Point at, float reach, const std::function<void(Point)>& draw) {
        (void)key;
        (void)reach;
        draw(at);
    }
    virtual void push_clip(const Rect& rect) = 0;
    virtual void pop_clip() = 0;

    [[nodiscard]] virtual float text_width(std::string_view utf8, TextRole role, Weight weight) const = 0;
    [[nodiscard]] virtual float text_size(TextRole role) const = 0;
    [[nodiscard]] float cap_height(TextRole role) const { return roboto_cap_ratio * text_size(role); }
    /// Text whose capitals stand symmetric to `middle.y`.
    void text_centered(Point middle, std::string_view utf8, const TextStyle& style) {
        text({middle.x, middle.y + cap_height(style.role) / 2}, utf8, style);
    }
};

}  // namespace sillwalk::ui
