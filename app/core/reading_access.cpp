#include "app/core/reading_access.hpp"

#include "app/bundle/survey_words.hpp"
#include "app/core/castors.hpp"
#include "app/text/explain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <type_traits>

namespace sillwalk::app {

using engine::Choice;
using engine::Field;
using engine::Known;
using engine::Reading;
using engine::ReadingRef;
using engine::Survey;

namespace {

template <class S, class F>
void with_room(S& room, Field field, F&& f) {
    switch (field) {
        case Field::room_air:
            return f(room.air);
        case Field::room_humidity:
            return f(room.humidity);
        case Field::room_air_movement:
            return f(room.air_movement);
        case Field::room_wetness:
            return f(room.wetness);
        case Field::room_floor:
            return f(room.floor);
        case Field::room_hygiene:
            return f(room.hygiene);
        case Field::room_cleanroom:
            return f(room.cleanroom_class);
        default:
            return;
    }
}

template <class S, class F>
void with_crossing(S& crossing, Field field, F&& f) {
    switch (field) {
        case Field::crossing_kind:
            return f(crossing.kind);
        case Field::crossing_rise:
            return f(crossing.rise);
        case Field::crossing_lip_slope:
            return f(crossing.lip_slope);
        case Field::crossing_lip_height:
            return f(crossing.lip_height);
        case Field::crossing_gap:
            return f(crossing.gap);
        case Field::crossing_slot:
            return f(crossing.slot);
        case Field::crossing_slope:
            return f(crossing.slope);
        case Field::crossing_slope_length:
            return f(crossing.slope_length);
        case Field::crossing_wetness:
            return f(crossing.wetness);
        default:
            return;
    }
}

template <class S, class F>
void with_washing(S& washing, Field field, F&& f) {
    switch (field) {
        case Field::washing_agent:
            return f(washing.agent);
        case Field::washing_strength:
            return f(washing.strength);
        case Field::washing_temperature:
            return f(washing.temperature);
        case Field::washing_contact:
            return f(washing.contact);
        case Field::washing_frequency:
            return f(washing.frequency);
        case Field::washing_rinsed:
            return f(washing.rinsed);
        default:
            return;
    }
}

template <class S, class F>
void with_cart_choice(S& cart, Field field, F&& f) {
    switch (field) {
        case Field::cart_sharing:
            return f(cart.sharing);
        case Field::cart_moved_by:
            return f(cart.moved_by);
        case Field::cart_plate_pattern:
            return f(cart.plate_pattern);
        case Field::cart_static_ask:
            return f(cart.static_ask);
        case Field::cart_non_marking:
            return f(cart.non_marking);
        default:
            return;
    }
}

template <class S, class F>
void with_cart(S& cart, const ReadingRef& ref, F&& f) {
    switch (ref.field) {
        case Field::cart_tare:
            return f(cart.tare);
        case Field::cart_payload:
            return f(cart.payload);
        case Field::cart_people:
            return f(cart.people);
        case Field::cart_cg_forward_loaded:
            return f(cart.cg_forward_loaded);
        case Field::cart_cg_forward_empty:
            return f(cart.cg_forward_empty);
        case Field::cart_cg_height_loaded:
            return f(cart.cg_height_loaded);
        case Field::cart_cg_height_empty:
            return f(cart.cg_height_empty);
        case Field::cart_handle_height:
            return f(cart.handle_height);
        case Field::cart_speed:
            return f(cart.speed);
        case Field::cart_push_distance:
            return f(cart.push_distance);
        case Field::cart_push_rate:
            return f(cart.push_rate);
        case Field::cart_parked_loaded:
            return f(cart.parked_loaded);
        case Field::cart_trips_per_day:
            return f(cart.trips_per_day);
        case Field::cart_load_factor:
            return f(cart.load_factor);
        case Field::cart_fork_width:
            return f(cart.fork_width);
        case Field::cart_axle_diameter:
            return f(cart.axle_diameter);
        case Field::cart_overall_height_limit:
            return f(cart.overall_height_limit);
        case Field::cart_stay:
            if (ref.stop < cart.route.size()) f(cart.route[ref.stop].stay);
            return;
        case Field::cart_damage_size:
            if (ref.stop < cart.damage.size()) f(cart.damage[ref.stop].size);
            return;
        default:
            return with_cart_choice(cart, ref.field, f);
    }
}

/// Calls f with the Reading or Choice that the reference names, if it exists.
template <class S, class F>
void with_reading(S& survey, const ReadingRef& ref, F&& f) {
    switch (owner_of(ref.field)) {
        case Owner::room:
            if (ref.index < survey.rooms.size()) with_room(survey.rooms[ref.index], ref.field, f);
            return;
        case Owner::crossing:
            if (ref.index < survey.crossings.size()) with_crossing(survey.crossings[ref.index], ref.field, f);
            return;
        case Owner::washing:
            if (ref.index < survey.washings.size()) with_washing(survey.washings[ref.index], ref.field, f);
            return;
        case Owner::cart:
            if (ref.index < survey.carts.size()) with_cart(survey.carts[ref.index], ref, f);
            return;
        case Owner::none:
            return;
    }
}

template <class T>
double si_of(const T& value) {
    if constexpr (std::is_same_v<T, double>) {
        return value;
    } else if constexpr (std::is_same_v<T, engine::Temperature>) {
        return value.kelvin();
    } else if constexpr (std::is_same_v<T, engine::Slope>) {
        return value.tangent();
    } else {
        return value.si();
    }
}
template <class T>
T from_si(double si) {
    if constexpr (std::is_same_v<T, double>) {
        return si;
    } else if constexpr (std::is_same_v<T, engine::Temperature>) {
        return engine::Temperature::from_kelvin(si);
    } else if constexpr (std::is_same_v<T, engine::Slope>) {
        return engine::Slope::from_tangent(si);
    } else {
        return T::from_si(si);
    }
}

template <class E>
std::string text_of(const E& value) {
    if constexpr (std::is_same_v<E, std::string>) {
        return value;
    } else if constexpr (std::is_same_v<E, bool>) {
        return value ? "yes" : "no";
    } else if constexpr (std::is_same_v<E, int>) {
        return std::to_string(value);
    } else {
        return std::string(word_of(value));
    }
}
template <class E>
std::optional<E> choice_of(const std::string& word) {
    if constexpr (std::is_same_v<E, std::string>) {
        return word;
    } else if constexpr (std::is_same_v<E, bool>) {
        if (word == "yes") return true;
        if (word == "no") return false;
        return std::nullopt;
    } else if constexpr (std::is_same_v<E, int>) {
        if (word.size() != 1 || word[0] < '0' || word[0] > '9') return std::nullopt;
        return word[0] - '0';
    } else {
        return value_of_word<E>(word);
    }
}

template <class E>
std::vector<std::string> list_of() {
    std::vector<std::string> words;
    for (const std::string_view word : WordsOf<E>::list) words.emplace_back(word);
    return words;
}

/// One function object for Reading and Choice alike; `number` and `word` take what they can.
template <class Number, class Word>
struct Either {
    Number number;
    Word word;
    template <class T>
    void operator()(Reading<T>& r) const {
        number(r);
    }
    template <class T>
    void operator()(const Reading<T>& r) const {
        number(r);
    }
    template <class T>
    void operator()(Choice<T>& c) const {
        word(c);
    }
    template <class T>
    void operator()(const Choice<T>& c) const {
        word(c);
    }
};
template <class Number, class Word>
Either(Number, Word) -> Either<Number, Word>;

constexpr auto nothing = [](auto&) {};

std::optional<NumberReading> read_castor_distance(const Survey& survey, const ReadingRef& ref) {
    if (ref.index >= survey.carts.size()) return std::nullopt;
    NumberReading reading;
    if (const auto distances = distances_of(survey.carts[ref.index])) {
        reading.value = ref == wheelbase_ref(ref.index) ? distances->wheelbase_nm : distances->track_nm;
        reading.known = Known::measured;
    }
    return reading;
}

}  // namespace

Owner owner_of(Field field) {
    if (field >= Field::room_air && field <= Field::room_cleanroom) return Owner::room;
    if (field >= Field::crossing_kind && field <= Field::crossing_wetness) return Owner::crossing;
    if (field >= Field::washing_agent && field <= Field::washing_rinsed) return Owner::washing;
    return field == Field::none ? Owner::none : Owner::cart;
}

bool exists(const Survey& survey, const ReadingRef& ref) {
    bool found = false;
    const auto note = [&](const auto&) { found = true; };
    with_reading(survey, ref, Either{note, note});
    return found;
}

std::optional<NumberReading> read_number(const Survey& survey, const ReadingRef& ref) {
    const auto kind = quantity_of(ref.field);
    std::optional<NumberReading> result;
    if (is_castor_distance(ref)) return read_castor_distance(survey, ref);
    if (!kind) return result;
    const auto take = [&](const auto& reading) {
        NumberReading number{std::nullopt, 0, reading.known, reading.as_entered, reading.method};
        if (reading.value) number.value = to_canonical(si_of(*reading.value), *kind);
        number.tolerance = to_canonical(si_of(reading.tolerance), *kind);
        result = std::move(number);
    };
    with_reading(survey, ref, Either{take, nothing});
    return result;
}

std::optional<WordReading> read_word(const Survey& survey, const ReadingRef& ref) {
    std::optional<WordReading> result;
    const auto take = [&](const auto& choice) {
        result = WordReading{std::nullopt, choice.known};
        if (choice.value) result->word = text_of(*choice.value);
    };
    with_reading(survey, ref, Either{nothing, take});
    return result;
}

bool write_number(Survey& survey, const ReadingRef& ref, const NumberReading& number) {
    const auto kind = quantity_of(ref.field);
    if (!kind) return false;
    bool written = false;
    const auto put = [&]<class T>(Reading<T>& reading) {
        using Tolerance = decltype(reading.tolerance);
        reading.value = std::nullopt;
        if (number.value) reading.value = from_si<T>(to_si(*number.value, *kind));
        reading.tolerance = from_si<Tolerance>(to_si(number.tolerance, *kind));
        reading.known = number.known;
        reading.as_entered = number.as_entered;
        reading.method = number.method;
        written = true;
    };
    with_reading(survey, ref, Either{put, nothing});
    return written;
}

bool write_word(Survey& survey, const ReadingRef& ref, const WordReading& word) {
    bool written = false;
    const auto put = [&]<class E>(Choice<E>& choice) {
        std::optional<E> value;
        if (word.word) {
            value = choice_of<E>(*word.word);
            if (!value) return;
        }
        choice = Choice<E>{std::move(value), word.known, word.word.value_or("")};
        written = true;
    };
    with_reading(survey, ref, Either{nothing, put});
    return written;
}

std::vector<std::string> words_of(Field field) {
    switch (field) {
        case Field::room_air_movement:
            return list_of<engine::AirMovement>();
        case Field::room_wetness:
        case Field::crossing_wetness:
            return list_of<engine::Wetness>();
        case Field::room_hygiene:
            return list_of<engine::HygieneZone>();
        case Field::room_cleanroom:
            return {"0", "5", "6", "7", "8", "9"};
        case Field::crossing_kind:
            return list_of<engine::CrossingKind>();
        case Field::washing_rinsed:
        case Field::cart_non_marking:
            return {"yes", "no"};
        case Field::cart_sharing:
            return list_of<engine::FloorSharing>();
        case Field::cart_moved_by:
            return list_of<engine::MovedBy>();
        case Field::cart_static_ask:
            return list_of<engine::StaticAsk>();
        default:
            return {};
    }
}

std::string owner_name(const Survey& survey, const ReadingRef& ref) {
    switch (owner_of(ref.field)) {
        case Owner::room:
            return ref.index < survey.rooms.size() ? survey.rooms[ref.index].name : "";
        case Owner::crossing:
            return ref.index < survey.crossings.size() ? survey.crossings[ref.index].name : "";
        case Owner::washing:
            return ref.index < survey.washings.size() ? survey.washings[ref.index].name : "";
        case Owner::cart:
            return ref.index < survey.carts.size() ? survey.carts[ref.index].name : "";
        case Owner::none:
            break;
    }
    return "";
}

std::string entry_path(const Survey& survey, const ReadingRef& ref) {
    const std::string path = engine::reading_path(ref);  // "/crossings/4/rise", "/carts/0/route/2/stay"
    const auto index_at = path.find('/', 1);
    const auto index_end = path.find('/', index_at + 1);
    if (index_at == std::string::npos || index_end == std::string::npos) return path;
    std::string id;
    switch (owner_of(ref.field)) {
        case Owner::room:
            id = survey.rooms[ref.index].id.text();
            break;
        case Owner::crossing:
            id = survey.crossings[ref.index].id.text();
            break;
        case Owner::washing:
            id = survey.washings[ref.index].id.text();
            break;
        case Owner::cart:
            id = survey.carts[ref.index].id.text();
            break;
        case Owner::none:
            return path;
    }
    const auto member_end = path.find('/', index_end + 1);
    return path.substr(0, index_at + 1) + id + path.substr(index_end, member_end - index_end);
}

std::string reading_key(const ReadingRef& ref) {
    if (!is_castor_distance(ref)) return field_key(ref.field);
    return ref == wheelbase_ref(ref.index) ? "reading.cart_wheelbase" : "reading.cart_track";
}

std::string draft_path(const ReadingRef& ref) {
    const std::string path = engine::reading_path(ref);
    return is_castor_distance(ref) ? path + "/" + std::to_string(ref.stop) : path;
}

std::optional<ReadingRef> find_reading(const Survey& survey, const std::string& path) {
    const auto count = static_cast<std::uint16_t>(
        std::max({survey.rooms.size(), survey.crossings.size(), survey.washings.size(), survey.carts.size()}));
    for (int field = 1; field <= static_cast<int>(engine::last_field); ++field) {
        if (!quantity_of(static_cast<Field>(field))) continue;
        for (std::uint16_t index = 0; index < count; ++index) {
            ReadingRef ref{static_cast<Field>(field), index, 0};
            for (; exists(survey, ref); ++ref.stop) {
                if (draft_path(ref) == path) return ref;
                if (ref.field != Field::cart_stay && ref.field != Field::cart_damage_size) break;
            }
        }
    }
    for (std::uint16_t index = 0; index < survey.carts.size(); ++index) {
        for (const ReadingRef& ref : {wheelbase_ref(index), track_ref(index)}) {
            if (draft_path(ref) == path) return ref;
        }
    }
    return std::nullopt;
}

}  // namespace sillwalk::app
