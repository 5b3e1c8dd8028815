#include "app/ui/shape_store.hpp"

#include <imgui_internal.h>

#include <type_traits>

namespace sillwalk::ui {

namespace {

constexpr std::size_t most_vertices = 100'000;  ///< 2 MB

ImVec2 moved(ImVec2 at, Point by) {
    return {at.x + by.x, at.y + by.y};
}

}  // namespace

void ShapeStore::begin(const ImDrawList& list) {
    const ImVec2 white = list._Data->TexUvWhitePixel;
    if (white.x == white_.x && white.y == white_.y && vertices_.size() <= most_vertices) return;
    white_ = white;
    entries_.clear();
    by_name_.clear();
    vertices_.clear();
    indices_.clear();
}

bool ShapeStore::draw(ImDrawList& list, const ShapeKey& key, Point fraction, Point whole) const {
    static_assert(std::has_unique_object_representations_v<Color>);
    const Name name{key, fraction};
    const std::size_t found = by_name_.find(bytes(name), [this](std::size_t at) { return bytes(entries_[at].name); });
    if (found == engine::NameIndex::none) return false;
    const Entry& entry = entries_[found];
    list.PrimReserve(entry.indices, entry.vertices);
    const ImDrawVert* from = &vertices_[static_cast<std::size_t>(entry.vertex)];
    ImDrawVert* to = list._VtxWritePtr;
    for (int i = 0; i < entry.vertices; ++i) {
        // Four sums alike, which the processor does as one.
        to[i].pos.x = from[i].pos.x + whole.x;
        to[i].pos.y = from[i].pos.y + whole.y;
        to[i].uv.x = from[i].uv.x + 0;
        to[i].uv.y = from[i].uv.y + 0;
        to[i].col = from[i].col;
    }
    const ImDrawIdx* number = &indices_[static_cast<std::size_t>(entry.index)];
    ImDrawIdx* numbers = list._IdxWritePtr;
    const auto first = static_cast<ImDrawIdx>(list._VtxCurrentIdx);
    for (int i = 0; i < entry.indices; ++i) numbers[i] = static_cast<ImDrawIdx>(first + number[i]);
    list._VtxWritePtr += entry.vertices;
    list._IdxWritePtr += entry.indices;
    list._VtxCurrentIdx += static_cast<unsigned int>(entry.vertices);
    return true;
}

void ShapeStore::start(const ImDrawList& list) {
    first_vertex_ = list.VtxBuffer.Size;
    first_index_ = list.IdxBuffer.Size;
    first_number_ = list._VtxCurrentIdx;
}

void ShapeStore::keep(ImDrawList& list, const ShapeKey& key, Point fraction, Point whole) {
    Entry entry{{key, fraction},
                static_cast<int>(vertices_.size()),
                list.VtxBuffer.Size - first_vertex_,
                static_cast<int>(indices_.size()),
                list.IdxBuffer.Size - first_index_};
    for (int i = first_index_; i < list.IdxBuffer.Size; ++i) {
        indices_.push_back(static_cast<ImDrawIdx>(list.IdxBuffer[i] - first_number_));
    }
    for (int i = first_vertex_; i < list.VtxBuffer.Size; ++i) {
        vertices_.push_back(list.VtxBuffer[i]);
        list.VtxBuffer[i].pos = moved(list.VtxBuffer[i].pos, whole);
    }
    if (entry.vertices == 0) return;  // nothing to copy; drawn anew it costs nothing either
    by_name_.add(bytes(entry.name), entries_.size());
    entries_.push_back(entry);
}

}  // namespace sillwalk::ui
