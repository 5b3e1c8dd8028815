// Where a visit stands on its way, as the outbox and the receipts tell it.
#include "app/storage/quarantine.hpp"
#include "app/storage/visit_delivery.hpp"
#include "app/sync/sender.hpp"
#include "tests/app_sync/fake_office.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

struct Tablet {
    Database database = std::move(*Database::open(":memory:"));
    test::FakeOffice office;
    std::unique_ptr<Sender> sender;
    std::int64_t now = 0;

    Tablet() {
        REQUIRE(migrate(database));
        REQUIRE(device_identity(database, test::field_device()));
        REQUIRE(store_office(database, {"https://office.example", test::visit_uuid(77), "token", std::int64_t{1} << 52,
                                        office.key_id, office.key.public_key, ""}));
        SenderOptions options;
        options.unit = [] { return 0.5; };
        options.utc_ms = [] { return std::int64_t{1000}; };
        sender = std::make_unique<Sender>([this](const std::function<void(Database&)>& job) { job(database); }, office,
                                          options);
    }
    void step() { (void)sender->step(now += 10'000'000); }
    DeliveryState state() {
        const auto all = list_deliveries(database);
        REQUIRE(all);
        REQUIRE(all->size() == 1);
        why = all->front().why;
        return all->front().state;
    }
    std::string why;
};

}  // namespace

TEST_CASE("a visit's state on its way to the office, from draft to a complete receipt", "[sync][delivery]") {
    Tablet tablet;
    const std::string visit = test::visit_uuid(1), photo = test::photo_bytes(1, 5000);
    REQUIRE(apply_all(tablet.database, {test::plain_visit(visit)}));
    CHECK(tablet.state() == DeliveryState::not_sent);
    REQUIRE(test::seal_visit(tablet.database, visit, "one", {photo}));
    CHECK(tablet.state() == DeliveryState::waits);
    tablet.office.network = [](const WireRequest&) { return test::FakeOffice::Way::lose_request; };
    tablet.step();
    CHECK(tablet.state() == DeliveryState::on_its_way);
    tablet.office.network = [](const WireRequest&) { return test::FakeOffice::Way::pass; };
    tablet.step();
    CHECK(tablet.state() == DeliveryState::photos_to_come);
    tablet.office.instead.push_back(WireResponse{400, {}, "{}"});
    tablet.step();
    CHECK(tablet.state() == DeliveryState::attention);
    CHECK(tablet.why == "sync.why.refused");
    tablet.sender->hurry(true);
    for (int i = 0; i < 4; ++i) tablet.step();
    CHECK(tablet.state() == DeliveryState::at_office);
    REQUIRE(
        apply_all(tablet.database, {StoreStep{visit, 1, EditKind::edit, "x", {{"/site", "\"Plant\"", "\"P\""}}, 9}}));
    CHECK(tablet.state() == DeliveryState::not_sent);
}

TEST_CASE("two versions at the office, and a visit that came in a file", "[sync][delivery]") {
    Tablet tablet;
    const std::string visit = test::visit_uuid(1);
    tablet.office.forked = true;
    REQUIRE(test::seal_visit(tablet.database, visit, "one"));
    tablet.step();
    CHECK(tablet.state() == DeliveryState::forked);

    Tablet other;
    const auto order = test::seal_order(visit, {}, "one");
    REQUIRE(apply_all(other.database, {test::plain_visit(visit)}));
    REQUIRE(store_foreign_revision(other.database, order.digest,
                                   {visit, RevisionOrigin::file, order.body, std::string("[]"), 5}, {}));
    REQUIRE(adopt_revision(other.database, visit, order.digest));
    CHECK(other.state() == DeliveryState::from_file);
}
