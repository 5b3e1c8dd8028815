#include "app/data/import_catalogue.hpp"

#include "app/data/catalogue_columns.hpp"
#include "app/data/catalogue_rows.hpp"
#include "app/data/csv.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

namespace sillwalk::app {

using namespace engine;

namespace {

/// Collects rows of one catalogue: keeps the good ones, refuses ids that stand already.
class Collector {
public:
    explicit Collector(ImportedCatalogue& out) : out_(out) {}

    /// Reads one row; returns its errors, empty where the row was kept.
    JsonErrors add(const Json& row, std::string_view part, const std::string& path, std::size_t place) {
        if (part == "wheel") return keep(out_.catalogue.wheels, read_wheel, row, path, place);
        if (part == "bearing") return keep(out_.catalogue.bearings, read_bearing, row, path, place);
        return keep(out_.catalogue.rigs, read_rig, row, path, place);
    }

private:
    template <class Item>
    JsonErrors keep(std::vector<Item>& items, Item (*read_row)(const Json&, const std::string&, JsonErrors&),
                    const Json& row, const std::string& path, std::size_t place) {
        JsonErrors errors;
        Item item = read_row(row, path, errors);
        if (errors.empty()) {
            const auto [seen, fresh] = places_.emplace(item.id.text(), place);
            if (!fresh) {
                errors.push_back(
                    {ErrorCode::bad_input,
                     fmt::format("'{}' is used already by row {}; each id stands once", item.id.text(), seen->second),
                     path + "/id"});
            }
        }
        ++out_.rows;
        if (errors.empty()) {
            items.push_back(std::move(item));
        } else {
            ++out_.bad_rows;
        }
        return errors;
    }

    ImportedCatalogue& out_;
    std::map<std::string, std::size_t> places_;
};

/// Wheels that name a bearing which was not imported are of no use: they are left out, and named.
template <class Report>
void drop_wheels_without_bearing(ImportedCatalogue& out, Report&& report) {
    std::set<std::string> known;
    for (const Bearing& bearing : out.catalogue.bearings) known.insert(bearing.id.text());
    std::vector<Wheel> kept;
    for (Wheel& wheel : out.catalogue.wheels) {
        std::string unknown;
        for (const BearingId& id : wheel.bearings) {
            if (known.count(id.text()) == 0) unknown = id.text();
        }
        if (unknown.empty()) {
            kept.push_back(std::move(wheel));
        } else {
            report(wheel, fmt::format("there is no good bearing '{}' in this file", unknown));
            ++out.bad_rows;
        }
    }
    out.catalogue.wheels = std::move(kept);
}

void import_json_list(JsonObject& document, std::string_view key, std::string_view part, Collector& collector,
                      std::map<std::string, std::string>& paths, JsonErrors& errors) {
    std::size_t place = 0;
    document.each(
        key,
        [&](const Json& row, const std::string& path) {
            const JsonErrors found = collector.add(row, part, path, place++);
            errors.insert(errors.end(), found.begin(), found.end());
            if (found.empty()) paths[row["id"].get<std::string>()] = path;
        },
        Need::optional);
}

/// The header of a CSV catalogue: one column per cell, empty where the cell names none.
struct Header {
    std::vector<std::optional<CsvColumn>> columns;
    std::vector<std::string> names;

    /// The header cell that fills a JSON member; the member's own name where there is none.
    [[nodiscard]] std::string name_of(std::string_view json_key) const {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (columns[i] && columns[i]->json_key == json_key) return names[i];
        }
        return std::string(json_key);
    }
    [[nodiscard]] bool has(std::string_view json_key) const {
        for (const auto& column : columns) {
            if (column && column->json_key == json_key) return true;
        }
        return false;
    }
};

constexpr std::size_t header_row = 1;

Header read_header(const std::vector<std::string>& cells, std::vector<ImportProblem>& problems) {
    Header header;
    for (const std::string& cell : cells) {
        const std::string name(trimmed(cell));
        const auto column = find_column(name);
        const bool twice = column && header.has(column->json_key);
        header.names.push_back(name);
        header.columns.push_back(column && !twice ? std::optional<CsvColumn>(*column) : std::nullopt);
        if (!column) problems.push_back({header_row, name, column.error().message + "; the column is passed over"});
        if (twice)
            problems.push_back(
                {header_row, name, "the same figure stands in an earlier column; this one is passed over"});
    }
    return header;
}

/// "/hardness/value" -> "hardness".
std::string_view first_key(std::string_view path) {
    if (!path.empty()) path.remove_prefix(1);
    return path.substr(0, path.find('/'));
}

class CsvImport {
public:
    CsvImport(ImportedCatalogue& out, Header header) : out_(out), header_(std::move(header)), collector_(out) {}

