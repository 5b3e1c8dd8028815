#pragma once
/// A script file from the disk, then a picture of the last screen, on any host.

#include "app/driver/driver.hpp"

namespace sillwalk::platforms {

/// Draws the frame without a graphics card and writes it as PNG.
[[nodiscard]] engine::Result<void> save_shot(const ui::FrameOutput& frame, const std::string& path);

/// Empty paths are left out.
[[nodiscard]] engine::Result<void> run_script(driver::DriverHost host, const driver::DriverOptions& size,
                                              const std::string& script_path, const std::string& shot_path);

}  // namespace sillwalk::platforms
