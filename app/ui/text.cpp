#include "app/ui/draw/outcome_mark.hpp"
#include "app/ui/fonts.hpp"
#include "app/ui/ui_impl.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

constexpr const char* ellipsis = "\xE2\x80\xA6";

TextRole smaller(TextRole role) {
    return role == TextRole::smallest ? role : static_cast<TextRole>(static_cast<int>(role) - 1);
}

}  // namespace

std::string join_label(std::initializer_list<std::string_view> parts) {
    std::string out;
    for (const std::string_view part : parts) {
        if (part.empty()) continue;
        if (!out.empty()) out += ' ';
        out += part;
    }
    return out;
}

/// Every line is a part of the text, since only the blanks between words fall away; so each letter is measured once.
WrappedText Ui::Impl::wrap(std::string_view text, TextRole role, Weight weight, float width) const {
    const Fonts& fonts = painter.fonts();
    const float most = width + 0.5F;
    WrappedText out;
    std::size_t begin = 0;  // of the line that grows
    std::size_t done = 0;   // its end
    float taken = 0;        // its width
    const auto line = [&] { return text.substr(begin, done - begin); };
    const auto width_of = [&](std::size_t from, std::size_t to, float before) {
        return fonts.text_width(text.substr(from, to - from), role, weight, before);
    };
    for (std::size_t i = 0; i <= text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", i), text.size());
        const bool joins = done > begin;
        const float joined = joins ? width_of(done, end, taken) : width_of(i, end, 0);
        const bool breaks = joins && joined > most;
        if (breaks) out.lines.push_back({line(), false});
        if (breaks || !joins) begin = i;
        taken = breaks ? width_of(i, end, 0) : joined;
        done = end;
        while (taken > most) {  // one word wider than the box: break within it
            out.breaks_word = true;
            const std::size_t cut = std::max<std::size_t>(1, fonts.fitting_prefix(line(), role, weight, width));
            if (cut >= line().size()) break;
            out.lines.push_back({line().substr(0, cut), false});
            begin += cut;
            taken = width_of(begin, done, 0);
        }
        i = end + 1;
        if (end < text.size() && text[end] == '\n') {
            out.lines.push_back({line(), false});
            begin = done = i;
        }
    }
    out.lines.push_back({line(), false});
    return out;
}

FittedText Ui::Impl::fit(std::string_view text, TextRole role, Weight weight, float width, float height) const {
    FittedText out;
    for (TextRole now = role;; now = smaller(now)) {
        WrappedText wrapped = wrap(text, now, weight, width);
        out.role = now;
        out.lines = std::move(wrapped.lines);
        const float step = metrics.line_height(now);
        const float needed = step * static_cast<float>(out.lines.size() - 1) + metrics.text_size(now) * 0.85F;
        if (!wrapped.breaks_word && needed <= height + 0.5F) return out;
        if (now == TextRole::smallest) break;
    }
    out.clipped = true;
    const auto most = static_cast<std::size_t>(std::max(1.0F, std::floor(height / metrics.line_height(out.role))));
    if (out.lines.size() > most) {
        out.lines.resize(most);
        TextLine& last = out.lines.back();
        const Fonts& fonts = painter.fonts();
        const float room = width - fonts.text_width(ellipsis, out.role, weight);
        last = {last.text.substr(0, fonts.fitting_prefix(last.text, out.role, weight, room)), true};
    }
    return out;
}

float Ui::Impl::line_width(const TextLine& line, TextRole role, Weight weight) const {
    const float width = painter.fonts().text_width(line.text, role, weight);
    return line.cut ? painter.fonts().text_width(ellipsis, role, weight, width) : width;
}

void Ui::Impl::draw_line(Point at, const TextLine& line, const TextStyle& style) {
    if (line.cut) {
        canvas().text(at, std::string(line.text) + ellipsis, style);
    } else {
        canvas().text(at, line.text, style);
    }
}

void Ui::Impl::draw_fitted(const FittedText& fitted, const Rect& box, Weight weight, Color color, Align align) {
    const float step = metrics.line_height(fitted.role);
    const float cap = metrics.cap_height(fitted.role);
    const float block = step * static_cast<float>(fitted.lines.size() - 1) + cap;
    float baseline = box.center().y - block / 2 + cap;
    const float x = align == Align::left ? box.x0 : align == Align::right ? box.x1 : box.center().x;
    for (const TextLine& line : fitted.lines) {
        draw_line({x, baseline}, line, {fitted.role, weight, color, align});
        baseline += step;
    }
}

void Ui::Impl::record_text(std::string_view id, std::string_view text, const Rect& rect, bool clipped) {
    const Rect visible = rect.intersected(clip());
    if (!text.empty() && !visible.empty()) drawing.add_text({std::string(id), std::string(text), rect, clipped, false});
}

std::string_view Ui::Impl::badge_word(Badge state, std::string_view word) const {
    if (!word.empty()) return word;
    switch (state) {
        case Badge::holds:
            return words.holds;
        case Badge::tight:
            return words.tight;
        case Badge::fails:
            return words.fails;
        case Badge::not_known:
            return words.not_known;
        case Badge::by_eye:
            return words.by_eye;
    }
    return {};
}

float Ui::text_width(std::string_view utf8, TextRole role, Weight weight) const {
    return impl_->painter.fonts().text_width(utf8, role, weight);
}

float Ui::word_width(std::string_view utf8, TextRole role, Weight weight) const {
    float widest = 0;
    for (std::size_t i = 0; i < utf8.size();) {
        const std::size_t end = std::min(utf8.find(' ', i), utf8.size());
        widest = std::max(widest, text_width(utf8.substr(i, end - i), role, weight));
        i = end + 1;
    }
    return widest;
}

