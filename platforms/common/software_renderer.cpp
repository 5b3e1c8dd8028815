#include "platforms/common/software_renderer.hpp"

#include "app/ui/textures.hpp"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace sillwalk::platforms {

namespace {

struct Clip {
    int x0 = 0, y0 = 0, x1 = 0, y1 = 0;
};

struct Rgba {
    float r = 0, g = 0, b = 0, a = 0;
};

Rgba unpack(ImU32 c) {
    return {static_cast<float>(c >> IM_COL32_R_SHIFT & 255U), static_cast<float>(c >> IM_COL32_G_SHIFT & 255U),
            static_cast<float>(c >> IM_COL32_B_SHIFT & 255U), static_cast<float>(c >> IM_COL32_A_SHIFT & 255U)};
}

Rgba texel(const ui::Texture& texture, int x, int y) {
    const auto column = static_cast<std::size_t>(std::clamp(x, 0, texture.width - 1));
    const auto row = static_cast<std::size_t>(std::clamp(y, 0, texture.height - 1));
    const std::uint8_t* p = &texture.rgba[(row * static_cast<std::size_t>(texture.width) + column) * 4];
    return {static_cast<float>(p[0]), static_cast<float>(p[1]), static_cast<float>(p[2]), static_cast<float>(p[3])};
}

Rgba mix(const Rgba& a, const Rgba& b, float t) {
    return {a.r + (b.r - a.r) * t, a.g + (b.g - a.g) * t, a.b + (b.b - a.b) * t, a.a + (b.a - a.a) * t};
}

Rgba sample(const ui::Texture& texture, float u, float v) {
    const float x = u * static_cast<float>(texture.width) - 0.5F;
    const float y = v * static_cast<float>(texture.height) - 0.5F;
    const float fx = std::floor(x);
    const float fy = std::floor(y);
    const int ix = static_cast<int>(fx);
    const int iy = static_cast<int>(fy);
    const Rgba top = mix(texel(texture, ix, iy), texel(texture, ix + 1, iy), x - fx);
    const Rgba bottom = mix(texel(texture, ix, iy + 1), texel(texture, ix + 1, iy + 1), x - fx);
    return mix(top, bottom, y - fy);
}

class Rasteriser {
public:
    explicit Rasteriser(Image& image) : image_(image) {}

    void triangle(const ImDrawVert& a, const ImDrawVert& b, const ImDrawVert& c, const ui::Texture* texture,
                  const Clip& clip);

private:
    void blend(int x, int y, const Rgba& source);

