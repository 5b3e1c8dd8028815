#include "app/data/csv.hpp"
#include "app/data/import_catalogue.hpp"
#include "app/data/json_reader.hpp"
#include "assets/embedded.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

using namespace sillwalk;

namespace {

const std::string header =
    "part;id;description;construction;tread_material;core_material;diameter_in;tread_width_in;hub_length_mm;hub_bore_"
    "mm;"
    "rated_load_lb;bearings;kind;material;bore_mm;axle_diameter_mm;outer_diameter_mm;length_mm;count;sealed;"
    "grease_exposed;grease;hardness;parts\n";
const std::string bearing =
    "bearing;b1;A bearing;;;;;;;;;;roller;bearing-steel;20;12.7;35;57;1;no;yes;general;;"
    "1 roller bearing | 2 retainer washer\n";

std::string wheel(const std::string& id, const std::string& diameter = "5", const std::string& rest = "650;b1") {
    return "wheel;" + id + ";A wheel;nylon;nylon-6-6;nylon-6-6;" + diameter + ";2;61;35;" + rest + ";;;;;;;;;;;75 D;\n";
}

std::vector<std::string> lines(const app::ImportedCatalogue& imported) {
    std::vector<std::string> out;
    for (const app::ImportProblem& problem : imported.problems) out.push_back(problem.line());
    return out;
}

/// Imports a good bearing, a good wheel and one row to judge; returns the only problem.
std::string problem_with(const std::string& row) {
    const auto imported = app::import_catalogue_csv(header + bearing + wheel("good") + row, "mine");
    CAPTURE(lines(imported));
    REQUIRE(imported.problems.size() == 1);
    CHECK(imported.bad_rows == 1);
    CHECK(imported.catalogue.wheel("good") != nullptr);
    return imported.problems[0].line();
}

bool starts_with(const std::string& text, const std::string& start) {
    return text.rfind(start, 0) == 0;
}

}  // namespace

TEST_CASE("a good CSV catalogue is imported in the units of its header", "[catalogue][import]") {
    const auto imported =
        app::import_catalogue("\xef\xbb\xbf" + header + bearing + wheel("w1") + wheel("w2", "5 1/2"), "mine");
    CAPTURE(lines(imported));
    REQUIRE(imported.problems.empty());
    CHECK(imported.summary() == "3 of 3 rows imported, 0 left out");
    const engine::Wheel* w1 = imported.catalogue.wheel("w1");
    REQUIRE(w1 != nullptr);
    CHECK(w1->diameter.in(engine::millimetre) == Approx(127.0));
    CHECK(imported.catalogue.wheel("w2")->diameter.in(engine::millimetre) == Approx(139.7));
    CHECK(w1->rated_load->in(engine::pound) == Approx(650));
    CHECK(w1->hardness->value == 75);
    CHECK(!w1->rating_class.has_value());
    CHECK(w1->source == "imported");
    REQUIRE(imported.catalogue.bearing("b1")->parts.size() == 2);
    CHECK(imported.catalogue.bearing("b1")->parts[1].count == 2);
    CHECK(imported.catalogue.bearing("b1")->parts[1].name == "retainer washer");
}

TEST_CASE("the example in the reference is a good catalogue", "[catalogue][import]") {
    std::ifstream file(SILLWALK_TEST_DATA "/../docs/reference/catalogue-csv.md");
    std::stringstream text;
    text << file.rdbuf();
    const std::string page = text.str();
    const std::string fence = "```csv\n";
    const std::size_t start = page.find(fence) + fence.size();
    const auto imported = app::import_catalogue(page.substr(start, page.find("```", start) - start), "mine");
    CAPTURE(lines(imported));
    CHECK(imported.problems.empty());
    CHECK(imported.rows == 3);
    CHECK(imported.catalogue.rigs.size() == 1);
}

