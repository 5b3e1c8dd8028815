#include "engine/physics/heat.hpp"
#include "engine/physics/heat_input.hpp"

#include <boost/math/policies/policy.hpp>
#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

namespace sillwalk::engine {
namespace {

constexpr double pi = 3.14159265358979323846;

/// Errors come back as values: the web build has no exceptions.
namespace policies = boost::math::policies;
using NoThrow =
    policies::policy<policies::domain_error<policies::errno_on_error>, policies::pole_error<policies::errno_on_error>,
                     policies::overflow_error<policies::errno_on_error>,
                     policies::evaluation_error<policies::errno_on_error>, policies::promote_double<false>>;

double bessel(int order, double z) {
    return boost::math::cyl_bessel_j(order, z, NoThrow());
}
double bessel_zero(double order, int number) {
    return boost::math::cyl_bessel_j_zero(order, number, NoThrow());
}

struct Term {
    double root = 0, coefficient = 0;
};
using Terms = std::vector<Term>;

template <class Function>
double root_between(Function function, double low, double high) {
    std::uintmax_t steps = 100;
    const auto bracket = boost::math::tools::toms748_solve(
        function, low, high, boost::math::tools::eps_tolerance<double>(50), steps, NoThrow());
    return (bracket.first + bracket.second) / 2.0;
}

/// zeta tan zeta = Bi, one root in every [n pi, n pi + pi/2]; written with sine and cosine to have no poles.
Terms wall_terms(double biot, int count) {
    Terms terms;
    for (int n = 0; n < count; ++n) {
        const auto balance = [biot](double z) { return z * std::sin(z) - biot * std::cos(z); };
        const double z = root_between(balance, n * pi, n * pi + pi / 2.0);
        terms.push_back({z, 4.0 * std::sin(z) / (2.0 * z + std::sin(2.0 * z))});
    }
    return terms;
}

/// zeta J1(zeta) = Bi J0(zeta), one root between each zero of J1 (0 for the first) and the next zero of J0.
Terms cylinder_terms(double biot, int count) {
    Terms terms;
    for (int n = 0; n < count; ++n) {
        const auto balance = [biot](double z) { return z * bessel(1, z) - biot * bessel(0, z); };
        const double low = n == 0 ? 0.0 : bessel_zero(1.0, n);
        const double z = root_between(balance, low, bessel_zero(0.0, n + 1));
        const double j0 = bessel(0, z), j1 = bessel(1, z);
        terms.push_back({z, 2.0 / z * j1 / (j0 * j0 + j1 * j1)});
    }
    return terms;
}

/// Enough terms that the last has died out at the shortest time; at least 40, at most 400.
int terms_needed(double least_fourier) {
    if (least_fourier <= 0.0) return 400;
    return static_cast<int>(std::clamp(std::sqrt(40.0 / least_fourier) / pi + 2.0, 40.0, 400.0));
}

/// A place as shares of the way from the centre to the surface.
struct Shares {
    double radial = 0, axial = 0;
};

double wall_at(const Terms& terms, double fourier, double share) {
    double sum = 0.0;
    for (const Term& t : terms) sum += t.coefficient * std::exp(-t.root * t.root * fourier) * std::cos(t.root * share);
    return sum;
}
double wall_mean(const Terms& terms, double fourier) {
    double sum = 0.0;
    for (const Term& t : terms) {
        sum += t.coefficient * std::exp(-t.root * t.root * fourier) * std::sin(t.root) / t.root;
    }
    return sum;
}
double cylinder_at(const Terms& terms, double fourier, double share) {
    double sum = 0.0;
    for (const Term& t : terms) {
        sum += t.coefficient * std::exp(-t.root * t.root * fourier) * bessel(0, t.root * share);
    }
    return sum;
}
double cylinder_mean(const Terms& terms, double fourier) {
    double sum = 0.0;
    for (const Term& t : terms) {
        sum += t.coefficient * std::exp(-t.root * t.root * fourier) * 2.0 * bessel(1, t.root) / t.root;
    }
    return sum;
}

/// What is left of a unit step in air temperature after some time.
struct Left {
    double core = 1, rim = 1, mean = 1, point = 1;
};

struct Series {
    Terms wall, cylinder;
    double radius = 0, half_width = 0, diffusivity = 0;

