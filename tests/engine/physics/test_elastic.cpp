#include "engine/physics/bonded_layer.hpp"
#include "engine/physics/elastic.hpp"
#include "engine/physics/monotone_curve.hpp"
#include "tests/engine/desk/loaded_tables.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace sillwalk::engine;

namespace {

ContactInput wheel(double poisson = 0.49) {
    ContactInput out;
    out.load = 4.448 * kilonewton;
    out.diameter = 152.4 * millimetre;
    out.width = 50.8 * millimetre;
    out.modulus = 46 * megapascal;
    out.poisson = poisson;
    return out;
}

Contact solved(const ContactInput& input) {
    const auto result = contact(input, loaded_tables().layer);
    REQUIRE(result);
    return *result;
}

}  // namespace

TEST_CASE("the crowned contact carries the load it is given", "[engine][physics][property]") {
    for (const double crown : {5.0, 30.0, 76.2, 200.0, 5000.0, 1e6}) {
        ContactInput input = wheel();
        input.crown_radius = crown * millimetre;
        const Contact result = solved(input);
        const double area = 3.14159265358979324 * result.half_width.si() * result.half_length->si();
        CHECK(result.mean.si() * area == Approx(4448));
        CHECK(result.peak.si() == Approx(1.5 * result.mean.si()));
        CHECK(result.approach->si() > 0);
    }
}

TEST_CASE("a crown of the wheel's own radius is a ball", "[engine][physics]") {
    // Circular limit, Johnson, Contact Mechanics ch. 4 (from memory): a^3 = 3 W R/(4 E*), approach a^2/R.
    ContactInput input = wheel(0.3);
    input.crown_radius = 76.2 * millimetre;
    const Contact ball = solved(input);
    const double reduced = 46e6 / (1 - 0.09);
    const double a = std::cbrt(0.75 * 4448 * 0.0762 / reduced);
    CHECK(ball.half_width.si() == Approx(a));
    CHECK(ball.half_length->si() == Approx(a));
    CHECK(ball.approach->si() == Approx(a * a / 0.0762));
    input.crown_radius = 76.2 * (1 + 1e-7) * millimetre;
    CHECK(solved(input).half_width.si() == Approx(a).epsilon(1e-6));
}

TEST_CASE("crown and rolling radius change places", "[engine][physics][property]") {
    ContactInput input = wheel();
    input.crown_radius = 300 * millimetre;
    ContactInput turned = input;
    turned.diameter = 600 * millimetre;
    turned.crown_radius = 76.2 * millimetre;
    CHECK(solved(input).half_width.si() == Approx(solved(turned).half_length->si()));
    CHECK(solved(input).half_length->si() == Approx(solved(turned).half_width.si()));
    CHECK(solved(input).peak.si() == Approx(solved(turned).peak.si()));
}

TEST_CASE("a long crowned patch tends to the line contact of its middle", "[engine][physics][property]") {
    // In the middle of a slender ellipse the load per length is 3 W/(4 a); there the line contact holds (derived).
    double last = 1;
    for (const double crown : {1e4, 1e6, 1e8}) {
        ContactInput crowned = wheel();
        crowned.crown_radius = crown * millimetre;
        const Contact ellipse = solved(crowned);
        ContactInput flat = wheel();
        flat.width = (4.0 / 3.0) * *ellipse.half_length;
        const double difference = std::abs(solved(flat).half_width / ellipse.half_width - 1);
        CHECK(difference < last);
        last = difference;
    }
    CHECK(last < 1e-4);
}

TEST_CASE("a thick bonded tread is a solid wheel, a thin one is stiffer", "[engine][physics][property]") {
    const Contact solid = solved(wheel());
    ContactInput thick = wheel();
    thick.load = 1 * newton;
    ContactInput thick_solid = thick;
    thick.tread_thickness = 70 * millimetre;
    CHECK(solved(thick).half_width / solved(thick_solid).half_width == Approx(1).epsilon(1e-4));
    CHECK(solved(thick).peak / solved(thick_solid).peak == Approx(1).epsilon(1e-4));
    double width = solid.half_width.si();
    double peak = solid.peak.si();
    double approach = 1;
    for (double thickness = 60; thickness > 4; thickness -= 4) {
        ContactInput bonded = wheel();
        bonded.tread_thickness = thickness * millimetre;
        const Contact result = solved(bonded);
        CHECK(result.half_width.si() < width);
        CHECK(result.peak.si() > peak);
        CHECK(result.approach->si() < approach);
        width = result.half_width.si();
        peak = result.peak.si();
        approach = result.approach->si();
    }
}

