#include "app/core/plausible.hpp"
#include "tests/app_core/world.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;
using engine::Field;

namespace {

struct Typed {
    Field field;
    const char* place;   ///< name of the room or crossing
    std::size_t unit;    ///< index in units_of(kind)
    const char* keys;    ///< "-" first for the sign; "a b/16" for sixteenths
    const char* method;  ///< id; "" = none
};

Hint judge(const EntryTables& tables, const Typed& typed) {
    engine::Survey survey = test::small_survey();
    survey.rooms[0].name = typed.place;
    survey.crossings[0].name = typed.place;
    survey.washings.resize(1);
    TypedValue value;
    value.kind = quantity_of(typed.field).value();
    value.unit = typed.unit;
    std::string keys = typed.keys;
    if (keys[0] == '-') {
        value.entry.negative = true;
        keys.erase(0, 1);
    }
    for (const char key : keys) press_digit(value.entry, key);
    for (const Method& method : tables.methods) {
        if (method.id == typed.method) value.resolution_si = method.resolution_si;
    }
    return judge_entry(value, plausible_row(tables, survey, {typed.field, 0, 0}));
}

// Readings of the demo site, each typed wrongly in one of four ways: the other unit, the decimal point, the sign, a key
// pressed twice. Masses have no unit slips here: a factor of 2.2 stays within what is usual and no range can catch it.
constexpr Typed slips[] = {
    // other unit: the number read in inches or Fahrenheit, typed as mm or Celsius, and the other way round
    {Field::crossing_rise, "Freezer door", 0, "0.75", "tape_mm"},
    {Field::crossing_rise, "Freezer door", 1, "19", ""},
    {Field::crossing_gap, "Freezer door", 0, "1.25", "tape_mm"},
    {Field::crossing_gap, "Freezer door", 1, "32", ""},
    {Field::crossing_slot, "Trench drain", 0, "1.5", "tape_mm"},
    {Field::crossing_slot, "Trench drain", 1, "38", ""},
    {Field::crossing_lip_height, "Strip curtain", 1, "6", ""},
    {Field::cart_handle_height, "Tray rack", 0, "40", ""},
    {Field::cart_handle_height, "Tray rack", 1, "1020", ""},
    {Field::cart_fork_width, "Tray rack", 0, "2.25", "tape_mm"},
    {Field::cart_fork_width, "Tray rack", 1, "57", ""},
    {Field::room_air, "Holding freezer", 0, "-13", ""},
    {Field::room_air, "Dock", 0, "39", ""},
    {Field::room_air, "Packing", 0, "61", ""},
    // decimal point
    {Field::crossing_rise, "Freezer door", 0, "190", "tape_mm"},
    {Field::crossing_rise, "Freezer door", 0, "1.9", "tape_mm"},
    {Field::crossing_gap, "Freezer door", 0, "320", "tape_mm"},
    {Field::crossing_gap, "Freezer door", 0, "3.2", "tape_mm"},
    {Field::room_air, "Blast freezer", 0, "-3.2", ""},
    {Field::room_air, "Blast freezer", 0, "-320", ""},
    {Field::cart_tare, "Tray rack", 0, "920", ""},
    {Field::cart_payload, "Tray rack", 0, "2180", ""},
    {Field::cart_handle_height, "Tray rack", 0, "102", ""},
    {Field::cart_speed, "Tray rack", 0, "8", ""},
    {Field::washing_temperature, "Rinse", 0, "820", ""},
    // sign
    {Field::crossing_rise, "Freezer door", 0, "-19", "tape_mm"},
    {Field::crossing_gap, "Freezer door", 0, "-32", "tape_mm"},
    {Field::room_air, "Blast freezer", 0, "32", ""},
    {Field::room_air, "Holding freezer", 0, "25", ""},
    {Field::room_air, "Packing", 0, "-16", ""},
    {Field::cart_tare, "Tray rack", 0, "-92", ""},
    // a key pressed twice
    {Field::crossing_rise, "Freezer door", 0, "119", "tape_mm"},
    {Field::crossing_rise, "Freezer door", 0, "199", "tape_mm"},
    {Field::crossing_gap, "Freezer door", 0, "332", "tape_mm"},
    {Field::crossing_slot, "Trench drain", 0, "388", "tape_mm"},
    {Field::room_air, "Blast freezer", 0, "-332", ""},
    {Field::room_air, "Holding freezer", 0, "-225", ""},
    {Field::cart_tare, "Tray rack", 0, "922", ""},
    {Field::cart_handle_height, "Tray rack", 0, "10220", ""},
    {Field::washing_temperature, "Rinse", 0, "822", ""},
};

struct Usual {
    Field field;
    const char* place;
    std::size_t unit;
    const char* method;
    const char* values[10];
};
// Ordinary readings of such sites, written down by hand before the table's ranges were set against them.
constexpr Usual usual[] = {
    {Field::crossing_rise, "Sill", 0, "tape_mm", {"0", "3", "5", "6", "8", "10", "12.5", "16", "19", "25"}},
    {Field::crossing_rise, "Door", 0, "tape_gloved", {"4", "7", "9", "13", "15", "18", "20", "22", "30", "35"}},
    {Field::crossing_gap, "Door", 0, "tape_mm", {"0", "6", "10", "15", "20", "25", "32", "38", "45", "50"}},
    {Field::crossing_slot, "Drain", 0, "tape_mm", {"8", "12", "16", "20", "25", "30", "35", "38", "40", "50"}},
    {Field::crossing_lip_height, "Curtain", 0, "tape_mm", {"0", "3", "4", "6", "8", "10", "15", "20", "30", "45"}},
    {Field::crossing_slope, "Ramp", 0, "", {"0", "1", "2", "3", "5", "6", "8", "10", "12.5", "-8"}},
    {Field::crossing_slope_length, "Ramp", 0, "", {"0.5", "1", "1.2", "2", "2.4", "3", "4", "6", "8", "10"}},
    {Field::room_air, "Blast freezer", 0, "", {"-40", "-38", "-35", "-32", "-30", "-28", "-25", "-22", "-20", "-18"}},
    {Field::room_air, "Dock", 0, "", {"0", "1", "2", "3", "4", "5", "6", "8", "10", "12"}},
    {Field::room_air, "Packing", 0, "", {"4", "8", "10", "12", "14", "16", "18", "20", "22", "25"}},
    {Field::room_air, "Cook room", 0, "", {"20", "22", "25", "28", "30", "32", "35", "38", "40", "45"}},
    {Field::room_humidity, "Packing", 0, "", {"35", "45", "50", "55", "60", "70", "80", "85", "90", "95"}},
    {Field::cart_tare, "Rack", 0, "", {"12", "18", "25", "35", "48", "60", "75", "92", "120", "160"}},
    {Field::cart_payload, "Rack", 0, "", {"20", "40", "80", "120", "150", "218", "300", "400", "500", "750"}},
    {Field::cart_handle_height,
     "Rack",
     0,
     "tape_mm",
     {"850", "900", "950", "980", "1000", "1020", "1050", "1100", "1150", "1200"}},
    {Field::cart_speed, "Rack", 0, "", {"0.5", "0.6", "0.7", "0.8", "0.9", "1", "1.1", "1.2", "1.4", "1.6"}},
    {Field::cart_people, "Rack", 0, "", {"1", "2", "1", "2", "1", "1", "2", "3", "1", "2"}},
    {Field::washing_temperature, "Rinse", 0, "", {"8", "12", "20", "35", "40", "50", "55", "60", "71", "82"}},
    {Field::washing_contact, "Foam", 0, "", {"2", "5", "8", "10", "15", "20", "25", "30", "45", "60"}},
    {Field::cart_fork_width, "Rack", 0, "tape_mm", {"32", "36", "40", "44", "48", "52", "55", "57", "60", "65"}},
};

}  // namespace

