#include "engine/checks/crossing_case.hpp"

#include "engine/physics/load_share.hpp"
#include "engine/physics/obstacle.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

enum class Asked { gap, slope, slot };

/// Whether a crossing of this kind must have the reading. An unread kind asks for everything.
bool asks_for(Asked reading, const ChoiceInput<CrossingKind>& kind) {
    if (!kind.given) return true;
    switch (reading) {
        case Asked::gap:
            return kind.value != CrossingKind::ramp;
        case Asked::slope:
            return kind.value == CrossingKind::ramp || kind.value == CrossingKind::dock_plate;
        case Asked::slot:
            return kind.value == CrossingKind::dock_plate || kind.value == CrossingKind::drain ||
                   kind.value == CrossingKind::joint || kind.value == CrossingKind::rail;
    }
    return true;
}

/// High end; a measured zero is none.
std::optional<Length> present_length(Judge& judge, const Input<Length>& input) {
    const auto high = judge.high(input);
    if (high && input.nominal == Length{}) return Length{};
    return high;
}

struct Lip {
    Length as_rise{}, as_slope{};
    Slope bevel{};
};

/// A lip that was not read at all is none; a height without a bevel is a square edge.
std::optional<Lip> lip_at(Judge& judge, const CheckContext& context, const CrossingDemand& crossing) {
    if (!crossing.lip_height.given && !crossing.lip_slope.given) return Lip{};
    const bool bevelled = crossing.lip_slope.given && crossing.lip_slope.nominal.tangent() > 0.0;
    if (!crossing.lip_height.given && !bevelled) return Lip{};
    const auto height = present_length(judge, crossing.lip_height);
    if (!height) return std::nullopt;
    if (!bevelled) return Lip{*height, {}, {}};
    const auto slope = judge.high(crossing.lip_slope);
    judge.cite(context.tables->practice.bevel_counts_as_slope.citation);
    if (*slope > context.tables->practice.bevel_counts_as_slope.value) return Lip{*height, {}, {}};
    return Lip{{}, *height, *slope};
}

}  // namespace

std::optional<Obstacle> obstacle_at(Judge& judge, const CheckContext& context, const CrossingDemand& crossing,
                                    Length diameter) {
    const auto rise = present_length(judge, crossing.rise);
    const auto lip = lip_at(judge, context, crossing);
    std::optional<Length> gap = Length{};
    if (crossing.gap.given || asks_for(Asked::gap, crossing.kind)) gap = present_length(judge, crossing.gap);
    if (!rise || !lip || !gap) return std::nullopt;
    Obstacle obstacle;
    obstacle.rise = *rise + lip->as_rise;
    obstacle.gap = *gap;
    obstacle.bevel_height = lip->as_slope;
    obstacle.bevel = lip->bevel;
    obstacle.swallowed = *gap >= diameter;
    if (!obstacle.has_edge()) return obstacle;
    const auto equivalent =
        obstacle.swallowed ? Result<Length>(no_answer({})) : rise_with_gap(diameter, obstacle.rise, *gap);
    obstacle.no_climb = !equivalent.has_value();
    if (equivalent) obstacle.equivalent_rise = *equivalent;
    return obstacle;
}

std::optional<Length> tested_rise(Judge& judge, const CheckContext& context) {
    const RatingClassRow* row =
        context.wheel->rating_class ? context.tables->rating(*context.wheel->rating_class) : nullptr;
    if (row != nullptr && row->obstacle_share) {
        judge.cite(row->obstacle_share->citation);
        return row->obstacle_share->value * context.wheel->diameter;
    }
    if (row != nullptr && row->obstacle_height) {
        judge.cite(row->obstacle_height->citation);
        return row->obstacle_height->value;
    }
    judge.missing_figure();
    return std::nullopt;
}

std::optional<SlopeEnds> slope_at(Judge& judge, const CheckContext& context, const CrossingDemand& crossing) {
    if (!crossing.slope.given && !asks_for(Asked::slope, crossing.kind)) return SlopeEnds{};
    const auto high = judge.high(crossing.slope);
    if (!high) return std::nullopt;
    if (context.corner == Corner::nominal || crossing.slope.nominal == Slope{}) {
        return SlopeEnds{crossing.slope.nominal, crossing.slope.nominal};
    }
    return SlopeEnds{crossing.slope.low, crossing.slope.high};
}

std::optional<Length> slot_at(Judge& judge, const CrossingDemand& crossing) {
    if (!crossing.slot.given && !asks_for(Asked::slot, crossing.kind)) return Length{};
    return present_length(judge, crossing.slot);
}

std::optional<Mass> mass_on_leg(Judge& judge, const CartDemand& cart, bool loaded) {
    const auto tare = judge.high(cart.tare);
    if (!loaded) return tare;
    const auto payload = judge.high(cart.payload);
    if (!tare || !payload) return std::nullopt;
    return *tare + *payload;
}

std::optional<Length> wheelbase_of(Judge& judge, const CartDemand& cart) {
    const auto [rear, front] =
        std::minmax_element(cart.castors.begin(), cart.castors.end(),
                            [](const CastorPosition& a, const CastorPosition& b) { return a.forward < b.forward; });
    if (rear == cart.castors.end() || !(front->forward > rear->forward)) {
        judge.missing(cart.castors_ref);
        return std::nullopt;
    }
    return front->forward - rear->forward;
}

std::optional<Centre> centre_on_leg(Judge& judge, const CheckContext& context, bool loaded) {
    const CartDemand& cart = *context.cart;
    const Input<Length>& forward = loaded ? cart.cg_forward_loaded : cart.cg_forward_empty;
    const auto forward_high = judge.high(forward);
    const auto height = judge.high(loaded ? cart.cg_height_loaded : cart.cg_height_empty);
    if (!forward_high || !height) return std::nullopt;
    const Length forward_low = context.corner == Corner::worst ? forward.low : forward.nominal;
    return Centre{forward_low, *forward_high, *height};
}

AxleForces axle_forces(Mass mass, Length wheelbase, const Centre& centre, Slope slope) {
    const auto at = [&](Length forward) {
        const Length inside = std::clamp(forward, Length{}, wheelbase);
        const auto loads = axle_loads(mass, wheelbase, inside, centre.height, -slope);
        if (loads) return *loads;
        const Force whole = slope.cosine() * weight_of(mass);
        return slope > Slope{} ? AxleLoads{Force{}, whole} : AxleLoads{whole, Force{}};
    };
    return {at(centre.forward_high).front, at(centre.forward_low).rear};
}

}  // namespace sillwalk::engine
