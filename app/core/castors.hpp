#pragma once
/// Where the castors of a cart stand, from the two distances that a person measures.

#include "engine/model/finding.hpp"
#include "engine/model/survey.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace sillwalk::app {

/// The castor sheet of one cart, open. Nothing is kept before both distances are known.
struct CastorSheet {
    std::uint16_t cart = 0;
    std::size_t count = 4;  ///< 3, 4 or 6
    std::optional<std::int64_t> wheelbase_nm, track_nm;
    friend bool operator==(const CastorSheet&, const CastorSheet&) = default;
};

/// In the measuring sheet these two stand as cart_castors with a stop of 1 and 2.
[[nodiscard]] engine::ReadingRef wheelbase_ref(std::uint16_t cart);
[[nodiscard]] engine::ReadingRef track_ref(std::uint16_t cart);
[[nodiscard]] bool is_castor_distance(const engine::ReadingRef& ref);

struct CastorDistances {
    std::int64_t wheelbase_nm = 0;  ///< front axle to rear axle
    std::int64_t track_nm = 0;      ///< left to right
};
/// Of the castors that the cart has; empty where it has none.
[[nodiscard]] std::optional<CastorDistances> distances_of(const engine::Cart& cart);

/// 3: two rigid behind, one swivel in front; 4: two rigid behind, two swivel in front; 6: two rigid in the middle, four
/// swivels at the corners. Distances must be greater than 0.
[[nodiscard]] std::vector<engine::CastorPosition> castors_at(std::size_t count, const CastorDistances& distances);
/// The castors of the cart drawn apart to these distances, each keeping its function.
void stretch_castors(engine::Cart& cart, const CastorDistances& distances);

}  // namespace sillwalk::app
