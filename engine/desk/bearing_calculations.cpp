#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/bearings.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey life_keys[] = {
    {"rating", "dynamic load rating C of the bearing", "force, or mass as its weight", "over 0"},
    {"load", "equivalent load P on the bearing", "force, or mass as its weight", "over 0"},
    {"kind", "rolling element", "ball | roller", ""},
    {"rpm", "turns per minute", "number", "over 0; not with speed", false, "none"},
    {"speed", "travelling speed, with diameter", "speed", "over 0; not with rpm", false, "none"},
    {"diameter", "wheel diameter", "length", "over 0", false, "none"},
    {"reliability", "share of bearings that reach the life", "share", "90, 95, 96, 97, 98 or 99 %", false, "90%"}};
constexpr DeskKey life_outputs[] = {{"hours", "life in hours", "h", "", false},
                                    {"revolutions", "life in turns", "", ""},
                                    {"distance_m", "life in distance", "m", "", false}};

Result<std::vector<DeskOutput>> run_life(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    BearingLifeInput input;
    input.rating = in.load("rating");
    input.load = in.load("load");
    input.element =
        in.required_word<RollingElement>("kind", {{"ball", RollingElement::ball}, {"roller", RollingElement::roller}});
    if (const auto rpm = in.optional("rpm", parse_number)) {
        input.turns = *rpm * per_minute;
    }
    input.speed = in.optional("speed", parse_speed);
    input.wheel_diameter = in.optional("diameter", parse_length);
    input.reliability = in.optional("reliability", parse_share).value_or(0.90);
    if (in.failed()) {
        return in.failure();
    }
    return bearing_life(input).map([](const BearingLife& life) {
        OutputList out(life_outputs);
        if (life.hours) {
            out.add("hours", life.hours->in(hour));
        }
        return out.add("revolutions", life.revolutions).add_si("distance_m", life.distance).take();
    });
}

constexpr DeskKey pv_keys[] = {
    {"load", "load on the bearing", "force, or mass as its weight", "over 0"},
    {"wheel-diameter", "wheel diameter", "length", "over 0"},
    {"speed", "travelling speed", "speed", "0 or more"},
    {"length", "length of the bearing", "length", "over 0"},
    {"axle-diameter", "axle diameter; it cancels in PV", "length", "over 0, under the wheel diameter", false, "none"}};
constexpr DeskKey pv_outputs[] = {{"pv_Pa_m_per_s", "pressure times sliding speed", "Pa m/s", ""},
                                  {"pressure_Pa", "pressure on the projected area", "Pa", "", false},
                                  {"velocity_m_per_s", "sliding speed in the bore", "m/s", "", false}};

Result<std::vector<DeskOutput>> run_pv(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Force load = in.load("load");
    const Length wheel_diameter = in.required("wheel-diameter", parse_length);
    const Speed speed = in.required("speed", parse_speed);
    const Length length = in.required("length", parse_length);
    const auto axle_diameter = in.optional("axle-diameter", parse_length);
    if (in.failed()) {
        return in.failure();
    }
    return plain_bearing(load, wheel_diameter, speed, length, axle_diameter).map([](const PlainBearing& result) {
        return OutputList(pv_outputs)
            .add("pv_Pa_m_per_s", result.pv.si())
            .add_si("pressure_Pa", result.pressure)
            .add_si("velocity_m_per_s", result.velocity)
            .take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"bearing-life", "basic rating life of a rolling bearing", "L = a1 (C/P)^p million turns, p = 3 ball, 10/3 roller",
     "ISO 281:2007 (second-hand; reliability factors from memory)", life_keys, life_outputs, run_life,
     "rating=5050lbf load=2400lbf kind=ball rpm=1750"},
    {"bearing-pv", "pressure and sliding speed of a plain bearing", "PV = W v/(L D); P = W/(d L); V = v d/D",
     "pressure on the projected area times sliding speed (derived)", pv_keys, pv_outputs, run_pv,
     "load=300lbf wheel-diameter=6in speed=176fpm length=1.5in axle-diameter=0.5in"}};

}  // namespace

std::span<const DeskCalculation> bearing_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
