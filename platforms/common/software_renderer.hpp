#pragma once
/// Draws a frame without a graphics card: the same bytes on every machine, for tests, pictures and scripts.

#include "app/ui/frame_output.hpp"
#include "platforms/common/image.hpp"

namespace sillwalk::platforms {

[[nodiscard]] Image render(const ui::FrameOutput& frame);

}  // namespace sillwalk::platforms
