#include "app/ui/screens/parts.hpp"

#include <utility>

namespace sillwalk::ui {

using app::Part;
using app::TextField;

namespace {

bool is_long(TextField field) {
    return field == TextField::notes || field == TextField::complaint || field == TextField::room_notes ||
           field == TextField::crossing_notes || field == TextField::cart_notes;
}

}  // namespace

void do_build(const ScreenContext& context, app::BuildAction action) {
    context.act(app::Action(std::move(action)));
}

void no_wheel_judged(ScreenContext& context) {
    context.ui.title(context.say(context.model.answer ? "answer.none" : "answer.working"));
    if (!context.survey().carts.empty()) return;
    context.ui.text(context.say("loads.none"));
    if (context.ui.button("loads.add", context.say("loads.add"), {.style = ButtonStyle::primary, .icon = Icon::plus})) {
        do_build(context, app::OpenPick{{app::PickKind::new_cart, 0, 0}});
    }
}

void text_row(ScreenContext& context, const app::TextRef& ref) {
    const auto kept = app::read_text(context.survey(), ref);
    if (!kept) return;
    const std::string word = app::text_field_word(ref.field);
    const std::string id = "text." + word;
    TextEdit& edit = context.scratch.edit;
    const bool mine = edit.id == id && edit.ref == ref;
    std::string shown = mine ? edit.buffer : *kept;
    TextFieldOptions options;
    options.label = context.say("text." + word);
    options.hint = context.say("text.hint");
    options.several_lines = is_long(ref.field);
    const TextFieldResult did = context.ui.text_field(id, shown, options);
    if (did.changed) {
        edit = {id, shown, ref};
        do_build(context, app::TypeText{ref, shown});
    }
    const bool left = did.committed || !did.editing;
    if ((mine || did.changed) && left) {
        do_build(context, app::SetText{ref, shown});
        edit = {};
    }
}

void part_tools(ScreenContext& context, Part part, std::uint16_t index) {
    Ui& ui = context.ui;
    const auto count = app::part_count(context.survey(), part);
    {
        const auto cells = ui.cells({1, 1});
        if (ui.button("part.up", context.say("part.up"), {.icon = Icon::up, .enabled = index > 0})) {
            do_build(context, app::MovePart{part, index, -1});
        }
        if (ui.button("part.down", context.say("part.down"), {.icon = Icon::down, .enabled = index + 1U < count})) {
            do_build(context, app::MovePart{part, index, 1});
        }
    }
    const auto cells = ui.cells({1, 1});
    if (ui.button("part.duplicate", context.say("part.duplicate"), {.icon = Icon::plus})) {
        do_build(context, app::DuplicatePart{part, index});
    }
    if (ui.button("part.delete", context.say("part.delete"), {.style = ButtonStyle::danger, .icon = Icon::erase})) {
        do_build(context, app::DeletePart{part, index});
    }
}

void part_end(ScreenContext& context, Part part, std::uint16_t index) {
    Ui& ui = context.ui;
    ui.space(ui.metrics().gap);
    switch (part) {
        case Part::room:
            text_row(context, {TextField::room_name, index});
            text_row(context, {TextField::room_notes, index});
            break;
        case Part::crossing:
            text_row(context, {TextField::crossing_name, index});
            text_row(context, {TextField::crossing_notes, index});
            break;
        case Part::washing:
            text_row(context, {TextField::washing_name, index});
            break;
        case Part::cart:
            text_row(context, {TextField::cart_name, index});
            text_row(context, {TextField::cart_notes, index});
            break;
    }
    part_tools(context, part, index);
}

}  // namespace sillwalk::ui
