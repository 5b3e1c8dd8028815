#pragma once
/// A crossing cut along the travel: floor, step, bevel, gap, slope, and a wheel, all to one scale. The comparison of
/// sizes is the message.

#include "app/ui/draw/wheel.hpp"

#include <optional>
#include <string>

namespace sillwalk::ui {

enum class SectionKind : std::uint8_t {
    level,
    step,  ///< up by `rise_mm`; square or bevelled; a gap may follow
    hump,  ///< bevelled up and down again
    ramp,
    gap,          ///< level, with a slot across the travel
    slots_along,  ///< slots along the travel: the wheel is seen from the front
};

struct CrossingSection {
    SectionKind kind = SectionKind::level;
    float rise_mm = 0;
    float bevel_run = 0;            ///< run per rise of the bevel; 0: square edge
    std::optional<float> gap_mm{};  ///< across the travel, behind the step
    bool gap_not_read = false;      ///< there is one; drawn with a dashed lip
    float slope_percent = 0;        ///< of the ramp, or of the plate behind the gap
    float slot_mm = 0;              ///< slots_along
    float tread_mm = 40;            ///< slots_along: width of the tread
    float wheel_mm = 125;
    WheelStyle wheel = WheelStyle::present;
    std::optional<Badge> edge{};  ///< outcome of the deciding edge: drawn thick in its colour
    std::optional<Badge> gap_edge{};
};

/// A horizontal push from the axle, with its limit as a tick on the same line.
struct SectionForce {
    float newtons = 0;
    float limit = 0;      ///< 0: no tick
    std::string label{};  ///< "1 570 N"
    std::string limit_label{};
    Badge outcome = Badge::holds;
};
struct SectionNotes {
    std::optional<SectionForce> climb{};  ///< wheel at the edge
    std::optional<SectionForce> cross{};  ///< second wheel, sunk into the gap
    std::string rise_label{}, gap_label{}, load_label{};
    float px_per_newton = 0;  ///< 0: chosen so that the longest arrow fits
};

/// From the far lip of the gap to its label, design units.
inline constexpr float gap_label_beside = 13;
/// Pixels per millimetre at which the wheel and the obstacle fill the box; at most `most`.
[[nodiscard]] float section_scale(const Rect& box, const CrossingSection& section, float most);
/// Where the parts that a finger may move are drawn.
struct SectionPlaces {
    float edge_x = 0;   ///< foot of the step
    float top_y = 0;    ///< floor behind the step
    Point gap_right{};  ///< far lip of the gap, where there is one
};
[[nodiscard]] SectionPlaces section_places(const Canvas& canvas, const Rect& box, float floor_y, float px_per_mm,
                                           const CrossingSection& section, bool two_wheels = false);
/// `floor_y` is the line of the lower floor.
void draw_crossing_section(Canvas& canvas, const Theme& theme, const Rect& box, float floor_y, float px_per_mm,
                           const CrossingSection& section, const SectionNotes* notes = nullptr);

}  // namespace sillwalk::ui
