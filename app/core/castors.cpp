#include "app/core/castors.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::app {

using engine::CastorFunction;
using engine::CastorPosition;
using engine::Length;

namespace {

constexpr double nm_per_m = 1e9;

Length from_nm(double nm) {
    return Length::from_si(std::round(nm) / nm_per_m);
}
double in_nm(Length length) {
    return std::round(length.si() * nm_per_m);
}

struct Bounds {
    double rear = 0, front = 0, right = 0, left = 0;
};
Bounds bounds_of(const std::vector<CastorPosition>& castors) {
    Bounds bounds{in_nm(castors[0].forward), in_nm(castors[0].forward), in_nm(castors[0].across),
                  in_nm(castors[0].across)};
    for (const CastorPosition& castor : castors) {
        bounds.rear = std::min(bounds.rear, in_nm(castor.forward));
        bounds.front = std::max(bounds.front, in_nm(castor.forward));
        bounds.right = std::min(bounds.right, in_nm(castor.across));
        bounds.left = std::max(bounds.left, in_nm(castor.across));
    }
    return bounds;
}

}  // namespace

engine::ReadingRef wheelbase_ref(std::uint16_t cart) {
    return {engine::Field::cart_castors, cart, 1};
}
engine::ReadingRef track_ref(std::uint16_t cart) {
    return {engine::Field::cart_castors, cart, 2};
}
bool is_castor_distance(const engine::ReadingRef& ref) {
    return ref.field == engine::Field::cart_castors && ref.stop > 0;
}

std::optional<CastorDistances> distances_of(const engine::Cart& cart) {
    if (cart.castors.empty()) return std::nullopt;
    const Bounds bounds = bounds_of(cart.castors);
    return CastorDistances{std::llround(bounds.front - bounds.rear), std::llround(bounds.left - bounds.right)};
}

std::vector<CastorPosition> castors_at(std::size_t count, const CastorDistances& distances) {
    const auto length = static_cast<double>(distances.wheelbase_nm);
    const double half = static_cast<double>(distances.track_nm) / 2;
    std::vector<CastorPosition> castors;
    const auto pair = [&](double forward, CastorFunction function) {
        castors.push_back({from_nm(forward), from_nm(half), function});
        castors.push_back({from_nm(forward), from_nm(-half), function});
    };
    if (count == 6) {
        pair(0, CastorFunction::swivel);
        pair(length / 2, CastorFunction::rigid);
        pair(length, CastorFunction::swivel);
        return castors;
    }
    pair(0, CastorFunction::rigid);
    if (count == 3) {
        castors.push_back({from_nm(length), Length{}, CastorFunction::swivel});
    } else {
        pair(length, CastorFunction::swivel);
    }
    return castors;
}

void stretch_castors(engine::Cart& cart, const CastorDistances& distances) {
    if (cart.castors.empty()) return;
    const Bounds bounds = bounds_of(cart.castors);
    const double length = bounds.front - bounds.rear;
    const double width = bounds.left - bounds.right;
    const double middle = (bounds.left + bounds.right) / 2;
    const double along = length > 0 ? static_cast<double>(distances.wheelbase_nm) / length : 1;
    const double aside = width > 0 ? static_cast<double>(distances.track_nm) / width : 1;
    for (CastorPosition& castor : cart.castors) {
        castor.forward = from_nm(bounds.rear + (in_nm(castor.forward) - bounds.rear) * along);
        castor.across = from_nm(middle + (in_nm(castor.across) - middle) * aside);
    }
}

}  // namespace sillwalk::app
