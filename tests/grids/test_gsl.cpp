// Contact, push limits and wheel temperatures against the GNU Scientific Library.

#include "app/data/load_tables.hpp"
#include "engine/physics/elastic.hpp"
#include "engine/physics/heat.hpp"
#include "engine/physics/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <gsl/gsl_roots.h>
#include <gsl/gsl_sf_bessel.h>
#include <gsl/gsl_sf_ellint.h>
#include <numbers>
#include <vector>

using namespace sillwalk::engine;

namespace {

constexpr double pi = std::numbers::pi;

const Tables& tables() {
    static const sillwalk::app::LoadedTables loaded = sillwalk::app::load_tables();
    REQUIRE(loaded.errors.empty());
    return loaded.tables;
}

/// The root of a function of one number between two ends of unlike sign, by GSL's Brent method.
template <class Function>
double root_between(Function function, double low, double high) {
    gsl_function call{[](double x, void* f) { return (*static_cast<Function*>(f))(x); }, &function};
    gsl_root_fsolver* solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    gsl_root_fsolver_set(solver, &call, low, high);
    for (int i = 0; i < 200; ++i) {
        gsl_root_fsolver_iterate(solver);
        const double left = gsl_root_fsolver_x_lower(solver), right = gsl_root_fsolver_x_upper(solver);
        if (gsl_root_test_interval(left, right, 0, 1e-14) == GSL_SUCCESS) break;
    }
    const double root = gsl_root_fsolver_root(solver);
    gsl_root_fsolver_free(solver);
    return root;
}

double complete_k(double k) {
    return gsl_sf_ellint_Kcomp(k, GSL_PREC_DOUBLE);
}
double complete_e(double k) {
    return gsl_sf_ellint_Ecomp(k, GSL_PREC_DOUBLE);
}

/// One term of a series in space: its root and what centre, surface and mean see of it.
struct Term {
    double root, centre, surface, mean;
};

Term cylinder_term(double biot, int index) {
    const double low = index == 0 ? 0 : gsl_sf_bessel_zero_J1(static_cast<unsigned>(index));
    const double high = gsl_sf_bessel_zero_J0(static_cast<unsigned>(index + 1));
    const double z = root_between([biot](double x) { return x * gsl_sf_bessel_J1(x) - biot * gsl_sf_bessel_J0(x); },
                                  low + 1e-12, high - 1e-12);
    const double j0 = gsl_sf_bessel_J0(z), j1 = gsl_sf_bessel_J1(z);
    const double factor = 2 / z * j1 / (j0 * j0 + j1 * j1);
    return {z, factor, factor * j0, factor * 2 * j1 / z};
}

Term wall_term(double biot, int index) {
    const double z = root_between([biot](double x) { return x * std::sin(x) - biot * std::cos(x); }, index * pi + 1e-12,
                                  (index + 0.5) * pi - 1e-12);
    const double factor = 4 * std::sin(z) / (2 * z + std::sin(2 * z));
    return {z, factor, factor * std::cos(z), factor * std::sin(z) / z};
}

/// The sum of 60 terms at a Fourier number.
template <class TermOf>
Term sum_of(TermOf term_of, double biot, double fourier) {
    Term sum{};
    for (int i = 0; i < 60; ++i) {
        const Term term = term_of(biot, i);
        const double left = std::exp(-term.root * term.root * fourier);
        sum.centre += left * term.centre;
        sum.surface += left * term.surface;
        sum.mean += left * term.mean;
    }
    return sum;
}

constexpr double heat_capacity = 1150.0 * 1800.0;  ///< J/(m3 K)

Body wheel(double diameter, double width, double conductivity) {
    return {diameter * metre, width * metre, conductivity * watt_per_metre_kelvin, 1150 * kilogram_per_cubic_metre,
            1800 * joule_per_kilogram_kelvin};
}

/// Node-centred balance of a solid disc over radius and half width, marched in time by GSL.
struct Disc {
    double radius, half, conductivity, film = 0, air = 0;
    std::size_t across = 40, along = 24;  ///< intervals along the radius and the half width

