#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/elastic.hpp"

namespace sillwalk::engine {

namespace {

enum class Relation { gent, log10, urethane };

constexpr DeskKey hardness_keys[] = {
    {"scale", "Shore scale", "A | D", ""},
    {"value", "hardness read", "number",
     "gent 20 A to under 100 A; log10 20 to 100 A or 30 to 85 D; urethane 30 to 76 D"},
    {"relation", "which relation", "gent | log10 | urethane", "", false,
     "gent for A; urethane for D from 30 to 76, else log10"},
    {"temperature", "of the tread; urethane only", "temperature", "-40 to 80 degC", false, "23degC"},
    {"kind", "soft segment; urethane only", "ether | ester", "", false, "not known: a band over both"}};
constexpr DeskKey hardness_outputs[] = {{"modulus_Pa", "Young's modulus", "Pa", ""},
                                        {"low_Pa", "low end of its band", "Pa", ""},
                                        {"high_Pa", "high end of its band", "Pa", ""}};

Relation usual_relation(HardnessScale scale, double value) {
    if (scale == HardnessScale::shore_a) {
        return Relation::gent;
    }
    return value >= 30 && value <= 76 ? Relation::urethane : Relation::log10;
}

Result<Modulus> urethane_from(HardnessScale scale, double value, Temperature temperature, SoftSegment soft) {
    if (scale == HardnessScale::shore_d) {
        return modulus_urethane(value, temperature, soft);
    }
    return shore_d_from_a(value).and_then([=](double shore_d) { return modulus_urethane(shore_d, temperature, soft); });
}

Result<std::vector<DeskOutput>> run_hardness(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const auto scale =
        in.required_word<HardnessScale>("scale", {{"A", HardnessScale::shore_a}, {"D", HardnessScale::shore_d}});
    const double value = in.required("value", parse_number);
    const Relation relation =
        in.optional_word<Relation>(
              "relation", {{"gent", Relation::gent}, {"log10", Relation::log10}, {"urethane", Relation::urethane}})
            .value_or(usual_relation(scale, value));
    const auto temperature = in.optional("temperature", parse_temperature).value_or(celsius(23));
    const auto soft =
        in.optional_word<SoftSegment>("kind", {{"ether", SoftSegment::ether}, {"ester", SoftSegment::ester}});
    for (const char* key : {"temperature", "kind"}) {
        if (in.has(key) && relation != Relation::urethane) {
            in.keep(key, "goes with relation=urethane only: leave it out");
        }
    }
    if (relation == Relation::gent && scale == HardnessScale::shore_d) {
        in.keep("relation", "\"gent\" takes Shore A only; for Shore D write log10 or urethane");
    }
    if (in.failed()) {
        return in.failure();
    }
    const Result<Modulus> modulus = relation == Relation::gent ? modulus_gent(value)
                                    : relation == Relation::log10
                                        ? modulus_log10(scale, value)
                                        : urethane_from(scale, value, temperature, soft.value_or(SoftSegment::unknown));
    return modulus.map([](const Modulus& result) {
        return OutputList(hardness_outputs)
            .add("modulus_Pa", result.value.si())
            .add("low_Pa", result.low.si())
            .add("high_Pa", result.high.si())
            .take();
    });
}

constexpr DeskKey contact_keys[] = {
    {"load", "load on the wheel", "force, or mass as its weight", "over 0"},
    {"diameter", "wheel diameter", "length", "over 0"},
    {"width", "width of the tread face", "length", "over 0"},
    {"modulus", "Young's modulus of the tread", "pressure", "over 0"},
    {"poisson", "Poisson's ratio of the tread", "number", "0 to 0.5; bonded 0.40 to 0.50"},
    {"crown-radius", "radius of the crown across the tread", "length", "over 0", false, "a flat tread"},
    {"floor-modulus", "Young's modulus of the floor", "pressure", "over 0", false, "a rigid floor"},
    {"floor-poisson", "Poisson's ratio of the floor", "number", "0 to 0.5", false, "0.2"},
    {"tread-thickness", "thickness of a tread bonded to a rigid core; flat treads only", "length",
     "over 0, under the radius", false, "a solid wheel"}};
constexpr DeskKey contact_outputs[] = {
    {"peak_Pa", "greatest pressure on the floor", "Pa", ""},
    {"mean_Pa", "mean pressure over the patch", "Pa", ""},
    {"half_width_m", "half the patch along the travel", "m", ""},
    {"half_length_m", "half the patch across; crowned only", "m", "", false},
    {"approach_m", "how far the wheel settles; crowned and bonded only", "m", "", false},
    {"caution", "where the formula is stretched; empty where it is not", "", ""}};

Result<std::vector<DeskOutput>> run_contact(const DeskArguments& arguments, const Tables& tables) {
    ArgumentReader in(arguments);
    ContactInput input;
    input.load = in.load("load");
    input.diameter = in.required("diameter", parse_length);
    input.width = in.required("width", parse_length);
    input.modulus = in.required("modulus", parse_pressure);
    input.poisson = in.required("poisson", parse_number);
    input.crown_radius = in.optional("crown-radius", parse_length);
    input.floor_modulus = in.optional("floor-modulus", parse_pressure);
    input.floor_poisson = in.optional("floor-poisson", parse_number).value_or(input.floor_poisson);
    input.tread_thickness = in.optional("tread-thickness", parse_length);
    if (in.failed()) {
        return in.failure();
    }
    return contact(input, tables.layer).map([](const Contact& result) {
        return OutputList(contact_outputs)
            .add("peak_Pa", result.peak.si())
            .add("mean_Pa", result.mean.si())
            .add("half_width_m", result.half_width.si())
            .add_si("half_length_m", result.half_length)
            .add_si("approach_m", result.approach)
            .add("caution", result.caution)
            .take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"hardness", "Young's modulus from Shore hardness",
     "gent: 0.0981(56 + 7.62336 S)/(0.137505(254 - 2.54 S)) MPa; log10: 10^(0.0235 S - 0.6403) MPa, S = D + 50; "
     "urethane: fit over hardness and temperature",
     "Gent 1958, Trans. Inst. Rubber Industry 34:46; Qi, Joyce & Boyce 2003, Rubber Chem. Technol. 76:419; fit to "
     "published data sheets of urethanes (derived)",
     hardness_keys, hardness_outputs, run_hardness,
     "scale=D value=60 relation=urethane temperature=-25degC kind=ether"},
    {"contact", "patch and pressure of a wheel on the floor",
     "line: b = sqrt(4 W R/(pi L E*)), p = 2 W/(pi b L); crown: Hertz ellipse; bonded: W/L = (pi E* a^2/4R) f(a/t), "
     "p = (E* a/2R) g(a/t)",
     "Hertz; Johnson, Contact Mechanics, ch. 4 (from memory); bonded layer by kernel solution (derived)", contact_keys,
     contact_outputs, run_contact,
     "load=1000lbf diameter=6in width=2in modulus=46MPa poisson=0.49 tread-thickness=1/4in"}};

}  // namespace

std::span<const DeskCalculation> contact_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
