#pragma once
/// What a frame really draws, read back from its triangles: the texts letter by letter, and a number for the whole.

#include "app/ui/frame_output.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace sillwalk::test {

/// Texts of the frame that was drawn last, in order of drawing, each line by itself; a line is left out where its clip
/// hides any of it.
[[nodiscard]] std::vector<std::string> drawn_texts(const ui::FrameOutput& frame);
/// FNV-1a over all vertices and indices.
[[nodiscard]] std::uint64_t draw_hash(const ui::FrameOutput& frame);

}  // namespace sillwalk::test
