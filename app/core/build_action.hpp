#pragma once
/// What builds a visit by hand. Every one that changes the survey is one undoable edit.

#include "app/core/pick.hpp"
#include "app/core/structure.hpp"
#include "app/core/survey_texts.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>

namespace sillwalk::app {

// ---- visits
struct NewVisit {};  ///< stored at once, and open
struct CopyVisit {
    std::string id;
};  ///< a follow-up: all readings under a new survey id

// ---- texts
struct TypeText {
    TextRef ref;
    std::string text;
};  ///< while it is typed: outlives a dead battery
struct SetText {
    TextRef ref;
    std::string text;
};

// ---- rooms, crossings, washings, carts
struct OpenPick {
    Pick pick;
};
struct ClosePick {};
struct AddRoom {
    std::string name;
};
struct AddCart {
    std::string name;
};  ///< and goes to it
struct AddWashing {
    std::string name;
    std::uint16_t room = 0;
};  ///< and goes to it
struct AddCrossing {
    std::uint16_t from = 0, to = 0;
};  ///< and goes to it
struct DuplicatePart {
    Part part = Part::room;
    std::uint16_t index = 0;
};
struct DeletePart {
    Part part = Part::room;
    std::uint16_t index = 0;
};
struct MovePart {
    Part part = Part::room;
    std::uint16_t index = 0;
    int by = 1;
};
struct SetCrossingEnd {
    std::uint16_t crossing = 0;
    bool to = false;
    std::uint16_t room = 0;
};
struct TurnCrossing {
    std::uint16_t crossing = 0;
};
struct SetHeated {
    std::uint16_t crossing = 0;
    bool heated = false;
};
struct ToggleWashedRoom {
    std::uint16_t washing = 0, room = 0;
};

// ---- the route of a cart
struct AppendStop {
    std::uint16_t cart = 0, room = 0;
};  ///< asks which way where several lead there
struct RemoveStop {
    std::uint16_t cart = 0, stop = 0;
};
struct SetStopLoaded {
    std::uint16_t cart = 0, stop = 0;
    bool loaded = true;
};
struct SetStopCrossing {
    std::uint16_t cart = 0, stop = 0;
    std::optional<std::uint16_t> crossing;
};
struct CreateStopCrossing {
    std::uint16_t cart = 0, stop = 0;
};  ///< a new crossing to the next room, taken at once

// ---- castors
struct OpenCastors {
    std::uint16_t cart = 0;
};
struct CloseCastors {};
struct SetCastorCount {
    std::size_t count = 4;
};
struct TurnCastorFunction {
    std::uint16_t cart = 0;
    std::size_t castor = 0;
};  ///< swivel, rigid, total-lock, swivel

using BuildAction =
    std::variant<NewVisit, CopyVisit, TypeText, SetText, OpenPick, ClosePick, AddRoom, AddCart, AddWashing, AddCrossing,
                 DuplicatePart, DeletePart, MovePart, SetCrossingEnd, TurnCrossing, SetHeated, ToggleWashedRoom,
                 AppendStop, RemoveStop, SetStopLoaded, SetStopCrossing, CreateStopCrossing, OpenCastors, CloseCastors,
                 SetCastorCount, TurnCastorFunction>;

}  // namespace sillwalk::app
