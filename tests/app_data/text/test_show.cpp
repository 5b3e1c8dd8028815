#include "app/text/show.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using app::show;
using app::UnitSystem;
using engine::Kind;

namespace {
/// Plain spaces and hyphens, so that a test reads like the screen.
std::string plain(std::string text) {
    const auto swap = [&](const std::string& from, const std::string& to) {
        for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from))
            text.replace(at, from.size(), to);
    };
    swap("\u00a0", " ");
    swap("\u202f", ",");
    swap("\u2212", "-");
    return text;
}
std::string si(double value, Kind kind) {
    return plain(show({value, kind}, UnitSystem::si));
}
std::string us(double value, Kind kind) {
    return plain(show({value, kind}, UnitSystem::us));
}
}  // namespace

TEST_CASE("numbers are shown short, with their unit, in both systems", "[app][text]") {
    CHECK(si(0.019, Kind::length) == "19 mm");
    CHECK(us(0.01905, Kind::length) == "3/4 in");
    CHECK(us(0.1397, Kind::length) == "5 1/2 in");
    CHECK(si(12.5, Kind::length) == "12.5 m");
    CHECK(si(1572.4, Kind::force) == "1,572 N");
    CHECK(us(4.4482216152605 * 50, Kind::force) == "50 lbf");
    CHECK(si(273.15 - 25.44, Kind::temperature) == "-25.4 °C");
    CHECK(us(273.15 - 40, Kind::temperature) == "-40 °F");
    CHECK(si(273.15 - 0.04, Kind::temperature) == "0 °C");
    CHECK(si(4.7e6, Kind::pressure) == "4.7 MPa");
    CHECK(us(6894.757293168 * 125, Kind::pressure) == "125 psi");
    CHECK(si(0.0484, Kind::share) == "4.8 %");
    CHECK(si(1.0 / 12, Kind::slope) == "8.3 %");
    CHECK(si(21 * 86400.0, Kind::duration) == "21 d");
    CHECK(si(5400, Kind::duration) == "90 min");
    CHECK(si(2.5e5, Kind::resistance) == "250 kΩ");
    CHECK(si(1234567, Kind::number) == "1,234,567");
    CHECK(si(0.0, Kind::force) == "0 N");
}
