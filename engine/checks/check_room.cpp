/// Cleanroom class, marks on the floor, noise of a hard tread.
/// room_cleanroom: class of the wheel, class of the room. room_marking: none. room_noise: hardness, hardness above
/// which a tread counts as hard. room_ok: none. No noise limit can be asked, so noise never decides against a wheel.
/// Source: ISO 14644-1 class numbers; the wheel's class and its marking are the maker's statements.

#include "engine/checks/checks.hpp"
#include "engine/checks/judge.hpp"

namespace sillwalk::engine {
namespace {

constexpr double suits_use = 0.6, misfits_use = 1.5;

void add_cleanroom(Judge& judge, const CheckContext& context) {
    for (const StopDemand& stop : context.cart->stops) {
        const int* room = judge.choice(stop.cleanroom_class);
        if (room == nullptr || *room <= 0) continue;
        const auto& wheel = context.wheel->cleanroom_class;
        if (!wheel) {
            judge.missing_figure();
            continue;
        }
        const Amount offered{static_cast<double>(*wheel), Kind::number},
            asked{static_cast<double>(*room), Kind::number};
        judge.part({.demand = asked,
                    .capacity = offered,
                    .use = *wheel <= *room ? suits_use : misfits_use,
                    .statement = Statement::room_cleanroom,
                    .place = {PlaceKind::room, stop.room},
                    .formula = "cleanroom-class",
                    .numbers = {offered, asked}});
    }
}

void add_marking(Judge& judge, const CheckContext& context) {
    const auto asked = judge.value(context.cart->non_marking);
    if (!asked || !*asked) return;
    if (!context.wheel->non_marking) {
        judge.missing_figure();
        return;
    }
    judge.part({.use = *context.wheel->non_marking ? suits_use : misfits_use,
                .statement = *context.wheel->non_marking ? Statement::room_ok : Statement::room_marking,
                .formula = "marking"});
}

/// Holds in any case; said so that a quiet room can be asked about.
void add_noise(Judge& judge, const CheckContext& context) {
    const auto& hardness = context.wheel->hardness;
    const Figure<double>& quiet = context.tables->practice.quiet_hardness;
    if (!hardness || quiet.value <= 0.0) return;
    const bool hard = hardness->scale == HardnessScale::shore_d || hardness->value > quiet.value;
    judge.part({.demand = {hardness->value, Kind::number},
                .capacity = {quiet.value, Kind::number},
                .use = hard ? 0.5 : 0.2,
                .statement = hard ? Statement::room_noise : Statement::room_ok,
                .formula = "noise-hardness",
                .numbers = {{hardness->value, Kind::number}, {quiet.value, Kind::number}},
                .citations = {quiet.citation}});
}

}  // namespace

Finding check_room(const CheckContext& context) {
    Judge judge(CheckId::room, context);
    add_cleanroom(judge, context);
    add_marking(judge, context);
    add_noise(judge, context);
    return judge.finish();
}

}  // namespace sillwalk::engine
