#include "app/shell/visit_lines.hpp"

#include "app/storage/survey_store.hpp"
#include "app/storage/visit_delivery.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::app {

engine::Result<std::vector<VisitLine>> visit_lines(Database& database) {
    auto rows = list_visits(database);
    if (!rows) return tl::make_unexpected(rows.error());
    const auto deliveries = list_deliveries(database);
    if (!deliveries) return tl::make_unexpected(deliveries.error());
    std::vector<VisitLine> lines;
    for (VisitRow& row : *rows) {
        VisitLine line{std::move(row.survey_id), std::move(row.title), row.updated_ms};
        line.customer = std::move(row.customer);
        const auto found =
            std::lower_bound(deliveries->begin(), deliveries->end(), line.id,
                             [](const VisitDelivery& one, const std::string& id) { return one.survey_id < id; });
        if (found != deliveries->end() && found->survey_id == line.id) {
            line.delivery = found->state;
            line.why = found->why;
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace sillwalk::app
