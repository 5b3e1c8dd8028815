#pragma once
/// What is on the screen, as data: every touch target and every text of the last frame.
/// Fingers, keyboard, scripts, tests and the plain-text reading of a screen all use this, never pixels.

#include "app/ui/geometry.hpp"
#include "engine/base/name_index.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::ui {

/// Smallest physical size, see Metrics::target_size().
enum class TargetClass : std::uint8_t {
    row,           ///< T1: row, button, tab, chip, rail item
    key,           ///< T2: key, stepper, fraction key, photo
    irreversible,  ///< T3: send, erase; or far reach
};

/// How a finger that moves on the target is understood.
enum class DragMode : std::uint8_t {
    none,      ///< moving scrolls the list around it
    direct,    ///< slider, ruler: the target follows the finger
    pan_zoom,  ///< map, photo: one finger pans, two zoom
};

struct Target {
    std::string id{};     ///< dotted, stable, never a label: "crossing.rise"
    std::string label{};  ///< all text on it, in reading order, parts separated by one space
    Rect rect{};
    Rect visible{};  ///< rect within all clips; empty when scrolled out of view
    TargetClass target_class = TargetClass::row;
    DragMode drag = DragMode::none;
    bool enabled = true;
    bool selected = false;
    bool covered = false;        ///< under a sheet: cannot be touched
    bool label_clipped = false;  ///< some text did not fit even after wrapping
    bool wants_long_press = false;
    bool overscan = false;      ///< row kept just outside the view for the keyboard
    std::uint16_t region = 0;   ///< keyboard order: regions in order of drawing, then row by row within a region
    std::string scroll_area{};  ///< id of the list it scrolls with; empty when fixed
};

/// Text that is not on a target.
struct TextItem {
    std::string id{};  ///< may be empty
    std::string text{};
    Rect rect{};
    bool clipped = false;
    bool covered = false;
};

struct ScrollRegion {
    std::string id{};
    Rect view{};
    float offset = 0;  ///< pixels scrolled down
    float max_offset = 0;
    bool covered = false;
};

/// What a part of a frame put on the map, as it stood then.
struct HitPart {
    std::vector<Target> targets;
    std::vector<TextItem> texts;
    std::vector<ScrollRegion> scrolls;
    std::vector<bool> order;  ///< true: the next target, false: the next text
    [[nodiscard]] bool has_target(std::string_view id) const;
};

class HitMap {
public:
    /// How much was on the map at some moment.
    struct Mark {
        std::size_t targets = 0, texts = 0, order = 0, scrolls = 0, covers = 0;
    };

    void clear();
    [[nodiscard]] Mark mark() const;
    /// What came since. False where a sheet came too: what it covers is another each time.
    [[nodiscard]] bool take_part(const Mark& since, HitPart& part) const;
    /// Puts a copy on the map, moved down, as much of it as lies within `view`.
    void add_part(const HitPart& part, float down, const Rect& view, std::uint16_t regions_before);
    /// Ends the program when the id is already there: a bug of the screen.
    Target& add(Target target);
    TextItem& add_text(TextItem item);
    void add_scroll(ScrollRegion region);
    /// All that was added before and lies under `area` can no longer be touched or read.
    void cover(const Rect& area);

    [[nodiscard]] const Target* find(std::string_view id) const;
    [[nodiscard]] const TextItem* find_text(std::string_view id) const;
    [[nodiscard]] const ScrollRegion* find_scroll(std::string_view id) const;
    /// Topmost target under the point that is in view and not covered; disabled ones too.
    [[nodiscard]] const Target* at(Point point) const;
    /// Innermost list under the point that has something to scroll.
    [[nodiscard]] const ScrollRegion* scroll_at(Point point) const;
    /// Ids in keyboard order: enabled, not covered.
    [[nodiscard]] std::vector<std::string> keyboard_order() const;
    /// Ids that resemble `id`, best first; for error messages.
    [[nodiscard]] std::vector<std::string> near_ids(std::string_view id, std::size_t count = 5) const;
    /// The screen as plain text, one line per text or target, in order of drawing.
    [[nodiscard]] std::string describe() const;

    [[nodiscard]] std::span<const Target> targets() const { return {targets_.data(), target_count_}; }
    [[nodiscard]] std::span<const TextItem> texts() const { return {texts_.data(), text_count_}; }
    [[nodiscard]] const std::vector<ScrollRegion>& scrolls() const { return scrolls_; }

private:
    struct Entry {
        bool is_target = false;
        std::size_t index = 0;
    };
    // Cleared rows stay, with the memory of their texts, until the next frame fills them.
    std::vector<Target> targets_;
    std::vector<TextItem> texts_;
    std::size_t target_count_ = 0, text_count_ = 0;
    std::vector<ScrollRegion> scrolls_;
    struct Cover {
        Rect area{};
        std::size_t above = 0;  ///< covers the targets before this index
    };
    /// Of the target that comes next.
    void add_id(const std::string& id);
    [[nodiscard]] bool covered_at(std::size_t target, Point point) const;

    std::vector<Cover> covers_;
    std::vector<Entry> order_;
    engine::NameIndex by_id_;
};

}  // namespace sillwalk::ui
