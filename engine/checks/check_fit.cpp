/// Does it go on? Wheel, bearing and rig against each other, and against what the cart takes.
/// The cart's own fork and axle are held to where they were read (the wheel alone is changed); the height limit is
/// needed. fit_ok: hub length, fork width, axle, overall height. fit_width: hub or tread width, fork. fit_hub: bearing
/// length, hub. fit_axle: bearing's axle, axle. fit_bore: bearing's outside, hub bore. fit_height: height, limit.
/// fit_diameter: wheel, rig's wheel. fit_plate: none. Sizes agree within the rounding between inch and millimetre
/// catalogues. Practice.

#include "engine/checks/checks.hpp"
#include "engine/checks/judge.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

/// Half a millimetre: how far a size in one catalogue may be rounded from the same size in another.
constexpr Length rounding = 0.5 * millimetre;
constexpr double fits_use = 0.5, misfits_use = 1.5;

Amount of(Length length) {
    return {length.si(), Kind::length};
}

/// A part that must not be longer than its space; silent where it fits.
void at_most(Judge& judge, Statement statement, Length part, Length space) {
    if (part <= space + rounding) return;
    judge.part({.demand = of(part),
                .capacity = of(space),
                .use = space > Length{} ? part / space : misfits_use,
                .statement = statement,
                .formula = "fit-width",
                .numbers = {of(part), of(space)},
                .outcome = Outcome::fails});
}

/// Two sizes that must be the same; silent where they are.
void equal(Judge& judge, Statement statement, Length part, Length space) {
    if (abs(part - space) <= rounding) return;
    judge.part({.demand = of(part),
                .capacity = of(space),
                .use = misfits_use,
                .statement = statement,
                .formula = "fit-width",
                .numbers = {of(part), of(space)},
                .outcome = Outcome::fails});
}

void add_parts(Judge& judge, const Wheel& wheel, const Bearing& bearing, const Rig& rig) {
    equal(judge, Statement::fit_diameter, wheel.diameter, rig.wheel_diameter);
    at_most(judge, Statement::fit_width, std::max(wheel.hub_length, wheel.tread_width), rig.fork_width);
    equal(judge, Statement::fit_bore, bearing.outer_diameter, wheel.hub_bore);
    at_most(judge, Statement::fit_hub, static_cast<double>(bearing.count) * bearing.length, wheel.hub_length);
    equal(judge, Statement::fit_axle, bearing.axle_diameter, rig.axle_diameter);
}

void add_cart(Judge& judge, const CheckContext& context) {
    const CartDemand& cart = *context.cart;
    const Wheel& wheel = *context.wheel;
    const Rig& rig = *context.rig;
    if (cart.fork_width.given) {
        at_most(judge, Statement::fit_width, std::max(wheel.hub_length, wheel.tread_width),
                *judge.low(cart.fork_width));
    }
    if (cart.axle_diameter.given) {
        const Length axle = context.bearing->axle_diameter;
        const Length least = *judge.low(cart.axle_diameter), greatest = *judge.high(cart.axle_diameter);
        equal(judge, Statement::fit_axle, axle, std::clamp(axle, least, greatest));
    }
    if (const auto limit = judge.low(cart.overall_height_limit)) {
        at_most(judge, Statement::fit_height, rig.overall_height, *limit);
    }
    if (!cart.plate_pattern.given) return;
    const std::string* pattern = judge.choice(cart.plate_pattern);
    if (pattern->empty() || *pattern == rig.plate_pattern) return;
    judge.part(
        {.use = misfits_use, .statement = Statement::fit_plate, .formula = "fit-width", .outcome = Outcome::fails});
}

}  // namespace

Finding check_fit(const CheckContext& context) {
    Judge judge(CheckId::fit, context);
    const Wheel& wheel = *context.wheel;
    const Rig& rig = *context.rig;
    judge.part({.demand = of(wheel.hub_length),
                .capacity = of(rig.fork_width),
                .use = fits_use,
                .statement = Statement::fit_ok,
                .formula = "fit-width",
                .numbers = {of(wheel.hub_length), of(rig.fork_width), of(context.bearing->axle_diameter),
                            of(rig.overall_height)},
                .outcome = Outcome::holds});
    add_parts(judge, wheel, *context.bearing, rig);
    add_cart(judge, context);
    return judge.finish();
}

}  // namespace sillwalk::engine
