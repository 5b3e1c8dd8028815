#include "app/data/json_reader.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "assets/embedded.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <set>

using namespace sillwalk;
using namespace sillwalk::engine;
using app::Json;

namespace {

const Catalogue& shipped() {
    static const app::LoadedCatalogue loaded = app::load_catalogue();
    return loaded.catalogue;
}

/// The line of a wheel: its id without the size.
std::string line_of(const Wheel& wheel) {
    return wheel.id.text().substr(0, wheel.id.text().rfind('-'));
}

std::vector<std::string> places_after(const char* at, Json value) {
    Json catalogue = Json::parse(*assets::embedded("catalogue/catalogue.json"));
    catalogue[Json::json_pointer(at)] = std::move(value);
    std::vector<std::string> out;
    for (const Error& error : app::read_catalogue(catalogue.dump()).errors) out.push_back(error.where);
    return out;
}

using Places = std::vector<std::string>;

}  // namespace

TEST_CASE("the shipped catalogue is read without an error and says that it is invented", "[catalogue]") {
    const app::LoadedCatalogue loaded = app::load_catalogue();
    for (const Error& error : loaded.errors) UNSCOPED_INFO(error.where << ": " << error.message);
    REQUIRE(loaded.errors.empty());
    CHECK(loaded.catalogue.invented);
    CHECK(loaded.catalogue.name.find("invented") != std::string::npos);
    CHECK(loaded.catalogue.wheels.size() >= 200);
    CHECK(loaded.catalogue.bearings.size() >= 20);
    for (const Wheel& wheel : loaded.catalogue.wheels) CHECK(wheel.source == "invented");
}

TEST_CASE("every construction, bearing kind, rig function and finish is offered", "[catalogue]") {
    std::set<Construction> constructions;
    std::set<BearingKind> kinds;
    std::set<std::pair<CastorFunction, RigFinish>> rigs;
    for (const Wheel& wheel : shipped().wheels) constructions.insert(wheel.construction);
    for (const Bearing& bearing : shipped().bearings) kinds.insert(bearing.kind);
    for (const Rig& rig : shipped().rigs) rigs.emplace(rig.function, rig.finish);
    CHECK(constructions.size() == 9);
    CHECK(kinds.size() == 5);
    CHECK(rigs.size() == 6);
}

TEST_CASE("a rating rises with the diameter and with the tread width", "[catalogue][property]") {
    std::map<std::string, std::vector<const Wheel*>> lines;
    for (const Wheel& wheel : shipped().wheels) lines[line_of(wheel)].push_back(&wheel);
    CHECK(lines.size() >= 14);
    int compared = 0;
    for (const auto& [line, wheels] : lines) {
        for (const Wheel* small : wheels) {
            for (const Wheel* large : wheels) {
                if (small->diameter > large->diameter || small->tread_width > large->tread_width || small == large)
                    continue;
                CAPTURE(small->id.text(), large->id.text());
                CHECK(*small->rated_load <= *large->rated_load);
                ++compared;
            }
        }
    }
    CHECK(compared > 500);
}

TEST_CASE("each material of the catalogue stands in the tables", "[catalogue]") {
    const app::LoadedTables loaded = app::load_tables();
    for (const Wheel& wheel : shipped().wheels) {
        CHECK(loaded.tables.material(wheel.tread_material) != nullptr);
        CHECK(loaded.tables.material(wheel.core_material) != nullptr);
    }
    for (const Bearing& bearing : shipped().bearings) CHECK(loaded.tables.material(bearing.material) != nullptr);
    for (const Rig& rig : shipped().rigs) CHECK(loaded.tables.material(rig.material) != nullptr);
}

