#include "app/storage/visit_delivery.hpp"

namespace sillwalk::app {

namespace {

// A row of the outbox belongs to the visit where it is the revision that the visit was last sealed as, or a photo of
// it.
constexpr const char* query = R"sql(
WITH own AS (
  SELECT s.survey_id, o.id, o.kind, o.state, o.last_error FROM survey s JOIN outbox o
    ON o.kind='revision' AND o.digest=s.base_digest
  UNION ALL
  SELECT s.survey_id, o.id, o.kind, o.state, o.last_error FROM survey s
    JOIN revision_blob b ON b.digest=s.base_digest JOIN outbox o ON o.kind='blob' AND o.digest=b.blob
)
SELECT s.survey_id, s.state, s.base_digest IS NULL,
  EXISTS(SELECT 1 FROM outbox o WHERE o.kind='revision' AND o.digest=s.base_digest),
  coalesce((SELECT complete FROM receipt r WHERE r.digest=s.base_digest), -1),
  EXISTS(SELECT 1 FROM own WHERE own.survey_id=s.survey_id AND own.state='sending'),
  EXISTS(SELECT 1 FROM own WHERE own.survey_id=s.survey_id AND own.state='parked'),
  coalesce((SELECT own.last_error FROM own WHERE own.survey_id=s.survey_id AND own.state='parked'
            ORDER BY own.kind='blob', own.id LIMIT 1), '')
FROM survey s ORDER BY s.survey_id
)sql";

DeliveryState state_at(const Statement& row) {
    const bool in_outbox = row.integer(3) != 0;
    const std::int64_t complete = row.integer(4);
    if (row.text(1) == "draft" || row.integer(2) != 0) return DeliveryState::not_sent;
    if (row.integer(6) != 0) return DeliveryState::attention;
    if (row.text(1) == "forked") return DeliveryState::forked;
    if (complete == 1) return DeliveryState::at_office;
    if (complete == 0) return DeliveryState::photos_to_come;
    if (!in_outbox) return DeliveryState::from_file;
    return row.integer(5) != 0 ? DeliveryState::on_its_way : DeliveryState::waits;
}

}  // namespace

engine::Result<std::vector<VisitDelivery>> list_deliveries(Database& database) {
    auto rows = database.prepare(query);
    if (!rows) return tl::make_unexpected(rows.error());
    std::vector<VisitDelivery> out;
    for (;;) {
        const auto more = rows->step();
        if (!more) return tl::make_unexpected(more.error());
        if (!*more) return out;
        VisitDelivery one{rows->text(0), state_at(*rows), {}};
        if (one.state == DeliveryState::attention) one.why = rows->text(7);
        out.push_back(std::move(one));
    }
}

}  // namespace sillwalk::app
