#pragma once
/// Sizes of everything on the screen, from millimetres of glass. Glove or bare hand, text scale, left or right hand.
/// 1 dp is 1/160 inch = 0.15875 mm of real glass. All results are framebuffer pixels.

#include "app/ui/draw/type_style.hpp"
#include "app/ui/frame_input.hpp"
#include "app/ui/hit_map.hpp"
#include "app/ui/theme.hpp"

#include <array>
#include <cstdint>

namespace sillwalk::ui {

struct UiSettings {
    ThemeName theme = ThemeName::light;
    bool glove = true;
    bool left_handed = false;  ///< mirror: rail on the right, commit keys on the left
    int text_percent = 100;    ///< 100, 115 or 130
    float px_per_mm = 0;       ///< from the scale check in Setup; 0: take the host's
    friend bool operator==(const UiSettings&, const UiSettings&) = default;
};

enum class WidthClass : std::uint8_t {
    compact,   ///< below 600 dp: bottom bar, one pane
    medium,    ///< 600 to 839 dp: rail, one pane
    expanded,  ///< 840 dp and wider than high: rail, list beside detail
};

class Metrics {
public:
    Metrics() = default;
    Metrics(const FrameInput& input, const UiSettings& settings);

    [[nodiscard]] float dp(float value) const { return value * px_per_dp_; }
    [[nodiscard]] float mm(float value) const { return value * px_per_mm_; }
    [[nodiscard]] bool compact() const { return width_class == WidthClass::compact; }
    /// Smallest width and height of a target of this class.
    [[nodiscard]] float target_size(TargetClass target_class) const;
    /// ImGui size (line height) of the role in pixels, text scale and sun theme included.
    [[nodiscard]] float text_size(TextRole role) const { return text_size_[static_cast<std::size_t>(role)]; }
    /// Height of capitals and digits above the baseline.
    [[nodiscard]] float cap_height(TextRole role) const { return roboto_cap_ratio * text_size(role); }
    /// Answer bar: height of the headline and of the reason below it.
    [[nodiscard]] float answer_head() const;
    [[nodiscard]] float answer_reason() const;
    [[nodiscard]] float line_height(TextRole role) const { return 1.22F * text_size(role); }

    Rect screen;  ///< inside the safe area
    WidthClass width_class = WidthClass::expanded;
    bool glove = true;
    bool left_handed = false;
    float gap = 12;               ///< between targets
    float gap_irreversible = 38;  ///< beside a T3 target
    float edge = 19;              ///< bezel margin
    float slop = 12;              ///< a finger that moves further drags
    float gutter = 24;            ///< between columns and cards
    float pad = 18;               ///< inside cards and rows
    float radius = 8;
    float hairline = 1.5F;
    float outline = 2;
    float focus = 3;
    float floor_line = 3.5F;
    float icon = 32;
    float rail_width = 104;
    float top_height = 102;  ///< the edge above it included
    float answer_height = 118;
    float bottom_height = 106;  ///< the edge below it included

private:
    float px_per_mm_ = 5.9F;
    float px_per_dp_ = 0.9366F;
    std::array<float, text_role_count> text_size_{};
};

}  // namespace sillwalk::ui
