#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/people.hpp"

namespace sillwalk::engine {

namespace {

constexpr DeskKey action_key{"action", "push or pull", "push | pull", ""};
constexpr DeskKey phase_key{"phase", "starting it or keeping it moving", "start | sustain", ""};
constexpr DeskKey sex_key{"sex", "whose limit", "female | male", ""};
constexpr DeskKey height_key{"hand-height", "height of the hands over the floor", "length",
                             "women 0.58 to 1.33 m, men 0.63 to 1.44 m"};
constexpr DeskKey distance_key{"distance", "distance of one push", "length",
                               "2.1 to 61 m; a shorter one counts as 2.1 m"};
constexpr DeskKey rate_key{"rate", "pushes per minute", "number", "1/480 to 10; distance x rate up to 37 m a minute"};

PushTask read_task(ArgumentReader& in) {
    PushTask task;
    task.action = in.required_word<PushAction>("action", {{"push", PushAction::push}, {"pull", PushAction::pull}});
    task.phase = in.required_word<PushPhase>("phase", {{"start", PushPhase::start}, {"sustain", PushPhase::sustain}});
    task.sex = in.required_word<Sex>("sex", {{"female", Sex::female}, {"male", Sex::male}});
    task.hand_height = in.required("hand-height", parse_length);
    task.distance = in.required("distance", parse_length);
    task.rate = in.required("rate", parse_number) * per_minute;
    return task;
}

constexpr DeskKey limit_keys[] = {
    action_key, phase_key,    sex_key, {"share", "share of them who accept it", "share", "over 0, under 1"},
    height_key, distance_key, rate_key};
constexpr DeskKey limit_outputs[] = {
    {"force_N", "acceptable to that share", "N", ""},
    {"force_kgf", "the same", "kgf", ""},
    {"median_kgf", "acceptable to half of them", "kgf", ""},
    {"height_factor", "for the height of the hands", "", ""},
    {"distance_factor", "for the distance", "", ""},
    {"rate_factor", "for the rate", "", ""},
    {"caution", "so much distance a minute that breath may limit before strength", "", ""}};

Result<std::vector<DeskOutput>> run_limit(const DeskArguments& arguments, const Tables& tables) {
    ArgumentReader in(arguments);
    const PushTask task = read_task(in);
    const double share = in.required("share", parse_share);
    if (in.failed()) {
        return in.failure();
    }
    return push_limit(task, share, tables.people).map([](const PushLimit& limit) {
        return OutputList(limit_outputs)
            .add("force_N", limit.force.si())
            .add("force_kgf", limit.force.in(kilogram_force))
            .add("median_kgf", limit.median.in(kilogram_force))
            .add("height_factor", limit.height_factor)
            .add("distance_factor", limit.distance_factor)
            .add("rate_factor", limit.rate_factor)
            .add("caution", limit.caution)
            .take();
    });
}

constexpr DeskKey share_keys[] = {action_key, phase_key,    sex_key, {"force", "hand force", "force", "0 or more"},
                                  height_key, distance_key, rate_key};
constexpr DeskKey share_outputs[] = {{"share", "share of them who accept that force", "", ""}};

Result<std::vector<DeskOutput>> run_share(const DeskArguments& arguments, const Tables& tables) {
    ArgumentReader in(arguments);
    const PushTask task = read_task(in);
    const Force force = in.load("force");
    if (in.failed()) {
        return in.failure();
    }
    return push_share(task, force, tables.people).map([](double share) {
        return OutputList(share_outputs).add("share", share).take();
    });
}

constexpr DeskKey traction_keys[] = {
    {"mass", "mass of the person", "mass", "over 0"},
    {"friction", "shoe on floor", "number", "0 or more"},
    {"slope", "gradient pushed up", "slope", "under the friction", false, "0"},
    {"hand-angle", "hand force below the horizontal; level floor only", "slope", "negative upward", false, "0"},
    {"reserve", "share of the traction that may be used", "share", "over 0, at most 1", false, "1"}};
constexpr DeskKey traction_outputs[] = {{"force_N", "greatest hand force before the feet slip", "N", ""}};

Result<std::vector<DeskOutput>> run_traction(const DeskArguments& arguments, const Tables&) {
    ArgumentReader in(arguments);
    const Mass mass = in.required("mass", parse_mass);
    const double friction = in.required("friction", parse_number);
    const Slope slope = in.optional("slope", parse_slope).value_or(Slope{});
    const Slope hand_angle = in.optional("hand-angle", parse_slope).value_or(Slope{});
    const double reserve = in.optional("reserve", parse_share).value_or(1.0);
    if (in.failed()) {
        return in.failure();
    }
    return traction_force(mass, friction, slope, hand_angle, reserve).map([](Force force) {
        return OutputList(traction_outputs).add("force_N", force.si()).take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"push-limit", "hand force that a share of people accept over a working day",
     "F = RL x VSF x DHSF x FSF x (1 - CV z(p)) kgf",
     "Potvin, Ciriello, Snook, Maynard & Brogmus 2021, Ergonomics 64(8):955-970 (second-hand); favourable temperatures",
     limit_keys, limit_outputs, run_limit,
     "action=push phase=start sex=female share=75% hand-height=1m distance=2.1m rate=1"},
    {"push-share", "share of people to whom a hand force is acceptable", "p = 1 - Phi((F - MAL)/(CV MAL))",
     "Potvin, Ciriello, Snook, Maynard & Brogmus 2021, Ergonomics 64(8):955-970 (second-hand); favourable temperatures",
     share_keys, share_outputs, run_share,
     "action=push phase=start sex=female force=15kgf hand-height=1m distance=20m rate=1/5"},
    {"traction", "greatest push before the feet slip",
     "F = m g mu/(1 + mu tan a) level; F = m g (mu cos t - sin t) on a slope; times the reserve", "statics (derived)",
     traction_keys, traction_outputs, run_traction, "mass=50kg friction=0.35 reserve=0.7"}};

}  // namespace

std::span<const DeskCalculation> people_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
