#include "engine/physics/bonded_layer.hpp"

#include "engine/base/contract.hpp"
#include "engine/physics/monotone_curve.hpp"

#include <boost/math/policies/policy.hpp>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <vector>

namespace sillwalk::engine {

namespace {

namespace policies = boost::math::policies;
using NoThrow =
    policies::policy<policies::domain_error<policies::errno_on_error>, policies::pole_error<policies::errno_on_error>,
                     policies::overflow_error<policies::errno_on_error>,
                     policies::evaluation_error<policies::errno_on_error>, policies::promote_double<false>>;

using Factor = std::vector<double> LayerTable::Row::*;

double log_at_poisson(const LayerTable& table, double poisson, Factor factor, std::size_t point) {
    std::vector<double> nu;
    std::vector<double> logs;
    for (auto row = table.rows.rbegin(); row != table.rows.rend(); ++row) {
        nu.push_back(row->poisson);
        logs.push_back(std::log(((*row).*factor)[point]));
    }
    return monotone_value(nu, logs, monotone_slopes(nu, logs), poisson);
}

/// Both factors leave 1 with the square of a/t. Logarithms keep the curve right over its forty-fold rise.
void fill_curve(const LayerTable& table, const LayerCurves& curves, Factor factor, std::vector<double>& logs,
                std::vector<double>& slopes) {
    logs.push_back(0);
    for (std::size_t i = 0; i < table.contact_over_thickness.size(); ++i) {
        logs.push_back(log_at_poisson(table, curves.poisson, factor, i));
    }
    slopes = monotone_slopes(curves.contact_over_thickness, logs);
    slopes.front() = 0;
}

double load_factor(const LayerCurves& curves, double x) {
    return std::exp(monotone_value(curves.contact_over_thickness, curves.log_load, curves.load_slopes, x));
}
double pressure_factor(const LayerCurves& curves, double x) {
    return std::exp(monotone_value(curves.contact_over_thickness, curves.log_pressure, curves.pressure_slopes, x));
}

/// Exponent n of (1 - x^2)^n whose peak over mean is `peak_over_mean` (4/pi for Hertz, n = 1/2).
double pressure_exponent(double peak_over_mean) {
    const auto excess = [peak_over_mean](double n) {
        const double mean_over_peak =
            0.5 * std::sqrt(std::numbers::pi) * boost::math::tgamma_delta_ratio(n + 1, 0.5, NoThrow());
        return 1 / mean_over_peak - peak_over_mean;
    };
    std::uintmax_t rounds = 60;
    const auto bracket = boost::math::tools::toms748_solve(
        excess, 0.3, 4.0, boost::math::tools::eps_tolerance<double>(40), rounds, NoThrow());
    return 0.5 * (bracket.first + bracket.second);
}

double layer_compliance(double s, double poisson) {
    const double k = 3 - 4 * poisson;
    if (s > 40) {
        return 1;  // the hyperbolic terms alone, to the last digit
    }
    return (2 * k * std::sinh(2 * s) - 4 * s) / (2 * k * std::cosh(2 * s) + 4 * s * s + 1 + k * k);
}

}  // namespace

LayerCurves layer_curves(const LayerTable& table, double poisson) {
    LayerCurves curves;
    curves.poisson = poisson;
    curves.contact_over_thickness.push_back(0);
    curves.contact_over_thickness.insert(curves.contact_over_thickness.end(), table.contact_over_thickness.begin(),
                                         table.contact_over_thickness.end());
    fill_curve(table, curves, &LayerTable::Row::load_factor, curves.log_load, curves.load_slopes);
    fill_curve(table, curves, &LayerTable::Row::pressure_factor, curves.log_pressure, curves.pressure_slopes);
    return curves;
}

namespace {

Result<LayerSolution> solve_on(const LayerCurves& curves, double load_number) {
    const double widest = curves.contact_over_thickness.back();
    const double most = widest * widest * load_factor(curves, widest);
    if (load_number > most * (1 + 1e-9)) {
        return no_answer(fmt::format(
            "The contact is more than {:.0f} times as wide as the tread is thick: outside the table.", 2 * widest));
    }
    const double target = std::min(load_number, most);  // the table's own end, but for rounding
    const auto excess = [&](double x) { return x * x * load_factor(curves, x) - target; };
    std::uintmax_t rounds = 100;
    const auto bracket = boost::math::tools::toms748_solve(
        excess, 0.0, widest, boost::math::tools::eps_tolerance<double>(50), rounds, NoThrow());
    const double x = 0.5 * (bracket.first + bracket.second);
    return LayerSolution{x, {load_factor(curves, x), pressure_factor(curves, x)}};
}

}  // namespace

Result<LayerSolution> solve_layer(double load_number, double poisson, const LayerTable& table) {
    EXPECT_CONTRACT(table.rows.size() >= 2 && table.contact_over_thickness.size() >= 2);
    const double lowest = table.rows.back().poisson;
    const double highest = table.rows.front().poisson;
    if (poisson < lowest || poisson > highest) {
        return no_answer(
            fmt::format("The table of bonded treads covers Poisson's ratio {:.2f} to {:.2f}.", lowest, highest));
    }
    for (const LayerCurves& curves : table.prepared) {
        if (curves.poisson == poisson) return solve_on(curves, load_number);
    }
    return solve_on(layer_curves(table, poisson), load_number);
}

double layer_approach(const LayerSolution& solution, double poisson) {
    const double n = pressure_exponent(4 / std::numbers::pi * solution.factors.pressure / solution.factors.load);
    // P(u)/(p0 a) = sqrt(pi) G(n+1) (2/u)^(n+1/2) J_{n+1/2}(u), u = s a; the approach is its transform at the centre.
    const double scale = std::sqrt(std::numbers::pi) * boost::math::tgamma(n + 1, NoThrow());
    const auto integrand = [&](double u) {
        return layer_compliance(u / solution.contact_over_thickness, poisson) / u * scale * std::pow(2 / u, n + 0.5) *
               boost::math::cyl_bessel_j(n + 0.5, u, NoThrow());
    };
    constexpr double panel = 4.0;
    constexpr int panels = 16;  // the rest is under 1e-4 of the whole
    double sum = 0;
    for (int i = 0; i < panels; ++i) {
        sum += boost::math::quadrature::gauss<double, 10>::integrate(integrand, i * panel, (i + 1) * panel);
    }
    return solution.factors.pressure * sum / std::numbers::pi;  // times p0 = E* a g/2R, over E* a/R
}

}  // namespace sillwalk::engine
