#include "app/bundle/survey_document.hpp"
#include "app/bundle/survey_fields.hpp"
#include "app/bundle/survey_words.hpp"
#include "app/data/json_reader.hpp"

#include <fmt/format.h>

namespace sillwalk::app {

using engine::Choice;
using engine::Known;
using engine::Reading;

namespace {

void set_si(double& out, double si) {
    out = si;
}
void set_si(engine::Temperature& out, double si) {
    out = engine::Temperature::from_kelvin(si);
}
void set_si(engine::Slope& out, double si) {
    out = engine::Slope::from_tangent(si);
}
template <engine::Dim D>
void set_si(engine::Quantity<D>& out, double si) {
    out = engine::Quantity<D>::from_si(si);
}

bool has_value(Known known) {
    return known != Known::not_accessible && known != Known::not_yet_read;
}

constexpr std::size_t longest_id = 64;

bool good_id(std::string_view text) {
    if (text.empty() || text.size() > longest_id) return false;
    bool first = true;
    for (const char c : text) {
        const bool letter_or_digit = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!letter_or_digit && (first || (c != '.' && c != '_' && c != '-'))) return false;
        first = false;
    }
    return true;
}

/// Visitor of survey_fields.hpp that reads one JSON object.
class Reader {
public:
    Reader(const Json& value, std::string path, JsonErrors& errors, UnknownMembers unknown)
        : row_(value, std::move(path), errors), errors_(errors), unknown_(unknown) {}

    void done() {
        if (unknown_ == UnknownMembers::refuse) row_.done();
    }

    void format(std::string_view right) {
        const std::optional<std::string> found = row_.text("format", Need::required);
        if (found && *found != right) row_.error("format", fmt::format("'{}' is not '{}'", *found, right));
    }

    template <class Tag>
    void id(std::string_view key, engine::Id<Tag>& out) {
        if (const auto found = id_text(key, Need::required)) out = engine::Id<Tag>(*found);
    }
    template <class Tag>
    void optional_id(std::string_view key, std::optional<engine::Id<Tag>>& out) {
        if (const auto found = id_text(key, Need::optional)) out = engine::Id<Tag>(*found);
    }
    template <class Tag>
    void ids(std::string_view key, std::vector<engine::Id<Tag>>& out) {
        row_.each(key, [&](const Json& element, const std::string& path) {
            if (element.is_string() && good_id(element.get<std::string>())) {
                out.emplace_back(element.get<std::string>());
            } else {
                out.emplace_back();  // keeps the place, so that later paths count right
                errors_.push_back({engine::ErrorCode::bad_input, std::string(id_rule), path});
            }
        });
    }
    void name(std::string_view key, std::string& out) { out = row_.text(key, Need::required).value_or(""); }
    void note(std::string_view key, std::string& out) { out = row_.text(key, Need::optional).value_or(""); }
    void flag(std::string_view key, bool& out, bool fallback) {
        out = row_.boolean(key, Need::optional).value_or(fallback);
    }
    void integer(std::string_view key, std::int64_t& out, std::int64_t fallback) {
        out = row_.integer(key, 0, greatest_exact, Need::optional).value_or(fallback);
    }
    void length(std::string_view key, engine::Length& out) {
        const auto found = row_.integer(key, unit_nanometre.low, unit_nanometre.high);
        if (found) set_si(out, static_cast<double>(*found) / unit_nanometre.per_si);
    }
    template <class E>
    void word(std::string_view key, E& out) {
        out = read_word<E>(row_, key).value_or(out);
    }

