#include "engine/base/numeric_text.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <cmath>
#include <random>
#include <string>

using namespace sillwalk::engine;

TEST_CASE("every 1/64 in from 0 to 120 in goes to nanometres and back exactly", "[engine][base]") {
    for (std::int64_t k = 0; k <= 120 * 64; ++k) {
        const std::int64_t exact = k * nanometres_per_64th_inch;
        const auto from_fraction = parse_length_nm(length_text_in(exact));
        const auto from_improper = parse_length_nm(fmt::format("{}/64in", k));
        const auto from_decimal = parse_length_nm(fmt::format("{}in", static_cast<double>(k) / 64));
        const auto from_mm = parse_length_nm(length_text_mm(exact, 6));
        INFO(k << "/64 in as " << length_text_in(exact) << " and " << length_text_mm(exact, 6));
        REQUIRE((from_fraction && from_improper && from_decimal && from_mm));
        REQUIRE(*from_fraction == exact);
        REQUIRE(*from_improper == exact);
        REQUIRE(*from_decimal == exact);
        REQUIRE(*from_mm == exact);
        REQUIRE(parse_length(length_text_in(exact))->in(metre) ==
                Approx(static_cast<double>(exact) * 1e-9).epsilon(1e-15));
    }
}

TEST_CASE("lengths are written as people write them", "[engine][base]") {
    CHECK(length_text_in(5 * 64 * nanometres_per_64th_inch) == "5 in");
    CHECK(length_text_in(352 * nanometres_per_64th_inch) == "5 1/2 in");
    CHECK(length_text_in(16 * nanometres_per_64th_inch) == "1/4 in");
    CHECK(length_text_in(-16 * nanometres_per_64th_inch) == "-1/4 in");
    CHECK(length_text_in(0) == "0 in");
    CHECK(length_text_in(139878000) == "5.507 in");
    CHECK(length_text_mm(19050000) == "19.05 mm");
    CHECK(length_text_mm(19000000) == "19 mm");
    CHECK(length_text_mm(100000000) == "100 mm");
    CHECK(length_text_mm(0) == "0 mm");
}

TEST_CASE("all spellings of a fraction give the same length", "[engine][base]") {
    for (const char* text : {"5 1/2in", "5 1/2 in", "5-1/2in", "5.5in", "5\xC2\xBDin", "5 \xC2\xBD in", " 11/2in ",
                             "5 1\xE2\x81\x84"
                             "2in",
                             "5.5\"", "139.7mm", "0.1397m", "13.97cm"}) {
        INFO(text);
        REQUIRE(parse_length_nm(text));
        CHECK(*parse_length_nm(text) == 139700000);
    }
    CHECK(*parse_length_nm("\xC2\xBC"
                           "in") == 6350000);
    CHECK(*parse_length_nm("1\xE2\x85\x9E"
                           "in") == 47625000);
    CHECK(*parse_length_nm("\xE2\x88\x92"
                           "1/4in") == -6350000);
}