TEST_CASE("each bearing names its small parts and its fitting order, and fills the hub it goes into", "[catalogue]") {
    for (const Bearing& bearing : shipped().bearings) {
        CAPTURE(bearing.id.text());
        CHECK(!bearing.parts.empty());
        CHECK(bearing.fitting.size() >= 5);
        const bool rolling = bearing.kind != BearingKind::plain_acetal;
        CHECK(bearing.dynamic_rating.has_value() == rolling);
        CHECK(bearing.static_rating.has_value() == rolling);
        CHECK(bearing.bore >= bearing.axle_diameter);
        CHECK(bearing.outer_diameter > bearing.bore);
    }
    for (const Wheel& wheel : shipped().wheels) {
        REQUIRE(!wheel.bearings.empty());
        for (const BearingId& id : wheel.bearings) {
            const Bearing* bearing = shipped().bearing(id.text());
            REQUIRE(bearing != nullptr);
            CHECK(bearing->outer_diameter == wheel.hub_bore);
            CHECK(static_cast<double>(bearing->count) * bearing->length <= wheel.hub_length);
        }
    }
}

TEST_CASE("each wheel finds rigs that take it, in low thousands of combinations", "[catalogue]") {
    std::size_t combinations = 0;
    for (const Wheel& wheel : shipped().wheels) {
        std::size_t rigs = 0;
        for (const Rig& rig : shipped().rigs) {
            for (const BearingId& id : wheel.bearings) {
                const Bearing* bearing = shipped().bearing(id.text());
                const bool fits = rig.wheel_diameter == wheel.diameter && rig.fork_width >= wheel.hub_length &&
                                  rig.axle_diameter == bearing->axle_diameter;
                rigs += fits ? 1 : 0;
            }
        }
        CAPTURE(wheel.id.text());
        CHECK(rigs > 0);
        combinations += rigs;
    }
    CHECK(combinations > 1000);
    CHECK(combinations < 3000);
}

TEST_CASE("a candidate's name holds its parts", "[catalogue]") {
    const Candidate candidate{0, 0, 0, Preparation::h1_lubricated};
    CHECK(candidate_key(shipped(), candidate) == shipped().wheels[0].id.text() + "+" + shipped().bearings[0].id.text() +
                                                     "+" + shipped().rigs[0].id.text() + "+h1_lubricated");
    CHECK(shipped().wheel("no-such-wheel") == nullptr);
    CHECK(shipped().wheel(shipped().wheels.back().id.text()) == &shipped().wheels.back());
}

TEST_CASE("each slip in a catalogue is named at its path", "[catalogue]") {
    CHECK(places_after("/format", "other") == Places{"/format"});
    CHECK(places_after("/wheels/3/diameter_mm", "127") == Places{"/wheels/3/diameter_mm"});
    CHECK(places_after("/wheels/3/diameter_mm", -127) == Places{"/wheels/3/diameter_mm"});
    CHECK(places_after("/wheels/3/construction", "wood") == Places{"/wheels/3/construction"});
    CHECK(places_after("/wheels/3/rated_load_lb", 300) == Places{"/wheels/3/rated_load_lb"});
    CHECK(places_after("/wheels/3/hardness", Json{{"scale", "shore_a"}}) == Places{"/wheels/3/hardness/value"});
    CHECK(places_after("/wheels/3/hygiene", {"clean"}) == Places{"/wheels/3/hygiene/0"});
    CHECK(places_after("/wheels/3/bearings/0", "square") == Places{"/wheels/3/bearings/0"});
    CHECK(places_after("/wheels/3/id", "two words") == Places{"/wheels/3/id"});
    CHECK(places_after("/wheels/3/id", shipped().wheels[4].id.text()) == Places{"/wheels/4/id"});
    CHECK(places_after("/bearings/0/grease", "lard") == Places{"/bearings/0/grease"});
    CHECK(places_after("/bearings/0/parts/0/count", 0) == Places{"/bearings/0/parts/0/count"});
    CHECK(places_after("/rigs/0/overall_height_mm", 20) == Places{"/rigs/0/overall_height_mm"});
    CHECK(places_after("/rigs/0/exposed_threads", "yes") == Places{"/rigs/0/exposed_threads"});
    CHECK(places_after("/wheels", 3) == Places{"/wheels"});
}
