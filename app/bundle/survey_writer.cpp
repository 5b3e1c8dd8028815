#include "app/bundle/survey_document.hpp"
#include "app/bundle/survey_fields.hpp"
#include "app/bundle/survey_words.hpp"
#include "app/data/json_reader.hpp"

#include <cmath>

namespace sillwalk::app {

using engine::Choice;
using engine::Known;
using engine::Reading;

namespace {

double si_of(double value) {
    return value;
}
double si_of(engine::Temperature value) {
    return value.kelvin();
}
double si_of(engine::Slope value) {
    return value.tangent();
}
template <engine::Dim D>
double si_of(engine::Quantity<D> value) {
    return value.si();
}

/// Visitor of survey_fields.hpp that fills one JSON object.
class Writer {
public:
    Json take() { return std::move(object_); }

    template <class Tag>
    void id(const char* key, const engine::Id<Tag>& value) {
        object_[key] = value.text();
    }
    template <class Tag>
    void optional_id(const char* key, const std::optional<engine::Id<Tag>>& value) {
        if (value) object_[key] = value->text();
    }
    template <class Tag>
    void ids(const char* key, const std::vector<engine::Id<Tag>>& values) {
        Json list = Json::array();
        for (const auto& value : values) list.push_back(value.text());
        object_[key] = std::move(list);
    }
    void name(const char* key, const std::string& value) { object_[key] = value; }
    void note(const char* key, const std::string& value) {
        if (!value.empty()) object_[key] = value;
    }
    void flag(const char* key, bool value, bool) { object_[key] = value; }
    void integer(const char* key, std::int64_t value, std::int64_t) { object_[key] = value; }
    void length(const char* key, engine::Length value) { object_[key] = whole(value.si(), unit_nanometre); }
    template <class E>
    void word(const char* key, E value) {
        object_[key] = word_of(value);
    }

    template <class T>
    void reading(const char* key, const Reading<T>& reading, const IntegerUnit& unit) {
        Json out = Json::object();
        if (reading.value) {
            out[member("value_", unit)] = whole(si_of(*reading.value), unit);
            out[member("tolerance_", unit)] = whole(si_of(reading.tolerance), unit);
        }
        if (!reading.method.empty()) out["method"] = reading.method;
        finish(key, std::move(out), reading.known, reading.as_entered);
    }
    template <class E>
    void choice(const char* key, const Choice<E>& choice) {
        Json out = Json::object();
        if (choice.value) {
            if constexpr (std::is_enum_v<E>) {
                out["value"] = word_of(*choice.value);
            } else {
                out["value"] = *choice.value;
            }
        }
        finish(key, std::move(out), choice.known, choice.as_entered);
    }

    template <class T, class F>
    void needed_list(const char* key, const std::vector<T>& items, F&& visit) {
        Json list = Json::array();
        for (const T& item : items) {
            Writer inner;
            visit(inner, item);
            list.push_back(inner.take());
        }
        object_[key] = std::move(list);
    }
    template <class T, class F>
    void list(const char* key, const std::vector<T>& items, F&& visit) {
        if (!items.empty()) needed_list(key, items, visit);
    }

private:
    static std::string member(const char* start, const IntegerUnit& unit) { return start + std::string(unit.suffix); }
    static std::int64_t whole(double si, const IntegerUnit& unit) { return std::llround(si * unit.per_si); }

    /// A reading of which nothing is known is left out.
    void finish(const char* key, Json out, Known known, const std::string& as_entered) {
        if (!as_entered.empty()) out["as_entered"] = as_entered;
        if (out.empty() && known == Known::not_yet_read) return;
        out["known"] = word_of(known);
        object_[key] = std::move(out);
    }

    Json object_ = Json::object();
};

}  // namespace

Json survey_document(const engine::Survey& survey) {
    Writer writer;
    visit_survey(writer, survey);
    Json out = writer.take();
    out["format"] = survey_format;
    return out;
}

std::string write_survey(const engine::Survey& survey) {
    return survey_document(survey).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sillwalk::app