    template <class T>
    void reading(std::string_view key, Reading<T>& out, const IntegerUnit& unit) {
        if (!row_.has(key)) return;
        auto inner = row_.object(key);
        const std::string value_key = "value_" + std::string(unit.suffix);
        const std::string tolerance_key = "tolerance_" + std::string(unit.suffix);
        const auto value = inner->integer(value_key, unit.low, unit.high, Need::optional);
        const auto tolerance = inner->integer(tolerance_key, 0, greatest_exact, Need::optional);
        if (value) {
            T quantity{};
            set_si(quantity, static_cast<double>(*value) / unit.per_si);
            out.value = quantity;
        }
        if (tolerance) set_si(out.tolerance, static_cast<double>(*tolerance) / unit.per_si);
        out.method = inner->text("method", Need::optional).value_or("");
        finish(*inner, value_key, out.known, out.as_entered);
        if (tolerance && !inner->has(value_key) && !has_value(out.known)) {
            inner->error(tolerance_key, "a tolerance needs a value beside it");
        }
    }
    template <class E>
    void choice(std::string_view key, Choice<E>& out) {
        if (!row_.has(key)) return;
        auto inner = row_.object(key);
        out.value = choice_value<E>(*inner);
        finish(*inner, "value", out.known, out.as_entered);
    }

    template <class T, class F>
    void needed_list(std::string_view key, std::vector<T>& items, F&& visit) {
        row_.each(key, [&](const Json& element, const std::string& path) {
            Reader inner(element, path, errors_, unknown_);
            items.emplace_back();
            visit(inner, items.back());
            inner.done();
        });
    }
    /// An empty list would say "there are none"; what has not been read is left out.
    template <class T, class F>
    void list(std::string_view key, std::vector<T>& items, F&& visit) {
        if (!row_.has(key)) return;
        needed_list(key, items, visit);
        const Json* found = row_.member(key);
        if (found->is_array() && found->empty()) row_.error(key, "is empty; leave it out where nothing has been read");
    }

private:
    static constexpr std::string_view id_rule =
        "an id is 1 to 64 letters, digits, '.', '_' or '-', and starts with a letter or digit";

    std::optional<std::string> id_text(std::string_view key, Need need) {
        const auto found = row_.text(key, need);
        if (!found || good_id(*found)) return found;
        row_.error(key, fmt::format("'{}': {}", *found, id_rule));
        return std::nullopt;
    }
    template <class E>
    static std::optional<E> read_word(JsonObject& row, std::string_view key, Need need = Need::required) {
        const auto found = row.text(key, need);
        if (!found) return std::nullopt;
        const auto value = value_of_word<E>(*found);
        if (!value) row.error(key, fmt::format("'{}' is not one of: {}", *found, all_words<E>()));
        return value;
    }
    template <class E>
    static std::optional<E> choice_value(JsonObject& inner) {
        if constexpr (std::is_enum_v<E>) {
            return read_word<E>(inner, "value", Need::optional);
        } else if constexpr (std::is_same_v<E, bool>) {
            return inner.boolean("value", Need::optional);
        } else if constexpr (std::is_same_v<E, int>) {
            const auto found = inner.integer("value", 0, 9, Need::optional);
            return found ? std::optional<int>(static_cast<int>(*found)) : std::nullopt;
        } else {
            return inner.text("value", Need::optional);
        }
    }

    /// Reads how the value is known, and holds it against whether there is a value.
    void finish(JsonObject& inner, std::string_view value_key, Known& known, std::string& as_entered) {
        as_entered = inner.text("as_entered", Need::optional).value_or("");
        const auto found = read_word<Known>(inner, "known");
        if (found) {
            known = *found;
            if (has_value(known) && !inner.has(value_key)) inner.error(value_key, "missing, though it is known");
            if (!has_value(known) && inner.has(value_key)) {
                inner.error(value_key, fmt::format("there is a value, so known cannot be '{}'", word_of(known)));
            }
        }
        if (unknown_ == UnknownMembers::refuse) inner.done();
    }

    JsonObject row_;
    JsonErrors& errors_;
    UnknownMembers unknown_;
};

}  // namespace

SurveyRead read_survey(std::string_view text, UnknownMembers unknown) {
    SurveyRead out;
    const std::optional<Json> document = parse_json(text, out.errors);
    return document ? read_document(*document, unknown) : out;
}

SurveyRead read_document(const Json& document, UnknownMembers unknown) {
    SurveyRead out;
    Reader reader(document, "", out.errors, unknown);
    reader.format(survey_format);
    visit_survey(reader, out.survey);
    reader.done();
    return out;
}

}  // namespace sillwalk::app
