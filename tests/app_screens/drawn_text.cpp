#include "tests/app_screens/drawn_text.hpp"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace sillwalk::test {

namespace {

using GlyphCorners = std::array<float, 4>;

struct Letter {
    const ImFont* font = nullptr;
    const ImFontGlyph* glyph = nullptr;
};

/// Where each letter lies in the font's picture.
std::map<GlyphCorners, Letter> letters_of_fonts() {
    std::map<GlyphCorners, Letter> letters;
    for (const ImFont* font : ImGui::GetIO().Fonts->Fonts) {
        for (const ImFontGlyph& glyph : font->Glyphs) {
            if (glyph.Visible != 0U) letters[{glyph.U0, glyph.V0, glyph.U1, glyph.V1}] = {font, &glyph};
        }
    }
    return letters;
}

void append_utf8(std::string& out, unsigned code) {
    if (code < 0x80) {
        out += static_cast<char>(code);
    } else if (code < 0x800) {
        out += static_cast<char>(0xC0U | code >> 6U);
        out += static_cast<char>(0x80U | (code & 0x3FU));
    } else {
        out += static_cast<char>(0xE0U | code >> 12U);
        out += static_cast<char>(0x80U | (code >> 6U & 0x3FU));
        out += static_cast<char>(0x80U | (code & 0x3FU));
    }
}

/// Joins letters that stand on one line, one after the other.
class Lines {
public:
    void add(const Letter& letter, float x, float y, bool cut) {
        const float pen = x - letter.glyph->X0;
        const float top = y - letter.glyph->Y0;
        const float step = pen - pen_;
        const bool goes_on = letter.font == font_ && top == top_ && std::abs(step) < font_->FontSize * 0.5F;
        if (!goes_on) end();
        cut_ = cut_ || cut;
        if (goes_on && step > font_->FontSize * 0.1F) text_ += ' ';
        append_utf8(text_, letter.glyph->Codepoint);
        font_ = letter.font;
        top_ = top;
        pen_ = pen + letter.glyph->AdvanceX;
    }
    void end() {
        if (!text_.empty() && !cut_) texts_.push_back(text_);
        text_.clear();
        cut_ = false;
        font_ = nullptr;
    }
    [[nodiscard]] std::vector<std::string> texts() {
        end();
        return std::move(texts_);
    }

private:
    std::vector<std::string> texts_;
    std::string text_;
    bool cut_ = false;  ///< some of the line lies outside its clip
    const ImFont* font_ = nullptr;
    float top_ = 0;
    float pen_ = 0;
};

bool in_clip(const ImVec2& a, const ImVec2& b, const ImVec4& clip) {
    return a.x >= clip.x - 1 && b.x <= clip.z + 1 && a.y >= clip.y - 1 && b.y <= clip.w + 1;
}

DrawnTriangle triangle_at(const ImDrawList& list, const ImDrawCmd& command, unsigned index) {
    DrawnTriangle triangle;
    triangle.clip = {command.ClipRect.x, command.ClipRect.y, command.ClipRect.z, command.ClipRect.w};
    triangle.texture = reinterpret_cast<std::uintptr_t>(command.TextureId);
    for (unsigned k = 0; k < 3; ++k) {
        const ImDrawIdx number = list.IdxBuffer[static_cast<int>(command.IdxOffset + index + k)];
        const ImDrawVert& vertex = list.VtxBuffer[static_cast<int>(command.VtxOffset + number)];
        triangle.corners[2 * k] = vertex.pos.x;
        triangle.corners[2 * k + 1] = vertex.pos.y;
        triangle.texture_corners[2 * k] = vertex.uv.x;
        triangle.texture_corners[2 * k + 1] = vertex.uv.y;
        triangle.colors[k] = vertex.col;
    }
    return triangle;
}

/// One that only touches the edge of its clip may be left out or not: its own edge is soft.
bool in_view(const DrawnTriangle& triangle) {
    const auto& at = triangle.corners;
    const auto [left, right] = std::minmax({at[0], at[2], at[4]});
    const auto [top, bottom] = std::minmax({at[1], at[3], at[5]});
    const float slack = 1.37F;  // corners lie on whole and half pixels
    return right > triangle.clip[0] + slack && left < triangle.clip[2] - slack && bottom > triangle.clip[1] + slack &&
           top < triangle.clip[3] - slack;
}

template <std::size_t N>
bool close(const std::array<float, N>& a, const std::array<float, N>& b, float tolerance) {
    for (std::size_t i = 0; i < N; ++i) {
        if (!(std::abs(a[i] - b[i]) <= tolerance)) return false;
    }
    return true;
}

std::string words_of(const DrawnTriangle& triangle) {
    return fmt::format("{:.2f} in {:.2f}, color {:08x}", fmt::join(triangle.corners, " "),
                       fmt::join(triangle.clip, " "), triangle.colors[0]);
}

}  // namespace

