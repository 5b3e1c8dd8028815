// One photo: marks are drawn on it with a finger, and it is told what it shows.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/photo_parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sillwalk::ui {

using app::MarkKind;
using app::PhotoAction;
using app::PhotoMark;
using app::PhotoPoint;
using app::PhotoTextRef;
using app::VisitPhoto;

namespace {

constexpr std::array<std::pair<MarkKind, const char*>, 3> tools = {
    {{MarkKind::arrow, "arrow"}, {MarkKind::circle, "circle"}, {MarkKind::dimension, "dimension"}}};
constexpr std::array<const char*, 5> captions = {"photo.caption.sill", "photo.caption.gap", "photo.caption.wheel",
                                                 "photo.caption.floor", "photo.caption.plate"};

void do_photo(const ScreenContext& context, PhotoAction action) {
    context.act(app::Action(std::move(action)));
}

PhotoPoint in_picture(const Rect& picture, Point at) {
    constexpr auto whole = static_cast<float>(app::photo_point_max);
    const auto part = [&](float value, float start, float size) {
        return static_cast<int>(std::lround(std::clamp((value - start) / size, 0.0F, 1.0F) * whole));
    };
    return {part(at.x, picture.x0, picture.width()), part(at.y, picture.y0, picture.height())};
}

/// A tap draws too: a mark of usual size at that point.
std::pair<Point, Point> tapped_mark(MarkKind kind, const Rect& picture, Point at) {
    const float size = std::min(picture.width(), picture.height()) * 0.12F;
    if (kind == MarkKind::arrow) return {{at.x - size * 1.5F, at.y - size * 1.5F}, at};
    if (kind == MarkKind::circle) return {{at.x - size, at.y - size}, {at.x + size, at.y + size}};
    return {{at.x - size * 1.5F, at.y}, {at.x + size * 1.5F, at.y}};
}

/// A dimension on the photo of a reading begins with the reading's value.
std::string first_text(const ScreenContext& context, MarkKind kind, const std::optional<PhotoSubject>& subject) {
    if (kind != MarkKind::dimension || !subject || !subject->ref) return {};
    return value_text(context, *subject->ref);
}

/// What the finger draws, kept when it lifts. A finger that rests sends nothing and still holds its mark.
void draw_with_tool(ScreenContext& context, const Interaction& did, const Rect& picture, std::uint16_t index,
                    PhotoMark mark) {
    auto& stroke = context.scratch.mark_stroke;
    if (did.dragging && !stroke) stroke = {did.at - did.drag_delta, did.at};
    if (did.dragging) stroke->second = did.at;
    if (!did.dragging && !did.pressed) stroke.reset();
    if (did.tapped) stroke = tapped_mark(mark.kind, picture, did.at);
    if (!stroke) return;
    mark.from = in_picture(picture, stroke->first);
    mark.to = in_picture(picture, stroke->second);
    draw_photo_mark(context.ui.canvas(), context.ui.theme(), picture, mark);
    if (!did.drag_ended && !did.tapped) return;
    if (mark.from != mark.to) do_photo(context, app::AddPhotoMark{index, std::move(mark)});
    stroke.reset();
}

void picture_area(ScreenContext& context, const Rect& box, std::uint16_t index,
                  const std::optional<PhotoSubject>& subject) {
    Ui& ui = context.ui;
    const VisitPhoto& photo = context.model.visit->photos[index];
    const auto tool = context.model.photos.tool;
    const Rect picture = fitted_rect(box, photo.width_px, photo.height_px);
    forget_lost_photos(context);
    const TextureId texture = photo_texture(context, photo.sha256, true);
    std::string label = photo_name(context, index, subject);
    const bool unreadable = context.model.photos.unreadable.count(photo.sha256) != 0;
    if (texture == no_texture) label += ", " + context.say(unreadable ? "evidence.unreadable" : "evidence.coming");
    for (const PhotoMark& mark : photo.marks) label += ", " + mark_text(context, mark);
    ui.canvas().fill_rect(box, ui.theme().muted_fill, ui.metrics().radius);
    ui.image(texture, picture);
    const Interaction did =
        ui.area("photo.picture", label, box, TargetClass::key, tool ? DragMode::direct : DragMode::none);
    ui.canvas().push_clip(box);
    for (const PhotoMark& mark : photo.marks) draw_photo_mark(ui.canvas(), ui.theme(), picture, mark);
    if (tool) draw_with_tool(context, did, picture, index, {*tool, {}, {}, first_text(context, *tool, subject)});
    ui.canvas().pop_clip();
}

void tool_choice(ScreenContext& context) {
    std::vector<ChoiceItem> items;
    int selected = -1;
    for (std::size_t i = 0; i < tools.size(); ++i) {
        items.push_back({tools[i].second, context.say(std::string("photo.mark.") + tools[i].second), {}, true});
        if (context.model.photos.tool == tools[i].first) selected = static_cast<int>(i);
    }
    const auto hit = context.ui.choice("photo.tool", items, selected);
    if (!hit) return;
    // The one in hand is laid down again.
    const bool again = static_cast<int>(*hit) == selected;
    do_photo(context, app::PickPhotoTool{again ? std::nullopt : std::optional(tools[*hit].first)});
}

void text_field(ScreenContext& context, const std::string& id, const PhotoTextRef& ref, const std::string& kept,
                const std::string& label) {
    PhotoTextEdit& edit = context.scratch.photo_edit;
    const bool mine = edit.id == id && edit.ref == ref;
    std::string shown = mine ? edit.buffer : kept;
    TextFieldOptions options;
    options.label = label;
    options.hint = context.say("text.hint");
    options.max_bytes = 200;
    const TextFieldResult did = context.ui.text_field(id, shown, options);
    if (did.changed) {
        edit = {id, shown, ref};
        do_photo(context, app::TypePhotoText{ref, shown});
    }
    if ((!mine && !did.changed) || (!did.committed && did.editing)) return;
    do_photo(context, app::SetPhotoText{ref, shown});
    edit = {};
}

void mark_rows(ScreenContext& context, std::uint16_t index) {
    Ui& ui = context.ui;
    const VisitPhoto& photo = context.model.visit->photos[index];
    for (std::uint16_t i = 0; i < photo.marks.size(); ++i) {
        if (photo.marks[i].kind != MarkKind::dimension) continue;
        const std::string number = std::to_string(i + 1);
        text_field(context, "photo.dimension." + number, {index, i}, photo.marks[i].text,
                   context.say("photo.dimension_text", {number}));
    }
    if (photo.marks.empty()) return;
    if (ui.button("photo.remove_mark", context.say("photo.remove_mark"), {.icon = Icon::undo})) {
        do_photo(context, app::RemoveLastMark{index});
    }
}

void caption_part(ScreenContext& context, std::uint16_t index) {
    const std::string& caption = context.model.visit->photos[index].caption;
    std::vector<ChipItem> chips;
    for (const char* key : captions) {
        const std::string word = context.say(key);
        chips.push_back({std::string(key).substr(14), word, word == caption, true});
    }
    text_field(context, "photo.caption", {index, {}}, caption, context.say("photo.caption"));
    if (const auto hit = context.ui.chips("photo.caption_chip", chips)) {
        do_photo(context, app::SetPhotoText{{index, {}}, chips[*hit].selected ? "" : chips[*hit].label});
    }
}

void tools_part(ScreenContext& context, std::uint16_t index, const std::optional<PhotoSubject>& subject) {
    Ui& ui = context.ui;
    ui.caption(context.say(context.model.photos.tool ? "photo.draw_now" : "photo.choose_mark"));
    tool_choice(context);
    RowOptions about;
    about.detail = subject ? subject->name : context.say("photo.about.loose");
    about.dashed = !subject;
    about.chevron = true;
    if (ui.row("photo.about", context.say("photo.about"), about)) do_photo(context, app::OpenPhotoBinding{});
    mark_rows(context, index);
    caption_part(context, index);
    if (ui.button("photo.delete", context.say("photo.delete"), {.style = ButtonStyle::danger, .icon = Icon::erase})) {
        do_photo(context, app::DeletePhoto{index});
    }
}

/// A place, and its readings below it once a photo shows it or one of them.
void place_rows(ScreenContext& context, std::uint16_t index, const PhotoPlace& place, const std::string& number) {
    const std::string& about = context.model.visit->photos[index].about;
    const bool open = shows(about, place);
    if (context.ui.row("photo_about.place." + number, place.name, {.selected = about == place.path})) {
        do_photo(context, app::BindPhoto{index, place.path});
    }
    if (!open) return;
    for (const PhotoSubject& subject : photo_readings(context, place)) {
        RowOptions options;
        options.framed = false;
        options.selected = about == subject.path;
        options.detail = value_text(context, *subject.ref);
        if (!context.ui.row("photo_about." + reading_id(*subject.ref), subject.reading, options)) continue;
        do_photo(context, app::BindPhoto{index, subject.path});
        do_photo(context, app::ClosePhotoBinding{});
    }
}

}  // namespace

