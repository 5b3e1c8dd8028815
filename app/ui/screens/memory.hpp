#pragma once
/// Texts and lists that screens make from the model, kept until the model changes: most frames only move what is there.

#include "app/ui/metrics.hpp"

#include <cstdint>
#include <memory>
#include <type_traits>
#include <unordered_map>

namespace sillwalk::ui {

/// What is remembered. Each has one type, and `which` tells several of a kind apart.
enum class Remembered : std::uint8_t {
    reading_line,
    sentence,
    compared,
    urgent,
    answer_bar,
    title,
    would_hold,
    conditions,
    read_again,
    photo_places,
    photo_groups,
    photo_words,
    what_if_ranges,
    damage,
    open_readings,
    room_row,
    crossing_row,
    hand_over,
    navigation,
    damage_chips,
};

class Memory {
public:
    /// At the start of a frame. The model is the same as in the frame before where the stamp is; 0 is never the same.
    /// What was fitted to the screen goes with it.
    /// False where nothing changed.
    bool begin(std::uint64_t stamp, const Metrics& metrics) {
        const bool same = screen_ == metrics.screen && millimetre_ == metrics.mm(1);
        const bool other = stamp == 0 || stamp != stamp_ || !same;
        if (other) things_.clear();
        stamp_ = stamp;
        screen_ = metrics.screen;
        millimetre_ = metrics.mm(1);
        return other;
    }
    /// The thing, made now if it is not there. Stays where it is until the next frame at least.
    template <class Make>
    const auto& recall(Remembered what, std::uint64_t which, const Make& make) {
        using Thing = std::decay_t<decltype(make())>;
        std::shared_ptr<const void>& thing = things_[which << 8U | static_cast<std::uint64_t>(what)];
        if (!thing) thing = std::make_shared<const Thing>(make());
        return *static_cast<const Thing*>(thing.get());
    }

private:
    std::uint64_t stamp_ = 0;
    Rect screen_;
    float millimetre_ = 0;
    std::unordered_map<std::uint64_t, std::shared_ptr<const void>> things_;  ///< looked up only, never walked through
};

}  // namespace sillwalk::ui