std::vector<std::string> drawn_texts(const ui::FrameOutput& frame) {
    const std::map<GlyphCorners, Letter> letters = letters_of_fonts();
    const ImDrawData& data = *frame.draw_data;
    Lines lines;
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            for (unsigned i = 0; i + 5 < command.ElemCount; i += 3) {
                const auto at = [&](unsigned k) { return list.IdxBuffer[static_cast<int>(command.IdxOffset + i + k)]; };
                const bool quad = at(1) == at(0) + 1 && at(2) == at(0) + 2 && at(3) == at(0) && at(5) == at(0) + 3;
                if (!quad) continue;
                const auto first = static_cast<int>(command.VtxOffset + at(0));
                const ImDrawVert& a = list.VtxBuffer[first];
                const ImDrawVert& c = list.VtxBuffer[first + 2];
                const auto found = letters.find({a.uv.x, a.uv.y, c.uv.x, c.uv.y});
                if (found == letters.end()) continue;
                lines.add(found->second, a.pos.x, a.pos.y, !in_clip(a.pos, c.pos, command.ClipRect));
                i += 3;
            }
        }
    }
    return lines.texts();
}

std::vector<DrawnTriangle> drawn_triangles(const ui::FrameOutput& frame) {
    std::vector<DrawnTriangle> triangles;
    const ImDrawData& data = *frame.draw_data;
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            for (unsigned i = 0; i < command.ElemCount; i += 3) {
                const DrawnTriangle triangle = triangle_at(list, command, i);
                if (in_view(triangle)) triangles.push_back(triangle);
            }
        }
    }
    return triangles;
}

std::string first_difference(const std::vector<DrawnTriangle>& a, const std::vector<DrawnTriangle>& b) {
    for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
        if (i == a.size()) return fmt::format("only the second has {}", words_of(b[i]));
        if (i == b.size()) return fmt::format("only the first has {}", words_of(a[i]));
        const bool same = close(a[i].clip, b[i].clip, 0.01F) && close(a[i].corners, b[i].corners, 0.01F) &&
                          close(a[i].texture_corners, b[i].texture_corners, 1e-6F) && a[i].colors == b[i].colors &&
                          a[i].texture == b[i].texture;
        if (!same) return fmt::format("{} of {}: {}, and {}", i, a.size(), words_of(a[i]), words_of(b[i]));
    }
    return {};
}

std::uint64_t draw_hash(const ui::FrameOutput& frame) {
    std::uint64_t hash = 14695981039346656037U;
    const auto take = [&hash](const void* bytes, std::size_t size) {
        const auto* byte = static_cast<const unsigned char*>(bytes);
        for (std::size_t i = 0; i < size; ++i) hash = (hash ^ byte[i]) * 1099511628211U;
    };
    const ImDrawData& data = *frame.draw_data;
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        take(list.VtxBuffer.Data, static_cast<std::size_t>(list.VtxBuffer.size_in_bytes()));
        take(list.IdxBuffer.Data, static_cast<std::size_t>(list.IdxBuffer.size_in_bytes()));
    }
    return hash;
}

}  // namespace sillwalk::test
