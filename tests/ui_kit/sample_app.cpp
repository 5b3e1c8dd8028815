#include "tests/ui_kit/sample_app.hpp"

#include <vector>

namespace sillwalk::test {

using namespace ui;

void SampleApp::note_tap(const std::string& id, bool tapped) {
    if (tapped) ++taps[id];
}

FrameOutput SampleApp::frame(const FrameInput& input) {
    kit.begin(input, settings);
    const Regions regions = kit.regions(true);
    if (screen == 0) crossing(regions.content);
    if (screen == 1) long_list(regions.content);
    if (screen == 2) controls(regions.content);
    chrome();
    if (sheet_open) measure();
    note_tap("toast.action", kit.toast("toast", "Deleted crossing 5, freezer door", toast_since, {.action = "Undo"}));
    return kit.end();
}

void SampleApp::chrome() {
    const std::vector<RailItem> items = {{"overview", "Overview", Icon::overview},
                                         {"route", "Route", Icon::route},
                                         {"loads", "Loads", Icon::loads},
                                         {"washing", "Washing", Icon::washing},
                                         {"answer", "Answer", Icon::answer, true},
                                         {"evidence", "Evidence", Icon::evidence},
                                         {"hand_over", "Hand-over", Icon::hand_over}};
    const std::vector<RailItem> few = {items[1], items[2], items[4], {"more", "More", Icon::more}};
    if (const auto tab = kit.rail("nav", items, 1, "Sillwalk")) ++taps["nav"];
    if (const auto tab = kit.bottom_bar("nav", few, 0)) ++taps["nav"];
    TopBarOptions top{.subtitle = "Crossing 5 · Holding freezer to Dock", .status = "Saved 14:03"};
    top.actions = {{"undo", "Undo", Icon::undo}, {"redo", "Redo", Icon::redo, false}, {"theme", "Theme", Icon::theme}};
    if (kit.metrics().compact()) top.actions.erase(top.actions.begin() + 1, top.actions.end());
    if (const auto action = kit.top_bar("Freezer door sill", top)) ++taps["top"];
    const AnswerBarOptions answer{.headline = "200 mm urethane",
                                  .reason = "Freezer sill from rest: 1\u2009100 of 450\u2009N. A 1:5 lip would hold.",
                                  .badge = Badge::fails};
    note_tap("answer", kit.answer_bar("answer", answer));
}

void SampleApp::crossing(const Rect& content) {
    const bool one = kit.metrics().width_class != WidthClass::expanded;
    const std::vector<Rect> parts = one ? std::vector<Rect>{content, content} : kit.columns(content, {8, 4});
    const auto readings = [&] {
        const std::vector<ChoiceItem> wheels = {{"present", "Present", "125 mm"}, {"first", "First choice", "200 mm"}};
        if (const auto chosen = kit.choice("wheel", wheels, unit)) {
            unit = static_cast<int>(*chosen);
            ++taps["wheel"];
        }
        const auto row = [&](const std::string& id, std::string_view name, const RowOptions& o) {
            note_tap(id, kit.row(id, name, o));
        };
        row("crossing.rise", "Rise", {.value = "19", .unit = "mm", .detail = "± 1, ¾ in tape"});
        row("crossing.gap", "Gap", {.value = "32", .unit = "mm", .detail = "± 1, tape"});
        row("crossing.load", "Front pair", {.value = "155", .unit = "kg", .detail = "± 8, scale"});
        row("crossing.lip", "Lip edge",
            {.value = "square", .detail = "by eye", .mark = Badge::by_eye, .value_role = TextRole::section});
        row("crossing.speed", "Speed", {.detail = "at the sill", .badge = Badge::not_known, .dashed = true});
    };
    const auto picture = [&] {
        auto card = kit.card();
        kit.finding("From rest, two people cannot push it onto the sill.", "crossing.finding");
        for (const Badge state : {Badge::holds, Badge::tight, Badge::fails, Badge::not_known, Badge::by_eye})
            kit.badge(state);
        kit.caption("Same outcome across tolerances");
    };
    if (one) {
        auto list = kit.scroll("crossing", content);
        picture();
        readings();
        return;
    }
    {
        auto left = kit.column(parts[0]);
        picture();
    }
    auto right = kit.scroll("crossing", parts[1]);
    readings();
}

void SampleApp::long_list(const Rect& content) {
    const auto row = [&](std::size_t i) {
        ++rows_built;
        const std::string id = "row." + std::to_string(i);
        note_tap(id, kit.row(id, "Doorway " + std::to_string(i),
                             {.detail = "not read", .mark = Badge::not_known, .chevron = true}));
    };
    kit.list("rows", content, rows, row, {.top_label = "Top", .end_label = "End"});
}

void SampleApp::controls(const Rect& content) {
    auto area = kit.scroll("controls", content);
    if (const auto moved =
            kit.slider("speed", slider, {.step = 0.05, .label = "Speed", .value_text = "0.4 m/s", .limit = 0.8}))
        slider = *moved;
    const TextFieldResult typed =
        kit.text_field("note", note, {.label = "Note", .hint = "What you saw", .several_lines = false});
    note_tap("note.committed", typed.committed);
    const std::vector<ChipItem> chips = {
        {"tape", "± 0.8 tape", true}, {"gloved", "± 1 gloved"}, {"rough", "± 3 rough"}, {"eye", "by eye"}};
    if (const auto chip = kit.chips("method", chips)) ++taps["chip"];
    {
        auto pair = kit.cells({1, 1});
        note_tap("again", kit.button("again", "Measure again", {.icon = Icon::camera}));
        note_tap("send", kit.button("send", "Send", {.style = ButtonStyle::primary}));
    }
    note_tap("erase", kit.button("erase", "Erase survey",
                                 {.style = ButtonStyle::danger, .target_class = TargetClass::irreversible}));
    note_tap("off", kit.button("off", "Not available", {.detail = "needs a signal", .enabled = false}));
    if (kit.key("clear", "", {.icon = Icon::backspace, .on_hold = [&] { ++longs; }})) ++taps["clear"];
    if (kit.button("open", "Measure the rise")) sheet_open = true;
}

void SampleApp::measure() {
    bool closed = false;
    const bool phone = kit.metrics().width_class != WidthClass::expanded;
    auto sheet = kit.sheet("measure", "Rise of the sill", closed,
                           {.place = SheetPlace::content, .subtitle = "Crossing 5, freezer door", .modal = phone});
    if (closed) sheet_open = false;
    const float height = kit.metrics().target_size(TargetClass::key);
    const std::vector<std::vector<std::string>> digits = {
        {"1", "2", "3"}, {"4", "5", "6"}, {"7", "8", "9"}, {"±", "0", "."}};
    int sixteenths = 1;
    for (const auto& line : digits) {
        auto row = kit.cells(std::vector<float>(phone ? 3 : 8, 1), height);
        for (const std::string& digit : line) {
            const auto shortcut = digit.size() == 1 ? static_cast<char32_t>(digit[0]) : U'\0';
            if (kit.key("key." + digit, digit, {.shortcut = shortcut})) entered += digit;
        }
        for (int i = 0; i < 4 && !phone; ++i, ++sixteenths) {
            const int k = sixteenths % 16;
            note_tap("fraction",
                     kit.fraction_key("fraction." + std::to_string(k), k, "no fraction", {.selected = k == 12}));
        }
        if (!phone) kit.key("next." + line[0], "Next", {.detail = "gap", .primary = true, .role = TextRole::row});
    }
}

}  // namespace sillwalk::test
