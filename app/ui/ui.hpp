#pragma once
/// The kit from which every screen is made. Each widget draws itself, registers its touch target under a stable dotted
/// id, and says whether it was tapped. Screens never call the drawing library.
///
///     ui.begin(input, settings);
///     Regions r = ui.regions(true);
///     if (auto tab = ui.rail("nav", items, current)) …
///     auto list = ui.scroll("route.list", r.content);
///     if (ui.row("crossing.rise", "Rise", {.value = "19", .unit = "mm", .detail = "± 1, tape"})) …
///     FrameOutput out = ui.end();
///
/// Layout: a widget with no rect of its own takes the next place of the innermost layout: below the last one in a
/// column, scroll or card; beside it within cells().

#include "app/ui/frame_output.hpp"
#include "app/ui/widgets/options.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::ui {

/// The parts of the screen. A bar that is not shown is empty.
struct Regions {
    Rect rail{};  ///< left (right for left hand); empty when compact
    Rect top_bar{};
    Rect content{};  ///< with its margins taken off
    Rect answer_bar{};
    Rect bottom_bar{};  ///< navigation when compact
};

/// Words on badges that have none of their own, in the person's language.
struct BadgeWords {
    std::string holds = "Holds", tight = "Tight", fails = "Fails", not_known = "Not known", by_eye = "By eye";
    std::string back = "Back", close = "Close";  ///< names of keys that show a sign only
};

class Ui {
public:
    /// `texts`: every word of the string tables, so that the font holds all their letters.
    explicit Ui(std::string_view texts = {});
    ~Ui();
    Ui(const Ui&) = delete;
    Ui& operator=(const Ui&) = delete;

    // ---- frame
    void begin(const FrameInput& input, const UiSettings& settings);
    [[nodiscard]] FrameOutput end();
    [[nodiscard]] const Metrics& metrics() const;
    [[nodiscard]] const Theme& theme() const;
    [[nodiscard]] Canvas& canvas();
    [[nodiscard]] Textures& textures();
    [[nodiscard]] double now() const;
    /// True once in the frame in which the key came and no text field took it (undo, redo, escape).
    [[nodiscard]] bool key_pressed(Key key) const;
    void set_badge_words(const BadgeWords& words);
    /// Host must call again after this many seconds even without input.
    void wake_in(double seconds);

    // ---- places
    [[nodiscard]] Regions regions(bool with_answer_bar) const;
    /// Splits a rectangle by weight into columns with the gutter between; mirrored for the left hand if `mirror`.
    [[nodiscard]] std::vector<Rect> columns(const Rect& rect, std::vector<float> weights, bool mirror = false) const;
    /// Next place of the current layout, full width.
    Rect place(float height);
    /// What is left of the current layout (to the bottom of its bounds).
    [[nodiscard]] Rect remaining() const;
    void space(float height);
    Scope column(const Rect& rect, float gap = -1);
    /// `count` places side by side, each at least as high as `height` (0: T1 target).
    Scope cells(const std::vector<float>& weights, float height = 0);
    /// A list that a finger drags; grows with its content.
    Scope scroll(std::string_view id, const Rect& view);
    Scope card(const CardOptions& options = {});
    /// What the screen shows is that of the frame before where the number is; 0 is never the same. Before any block or
    /// kept part.
    void set_content(std::uint64_t number);
    /// A part of a list that a finger drags, in the order of all its parts. Far out of view it is not built and keeps
    /// the height that it had, and in view it is copied from the frame before, as long as content and width are the
    /// same and nothing is tapped or typed.
    void block(const std::function<void()>& build);
    /// Any other part that stays where it is: it is built again only when the content is another, or somebody taps,
    /// types or presses on it. What it shows may depend on nothing else. Not for lists that a finger drags, nor sheets.
    void kept(std::string_view id, const std::function<void()>& build);
    /// Rows of equal height, only those in view are drawn: `row(index)` makes exactly one widget.
    void list(std::string_view id, const Rect& view, std::size_t count, const std::function<void(std::size_t)>& row,
              const ListOptions& options = {});
    /// Scrolls the list so that the row or target comes into view.
    void scroll_to(std::string_view scroll_id, float offset);
    void scroll_to_row(std::string_view list_id, std::size_t row);
    /// Index of the first row in view, to be kept when the screen turns.
    [[nodiscard]] std::size_t first_row(std::string_view list_id) const;

