#include "app/core/ids.hpp"
#include "app/core/update.hpp"

#include <utility>

namespace sillwalk::app::detail {

using engine::Survey;

namespace {

Screen screen_of(Part part) {
    switch (part) {
        case Part::room:
            return Screen::room;
        case Part::crossing:
            return Screen::crossing;
        case Part::washing:
            return Screen::washing_step;
        case Part::cart:
            break;
    }
    return Screen::cart;
}

struct BuildDispatch {
    Context& context;
    AppModel& model;

    /// A copy of the survey, to be changed and committed.
    [[nodiscard]] Survey copy() const { return model.visit->survey; }
    void keep(Survey survey, const char* label) const { commit(context, std::move(survey), label); }
    [[nodiscard]] IdMaker ids() const { return IdMaker(context.moment); }

    // ---- texts
    void operator()(const TypeText& action) const {
        const std::string path = text_path(model.visit->survey, action.ref);
        if (path.empty()) return;
        context.effects.emplace_back(SaveDraft{model.visit->id.text(), path, action.text, context.moment.utc_ms});
    }
    void operator()(const SetText& action) const {
        context.effects.emplace_back(SaveDraft{model.visit->id.text(), "", "", context.moment.utc_ms});
        Survey survey = copy();
        if (write_text(survey, action.ref, action.text)) keep(std::move(survey), "done.text");
    }

    // ---- rooms, crossings, washings, carts
    void operator()(const OpenPick& action) const { model.pick = action.pick; }
    void operator()(const ClosePick&) const { model.pick.reset(); }
    void operator()(const AddRoom& action) const {
        Survey survey = copy();
        add_room(survey, engine::RoomId(ids().next()), action.name);
        keep(std::move(survey), "done.room_added");
    }
    void operator()(const AddCart& action) const {
        Survey survey = copy();
        const auto index = add_cart(survey, engine::CartId(ids().next()), action.name);
        keep(std::move(survey), "done.cart_added");
        show_new(Part::cart, index);
    }
    void operator()(const AddWashing& action) const {
        Survey survey = copy();
        if (action.room >= survey.rooms.size()) return;
        const engine::RoomId room = survey.rooms[action.room].id;
        const auto index = add_washing(survey, engine::WashingId(ids().next()), action.name, room);
        keep(std::move(survey), "done.washing_added");
        show_new(Part::washing, index);
    }
    void operator()(const AddCrossing& action) const {
        Survey survey = copy();
        if (action.from >= survey.rooms.size() || action.to >= survey.rooms.size()) return;
        const engine::RoomId from = survey.rooms[action.from].id;
        const engine::RoomId to = survey.rooms[action.to].id;
        const auto index = add_crossing(survey, engine::CrossingId(ids().next()), "", from, to);
        keep(std::move(survey), "done.crossing_added");
        show_new(Part::crossing, index);
    }
    void operator()(const DuplicatePart& action) const {
        Survey survey = copy();
        if (!duplicate(survey, action.part, action.index, ids().next())) return;
        keep(std::move(survey), "done.duplicated");
        const auto index = static_cast<std::uint16_t>(action.index + 1);
        model.toast =
            Toast{"toast.duplicated", {part_name(model.visit->survey, action.part, index)}, true, context.moment.now};
        if (model.spot == Spot{screen_of(action.part), action.index}) model.spot.index = index;
    }
    void operator()(const DeletePart& action) const {
        Survey survey = copy();
        const std::string name = part_name(survey, action.part, action.index);
        if (!remove(survey, action.part, action.index)) return;
        keep(std::move(survey), "done.deleted");
        model.toast = Toast{"toast.deleted", {name}, true, context.moment.now};
        const auto shows = [&](const Spot& spot) { return spot == Spot{screen_of(action.part), action.index}; };
        std::erase_if(model.back, shows);
        // What stood on the screen is gone: back to where it was opened from.
        if (shows(model.spot)) {
            model.spot = model.back.empty() ? Spot{screen_of(action.part), 0xffff} : model.back.back();
            if (!model.back.empty()) model.back.pop_back();
        }
        if (action.part == Part::cart && model.cart > action.index) --model.cart;
        stay_on_the_map(model);
    }
    void operator()(const MovePart& action) const {
        Survey survey = copy();
        if (!move(survey, action.part, action.index, action.by)) return;
        keep(std::move(survey), "done.moved");
        const auto other = static_cast<std::uint16_t>(action.index + action.by);
        const auto follow = [&](std::uint16_t& index) {
            if (index == action.index) {
                index = other;
            } else if (index == other) {
                index = action.index;
            }
        };
        if (model.spot.screen == screen_of(action.part)) follow(model.spot.index);
        for (Spot& spot : model.back) {
            if (spot.screen == screen_of(action.part)) follow(spot.index);
        }
        if (action.part == Part::cart) follow(model.cart);
    }
    void operator()(const SetCrossingEnd& action) const {
        model.pick.reset();
        Survey survey = copy();
        if (set_crossing_end(survey, action.crossing, action.to, action.room)) keep(std::move(survey), "done.ends");
    }
    void operator()(const TurnCrossing& action) const {
        Survey survey = copy();
        if (turn_round(survey, action.crossing)) keep(std::move(survey), "done.turned");
    }
    void operator()(const SetHeated& action) const {
        Survey survey = copy();
        if (action.crossing >= survey.crossings.size()) return;
        survey.crossings[action.crossing].heated = action.heated;
        keep(std::move(survey), "done.reading");
    }
    void operator()(const ToggleWashedRoom& action) const {
        Survey survey = copy();
        if (toggle_washed_room(survey, action.washing, action.room)) keep(std::move(survey), "done.washed_rooms");
    }

