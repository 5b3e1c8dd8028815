#pragma once
/// All that the app knows at one moment. Screens read it; only update() changes it.

#include "app/bundle/entries.hpp"
#include "app/core/castors.hpp"
#include "app/core/journal.hpp"
#include "app/core/photos.hpp"
#include "app/core/pick.hpp"
#include "app/core/sending.hpp"
#include "app/core/sheet.hpp"
#include "app/core/what_if.hpp"
#include "engine/model/advice.hpp"
#include "engine/select/damage.hpp"
#include "engine/walk/walk.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

/// Loaded once at the start, never changed.
struct EngineData {
    engine::Catalogue catalogue;
    engine::Tables tables;
    EntryTables entry;
};

enum class Screen : std::uint8_t {
    visits,
    overview,
    route,
    room,
    crossing,
    loads,
    cart,
    washing,
    washing_step,
    answer,
    temperature,
    push,
    what_if,
    damage,
    hand_over,
    setup,
    about,   ///< who, where and why
    places,  ///< rooms and crossings
    plan,    ///< the route of the cart in hand, being made
    evidence,
    photo,
    office  ///< who takes in what is sent, and how that stands
};
[[nodiscard]] const char* screen_name(Screen screen);  ///< "route": in target ids, settings and language keys

struct Spot {
    Screen screen = Screen::visits;
    std::uint16_t index = 0;  ///< of the room, crossing (what_if too), cart, washing or photo
    friend bool operator==(const Spot&, const Spot&) = default;
};

struct Visit {
    engine::SurveyId id;
    Entries entries;  ///< the document; the survey and the photos below are read from it
    engine::Survey survey;
    Journal journal;
    std::vector<VisitPhoto> photos{};
};

/// A choice from a closed list, being made.
struct ChoiceSheet {
    engine::ReadingRef ref;
    friend bool operator==(const ChoiceSheet&, const ChoiceSheet&) = default;
};

/// The engine's answer for one state of the visit, with the temperatures of the headline wheel of each cart.
struct Answer {
    std::uint64_t version = 0;  ///< of the survey it was worked out from
    bool partial = false;       ///< only the cart in hand; the others still answer the survey before
    engine::Advice advice;
    std::vector<std::optional<engine::Walk>> walks;          ///< by cart, of the first choice or the nearest
    std::vector<std::optional<engine::Walk>> walks_present;  ///< by cart, of the wheel that is on it
    std::vector<std::vector<engine::DamageReading>> damage;  ///< by cart: what is seen against what is computed
    std::vector<engine::Error> refused;                      ///< where the survey contradicts itself: no advice
    double milliseconds = 0;
};

/// What takes longer than an answer may: worked out for the cart in hand once somebody looks at it.
struct Completion {
    std::uint64_t version = 0;  ///< of the survey
    std::uint16_t cart = 0;
    std::optional<std::vector<engine::FamilyLimits>> would_hold;
    std::optional<std::vector<engine::Condition>> conditions;
    std::optional<engine::ReadAgain> read_again;
    /// Nothing more will come for this version.
    [[nodiscard]] bool whole() const { return would_hold && read_again; }
};

struct Storage {
    std::int64_t saved_ms = 0;  ///< when the last reading reached the disk; 0 = not yet
    std::uint64_t waiting = 0;  ///< commands not on the disk yet
    bool refused = false;       ///< the disk does not take them
    std::string why;            ///< "full" or the system's words
    friend bool operator==(const Storage&, const Storage&) = default;
};

/// "14:03 changed because …": shown in Answer.
struct AnswerChange {
    std::int64_t at_ms = 0;
    std::string cause;  ///< language key of what was done
    std::string where;  ///< name of the place
    engine::Verdict before = engine::Verdict::cannot_tell, now = engine::Verdict::cannot_tell;
};

struct Toast {
    std::string key;  ///< language key
    std::vector<std::string> arguments;
    bool undo = false;  ///< with an Undo button
    double since = 0;
};

/// Pixels of glass per millimetre: no glass is coarser or finer.
inline constexpr double least_px_per_mm = 2, most_px_per_mm = 40;

struct Settings {
    std::array<std::uint8_t, quantity_kind_count> unit{};  ///< index in units_of(kind), sticky
    std::string theme = "light", language = "en";
    bool glove = true, left_handed = false, us_units = false;
    int text_percent = 100;
    double px_per_mm = 0;  ///< from the scale check; 0: none was made
    friend bool operator==(const Settings&, const Settings&) = default;
};

struct VisitLine {
    std::string id, title;
    std::int64_t changed_ms = 0;
    DeliveryState delivery = DeliveryState::not_sent;
    std::string why{};  ///< language key of what needs attention
    std::string customer{};
    friend bool operator==(const VisitLine&, const VisitLine&) = default;
};

struct AppModel {
    const EngineData* data = nullptr;  ///< set before the first action
    Settings settings;
    std::vector<VisitLine> visits;
    std::optional<Visit> visit;
    std::uint64_t version = 0;  ///< counts every change of the survey
    Spot spot;
    std::vector<Spot> back;  ///< where "back" leads, last first
    std::optional<Sheet> sheet;
    std::optional<ChoiceSheet> choice;
    std::optional<Pick> pick;
    std::optional<CastorSheet> castors;
    PhotoDesk photos;
    bool has_camera = false;  ///< set before the first action
    SendingDesk sending;
    std::uint16_t cart = 0;                      ///< whose answer the bar shows
    bool show_present = true;                    ///< a crossing shows the present wheel, else the first choice
    std::optional<engine::CheckId> open_reason;  ///< in Answer: the check whose working is shown
    std::shared_ptr<const Answer> answer;
    std::shared_ptr<const Completion> completion;
    std::optional<WhatIf> what_if;
    std::shared_ptr<const Answer> what_if_answer;  ///< of the cart that it is tried for
    std::uint64_t what_if_version = 0;
    bool show_table = false;  ///< a picture shows its numbers as a table
    std::vector<AnswerChange> changes;
    Storage storage;
    std::optional<Toast> toast;
    bool quit = false;
};

/// Of the list; null where it has none of that id.
[[nodiscard]] const VisitLine* find_visit(const AppModel& model, std::string_view id);
/// The advice for the cart in hand; null while there is none.
[[nodiscard]] const engine::CartAdvice* cart_advice(const AppModel& model);
/// First choice, or the nearest where nothing holds; null while there is none.
[[nodiscard]] const engine::RankedCandidate* headline(const engine::CartAdvice* advice);
/// What is being tried for the cart in hand; null where nothing is.
[[nodiscard]] const WhatIf* what_if_in_hand(const AppModel& model);
/// Its advice; null while it is being worked out.
[[nodiscard]] const engine::CartAdvice* what_if_advice(const AppModel& model);
/// What was worked out slowly for the cart in hand and the survey as it stands now; null while it is not there.
[[nodiscard]] const Completion* completion_in_hand(const AppModel& model);
/// The screen shows what only a completion knows.
[[nodiscard]] bool wants_completion(const AppModel& model);
[[nodiscard]] std::vector<WantedPicture> wanted_pictures(const AppModel& model);
/// The answer is that of the survey as it stands now.
[[nodiscard]] bool answer_is_current(const AppModel& model);

}  // namespace sillwalk::app
