#pragma once
/// Values against one limit: bars from a common zero, the limit as a thick upright line, whiskers for all tolerances.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/theme.hpp"

#include <optional>
#include <span>
#include <string>

namespace sillwalk::ui {

struct LimitBar {
    std::string name{};
    double value = 0;
    double low = 0;  ///< with every tolerance; equal to high: no whisker
    double high = 0;
    std::string value_label{};
    Badge outcome = Badge::holds;
    std::string outcome_word{};  ///< empty: no badge at the end
};

struct LimitBars {
    std::span<const LimitBar> bars{};
    double limit = 0;
    std::string limit_label{};
    double full_scale = 0;  ///< 0: the largest of values and limit, a tenth more
};

[[nodiscard]] float limit_bars_height(const Canvas& canvas, std::size_t count);
/// One bar with its limit, without words; a value beyond the scale fills it.
void draw_limit_bar(Canvas& canvas, const Theme& theme, const Rect& box, const LimitBar& entry, double limit,
                    double full_scale);
void draw_limit_bars(Canvas& canvas, const Theme& theme, const Rect& box, const LimitBars& chart);

}  // namespace sillwalk::ui