    [[nodiscard]] std::size_t nodes() const { return (across + 1) * (along + 1); }
    [[nodiscard]] std::size_t at(std::size_t i, std::size_t j) const { return i * (along + 1) + j; }
    [[nodiscard]] double dr() const { return radius / static_cast<double>(across); }
    [[nodiscard]] double dz() const { return half / static_cast<double>(along); }
    [[nodiscard]] double inner(std::size_t i) const { return i == 0 ? 0 : (static_cast<double>(i) - 0.5) * dr(); }
    [[nodiscard]] double outer(std::size_t i) const {
        return i == across ? radius : (static_cast<double>(i) + 0.5) * dr();
    }
    /// Ring area over 2 pi, and height, of a node's cell.
    [[nodiscard]] double ring(std::size_t i) const { return (outer(i) * outer(i) - inner(i) * inner(i)) / 2; }
    [[nodiscard]] double height(std::size_t j) const { return j == 0 || j == along ? dz() / 2 : dz(); }

    void change(const double* now, double* rate) const {
        for (std::size_t i = 0; i <= across; ++i) {
            for (std::size_t j = 0; j <= along; ++j) {
                const double here = now[at(i, j)];
                double in = 0;
                if (i > 0) in += conductivity * inner(i) * height(j) * (now[at(i - 1, j)] - here) / dr();
                in += i < across ? conductivity * outer(i) * height(j) * (now[at(i + 1, j)] - here) / dr()
                                 : film * radius * height(j) * (air - here);
                if (j > 0) in += conductivity * ring(i) * (now[at(i, j - 1)] - here) / dz();
                in += j < along ? conductivity * ring(i) * (now[at(i, j + 1)] - here) / dz()
                                : film * ring(i) * (air - here);
                rate[at(i, j)] = in / (heat_capacity * ring(i) * height(j));
            }
        }
    }

    [[nodiscard]] double mean(const std::vector<double>& now) const {
        double heat = 0;
        for (std::size_t i = 0; i <= across; ++i) {
            for (std::size_t j = 0; j <= along; ++j) heat += now[at(i, j)] * ring(i) * height(j);
        }
        return heat / (radius * radius / 2 * half);
    }
};

void march(Disc& disc, std::vector<double>& now, double seconds) {
    gsl_odeiv2_system system{[](double, const double* y, double* rate, void* d) {
                                 static_cast<const Disc*>(d)->change(y, rate);
                                 return static_cast<int>(GSL_SUCCESS);
                             },
                             nullptr, now.size(), &disc};
    gsl_odeiv2_driver* driver = gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1.0, 1e-7, 0);
    double time = 0;
    REQUIRE(gsl_odeiv2_driver_apply(driver, &time, seconds, now.data()) == GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
}

}  // namespace

TEST_CASE("a crowned contact has the axes of GSL's elliptic integrals", "[grids][contact]") {
    for (const double crown : {0.1, 0.3, 2.0}) {
        ContactInput input;
        input.load = 2 * kilonewton;
        input.diameter = 0.15 * metre;
        input.width = 5 * metre;
        input.modulus = 46 * megapascal;
        input.poisson = 0.49;
        input.crown_radius = crown * metre;
        const auto found = contact(input, tables().layer);
        REQUIRE(found);
        const double ratio = crown / 0.075, e_star = 46e6 / (1 - 0.49 * 0.49);
        const double k = root_between(  // short over long axis; modulus of the integrals sqrt(1 - k2)
            [ratio](double short_over_long) {
                const double modulus = std::sqrt(1 - short_over_long * short_over_long);
                const double whole = complete_k(modulus), second = complete_e(modulus);
                return (second / (short_over_long * short_over_long) - whole) / (whole - second) - ratio;
            },
            1e-3, 1 - 1e-7);
        const double modulus = std::sqrt(1 - k * k), m = 1 - k * k;
        const double long_axis =
            std::cbrt(3 * 2000 * (complete_k(modulus) - complete_e(modulus)) / (2 * pi * e_star * m / (2 * crown)));
        INFO("crown " << crown);
        CHECK(found->half_length->si() == Approx(long_axis).epsilon(1e-7));
        CHECK(found->half_width.si() == Approx(k * long_axis).epsilon(1e-7));
        CHECK(found->peak.si() == Approx(3 * 2000 / (2 * pi * k * long_axis * long_axis)).epsilon(1e-7));
    }
}