    Image& image_;
};

void Rasteriser::blend(int x, int y, const Rgba& source) {
    const auto index =
        static_cast<std::size_t>(y) * static_cast<std::size_t>(image_.width) + static_cast<std::size_t>(x);
    std::uint8_t* p = &image_.rgba[index * 4];
    const float alpha = source.a / 255;
    const auto over = [alpha](std::uint8_t under, float ink) {
        const float value = static_cast<float>(under) + (ink - static_cast<float>(under)) * alpha;
        return static_cast<std::uint8_t>(std::clamp(value + 0.5F, 0.0F, 255.0F));
    };
    p[0] = over(p[0], source.r);
    p[1] = over(p[1], source.g);
    p[2] = over(p[2], source.b);
    p[3] = 255;
}

/// Twice the signed area of p, q, r.
double edge(double px, double py, double qx, double qy, double rx, double ry) {
    return (qx - px) * (ry - py) - (qy - py) * (rx - px);
}

/// A pixel whose middle lies exactly on an edge belongs to the triangle left of or below it, and to no other.
bool owns_edge(double dx, double dy) {
    return dy < 0 || (dy == 0 && dx > 0);
}

void Rasteriser::triangle(const ImDrawVert& a, const ImDrawVert& b_in, const ImDrawVert& c_in,
                          const ui::Texture* texture, const Clip& clip) {
    const ImDrawVert* b = &b_in;
    const ImDrawVert* c = &c_in;
    double area = edge(a.pos.x, a.pos.y, b->pos.x, b->pos.y, c->pos.x, c->pos.y);
    if (area == 0) return;
    if (area < 0) {
        std::swap(b, c);
        area = -area;
    }
    const ImVec2 p[3] = {a.pos, b->pos, c->pos};
    const int x0 = std::max(clip.x0, static_cast<int>(std::floor(std::min({p[0].x, p[1].x, p[2].x}) - 0.5F)));
    const int x1 = std::min(clip.x1, static_cast<int>(std::ceil(std::max({p[0].x, p[1].x, p[2].x}) + 0.5F)));
    const int y0 = std::max(clip.y0, static_cast<int>(std::floor(std::min({p[0].y, p[1].y, p[2].y}) - 0.5F)));
    const int y1 = std::min(clip.y1, static_cast<int>(std::ceil(std::max({p[0].y, p[1].y, p[2].y}) + 0.5F)));
    const bool owns[3] = {owns_edge(p[2].x - p[1].x, p[2].y - p[1].y), owns_edge(p[0].x - p[2].x, p[0].y - p[2].y),
                          owns_edge(p[1].x - p[0].x, p[1].y - p[0].y)};
    const Rgba ink[3] = {unpack(a.col), unpack(b->col), unpack(c->col)};
    const ImVec2 uv[3] = {a.uv, b->uv, c->uv};
    const bool flat = uv[0].x == uv[1].x && uv[0].y == uv[1].y && uv[1].x == uv[2].x && uv[1].y == uv[2].y;
    Rgba flat_texel{255, 255, 255, 255};
    if (flat && texture != nullptr) flat_texel = sample(*texture, uv[0].x, uv[0].y);

    for (int y = y0; y < y1; ++y) {
        const double py = y + 0.5;
        for (int x = x0; x < x1; ++x) {
            const double px = x + 0.5;
            const double w[3] = {edge(p[1].x, p[1].y, p[2].x, p[2].y, px, py),
                                 edge(p[2].x, p[2].y, p[0].x, p[0].y, px, py),
                                 edge(p[0].x, p[0].y, p[1].x, p[1].y, px, py)};
            bool inside = true;
            for (int i = 0; i < 3; ++i) inside = inside && (w[i] > 0 || (w[i] == 0 && owns[i]));
            if (!inside) continue;
            const float s[3] = {static_cast<float>(w[0] / area), static_cast<float>(w[1] / area),
                                static_cast<float>(w[2] / area)};
            Rgba source{ink[0].r * s[0] + ink[1].r * s[1] + ink[2].r * s[2],
                        ink[0].g * s[0] + ink[1].g * s[1] + ink[2].g * s[2],
                        ink[0].b * s[0] + ink[1].b * s[1] + ink[2].b * s[2],
                        ink[0].a * s[0] + ink[1].a * s[1] + ink[2].a * s[2]};
            Rgba map = flat_texel;
            if (!flat && texture != nullptr) {
                map = sample(*texture, uv[0].x * s[0] + uv[1].x * s[1] + uv[2].x * s[2],
                             uv[0].y * s[0] + uv[1].y * s[1] + uv[2].y * s[2]);
            }
            source = {source.r * map.r / 255, source.g * map.g / 255, source.b * map.b / 255, source.a * map.a / 255};
            if (source.a > 0) blend(x, y, source);
        }
    }
}

}  // namespace

Image render(const ui::FrameOutput& frame) {
    const ImDrawData& data = *frame.draw_data;
    Image image(static_cast<int>(data.DisplaySize.x), static_cast<int>(data.DisplaySize.y));
    for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
        image.rgba[i] = frame.background.r;
        image.rgba[i + 1] = frame.background.g;
        image.rgba[i + 2] = frame.background.b;
        image.rgba[i + 3] = 255;
    }
    Rasteriser rasteriser(image);
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            const Clip clip{std::max(0, static_cast<int>(command.ClipRect.x)),
                            std::max(0, static_cast<int>(command.ClipRect.y)),
                            std::min(image.width, static_cast<int>(command.ClipRect.z)),
                            std::min(image.height, static_cast<int>(command.ClipRect.w))};
            const auto id = static_cast<ui::TextureId>(reinterpret_cast<std::uintptr_t>(command.GetTexID()));
            const ui::Texture* texture = frame.textures->find(id);
            for (unsigned i = 0; i + 2 < command.ElemCount; i += 3) {
                const auto vertex = [&](unsigned k) -> const ImDrawVert& {
                    const ImDrawIdx index = list.IdxBuffer[static_cast<int>(command.IdxOffset + i + k)];
                    return list.VtxBuffer[static_cast<int>(command.VtxOffset + index)];
                };
                rasteriser.triangle(vertex(0), vertex(1), vertex(2), texture, clip);
            }
        }
    }
    return image;
}

}  // namespace sillwalk::platforms
