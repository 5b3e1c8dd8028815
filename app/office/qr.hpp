#pragma once
/// A text as a QR code for a terminal.

#include "engine/base/result.hpp"

#include <string>

namespace sillwalk::office {

/// Half blocks, two rows a line, with the quiet border that scanners need.
[[nodiscard]] engine::Result<std::string> qr_text(const std::string& text);

}  // namespace sillwalk::office
