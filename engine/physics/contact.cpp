#include "engine/physics/bonded_layer.hpp"
#include "engine/physics/elastic.hpp"
#include "engine/physics/guard.hpp"

#include <boost/math/policies/policy.hpp>
#include <boost/math/special_functions/ellint_rd.hpp>
#include <boost/math/special_functions/ellint_rf.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <cmath>
#include <cstdint>
#include <numbers>

namespace sillwalk::engine {

namespace {

using std::numbers::pi;
namespace policies = boost::math::policies;
using NoThrow = policies::policy<policies::domain_error<policies::errno_on_error>,
                                 policies::overflow_error<policies::errno_on_error>,
                                 policies::evaluation_error<policies::errno_on_error>, policies::promote_double<false>>;

Guard check(const ContactInput& in) {
    Guard guard;
    guard.over_zero(in.load.si(), "load")
        .over_zero(in.diameter.si(), "diameter")
        .over_zero(in.width.si(), "width")
        .over_zero(in.modulus.si(), "modulus")
        .require(in.poisson >= 0 && in.poisson <= 0.5, "poisson", "must be from 0 to 0.5")
        .require(in.floor_poisson >= 0 && in.floor_poisson <= 0.5, "floor-poisson", "must be from 0 to 0.5");
    if (in.crown_radius) {
        guard.over_zero(in.crown_radius->si(), "crown-radius");
    }
    if (in.floor_modulus) {
        guard.over_zero(in.floor_modulus->si(), "floor-modulus");
    }
    if (in.tread_thickness) {
        guard.over_zero(in.tread_thickness->si(), "tread-thickness")
            .require(*in.tread_thickness < 0.5 * in.diameter, "tread-thickness", "must be less than the wheel's radius")
            .require(!in.crown_radius, "tread-thickness", "holds for flat treads only: leave out the crown radius");
    }
    return guard;
}

/// E* of tread and floor together; a floor without a modulus is taken as rigid.
Pressure combined_modulus(const ContactInput& in) {
    const double tread = (1 - in.poisson * in.poisson) / in.modulus.si();
    const double floor = in.floor_modulus ? (1 - in.floor_poisson * in.floor_poisson) / in.floor_modulus->si() : 0.0;
    return Pressure::from_si(1 / (tread + floor));
}

/// Ratio of the ellipse's axes, short over long, for a ratio of the curvatures of at least 1 (Johnson ch. 4).
/// With D the complete Carlson integral: B/A = D(0, 1, k^2)/D(0, k^2, 1).
Result<double> axis_ratio(double curvature_ratio) {
    const auto excess = [curvature_ratio](double log_k) {
        const double k2 = std::exp(2 * log_k);
        return boost::math::ellint_rd(0.0, 1.0, k2, NoThrow()) / boost::math::ellint_rd(0.0, k2, 1.0, NoThrow()) -
               curvature_ratio;
    };
    if (curvature_ratio == 1) {
        return 1.0;
    }
    constexpr double slenderest = -14;  // ln k; the patch is a million times as long as wide
    if (excess(slenderest) < 0) {
        return no_answer("The crown is too flat for the elliptic contact: leave the crown radius out.");
    }
    std::uintmax_t rounds = 200;
    const auto bracket = boost::math::tools::toms748_solve(
        excess, slenderest, 0.0, boost::math::tools::eps_tolerance<double>(48), rounds, NoThrow());
    return std::exp(0.5 * (bracket.first + bracket.second));
}

Result<Contact> elliptic(const ContactInput& in, Pressure modulus) {
    const double radius = in.diameter.si() / 2;
    const double crown = in.crown_radius->si();
    const double long_radius = std::max(radius, crown);
    const double short_radius = std::min(radius, crown);
    const auto ratio = axis_ratio(long_radius / short_radius);
    if (!ratio) {
        return tl::make_unexpected(ratio.error());
    }
    const double k2 = *ratio * *ratio;
    const double load = in.load.si();
    const double e = modulus.si();
    // a^3 = 3 W (K - E)/(2 pi E* m A), A = 1/2R, (K - E)/m = D(0, k^2, 1)/3
    const double long_axis = std::cbrt(load * boost::math::ellint_rd(0.0, k2, 1.0, NoThrow()) * long_radius / (pi * e));
    const double short_axis = *ratio * long_axis;
    const double complete_k = boost::math::ellint_rf(0.0, k2, 1.0, NoThrow());

    Contact out;
    out.model = ContactModel::elliptic;
    const bool long_across = crown >= radius;
    out.half_width = Length::from_si(long_across ? short_axis : long_axis);
    out.half_length = Length::from_si(long_across ? long_axis : short_axis);
    out.peak = Pressure::from_si(1.5 * load / (pi * long_axis * short_axis));
    out.mean = out.peak * (2.0 / 3.0);
    out.approach = Length::from_si(1.5 * load * complete_k / (pi * long_axis * e));
    return out;
}

Contact line(const ContactInput& in, Pressure modulus) {
    Contact out;
    out.half_width = sqrt((2 / pi) * (in.load * in.diameter / (in.width * modulus)));
    out.peak = (2 / pi) * (in.load / (out.half_width * in.width));
    out.mean = out.peak * (pi / 4);
    return out;
}

Result<Contact> layer_contact(const ContactInput& in, Pressure modulus, const LayerTable& table) {
    const Length thickness = *in.tread_thickness;
    const double load_number = (2 / pi) * (in.load * in.diameter / (in.width * modulus * thickness * thickness));
    const auto solution = solve_layer(load_number, in.poisson, table);
    if (!solution) {
        return tl::make_unexpected(solution.error());
    }
    Contact out;
    out.model = ContactModel::layer;
    out.half_width = thickness * solution->contact_over_thickness;
    out.peak = modulus * (out.half_width / in.diameter) * solution->factors.pressure;
    out.mean = in.load / (2 * (out.half_width * in.width));
    const Length curvature_height = out.half_width * out.half_width / (0.5 * in.diameter);
    if (in.with_approach) out.approach = curvature_height * layer_approach(*solution, in.poisson);
    return out;
}

std::string caution_for(const ContactInput& in, const Contact& contact) {
    std::string out;
    if (contact.half_width > 0.3 * (0.5 * in.diameter)) {
        out = "The patch is wider than 0.3 of the radius: beyond small-strain contact, take it as rough.";
    }
    if (contact.half_length && 2 * *contact.half_length > in.width) {
        out += out.empty() ? "" : " ";
        out += "The patch would be longer than the face: also work out the flat tread.";
    }
    return out;
}

}  // namespace

Result<Contact> contact(const ContactInput& input, const LayerTable& layer) {
    const Guard guard = check(input);
    if (guard.failed()) {
        return guard.failure();
    }
    const Pressure modulus = combined_modulus(input);
    Result<Contact> out = input.crown_radius      ? elliptic(input, modulus)
                          : input.tread_thickness ? layer_contact(input, modulus, layer)
                                                  : Result<Contact>(line(input, modulus));
    if (out) {
        out->caution = caution_for(input, *out);
    }
    return out;
}

}  // namespace sillwalk::engine