TEST_CASE("units convert by their exact factors", "[engine][base]") {
    // International yard and pound agreement 1959; standard gravity of the CGPM 1901.
    CHECK(parse_mass("250lb")->in(kilogram) == Approx(113.3980925).epsilon(1e-14));
    CHECK(parse_force("50lbf")->in(newton) == Approx(222.4110807630263).epsilon(1e-14));
    CHECK(parse_force("20kgf")->in(newton) == Approx(196.133).epsilon(1e-14));
    CHECK(parse_force("250lb")->in(newton) == Approx(1112.0554038151315).epsilon(1e-14));
    CHECK(parse_pressure("682psi")->in(megapascal) == Approx(4.7022244739406).epsilon(1e-12));
    CHECK(parse_temperature("-25degF")->celsius() == Approx(-31.6666666667));
    CHECK(parse_temperature("4.4degC")->kelvin() == Approx(277.55));
    CHECK(parse_temperature("\xE2\x88\x92"
                            "40degF")
              ->celsius() == Approx(-40));
    CHECK(parse_duration("14d")->in(second) == 1209600);
    CHECK(parse_duration("30min")->in(second) == 1800);
    CHECK(parse_speed("3mph")->in(metre_per_second) == Approx(1.34112));
    CHECK(parse_speed("4km/h")->in(metre_per_second) == Approx(1.1111111111));
    CHECK(parse_speed("176fpm")->in(metre_per_second) == Approx(0.89408));
    CHECK(parse_film("34W/m2K")->si() == 34);
    CHECK(parse_density("1.15g/cm3")->si() == Approx(1150));
    CHECK(parse_specific_heat("1.8kJ/kgK")->si() == Approx(1800));
    CHECK(parse_acceleration("9.81m/s2")->si() == 9.81);
    CHECK(parse_area("100mm2")->si() == Approx(1e-4));
    CHECK(*parse_share("75%") == 0.75);
    CHECK(*parse_share("0.75") == 0.75);
    CHECK(*parse_share("200ppm") == Approx(2e-4));
    CHECK(parse_slope("1:12")->tangent() == Approx(1.0 / 12));
    CHECK(parse_slope("8%")->tangent() == Approx(0.08));
    CHECK(parse_slope("45deg")->tangent() == Approx(1.0));
    CHECK(parse_slope("-1:20")->tangent() == Approx(-0.05));
    CHECK(*parse_number("1/480") == Approx(1.0 / 480));
    CHECK(*parse_number("30e6") == 30e6);
}

TEST_CASE("what cannot be read is told with what would be right", "[engine][base]") {
    const auto message = [](const auto& result) {
        REQUIRE_FALSE(result);
        CHECK(result.error().code == ErrorCode::bad_input);
        return result.error().message;
    };
    CHECK_THAT(message(parse_length("5")), Catch::Contains("mm") && Catch::Contains("in"));
    CHECK_THAT(message(parse_length("5furlong")), Catch::Contains("furlong") && Catch::Contains("mm"));
    CHECK_THAT(message(parse_length("12,5mm")), Catch::Contains("comma") && Catch::Contains("12.5"));
    CHECK_THAT(message(parse_temperature("-500degC")), Catch::Contains("absolute zero"));
    CHECK_THAT(message(parse_slope("12")), Catch::Contains("1:12"));
    CHECK_THAT(message(parse_slope("90deg")), Catch::Contains("90"));
    CHECK_THAT(message(parse_number("5mm")), Catch::Contains("bare number"));
    for (const char* text : {"", " ", "-", ".", "in", "1/0in", "nan mm", "inf mm", "0x10mm", "1e400mm", "--5mm",
                             "1..5mm", "5 6in", "5 1/2 1/2in"}) {
        INFO(text);
        CHECK_FALSE(parse_length(text));
        CHECK_FALSE(parse_length_nm(text));
    }
    CHECK_FALSE(parse_length_nm("1e10km"));
}

TEST_CASE("every double reads back from its text", "[engine][base][property]") {
    std::mt19937_64 random(20260725);
    std::uniform_real_distribution<double> mantissa(-10, 10);
    std::uniform_int_distribution<int> exponent(-300, 300);
    for (int i = 0; i < 2000; ++i) {
        const double value = mantissa(random) * std::pow(10.0, exponent(random));
        INFO(number_text(value));
        REQUIRE(parse_number(number_text(value)));
        REQUIRE(*parse_number(number_text(value)) == value);
    }
}

TEST_CASE("fixed text keeps its decimals and has no negative zero", "[engine][base]") {
    CHECK(fixed_text(1.005, 1) == "1.0");
    CHECK(fixed_text(-0.04, 1) == "0.0");
    CHECK(fixed_text(-0.06, 1) == "-0.1");
    CHECK(fixed_text(12, 0) == "12");
}
