#include "engine/physics/load_share.hpp"

#include "engine/physics/guard.hpp"

namespace sillwalk::engine {

namespace {

Guard check_castors(int castors, FloorSharing sharing) {
    Guard guard;
    switch (sharing) {
        case FloorSharing::all:
            guard.require(castors >= 1, "castors", "must be a whole number of at least 1");
            break;
        case FloorSharing::all_but_one:
            guard.require(castors >= 2, "castors", "must be at least 2 where one of them carries nothing");
            break;
        case FloorSharing::diagonal:
            guard.require(castors == 4, "castors", "must be 4: the diagonal case is a frame on four castors");
            break;
    }
    return guard;
}

int carrying(int castors, FloorSharing sharing) {
    switch (sharing) {
        case FloorSharing::all:
            return castors;
        case FloorSharing::all_but_one:
            return castors - 1;
        case FloorSharing::diagonal:
            return 2;
    }
    return castors;
}

}  // namespace

Result<Mass> wheel_load(Mass tare, Mass payload, int castors, FloorSharing sharing, double factor) {
    Guard guard = check_castors(castors, sharing);
    guard.at_least_zero(tare.si(), "tare").at_least_zero(payload.si(), "payload").over_zero(factor, "factor");
    guard.require(tare.si() + payload.si() > 0, "payload", "tare and payload together must be over 0");
    if (guard.failed()) {
        return guard.failure();
    }
    return factor * (tare + payload) / static_cast<double>(carrying(castors, sharing));
}

Result<AxleLoads> axle_loads(Mass mass, Length wheelbase, Length cg_from_rear, Length cg_height, Slope slope,
                             Acceleration g) {
    Guard guard;
    guard.over_zero(mass.si(), "mass")
        .over_zero(wheelbase.si(), "wheelbase")
        .at_least_zero(cg_from_rear.si(), "cg-from-rear")
        .require(cg_from_rear <= wheelbase, "cg-from-rear", "must be no more than the wheelbase")
        .at_least_zero(cg_height.si(), "cg-height")
        .finite(slope.tangent(), "slope")
        .over_zero(g.si(), "g");
    if (guard.failed()) {
        return guard.failure();
    }
    const Force weight = mass * g;
    const Force front = weight * ((cg_from_rear * slope.cosine() + cg_height * slope.sine()) / wheelbase);
    const Force rear = weight * slope.cosine() - front;
    if (front < Force{} || rear < Force{}) {
        return no_answer("On this slope one axle lifts: the cart tips over.");
    }
    return AxleLoads{front, rear};
}

}  // namespace sillwalk::engine