    [[nodiscard]] Left after(double seconds, const Shares& point) const {
        if (seconds <= 0.0) return {};
        const double fo_wall = diffusivity * seconds / (half_width * half_width);
        const double fo_cylinder = diffusivity * seconds / (radius * radius);
        const double middle = wall_at(wall, fo_wall, 0.0);
        return {middle * cylinder_at(cylinder, fo_cylinder, 0.0), middle * cylinder_at(cylinder, fo_cylinder, 1.0),
                wall_mean(wall, fo_wall) * cylinder_mean(cylinder, fo_cylinder),
                wall_at(wall, fo_wall, point.axial) * cylinder_at(cylinder, fo_cylinder, point.radial)};
    }
};

Series series_for(const Body& body, FilmCoefficient film, double least_seconds) {
    Series series;
    series.radius = body.diameter.si() / 2.0;
    series.half_width = body.width.si() / 2.0;
    series.diffusivity = body.conductivity.si() / (body.density.si() * body.specific_heat.si());
    const double film_over_k = film.si() / body.conductivity.si();
    const double fourier_length = series.diffusivity * least_seconds;
    series.wall = wall_terms(film_over_k * series.half_width,
                             terms_needed(fourier_length / (series.half_width * series.half_width)));
    series.cylinder =
        cylinder_terms(film_over_k * series.radius, terms_needed(fourier_length / (series.radius * series.radius)));
    return series;
}

bool one_film(const std::vector<HeatStage>& stages) {
    return std::all_of(stages.begin(), stages.end(),
                       [&](const HeatStage& stage) { return stage.film == stages.front().film; });
}

/// Shortest time over which a step of air temperature acts: the series must have converged there.
double least_time(const std::vector<HeatStage>& stages) {
    double least = 0.0;
    for (const HeatStage& stage : stages) {
        const double time = stage.time.si();
        if (time > 0.0 && (least == 0.0 || time < least)) least = time;
    }
    return least;
}

}  // namespace

Result<std::vector<BodyTemperatures>> temperatures_by_series(const Body& body, Temperature start,
                                                             const std::vector<HeatStage>& stages,
                                                             std::optional<BodyPoint> point) {
    if (auto wrong = heat_input_error(body, stages, point)) return tl::make_unexpected(*wrong);
    if (!one_film(stages)) {
        return bad_input("the series needs the same film coefficient in all stages; use finite volumes", "stages");
    }
    const Series series = series_for(body, stages.front().film, least_time(stages));
    Shares shares;
    if (point) {
        shares.radial = point->radius_at / (body.diameter / 2.0);
        shares.axial = abs(body.width / 2.0 - point->depth_from_face) / (body.width / 2.0);
    }
    std::vector<BodyTemperatures> results(stages.size());
    for (BodyTemperatures& result : results) {
        result.core = result.rim = result.mean = start;
        if (point) result.point = start;
    }
    // Duhamel: each stage adds a step of air temperature that goes on acting through all later stages.
    Temperature air_before = start;
    for (std::size_t from = 0; from < stages.size(); ++from) {
        const TemperatureChange step = stages[from].air - air_before;
        air_before = stages[from].air;
        double seconds = 0.0;
        for (std::size_t until = from; until < stages.size(); ++until) {
            seconds += stages[until].time.si();
            const Left left = series.after(seconds, shares);
            BodyTemperatures& result = results[until];
            result.core = result.core + step * (1.0 - left.core);
            result.rim = result.rim + step * (1.0 - left.rim);
            result.mean = result.mean + step * (1.0 - left.mean);
            if (point) result.point = *result.point + step * (1.0 - left.point);
        }
    }
    return results;
}

Result<std::vector<BodyTemperatures>> wheel_temperatures(const Body& body, Temperature start,
                                                         const std::vector<HeatStage>& stages,
                                                         std::optional<BodyPoint> point) {
    if (!stages.empty() && one_film(stages)) return temperatures_by_series(body, start, stages, point);
    return temperatures_by_volumes(body, start, stages, point);
}

}  // namespace sillwalk::engine
