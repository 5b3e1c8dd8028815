#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/obstacle.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey step_keys[] = {
    {"load", "load on the wheel or the pair", "force, or mass as its weight", "over 0"},
    {"diameter", "wheel diameter", "length", "over 0"},
    {"rise", "height of the step", "length", "0 or more, under the radius"},
    {"lip-slope", "bevel of that rise", "slope", "over 0", false, "a square edge"},
    {"g", "gravity, where the load is a mass", "acceleration", "over 0", false, "9.80665m/s2"}};
constexpr DeskKey step_outputs[] = {{"force_N", "level push at the axle", "N", ""},
                                    {"least_at_axle_N", "least push at the axle, square to the radius", "N", ""},
                                    {"least_anywhere_N", "least push, at the rim opposite the edge", "N", ""},
                                    {"at_top_N", "level push at the top of the rim", "N", ""},
                                    {"ratio", "level push at the axle over the load", "", ""},
                                    {"rise_share", "rise over the diameter", "", ""}};

Result<std::vector<DeskOutput>> run_step(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Force load = in.load("load", in.gravity());
    const Length diameter = in.required("diameter", parse_length);
    const Length rise = in.required("rise", parse_length);
    const auto lip_slope = in.optional("lip-slope", parse_slope);
    if (in.failed()) {
        return in.failure();
    }
    return step_forces(load, diameter, rise, lip_slope).map([](const StepForces& forces) {
        return OutputList(step_outputs)
            .add("force_N", forces.at_axle.si())
            .add("least_at_axle_N", forces.least_at_axle.si())
            .add("least_anywhere_N", forces.least_anywhere.si())
            .add("at_top_N", forces.at_top.si())
            .add("ratio", forces.ratio)
            .add("rise_share", forces.rise_share)
            .take();
    });
}

constexpr DeskKey step_speed_keys[] = {
    {"diameter", "wheel diameter", "length", "over 0"},
    {"rise", "height of the step", "length", "0 or more, under the radius"},
    {"inertia", "k in I = k m R^2 of the rolling body", "number", "0 or more", false, "0"},
    {"lift-share", "share of the rise that lifts the centre of gravity", "share", "over 0, at most 1", false, "1"},
    {"pitch-mass-ratio", "mass felt at the leading axle over the cart's mass", "share", "over 0, at most 1", false,
     "1"},
    {"speed", "speed into the step", "speed", "over 0", false, "none"},
    {"mass", "moving mass", "mass", "over 0", false, "none"},
    {"g", "gravity", "acceleration", "over 0", false, "9.80665m/s2"}};
constexpr DeskKey step_speed_outputs[] = {{"least_speed_m_per_s", "least speed to coast over", "m/s", ""},
                                          {"speed_ratio", "speed after the blow over speed before", "", ""},
                                          {"speed_after_m_per_s", "speed after the blow", "m/s", "", false},
                                          {"energy_lost_J", "energy lost in the blow", "J", "", false},
                                          {"impulse_Ns", "blow of the edge on the wheel", "N s", "", false}};

Result<std::vector<DeskOutput>> run_step_speed(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    StepSpeedInput input;
    input.diameter = in.required("diameter", parse_length);
    input.rise = in.required("rise", parse_length);
    input.inertia = in.optional("inertia", parse_number).value_or(0.0);
    input.lift_share = in.optional("lift-share", parse_share).value_or(1.0);
    input.pitch_mass_ratio = in.optional("pitch-mass-ratio", parse_share).value_or(1.0);
    input.speed = in.optional("speed", parse_speed);
    input.mass = in.optional("mass", parse_mass);
    input.g = in.gravity();
    if (in.failed()) {
        return in.failure();
    }
    return step_speed(input).map([](const StepSpeed& result) {
        return OutputList(step_speed_outputs)
            .add("least_speed_m_per_s", result.least.si())
            .add("speed_ratio", result.speed_ratio)
            .add_si("speed_after_m_per_s", result.after)
            .add_si("energy_lost_J", result.lost)
            .add_si("impulse_Ns", result.impulse)
            .take();
    });
}

constexpr DeskKey gap_keys[] = {{"diameter", "wheel diameter", "length", "over 0"},
                                {"gap", "width of the gap along the travel", "length", "0 or more, under the diameter"},
                                {"load", "load on the wheel", "force, or mass as its weight", "over 0", false, "none"},
                                {"speed", "speed across the gap", "speed", "over 0", false, "standing"},
                                {"depth", "depth of the gap", "length", "over 0", false, "deeper than the sag"},
                                {"g", "gravity", "acceleration", "over 0", false, "9.80665m/s2"}};
constexpr DeskKey gap_outputs[] = {{"sag_m", "how far a wheel standing in the gap sinks", "m", ""},
                                   {"ratio", "level push to leave the gap over the load", "", ""},
                                   {"force_N", "level push at the axle to leave the gap", "N", "", false},
                                   {"full_drop", "falls the whole sag while it crosses", "", "", false},
                                   {"drop_m", "how far it falls while it crosses", "m", "", false}};

Result<std::vector<DeskOutput>> run_gap(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Length diameter = in.required("diameter", parse_length);
    const Length gap = in.required("gap", parse_length);
    const Acceleration g = in.gravity();
    const auto load = in.optional_load("load", g);
    const auto speed = in.optional("speed", parse_speed);
    const auto depth = in.optional("depth", parse_length);
    if (in.failed()) {
        return in.failure();
    }
    return gap_crossing(diameter, gap, load, speed, depth, g).map([](const GapCrossing& result) {
        return OutputList(gap_outputs)
            .add("sag_m", result.sag.si())
            .add("ratio", result.ratio)
            .add_si("force_N", result.force)
            .add_if("full_drop", result.full_drop)
            .add_si("drop_m", result.drop)
            .take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"step", "force to push a wheel up a step from rest",
     "F = W sqrt(2Rh - h^2)/(R - h) at the axle; a bevel takes the smaller of its tangent and this",
     "moments about the edge; Young & Freedman, University Physics, 11th ed., problem 11.72 (second-hand)", step_keys,
     step_outputs, run_step, "load=300N diameter=500mm rise=100mm"},
    {"step-speed", "least speed to coast over a step, and what the blow takes",
     "v2/v1 = 1 - (h/R)/(1 + k); v = sqrt(2 g h/(1 + k))/(v2/v1); a cart: v = sqrt(2 g h a/(1 - lambda))",
     "angular momentum about the edge, then energy (derived)", step_speed_keys, step_speed_outputs, run_step_speed,
     "diameter=125mm rise=10mm lift-share=0.5 pitch-mass-ratio=0.333"},
    {"gap", "how a wheel crosses a gap", "s = R - sqrt(R^2 - G^2/4); F = W (G/2)/sqrt(R^2 - G^2/4)",
     "sagitta of the rim between two edges (derived)", gap_keys, gap_outputs, run_gap,
     "diameter=100mm gap=32mm speed=1.1m/s"}};

}  // namespace

std::span<const DeskCalculation> obstacle_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
