#include "app/ui/painter.hpp"

#include "app/ui/fonts.hpp"

#include <imgui.h>

#include <algorithm>
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

}  // namespace

/// Implements the strokes on an ImDrawList. Anti-aliasing is the list's own one-pixel fringe.
class ListCanvas final : public Canvas {
public:
    explicit ListCanvas(const Fonts& fonts) : fonts_(fonts) {}

    void start(ImDrawList* list, const Metrics& metrics) {
        list_ = list;
        metrics_ = &metrics;
    }

    void line(Point from, Point to, Color color, float width) override {
        const ImVec2 points[] = {vec(from), vec(to)};
        list_->AddPolyline(points, 2, packed(color), ImDrawFlags_None, width);
    }
    void polyline(std::span<const Point> points, Color color, float width, bool closed) override {
        copy(points);
        list_->AddPolyline(scratch_.data(), static_cast<int>(scratch_.size()), packed(color),
                           closed ? ImDrawFlags_Closed : ImDrawFlags_None, width);
    }
    void fill_polygon(std::span<const Point> convex, Color color) override {
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
        if (!rect.empty()) list_->AddRectFilled({rect.x0, rect.y0}, {rect.x1, rect.y1}, packed(color), radius);
    }
    void stroke_rect(const Rect& rect, Color color, float width, float radius) override {
        // AddRect itself moves the path inwards by half a pixel.
        const Rect path = rect.inset(width / 2 - 0.5F);
        list_->AddRect({path.x0, path.y0}, {path.x1, path.y1}, packed(color), std::max(0.0F, radius - width / 2),
                       ImDrawFlags_None, width);
    }
    void fill_circle(Point center, float radius, Color color) override {
        list_->AddCircleFilled(vec(center), radius, packed(color));
    }
    void stroke_circle(Point center, float radius, Color color, float width) override {
        // AddCircle draws half a pixel inside of the radius that it is given.
        list_->AddCircle(vec(center), radius - width / 2 + 0.5F, packed(color), 0, width);
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
    void copy(std::span<const Point> points) {
        scratch_.clear();
        for (const Point p : points) scratch_.push_back(vec(p));
    }

    const Fonts& fonts_;
    ImDrawList* list_ = nullptr;
    const Metrics* metrics_ = nullptr;
    std::vector<ImVec2> scratch_;
};

/// Glyphs stand on whole pixels (crisp) while the pen moves by exact advances (even).
void ListCanvas::text(Point at, std::string_view utf8, const TextStyle& style) {
    if (utf8.empty() || style.color.a == 0) return;
    const ImFont& font = fonts_.font(style.role, style.weight);
    const std::vector<char32_t> codes = code_points(utf8);
    float pen = at.x;
    if (style.align != Align::left) {
        const float width = text_width(utf8, style.role, style.weight);
        pen -= style.align == Align::center ? width / 2 : width;
    }
    const float top = std::round(at.y - font.Ascent);
    const ImU32 color = packed(style.color);
    const auto count = static_cast<int>(codes.size());
    list_->PrimReserve(count * 6, count * 4);
    int drawn = 0;
    for (const char32_t c : codes) {
        const ImFontGlyph& glyph = *font.FindGlyph(static_cast<ImWchar>(c));
        if (glyph.Visible != 0U) {
            const float x = std::round(pen);
            list_->PrimRectUV({x + glyph.X0, top + glyph.Y0}, {x + glyph.X1, top + glyph.Y1}, {glyph.U0, glyph.V0},
                              {glyph.U1, glyph.V1}, color);
            ++drawn;
        }
        pen += glyph.AdvanceX;
    }
    list_->PrimUnreserve((count - drawn) * 6, (count - drawn) * 4);
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

void Painter::image(TextureId texture, const Rect& rect, Point uv0, Point uv1) {
    impl_->list->AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture)), {rect.x0, rect.y0},
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

std::vector<char32_t> Painter::missing(std::string_view utf8) const {
    return impl_->fonts.missing(utf8);
}

}  // namespace sillwalk::ui