    // ---- route
    void operator()(const AppendStop& action) const {
        Survey survey = copy();
        if (!append_stop(survey, action.cart, action.room)) return;
        keep(std::move(survey), "done.stop_added");
        const auto& route = model.visit->survey.carts[action.cart].route;
        if (route.size() < 2 || route[route.size() - 2].leaves_by) return;
        const auto ways =
            crossings_between(model.visit->survey, route[route.size() - 2].room, route[route.size() - 1].room);
        const auto stop = static_cast<std::uint16_t>(route.size() - 2);
        if (ways.size() > 1) model.pick = Pick{PickKind::stop_crossing, action.cart, stop};
    }
    void operator()(const RemoveStop& action) const {
        Survey survey = copy();
        if (remove_stop(survey, action.cart, action.stop)) keep(std::move(survey), "done.stop_removed");
    }
    void operator()(const SetStopLoaded& action) const {
        Survey survey = copy();
        if (action.cart >= survey.carts.size() || action.stop >= survey.carts[action.cart].route.size()) return;
        survey.carts[action.cart].route[action.stop].loaded = action.loaded;
        keep(std::move(survey), "done.reading");
    }
    void operator()(const SetStopCrossing& action) const {
        model.pick.reset();
        Survey survey = copy();
        std::optional<std::size_t> crossing;
        if (action.crossing) crossing = *action.crossing;
        if (set_leaves_by(survey, action.cart, action.stop, crossing)) keep(std::move(survey), "done.way_chosen");
    }
    void operator()(const CreateStopCrossing& action) const {
        model.pick.reset();
        Survey survey = copy();
        if (action.cart >= survey.carts.size() || action.stop >= survey.carts[action.cart].route.size()) return;
        const auto& route = survey.carts[action.cart].route;
        const engine::RoomId from = route[action.stop].room;
        const engine::RoomId to = route[(action.stop + 1U) % route.size()].room;
        const auto index = add_crossing(survey, engine::CrossingId(ids().next()), "", from, to);
        set_leaves_by(survey, action.cart, action.stop, index);
        keep(std::move(survey), "done.crossing_added");
    }

    // ---- castors
    void operator()(const OpenCastors& action) const {
        if (action.cart >= model.visit->survey.carts.size()) return;
        CastorSheet sheet;
        sheet.cart = action.cart;
        const std::size_t count = model.visit->survey.carts[action.cart].castors.size();
        if (count > 0) sheet.count = count;
        model.castors = sheet;
    }
    void operator()(const CloseCastors&) const { model.castors.reset(); }
    void operator()(const SetCastorCount& action) const {
        if (!model.castors) return;
        model.castors->count = action.count;
        Survey survey = copy();
        engine::Cart& cart = survey.carts[model.castors->cart];
        const auto distances = distances_of(cart);
        if (!distances) return;
        cart.castors = castors_at(action.count, *distances);
        keep(std::move(survey), "done.castors");
    }
    void operator()(const TurnCastorFunction& action) const {
        Survey survey = copy();
        if (action.cart >= survey.carts.size() || action.castor >= survey.carts[action.cart].castors.size()) return;
        engine::CastorFunction& function = survey.carts[action.cart].castors[action.castor].function;
        function = static_cast<engine::CastorFunction>((static_cast<int>(function) + 1) % 3);
        keep(std::move(survey), "done.castors");
    }

    void operator()(const NewVisit&) const {}
    void operator()(const CopyVisit&) const {}

private:
    void show_new(Part part, std::uint16_t index) const {
        model.pick.reset();
        go_to(context, {screen_of(part), index});
    }
};

}  // namespace

void build(Context& context, const BuildAction& action) {
    if (std::holds_alternative<NewVisit>(action)) return new_visit(context);
    if (const auto* copy = std::get_if<CopyVisit>(&action)) {
        context.effects.emplace_back(LoadVisit{copy->id, true});
        return;
    }
    if (context.model.visit) std::visit(BuildDispatch{context, context.model}, action);
}

std::optional<NumberReading> castor_distance(const AppModel& model, const engine::ReadingRef& ref) {
    auto reading = read_number(model.visit->survey, ref);
    if (!reading || reading->value || !model.castors || model.castors->cart != ref.index) return reading;
    // Not kept yet: the other distance is missing.
    const bool wheelbase = ref == wheelbase_ref(ref.index);
    reading->value = wheelbase ? model.castors->wheelbase_nm : model.castors->track_nm;
    if (reading->value) reading->known = engine::Known::measured;
    return reading;
}

bool keep_castor_distance(Context& context, const engine::ReadingRef& ref, std::int64_t nm) {
    AppModel& model = context.model;
    Survey survey = model.visit->survey;
    if (nm <= 0 || ref.index >= survey.carts.size()) return false;
    const bool wheelbase = ref == wheelbase_ref(ref.index);
    engine::Cart& cart = survey.carts[ref.index];
    if (auto distances = distances_of(cart)) {
        (wheelbase ? distances->wheelbase_nm : distances->track_nm) = nm;
        stretch_castors(cart, *distances);
        commit(context, std::move(survey), "done.castors");
        return true;
    }
    if (!model.castors || model.castors->cart != ref.index) {
        model.castors = CastorSheet{};
        model.castors->cart = ref.index;
    }
    CastorSheet& sheet = *model.castors;
    (wheelbase ? sheet.wheelbase_nm : sheet.track_nm) = nm;
    if (!sheet.wheelbase_nm || !sheet.track_nm) return true;
    cart.castors = castors_at(sheet.count, {*sheet.wheelbase_nm, *sheet.track_nm});
    commit(context, std::move(survey), "done.castors");
    return true;
}

}  // namespace sillwalk::app::detail
