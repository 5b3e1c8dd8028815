#pragma once
/// The words that stand in survey files for the choices of engine/model. They never change meaning.

#include "engine/model/survey.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace sillwalk::app {

/// All words of one kind of choice, in the order of its enumerators, which count up from 0.
template <class E>
struct WordsOf;

template <>
struct WordsOf<engine::Known> {
    static constexpr std::string_view list[] = {"measured", "by_eye",         "told",        "copied",
                                                "assumed",  "not_accessible", "not_yet_read"};
};
template <>
struct WordsOf<engine::AirMovement> {
    static constexpr std::string_view list[] = {"still", "natural", "fans", "blast"};
};
template <>
struct WordsOf<engine::Wetness> {
    static constexpr std::string_view list[] = {"dry", "damp", "wet", "greasy", "frost", "ice", "melting_ice"};
};
template <>
struct WordsOf<engine::HygieneZone> {
    static constexpr std::string_view list[] = {"none", "non_food", "splash", "food"};
};
template <>
struct WordsOf<engine::CrossingKind> {
    static constexpr std::string_view list[] = {"doorway", "sill", "dock_plate", "ramp", "drain", "joint", "rail"};
};
template <>
struct WordsOf<engine::CastorFunction> {
    static constexpr std::string_view list[] = {"swivel", "rigid", "total_lock"};
};
template <>
struct WordsOf<engine::MovedBy> {
    static constexpr std::string_view list[] = {"hand", "tug"};
};
template <>
struct WordsOf<engine::FloorSharing> {
    static constexpr std::string_view list[] = {"all", "all_but_one", "diagonal"};
};
template <>
struct WordsOf<engine::StaticAsk> {
    static constexpr std::string_view list[] = {"none", "antistatic", "conductive"};
};
template <>
struct WordsOf<engine::DamageKind> {
    static constexpr std::string_view list[] = {"flat_spot", "tread_off_core", "shattered_rim",  "chunks",
                                                "rust",      "seized_bearing", "wrapped_thread", "floor_marks"};
};

template <class E>
[[nodiscard]] constexpr std::string_view word_of(E value) {
    return WordsOf<E>::list[static_cast<std::size_t>(value)];
}

template <class E>
[[nodiscard]] constexpr std::optional<E> value_of_word(std::string_view word) {
    std::size_t index = 0;
    for (const std::string_view each : WordsOf<E>::list) {
        if (each == word) return static_cast<E>(index);
        ++index;
    }
    return std::nullopt;
}

/// "dry, damp, wet": for messages.
template <class E>
[[nodiscard]] std::string all_words() {
    std::string out;
    for (const std::string_view each : WordsOf<E>::list) {
        out += out.empty() ? "" : ", ";
        out += each;
    }
    return out;
}

}  // namespace sillwalk::app
