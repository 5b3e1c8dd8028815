#include "engine/physics/chemistry.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;

namespace {

ChemicalRow row(const char* id, const char* agent, std::optional<double> strength, double celsius_max,
                std::optional<ChemicalLevel> level) {
    ChemicalRow out;
    out.id = id;
    out.agent = agent;
    out.name = agent;
    out.strength = strength;
    out.temperature_max = celsius(celsius_max);
    out.ratings.resize(1);
    if (level) {
        out.ratings[0] = ChemicalRating{};
        out.ratings[0]->level = *level;
    }
    return out;
}

/// Made-up rows: the rules of looking up are tested here, not the levels.
Chemicals table() {
    return {
        {"tread"},
        {row("lye-2", "lye", 0.02, 60, ChemicalLevel::suited), row("lye-50", "lye", 0.50, 25, ChemicalLevel::unfit),
         row("steam", "steam", std::nullopt, 134, ChemicalLevel::watch),
         row("wash-cold", "wash", 0.05, 25, ChemicalLevel::suited),
         row("wash-hot", "wash", 0.05, 80, ChemicalLevel::short_contact), row("soil", "soil", 0.1, 40, std::nullopt)}};
}

}  // namespace

TEST_CASE("a strength takes the row at or above it", "[engine][physics]") {
    const Chemicals chemicals = table();
    CHECK(chemical(chemicals, "tread", "lye", 0.01)->row->id == "lye-2");
    CHECK(chemical(chemicals, "tread", "lye", 0.02)->row->id == "lye-2");
    CHECK(chemical(chemicals, "tread", "lye", 0.021)->row->id == "lye-50");
    const auto stronger = chemical(chemicals, "tread", "lye", 0.60);
    CHECK(stronger->stronger_than_rows);
    CHECK(stronger->level == ChemicalLevel::unfit);
    CHECK(chemical(chemicals, "tread", "steam", 0.9)->row->id == "steam");
}

TEST_CASE("without a strength the strongest row decides", "[engine][physics]") {
    CHECK(chemical(table(), "tread", "lye")->level == ChemicalLevel::unfit);
}

TEST_CASE("hotter than the row is one level worse, and no worse than unfit", "[engine][physics]") {
    const Chemicals chemicals = table();
    const auto hot = chemical(chemicals, "tread", "lye", 0.02, celsius(61));
    CHECK(hot->hotter_than_row);
    CHECK(hot->level == ChemicalLevel::watch);
    CHECK_FALSE(chemical(chemicals, "tread", "lye", 0.02, celsius(60))->hotter_than_row);
    CHECK(chemical(chemicals, "tread", "lye", 0.5, celsius(60))->level == ChemicalLevel::unfit);
}

TEST_CASE("of rows of one strength the coolest that reaches the temperature is taken", "[engine][physics]") {
    const Chemicals chemicals = table();
    CHECK(chemical(chemicals, "tread", "wash", 0.05, celsius(20))->row->id == "wash-cold");
    CHECK(chemical(chemicals, "tread", "wash", 0.05, celsius(50))->row->id == "wash-hot");
    const auto hotter = chemical(chemicals, "tread", "wash", 0.05, celsius(90));
    CHECK(hotter->row->id == "wash-hot");
    CHECK(hotter->level == ChemicalLevel::unfit);
}

TEST_CASE("unknown ids name the nearest, unrated pairs are refused", "[engine][physics]") {
    const Chemicals chemicals = table();
    const auto agent = chemical(chemicals, "tread", "stream");
    CHECK(agent.error().code == ErrorCode::not_found);
    CHECK_THAT(agent.error().message, Catch::Contains("steam"));
    CHECK(chemical(chemicals, "thread", "lye").error().where == "material");
    CHECK(chemical(chemicals, "tread", "soil", 0.1).error().code == ErrorCode::no_answer);
    CHECK(chemical(chemicals, "tread", "lye", 1.5).error().where == "strength");
}
