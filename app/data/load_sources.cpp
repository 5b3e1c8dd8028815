#include "app/data/load_sources.hpp"

#include "app/data/table_fields.hpp"

namespace sillwalk::app {

std::vector<engine::Source> load_sources(JsonObject& file, JsonErrors& errors) {
    std::vector<engine::Source> sources;
    std::string before;
    each_row(file, "rows", errors, [&](JsonObject& row, std::size_t) {
        engine::Source source;
        source.key = rising_id(row, "key", before);
        source.title = row.text("title").value_or("");
        source.publisher = row.text("publisher", Need::optional).value_or("");
        source.edition = row.text("edition", Need::optional).value_or("");
        source.where = row.text("where").value_or("");
        source.licence = row.text("licence").value_or("");
        source.note = row.text("note").value_or("");
        sources.push_back(std::move(source));
    });
    return sources;
}

}  // namespace sillwalk::app