float Ui::text_height(std::string_view utf8, TextRole role, Weight weight, float width) const {
    const auto lines = impl_->wrap(utf8, role, weight, width).lines.size();
    return impl_->metrics.line_height(role) * static_cast<float>(lines);
}

void Ui::text(std::string_view utf8, TextRole role, Weight weight, std::optional<Color> color, std::string_view id) {
    Impl& ui = *impl_;
    const float width = ui.place_width();
    const std::vector<TextLine> lines = ui.wrap(utf8, role, weight, width).lines;
    const float step = ui.metrics.line_height(role);
    const Rect box = ui.place(step * static_cast<float>(lines.size()));
    float baseline = box.y0 + (step + ui.metrics.cap_height(role)) / 2;
    for (const TextLine& line : lines) {
        ui.draw_line({box.x0, baseline}, line, {role, weight, color.value_or(ui.theme().text), Align::left});
        baseline += step;
    }
    ui.record_text(id, utf8, box, false);
}

void Ui::title(std::string_view utf8, std::string_view id) {
    text(utf8, TextRole::section, Weight::medium, theme().text, id);
}
void Ui::finding(std::string_view utf8, std::string_view id) {
    text(utf8, TextRole::row, Weight::medium, theme().text, id);
}
void Ui::caption(std::string_view utf8, std::string_view id) {
    text(utf8, TextRole::caption, Weight::regular, theme().text2, id);
}

float Ui::text_at(Point at, std::string_view utf8, const TextStyle& wanted, float max_width, std::string_view id) {
    Impl& ui = *impl_;
    TextStyle style = wanted;
    const Fonts& fonts = ui.painter.fonts();
    float width = fonts.text_width(utf8, style.role, style.weight);
    const auto too_wide = [&] { return max_width > 0 && width > max_width + 0.5F; };
    while (too_wide() && style.role != TextRole::smallest) {
        style.role = smaller(style.role);
        width = fonts.text_width(utf8, style.role, style.weight);
    }
    const bool clipped = too_wide();
    TextLine shown{utf8, clipped};
    if (clipped) {
        const float room = max_width - fonts.text_width(ellipsis, style.role, style.weight);
        shown.text = utf8.substr(0, fonts.fitting_prefix(utf8, style.role, style.weight, room));
    }
    ui.draw_line(at, shown, style);
    const float drawn = clipped ? max_width : width;
    const float left = style.align == Align::left    ? at.x
                       : style.align == Align::right ? at.x - drawn
                                                     : at.x - drawn / 2;
    ui.record_text(id, utf8, {left, at.y - ui.metrics.cap_height(style.role), left + drawn, at.y}, clipped);
    return left + drawn;
}

TextRole Ui::text_in(const Rect& box, std::string_view utf8, const TextStyle& style, std::string_view id) {
    Impl& ui = *impl_;
    const FittedText fitted = ui.fit(utf8, style.role, style.weight, box.width(), box.height());
    ui.draw_fitted(fitted, box, style.weight, style.color, style.align);
    ui.record_text(id, utf8, box, fitted.clipped);
    return fitted.role;
}

void Ui::value_at(Point right_end, std::string_view value, std::string_view unit, TextRole role, std::string_view id) {
    Impl& ui = *impl_;
    float x = right_end.x;
    const TextStyle grey{TextRole::body, Weight::regular, theme().text2, Align::right};
    if (!unit.empty()) {
        ui.canvas().text({x, right_end.y}, unit, grey);
        x -= text_width(unit, grey.role, grey.weight) + ui.metrics.dp(8);
    }
    ui.canvas().text({x, right_end.y}, value, {role, Weight::medium, theme().text, Align::right});
    x -= text_width(value, role, Weight::medium);
    ui.record_text(id, join_label({value, unit}),
                   {x, right_end.y - ui.metrics.cap_height(role), right_end.x, right_end.y}, false);
}

float Ui::badge_width(Badge state, std::string_view word, TextRole role) const {
    return sillwalk::ui::badge_width(impl_->canvas(), impl_->badge_word(state, word), role);
}

Rect Ui::badge_at(Point at, Badge state, Align align, std::string_view word, TextRole role) {
    Impl& ui = *impl_;
    const std::string_view shown = ui.badge_word(state, word);
    const float width = sillwalk::ui::badge_width(ui.canvas(), shown, role);
    const float x = align == Align::left ? at.x : align == Align::right ? at.x - width : at.x - width / 2;
    const Rect box = draw_badge(ui.canvas(), ui.theme(), {std::round(x), at.y}, state, shown, role);
    ui.record_text({}, shown, box, false);
    return box;
}

void Ui::badge(Badge state, std::string_view word, std::string_view id) {
    Impl& ui = *impl_;
    const Rect box = ui.place(badge_height(ui.canvas(), TextRole::caption));
    const std::string_view shown = ui.badge_word(state, word);
    const Rect drawn = draw_badge(ui.canvas(), ui.theme(), {box.x0, box.center().y}, state, shown, TextRole::caption);
    ui.record_text(id, shown, drawn, false);
}

void Ui::separator() {
    Impl& ui = *impl_;
    const Rect line = ui.place(ui.metrics.hairline);
    ui.canvas().fill_rect(line, ui.theme().hairline);
}

void Ui::drawing(float height, std::string_view described, const std::function<void(Canvas&, const Rect&)>& draw) {
    Impl& ui = *impl_;
    const Rect box = ui.place(height);
    ui.record_text({}, described, box, false);
    if (box.intersected(ui.clip()).empty()) return;
    ui.push_clip(box);
    draw(ui.canvas(), box);
    ui.pop_clip();
}

}  // namespace sillwalk::ui
