#include "app/ui/screens/chart_parts.hpp"

#include <array>

namespace sillwalk::ui {

bool chart_toggle(ScreenContext& context, const Rect& rect) {
    const bool table = context.model.show_table;
    const std::array<ChoiceItem, 2> items = {
        {{"picture", context.say("chart.picture"), {}, true}, {"table", context.say("chart.table"), {}, true}}};
    const auto hit = context.ui.choice("chart", items, table ? 1 : 0, {.rect = rect});
    if (hit) context.act(app::ShowTable{*hit == 1});
    return table;
}

std::optional<std::size_t> chart_table(ScreenContext& context, const std::vector<ChartRow>& rows, bool touchable) {
    std::optional<std::size_t> tapped;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        RowOptions options;
        options.detail = rows[i].detail;
        options.value = rows[i].value;
        options.value_role = TextRole::row;
        options.badge = rows[i].badge;
        options.framed = false;
        options.touchable = touchable;
        if (context.ui.row(rows[i].id, rows[i].name, options)) tapped = i;
        if (!touchable) context.ui.space(-context.ui.metrics().gap);
    }
    if (!touchable) context.ui.space(context.ui.metrics().gap);
    return tapped;
}

}  // namespace sillwalk::ui
