#pragma once
/// What the widgets of Ui take. An empty `rect` means: the next place of the current layout.

#include "app/ui/icons.hpp"
#include "app/ui/metrics.hpp"
#include "app/ui/textures.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::ui {

/// Ends a layout when it goes out of scope: `auto card = ui.card();`
class [[nodiscard]] Scope {
public:
    explicit Scope(std::function<void()> end) : end_(std::move(end)) {}
    Scope(Scope&& other) noexcept : end_(std::exchange(other.end_, nullptr)) {}
    Scope(const Scope&) = delete;
    Scope& operator=(const Scope&) = delete;
    Scope& operator=(Scope&&) = delete;
    ~Scope() {
        if (end_) end_();
    }

private:
    std::function<void()> end_;
};

/// What happened to a target in this frame.
struct Interaction {
    bool tapped = false;        ///< by finger, mouse or keyboard
    bool long_pressed = false;  ///< once per press; only for extras that have a visible button too
    bool pressed = false;       ///< a finger is on it, or was within the last 80 ms
    bool focused = false;       ///< keyboard focus
    bool dragging = false;      ///< DragMode::direct or pan_zoom: the finger moves it
    bool drag_ended = false;
    Point at{};          ///< finger, when tapped or dragging; the middle when by keyboard
    Point drag_delta{};  ///< since the last frame
    float zoom = 1;      ///< two fingers: factor since the last frame, about `at`
    int steps = 0;       ///< arrow keys while focused: right and up +1, left and down -1
};

enum class ButtonStyle : std::uint8_t {
    plain,    ///< outline on surface
    primary,  ///< filled: the next thing to do, one per screen
    quiet,    ///< no outline until pressed
    danger,   ///< outline and text in the colour of "fails"
};

struct ButtonOptions {
    ButtonStyle style = ButtonStyle::plain;
    Icon icon = Icon::none;
    std::string detail{};  ///< second, smaller line
    std::string count{};   ///< small text at the right end
    bool enabled = true;
    bool selected = false;
    Align align = Align::center;
    TargetClass target_class = TargetClass::row;
    TextRole role = TextRole::row;
    Rect rect{};
};

/// One reading or fact: name and tolerance left; value and unit, or a badge, right. The whole row is the target.
struct RowOptions {
    std::string value{};           ///< "19", "square"; empty when there is none yet
    std::string unit{};            ///< "mm"
    std::string detail{};          ///< under the name: "± 1, tape"
    std::optional<Badge> badge{};  ///< right end, with badge_word or the word of set_badge_words
    std::string badge_word{};
    std::optional<Badge> mark{};  ///< small drawn shape before the detail ("by eye") or, without value, before the name
    Icon icon = Icon::none;       ///< at the left end
    bool chevron = false;         ///< opens something
    bool dashed = false;          ///< outline of a thing not known yet
    bool framed = true;           ///< own card; false: hairline below, for rows inside a card or a list
    bool enabled = true;
    bool selected = false;
    bool touchable = true;  ///< false: text only, no target
    TextRole value_role = TextRole::value;
    Rect rect{};
};

struct ChoiceItem {
    std::string id{};  ///< last part of the target's id: "mm" gives "unit.mm"
    std::string label{};
    std::string detail{};  ///< second line
    bool enabled = true;
};
struct ChoiceOptions {
    TextRole role = TextRole::body;
    Rect rect{};
};

struct ChipItem {
    std::string id{};
    std::string label{};
    bool selected = false;
    bool enabled = true;
};

struct KeyOptions {
    char32_t shortcut = 0;  ///< key of a hardware keyboard that does the same
    Icon icon = Icon::none;
    std::string detail{};  ///< second line: "gap" under "Next"
    bool primary = false;
    bool selected = false;
    bool enabled = true;
    TextRole role = TextRole::digit;
    std::function<void()> on_hold{};  ///< once, after half a second: clear on the backspace key
    bool repeat = false;              ///< tapped again six times a second while held: steppers
    Rect rect{};
};

struct SliderOptions {
    double min = 0;
    double max = 1;
    double step = 0;  ///< 0: continuous; keyboard then moves a twentieth of the range
    std::string label{};
    std::string value_text{};       ///< as shown, with unit
    std::optional<double> limit{};  ///< thick vertical bar
    bool enabled = true;
    Rect rect{};
};

struct TextFieldOptions {
    std::string label{};
    std::string hint{};  ///< shown while empty
    bool several_lines = false;
    std::size_t max_bytes = 2000;
    bool enabled = true;
    Rect rect{};
};
struct TextFieldResult {
    bool changed = false;    ///< the buffer changed in this frame
    bool committed = false;  ///< editing ended: Enter, a tap elsewhere, or focus moved on
    bool editing = false;    ///< it takes the keys
};

struct ListOptions {
    float row_height = 0;    ///< pixels, all rows alike; 0: the T1 target size
    bool jump_chips = true;  ///< "top" and "end" when there is more than three screens
    std::string top_label, end_label;
};

struct CardOptions {
    Rect rect{};     ///< empty: as high as its content
    float pad = -1;  ///< < 0: Metrics::pad
    bool dashed = false;
    bool plain = false;  ///< no fill and no outline, only the padding
};

struct RailItem {
    std::string id{};
    std::string label{};
    Icon icon = Icon::none;
    bool attention = false;  ///< small ring: something is open there
};

struct BarAction {
    std::string id{};
    std::string label{};  ///< for describe() and the keyboard; drawn only when there is no icon
    Icon icon = Icon::none;
    bool enabled = true;
};
struct TopBarOptions {
    std::string subtitle{};
    std::string status{};              ///< "Saved 14:03"
    bool back = false;                 ///< arrow before the title, target "top.back"
    std::vector<BarAction> actions{};  ///< right end, from the left
};

struct AnswerBarOptions {
    std::string headline{};
    std::string reason{};
    std::optional<Badge> badge{};
    std::string badge_word{};
    bool flash = false;                                 ///< outline in focus colour: the headline changed
    std::function<void(Canvas&, const Rect&)> left{};   ///< wheel
    std::function<void(Canvas&, const Rect&)> right{};  ///< margin scale
};

enum class SheetPlace : std::uint8_t {
    content,  ///< all of the content region
    side,     ///< right half in expanded width (left half for left hand), whole content else
    bottom,   ///< as high as its content, at the lower border
};
struct SheetOptions {
    SheetPlace place = SheetPlace::side;
    std::string subtitle{};
    bool modal = true;         ///< what lies beside the sheet cannot be touched
    bool close_button = true;  ///< target "<id>.close"; Escape does the same
    float height = 0;          ///< of a bottom sheet; 0: half of the screen
};

struct ToastOptions {
    std::string action{};  ///< label of its button, target "<id>.action"
    double seconds = 8;
};

}  // namespace sillwalk::ui
