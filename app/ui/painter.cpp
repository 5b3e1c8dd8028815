#include "app/ui/painter.hpp"

#include "app/ui/drawn_part.hpp"
#include "app/ui/fonts.hpp"
#include "app/ui/glyphs.hpp"
#include "app/ui/shape_store.hpp"

#include <algorithm>
#include <bit>
#include <cfloat>
#include <cmath>
#include <cstdint>
#include <list>
#include <vector>

namespace sillwalk::ui {

namespace {

ImVec2 vec(Point p) {
    return {p.x, p.y};
}
ImU32 packed(Color c) {
    return IM_COL32(c.r, c.g, c.b, c.a);
}

constexpr float fringe = 2;  ///< pixels by which a soft edge lies outside of its shape
/// How far a stroke may lie beside its points: the library cuts mitres at ten times half the width.
float corner_reach(float width) {
    return 5 * (width + 2 * fringe);
}
Rect bounds(std::span<const Point> points) {
    Rect box{FLT_MAX, FLT_MAX, -FLT_MAX, -FLT_MAX};
    for (const Point p : points) {
        box = {std::min(box.x0, p.x), std::min(box.y0, p.y), std::max(box.x1, p.x), std::max(box.y1, p.y)};
    }
    return box;
}
/// As std::round, which is a call of the library for each letter.
float whole_pixel(float at) {
    return static_cast<float>(static_cast<int>(at >= 0 ? at + 0.5F : at - 0.5F));
}
Rect around(Point center, float radius) {
    return {center.x - radius, center.y - radius, center.x + radius, center.y + radius};
}

}  // namespace

/// Implements the strokes on an ImDrawList. Anti-aliasing is the list's own one-pixel fringe.
class ListCanvas final : public Canvas {
public:
    explicit ListCanvas(const Fonts& fonts) : fonts_(fonts) {}

    void start(ImDrawList* list, const Metrics& metrics) {
        list_ = list;
        metrics_ = &metrics;
        shapes_.begin(*list);
    }

    void line(Point from, Point to, Color color, float width) override {
        const Point ends[] = {from, to};
        if (out_of_view(bounds(ends), corner_reach(width))) return;
        const ImVec2 points[] = {vec(from), vec(to)};
        list_->AddPolyline(points, 2, packed(color), ImDrawFlags_None, width);
    }
    void polyline(std::span<const Point> points, Color color, float width, bool closed) override {
        if (out_of_view(bounds(points), corner_reach(width))) return;
        copy(points);
        list_->AddPolyline(scratch_.data(), static_cast<int>(scratch_.size()), packed(color),
                           closed ? ImDrawFlags_Closed : ImDrawFlags_None, width);
    }
    void fill_polygon(std::span<const Point> convex, Color color) override {
        if (out_of_view(bounds(convex), corner_reach(1))) return;
        copy(convex);
        float twice_area = 0;
        for (std::size_t i = 0; i < scratch_.size(); ++i) {
            const ImVec2 a = scratch_[i];
            const ImVec2 b = scratch_[(i + 1) % scratch_.size()];
            twice_area += a.x * b.y - b.x * a.y;
        }
        // The list's fringe lies outside only for clockwise points (y downwards).
        if (twice_area < 0) std::reverse(scratch_.begin(), scratch_.end());
        list_->AddConvexPolyFilled(scratch_.data(), static_cast<int>(scratch_.size()), packed(color));
    }
    void fill_rect(const Rect& rect, Color color, float radius) override {
        if (rect.empty() || out_of_view(rect, fringe)) return;
        if (radius <= 0) return list_->AddRectFilled({rect.x0, rect.y0}, {rect.x1, rect.y1}, packed(color));
        const Point size{rect.width(), rect.height()};
        shape_at({ShapeKey::filled_box, 0, {size.x, size.y, radius}, color, {}}, {rect.x0, rect.y0},
                 [&](Point at) { list_->AddRectFilled(vec(at), vec(at + size), packed(color), radius); });
    }
    void stroke_rect(const Rect& rect, Color color, float width, float radius) override {
        if (out_of_view(rect, corner_reach(width))) return;
        // AddRect itself moves the path inwards by half a pixel.
        const Rect path = rect.inset(width / 2 - 0.5F);
        const Point size{path.width(), path.height()};
        const float round = std::max(0.0F, radius - width / 2);
        shape_at({ShapeKey::box, 0, {size.x, size.y, round, width}, color, {}}, {path.x0, path.y0}, [&](Point at) {
            list_->AddRect(vec(at), vec(at + size), packed(color), round, ImDrawFlags_None, width);
        });
    }
    void fill_circle(Point center, float radius, Color color) override {
        if (out_of_view(around(center, radius), fringe)) return;
        shape_at({ShapeKey::disc, 0, {radius}, color, {}}, center,
                 [&](Point at) { list_->AddCircleFilled(vec(at), radius, packed(color)); });
    }
    void stroke_circle(Point center, float radius, Color color, float width) override {
        if (out_of_view(around(center, radius), corner_reach(width))) return;
        // AddCircle draws half a pixel inside of the radius that it is given.
        shape_at({ShapeKey::ring, 0, {radius, width}, color, {}}, center,
                 [&](Point at) { list_->AddCircle(vec(at), radius - width / 2 + 0.5F, packed(color), 0, width); });
    }
    void shape(const ShapeKey& key, Point at, float reach, const std::function<void(Point)>& draw) override {
        if (!out_of_view(around(at, reach), fringe)) shape_at(key, at, draw);
    }
    void text(Point at, std::string_view utf8, const TextStyle& style) override;
    void push_clip(const Rect& rect) override {
        list_->PushClipRect({rect.x0, rect.y0}, {std::max(rect.x0, rect.x1), std::max(rect.y0, rect.y1)}, true);
    }
    void pop_clip() override { list_->PopClipRect(); }