TEST_CASE("the bonded contact gives back every figure of its table", "[engine][physics]") {
    const LayerTable& table = loaded_tables().layer;
    for (const auto& row : table.rows) {
        for (std::size_t i = 0; i < table.contact_over_thickness.size(); ++i) {
            const double x = table.contact_over_thickness[i];
            const auto solution = solve_layer(x * x * row.load_factor[i], row.poisson, table);
            REQUIRE(solution);
            CHECK(solution->contact_over_thickness == Approx(x));
            CHECK(solution->factors.pressure == Approx(row.pressure_factor[i]));
        }
    }
    CHECK(solve_layer(2.0, 0.39, table).error().code == ErrorCode::no_answer);
    CHECK(solve_layer(2.0, 0.51, table).error().code == ErrorCode::no_answer);
    CHECK(solve_layer(1e4, 0.45, table).error().code == ErrorCode::no_answer);
}

TEST_CASE("a compressible thin layer meets the foundation of springs", "[engine][physics]") {
    // Johnson, Contact Mechanics 5.8 (from memory): W/L = (2/3)(1-nu)^2/(1-2nu) E/(1-nu^2) a^3/(R t), approach a^2/2R.
    const double nu = 0.40;
    const auto solution = solve_layer(36 * 8.725, nu, loaded_tables().layer);
    REQUIRE(solution);
    const double spring = 8.0 / (3 * 3.14159265358979) * (1 - nu) * (1 - nu) / (1 - 2 * nu) * 6.0;
    CHECK(solution->factors.load == Approx(spring).epsilon(0.06));
    CHECK(layer_approach(*solution, nu) == Approx(0.5).epsilon(0.06));
}

TEST_CASE("contact grows with load as it should", "[engine][physics][property]") {
    ContactInput input = wheel();
    const Contact one = solved(input);
    input.load = 4 * input.load;
    const Contact four = solved(input);
    CHECK(four.half_width / one.half_width == Approx(2));
    CHECK(four.peak / one.peak == Approx(2));
    input = wheel();
    input.crown_radius = 150 * millimetre;
    const Contact crowned = solved(input);
    input.load = 8 * input.load;
    CHECK(solved(input).half_width / crowned.half_width == Approx(2));
    CHECK(*solved(input).approach / *crowned.approach == Approx(4));
}

TEST_CASE("a floor stiffer and stiffer tends to a rigid one", "[engine][physics][property]") {
    ContactInput input = wheel();
    const double rigid = solved(input).half_width.si();
    double before = 1;
    for (const double floor : {0.1, 1.0, 25.0, 1000.0}) {
        input.floor_modulus = floor * 1000 * megapascal;
        const double half_width = solved(input).half_width.si();
        CHECK(half_width > rigid);
        CHECK(half_width < before);
        before = half_width;
    }
    CHECK(before == Approx(rigid).epsilon(1e-4));
}

TEST_CASE("cautions and refusals of the contact", "[engine][physics]") {
    ContactInput soft = wheel();
    soft.modulus = 5.5 * megapascal;
    CHECK_FALSE(solved(soft).caution.empty());
    CHECK(solved(wheel()).caution.empty());
    ContactInput long_patch = wheel();
    long_patch.crown_radius = 5 * metre;
    CHECK_THAT(solved(long_patch).caution, Catch::Contains("longer than the face"));
    ContactInput both = wheel();
    both.crown_radius = 1 * metre;
    both.tread_thickness = 10 * millimetre;
    CHECK(contact(both, loaded_tables().layer).error().where == "tread-thickness");
}

TEST_CASE("hardness relations rise and stay inside their bands", "[engine][physics][property]") {
    double before = 0;
    for (double s = 20; s < 99; s += 1) {
        const auto gent = modulus_gent(s);
        CHECK(gent->value.si() > before);
        CHECK(gent->low < gent->value);
        CHECK(gent->value < gent->high);
        before = gent->value.si();
        CHECK(modulus_log10(HardnessScale::shore_a, s + 1)->value / modulus_log10(HardnessScale::shore_a, s)->value ==
              Approx(std::pow(10, 0.0235)));
    }
    CHECK(modulus_log10(HardnessScale::shore_d, 30)->value.si() ==
          Approx(modulus_log10(HardnessScale::shore_a, 80)->value.si()));
    CHECK_FALSE(modulus_gent(100));
    CHECK_FALSE(modulus_gent(19));
    CHECK_FALSE(modulus_log10(HardnessScale::shore_d, 29));
    CHECK(modulus_gent(-1).error().code == ErrorCode::bad_input);
}