    void row(const std::vector<std::string>& cells, std::size_t number) {
        if (cells.size() != header_.names.size()) {
            refuse(number, "",
                   fmt::format("{} cells, but the header has {}; put quotes round a text that holds the separator",
                               cells.size(), header_.names.size()));
            return;
        }
        std::vector<ImportProblem> slips;
        Json row = Json::object();
        for (std::size_t i = 0; i < cells.size(); ++i) add_cell(row, i, trimmed(cells[i]), number, slips);
        const std::string part = take_part(row, number, slips);
        if (!row.contains("source")) row["source"] = "imported";
        if (!slips.empty()) {
            ++out_.rows;
            ++out_.bad_rows;
            out_.problems.insert(out_.problems.end(), slips.begin(), slips.end());
            return;
        }
        const JsonErrors errors = collector_.add(row, part, "", number);
        for (const Error& error : errors) {
            out_.problems.push_back({number, header_.name_of(first_key(error.where)), words_for(error, part)});
        }
        if (errors.empty()) rows_[row["id"].get<std::string>()] = number;
    }
    [[nodiscard]] std::size_t row_of(const std::string& id) const {
        const auto found = rows_.find(id);
        return found == rows_.end() ? 0 : found->second;
    }

private:
    void refuse(std::size_t number, std::string column, std::string message) {
        ++out_.rows;
        ++out_.bad_rows;
        out_.problems.push_back({number, std::move(column), std::move(message)});
    }
    /// An empty cell is a figure that is not known: the member is left out.
    void add_cell(Json& row, std::size_t i, std::string_view cell, std::size_t number,
                  std::vector<ImportProblem>& slips) const {
        if (!header_.columns[i] || cell.empty()) return;
        const auto value = cell_value(*header_.columns[i], cell);
        if (value) {
            row[std::string(header_.columns[i]->json_key)] = *value;
        } else {
            slips.push_back({number, header_.names[i], value.error().message});
        }
    }
    static std::string take_part(Json& row, std::size_t number, std::vector<ImportProblem>& slips) {
        const std::string part = row.contains("part") ? row["part"].get<std::string>() : "wheel";
        row.erase("part");
        if (part != "wheel" && part != "bearing" && part != "rig") {
            slips.push_back({number, "part", fmt::format("'{}' is not one of: wheel, bearing, rig", part)});
        }
        return part;
    }
    static std::string words_for(const Error& error, const std::string& part) {
        if (error.message == "missing") return fmt::format("missing; a {} needs it", part);
        if (error.message == "is not a member this format knows")
            return fmt::format("does not belong to a {}; leave the cell empty", part);
        return error.message;
    }

    ImportedCatalogue& out_;
    Header header_;
    Collector collector_;
    std::map<std::string, std::size_t> rows_;
};

}  // namespace

std::string ImportProblem::line() const {
    if (row == 0) return column.empty() ? message : fmt::format("{}: {}", column, message);
    return column.empty() ? fmt::format("row {}: {}", row, message)
                          : fmt::format("row {}, column {}: {}", row, column, message);
}

std::string ImportedCatalogue::summary() const {
    return fmt::format("{} of {} rows imported, {} left out", rows - bad_rows, rows, bad_rows);
}

ImportedCatalogue import_catalogue_json(std::string_view text) {
    ImportedCatalogue out;
    JsonErrors errors;
    if (const auto parsed = parse_json(text, errors)) {
        JsonObject document(*parsed, "", errors);
        read_catalogue_head(document, out.catalogue);
        std::map<std::string, std::string> paths;
        Collector collector(out);
        import_json_list(document, "wheels", "wheel", collector, paths, errors);
        import_json_list(document, "bearings", "bearing", collector, paths, errors);
        import_json_list(document, "rigs", "rig", collector, paths, errors);
        document.done();
        drop_wheels_without_bearing(out, [&](const Wheel& wheel, std::string message) {
            errors.push_back({ErrorCode::not_found, std::move(message), paths[wheel.id.text()] + "/bearings"});
        });
    }
    for (Error& error : errors) out.problems.push_back({0, std::move(error.where), std::move(error.message)});
    sort_catalogue(out.catalogue);
    return out;
}

ImportedCatalogue import_catalogue_csv(std::string_view text, std::string name) {
    ImportedCatalogue out;
    out.catalogue.name = std::move(name);
    out.catalogue.edition = "imported";
    const auto csv = read_csv(text);
    if (!csv) {
        out.problems.push_back({0, csv.error().where, csv.error().message});
        return out;
    }
    if (csv->rows.empty()) {
        out.problems.push_back({header_row, "", "the file is empty; its first row names the columns"});
        return out;
    }
    const Header header = read_header(csv->rows.front(), out.problems);
    if (!header.has("id")) {
        out.problems.push_back({header_row, "id", "there is no column 'id'; the first row names the columns"});
        return out;
    }
    CsvImport import(out, header);
    for (std::size_t i = 1; i < csv->rows.size(); ++i) {
        if (!csv->rows[i].empty()) import.row(csv->rows[i], i + 1);
    }
    drop_wheels_without_bearing(out, [&](const Wheel& wheel, std::string message) {
        out.problems.push_back({import.row_of(wheel.id.text()), "bearings", std::move(message)});
    });
    sort_catalogue(out.catalogue);
    return out;
}

ImportedCatalogue import_catalogue(std::string_view text, std::string name) {
    const std::size_t first = text.find_first_not_of(" \t\r\n\xef\xbb\xbf");
    const bool json = first != std::string_view::npos && text[first] == '{';
    return json ? import_catalogue_json(text) : import_catalogue_csv(text, std::move(name));
}

}  // namespace sillwalk::app
