#pragma once
/// Every screen and every sheet of the app as states that can be drawn again and again: at any size, in any language,
/// for glove or bare hand, scrolled to the end.

#include "app/ui/screens/screen.hpp"
#include "tests/app_screens/app_host.hpp"

#include <functional>
#include <set>
#include <string>
#include <vector>

namespace sillwalk::test {

/// One state of the app that a person can look at.
struct Look {
    std::string name;
    app::AppModel model;
    ui::Scratch scratch{};
};

/// All screens and sheets: over the demo visit, over an empty one, and over one that was just begun.
[[nodiscard]] std::vector<Look> every_screen();
/// The sheet of every single reading: keypad or list.
[[nodiscard]] std::vector<Look> every_sheet();

/// A piece of glass in one orientation.
struct Glass {
    const char* name;
    float width;
    float height;
    float px_per_mm;
};
/// 10.1 inch tablet both ways and a phone of 70 by 145 mm.
inline constexpr Glass all_glass[] = {
    {"tablet", 1280, 800, 5.9F}, {"tablet upright", 800, 1280, 5.9F}, {"phone", 412, 915, 5.886F}};

/// The words of "en" or "es"; "long" is English with each word of a text drawn out, 35 % longer as a whole.
[[nodiscard]] app::Language language_of(const std::string& code);

/// Draws looks on a kit of its own.
class Viewer {
public:
    explicit Viewer(const Glass& glass, const ui::UiSettings& settings = {}, const ui::Insets& insets = {});

    /// The look as it opens, at the top of its lists.
    const ui::HitMap& show(const Look& look, const app::Language& language);
    /// The look as it opens, then scrolled on until every list was seen to its end.
    void show_whole(const Look& look, const app::Language& language,
                    const std::function<void(const ui::HitMap&)>& each);
    /// One more frame of the same.
    const ui::FrameOutput& again(const Look& look, const app::Language& language);
    [[nodiscard]] const ui::FrameOutput& last() const { return out_; }
    [[nodiscard]] const ui::FrameInput& input() const { return input_; }
    /// Another one for every look: what was made for it is used again. 0: made anew with every frame.
    void remember(std::uint64_t stamp) { stamp_ = stamp; }

private:
    void frame(const Look& look, const app::Language& language);
    void settle(const Look& look, const app::Language& language);

    ui::Ui kit_;
    ui::UiSettings settings_;
    ui::FrameInput input_;
    ui::FrameOutput out_;
    ui::Scratch scratch_;
    std::uint64_t stamp_ = 0;
};

/// What is wrong, each thing once, with the first place where it was seen.
class Faults {
public:
    void add(const std::string& what, const std::string& where) {
        if (seen_.insert(what).second) text_ += what + "   (" + where + ")\n";
    }
    [[nodiscard]] const std::string& text() const { return text_; }

private:
    std::set<std::string> seen_;
    std::string text_;
};

}  // namespace sillwalk::test