TEST_CASE("hard urethane stiffens in the cold and measured rows lie in the band", "[engine][physics]") {
    for (const double s : {31.5, 47.0, 55.0, 65.0, 75.0}) {
        double before = 1e12;
        for (double t = -40; t <= 80; t += 5) {
            const double value = modulus_urethane(s, celsius(t), SoftSegment::ether)->value.si();
            CHECK(value <= before);
            before = value;
        }
        const auto unknown = modulus_urethane(s, celsius(-25));
        CHECK(unknown->low <= modulus_urethane(s, celsius(-25), SoftSegment::ether)->low);
        CHECK(unknown->high >= modulus_urethane(s, celsius(-25), SoftSegment::ester)->high);
    }
    // Flexural moduli printed on data sheets of thermoplastic urethanes (read): Shore D, C, MPa.
    struct Row {
        double shore_d, celsius, megapascals;
        SoftSegment soft;
    };
    for (const Row& row : {Row{31.5, 23, 35.99, SoftSegment::ether}, Row{55, 23, 148.9, SoftSegment::ether},
                           Row{75, 23, 1993, SoftSegment::ether}, Row{76, 23, 1310, SoftSegment::ether},
                           Row{70, -30, 2020, SoftSegment::ether}, Row{70, 70, 117, SoftSegment::ether},
                           Row{34, -30, 49.6, SoftSegment::ester}, Row{50, -30, 2233, SoftSegment::ester},
                           Row{55, -30, 1207, SoftSegment::ester}, Row{60, 23, 296.5, SoftSegment::ester},
                           Row{70, -30, 2910, SoftSegment::ester}, Row{70, 70, 103, SoftSegment::ester}}) {
        const auto modulus = modulus_urethane(row.shore_d, celsius(row.celsius), row.soft);
        INFO(row.shore_d << " D at " << row.celsius << " C");
        CHECK(modulus->low.in(megapascal) <= row.megapascals);
        CHECK(modulus->high.in(megapascal) >= row.megapascals);
    }
    CHECK(modulus_urethane(29, celsius(23)).error().code == ErrorCode::no_answer);
    CHECK(modulus_urethane(60, celsius(81)).error().code == ErrorCode::no_answer);
}

TEST_CASE("cold limits of urethane follow hardness and soft segment", "[engine][physics]") {
    // Notched and unnotched limits, C, of the fit as tabled apart: 60 D ether -29/-49, 65 D ester -10/-30.
    const auto ether = urethane_cold(60, SoftSegment::ether);
    CHECK(ether->brittle_struck->celsius() == Approx(-29).margin(0.6));
    CHECK(ether->brittle_unstruck->celsius() == Approx(-49).margin(0.6));
    const auto ester = urethane_cold(65, SoftSegment::ester);
    CHECK(ester->brittle_struck->celsius() == Approx(-10).margin(0.6));
    CHECK(ester->brittle_unstruck->celsius() == Approx(-30).margin(0.6));
    CHECK(urethane_cold(60, SoftSegment::unknown)->glass_transition ==
          urethane_cold(60, SoftSegment::ester)->glass_transition);
    CHECK_FALSE(urethane_cold(45, SoftSegment::ether)->brittle_struck);
    CHECK_FALSE(urethane_cold(80, SoftSegment::ether));
}

TEST_CASE("Shore A turns into Shore D between its rows only", "[engine][physics]") {
    CHECK(*shore_d_from_a(80) == 30);
    CHECK(*shore_d_from_a(92) == Approx(39 + 2.0 * 2 / 3));
    CHECK(*shore_d_from_a(95) == 46.5);
    CHECK_FALSE(shore_d_from_a(79));
    CHECK_FALSE(shore_d_from_a(96));
}

TEST_CASE("the curve through a table meets it and never overshoots", "[engine][physics][property]") {
    const std::vector<double> x{0, 1, 2, 4, 7};
    const std::vector<double> y{0, 0, 1, 5, 5};
    const auto slopes = monotone_slopes(x, y);
    double before = 0;
    for (double at = 0; at <= 7; at += 0.01) {
        const double value = monotone_value(x, y, slopes, at);
        CHECK(value >= before - 1e-12);
        CHECK(value <= 5 + 1e-12);
        before = value;
    }
    for (std::size_t i = 0; i < x.size(); ++i) {
        CHECK(monotone_value(x, y, slopes, x[i]) == Approx(y[i]));
    }
    const std::vector<double> straight{1, 3, 5, 9, 15};
    CHECK(monotone_value(x, straight, monotone_slopes(x, straight), 5.5) == Approx(12));
}
