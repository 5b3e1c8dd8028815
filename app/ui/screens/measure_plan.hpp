#pragma once
/// Where the parts of the measuring sheet lie, by the shape of the screen. An empty rectangle means: not shown.

#include "app/ui/metrics.hpp"

#include <array>

namespace sillwalk::ui {

struct MeasurePlan {
    Rect title, close, readout, units, methods, pages;
    Rect ruler_key;                  ///< leads to the ruler and back
    Rect ruler;                      ///< in place of digits, fractions and sketch
    std::array<Rect, 12> digits;     ///< 1 to 9, sign, 0, point
    std::array<Rect, 16> fractions;  ///< 1/16 to 15/16, none last; narrow: eighths, +1/16, none
    Rect backspace, plus, minus, next, done;
    Rect again, same, none, not_accessible;
    Rect picture;  ///< sketch, or the hint while there is one
    Rect aside;    ///< where the fractions would be: the sketch
};

struct MeasureNeeds {
    bool sixteenths = false;
    bool fraction_page = false;  ///< narrow screens: this page is shown
    bool can_rule = false;       ///< there is a ruler
    bool rules = false;          ///< it is shown
    bool sketch = false;         ///< wheel and obstacle are drawn beside the keys
    std::size_t units = 1;       ///< offered
    float title_height = 0;      ///< what the texts of the title need
    float hint_height = 0;       ///< what a hint needs beside what is typed
};
[[nodiscard]] MeasurePlan measure_plan(const Metrics& metrics, const Rect& area, const MeasureNeeds& needs);

}  // namespace sillwalk::ui
