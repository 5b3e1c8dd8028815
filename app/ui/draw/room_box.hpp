#pragma once
/// A room of the route: an open-bottomed box standing on the floor line, a strip on top for its temperature.

#include "app/ui/draw/ground.hpp"

#include <string>

namespace sillwalk::ui {

enum class RoomTemperature : std::uint8_t { not_known, freezing, cool, warm };
/// Below 0 °C freezing, from 25 °C warm.
[[nodiscard]] RoomTemperature room_temperature(double celsius);
[[nodiscard]] Color room_fill(const Theme& theme, RoomTemperature temperature);

struct RoomBox {
    std::string name{};
    std::string temperature{};  ///< "−32"; empty: not read, drawn as a dashed box with "?"
    std::string unit{};         ///< "°C"
    std::string stay{};         ///< "90 min"; may be empty
    std::string note{};         ///< under the floor: "Frost, fans"
    RoomTemperature kind = RoomTemperature::not_known;
    FloorWetness wetness = FloorWetness::dry;
};

/// Height under the floor line that the marks and the note need.
[[nodiscard]] float room_foot(const Canvas& canvas);
/// `box.y1` is the floor line. False when the name or the note did not fit.
bool draw_room_box(Canvas& canvas, const Theme& theme, const Rect& box, const RoomBox& room);

}  // namespace sillwalk::ui
