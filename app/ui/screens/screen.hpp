#pragma once
/// What every screen gets: the kit, the model to read, the words, and a list for what the person did.

#include "app/core/action.hpp"
#include "app/core/model.hpp"
#include "app/text/explain.hpp"
#include "app/text/language.hpp"
#include "app/ui/screens/memory.hpp"
#include "app/ui/textures.hpp"
#include "app/ui/ui.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::ui {

/// A text being typed: what stands in its field before it is kept.
struct TextEdit {
    std::string id, buffer;
    app::TextRef ref;
};

/// The same for a text of a photo.
struct PhotoTextEdit {
    std::string id, buffer;
    app::PhotoTextRef ref;
};

/// What the drawing itself remembers: nothing that belongs to the visit.
struct Scratch {
    std::string search;  ///< of the list of visits
    TextEdit edit;
    std::string new_name;        ///< of a room or cart to be added
    std::size_t plan_stops = 0;  ///< last seen, to follow the route's end
    int open_cart = -1;          ///< in Overview: the cart all of whose open readings are shown
    std::string headline;        ///< last seen, to flash the bar when it changes
    double headline_since = -1;  ///< Ui::now of the change
    bool all_families = false;   ///< Answer: what would make it hold, of every construction
    int present_part = -1;       ///< Present wheels: the part being chosen; -1: none
    std::string dragged;         ///< target in a picture that a finger moves
    double dragged_value = 0;    ///< where the finger has brought it, canonical, not snapped
    PhotoTextEdit photo_edit;
    std::optional<std::pair<Point, Point>> mark_stroke;  ///< on a photo, from where to where the finger has drawn
    std::map<std::string, TextureId> photo_textures;     ///< small pictures by SHA-256
    std::string whole_photo;                             ///< SHA-256 of the whole one
    TextureId whole_texture = no_texture;
    std::shared_ptr<const app::Picture> camera_picture;  ///< the newest that was drawn
    TextureId camera_texture = no_texture;
    Memory memory;
};

struct ScreenContext {
    Ui& ui;
    const app::AppModel& model;
    const app::Language& language;
    std::vector<app::Action>& actions;  ///< applied after the frame
    Scratch& scratch;
    std::int64_t utc_ms = 0;
    int utc_offset_minutes = 0;  ///< of the place's clock, for "14:03"
    bool tried = false;          ///< survey() and advice() are those of the what-if in hand
    std::uint64_t stamp = 0;     ///< another one with every change of the model; 0: it may have changed

    [[nodiscard]] std::string say(std::string_view key) const { return language.get(key); }
    [[nodiscard]] std::string say(std::string_view key, const std::vector<std::string>& arguments) const {
        return language.fill(key, arguments);
    }
    void act(app::Action action) const { actions.push_back(std::move(action)); }
    [[nodiscard]] const engine::Survey& survey() const { return tried ? model.what_if->survey : model.visit->survey; }
    /// For the cart in hand; null while there is none. Until what is tried is answered, that of what was read.
    [[nodiscard]] const engine::CartAdvice* advice() const {
        const engine::CartAdvice* other = tried ? app::what_if_advice(model) : nullptr;
        return other ? other : app::cart_advice(model);
    }
    /// The same screen with what is being tried in place of what was read, where something is.
    [[nodiscard]] ScreenContext trying() const {
        ScreenContext other = *this;
        other.tried = app::what_if_in_hand(model) != nullptr;
        return other;
    }
    /// What `make` makes from model and words alone. By index or by the place in memory of what it is made from.
    template <class Make>
    const auto& recall(Remembered what, std::uint64_t which, const Make& make) const {
        return scratch.memory.recall(what, which << 1U | (tried ? 1U : 0U), make);
    }
    template <class Of, class Make>
    const auto& recall_of(Remembered what, const Of& of, const Make& make) const {
        return recall(what, reinterpret_cast<std::uintptr_t>(&of), make);
    }
    [[nodiscard]] app::UnitSystem units() const {
        return model.settings.us_units ? app::UnitSystem::us : app::UnitSystem::si;
    }
    [[nodiscard]] app::TextContext text() const {
        return {language, units(), survey(), model.data->catalogue, model.data->tables};
    }
};

/// Draws the whole app: frame, bars and the screen that the model is on. Actions are added to context.actions.
void draw_app(ScreenContext& context);

// ---- one function per screen; `area` is the content region without the bars
void draw_visits(ScreenContext& context, const Rect& area);
void draw_overview(ScreenContext& context, const Rect& area);
void draw_route(ScreenContext& context, const Rect& area);
void draw_room(ScreenContext& context, const Rect& area);
void draw_crossing(ScreenContext& context, const Rect& area);
void draw_loads(ScreenContext& context, const Rect& area);
void draw_cart(ScreenContext& context, const Rect& area);
void draw_washing(ScreenContext& context, const Rect& area);
void draw_washing_step(ScreenContext& context, const Rect& area);
void draw_answer(ScreenContext& context, const Rect& area);
void draw_temperature(ScreenContext& context, const Rect& area);
void draw_push(ScreenContext& context, const Rect& area);
void draw_what_if(ScreenContext& context, const Rect& area);
void draw_damage(ScreenContext& context, const Rect& area);
void draw_hand_over(ScreenContext& context, const Rect& area);
void draw_setup(ScreenContext& context, const Rect& area);
void draw_about(ScreenContext& context, const Rect& area);
void draw_places(ScreenContext& context, const Rect& area);
void draw_plan(ScreenContext& context, const Rect& area);
void draw_evidence(ScreenContext& context, const Rect& area);
void draw_photo(ScreenContext& context, const Rect& area);
void draw_office(ScreenContext& context, const Rect& area);

// ---- what lies over a screen
/// Takes the whole region right of the rail.
void draw_measure_sheet(ScreenContext& context, const Rect& area);
void draw_choice_sheet(ScreenContext& context);
void draw_pick_sheet(ScreenContext& context);
void draw_castor_sheet(ScreenContext& context);
void draw_reason_sheet(ScreenContext& context);
void draw_photo_files_sheet(ScreenContext& context);
void draw_camera_sheet(ScreenContext& context);
void draw_photo_binding_sheet(ScreenContext& context);
void draw_send_sheet(ScreenContext& context);
void draw_erase_sheet(ScreenContext& context);

}  // namespace sillwalk::ui
