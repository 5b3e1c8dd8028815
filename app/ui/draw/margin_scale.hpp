#pragma once
/// Room to the limit on one scale for all checks: the limit as a thick line, "over" hatched on its left, 0 to 15 %
/// amber. Filled dot first choice, hollow dot runner-up, ring "with the change", arrow when off the scale.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/theme.hpp"

#include <optional>
#include <string_view>

namespace sillwalk::ui {

/// Margins are shares: 0 at the limit, 0.2 is 20 % of room, negative is over.
struct MarginScale {
    float x0 = 0;
    float x1 = 100;
    double least = -0.5;
    double most = 0.8;

    [[nodiscard]] float at(double margin) const;
    [[nodiscard]] bool shows(double margin) const { return margin >= least && margin <= most; }
};

struct MarginMark {
    double margin = 0;
    double low = 0;  ///< with every tolerance; equal to high: no whisker
    double high = 0;
    Badge outcome = Badge::holds;
    std::optional<double> runner_up{};
    std::optional<double> with_change{};
};

/// Background of all rows.
void draw_margin_zones(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y0, float y1);
/// The limit's line, on top of zones and below marks.
void draw_margin_limit(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y0, float y1);
/// Returns the right end of what was drawn, where a label may stand.
float draw_margin_mark(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y, const MarginMark& mark);
/// Dashed box across the whole scale: nothing is known.
void draw_margin_unknown(Canvas& canvas, const Theme& theme, const MarginScale& scale, float y, std::string_view words);

/// Typical and impossible values of a reading, and where the entered one lies.
struct RangeStrip {
    double least = 0;
    double most = 60;
    double typical_low = 0;
    double typical_high = 25;
    std::optional<double> impossible_from{};  ///< hatched beyond
    std::optional<double> value{};
    double tolerance = 0;
};
/// Height 16 design units plus the pointer above; `y` is the middle of the strip.
void draw_range_strip(Canvas& canvas, const Theme& theme, float x0, float x1, float y, const RangeStrip& strip);

}  // namespace sillwalk::ui
