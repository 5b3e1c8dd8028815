#include "app/ui/screens/photo_parts.hpp"

#include "app/core/quantity.hpp"
#include "app/core/reading_access.hpp"
#include "app/ui/draw/strokes.hpp"
#include "app/ui/screens/facts.hpp"

#include <array>
#include <cmath>

namespace sillwalk::ui {

using app::MarkKind;
using engine::Field;

namespace {

TextureId whole_texture(ScreenContext& context, const std::string& sha256) {
    const app::PhotoDesk& desk = context.model.photos;
    Scratch& scratch = context.scratch;
    if (!desk.whole || desk.whole_of != sha256) return no_texture;
    if (scratch.whole_photo == sha256) return scratch.whole_texture;
    if (scratch.whole_texture != no_texture) context.ui.textures().remove(scratch.whole_texture);
    scratch.whole_photo = sha256;
    scratch.whole_texture = context.ui.textures().add(desk.whole->width, desk.whole->height, desk.whole->rgba);
    return scratch.whole_texture;
}

template <class List>
void add_places(const List& list, const std::string& start, Field any, std::vector<PhotoPlace>& out) {
    for (std::uint16_t i = 0; i < list.size(); ++i)
        out.push_back({start + list[i].id.text(), list[i].name, {any, i, 0}});
}

/// Numbers that are read at the place.
std::vector<engine::ReadingRef> readings_at(const PhotoPlace& place) {
    std::vector<engine::ReadingRef> out;
    for (int i = static_cast<int>(Field::room_air); i < static_cast<int>(Field::cart_castors); ++i) {
        const auto field = static_cast<Field>(i);
        if (app::owner_of(field) != app::owner_of(place.any.field) || !app::quantity_of(field)) continue;
        out.push_back({field, place.any.index, 0});
    }
    return out;
}

PhotoSubject reading_subject(const ScreenContext& context, const PhotoPlace& place, const engine::ReadingRef& ref) {
    const std::string reading = context.say(app::field_key(ref.field));
    return {app::entry_path(context.survey(), ref), place.name + ": " + reading, capitalised(reading), ref};
}

/// "/rise" of "/crossings/4/rise", with a number or an id in the middle.
std::string_view member_of(std::string_view path) {
    const auto id = path.find('/', 1);
    const auto start = id == std::string_view::npos ? id : path.find('/', id + 1);
    if (start == std::string_view::npos) return {};
    return path.substr(start, path.find('/', start + 1) - start);
}

Point on_screen(const Rect& picture, const app::PhotoPoint& point) {
    constexpr auto whole = static_cast<float>(app::photo_point_max);
    return {picture.x0 + picture.width() * static_cast<float>(point.x) / whole,
            picture.y0 + picture.height() * static_cast<float>(point.y) / whole};
}

void draw_ellipse(Canvas& canvas, Point a, Point b, Color color, float width) {
    constexpr std::size_t corners = 48;
    std::array<Point, corners> points;
    const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    for (std::size_t i = 0; i < corners; ++i) {
        const float angle = 6.2831853F * static_cast<float>(i) / static_cast<float>(corners);
        points[i] = {middle.x + std::cos(angle) * (b.x - a.x) / 2, middle.y + std::sin(angle) * (b.y - a.y) / 2};
    }
    canvas.polyline(points, color, width, true);
}

/// The line between two short strokes across its ends.
void draw_dimension(Canvas& canvas, Point a, Point b, Color color, float width, float stroke) {
    const Point way = b - a;
    const float length = std::hypot(way.x, way.y);
    const Point across = length > 0 ? Point{-way.y, way.x} * (stroke / length) : Point{0, stroke};
    canvas.line(a, b, color, width);
    canvas.line(a - across, a + across, color, width);
    canvas.line(b - across, b + across, color, width);
}

/// Middle of a text that touches the line from a to b but does not cover it: above it where the picture has room there.
Point beside_line(const Canvas& canvas, const Rect& picture, Point a, Point b, const std::string& text) {
    const float half_width = canvas.text_width(text, TextRole::row, Weight::medium) / 2;
    const float half_height = canvas.text_size(TextRole::row) / 2;
    const Point way = b - a;
    const float length = std::hypot(way.x, way.y);
    Point up = length > 0 ? Point{way.y, -way.x} * (1 / length) : Point{0, -1};
    if (up.y > 0) up = up * -1;
    const float reach = std::abs(up.x) * half_width + std::abs(up.y) * half_height + half_height;
    const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    const Point above = middle + up * reach;
    return picture.inset(half_width, half_height).contains(above) ? above : middle - up * reach;
}

}  // namespace

Rect fitted_rect(const Rect& box, std::int64_t width_px, std::int64_t height_px) {
    const auto width = static_cast<float>(width_px);
    const auto height = static_cast<float>(height_px);
    const float scale = std::min(box.width() / width, box.height() / height);
    const Point middle = box.center();
    return {middle.x - width * scale / 2, middle.y - height * scale / 2, middle.x + width * scale / 2,
            middle.y + height * scale / 2};
}

void forget_lost_photos(ScreenContext& context) {
    auto& known = context.scratch.photo_textures;
    const auto& there = context.model.photos.small;
    auto other = there.begin();  // both are in the order of their names
    for (auto at = known.begin(); at != known.end();) {
        while (other != there.end() && other->first < at->first) ++other;
        if (other != there.end() && other->first == at->first) {
            ++at;
            continue;
        }
        context.ui.textures().remove(at->second);
        at = known.erase(at);
    }
}

TextureId photo_texture(ScreenContext& context, const std::string& sha256, bool whole) {
    if (whole) {
        const TextureId found = whole_texture(context, sha256);
        if (found != no_texture) return found;
    }
    auto& known = context.scratch.photo_textures;
    if (const auto found = known.find(sha256); found != known.end()) return found->second;
    const auto picture = context.model.photos.small.find(sha256);
    if (picture == context.model.photos.small.end()) return no_texture;
    const app::Picture& small = *picture->second;
    return known[sha256] = context.ui.textures().add(small.width, small.height, small.rgba);
}

const std::vector<PhotoPlace>& photo_places(const ScreenContext& context) {
    return context.recall(Remembered::photo_places, 0, [&] {
        const engine::Survey& survey = context.survey();
        std::vector<PhotoPlace> out;
        add_places(survey.crossings, "/crossings/", Field::crossing_rise, out);
        add_places(survey.rooms, "/rooms/", Field::room_air, out);
        add_places(survey.carts, "/carts/", Field::cart_tare, out);
        add_places(survey.washings, "/washings/", Field::washing_strength, out);
        return out;
    });
}

bool shows(const std::string& about, const PhotoPlace& place) {
    const std::size_t size = place.path.size();
    return about.compare(0, size, place.path) == 0 && (about.size() == size || about[size] == '/');
}

const PhotoPlace* photo_place(const std::vector<PhotoPlace>& places, const std::string& about) {
    for (const PhotoPlace& place : places) {
        if (shows(about, place)) return &place;
    }
    return nullptr;
}

std::vector<PhotoSubject> photo_readings(const ScreenContext& context, const PhotoPlace& place) {
    std::vector<PhotoSubject> out;
    for (const engine::ReadingRef& ref : readings_at(place)) out.push_back(reading_subject(context, place, ref));
    return out;
}

std::optional<PhotoSubject> photo_subject(const ScreenContext& context, const PhotoPlace* place,
                                          const std::string& about) {
    if (!place) return std::nullopt;
    const std::string_view member = member_of(about);
    for (const engine::ReadingRef& ref : readings_at(*place)) {
        if (member_of(engine::reading_path(ref)) == member) return reading_subject(context, *place, ref);
    }
    return PhotoSubject{place->path, place->name, {}, {}};
}

std::string photo_name(const ScreenContext& context, std::size_t photo, const std::optional<PhotoSubject>& subject) {
    const std::string& caption = context.model.visit->photos[photo].caption;
    if (!caption.empty()) return caption;
    return subject ? subject->name : context.say("photo.number", {std::to_string(photo + 1)});
}

void draw_photo_mark(Canvas& canvas, const Theme& theme, const Rect& picture, const app::PhotoMark& mark) {
    const float unit = canvas.text_size(TextRole::caption) / 24;
    const Point from = on_screen(picture, mark.from);
    const Point to = on_screen(picture, mark.to);
    const Color ink = theme.name == ThemeName::dark ? theme.text : theme.line_of(Badge::fails);
    // A wide line of the ground under a narrow one of the ink is seen on dark and on light pictures.
    for (const bool under : {true, false}) {
        const Color color = under ? theme.surface : ink;
        const float width = (under ? 10.0F : 4.5F) * unit;
        if (mark.kind == MarkKind::arrow) arrow(canvas, from, to, color, width, (under ? 34.0F : 26.0F) * unit);
        if (mark.kind == MarkKind::circle) draw_ellipse(canvas, from, to, color, width);
        if (mark.kind == MarkKind::dimension) {
            draw_dimension(canvas, from, to, color, width, (under ? 17.0F : 14.0F) * unit);
        }
    }
    if (mark.text.empty()) return;
    plate(canvas, beside_line(canvas, picture, from, to, mark.text), mark.text,
          {TextRole::row, Weight::medium, theme.text, Align::center}, theme.surface);
}

std::string mark_text(const ScreenContext& context, const app::PhotoMark& mark) {
    constexpr const char* words[] = {"photo.mark.arrow", "photo.mark.circle", "photo.mark.dimension"};
    const std::string word = context.say(words[static_cast<std::size_t>(mark.kind)]);
    return mark.text.empty() ? word : word + " " + mark.text;
}

}  // namespace sillwalk::ui
