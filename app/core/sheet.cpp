#include "app/core/sheet.hpp"

#include "app/core/castors.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace sillwalk::app {

using engine::Field;
using engine::Known;
using engine::ReadingRef;
using engine::Survey;

namespace {

bool has(const std::vector<std::string>& list, std::string_view one) {
    return std::find(list.begin(), list.end(), one) != list.end();
}

/// The order in which the readings of one place are taken.
constexpr Field crossing_fields[] = {Field::crossing_rise,        Field::crossing_gap,  Field::crossing_lip_slope,
                                     Field::crossing_lip_height,  Field::crossing_slot, Field::crossing_slope,
                                     Field::crossing_slope_length};
constexpr Field room_fields[] = {Field::room_air, Field::room_humidity};
constexpr Field washing_fields[] = {Field::washing_strength, Field::washing_temperature, Field::washing_contact,
                                    Field::washing_frequency};
constexpr Field cart_fields[] = {Field::cart_tare,
                                 Field::cart_payload,
                                 Field::cart_people,
                                 Field::cart_cg_height_loaded,
                                 Field::cart_cg_forward_loaded,
                                 Field::cart_cg_height_empty,
                                 Field::cart_cg_forward_empty,
                                 Field::cart_handle_height,
                                 Field::cart_speed,
                                 Field::cart_push_distance,
                                 Field::cart_push_rate,
                                 Field::cart_trips_per_day,
                                 Field::cart_parked_loaded,
                                 Field::cart_fork_width,
                                 Field::cart_axle_diameter,
                                 Field::cart_overall_height_limit,
                                 Field::cart_load_factor};

std::span<const Field> fields_of(Owner owner) {
    switch (owner) {
        case Owner::room:
            return room_fields;
        case Owner::crossing:
            return crossing_fields;
        case Owner::washing:
            return washing_fields;
        case Owner::cart:
            return cart_fields;
        case Owner::none:
            break;
    }
    return {};
}

std::size_t owners_of_kind(const Survey& survey, Owner owner) {
    switch (owner) {
        case Owner::room:
            return survey.rooms.size();
        case Owner::crossing:
            return survey.crossings.size();
        case Owner::washing:
            return survey.washings.size();
        case Owner::cart:
            return survey.carts.size();
        case Owner::none:
            break;
    }
    return 0;
}

std::vector<std::string_view> split(std::string_view text, char at) {
    std::vector<std::string_view> parts;
    for (;;) {
        const auto end = text.find(at);
        parts.push_back(text.substr(0, end));
        if (end == std::string_view::npos) return parts;
        text.remove_prefix(end + 1);
    }
}

template <class T>
bool number_from(std::string_view text, T& value) {
    const auto done = std::from_chars(text.data(), text.data() + text.size(), value);
    return done.ec == std::errc() && done.ptr == text.data() + text.size();
}

}  // namespace

std::vector<const Method*> methods_for(const EntryTables& tables, QuantityKind kind, const Unit& unit) {
    std::vector<const Method*> list;
    for (const Method& method : tables.methods) {
        if (!has(method.kinds, quantity_name(kind))) continue;
        if (method.units.empty() || has(method.units, unit.name)) list.push_back(&method);
    }
    return list;
}

const Unit& unit_of(const Sheet& sheet) {
    return units_of(sheet.kind)[sheet.unit];
}

const Method* method_of(const Sheet& sheet, const EntryTables& tables) {
    const auto list = methods_for(tables, sheet.kind, unit_of(sheet));
    return list.empty() ? nullptr : list[std::min(sheet.method, list.size() - 1)];
}

std::int64_t tolerance_of(const Method& method, QuantityKind kind, std::int64_t canonical) {
    if (method.tolerance_share > 0) {
        return std::llround(std::fabs(static_cast<double>(canonical)) * method.tolerance_share);
    }
    return to_canonical(method.tolerance_si, kind);
}

