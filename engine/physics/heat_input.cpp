#include "engine/physics/heat_input.hpp"

#include <cmath>
#include <string>

namespace sillwalk::engine {
namespace {

bool usable(double value) {
    return std::isfinite(value) && value > 0.0;
}

Error wrong(const char* key, const char* right) {
    return Error{ErrorCode::bad_input, std::string(key) + " must be " + right, key};
}

}  // namespace

std::optional<Error> heat_input_error(const Body& body, const std::vector<HeatStage>& stages,
                                      const std::optional<BodyPoint>& point) {
    if (!usable(body.diameter.si())) return wrong("diameter", "over 0");
    if (!usable(body.width.si())) return wrong("width", "over 0");
    if (!usable(body.conductivity.si())) return wrong("conductivity", "over 0");
    if (!usable(body.density.si())) return wrong("density", "over 0");
    if (!usable(body.specific_heat.si())) return wrong("specific-heat", "over 0");
    if (stages.empty()) return wrong("stages", "at least one AIR@FILM:TIME");
    for (const HeatStage& stage : stages) {
        if (!usable(stage.film.si())) return wrong("stages", "of film coefficients over 0");
        if (!std::isfinite(stage.time.si()) || stage.time.si() < 0.0) return wrong("stages", "of times from 0 up");
    }
    if (point) {
        const bool on_radius = point->radius_at.si() >= 0.0 && point->radius_at <= body.diameter / 2.0;
        if (!on_radius) return wrong("radius-at", "from 0 to the wheel's radius");
        const bool in_width = point->depth_from_face.si() >= 0.0 && point->depth_from_face <= body.width;
        if (!in_width) return wrong("depth-from-face", "from 0 to the wheel's width");
    }
    return std::nullopt;
}

}  // namespace sillwalk::engine
