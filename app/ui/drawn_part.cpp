#include "app/ui/drawn_part.hpp"

#include <algorithm>
#include <cstring>

namespace sillwalk::ui {

namespace {

bool same(const ImVec4& a, const ImVec4& b) {
    return a.x == b.x && a.y == b.y && a.z == b.z && a.w == b.w;
}

/// The commands of the part; the first may have begun before it.
std::vector<DrawnPart::Run> runs_since(const ImDrawList& list, const PartStart& start, const ImVec4& outer) {
    std::vector<DrawnPart::Run> runs;
    for (int i = std::max(0, start.commands - 1); i < list.CmdBuffer.Size; ++i) {
        const ImDrawCmd& command = list.CmdBuffer[i];
        const int begin = std::max(static_cast<int>(command.IdxOffset), start.indices);
        const int end = static_cast<int>(command.IdxOffset + command.ElemCount);
        if (end <= begin) continue;
        runs.push_back({command.ClipRect, same(command.ClipRect, outer), command.TextureId, end - begin});
    }
    return runs;
}

/// As if nothing had been drawn.
void roll_back(ImDrawList& list, const PartStart& start) {
    list.VtxBuffer.resize(start.vertices);
    list.IdxBuffer.resize(start.indices);
    list.CmdBuffer.resize(start.commands);
    list.CmdBuffer.back() = start.last;
    list._VtxCurrentIdx = start.number;
    list._VtxWritePtr = list.VtxBuffer.end();
    list._IdxWritePtr = list.IdxBuffer.end();
}

void copy_vertices(ImDrawList& list, const DrawnPart& part, float down) {
    const std::size_t count = part.vertices.size();
    std::memcpy(list._VtxWritePtr, part.vertices.data(), count * sizeof(ImDrawVert));
    if (down != 0) {
        for (std::size_t i = 0; i < count; ++i) list._VtxWritePtr[i].pos.y += down;
    }
    list._VtxWritePtr += count;
}

}  // namespace

PartStart start_part(ImDrawList& list, bool whole) {
    const PartStart start{list.CmdBuffer.Size,
                          list.VtxBuffer.Size,
                          list.IdxBuffer.Size,
                          list._VtxCurrentIdx,
                          list.CmdBuffer.back(),
                          list._CmdHeader,
                          whole};
    if (whole) list.PushClipRect({-far_away, -far_away}, {far_away, far_away});
    return start;
}

bool end_part(ImDrawList& list, const PartStart& start, DrawnPart& part) {
    part.runs = runs_since(list, start, list._CmdHeader.ClipRect);
    if (start.whole) list.PopClipRect();
    int indices = 0;
    for (const DrawnPart::Run& run : part.runs) indices += run.indices;
    if (list._CmdHeader.VtxOffset != start.header.VtxOffset || indices != list.IdxBuffer.Size - start.indices)
        return false;
    part.vertices.assign(list.VtxBuffer.begin() + start.vertices, list.VtxBuffer.end());
    part.indices.assign(list.IdxBuffer.begin() + start.indices, list.IdxBuffer.end());
    for (ImDrawIdx& index : part.indices) index = static_cast<ImDrawIdx>(index - start.number);
    if (start.whole) roll_back(list, start);
    return true;
}

void draw_part(ImDrawList& list, const DrawnPart& part, float down) {
    const auto vertices = static_cast<int>(part.vertices.size());
    const ImDrawIdx* from = part.indices.data();
    bool copied = false;
    for (const DrawnPart::Run& run : part.runs) {
        if (!run.outer_clip) {
            list.PushClipRect({run.clip.x, run.clip.y + down}, {run.clip.z, run.clip.w + down}, true);
        }
        const bool other_texture = run.texture != list._CmdHeader.TextureId;
        if (other_texture) list.PushTextureID(run.texture);
        list.PrimReserve(run.indices, copied ? 0 : vertices);
        if (!copied) copy_vertices(list, part, down);
        copied = true;
        const auto first = static_cast<ImDrawIdx>(list._VtxCurrentIdx);
        for (int i = 0; i < run.indices; ++i) list._IdxWritePtr[i] = static_cast<ImDrawIdx>(first + from[i]);
        list._IdxWritePtr += run.indices;
        from += run.indices;
        if (other_texture) list.PopTextureID();
        if (!run.outer_clip) list.PopClipRect();
    }
    list._VtxCurrentIdx += static_cast<unsigned int>(vertices);
}

}  // namespace sillwalk::ui
