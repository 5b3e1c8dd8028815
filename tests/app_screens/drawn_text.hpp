#pragma once
/// What a frame really draws, read back from its triangles: the texts letter by letter, and a number for the whole.

#include "app/ui/frame_output.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace sillwalk::test {

/// Texts of the frame that was drawn last, in order of drawing, each line by itself; a line is left out where its clip
/// hides any of it.
[[nodiscard]] std::vector<std::string> drawn_texts(const ui::FrameOutput& frame);
/// A triangle as it is seen: what lies outside of its clip counts for nothing.
struct DrawnTriangle {
    std::array<float, 4> clip{};
    std::array<float, 6> corners{};  ///< x and y of each
    std::array<float, 6> texture_corners{};
    std::array<std::uint32_t, 3> colors{};
    std::uintptr_t texture = 0;
};
/// In order of drawing, without those that are out of view.
[[nodiscard]] std::vector<DrawnTriangle> drawn_triangles(const ui::FrameOutput& frame);
/// The first two that differ by more than a hundredth of a pixel, in words; empty where none do.
[[nodiscard]] std::string first_difference(const std::vector<DrawnTriangle>& a, const std::vector<DrawnTriangle>& b);
/// FNV-1a over all vertices and indices.
[[nodiscard]] std::uint64_t draw_hash(const ui::FrameOutput& frame);

}  // namespace sillwalk::test