TEST_CASE("push limits spread as GSL's normal distribution", "[grids][people]") {
    PushTask task;
    task.hand_height = 1.0 * metre;
    task.distance = 5 * metre;
    task.rate = 0.2 * per_minute;
    const auto fall = [&](double share) {
        const auto limit = push_limit(task, share, tables().people);
        REQUIRE(limit);
        return 1 - limit->force.si() / limit->median.si();
    };
    for (const double share : {0.05, 0.3, 0.6, 0.75, 0.99}) {
        INFO(share);
        CHECK(fall(share) / fall(0.9) ==
              Approx(gsl_cdf_ugaussian_Pinv(share) / gsl_cdf_ugaussian_Pinv(0.9)).epsilon(1e-9));
    }
}

TEST_CASE("a wheel in one room follows the series with GSL's Bessel functions", "[grids][heat]") {
    for (const double diameter : {0.1, 0.2}) {
        for (const double film : {9.37, 34.0}) {
            for (const double seconds : {900.0, 5400.0}) {
                const double k = 0.21, width = 0.05, radius = diameter / 2, half = width / 2;
                const double diffusivity = k / heat_capacity;
                const Term cylinder =
                    sum_of(cylinder_term, film * radius / k, diffusivity * seconds / (radius * radius));
                const Term wall = sum_of(wall_term, film * half / k, diffusivity * seconds / (half * half));
                const auto found =
                    temperatures_by_series(wheel(diameter, width, k), celsius(20),
                                           {{celsius(-30), film * watt_per_square_metre_kelvin, seconds * second}});
                REQUIRE(found);
                const BodyTemperatures& end = found->back();
                INFO(diameter << " m, " << film << " W/m2K, " << seconds << " s");
                CHECK(end.core.celsius() == Approx(-30 + 50 * cylinder.centre * wall.centre).margin(1e-7));
                CHECK(end.rim.celsius() == Approx(-30 + 50 * cylinder.surface * wall.centre).margin(1e-7));
                CHECK(end.mean.celsius() == Approx(-30 + 50 * cylinder.mean * wall.mean).margin(1e-7));
            }
        }
    }
}

TEST_CASE("a wheel through rooms follows a balance marched by GSL", "[grids][heat]") {
    struct Room {
        double air, film, seconds;
    };
    const Room rooms[] = {{-30, 34, 3600}, {4, 9.37, 1800}, {20, 15.8, 1200}};
    for (const double diameter : {0.1, 0.15}) {
        Disc disc{diameter / 2, 0.025, 0.21};
        std::vector<double> now(disc.nodes(), 20.0);
        std::vector<HeatStage> stages;
        for (const Room& room : rooms) {
            stages.push_back({celsius(room.air), room.film * watt_per_square_metre_kelvin, room.seconds * second});
        }
        const auto found = temperatures_by_volumes(wheel(diameter, 0.05, 0.21), celsius(20), stages);
        REQUIRE(found);
        for (std::size_t i = 0; i < stages.size(); ++i) {
            disc.air = rooms[i].air;
            disc.film = rooms[i].film;
            march(disc, now, rooms[i].seconds);
            INFO(diameter << " m, room " << i + 1);
            CHECK((*found)[i].core.celsius() == Approx(now[disc.at(0, 0)]).margin(0.05));
            CHECK((*found)[i].rim.celsius() == Approx(now[disc.at(disc.across, 0)]).margin(0.05));
            CHECK((*found)[i].mean.celsius() == Approx(disc.mean(now)).margin(0.05));
        }
    }
}