void draw_photo(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    const std::uint16_t index = context.model.spot.index;
    if (index >= context.model.visit->photos.size()) return;
    const std::string& about = context.model.visit->photos[index].about;
    const auto& places = photo_places(context);
    const auto subject = photo_subject(context, photo_place(places, about), about);
    if (ui.metrics().width_class == WidthClass::expanded) {
        const auto columns = ui.columns(area, {700, 464}, true);
        picture_area(context, columns[0], index, subject);
        const auto list = ui.scroll("photo." + std::to_string(index), columns[1]);
        return tools_part(context, index, subject);
    }
    Rect rest = area;
    const Rect picture = rest.cut_top(std::min(area.width() * 0.8F, area.height() * 0.5F), ui.metrics().gap);
    picture_area(context, picture, index, subject);
    const auto list = ui.scroll("photo." + std::to_string(index), rest);
    tools_part(context, index, subject);
}

void draw_photo_binding_sheet(ScreenContext& context) {
    if (!context.model.photos.binding || context.model.spot.screen != app::Screen::photo) return;
    const std::uint16_t index = context.model.spot.index;
    if (index >= context.model.visit->photos.size()) return;
    Ui& ui = context.ui;
    bool closed = false;
    {
        const auto sheet = ui.sheet("photo_about", context.say("photo.about"), closed);
        const auto list = ui.scroll("photo_about.list", ui.remaining());
        std::size_t number = 0;
        for (const PhotoPlace& place : photo_places(context)) {
            place_rows(context, index, place, std::to_string(++number));
        }
        const bool bound = !context.model.visit->photos[index].about.empty();
        if (ui.button("photo_about.loose", context.say("photo.about.loose"), {.enabled = bound})) {
            do_photo(context, app::BindPhoto{index, ""});
        }
    }
    if (closed) do_photo(context, app::ClosePhotoBinding{});
}

}  // namespace sillwalk::ui