    [[nodiscard]] float text_width(std::string_view utf8, TextRole role, Weight weight) const override {
        return fonts_.text_width(utf8, role, weight);
    }
    [[nodiscard]] float text_size(TextRole role) const override { return metrics_->text_size(role); }

private:
    /// What lies wholly outside of the clip rectangle costs vertices and shows nothing.
    [[nodiscard]] bool out_of_view(const Rect& box, float margin) const {
        if (keeping_) return false;  // a shape is kept whole
        const ImVec4& clip = list_->_CmdHeader.ClipRect;
        return box.x1 + margin < clip.x || box.y1 + margin < clip.y || box.x0 - margin > clip.z ||
               box.y0 - margin > clip.w;
    }
    /// A shape within a shape is a part of it.
    template <class Draw>
    void shape_at(const ShapeKey& key, Point at, const Draw& draw) {
        if (keeping_) return draw(at);
        const Point whole{std::floor(at.x), std::floor(at.y)};
        const Point fraction = at - whole;
        if (shapes_.draw(*list_, key, fraction, whole)) return;
        shapes_.start(*list_);
        keeping_ = true;
        draw(fraction);
        keeping_ = false;
        shapes_.keep(*list_, key, fraction, whole);
    }
    /// As PrimRectUV, without a call for each letter.
    void quad(const Rect& box, const ImFontGlyph& glyph, ImU32 color) {
        constexpr ImDrawIdx corners[] = {0, 1, 2, 0, 2, 3};
        const auto first = static_cast<ImDrawIdx>(list_->_VtxCurrentIdx);
        for (std::size_t i = 0; i < 6; ++i) list_->_IdxWritePtr[i] = static_cast<ImDrawIdx>(first + corners[i]);
        ImDrawVert* to = list_->_VtxWritePtr;
        to[0] = {{box.x0, box.y0}, {glyph.U0, glyph.V0}, color};
        to[1] = {{box.x1, box.y0}, {glyph.U1, glyph.V0}, color};
        to[2] = {{box.x1, box.y1}, {glyph.U1, glyph.V1}, color};
        to[3] = {{box.x0, box.y1}, {glyph.U0, glyph.V1}, color};
        list_->_VtxWritePtr += 4;
        list_->_IdxWritePtr += 6;
        list_->_VtxCurrentIdx += 4;
    }
    void copy(std::span<const Point> points) {
        scratch_.clear();
        for (const Point p : points) scratch_.push_back(vec(p));
    }