std::optional<NumberReading> reading_of(const Sheet& sheet, const EntryTables& tables) {
    const auto typed = canonical_of(sheet.entry, unit_of(sheet));
    if (!typed) return std::nullopt;
    NumberReading reading;
    reading.value = typed;
    reading.as_entered = as_entered(sheet.entry, unit_of(sheet));
    reading.known = Known::measured;
    if (const Method* method = method_of(sheet, tables)) {
        reading.known = method->known;
        reading.method = method->name;
        reading.tolerance = tolerance_of(*method, sheet.kind, *typed);
    }
    if (!sheet.copied_from.empty()) {
        reading.known = Known::copied;
        reading.method = sheet.copied_from;
    }
    if (sheet.first_value) {
        const std::int64_t apart = std::llabs(*typed - *sheet.first_value);
        reading.value = (*typed + *sheet.first_value) / 2;
        reading.tolerance = std::max(reading.tolerance, apart / 2);
        reading.as_entered = sheet.first_entered + "; " + reading.as_entered;
    }
    return reading;
}

Hint hint_of(const Sheet& sheet, const EntryTables& tables, const Survey& survey) {
    const Method* method = method_of(sheet, tables);
    const TypedValue typed{sheet.entry, sheet.unit, sheet.kind, method ? method->resolution_si : 0};
    return judge_entry(typed, plausible_row(tables, survey, sheet.ref));
}

bool disagrees(const Sheet& sheet, const EntryTables& tables) {
    const auto typed = canonical_of(sheet.entry, unit_of(sheet));
    const Method* method = method_of(sheet, tables);
    if (!typed || !sheet.first_value || !method) return false;
    return readings_disagree(*sheet.first_value, *typed, tolerance_of(*method, sheet.kind, *typed));
}

std::vector<ReadingRef> same_as(const Survey& survey, const ReadingRef& ref) {
    std::vector<ReadingRef> found;
    if (ref.field == Field::cart_damage_size) return found;  // no damage is like another
    const Owner owner = owner_of(ref.field);
    const auto count = static_cast<int>(owners_of_kind(survey, owner));
    for (int distance = 1; distance < count && found.size() < 3; ++distance) {
        for (const int index : {ref.index - distance, ref.index + distance}) {
            if (index < 0 || index >= count || found.size() >= 3) continue;
            ReadingRef other = ref;
            other.index = static_cast<std::uint16_t>(index);
            const auto reading = read_number(survey, other);
            if (reading && reading->value && reading->known != Known::copied) found.push_back(other);
        }
    }
    return found;
}

std::optional<ReadingRef> next_reading(const Survey& survey, const ReadingRef& ref) {
    if (ref == wheelbase_ref(ref.index)) return track_ref(ref.index);
    const auto fields = fields_of(owner_of(ref.field));
    const auto here = std::find(fields.begin(), fields.end(), ref.field);
    if (here == fields.end()) return std::nullopt;
    // First the ones further down that nobody has read; else simply the next.
    for (auto at = here + 1; at != fields.end(); ++at) {
        const ReadingRef next{*at, ref.index, 0};
        const auto reading = read_number(survey, next);
        if (reading && reading->known == Known::not_yet_read) return next;
    }
    if (here + 1 == fields.end()) return std::nullopt;
    return ReadingRef{*(here + 1), ref.index, 0};
}

std::string draft_text(const Sheet& sheet) {
    std::string text = std::to_string(sheet.unit) + "|" + (sheet.entry.negative ? "-" : "+") + "|" +
                       sheet.entry.digits + "|" + std::to_string(sheet.entry.sixteenths) + "|" +
                       std::to_string(sheet.method) + "|";
    if (sheet.first_value) text += std::to_string(*sheet.first_value);
    return text + "|" + sheet.first_entered + "|" + sheet.copied_from;
}

bool restore_draft(Sheet& sheet, std::string_view draft) {
    const auto parts = split(draft, '|');
    if (parts.size() != 8) return false;
    Sheet restored = sheet;
    std::int64_t first = 0;
    const bool numbers = number_from(parts[0], restored.unit) && number_from(parts[3], restored.entry.sixteenths) &&
                         number_from(parts[4], restored.method);
    if (!numbers || restored.unit >= units_of(sheet.kind).size()) return false;
    restored.entry.negative = parts[1] == "-";
    restored.entry.digits = std::string(parts[2]);
    restored.first_value.reset();
    if (!parts[5].empty()) {
        if (!number_from(parts[5], first)) return false;
        restored.first_value = first;
    }
    restored.first_entered = std::string(parts[6]);
    restored.copied_from = std::string(parts[7]);
    sheet = std::move(restored);
    return true;
}

}  // namespace sillwalk::app
