#pragma once
/// A cart from above, to scale: castors where they are, the centre of gravity, who pushes, and the static load on each
/// castor.

#include "app/ui/draw/canvas.hpp"
#include "app/ui/theme.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::ui {

struct PlanCastor {
    double forward_mm = 0, across_mm = 0;
    bool swivel = true;
};
struct PlanShape {
    std::vector<PlanCastor> castors;
    std::optional<double> length_mm, width_mm, cg_forward_mm, gross_kg;
    double wheel_mm = 125;
    int people = 0;
    bool tugged = false;
};
struct PlanWords {
    std::function<std::string(double kg)> mass;
    std::function<std::string(double mm)> length;
    std::string centre;
};
/// Static load of each castor on a flat floor with the load central across; empty where the pairs or the centre are not
/// known.
[[nodiscard]] std::vector<double> castor_loads(const PlanShape& shape);

void draw_plan(Canvas& canvas, const Theme& theme, const Rect& box, const PlanShape& shape, const PlanWords& words);

}  // namespace sillwalk::ui
