#include "app/core/survey_texts.hpp"

#include <algorithm>
#include <type_traits>

namespace sillwalk::app {

using engine::Survey;

namespace {

constexpr const char* words[] = {"site",           "customer",     "complaint",  "surveyor",
                                 "notes",          "room_name",    "room_notes", "crossing_name",
                                 "crossing_notes", "washing_name", "cart_name",  "cart_notes"};

/// The text within the survey, constant or not; null where there is none.
template <class S>
auto text_at(S& survey, const TextRef& ref) -> std::conditional_t<std::is_const_v<S>, const std::string, std::string>* {
    const auto of = [&](auto& list) { return ref.index < list.size() ? &list[ref.index] : nullptr; };
    switch (ref.field) {
        case TextField::site:
            return &survey.site;
        case TextField::customer:
            return &survey.customer;
        case TextField::complaint:
            return &survey.complaint;
        case TextField::surveyor:
            return &survey.surveyor;
        case TextField::notes:
            return &survey.notes;
        case TextField::room_name:
            if (auto* room = of(survey.rooms)) return &room->name;
            break;
        case TextField::room_notes:
            if (auto* room = of(survey.rooms)) return &room->notes;
            break;
        case TextField::crossing_name:
            if (auto* crossing = of(survey.crossings)) return &crossing->name;
            break;
        case TextField::crossing_notes:
            if (auto* crossing = of(survey.crossings)) return &crossing->notes;
            break;
        case TextField::washing_name:
            if (auto* washing = of(survey.washings)) return &washing->name;
            break;
        case TextField::cart_name:
            if (auto* cart = of(survey.carts)) return &cart->name;
            break;
        case TextField::cart_notes:
            if (auto* cart = of(survey.carts)) return &cart->notes;
            break;
    }
    return nullptr;
}

bool is_name(TextField field) {
    return field == TextField::room_name || field == TextField::crossing_name || field == TextField::washing_name ||
           field == TextField::cart_name;
}

}  // namespace

std::string_view without_blanks(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

const char* text_field_word(TextField field) {
    return words[static_cast<std::size_t>(field)];
}

std::optional<std::string> read_text(const Survey& survey, const TextRef& ref) {
    const std::string* text = text_at(survey, ref);
    return text ? std::optional(*text) : std::nullopt;
}

bool write_text(Survey& survey, const TextRef& ref, std::string_view text) {
    std::string* place = text_at(survey, ref);
    const std::string_view kept = without_blanks(text);
    if (!place || (kept.empty() && is_name(ref.field))) return false;
    *place = std::string(kept);
    return true;
}

std::string text_path(const Survey& survey, const TextRef& ref) {
    if (!text_at(survey, ref)) return {};
    const std::string member = is_name(ref.field) ? "/name" : "/notes";
    switch (ref.field) {
        case TextField::room_name:
        case TextField::room_notes:
            return "/rooms/" + survey.rooms[ref.index].id.text() + member;
        case TextField::crossing_name:
        case TextField::crossing_notes:
            return "/crossings/" + survey.crossings[ref.index].id.text() + member;
        case TextField::washing_name:
            return "/washings/" + survey.washings[ref.index].id.text() + member;
        case TextField::cart_name:
        case TextField::cart_notes:
            return "/carts/" + survey.carts[ref.index].id.text() + member;
        default:
            return std::string("/") + text_field_word(ref.field);
    }
}

std::optional<TextRef> find_text(const Survey& survey, std::string_view path) {
    for (std::size_t field = 0; field < text_field_count; ++field) {
        TextRef ref{static_cast<TextField>(field), 0};
        const bool single = ref.field <= TextField::notes;
        for (; text_at(survey, ref); ++ref.index) {
            if (text_path(survey, ref) == path) return ref;
            if (single) break;
        }
    }
    return std::nullopt;
}

std::string visit_title(const Survey& survey) {
    return survey.site.empty() ? survey.customer : survey.site;
}

}  // namespace sillwalk::app
