#pragma once
/// Where a visit stands on its way to the office: what the database knows and the screens tell.

#include <cstddef>
#include <cstdint>

namespace sillwalk::app {

enum class DeliveryState : std::uint8_t {
    not_sent,        ///< never sealed, or changed since
    waits,           ///< sealed, in the outbox
    on_its_way,      ///< a part of it may be at the office
    attention,       ///< it, or a photo of it, will not go on by itself
    photos_to_come,  ///< the office has the readings and waits for photos
    at_office,       ///< the office's receipt says that it has everything
    forked,          ///< at the office, beside another version of the visit
    from_file,       ///< taken in from a hand-off file, not changed since; its maker sends it
};

/// "waits": last part of a language key.
[[nodiscard]] constexpr const char* delivery_name(DeliveryState state) {
    constexpr const char* names[] = {"not_sent",       "waits",     "on_its_way", "attention",
                                     "photos_to_come", "at_office", "forked",     "from_file"};
    return names[static_cast<std::size_t>(state)];
}

/// The office does not have all of it.
[[nodiscard]] constexpr bool is_unsent(DeliveryState state) {
    return state != DeliveryState::at_office && state != DeliveryState::forked && state != DeliveryState::from_file;
}

/// The office has all of it, so that it may go from the tablet.
[[nodiscard]] constexpr bool may_be_erased(DeliveryState state) {
    return state == DeliveryState::at_office || state == DeliveryState::forked;
}

}  // namespace sillwalk::app
