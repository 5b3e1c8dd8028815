#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/stability.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey tip_keys[] = {
    {"cg-height", "height of the centre of gravity", "length", "over 0"},
    {"base-ahead", "from the centre of gravity to the leading wheel", "length", "over 0"},
    {"gyration-squared", "I_G/m of the cart", "area", "0 or more", false, "0, a point mass"},
    {"g", "gravity", "acceleration", "over 0", false, "9.80665m/s2"}};
constexpr DeskKey tip_outputs[] = {{"least_speed_m_per_s", "least speed at which a dead stop tips it", "m/s", ""},
                                   {"energy_only_m_per_s", "the same without the loss in the blow", "m/s", ""},
                                   {"tilt_deg", "tilt at which it balances", "deg", ""}};

Result<std::vector<DeskOutput>> run_tip(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Length cg_height = in.required("cg-height", parse_length);
    const Length base_ahead = in.required("base-ahead", parse_length);
    const Area gyration_squared = in.optional("gyration-squared", parse_area).value_or(Area{});
    const Acceleration g = in.gravity();
    if (in.failed()) {
        return in.failure();
    }
    return tipping(cg_height, base_ahead, gyration_squared, g).map([](const Tipping& result) {
        return OutputList(tip_outputs)
            .add("least_speed_m_per_s", result.least.si())
            .add("energy_only_m_per_s", result.energy_only.si())
            .add("tilt_deg", result.tilt_degrees)
            .take();
    });
}

constexpr DeskKey flat_keys[] = {
    {"half-width", "half the contact along the travel, fresh", "length", "over 0, up to the radius"},
    {"diameter", "wheel diameter", "length", "over 0"},
    {"time", "how long it stands loaded", "time", "0 or more; no creep before one minute"},
    {"creep-per-decade", "growth of the compliance per tenfold time", "number", "0 or more"},
    {"set-share", "share of the dent that stays", "share", "0 to 1"}};
constexpr DeskKey flat_outputs[] = {{"left_m", "depth of the flat spot left, an estimate", "m", ""},
                                    {"half_width_later_m", "half the contact after that time", "m", ""},
                                    {"sagitta_m", "depth of the dent under load", "m", ""},
                                    {"chord_m", "length of the flat", "m", ""}};

Result<std::vector<DeskOutput>> run_flat(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Length half_width = in.required("half-width", parse_length);
    const Length diameter = in.required("diameter", parse_length);
    const Duration time = in.required("time", parse_duration);
    const double creep = in.required("creep-per-decade", parse_share);
    const double set_share = in.required("set-share", parse_share);
    if (in.failed()) {
        return in.failure();
    }
    return flat_spot(half_width, diameter, time, creep, set_share).map([](const FlatSpot& result) {
        return OutputList(flat_outputs)
            .add("left_m", result.left.si())
            .add("half_width_later_m", result.half_width_later.si())
            .add("sagitta_m", result.sagitta.si())
            .add("chord_m", result.chord.si())
            .take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"tip", "speed at which a dead stop tips a cart", "v = sqrt(2 g (sqrt(d^2 + H^2) - H)) sqrt((I/m + d^2 + H^2)/H^2)",
     "angular momentum about the stopped wheel, then energy (derived; block problem of dynamics texts from memory)",
     tip_keys, tip_outputs, run_tip, "cg-height=0.9m base-ahead=0.4m"},
    {"flat-spot", "flat spot of a wheel left standing, an estimate",
     "J/J0 = 1 + c log10(t/1 min); b = b0 sqrt(J/J0); sagitta b^2/2R; left = set share x sagitta; chord 2b",
     "viscoelastic contact in the form of Lee & Radok 1960 (from memory); calibrate", flat_keys, flat_outputs, run_flat,
     "half-width=11.86mm diameter=152.4mm time=72h creep-per-decade=0.10 set-share=0.20"}};

}  // namespace

std::span<const DeskCalculation> stability_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
