#pragma once
/// A small visit and a model that holds it, for the tests of update().

#include "app/bundle/survey_entries.hpp"
#include "app/core/ids.hpp"
#include "app/core/update.hpp"

namespace sillwalk::test {

inline engine::Survey small_survey() {
    using namespace engine;
    Survey survey;
    survey.id = SurveyId("01900000-0000-7000-8000-000000000001");
    survey.site = "Plant";
    survey.rooms = {{RoomId("freezer"), "Holding freezer", {}, {}, {}, {}, {}, {}, {}, ""},
                    {RoomId("dock"), "Dock", {}, {}, {}, {}, {}, {}, {}, ""}};
    Crossing door;
    door.id = CrossingId("door");
    door.name = "Freezer door";
    door.from = RoomId("freezer");
    door.to = RoomId("dock");
    door.rise = measured(19.0 * millimetre, 1.0 * millimetre);
    Crossing plate = door;
    plate.id = CrossingId("plate");
    plate.name = "Dock plate";
    plate.rise = {};
    survey.crossings = {door, plate};
    Cart cart;
    cart.id = CartId("rack");
    cart.name = "Tray rack";
    cart.tare = measured(92.0 * kilogram);
    survey.carts = {cart};
    return survey;
}

struct World {
    app::EngineData data;
    app::AppModel model;
    app::Moment moment{1000, 1.0};
    app::Effects effects;  ///< of the last action

    explicit World(const engine::Survey& survey = small_survey()) {
        std::vector<engine::Error> errors;
        data.entry = app::load_entry_tables(errors);
        model.data = &data;
        act(app::VisitLoaded{survey.id.text(), app::entries_of(survey), {}, "", ""});
    }
    void act(const app::Action& action) {
        moment.utc_ms += 10;
        app::count_up(moment.random, 2);
        effects = app::update(model, action, moment);
    }
    void type(const std::string& keys) {
        for (const char key : keys) act(app::SheetDigit{key});
    }
    template <class T>
    [[nodiscard]] const T* effect() const {
        for (const app::Effect& one : effects) {
            if (const T* found = std::get_if<T>(&one)) return found;
        }
        return nullptr;
    }
};

inline constexpr engine::ReadingRef door_rise{engine::Field::crossing_rise, 0, 0};
inline constexpr engine::ReadingRef plate_rise{engine::Field::crossing_rise, 1, 0};

}  // namespace sillwalk::test
