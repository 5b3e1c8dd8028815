#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/desk/stages_text.hpp"
#include "engine/physics/heat.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey temperature_keys[] = {
    {"diameter", "wheel diameter", "length", "over 0"},
    {"width", "width of the wheel", "length", "over 0"},
    {"conductivity", "thermal conductivity", "conductivity", "over 0"},
    {"density", "density", "density", "over 0"},
    {"specific-heat", "specific heat", "specific heat", "over 0"},
    {"start", "temperature all through at the start", "temperature", ""},
    {"stages", "rooms in order: AIR@FILM:TIME,...", "temperature@film:time, with commas between", "at least one"},
    {"radius-at", "point asked for: from the axis", "length", "0 to the radius", false,
     "0 where depth-from-face is given"},
    {"depth-from-face", "point asked for: from a side face", "length", "0 to the width", false,
     "mid-width where radius-at is given"}};
constexpr DeskKey temperature_outputs[] = {{"stages", "temperatures at the end of each stage", "", ""}};
constexpr DeskKey stage_outputs[] = {{"core_C", "centre of the wheel", "degC", ""},
                                     {"rim_C", "running surface at mid-width", "degC", ""},
                                     {"mean_C", "mean over the wheel", "degC", ""},
                                     {"point_C", "the point asked for", "degC", "", false}};

std::optional<BodyPoint> read_point(ArgumentReader& in, Length width) {
    const auto radius = in.optional("radius-at", parse_length);
    const auto depth = in.optional("depth-from-face", parse_length);
    if (!radius && !depth) {
        return std::nullopt;
    }
    return BodyPoint{radius.value_or(Length{}), depth.value_or(0.5 * width)};
}

std::vector<DeskOutput> stage_list(const std::vector<BodyTemperatures>& stages) {
    std::vector<std::vector<DeskOutput>> lists;
    for (const BodyTemperatures& stage : stages) {
        OutputList list(stage_outputs);
        list.add("core_C", stage.core.celsius()).add("rim_C", stage.rim.celsius()).add("mean_C", stage.mean.celsius());
        if (stage.point) {
            list.add("point_C", stage.point->celsius());
        }
        lists.push_back(list.take());
    }
    return OutputList(temperature_outputs).add("stages", std::move(lists)).take();
}

Result<std::vector<DeskOutput>> run_temperature(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    Body body;
    body.diameter = in.required("diameter", parse_length);
    body.width = in.required("width", parse_length);
    body.conductivity = in.required("conductivity", parse_conductivity);
    body.density = in.required("density", parse_density);
    body.specific_heat = in.required("specific-heat", parse_specific_heat);
    const Temperature start = in.required("start", parse_temperature);
    const auto stages = in.required("stages", parse_stages);
    const auto point = read_point(in, body.width);
    if (in.failed()) {
        return in.failure();
    }
    return wheel_temperatures(body, start, stages, point).map(stage_list);
}

constexpr DeskKey dew_keys[] = {{"temperature", "of the air", "temperature", "-45 to 60 degC"},
                                {"humidity", "relative humidity", "share", "over 0 %, at most 100 %"}};
constexpr DeskKey dew_outputs[] = {{"dew_point_C", "surfaces colder than this get wet", "degC", ""}};

Result<std::vector<DeskOutput>> run_dew_point(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Temperature air = in.required("temperature", parse_temperature);
    const double humidity = in.required("humidity", parse_share);
    if (in.failed()) {
        return in.failure();
    }
    return dew_point(air, humidity).map([](Temperature dew) {
        return OutputList(dew_outputs).add("dew_point_C", dew.celsius()).take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"wheel-temperature", "temperatures of a solid wheel through rooms",
     "product of the series of a wall and a cylinder; a finite-volume march where the film coefficient changes",
     "short cylinder: Cengel, Heat Transfer, ch. 4, roots of Table 4-2 (read)", temperature_keys, temperature_outputs,
     run_temperature,
     "diameter=152.4mm width=50.8mm conductivity=0.21W/mK density=1150kg/m3 specific-heat=1800J/kgK start=20degC "
     "stages=-25degF@34W/m2K:60min,40degF@34W/m2K:30min"},
    {"dew-point", "temperature under which a surface gets wet",
     "g = ln h + 17.62 T/(243.12 + T); T_dew = 243.12 g/(17.62 - g)", "Magnus formula, WMO guide (from memory)",
     dew_keys, dew_outputs, run_dew_point, "temperature=40degF humidity=80%"}};

}  // namespace

std::span<const DeskCalculation> heat_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