TEST_CASE("A12 of 40 slips at least 38 are flagged", "[core][plausible]") {
    std::vector<engine::Error> errors;
    const EntryTables tables = load_entry_tables(errors);
    static_assert(std::size(slips) == 40);
    int flagged = 0;
    for (const Typed& slip : slips) {
        const bool found = judge(tables, slip).kind != HintKind::none;
        if (!found) WARN("not flagged: " << slip.place << " " << slip.keys);
        flagged += found ? 1 : 0;
    }
    CHECK(flagged >= 38);
}

TEST_CASE("A12 of 200 usual values at most 2 are flagged", "[core][plausible]") {
    std::vector<engine::Error> errors;
    const EntryTables tables = load_entry_tables(errors);
    static_assert(std::size(usual) == 20);
    int flagged = 0;
    for (const Usual& row : usual) {
        for (const char* value : row.values) {
            const bool found =
                judge(tables, {row.field, row.place, row.unit, value, row.method}).kind != HintKind::none;
            if (found) WARN("flagged: " << row.place << " " << value);
            flagged += found ? 1 : 0;
        }
    }
    CHECK(flagged <= 2);
}

TEST_CASE("a slip is answered with what was meant", "[core][plausible]") {
    std::vector<engine::Error> errors;
    const EntryTables tables = load_entry_tables(errors);
    const auto meant = [&](const Typed& typed) {
        const Hint hint = judge(tables, typed);
        REQUIRE(hint.suggestion);
        return hint.suggestion->canonical;
    };
    CHECK(meant({Field::crossing_rise, "Door", 1, "19", ""}) == 19000000);      // 19 mm, not 19 in
    CHECK(meant({Field::crossing_rise, "Door", 0, "0.75", ""}) == 19050000);    // 3/4 in, not 0.75 mm
    CHECK(meant({Field::crossing_rise, "Door", 0, "199", ""}) == 19000000);     // the 9 bounced
    CHECK(meant({Field::room_air, "Holding freezer", 0, "25", ""}) == 248150);  // the minus is missing
    CHECK(meant({Field::crossing_gap, "Door", 0, "320", ""}) == 32000000);
}
