#pragma once
/// Roles of text. Sizes belong to Metrics (screen) or to the page (PDF); placing is by baseline and cap height.

#include <cstddef>
#include <cstdint>

namespace sillwalk::ui {

enum class TextRole : std::uint8_t {
    smallest,  ///< a caption that the person's text scale left no room for: the least that may be read
    caption,   ///< tolerance, unit, tick, rail label
    body,      ///< reading name, reason
    row,       ///< finding sentence, button
    section,   ///< screen title
    value,     ///< reading, headline
    digit,     ///< keys, entered fraction: digits and signs only
    readout,   ///< keypad readout: digits and signs only
};
inline constexpr std::size_t text_role_count = 8;

enum class Weight : std::uint8_t { regular, medium, bold };
inline constexpr std::size_t weight_count = 3;

enum class Align : std::uint8_t { left, center, right };

/// Cap height over line height (ascent - descent) of Roboto; the ImGui size is the line height.
inline constexpr float roboto_cap_ratio = 0.607F;

}  // namespace sillwalk::ui
