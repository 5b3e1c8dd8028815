#include "engine/desk/argument_reader.hpp"
#include "engine/desk/calculations.hpp"
#include "engine/desk/output_list.hpp"
#include "engine/physics/chemistry.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::engine {

namespace {

constexpr DeskKey chemical_keys[] = {
    {"material", "material of the part", "id, like pu-ether", "a column of the chemical table"},
    {"agent", "cleaning agent or soil", "id, like hydrogen-peroxide", "an agent of the chemical table"},
    {"strength", "mass share in use", "share", "over 0 %, at most 100 %", false, "the strongest row"},
    {"temperature", "in use", "temperature", "", false, "within the row's"}};
constexpr DeskKey chemical_outputs[] = {{"level", "suited, watch, short contact or unfit", "", ""},
                                        {"source", "where the rating comes from", "", ""},
                                        {"status", "how far that was read", "", ""},
                                        {"disagreement", "what other sources say; empty where they agree", "", ""},
                                        {"row", "the row of the table that was used", "", ""},
                                        {"note", "what was done with strength and temperature", "", ""}};

Result<std::string> any_text(std::string_view text) {
    if (text.empty()) {
        return bad_input("is empty; write an id");
    }
    return std::string(text);
}

const char* level_name(ChemicalLevel level) {
    switch (level) {
        case ChemicalLevel::suited:
            return "suited";
        case ChemicalLevel::watch:
            return "watch";
        case ChemicalLevel::short_contact:
            return "short contact";
        case ChemicalLevel::unfit:
            return "unfit";
    }
    return "unfit";
}

std::string source_text(CitationId id, const Tables& tables) {
    if (id == 0 || id >= tables.citations.size()) {
        return "no source given";
    }
    const Citation& citation = tables.citations[id];
    const auto source = std::find_if(tables.sources.begin(), tables.sources.end(),
                                     [&citation](const Source& row) { return row.key == citation.source; });
    const std::string title = source == tables.sources.end() ? citation.source : source->title;
    return citation.locator.empty() ? title : fmt::format("{}, {}", title, citation.locator);
}

std::string note_text(const ChemicalAnswer& answer) {
    if (answer.stronger_than_rows) {
        return "Stronger than any row of the table: taken as unfit.";
    }
    return answer.hotter_than_row
               ? fmt::format("Hotter than the row's {:.0f} C: one level worse.", answer.row->temperature_max.celsius())
               : "";
}

Result<std::vector<DeskOutput>> run_chemical(const DeskArguments& arguments, const Tables& tables) {
    ArgumentReader in(arguments);
    const std::string material = in.required("material", any_text);
    const std::string agent = in.required("agent", any_text);
    const auto strength = in.optional("strength", parse_share);
    const auto temperature = in.optional("temperature", parse_temperature);
    if (in.failed()) {
        return in.failure();
    }
    return chemical(tables.chemicals, material, agent, strength, temperature).map([&](const ChemicalAnswer& answer) {
        return OutputList(chemical_outputs)
            .add("level", std::string(level_name(answer.level)))
            .add("source", source_text(answer.rating->citation, tables))
            .add("status", answer.rating->status)
            .add("disagreement", answer.rating->disagreement)
            .add("row", answer.row->name + ", " + answer.row->strength_text)
            .add("note", note_text(answer))
            .take();
    });
}

constexpr DeskCalculation calculations[] = {
    {"chemical", "does an agent attack a material",
     "the row at or above the strength; one level worse over the row's temperature",
     "each rating names its own source; unstressed material", chemical_keys, chemical_outputs, run_chemical,
     "material=pu-ether agent=hydrogen-peroxide strength=3%"}};

}  // namespace

std::span<const DeskCalculation> chemical_calculations() {
    return calculations;
}

}  // namespace sillwalk::engine
