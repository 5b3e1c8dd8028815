#pragma once
/// A list from which one thing is picked while a visit is built: a name, a room, a crossing.

#include <cstdint>

namespace sillwalk::app {

enum class PickKind : std::uint8_t {
    new_room,       ///< names of rooms; stays open for the next one
    new_cart,       ///< names of carts
    new_washing,    ///< the room that is washed
    crossing_from,  ///< first room of a new crossing
    crossing_to,    ///< second room; `index` is the first
    end_from,       ///< other rooms for a crossing; `index` is the crossing
    end_to,
    stop_crossing  ///< way on from a stop; `index` is the cart
};
struct Pick {
    PickKind kind = PickKind::new_room;
    std::uint16_t index = 0;
    std::uint16_t stop = 0;
    friend bool operator==(const Pick&, const Pick&) = default;
};

}  // namespace sillwalk::app
