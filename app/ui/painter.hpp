#pragma once
/// The screen's canvas: owns the drawing library's context, the fonts and the draw list of one frame.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/metrics.hpp"
#include "app/ui/textures.hpp"

#include <functional>
#include <memory>
#include <string_view>
#include <vector>

struct ImDrawData;

namespace sillwalk::ui {

class Fonts;
struct PartStart;
struct DrawnPart;

class Painter {
public:
    explicit Painter(std::string_view texts);
    ~Painter();
    Painter(const Painter&) = delete;
    Painter& operator=(const Painter&) = delete;

    void begin(const FrameInput& input, const Metrics& metrics, Textures& textures);
    [[nodiscard]] const ImDrawData* end();
    [[nodiscard]] Canvas& canvas() const;
    [[nodiscard]] const Fonts& fonts() const;
    void image(TextureId texture, const Rect& rect, Point uv0, Point uv1);
    /// What is drawn between push_layers and lower_layer lies above what is drawn from there to pop_layers. They nest.
    void push_layers();
    void lower_layer();
    void pop_layers();
    /// See drawn_part.hpp.
    [[nodiscard]] PartStart start_part(bool whole);
    [[nodiscard]] bool end_part(const PartStart& start, DrawnPart& part);
    void draw_part(const DrawnPart& part, float down);
    [[nodiscard]] std::vector<char32_t> missing(std::string_view utf8) const;

private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace sillwalk::ui
