// Sheets from which one thing is picked while a visit is built, and the castors of a cart.

#include "app/text/explain.hpp"
#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/parts.hpp"
#include "app/ui/screens/pictures.hpp"

#include <array>

namespace sillwalk::ui {

using app::Pick;
using app::PickKind;

namespace {

constexpr std::array<const char*, 12> room_names = {
    "name.freezer",   "name.blast_freezer", "name.chill_room", "name.dock",       "name.packing",   "name.raw_side",
    "name.cook_room", "name.wash_room",     "name.corridor",   "name.laboratory", "name.cleanroom", "name.dry_store"};
constexpr std::array<const char*, 8> cart_names = {"name.tray_rack",  "name.platform_cart", "name.tub_cart",
                                                   "name.tote_dolly", "name.roll_cage",     "name.bin_cart",
                                                   "name.drum_dolly", "name.lab_cart"};

const char* title_key(PickKind kind) {
    switch (kind) {
        case PickKind::new_room:
            return "places.add_room";
        case PickKind::new_cart:
            return "loads.add";
        case PickKind::new_washing:
            return "pick.washed_room";
        case PickKind::crossing_from:
        case PickKind::end_from:
            return "pick.from_room";
        case PickKind::crossing_to:
        case PickKind::end_to:
            return "pick.to_room";
        case PickKind::stop_crossing:
            break;
    }
    return "pick.way";
}

/// Common names to tap, and a field for any other.
template <std::size_t N, class Add>
void names(ScreenContext& context, const std::array<const char*, N>& keys, Add&& add) {
    Ui& ui = context.ui;
    std::vector<ChipItem> chips;
    for (const char* key : keys) chips.push_back({std::string(key).substr(5), context.say(key)});
    if (const auto hit = ui.chips("pick", chips)) add(chips[*hit].label);
    ui.space(ui.metrics().gap);
    TextFieldOptions options;
    options.label = context.say("pick.other_name");
    options.hint = context.say("text.hint");
    const TextFieldResult did = ui.text_field("pick.name", context.scratch.new_name, options);
    if (!did.committed) return;
    if (!context.scratch.new_name.empty()) add(context.scratch.new_name);
    context.scratch.new_name.clear();
}

void room_list(ScreenContext& context, const Pick& pick) {
    const auto& rooms = context.survey().rooms;
    for (std::uint16_t i = 0; i < rooms.size(); ++i) {
        RowOptions options;
        options.selected = pick.kind == PickKind::crossing_to && pick.index == i;
        if (!context.ui.row("pick.room." + std::to_string(i + 1), rooms[i].name, options)) continue;
        switch (pick.kind) {
            case PickKind::new_washing:
                do_build(context, app::AddWashing{context.say("washing.of", {rooms[i].name}), i});
                break;
            case PickKind::crossing_from:
                do_build(context, app::OpenPick{{PickKind::crossing_to, i, 0}});
                break;
            case PickKind::crossing_to:
                do_build(context, app::AddCrossing{pick.index, i});
                break;
            default:
                do_build(context, app::SetCrossingEnd{pick.index, pick.kind == PickKind::end_to, i});
        }
    }
}

void way_list(ScreenContext& context, const Pick& pick) {
    Ui& ui = context.ui;
    const engine::Survey& survey = context.survey();
    if (pick.index >= survey.carts.size() || pick.stop >= survey.carts[pick.index].route.size()) return;
    const auto& route = survey.carts[pick.index].route;
    const bool last = pick.stop + 1U == route.size();
    const engine::RoomId& next = route[last ? 0 : pick.stop + 1U].room;
    for (const std::uint16_t way : app::crossings_between(survey, route[pick.stop].room, next)) {
        RowOptions options;
        options.selected = route[pick.stop].leaves_by == survey.crossings[way].id;
        options.value = value_text(context, {engine::Field::crossing_rise, way, 0});
        options.value_role = TextRole::row;
        if (ui.row("pick.way." + std::to_string(way + 1), survey.crossings[way].name, options)) {
            do_build(context, app::SetStopCrossing{pick.index, pick.stop, way});
        }
    }
    if (last && ui.row("pick.no_way_back", context.say("plan.ends_here"), {.selected = !route.back().leaves_by})) {
        do_build(context, app::SetStopCrossing{pick.index, pick.stop, {}});
    }
    if (ui.button("pick.new_way", context.say("pick.new_way"), {.icon = Icon::plus})) {
        do_build(context, app::CreateStopCrossing{pick.index, pick.stop});
    }
}

void pick_body(ScreenContext& context, const Pick& pick) {
    Ui& ui = context.ui;
    switch (pick.kind) {
        case PickKind::new_room: {
            std::string so_far;
            for (const engine::Room& room : context.survey().rooms) so_far += (so_far.empty() ? "" : ", ") + room.name;
            ui.caption(so_far.empty() ? context.say("pick.in_order") : context.say("pick.so_far", {so_far}),
                       "pick.so_far");
            names(context, room_names, [&](const std::string& name) { do_build(context, app::AddRoom{name}); });
            return;
        }
        case PickKind::new_cart:
            names(context, cart_names, [&](const std::string& name) { do_build(context, app::AddCart{name}); });
            return;
        case PickKind::stop_crossing:
            way_list(context, pick);
            return;
        default:
            room_list(context, pick);
    }
}

/// "front left" of one castor.
std::string castor_name(const ScreenContext& context, const engine::Cart& cart, std::size_t index) {
    const engine::CastorPosition& castor = cart.castors[index];
    double rear = castor.forward.si();
    double front = rear;
    for (const engine::CastorPosition& other : cart.castors) {
        rear = std::min(rear, other.forward.si());
        front = std::max(front, other.forward.si());
    }
    const double at = castor.forward.si();
    const char* along = at == front ? "castors.front" : at == rear ? "castors.rear" : "castors.middle";
    const double across = castor.across.si();
    const char* side = across > 0 ? "castors.left" : across < 0 ? "castors.right" : "castors.centre";
    return context.say("castors.place", {context.say(along), context.say(side)});
}

void castor_functions(ScreenContext& context, const engine::Cart& cart, std::uint16_t index) {
    const auto loads = castor_loads(plan_of(context, cart));  // the picture's numbers as a table
    for (std::size_t i = 0; i < cart.castors.size(); ++i) {
        RowOptions options;
        if (i < loads.size()) options.detail = app::show({loads[i], engine::Kind::mass}, context.units());
        options.value = context.say(app::function_key(cart.castors[i].function));
        options.value_role = TextRole::row;
        if (context.ui.row("castors.function." + std::to_string(i + 1), castor_name(context, cart, i), options)) {
            do_build(context, app::TurnCastorFunction{index, i});
        }
    }
}

}  // namespace

void draw_pick_sheet(ScreenContext& context) {
    if (!context.model.pick) return;
    const Pick pick = *context.model.pick;
    bool closed = false;
    {
        const auto sheet = context.ui.sheet("pick", context.say(title_key(pick.kind)), closed);
        const auto list = context.ui.scroll("pick.list", context.ui.remaining());
        pick_body(context, pick);
    }
    if (closed) do_build(context, app::ClosePick{});
}

void draw_castor_sheet(ScreenContext& context) {
    if (!context.model.castors) return;
    const app::CastorSheet& castors = *context.model.castors;
    if (castors.cart >= context.survey().carts.size()) return;
    Ui& ui = context.ui;
    const engine::Cart& cart = context.survey().carts[castors.cart];
    bool closed = false;
    {
        const auto sheet = ui.sheet("castors", context.say("castors.title"), closed, {.subtitle = cart.name});
        const auto list = ui.scroll("castors.list", ui.remaining());
        const std::array<ChoiceItem, 3> counts = {{{"3", "3", {}, true}, {"4", "4", {}, true}, {"6", "6", {}, true}}};
        const int selected = castors.count == 3 ? 0 : castors.count == 4 ? 1 : castors.count == 6 ? 2 : -1;
        ui.caption(context.say("castors.how_many"));
        if (const auto hit = ui.choice("castors.count", counts, selected)) {
            constexpr std::size_t values[] = {3, 4, 6};
            do_build(context, app::SetCastorCount{values[*hit]});
        }
        for (const engine::ReadingRef& ref : {app::wheelbase_ref(castors.cart), app::track_ref(castors.cart)}) {
            const bool wheelbase = ref == app::wheelbase_ref(castors.cart);
            const auto pending = wheelbase ? castors.wheelbase_nm : castors.track_nm;
            ReadingLine line = reading_line(context, ref);
            if (line.value.empty() && pending) line = pending_line(context, ref, *pending);
            RowOptions options;
            options.value = line.value;
            options.unit = line.unit;
            options.dashed = line.value.empty();
            if (line.value.empty()) options.detail = context.say("known.not_yet_read");
            if (ui.row(wheelbase ? "castors.wheelbase" : "castors.track", line.name, options)) {
                context.act(app::OpenSheet{ref});
            }
        }
        if (cart.castors.empty()) {
            ui.caption(context.say("castors.both"));
        } else {
            ui.caption(context.say("castors.functions"));
            castor_functions(context, cart, castors.cart);
        }
    }
    if (closed) do_build(context, app::CloseCastors{});
}

}  // namespace sillwalk::ui
