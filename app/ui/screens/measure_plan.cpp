#include "app/ui/screens/measure_plan.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

/// Cell of a grid of `columns` x `rows` that fills the box, gaps between.
Rect cell(const Rect& box, int columns, int rows, int index, float gap) {
    const float width = (box.width() - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    const float height = (box.height() - gap * static_cast<float>(rows - 1)) / static_cast<float>(rows);
    const auto column = static_cast<float>(index % columns);
    const auto row = static_cast<float>(index / columns);
    const float x = box.x0 + column * (width + gap);
    const float y = box.y0 + row * (height + gap);
    return {std::round(x), std::round(y), std::round(x + width), std::round(y + height)};
}

template <std::size_t N>
void fill_grid(std::array<Rect, N>& cells, const Rect& box, int columns, int rows, float gap) {
    for (std::size_t i = 0; i < N && static_cast<int>(i) < columns * rows; ++i) {
        cells[i] = cell(box, columns, rows, static_cast<int>(i), gap);
    }
}

/// Each unit beside the others is a target of its own.
float units_width(const Metrics& m, const MeasureNeeds& needs) {
    const auto count = static_cast<float>(needs.units);
    return count * m.target_size(TargetClass::row) + (count - 1) * (m.gap + 2);
}

MeasurePlan wide_plan(const Metrics& m, const Rect& area, const MeasureNeeds& needs) {
    MeasurePlan p;
    const float gap = m.gap;
    const float key = std::max(m.target_size(TargetClass::key), m.dp(96));
    const float keys_height = std::ceil(4 * key + 3 * gap);
    const float keys_top = area.y1 - keys_height;
    Rect rest{area.x0, area.y0 + m.dp(16), area.x1, area.y1};
    Rect left = rest.cut_left(rest.width() * 0.245F, m.gutter);
    const float row = (keys_height - 3 * gap) / 4;
    p.title = {left.x0, left.y0, left.x1, left.y0 + std::max(m.dp(96), needs.title_height)};
    p.picture = {left.x0, p.title.y1 + gap, left.x1, keys_top - gap};
    const Rect buttons{left.x0, keys_top, left.x1, area.y1};
    p.again = cell(buttons, 1, 4, 0, gap);
    p.same = cell(buttons, 1, 4, 1, gap);
    const Rect third = cell(buttons, 1, 4, 2, gap);
    p.none = cell(third, 2, 1, 0, gap);
    p.not_accessible = cell(third, 2, 1, 1, gap);
    p.done = cell(buttons, 1, 4, 3, gap);

    Rect top{rest.x0, rest.y0, rest.x1, keys_top - gap};
    const Rect choices = top.cut_bottom(row, gap);
    p.readout = top;
    Rect choice = choices;
    if (needs.can_rule) p.ruler_key = choice.cut_right(row * 1.4F, m.gutter);
    p.units = choice.cut_left(std::max(choice.width() * 0.24F, units_width(m, needs)), m.gutter);
    p.methods = choice;

    Rect keys{rest.x0, keys_top, rest.x1, area.y1};
    const Rect operations = keys.cut_right(row, m.gutter);
    p.backspace = cell(operations, 1, 4, 0, gap);
    p.plus = cell(operations, 1, 4, 1, gap);
    p.minus = cell(operations, 1, 4, 2, gap);
    p.next = cell(operations, 1, 4, 3, gap);
    if (needs.rules) {
        p.ruler = keys;
        return p;
    }
    // With nothing to stand beside them the digits are wider.
    const bool alone = !needs.sixteenths && !needs.sketch;
    fill_grid(p.digits, alone ? keys : keys.cut_left(3 * row + 2 * gap, m.gutter), 3, 4, gap);
    if (needs.sixteenths) fill_grid(p.fractions, keys, 4, 4, gap);
    if (needs.sketch && !needs.sixteenths) p.aside = keys;
    return p;
}

/// Digits and, beside them, the fifteen sixteenths, five rows of three each. A length has no sign: the key of "no
/// fraction" stands in its place.
void fill_tape_keys(MeasurePlan& p, const Rect& box, float gap) {
    const auto at = [&](int row, int column) { return cell(box, 6, 5, row * 6 + column, gap); };
    for (int i = 0; i < 12; ++i) p.digits[static_cast<std::size_t>(i)] = at(i / 3, i % 3);
    for (int i = 0; i < 15; ++i) p.fractions[static_cast<std::size_t>(i)] = at(i / 3, 3 + i % 3);
    p.fractions[15] = p.digits[9];
    p.digits[9] = {};
    p.backspace = at(4, 0);
    p.minus = at(4, 1);
    p.plus = at(4, 2);
}

MeasurePlan tall_plan(const Metrics& m, const Rect& area, const MeasureNeeds& needs) {
    MeasurePlan p;
    const float gap = m.gap;
    const float key = m.target_size(TargetClass::key);
    Rect rest{area.x0, area.y0 + m.edge, area.x1, area.y1};
    Rect head = rest.cut_top(std::max(m.dp(98), needs.title_height), gap);
    p.picture = head.cut_right(head.width() * 0.36F, gap);
    p.title = head;
    const Rect foot = rest.cut_bottom(key, gap);
    p.done = cell(foot, 3, 1, 0, gap);
    p.next = {cell(foot, 3, 1, 1, gap).x0, foot.y0, foot.x1, foot.y1};
    const Rect buttons = rest.cut_bottom(m.target_size(TargetClass::row), gap);
    p.again = cell(buttons, 4, 1, 0, gap);
    p.same = cell(buttons, 4, 1, 1, gap);
    p.none = cell(buttons, 4, 1, 2, gap);
    p.not_accessible = cell(buttons, 4, 1, 3, gap);
    // Where sixteenths take a third of the room, what is read out is lower rather than a key too small.
    const float keys_height = 5 * key + 4 * gap;
    const float spare = rest.height() - m.target_size(TargetClass::row) - 2 * gap - keys_height;
    p.readout = rest.cut_top(std::clamp(spare, m.dp(110), std::max(m.dp(158), needs.hint_height)), gap);
    if (needs.can_rule) p.ruler_key = p.readout.cut_right(m.target_size(TargetClass::row) * 1.4F, gap);
    Rect choice = rest.cut_top(m.target_size(TargetClass::row), gap);
    p.units = choice.cut_left(std::max(choice.width() * 0.28F, units_width(m, needs)), gap);
    p.methods = choice;
    if (needs.rules) {
        const Rect operations = rest.cut_bottom(key, gap);
        p.backspace = cell(operations, 3, 1, 0, gap);
        p.minus = cell(operations, 3, 1, 1, gap);
        p.plus = cell(operations, 3, 1, 2, gap);
        p.ruler = rest;
        return p;
    }
    if (needs.sixteenths) {
        fill_tape_keys(p, rest, gap);
        return p;
    }
    if (needs.sketch) p.aside = rest.cut_bottom(std::max(rest.height() - 5 * key, 0.0F), gap);
    Rect operations = rest.cut_right(rest.width() * 0.26F, m.gutter);
    fill_grid(p.digits, rest, 3, 4, gap);
    p.backspace = cell(operations, 1, 3, 0, gap);
    p.plus = cell(operations, 1, 3, 1, gap);
    p.minus = cell(operations, 1, 3, 2, gap);
    return p;
}

MeasurePlan phone_plan(const Metrics& m, const Rect& area, const MeasureNeeds& needs) {
    MeasurePlan p;
    const float gap = m.gap;
    const float key = m.target_size(TargetClass::key);
    const float row = m.target_size(TargetClass::row);
    Rect rest{area.x0, area.y0 + m.edge, area.x1, area.y1};
    Rect head = rest.cut_top(std::max(row, needs.title_height), gap);
    p.close = head.cut_right(row, gap);
    p.close.y1 = p.close.y0 + row;
    p.title = head;
    const Rect foot = rest.cut_bottom(key, gap);
    p.backspace = cell(foot, 3, 1, 0, gap);
    p.next = {cell(foot, 3, 1, 1, gap).x0, foot.y0, foot.x1, foot.y1};
    const float spare = rest.height() - row - 4 * key - 5 * gap;
    p.readout = rest.cut_top(std::clamp(spare, m.dp(80), needs.hint_height > 0 ? m.dp(200) : m.dp(164)), gap);
    Rect choices = rest.cut_top(row, gap);
    if (needs.can_rule) {
        p.ruler_key = cell(choices, 4, 1, 3, gap);
        choices.x1 = p.ruler_key.x0 - gap;
    }
    p.units = cell(choices, 3, 1, 0, gap);
    p.methods = cell(choices, 3, 1, 1, gap);
    if (needs.sixteenths && !needs.rules) {
        p.pages = cell(choices, 3, 1, 2, gap);
    } else {
        p.methods.x1 = choices.x1;
    }
    if (needs.rules) {
        p.ruler = rest;
    } else if (needs.sixteenths && needs.fraction_page) {
        fill_grid(p.fractions, rest, 3, 4, gap);
    } else {
        fill_grid(p.digits, rest, 3, 4, gap);
    }
    return p;
}

}  // namespace

MeasurePlan measure_plan(const Metrics& metrics, const Rect& outer, const MeasureNeeds& needs) {
    // On whole pixels, so that rounding takes nothing off a gap.
    const Rect area{std::ceil(outer.x0), std::ceil(outer.y0), std::floor(outer.x1), std::floor(outer.y1)};
    if (metrics.compact()) return phone_plan(metrics, area, needs);
    if (metrics.width_class == WidthClass::expanded) return wide_plan(metrics, area, needs);
    return tall_plan(metrics, area, needs);
}

}  // namespace sillwalk::ui