TEST_CASE("each kind of bad row is named by row and column, and the good rows are kept", "[catalogue][import]") {
    CHECK(starts_with(problem_with(wheel("bad", "5,5")),
                      "row 4, column diameter_in: '5,5' holds a comma; write the decimal point"));
    CHECK(starts_with(problem_with(wheel("bad", "five")), "row 4, column diameter_in: 'five' is not a number"));
    CHECK(starts_with(problem_with(wheel("bad", "5 in")), "row 4, column diameter_in: '5 in' is not a number"));
    CHECK(starts_with(problem_with(wheel("bad", "5000")), "row 4, column diameter_in: 127000 is outside"));
    CHECK(problem_with(wheel("bad", "")) == "row 4, column diameter_in: missing; a wheel needs it");
    CHECK(starts_with(problem_with(wheel("good")), "row 4, column id: 'good' is used already by row 3"));
    CHECK(starts_with(problem_with(wheel("bad", "5", "650;b2")),
                      "row 4, column bearings: there is no good bearing 'b2'"));
    CHECK(starts_with(problem_with("wheel;short\n"), "row 4: 2 cells, but the header has 24"));
    CHECK(starts_with(problem_with("cart" + wheel("bad").substr(5)),
                      "row 4, column part: 'cart' is not one of: wheel, bearing, rig"));
    CHECK(starts_with(problem_with("bearing;b3;B;;;;;;;;;;roller;steel;20;12.7;35;57;1;maybe;yes;general;;\n"),
                      "row 4, column sealed: 'maybe' is neither yes nor no"));
    CHECK(starts_with(problem_with("bearing;b3;B;;;;;;;;;;roller;steel;20;12.7;35;57;1.5;no;yes;general;;\n"),
                      "row 4, column count: '1.5' is not a whole number"));
    CHECK(starts_with(problem_with("bearing;b3;B;;;;5;;;;;;roller;steel;20;12.7;35;57;1;no;yes;general;;\n"),
                      "row 4, column diameter_in: does not belong to a bearing"));
    CHECK(starts_with(problem_with("bearing;b3;B;;;;;;;;;;roller;steel;20;12.7;35;57;1;no;yes;general;85;\n"),
                      "row 4, column hardness: '85' is no hardness; write 85 A or 75 D"));
    CHECK(starts_with(problem_with("bearing;b3;B;;;;;;;;;;roller;steel;20;12.7;35;57;1;no;yes;general;;washer\n"),
                      "row 4, column parts: 'washer' is no part"));
}

TEST_CASE("a header's slips are named", "[catalogue][import]") {
    const auto first = [](const std::string& text) {
        const auto imported = app::import_catalogue_csv(text, "mine");
        REQUIRE(!imported.problems.empty());
        return imported.problems[0].line();
    };
    CHECK(starts_with(first("id,diameter\n"),
                      "row 1, column diameter: 'diameter' needs its unit in the name: diameter_mm or diameter_in"));
    CHECK(starts_with(first("id,diametre_mm\n"),
                      "row 1, column diametre_mm: there is no column 'diametre_mm'; nearest: diameter_mm"));
    CHECK(starts_with(first("id,diameter_mm,diameter_in\n"), "row 1, column diameter_in: the same figure"));
    CHECK(starts_with(first("name,size\n1,2\n"), "row 1, column name: there is no column 'name'"));
    CHECK(starts_with(first(""), "row 1: the file is empty"));
    CHECK(starts_with(first("id\n\"open\n"), "row 2: a quote is opened and never closed"));
}

TEST_CASE("the JSON import keeps the good rows of a broken catalogue", "[catalogue][import]") {
    app::Json catalogue = app::Json::parse(*assets::embedded("catalogue/catalogue.json"));
    const std::size_t rows = catalogue["wheels"].size() + catalogue["bearings"].size() + catalogue["rigs"].size();
    catalogue["wheels"][0]["diameter_mm"] = "big";
    catalogue["wheels"][1]["bearings"] = {"none-such"};
    catalogue["rigs"][2].erase("finish");
    catalogue["rigs"][3]["id"] = catalogue["rigs"][4]["id"];
    const auto imported = app::import_catalogue(catalogue.dump(), "mine");
    CAPTURE(lines(imported));
    REQUIRE(imported.problems.size() == 4);
    CHECK(starts_with(lines(imported)[0], "/wheels/0/diameter_mm: "));
    CHECK(lines(imported)[1] == "/rigs/2/finish: missing");
    CHECK(starts_with(lines(imported)[2], "/rigs/4/id: "));
    CHECK(starts_with(lines(imported)[3], "/wheels/1/bearings: "));
    CHECK(imported.rows == rows);
    CHECK(imported.bad_rows == 4);
    CHECK(app::import_catalogue_json("{").problems.size() == 1);
    CHECK(!app::import_catalogue_json("[]").problems.empty());
}

TEST_CASE("CSV is read as RFC 4180 section 2 describes it", "[csv][published]") {
    const auto rows = [](std::string_view text) { return app::read_csv(text)->rows; };
    using Rows = std::vector<std::vector<std::string>>;
    CHECK(rows("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});  // rule 1
    CHECK(rows("aaa,bbb,ccc\r\nzzz,yyy,xxx") == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});      // rule 2
    CHECK(rows("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});  // 5
    CHECK(rows("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") ==
          Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});                // 6
    CHECK(rows("\"aaa\",\"b\"\"bb\",\"ccc\"") == Rows{{"aaa", "b\"bb", "ccc"}});  // rule 7
    CHECK(rows("a;b\n1,5;2\n") == Rows{{"a", "b"}, {"1,5", "2"}});
    CHECK(rows("a,b\n\n,\n") == Rows{{"a", "b"}, {}, {"", ""}});
    CHECK(!app::read_csv("a,\"b").has_value());
}
