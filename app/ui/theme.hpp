#pragma once
/// Colours of the three themes. Contrast rules: text on its ground at least 7:1, lines and outlines 3:1, disabled text
/// 4.5:1; fills of holds/tight/fails differ by at least 20 in CIEDE2000 also for colour-deficient eyes (tests/ui_kit).

#include "app/ui/geometry.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace sillwalk::ui {

enum class ThemeName : std::uint8_t { light, sun, dark };

/// State of a badge: severity by strength of fill, kind by shape, and always a word.
enum class Badge : std::uint8_t { holds, tight, fails, not_known, by_eye };
inline constexpr std::size_t badge_count = 5;

struct BadgeColors {
    Color fill;
    Color text;
    Color edge;
};

struct Theme {
    ThemeName name = ThemeName::light;
    Color background, surface, text, text2, disabled_text, outline, primary, on_primary, pressed, focus, route;
    Color cold, cool, warm, warm_strip;  ///< rooms by temperature
    Color hairline, ground_hatch, muted_fill, selected_tint;
    std::array<Color, badge_count> line;  ///< outcome as text or line on the surface
    std::array<BadgeColors, badge_count> badge;
    float line_scale = 1;  ///< strokes are drawn this much wider
    float text_scale = 1;

    [[nodiscard]] Color line_of(Badge state) const { return line[static_cast<std::size_t>(state)]; }
    [[nodiscard]] const BadgeColors& badge_of(Badge state) const { return badge[static_cast<std::size_t>(state)]; }
};

[[nodiscard]] const Theme& theme(ThemeName name);
[[nodiscard]] const char* theme_name(ThemeName name);  ///< "light", "sun", "dark"

/// A pair that is drawn on one another and the contrast it must reach; the test of the themes reads this list.
struct ContrastPair {
    const char* name;
    Color ink;
    Color ground;
    double least;
};
[[nodiscard]] std::vector<ContrastPair> contrast_pairs(const Theme& theme);

}  // namespace sillwalk::ui
