#include "tests/ui_kit/drawings.hpp"

#include "app/ui/draw/crossing_section.hpp"
#include "app/ui/draw/limit_bars.hpp"
#include "app/ui/draw/margin_scale.hpp"
#include "app/ui/draw/room_box.hpp"

namespace sillwalk::test {

using namespace ui;

namespace {

void route(Canvas& canvas, const Theme& theme) {
    const RoomBox rooms[] = {
        {"Raw side", "10", "°C", "45 min", "Wet, nightly foam", RoomTemperature::cool, FloorWetness::wet},
        {"Blast freezer", "−32", "°C", "90 min", "Frost, fans", RoomTemperature::freezing, FloorWetness::frost},
        {"Cook room", "35", "°C", "20 min", "Damp", RoomTemperature::warm, FloorWetness::damp},
        {"Dock", "", "", "", "not read", RoomTemperature::not_known, FloorWetness::dry}};
    const CrossingSection crossings[] = {{.kind = SectionKind::slots_along, .slot_mm = 38},
                                         {.kind = SectionKind::step, .rise_mm = 19, .gap_mm = 32, .edge = Badge::fails},
                                         {.kind = SectionKind::hump, .rise_mm = 6, .bevel_run = 6},
                                         {.kind = SectionKind::ramp, .slope_percent = 8.3F}};
    float x = 20;
    for (int i = 0; i < 4; ++i) {
        draw_room_box(canvas, theme, {x, 20, x + 180, 170}, rooms[i]);
        draw_crossing_section(canvas, theme, {x + 180, 40, x + 310, 192}, 170, 0.6F, crossings[i]);
        x += 310;
    }
}

void scene(Canvas& canvas, const Theme& theme) {
    CrossingSection sill{
        .kind = SectionKind::step, .rise_mm = 19, .gap_mm = 32, .edge = Badge::fails, .gap_edge = Badge::tight};
    SectionNotes notes;
    notes.climb = SectionForce{1570, 450, "1\u2009570 N", "450", Badge::fails};
    notes.cross = SectionForce{400, 450, "400 N", "", Badge::tight};
    notes.rise_label = "19 mm";
    notes.gap_label = "32 mm";
    notes.load_label = "155 kg";
    const Rect box{20, 240, 760, 540};
    canvas.fill_rect(box, theme.surface, 8);
    draw_crossing_section(canvas, theme, box, 480, 1.6F, sill, &notes);
    const CrossingSection bevel{
        .kind = SectionKind::step, .rise_mm = 19, .bevel_run = 5, .wheel_mm = 200, .wheel = WheelStyle::first_choice};
    draw_crossing_section(canvas, theme, {780, 240, 1010, 400}, 380, 0.6F, bevel);
    const CrossingSection plate{.kind = SectionKind::gap, .gap_not_read = true, .slope_percent = 8};
    draw_crossing_section(canvas, theme, {1030, 240, 1260, 400}, 380, 0.6F, plate);
    draw_wheel(canvas, theme, {840, 480}, 44, WheelStyle::first_choice);
    draw_wheel(canvas, theme, {960, 480}, 44, WheelStyle::runner_up);
    draw_wheel(canvas, theme, {1080, 480}, 44, WheelStyle::present);
}

void charts(Canvas& canvas, const Theme& theme) {
    const LimitBar bars[] = {{"Onto sill", 1570, 1410, 1720, "1\u2009570 N", Badge::fails, "Fails"},
                             {"Out of gap", 400, 380, 445, "400 N", Badge::tight, "Tight"},
                             {"Ramp", 150, 0, 0, "150 N", Badge::holds, "Holds"}};
    draw_limit_bars(canvas, theme, {20, 550, 680, 790},
                    {.bars = bars, .limit = 450, .limit_label = "limit 450\u2009N, two people"});
    const MarginScale scale{720, 1060};
    draw_margin_zones(canvas, theme, scale, 570, 790);
    draw_margin_limit(canvas, theme, scale, 560, 790);
    draw_margin_mark(canvas, theme, scale, 600, {.margin = -1.45, .outcome = Badge::fails, .with_change = 0.32});
    draw_margin_mark(canvas, theme, scale, 650, {.margin = 0.07, .low = 0.03, .high = 0.11, .outcome = Badge::tight});
    draw_margin_mark(canvas, theme, scale, 700, {.margin = 0.22, .low = 0.18, .high = 0.26, .runner_up = 0.15});
    draw_margin_unknown(canvas, theme, scale, 755, "needs readings");
    draw_range_strip(canvas, theme, 1090, 1250, 640, {.impossible_from = 50, .value = 19.05, .tolerance = 1});
}

}  // namespace

void draw_vocabulary(Ui& kit) {
    route(kit.canvas(), kit.theme());
    scene(kit.canvas(), kit.theme());
    charts(kit.canvas(), kit.theme());
}

}  // namespace sillwalk::test
