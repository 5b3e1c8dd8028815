#include "app/sync/delivery.hpp"
#include "tests/app_sync/fake_office.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

Delivery photo_delivery(const std::string& bytes) {
    Delivery delivery;
    delivery.kind = OutboxKind::blob;
    delivery.digest = sha256(bytes);
    delivery.size = static_cast<std::int64_t>(bytes.size());
    return delivery;
}

/// Exchanges until it is stored, parked or was tried `most` times.
Fate deliver(Delivery& delivery, const std::string& bytes, test::FakeOffice& office, int most) {
    Fate fate = Fate::back_off;
    for (int i = 0; i < most; ++i) {
        const Asked asked = next_question(delivery);
        fate = take_answer(delivery, asked, office.send(next_request(delivery, bytes, "token")));
        if (fate == Fate::stored || fate == Fate::park) break;
    }
    return fate;
}

std::string header(const WireRequest& request, const std::string& name) {
    for (const auto& [key, value] : request.headers) {
        if (key == name) return value;
    }
    return "(none)";
}

}  // namespace

TEST_CASE("a small photo is one PUT with its digest as RFC 9530 writes it", "[sync]") {
    test::FakeOffice office;
    const std::string bytes = "{\"hello\": \"world\"}\n";
    Delivery delivery = photo_delivery(bytes);
    CHECK(deliver(delivery, bytes, office, 1) == Fate::stored);
    CHECK(office.seen.size() == 1);
    CHECK(header(office.seen[0], "If-None-Match") == "*");
    // RFC 9530, appendix B: the representation {"hello": "world"} with a line end.
    CHECK(header(office.seen[0], "Content-Digest") == "sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg=:");
}

TEST_CASE("a large photo goes in parts and is whole at the end", "[sync]") {
    test::FakeOffice office;
    const std::string bytes = test::photo_bytes(1, 700000);
    Delivery delivery = photo_delivery(bytes);
    CHECK(deliver(delivery, bytes, office, 10) == Fate::stored);
    CHECK(office.seen.size() == 4);  // begun, and 256 + 256 + 172 KiB
    CHECK(header(office.seen[0], "Upload-Length") == "700000");
    CHECK(header(office.seen[1], "Upload-Complete") == "?0");
    CHECK(header(office.seen[3], "Upload-Complete") == "?1");
    CHECK(office.blobs.at(to_hex(sha256(bytes))) == bytes);
}

TEST_CASE("after a lost answer the office is asked where it stands, and nothing is sent twice", "[sync]") {
    test::FakeOffice office;
    const std::string bytes = test::photo_bytes(2, 700000);
    Delivery delivery = photo_delivery(bytes);
    int exchange = 0;
    office.network = [&](const WireRequest&) {
        return ++exchange == 2 ? test::FakeOffice::Way::lose_answer : test::FakeOffice::Way::pass;
    };
    CHECK(deliver(delivery, bytes, office, 10) == Fate::stored);
    CHECK(office.seen[2].method == "HEAD");
    CHECK(office.blob_bytes_received == bytes.size());
}

TEST_CASE("the end of a photo whose answer was lost is learnt by asking again", "[sync]") {
    test::FakeOffice office;
    const std::string bytes = test::photo_bytes(3, 700000);
    Delivery delivery = photo_delivery(bytes);
    int exchange = 0;
    office.network = [&](const WireRequest&) {
        return ++exchange == 4 ? test::FakeOffice::Way::lose_answer : test::FakeOffice::Way::pass;
    };
    CHECK(deliver(delivery, bytes, office, 10) == Fate::stored);
    CHECK(office.blob_bytes_received == bytes.size());
    CHECK(office.seen.back().method == "POST");  // 412: it is there
}

TEST_CASE("parts are halved until the office takes them, and no further than the least", "[sync]") {
    test::FakeOffice office;
    office.greatest_append = 70000;
    const std::string bytes = test::photo_bytes(4, 300000);
    Delivery delivery = photo_delivery(bytes);
    CHECK(deliver(delivery, bytes, office, 20) == Fate::stored);
    CHECK(delivery.part_bytes == 65536);
    office.greatest_append = 100;
    const std::string other = test::photo_bytes(5, 300000);
    Delivery hopeless = photo_delivery(other);
    CHECK(deliver(hopeless, other, office, 20) == Fate::park);
}

TEST_CASE("an office that forgot the upload gets it anew, and answers that make no sense are not believed", "[sync]") {
    test::FakeOffice office;
    const std::string bytes = test::photo_bytes(6, 300000);
    Delivery delivery = photo_delivery(bytes);
    delivery.upload_path = "/v1/uploads/gone";
    delivery.offset = 262144;
    delivery.offset_known = false;
    CHECK(deliver(delivery, bytes, office, 10) == Fate::stored);

    Delivery fooled = photo_delivery("x");
    CHECK(take_answer(fooled, Asked::whole_blob, WireResponse{200, {}, "<html>log in</html>"}) == Fate::back_off);
    CHECK(take_answer(fooled, Asked::whole_blob, WireResponse{200, {}, R"({"sha256":"00"})"}) == Fate::back_off);
    CHECK(take_answer(fooled, Asked::begin_upload, WireResponse{201, {{"Location", "https://elsewhere/x"}}, {}}) ==
          Fate::back_off);
    CHECK(take_answer(fooled, Asked::begin_upload, WireResponse{201, {{"Location", "/v1/uploads/../x"}}, {}}) ==
          Fate::back_off);
    fooled.upload_path = "/v1/uploads/a";
    CHECK(take_answer(fooled, Asked::append, WireResponse{204, {{"Upload-Offset", "99"}}, {}}) == Fate::back_off);
    CHECK(fooled.upload_path.empty());
}
