#pragma once
/// What the pictures share: each has a twin as a table, one tap away.

#include "app/ui/screens/facts.hpp"

#include <string>
#include <vector>

namespace sillwalk::ui {

struct ChartRow {
    std::string id;
    std::string name, detail, value;
    std::optional<Badge> badge{};
};

/// "Picture | Table". True where the table is wanted.
bool chart_toggle(ScreenContext& context, const Rect& rect = {});
/// The rows in the current layout; the index that was tapped.
std::optional<std::size_t> chart_table(ScreenContext& context, const std::vector<ChartRow>& rows,
                                       bool touchable = false);

}  // namespace sillwalk::ui
