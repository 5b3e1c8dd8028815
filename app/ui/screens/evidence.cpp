// The photos of the visit by place, and the files from which they are taken.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/photo_parts.hpp"

#include <algorithm>

namespace sillwalk::ui {

using app::Screen;
using app::VisitPhoto;

namespace {

/// Photos of one place, in their order.
struct Group {
    const PhotoPlace* place = nullptr;  ///< null: loose
    std::vector<std::uint16_t> photos;
};

std::vector<Group> made_groups(const ScreenContext& context) {
    const auto& places = photo_places(context);
    const auto& photos = context.model.visit->photos;
    std::vector<Group> groups = {{nullptr, {}}};  // the loose ones first: they wait to be told what they show
    const auto count = static_cast<std::uint16_t>(photos.size());
    for (std::uint16_t i = 0; i < count; ++i) {
        const PhotoPlace* place = photo_place(places, photos[i].about);
        const auto same = [&](const Group& group) { return group.place == place; };
        auto found = std::find_if(groups.begin(), groups.end(), same);
        if (found == groups.end()) found = groups.insert(groups.end(), {place, {}});
        found->photos.push_back(i);
    }
    return groups;
}

struct PhotoWords {
    std::string label;  ///< all that it says
    std::string shown;  ///< below it: its place stands above its photos already
};

PhotoWords made_words(const ScreenContext& context, const PhotoPlace* place, std::uint16_t index) {
    const VisitPhoto& photo = context.model.visit->photos[index];
    const auto subject = photo_subject(context, place, photo.about);
    PhotoWords words{photo_name(context, index, subject), photo.caption};
    if (context.model.photos.unreadable.count(photo.sha256) != 0) {
        words.label += ", " + context.say("evidence.unreadable");
    }
    for (const app::PhotoMark& mark : photo.marks) words.label += ", " + mark_text(context, mark);
    if (words.shown.empty()) {
        const bool reading = subject && subject->ref;
        words.shown = reading ? subject->reading : context.say("photo.number", {std::to_string(index + 1)});
    }
    return words;
}

void photo_cell(ScreenContext& context, const PhotoPlace* place, std::uint16_t index, Rect rect) {
    Ui& ui = context.ui;
    const VisitPhoto& photo = context.model.visit->photos[index];
    const PhotoWords& words =
        context.recall(Remembered::photo_words, index, [&] { return made_words(context, place, index); });
    const Rect line = rect.cut_bottom(ui.metrics().line_height(TextRole::caption), ui.metrics().dp(4));
    const TextureId texture = photo_texture(context, photo.sha256, false);
    if (ui.photo("evidence.photo." + std::to_string(index + 1), words.label, texture, rect)) {
        context.act(app::GoTo{{Screen::photo, index}});
    }
    const std::string shown = fitted(ui, words.shown, line.width(), TextRole::caption, Weight::regular);
    ui.text_at({line.x0, line.y1 - ui.metrics().dp(6)}, shown,
               {TextRole::caption, Weight::regular, ui.theme().text, Align::left});
}

void grid(ScreenContext& context, const Group& group, float width) {
    Ui& ui = context.ui;
    const float wanted = ui.metrics().dp(230);
    const auto columns = static_cast<std::size_t>(std::clamp(width / wanted, 2.0F, 6.0F));
    const float height = width / static_cast<float>(columns) * 0.75F + ui.metrics().line_height(TextRole::caption);
    for (std::size_t start = 0; start < group.photos.size(); start += columns) {
        ui.block([&] {
            const auto cells = ui.cells(std::vector<float>(columns, 1.0F), height);
            for (std::size_t i = start; i < std::min(start + columns, group.photos.size()); ++i) {
                photo_cell(context, group.place, group.photos[i], ui.place(height));
            }
        });
    }
}

void file_rows(ScreenContext& context, const app::PhotoFiles& files) {
    Ui& ui = context.ui;
    for (std::size_t i = 0; i < files.names.size(); ++i) {
        const std::string& name = files.names[i];
        RowOptions options;
        options.icon = Icon::camera;
        const bool coming = context.model.photos.on_their_way.count(name) != 0;
        if (files.taken.count(name) != 0) options.detail = context.say("evidence.taken");
        if (coming) options.detail = context.say("evidence.coming");
        options.selected = files.taken.count(name) != 0;
        options.enabled = !coming;
        const std::string shown =
            fitted(ui, name, ui.remaining().width() - ui.metrics().dp(150), TextRole::row, Weight::medium);
        if (ui.row("evidence.file." + std::to_string(i + 1), shown, options)) {
            context.act(app::PhotoAction(app::TakePhotoFile{name}));
        }
    }
}

}  // namespace

void draw_evidence(ScreenContext& context, const Rect& area) {
    Ui& ui = context.ui;
    forget_lost_photos(context);
    const auto& groups = context.recall(Remembered::photo_groups, 0, [&] { return made_groups(context); });
    const auto& photos = context.model.visit->photos;
    const auto list = ui.scroll("evidence", area);
    if (photos.empty()) {
        ui.text(context.say("evidence.none"), TextRole::body, Weight::regular, {}, "evidence.finding");
    } else {
        ui.finding(context.say("evidence.count",
                               {std::to_string(photos.size()), std::to_string(groups.front().photos.size())}),
                   "evidence.finding");
    }
    const bool camera = context.model.has_camera;
    if (camera && ui.button("evidence.camera", context.say("evidence.camera"),
                            {.style = ButtonStyle::primary, .icon = Icon::camera})) {
        context.act(app::PhotoAction(app::OpenCamera{}));
    }
    if (ui.button("evidence.add", context.say("evidence.add"),
                  {.style = camera ? ButtonStyle::plain : ButtonStyle::primary, .icon = Icon::camera})) {
        context.act(app::PhotoAction(app::OpenPhotoFiles{}));
    }
    for (const Group& group : groups) {
        if (group.photos.empty()) continue;
        ui.block([&] { ui.title(group.place ? group.place->name : context.say("evidence.loose")); });
        grid(context, group, area.width());
    }
}

void draw_photo_files_sheet(ScreenContext& context) {
    if (!context.model.photos.files) return;
    Ui& ui = context.ui;
    const app::PhotoFiles& files = *context.model.photos.files;
    bool closed = false;
    {
        const auto sheet = ui.sheet("photo_files", context.say("evidence.choose"), closed);
        const auto list = ui.scroll("photo_files.list", ui.remaining());
        if (!files.listed) {
            ui.text(context.say("evidence.listing"));
        } else if (files.folder.empty()) {
            ui.text(context.say("evidence.no_folder"));
        } else if (files.unreadable) {
            ui.text(context.say("evidence.folder_failed", {files.folder}));
        } else if (files.names.empty()) {
            ui.text(context.say("evidence.no_files", {files.folder}));
        } else {
            ui.caption(context.say("evidence.newest_first"));
            file_rows(context, files);
        }
    }
    if (closed) context.act(app::PhotoAction(app::ClosePhotoFiles{}));
}

}  // namespace sillwalk::ui
