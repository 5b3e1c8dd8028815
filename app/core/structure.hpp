#pragma once
/// The rooms, crossings, washings and carts of a survey and the routes through them: added, copied, moved, taken away.
/// Whatever refers to a thing that goes, goes or is put right with it, so that a survey never contradicts itself.

#include "engine/model/survey.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

enum class Part : std::uint8_t { room, crossing, washing, cart };

[[nodiscard]] std::size_t part_count(const engine::Survey& survey, Part part);
[[nodiscard]] std::string part_name(const engine::Survey& survey, Part part, std::size_t index);
/// The name, or "Dock 2" where there is a "Dock" already.
[[nodiscard]] std::string unused_name(const engine::Survey& survey, Part part, const std::string& wanted);

// ---- adding: at the end of the list, under a name that is not used yet; returns the index
std::uint16_t add_room(engine::Survey& survey, engine::RoomId id, const std::string& name);
std::uint16_t add_cart(engine::Survey& survey, engine::CartId id, const std::string& name);
/// Where it is the only one between its rooms, routes that go that way take it. `name` empty: "Freezer – Dock".
std::uint16_t add_crossing(engine::Survey& survey, engine::CrossingId id, const std::string& name,
                           const engine::RoomId& from, const engine::RoomId& to);
std::uint16_t add_washing(engine::Survey& survey, engine::WashingId id, const std::string& name,
                          const engine::RoomId& room);

// ---- changing; false where there is no such thing, then nothing changes
/// A copy with all its readings, right behind the first.
bool duplicate(engine::Survey& survey, Part part, std::size_t index, const std::string& id);
/// A room takes its crossings, its stops and washings of it alone with it.
bool remove(engine::Survey& survey, Part part, std::size_t index);
/// `by` -1: one place up; +1: one place down.
bool move(engine::Survey& survey, Part part, std::size_t index, int by);
/// Another room at one end of a crossing; routes that no longer fit it give it up.
bool set_crossing_end(engine::Survey& survey, std::size_t crossing, bool to, std::size_t room);
/// From and to change places, and the slope its sign: the same crossing, described from the other side.
bool turn_round(engine::Survey& survey, std::size_t crossing);
/// The last room of a washing stays: nothing washed would contradict itself.
bool toggle_washed_room(engine::Survey& survey, std::size_t washing, std::size_t room);

// ---- routes
/// Indices of the crossings that join these rooms, in the order of the survey.
[[nodiscard]] std::vector<std::uint16_t> crossings_between(const engine::Survey& survey, const engine::RoomId& a,
                                                           const engine::RoomId& b);
/// The room that follows this stop; after the last one the first. Empty where the route ends there.
[[nodiscard]] std::optional<engine::RoomId> room_after(const engine::Cart& cart, std::size_t stop);
/// A stop at the end, loaded as the one before; the way there is chosen where only one crossing leads there.
bool append_stop(engine::Survey& survey, std::size_t cart, std::size_t room);
bool remove_stop(engine::Survey& survey, std::size_t cart, std::size_t stop);
/// No crossing: not chosen yet; after the last stop: the cart does not go back to the first.
bool set_leaves_by(engine::Survey& survey, std::size_t cart, std::size_t stop, std::optional<std::size_t> crossing);

}  // namespace sillwalk::app
