#include "app/ui/draw/room_box.hpp"

#include "app/ui/draw/strokes.hpp"

#include <algorithm>

namespace sillwalk::ui {

RoomTemperature room_temperature(double celsius) {
    if (celsius < 0) return RoomTemperature::freezing;
    return celsius < 25 ? RoomTemperature::cool : RoomTemperature::warm;
}

Color room_fill(const Theme& theme, RoomTemperature temperature) {
    switch (temperature) {
        case RoomTemperature::freezing:
            return theme.cold;
        case RoomTemperature::warm:
            return theme.warm;
        case RoomTemperature::cool:
            return theme.cool;
        case RoomTemperature::not_known:
            return theme.surface;
    }
    return theme.surface;
}

float room_foot(const Canvas& canvas) {
    return 34 * design_unit(canvas) + canvas.text_size(TextRole::caption);
}

namespace {

void strip(Canvas& canvas, const Theme& theme, const Rect& box, RoomTemperature kind, float u) {
    const Rect top{box.x0, box.y0, box.x1, box.y0 + 14 * u};
    switch (kind) {
        case RoomTemperature::freezing:
            hatch(canvas, top, theme.route, 9 * u, 1.8F * u);
            break;
        case RoomTemperature::warm:
            canvas.fill_rect(top, theme.warm_strip);
            break;
        case RoomTemperature::cool:
            canvas.fill_rect(top, theme.hairline);
            break;
        case RoomTemperature::not_known:
            break;
    }
}

/// The style, smaller where the text would be wider than that.
TextStyle within(const Canvas& canvas, std::string_view text, TextStyle style, float width) {
    while (style.role != TextRole::smallest && canvas.text_width(text, style.role, style.weight) > width) {
        style.role = static_cast<TextRole>(static_cast<int>(style.role) - 1);
    }
    return style;
}

}  // namespace

bool draw_room_box(Canvas& canvas, const Theme& theme, const Rect& box, const RoomBox& room) {
    const float u = design_unit(canvas);
    const float stroke = 2.5F * u * theme.line_scale;
    canvas.fill_rect(box, room_fill(theme, room.kind));
    strip(canvas, theme, box, room.kind, u);
    const float half = stroke / 2;
    const Point open_box[] = {{box.x0 + half, box.y1},
                              {box.x0 + half, box.y0 + half},
                              {box.x1 - half, box.y0 + half},
                              {box.x1 - half, box.y1}};
    if (room.kind == RoomTemperature::not_known) {
        dashed_polyline(canvas, open_box, theme.line_of(Badge::not_known), stroke, {8 * u, 6 * u});
    } else {
        canvas.polyline(open_box, theme.outline, stroke);
    }
    const float x = box.x0 + 16 * u;
    const float room_width = box.width() - 24 * u;
    const float name_line = box.y0 + 20 * u + canvas.cap_height(TextRole::row) * 1.9F;
    const TextStyle name =
        within(canvas, room.name, {TextRole::row, Weight::medium, theme.text, Align::left}, room_width);
    canvas.text({x, name_line}, room.name, name);
    const float low = box.y1 - 26 * u;
    const bool read = !room.temperature.empty();
    const std::string_view value = read ? std::string_view(room.temperature) : std::string_view("?");
    canvas.text({x, low}, value, {TextRole::value, Weight::medium, theme.text, Align::left});
    float end = x + canvas.text_width(value, TextRole::value, Weight::medium) + 6 * u;
    if (read) {
        canvas.text({end, low}, room.unit, {TextRole::body, Weight::regular, theme.text2, Align::left});
        end += canvas.text_width(room.unit, TextRole::body, Weight::regular) + 8 * u;
    }
    const float note_line = box.y1 + 30 * u + canvas.cap_height(TextRole::caption) + 8 * u;
    const float stay_start = box.x1 - 16 * u - canvas.text_width(room.stay, TextRole::caption, Weight::regular);
    const TextStyle small{TextRole::caption, Weight::regular, theme.text2, Align::left};
    canvas.line({box.x0, box.y1}, {box.x1, box.y1}, theme.text, 3.5F * u * theme.line_scale);
    draw_wetness(canvas, theme, x, box.x1 - 12 * u, box.y1 + 18 * u, room.wetness);
    // A narrow box has the stay under the floor, beside the note or below it.
    const float beside = stay_start - 10 * u - x;
    const bool above = stay_start > end;
    const bool shares = !above && canvas.text_width(room.note, TextRole::smallest, Weight::regular) <= beside;
    const float note_width = shares ? beside : room_width;
    const TextStyle note = within(canvas, room.note, small, note_width);
    canvas.text({x, note_line}, room.note, note);
    const float stay_line = above ? low : shares ? note_line : note_line + 1.15F * canvas.text_size(TextRole::caption);
    canvas.text({stay_start, stay_line}, room.stay, small);
    return canvas.text_width(room.name, name.role, name.weight) <= room_width &&
           canvas.text_width(room.note, note.role, note.weight) <= note_width;
}

}  // namespace sillwalk::ui
