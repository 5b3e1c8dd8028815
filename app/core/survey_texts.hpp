#pragma once
/// The texts of a survey that a person types: names, notes, who and where.

#include "engine/model/survey.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace sillwalk::app {

enum class TextField : std::uint8_t {
    site,
    customer,
    complaint,
    surveyor,
    notes,
    room_name,
    room_notes,
    crossing_name,
    crossing_notes,
    washing_name,
    cart_name,
    cart_notes
};
inline constexpr std::size_t text_field_count = 12;
[[nodiscard]] const char* text_field_word(TextField field);  ///< "room_name": in target ids and language keys

struct TextRef {
    TextField field = TextField::site;
    std::uint16_t index = 0;  ///< of the room, crossing, washing or cart
    friend bool operator==(const TextRef&, const TextRef&) = default;
};

/// Empty where the survey has no such room, crossing, washing or cart.
[[nodiscard]] std::optional<std::string> read_text(const engine::Survey& survey, const TextRef& ref);
/// Without the blanks around it. False where there is no such thing, or a name would be empty.
bool write_text(engine::Survey& survey, const TextRef& ref, std::string_view text);
/// Path of its entry: "/rooms/<id>/name".
[[nodiscard]] std::string text_path(const engine::Survey& survey, const TextRef& ref);
/// The text whose text_path() this is. For a field that was being typed in when the power went.
[[nodiscard]] std::optional<TextRef> find_text(const engine::Survey& survey, std::string_view path);

/// Without the blanks around it.
[[nodiscard]] std::string_view without_blanks(std::string_view text);

/// What the list of visits shows: the site, else the customer, else nothing.
[[nodiscard]] std::string visit_title(const engine::Survey& survey);

}  // namespace sillwalk::app
