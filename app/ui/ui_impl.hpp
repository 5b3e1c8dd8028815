#pragma once
/// What the widgets share: layout stack, interaction, focus, text fitting. Not for screens.

#include "app/ui/drawn_part.hpp"
#include "app/ui/gesture.hpp"
#include "app/ui/painter.hpp"
#include "app/ui/ui.hpp"

#include <limits>
#include <map>
#include <string>
#include <vector>

namespace sillwalk::ui {

struct Layout {
    Rect bounds;
    float cursor = 0;
    float gap = 0;
    std::vector<Rect> cells;  ///< not empty: places lie side by side
    std::size_t next_cell = 0;
    float cell_height = 0;
};

/// A part of the screen as it was drawn last: the next frame copies it while nothing changed. See kept_parts.cpp.
struct KeptPart {
    std::uint64_t since = 0;  ///< it holds for this Ui::Impl::changes
    Rect clip;
    float cursor = 0;  ///< of the layout around it, before and after
    float cursor_after = 0;
    std::uint16_t regions = 0;
    bool movable = false;
    DrawnPart drawn;
    HitPart hit;
};

struct ScrollState {
    float offset = 0;
    float drawn_offset = 0;  ///< of the frame before
    float max_offset = 0;
    Rect view;
    std::string anchor;                ///< target to keep in place when the screen changed size
    float anchor_below = 0;            ///< its distance from the top of the view
    float row_step = 0;                ///< lists: height of a row with its gap
    std::vector<float> block_heights;  ///< gaps included
    std::vector<KeptPart> blocks;
    std::size_t next_block = 0;
    std::uint64_t known_since = 0;  ///< the heights hold for this Ui::Impl::changes
    float known_width = 0;
};

/// A part of a text that lives elsewhere; `cut`: an ellipsis stands for what did not fit.
struct TextLine {
    std::string_view text;
    bool cut = false;
};

struct WrappedText {
    std::vector<TextLine> lines;
    bool breaks_word = false;  ///< some word is wider than the box
};

/// Lines of a text that was fitted into a box.
struct FittedText {
    std::vector<TextLine> lines;
    TextRole role = TextRole::body;
    bool clipped = false;
};

struct Ui::Impl {
    explicit Impl(std::string_view texts) : painter(texts) {}

    // ---- state of the frame
    Painter painter;
    Textures textures;
    FrameInput input;
    UiSettings settings;
    Metrics metrics;
    const Theme* colors = nullptr;
    HitMap seen;     ///< last frame
    HitMap drawing;  ///< this frame
    HitMap aside;    ///< of a block while it is built
    Gesture gesture;
    GestureResult touch;
    std::vector<Layout> layouts;
    std::vector<Rect> clips;
    std::vector<std::string> scroll_stack;
    std::map<std::string, ScrollState, std::less<>> scrolls;
    std::uint16_t region = 0;
    Regions regions;
    BadgeWords words;
    double wake = -1;
    bool extra_frame = false;
    std::uint64_t content = 0;
    std::uint64_t changes = 1;  ///< counts what may change how something looks or how high it is
    bool quiet = false;         ///< in this frame nobody taps, types or turns the screen
    bool in_block = false;
    std::uint64_t passing_count = 0;  ///< of what will look otherwise by itself: lists that move, what asks for a frame
    std::map<std::string, KeptPart, std::less<>> kept;

    // ---- keyboard
    std::string focus;
    bool focus_visible = false;
    bool focus_moved = false;  ///< bring it into view
    std::string key_tap;       ///< target activated by Enter or Space
    int key_steps = 0;
    std::vector<Key> unused_keys;
    std::string editing;  ///< text field that takes the keys
    std::size_t caret = 0;
    bool editing_shown = false;  ///< it was drawn in this frame
    bool keys_are_text = false;  ///< it had the keys when the frame began: Escape ends the typing and nothing else
    Rect editing_rect;
    std::vector<char32_t> typed;  ///< not taken by a text field: key shortcuts

    [[nodiscard]] Canvas& canvas() const { return painter.canvas(); }
    [[nodiscard]] const Theme& theme() const { return *colors; }

    // ---- frame (ui.cpp)
    void apply_scrolls();
    void read_keys();
    /// False where it means nothing to what has the focus.
    bool use_key(Key key);
    void move_focus(int step);
    void remember_anchors();
    void restore_anchors();
    void wake_in(double seconds);

    // ---- layout (layout.cpp)
    [[nodiscard]] Layout& layout();
    Rect place(float height);
    [[nodiscard]] float place_width() const;
    void advance(float height);
    void push_column(const Rect& rect, float gap);
    void pop_layout();
    void push_clip(const Rect& rect);
    void pop_clip();
    [[nodiscard]] Rect clip() const;
    void new_region() { ++region; }

    // ---- kept parts (kept_parts.cpp)
    [[nodiscard]] float cursor() const { return layouts.empty() ? 0 : layouts.back().cursor; }
    /// False where it must be built.
    [[nodiscard]] bool draw_kept(const KeptPart& part);
    /// Builds it and keeps what came of it.
    void build_part(KeptPart& part, const std::function<void()>& build);
    void build_block(KeptPart& part, const std::function<void()>& build);
    void begin_part(KeptPart& part) const;
    void finish_part(KeptPart& part, bool movable) const;
    [[nodiscard]] bool in_hand(const HitPart& part) const;

    // ---- interaction (interaction.cpp)
    Interaction interact(Target target);
    void focus_ring(const Rect& rect, bool focused);
    [[nodiscard]] bool take_typed(char32_t code);

    // ---- text (text.cpp)
    [[nodiscard]] WrappedText wrap(std::string_view text, TextRole role, Weight weight, float width) const;
    [[nodiscard]] FittedText fit(std::string_view text, TextRole role, Weight weight, float width, float height) const;
    [[nodiscard]] float line_width(const TextLine& line, TextRole role, Weight weight) const;
    /// At a baseline, as Canvas::text.
    void draw_line(Point at, const TextLine& line, const TextStyle& style);
    /// Draws fitted lines, vertically centred in the box.
    void draw_fitted(const FittedText& fitted, const Rect& box, Weight weight, Color color, Align align);
    void record_text(std::string_view id, std::string_view text, const Rect& rect, bool clipped);
    [[nodiscard]] std::string_view badge_word(Badge state, std::string_view word) const;
};

/// Parts of a label joined by single spaces, empty ones left out.
[[nodiscard]] std::string join_label(std::initializer_list<std::string_view> parts);

}  // namespace sillwalk::ui