    // ---- widgets: true when tapped
    bool button(std::string_view id, std::string_view label, const ButtonOptions& options = {});
    bool row(std::string_view id, std::string_view name, const RowOptions& options = {});
    /// Segmented choice, one of a few. The new index when tapped; `selected` may be -1.
    std::optional<std::size_t> choice(std::string_view id, std::span<const ChoiceItem> items, int selected,
                                      const ChoiceOptions& options = {});
    /// Chips that flow over lines. The index tapped; what is selected is the caller's.
    std::optional<std::size_t> chips(std::string_view id, std::span<const ChipItem> items);
    bool key(std::string_view id, std::string_view label, const KeyOptions& options = {});
    /// Key with a stacked fraction (sixteenths / 16, reduced) and an inch tape filled to that mark; 0: `no_fraction`.
    bool fraction_key(std::string_view id, int sixteenths, std::string_view no_fraction,
                      const KeyOptions& options = {});
    std::optional<double> slider(std::string_view id, double value, const SliderOptions& options);
    TextFieldResult text_field(std::string_view id, std::string& buffer, const TextFieldOptions& options = {});
    /// A free target: register, draw yourself. `label` is what it says.
    Interaction area(std::string_view id, std::string_view label, const Rect& rect,
                     TargetClass target_class = TargetClass::row, DragMode drag = DragMode::none, bool enabled = true);
    /// A picture, stretched over the rectangle; nothing where there is no such texture.
    void image(TextureId texture, const Rect& rect);
    /// Photo thumbnail that opens.
    bool photo(std::string_view id, std::string_view label, TextureId texture, const Rect& rect = {});

    // ---- text and signs (no targets)
    /// Wrapped to the width of the layout. `id` lets a script expect it; may be empty.
    void text(std::string_view utf8, TextRole role = TextRole::body, Weight weight = Weight::regular,
              std::optional<Color> color = {}, std::string_view id = {});
    void title(std::string_view utf8, std::string_view id = {});
    /// The one sentence that states what a chart shows.
    void finding(std::string_view utf8, std::string_view id = {});
    void caption(std::string_view utf8, std::string_view id = {});
    /// One line at a baseline, smaller where it is wider than max_width (0: any); recorded as clipped where even the
    /// smallest is. Returns its right end.
    float text_at(Point at, std::string_view utf8, const TextStyle& style, float max_width = 0,
                  std::string_view id = {});
    /// Within the box, in its middle from top to bottom: smaller or on several lines where it would not fit. Returns
    /// the role that it was drawn in.
    TextRole text_in(const Rect& box, std::string_view utf8, const TextStyle& style, std::string_view id = {});
    /// "19 mm" with the unit smaller and grey; `at` is the right end on the baseline.
    void value_at(Point right_end, std::string_view value, std::string_view unit, TextRole role = TextRole::value,
                  std::string_view id = {});
    [[nodiscard]] float text_width(std::string_view utf8, TextRole role, Weight weight) const;
    /// Of the widest word: what no column of the text can be narrower than.
    [[nodiscard]] float word_width(std::string_view utf8, TextRole role, Weight weight) const;
    /// Height of wrapped text.
    [[nodiscard]] float text_height(std::string_view utf8, TextRole role, Weight weight, float width) const;
    /// In the flow, left aligned.
    void badge(Badge state, std::string_view word = {}, std::string_view id = {});
    /// Middle of its left, middle or right end at `at`. Returns its rectangle.
    Rect badge_at(Point at, Badge state, Align align = Align::left, std::string_view word = {},
                  TextRole role = TextRole::caption);
    [[nodiscard]] float badge_width(Badge state, std::string_view word = {}, TextRole role = TextRole::caption) const;
    void separator();
    /// A place for a drawing; `described` is its finding as text.
    void drawing(float height, std::string_view described, const std::function<void(Canvas&, const Rect&)>& draw);

    // ---- frame of the app
    /// Widens the rail for its longest word; before regions().
    void set_rail_words(std::span<const RailItem> items);
    std::optional<std::size_t> rail(std::string_view id, std::span<const RailItem> items, int selected,
                                    std::string_view home_label = {});
    std::optional<std::size_t> bottom_bar(std::string_view id, std::span<const RailItem> items, int selected);
    /// The index of the tapped action, or -1 for "back".
    std::optional<int> top_bar(std::string_view title, const TopBarOptions& options = {});
    bool answer_bar(std::string_view id, const AnswerBarOptions& options);
    /// Everything drawn until the scope ends lies on the sheet. `closed` becomes true when it is closed by hand.
    Scope sheet(std::string_view id, std::string_view title, bool& closed, const SheetOptions& options = {});
    /// A line at the bottom for some seconds after `since` (Ui::now of when it happened). True when its button is
    /// tapped.
    bool toast(std::string_view id, std::string_view text, double since, const ToastOptions& options = {});

    struct Impl;

private:
    std::unique_ptr<Impl> impl_;
};

}  // namespace sillwalk::ui
