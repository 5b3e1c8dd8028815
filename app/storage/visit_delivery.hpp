#pragma once
/// What the outbox and the receipts say of each visit as a whole.

#include "app/bundle/delivery_state.hpp"
#include "app/storage/database.hpp"

#include <string>
#include <vector>

namespace sillwalk::app {

struct VisitDelivery {
    std::string survey_id;
    DeliveryState state = DeliveryState::not_sent;
    std::string why;  ///< language key of what needs attention; empty: nothing
    friend bool operator==(const VisitDelivery&, const VisitDelivery&) = default;
};

/// Of every visit, in the order of their ids.
[[nodiscard]] engine::Result<std::vector<VisitDelivery>> list_deliveries(Database& database);

}  // namespace sillwalk::app
