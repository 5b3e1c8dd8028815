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

/// ln of a factor over a/t at one Poisson's ratio; logarithms keep the curve right over its forty-fold rise.
class FactorCurve {
public:
    FactorCurve(const LayerTable& table, double poisson, std::vector<double> LayerTable::Row::*column) {
        x_.push_back(0);
        x_.insert(x_.end(), table.contact_over_thickness.begin(), table.contact_over_thickness.end());
        y_.push_back(0);
        for (std::size_t i = 0; i < table.contact_over_thickness.size(); ++i) {
            y_.push_back(at_poisson(table, poisson, column, i));
        }
        slopes_ = monotone_slopes(x_, y_);
        slopes_.front() = 0;  // the factors leave 1 with the square of a/t
    }
    [[nodiscard]] double factor(double x) const { return std::exp(monotone_value(x_, y_, slopes_, x)); }

private:
    static double at_poisson(const LayerTable& table, double poisson, std::vector<double> LayerTable::Row::*column,
                             std::size_t i) {
        std::vector<double> nu;
        std::vector<double> logs;
        for (auto row = table.rows.rbegin(); row != table.rows.rend(); ++row) {
            nu.push_back(row->poisson);
            logs.push_back(std::log(((*row).*column)[i]));
        }
        return monotone_value(nu, logs, monotone_slopes(nu, logs), poisson);
    }

    std::vector<double> x_, y_, slopes_;
};

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

Result<LayerSolution> solve_layer(double load_number, double poisson, const LayerTable& table) {
    EXPECT_CONTRACT(table.rows.size() >= 2 && table.contact_over_thickness.size() >= 2);
    const double lowest = table.rows.back().poisson;
    const double highest = table.rows.front().poisson;
    if (poisson < lowest || poisson > highest) {
        return no_answer(
            fmt::format("The table of bonded treads covers Poisson's ratio {:.2f} to {:.2f}.", lowest, highest));
    }
    const FactorCurve load(table, poisson, &LayerTable::Row::load_factor);
    const FactorCurve pressure(table, poisson, &LayerTable::Row::pressure_factor);
    const double widest = table.contact_over_thickness.back();
    const double most = widest * widest * load.factor(widest);
    if (load_number > most * (1 + 1e-9)) {
        return no_answer(fmt::format(
            "The contact is more than {:.0f} times as wide as the tread is thick: outside the table.", 2 * widest));
    }
    const double target = std::min(load_number, most);  // the table's own end, but for rounding
    const auto excess = [&](double x) { return x * x * load.factor(x) - target; };
    std::uintmax_t rounds = 100;
    const auto bracket = boost::math::tools::toms748_solve(
        excess, 0.0, widest, boost::math::tools::eps_tolerance<double>(50), rounds, NoThrow());
    const double x = 0.5 * (bracket.first + bracket.second);
    return LayerSolution{x, {load.factor(x), pressure.factor(x)}};
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
