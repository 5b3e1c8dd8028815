#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/rolling.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey rolling_keys[] = {
    {"load", "load on the wheels", "force, or mass as its weight", "over 0"},
    {"diameter", "wheel diameter", "length", "over 0"},
    {"f", "lever arm of rolling resistance", "length", "0 or more"},
    {"bearing-friction", "friction of the bearing, on its bore", "number", "0 or more", false, "0"},
    {"bearing-diameter", "bore of the bearing", "length", "0 or more", false, "0"},
    {"c0", "drag of seals and flanges", "number", "0 or more", false, "0"},
    {"slope", "gradient, up in the direction of travel", "slope", "negative downhill", false, "0"}};
constexpr DeskKey rolling_outputs[] = {{"force_N", "push to keep it rolling", "N", ""},
                                       {"coefficient", "rolling force over the load, on the level", "", ""}};

Result<std::vector<DeskOutput>> run_rolling(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    RollingInput input;
    input.load = in.load("load");
    input.diameter = in.required("diameter", parse_length);
    input.lever_arm = in.required("f", parse_length);
    input.bearing_friction = in.optional("bearing-friction", parse_number).value_or(0.0);
    input.bearing_diameter = in.optional("bearing-diameter", parse_length).value_or(Length{});
    input.seal_coefficient = in.optional("c0", parse_number).value_or(0.0);
    input.slope = in.optional("slope", parse_slope).value_or(Slope{});
    if (in.failed()) {
        return in.failure();
    }
    return rolling_force(input).map([](const RollingForce& result) {
        return OutputList(rolling_outputs)
            .add("force_N", result.force.si())
            .add("coefficient", result.coefficient)
            .take();
    });
}

constexpr DeskKey swivel_keys[] = {{"load", "load on the castor", "force, or mass as its weight", "over 0"},
                                   {"friction", "tread on floor", "number", "0 or more"},
                                   {"width", "length of the contact across the tread", "length", "over 0"},
                                   {"lead", "from the swivel axis to the axle, level", "length", "over 0"}};
constexpr DeskKey swivel_outputs[] = {{"force_N", "force at the lead to turn it on the spot", "N", ""},
                                      {"torque_Nm", "torque to turn it on the spot", "N m", ""}};

Result<std::vector<DeskOutput>> run_swivel(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Force load = in.load("load");
    const double friction = in.required("friction", parse_number);
    const Length width = in.required("width", parse_length);
    const Length lead = in.required("lead", parse_length);
    if (in.failed()) {
        return in.failure();
    }
    return swivel_turn(load, friction, width, lead).map([](const SwivelTurn& result) {
        return OutputList(swivel_outputs).add("force_N", result.force.si()).add("torque_Nm", result.torque.si()).take();
    });
}

constexpr DeskKey loss_keys[] = {{"load", "load on the wheel", "force, or mass as its weight", "over 0"},
                                 {"half-width", "half the contact along the travel", "length", "0 to the radius"},
                                 {"diameter", "wheel diameter", "length", "over 0"},
                                 {"tan-delta", "loss tangent of the tread", "number", "0 or more"},
                                 {"speed", "rolling speed", "speed", "0 or more"}};
constexpr DeskKey loss_outputs[] = {{"heat_W", "heat made in the tread", "W", ""},
                                    {"force_N", "rolling force that the tread's loss takes", "N", ""},
                                    {"coefficient", "that force over the load", "", ""}};

Result<std::vector<DeskOutput>> run_loss(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Force load = in.load("load");
    const Length half_width = in.required("half-width", parse_length);
    const Length diameter = in.required("diameter", parse_length);
    const double tan_delta = in.required("tan-delta", parse_number);
    const Speed speed = in.required("speed", parse_speed);
    if (in.failed()) {
        return in.failure();
    }
    return rolling_loss(load, half_width, diameter, tan_delta, speed).map([](const RollingLoss& result) {
        return OutputList(loss_outputs)
            .add("heat_W", result.heat.si())
            .add("force_N", result.force.si())
            .add("coefficient", result.coefficient)
            .take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"rolling", "force to keep a load rolling", "F = W (c cos t + sin t); c = (2/D)(mu d/2 + f) + c0",
     "rolling-resistance lever arm with bearing and flange terms (second-hand)", rolling_keys, rolling_outputs,
     run_rolling, "load=400kg diameter=100mm f=1mm slope=1:12"},
    {"swivel", "force to turn a castor on the spot", "T = mu N w/4; F = T/lead",
     "uniform line contact turned on the spot (derived)", swivel_keys, swivel_outputs, run_swivel,
     "load=500N friction=0.5 width=32mm lead=40mm"},
    {"rolling-loss", "heat and drag of a rolling tread", "c = (2/3) tan d b/R; F = c W; Q = F v",
     "Greenwood, Minshall & Tabor 1961; Johnson, Contact Mechanics, 9.4 (from memory)", loss_keys, loss_outputs,
     run_loss, "load=4448N half-width=11.86mm diameter=152.4mm tan-delta=0.06 speed=1.341m/s"}};

}  // namespace

std::span<const DeskCalculation> rolling_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
