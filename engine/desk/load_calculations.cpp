#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/load_share.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey wheel_load_keys[] = {
    {"tare", "mass of the empty cart", "mass", "0 or more"},
    {"payload", "mass of what it carries", "mass", "0 or more"},
    {"castors", "number of castors", "whole number", "1 or more; 2 for all-but-one; 4 for diagonal"},
    {"sharing", "how many castors carry on this floor", "all | all-but-one | diagonal", ""},
    {"factor", "allowance for knocks and floor", "number", "over 0", false, "1"}};
constexpr DeskKey wheel_load_outputs[] = {{"load_kg", "load on the hardest loaded wheel", "kg", ""},
                                          {"load_N", "the same as a force", "N", ""}};

Result<std::vector<DeskOutput>> run_wheel_load(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Mass tare = in.required("tare", parse_mass);
    const Mass payload = in.required("payload", parse_mass);
    const int castors = in.count("castors");
    const auto sharing = in.required_word<FloorSharing>(
        "sharing",
        {{"all", FloorSharing::all}, {"all-but-one", FloorSharing::all_but_one}, {"diagonal", FloorSharing::diagonal}});
    const double factor = in.optional("factor", parse_number).value_or(1.0);
    if (in.failed()) {
        return in.failure();
    }
    return wheel_load(tare, payload, castors, sharing, factor).map([](Mass load) {
        return OutputList(wheel_load_outputs).add("load_kg", load.si()).add("load_N", weight_of(load).si()).take();
    });
}

constexpr DeskKey axle_load_keys[] = {
    {"mass", "mass of the loaded cart", "mass", "over 0"},
    {"wheelbase", "distance between the axles", "length", "over 0"},
    {"cg-from-rear", "from the rear axle to the centre of gravity", "length", "0 to the wheelbase"},
    {"cg-height", "height of the centre of gravity", "length", "0 or more", false, "0"},
    {"slope", "gradient, front axle downhill", "slope", "negative with the front uphill", false, "0"}};
constexpr DeskKey axle_load_outputs[] = {{"front_N", "front axle, square to the floor", "N", ""},
                                         {"rear_N", "rear axle, square to the floor", "N", ""}};

Result<std::vector<DeskOutput>> run_axle_load(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Mass mass = in.required("mass", parse_mass);
    const Length wheelbase = in.required("wheelbase", parse_length);
    const Length cg_from_rear = in.required("cg-from-rear", parse_length);
    const Length cg_height = in.optional("cg-height", parse_length).value_or(Length{});
    const Slope slope = in.optional("slope", parse_slope).value_or(Slope{});
    if (in.failed()) {
        return in.failure();
    }
    return axle_loads(mass, wheelbase, cg_from_rear, cg_height, slope).map([](const AxleLoads& loads) {
        return OutputList(axle_load_outputs).add("front_N", loads.front.si()).add("rear_N", loads.rear.si()).take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"wheel-load", "load on one wheel of a cart", "T = S(E + Z)/n; n - 1 for all-but-one; W/2 for diagonal",
     "castor load formula of trade and standards practice (second-hand); diagonal by statics of a rigid frame",
     wheel_load_keys, wheel_load_outputs, run_wheel_load, "tare=120kg payload=480kg castors=4 sharing=all-but-one"},
    {"axle-load", "load on each axle, level or on a slope",
     "front = m g (r cos t + h sin t)/L; rear = m g cos t - front", "moments about the axles (derived)", axle_load_keys,
     axle_load_outputs, run_axle_load, "mass=600kg wheelbase=1m cg-from-rear=0.5m cg-height=0.8m slope=1:12"}};

}  // namespace

std::span<const DeskCalculation> load_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
