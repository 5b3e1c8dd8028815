#include "app/ui/ui_impl.hpp"

#include <algorithm>

namespace sillwalk::ui {

namespace {

bool continues(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

std::size_t before(const std::string& text, std::size_t at) {
    if (at == 0) return 0;
    --at;
    while (at > 0 && continues(text[at])) --at;
    return at;
}
std::size_t after(const std::string& text, std::size_t at) {
    if (at >= text.size()) return text.size();
    ++at;
    while (at < text.size() && continues(text[at])) ++at;
    return at;
}

/// Applies what was typed to the buffer. `done` becomes true when the person ended the entry.
bool apply_keys(Ui::Impl& ui, std::string& buffer, const TextFieldOptions& o, bool& done) {
    const std::string old = buffer;
    ui.caret = std::min(ui.caret, buffer.size());
    if (!ui.input.text.empty() && buffer.size() + ui.input.text.size() <= o.max_bytes) {
        buffer.insert(ui.caret, ui.input.text);
        ui.caret += ui.input.text.size();
    }
    for (const Key key : ui.unused_keys) {
        switch (key) {
            case Key::backspace: {
                const std::size_t from = before(buffer, ui.caret);
                buffer.erase(from, ui.caret - from);
                ui.caret = from;
                break;
            }
            case Key::erase:
                buffer.erase(ui.caret, after(buffer, ui.caret) - ui.caret);
                break;
            case Key::left:
                ui.caret = before(buffer, ui.caret);
                break;
            case Key::right:
                ui.caret = after(buffer, ui.caret);
                break;
            case Key::home:
                ui.caret = 0;
                break;
            case Key::end:
                ui.caret = buffer.size();
                break;
            case Key::enter:
                if (o.several_lines) {
                    buffer.insert(ui.caret++, 1, '\n');
                } else {
                    done = true;
                }
                break;
            case Key::escape:
                done = true;
                break;
            default:
                break;
        }
    }
    ui.unused_keys.clear();
    return buffer != old;
}

/// Line and byte within it where the caret stands, found by walking the wrapped lines through the buffer.
Point caret_position(const Canvas& canvas, const std::vector<TextLine>& lines, const std::string& buffer,
                     std::size_t caret) {
    std::size_t at = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::size_t end = at + lines[i].text.size();
        const bool last = i + 1 == lines.size();
        if (caret <= end || last) {
            const std::string_view shown = lines[i].text.substr(0, caret - std::min(at, caret));
            return {canvas.text_width(shown, TextRole::body, Weight::regular), static_cast<float>(i)};
        }
        at = end;
        if (at < buffer.size() && (buffer[at] == ' ' || buffer[at] == '\n')) ++at;
    }
    return {};
}

}  // namespace

TextFieldResult Ui::text_field(std::string_view id, std::string& buffer, const TextFieldOptions& o) {
    Impl& ui = *impl_;
    const Metrics& m = ui.metrics;
    const Theme& t = ui.theme();
    const float label_height = o.label.empty() ? 0 : m.line_height(TextRole::caption);
    const float line = m.line_height(TextRole::body);
    TextFieldResult result;

    const bool was_editing = ui.editing == id;
    bool done = false;
    if (was_editing) result.changed = apply_keys(ui, buffer, o, done);

    Rect rect = o.rect;
    const float inner = (rect.empty() ? ui.place_width() : rect.width()) - 2 * m.pad;
    const std::vector<TextLine> lines = ui.wrap(buffer, TextRole::body, Weight::regular, inner).lines;
    if (rect.empty()) {
        const float rows = std::max(o.several_lines ? 3.0F : 1.0F, static_cast<float>(lines.size()));
        rect = ui.place(std::max(m.target_size(TargetClass::row), label_height + rows * line + m.dp(20)));
    }
    Target target{std::string(id), join_label({o.label, buffer.empty() ? o.hint : buffer}), rect};
    target.enabled = o.enabled;
    target.selected = was_editing;
    target.label_clipped = static_cast<float>(lines.size()) * line + label_height > rect.height();
    const Interaction did = ui.interact(std::move(target));
    if (did.tapped && !was_editing) {
        ui.editing = id;
        ui.caret = buffer.size();
        ui.extra_frame = true;
    }
    const bool tapped_elsewhere = ui.touch.tap.has_value() && !did.tapped;
    if (was_editing && (done || tapped_elsewhere)) {
        ui.editing.clear();
        result.committed = true;
    }
    const bool editing = ui.editing == id;
    result.editing = editing;
    if (editing) {
        ui.editing_shown = true;
        ui.editing_rect = rect;
    }

    Canvas& canvas = ui.canvas();
    canvas.fill_rect(rect, t.surface, m.radius);
    canvas.stroke_rect(rect, editing ? t.focus : t.outline, editing ? m.focus : m.outline, m.radius);
    const float x = rect.x0 + m.pad;
    float y = rect.y0 + m.dp(8);
    if (!o.label.empty()) {
        canvas.text_centered({x, y + label_height / 2}, o.label,
                             {TextRole::caption, Weight::regular, t.text2, Align::left});
        y += label_height;
    }
    ui.push_clip(rect);
    const bool single = lines.size() == 1 && !o.several_lines;
    const float top = single ? (y + rect.y1 - m.dp(8)) / 2 - line / 2 : y;
    if (buffer.empty()) {
        canvas.text_centered({x, top + line / 2}, o.hint,
                             {TextRole::body, Weight::regular, t.disabled_text, Align::left});
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
        canvas.text_centered({x, top + line * (static_cast<float>(i) + 0.5F)}, lines[i].text,
                             {TextRole::body, Weight::regular, o.enabled ? t.text : t.disabled_text, Align::left});
    }
    if (editing) {
        const Point at = caret_position(canvas, lines, buffer, ui.caret);
        const float cy = top + line * at.y;
        canvas.fill_rect({x + at.x, cy + line * 0.1F, x + at.x + m.dp(2.5F), cy + line * 0.9F}, t.focus);
    }
    ui.pop_clip();
    ui.focus_ring(rect, did.focused && !editing);
    return result;
}

}  // namespace sillwalk::ui
