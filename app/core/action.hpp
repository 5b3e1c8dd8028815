#pragma once
/// Everything that can happen: taps, and news from the disk and the engine.

#include "app/core/build_action.hpp"
#include "app/core/model.hpp"

#include <array>
#include <map>
#include <memory>
#include <string>
#include <variant>
#include <vector>

namespace sillwalk::app {

// ---- where we are
struct OpenVisit {
    std::string id;
};
struct CloseVisit {};
struct GoTo {
    Spot spot;
};
struct GoBack {};
struct SelectCart {
    std::uint16_t cart = 0;
};
struct ShowPresent {
    bool present = true;
};
struct OpenReason {
    std::optional<engine::CheckId> check;
};

// ---- the measuring sheet
struct OpenSheet {
    engine::ReadingRef ref;
};
struct CloseSheet {};  ///< without keeping
struct SheetDigit {
    char key = '0';
};
struct SheetFraction {
    int sixteenths = 0;
};
struct SheetPlusSixteenth {};  ///< narrow screens: eighths and "+1/16"
struct SheetSign {};
struct SheetBackspace {};
struct SheetClear {};
struct SheetStep {
    int steps = 1;
};  ///< by the unit's resolution
struct SheetUnit {
    std::size_t unit = 0;
};
struct SheetMethod {
    std::size_t method = 0;
};
struct SheetPage {
    bool fractions = false;
};
/// The ruler in place of the keys.
struct SheetRuler {
    bool on = false;
};
struct SheetSlide {
    std::int64_t canonical = 0;
};                     ///< the ruler's mark was moved there
struct SheetAgain {};  ///< a second reading of the same thing
struct SheetSameAs {
    engine::ReadingRef from;
};
struct SheetTakeSuggestion {};
struct SheetNone {};  ///< measured: there is none (zero)
struct SheetNotAccessible {};
struct SheetKeep {
    bool next = false;
};  ///< commit, then the next reading or close

// ---- what if
struct WhatIfSet {
    engine::ReadingRef ref;
    std::int64_t value = 0;
};  ///< canonical
struct WhatIfForget {};
struct WhatIfTakeOver {};  ///< one undoable edit per changed reading

// ---- present wheels and pictures
struct ToggleDamage {
    std::uint16_t cart = 0;
    engine::DamageKind kind = engine::DamageKind::flat_spot;
};
struct SetPresent {
    std::uint16_t cart = 0;
    std::uint8_t part = 0;  ///< 0 wheel, 1 bearing, 2 rig
    std::string id;         ///< of the catalogue
};
struct ShowTable {
    bool table = false;
};

// ---- choices and flags
struct OpenChoice {
    engine::ReadingRef ref;
};
struct CloseChoice {};
struct Choose {
    engine::ReadingRef ref;
    std::string word;
    bool by_eye = false;
};

// ---- the document
struct Undo {};
struct Redo {};

// ---- settings
struct SetTheme {
    std::string theme;
};
struct SetGlove {
    bool glove = true;
};
struct SetLeftHanded {
    bool left = false;
};
/// The scale check: pixels of the glass per millimetre, as a tape has shown.
struct SetScale {
    double px_per_mm = 0;
};
struct SetTextPercent {
    int percent = 100;
};
struct SetUsUnits {
    bool us = false;
};
struct SetLanguage {
    std::string code;
};
struct DismissToast {};

// ---- news
struct StoredEditRow {  ///< as it lay in the database
    std::int64_t step = 0;
    int kind = 0;  ///< 0 edit, 1 undo, 2 redo
    std::string label;
    Change change;
};
struct VisitsListed {
    std::vector<VisitLine> visits;
};
struct VisitLoaded {
    std::string id;
    Entries entries;
    std::vector<StoredEditRow> edits;
    std::string draft_path, draft;  ///< empty path = none
    bool follow_up = false;         ///< becomes a new visit with the same readings
};
struct SettingsLoaded {
    std::map<std::string, std::string> values;
};
struct StorageChanged {
    Storage storage;
};
struct AnswerReady {
    std::shared_ptr<const Answer> answer;
};
struct WhatIfAnswered {
    std::shared_ptr<const Answer> answer;
};
struct AnswerCompleted {
    std::shared_ptr<const Completion> completion;
};
struct LoadFailed {
    std::string why;
};

using Action =
    std::variant<OpenVisit, CloseVisit, GoTo, GoBack, SelectCart, ShowPresent, OpenReason, OpenSheet, CloseSheet,
                 SheetDigit, SheetFraction, SheetPlusSixteenth, SheetSign, SheetBackspace, SheetClear, SheetStep,
                 SheetUnit, SheetMethod, SheetPage, SheetRuler, SheetSlide, SheetAgain, SheetSameAs,
                 SheetTakeSuggestion, SheetNone, SheetNotAccessible, SheetKeep, WhatIfSet, WhatIfForget, WhatIfTakeOver,
                 ToggleDamage, SetPresent, ShowTable, OpenChoice, CloseChoice, Choose, Undo, Redo, BuildAction,
                 PhotoAction, SendAction, SetTheme, SetGlove, SetLeftHanded, SetTextPercent, SetScale, SetUsUnits,
                 SetLanguage, DismissToast, VisitsListed, VisitLoaded, SettingsLoaded, StorageChanged, AnswerReady,
                 WhatIfAnswered, AnswerCompleted, LoadFailed>;

using RandomBytes = std::array<std::uint8_t, 10>;

/// When it happened, and what new ids are made from; update() reads no clock and throws no dice.
struct Moment {
    std::int64_t utc_ms = 0;
    double now = 0;        ///< seconds, the frame's clock
    RandomBytes random{};  ///< other ones for every action
};

}  // namespace sillwalk::app