    const Fonts& fonts_;
    ImDrawList* list_ = nullptr;
    const Metrics* metrics_ = nullptr;
    std::vector<ImVec2> scratch_;
    ShapeStore shapes_;
    bool keeping_ = false;
};

/// Glyphs stand on whole pixels (crisp) while the pen moves by exact advances (even).
void ListCanvas::text(Point at, std::string_view utf8, const TextStyle& style) {
    if (utf8.empty() || style.color.a == 0) return;
    const ImFont& font = fonts_.font(style.role, style.weight);
    const float top = std::round(at.y - font.Ascent);
    const float reach = font.FontSize;  // accents and descenders stay within a line above and below
    if (out_of_view({-FLT_MAX, top, FLT_MAX, top + font.FontSize}, reach)) return;
    float pen = at.x;
    if (style.align != Align::left) {
        const float width = text_width(utf8, style.role, style.weight);
        pen -= style.align == Align::center ? width / 2 : width;
    }
    const ImU32 color = packed(style.color);
    const auto most = static_cast<int>(utf8.size());
    list_->PrimReserve(most * 6, most * 4);
    int drawn = 0;
    for (std::size_t i = 0; i < utf8.size();) {
        const ImFontGlyph& glyph = glyph_of(font, next_code_point(utf8, i));
        if (glyph.Visible != 0U) {
            const float x = whole_pixel(pen);
            quad({x + glyph.X0, top + glyph.Y0, x + glyph.X1, top + glyph.Y1}, glyph, color);
            ++drawn;
        }
        pen += glyph.AdvanceX;
    }
    list_->PrimUnreserve((most - drawn) * 6, (most - drawn) * 4);
}

struct Painter::Impl {
    explicit Impl(std::string_view texts) : fonts(texts), canvas(fonts) {}

    Fonts fonts;
    ListCanvas canvas;
    ImGuiContext* context = nullptr;
    ImDrawList* list = nullptr;
    Metrics metrics;
    std::list<ImDrawListSplitter> splitters;
};

Painter::Painter(std::string_view texts) : impl_(std::make_unique<Impl>(texts)) {
    impl_->context = ImGui::CreateContext();
    ImGui::SetCurrentContext(impl_->context);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    ImGuiStyle& style = ImGui::GetStyle();
    style.AntiAliasedLines = true;
    style.AntiAliasedFill = true;
    style.AntiAliasedLinesUseTex = false;
    style.CircleTessellationMaxError = 0.1F;
    style.CurveTessellationTol = 0.3F;
}

Painter::~Painter() {
    impl_->splitters.clear();
    ImGui::DestroyContext(impl_->context);
}

void Painter::begin(const FrameInput& input, const Metrics& metrics, Textures& textures) {
    ImGui::SetCurrentContext(impl_->context);
    ImGuiIO& io = ImGui::GetIO();
    impl_->metrics = metrics;
    impl_->fonts.use(metrics, *io.Fonts, textures);
    io.DisplaySize = {input.width, input.height};
    io.DeltaTime = std::max(input.delta, 1e-4F);
    // The pointer never reaches the library: gestures are ours, so nothing can stay hovered or captured.
    io.MousePos = {-FLT_MAX, -FLT_MAX};
    ImGui::NewFrame();
    impl_->list = ImGui::GetBackgroundDrawList();
    impl_->canvas.start(impl_->list, impl_->metrics);
}

const ImDrawData* Painter::end() {
    ImGui::Render();
    impl_->splitters.clear();
    return ImGui::GetDrawData();
}

Canvas& Painter::canvas() const {
    return impl_->canvas;
}

const Fonts& Painter::fonts() const {
    return impl_->fonts;
}

void Painter::image(TextureId texture, const Rect& rect, Point uv0, Point uv1) {
    impl_->list->AddImage(std::bit_cast<ImTextureID>(static_cast<std::uintptr_t>(texture)), {rect.x0, rect.y0},
                          {rect.x1, rect.y1}, vec(uv0), vec(uv1));
}

void Painter::push_layers() {
    ImDrawListSplitter& splitter = impl_->splitters.emplace_back();
    splitter.Split(impl_->list, 2);
    splitter.SetCurrentChannel(impl_->list, 1);
}

void Painter::lower_layer() {
    impl_->splitters.back().SetCurrentChannel(impl_->list, 0);
}

void Painter::pop_layers() {
    impl_->splitters.back().Merge(impl_->list);
    impl_->splitters.pop_back();
}

PartStart Painter::start_part(bool whole) {
    return ui::start_part(*impl_->list, whole);
}

bool Painter::end_part(const PartStart& start, DrawnPart& part) {
    return ui::end_part(*impl_->list, start, part);
}

void Painter::draw_part(const DrawnPart& part, float down) {
    ui::draw_part(*impl_->list, part, down);
}

std::vector<char32_t> Painter::missing(std::string_view utf8) const {
    return impl_->fonts.missing(utf8);
}

}  // namespace sillwalk::ui
