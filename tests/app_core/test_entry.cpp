#include "app/core/entry.hpp"
#include "engine/base/numeric_text.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::app;

namespace {

const Unit& unit(QuantityKind kind, std::string_view name) {
    for (const Unit& one : units_of(kind)) {
        if (one.name == name) return one;
    }
    FAIL("no such unit");
    return units_of(kind)[0];
}
Entry typed(const std::string& keys, int sixteenths = 0, bool negative = false) {
    Entry entry;
    for (const char key : keys) press_digit(entry, key);
    entry.sixteenths = sixteenths;
    entry.negative = negative;
    return entry;
}

}  // namespace

TEST_CASE("A11 every sixteenth from 0 to 120 in is exact, through text and back", "[core][entry]") {
    // 1 in = 25.4 mm exactly (NIST SP 811), so 1/16 in = 1 587 500 nm.
    const Unit& inch = unit(QuantityKind::small_length, "in");
    for (std::int64_t k = 0; k <= 120 * 16; ++k) {
        Entry entry;
        entry.digits = std::to_string(k / 16);
        entry.sixteenths = static_cast<int>(k % 16);
        const auto nm = canonical_of(entry, inch);
        REQUIRE(nm == k * 1587500);
        CHECK(canonical_of(entry_for(*nm, inch), inch) == nm);
        CHECK(sillwalk::engine::parse_length_nm(as_entered(entry, inch)) == *nm);
    }
}

TEST_CASE("A11 changing the unit a thousand times leaves the whole number unchanged", "[core][entry]") {
    const auto units = units_of(QuantityKind::small_length);
    std::int64_t nm = *canonical_of(typed("3", 12), units[1]);
    CHECK(nm == 95250000);
    for (int i = 0; i < 1000; ++i)
        nm = *canonical_of(entry_for(nm, units[static_cast<std::size_t>(i % 2)]),
                           units[static_cast<std::size_t>(i % 2)]);
    CHECK(nm == 95250000);
}

TEST_CASE("typed values become whole numbers of the canonical unit", "[core][entry]") {
    CHECK(canonical_of(typed("19"), unit(QuantityKind::small_length, "mm")) == 19000000);
    CHECK(canonical_of(typed("19.05"), unit(QuantityKind::small_length, "mm")) == 19050000);
    CHECK(canonical_of(typed("25", 0, true), unit(QuantityKind::temperature, "degC")) == 248150);  // 273.15 K at 0 C
    CHECK(canonical_of(typed("40", 0, true), unit(QuantityKind::temperature, "degF")) == 233150);  // -40 F = -40 C
    CHECK(canonical_of(typed("212"), unit(QuantityKind::temperature, "degF")) == 373150);
    CHECK(canonical_of(typed("250"), unit(QuantityKind::mass, "lb")) == 113398);  // 0.45359237 kg, NIST SP 811
    CHECK(canonical_of(typed("12"), unit(QuantityKind::slope, "1:")) == 83333);
    CHECK(canonical_of(typed("8"), unit(QuantityKind::slope, "%")) == 80000);
    CHECK(canonical_of(typed("45"), unit(QuantityKind::slope, "deg")) == 1000000);
    CHECK(canonical_of(typed("200"), unit(QuantityKind::strength, "ppm")) == 200);
    CHECK(canonical_of(typed("4"), unit(QuantityKind::speed, "km/h")) == 1111111);
    CHECK_FALSE(canonical_of(typed(""), unit(QuantityKind::small_length, "mm")));
    CHECK_FALSE(canonical_of(typed("0"), unit(QuantityKind::slope, "1:")));
}

TEST_CASE("as-entered text keeps what was typed", "[core][entry]") {
    CHECK(as_entered(typed("", 12), unit(QuantityKind::small_length, "in")) == "3/4 in");
    CHECK(as_entered(typed("5", 8), unit(QuantityKind::small_length, "in")) == "5 1/2 in");
    CHECK(as_entered(typed("25", 0, true), unit(QuantityKind::temperature, "degC")) == "-25 degC");
    CHECK(as_entered(typed("12"), unit(QuantityKind::slope, "1:")) == "1:12");
    CHECK(as_entered(typed("8"), unit(QuantityKind::slope, "%")) == "8%");
    CHECK(as_entered(typed(".5"), unit(QuantityKind::small_length, "mm")) == "0.5 mm");
}

TEST_CASE("keys that do not fit are ignored and backspace takes the last one back", "[core][entry]") {
    Entry entry = typed("1.2.345678");
    CHECK(entry.digits == "1.234");
    entry = typed("12345678");
    CHECK(entry.digits == "123456");
    entry = typed("007");
    CHECK(entry.digits == "7");
    entry = typed("19", 4, true);
    press_backspace(entry);
    CHECK(entry == typed("19", 0, true));
    press_backspace(entry);
    press_backspace(entry);
    CHECK(entry.negative);
    press_backspace(entry);
    CHECK(entry == Entry{});
}

TEST_CASE("numbers are shown with a true minus and no more digits than they need", "[core][entry]") {
    CHECK(shown_number(19050000, unit(QuantityKind::small_length, "in")) == "3/4");
    CHECK(shown_number(19050000, unit(QuantityKind::small_length, "mm")) == "19.05");
    CHECK(shown_number(248150, unit(QuantityKind::temperature, "degC")) == "\u221225");
    CHECK(shown_number(83333, unit(QuantityKind::slope, "1:")) == "12");
    CHECK(shown_difference(500, unit(QuantityKind::temperature, "degC")) == "0.5");
}
