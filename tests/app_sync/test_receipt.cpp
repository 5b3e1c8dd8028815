#include "app/sync/enrol.hpp"
#include "app/sync/receipt.hpp"
#include "tests/app_sync/fake_office.hpp"
#include "tests/app_sync/field.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;

namespace {

struct Given {
    test::FakeOffice office;
    Digest digest{};
    std::string text;
    Given() {
        const SealOrder order = test::seal_order(test::visit_uuid(1), {"draft", 0, {}}, "note", {"a photo"});
        digest = order.digest;
        office.revisions[to_hex(digest)] = make_envelope(Json::parse(order.body));
        text = office.receipt(to_hex(digest));
    }
    [[nodiscard]] engine::Result<Receipt> read(const std::string& what) const {
        return read_receipt(what, digest, office.key_id, office.key.public_key);
    }
};

}  // namespace

TEST_CASE("a receipt is read and its signature checked", "[sync]") {
    const Given given;
    const auto receipt = given.read(given.text);
    REQUIRE(receipt);
    CHECK(receipt->seq == 1);
    CHECK_FALSE(receipt->complete);
    CHECK(receipt->missing_blobs == std::vector<Digest>{sha256("a photo")});
}

TEST_CASE("no byte of a receipt can be changed unseen", "[sync]") {
    const Given given;
    int refused = 0;
    for (std::size_t i = 0; i < given.text.size(); ++i) {
        std::string changed = given.text;
        changed[i] = static_cast<char>(changed[i] ^ 1);
        const auto read = given.read(changed);
        if (!read) {
            ++refused;
            continue;
        }
        // Only what does not belong to the signed text may differ: base64url's unused low bits are refused by its
        // reader.
        CHECK(read->digest == given.digest);
        CHECK(read->seq == 1);
        CHECK_FALSE(read->complete);
    }
    CHECK(refused == static_cast<int>(given.text.size()));
}

TEST_CASE("a receipt of another revision, of another key or of another shape is refused", "[sync]") {
    const Given given;
    CHECK_FALSE(read_receipt(given.text, sha256("other"), given.office.key_id, given.office.key.public_key));
    CHECK_FALSE(read_receipt(given.text, given.digest, given.office.key_id, test::seeded_key(8).public_key));
    CHECK_FALSE(read_receipt(given.text, given.digest, "other", given.office.key.public_key));
    for (const char* text : {"", "{}", "[]", R"({"receipt":{},"sig":[]})", R"({"receipt":1,"sig":5})", "<html>"})
        CHECK_FALSE(given.read(text));
    CHECK_FALSE(
        given.read(given.text.substr(0, given.text.find(",\"sig\"")) + R"(,"sig":[{"alg":5,"kid":{},"value":[]}]})"));
}

TEST_CASE("an enrolment brings the office's key and a token", "[sync]") {
    test::FakeOffice office;
    const std::string key = to_hex(byte_view(office.key.public_key));
    const auto service = [&] {
        office.instead.push_back(
            WireResponse{200, {}, R"({"key":{"kid":"k1","public_key":")" + key + R"("},"formats":[]})"});
    };
    const EnrolOrder order{"https://office.example", "ABC", "Tablet", ""};
    service();
    office.instead.push_back(WireResponse{
        201, {}, R"({"device_id":"018f3c1a-0000-7000-8000-00000000dddd","expires_ms":5,"token":"t0ken"})"});
    const auto enrolled = enrol(office, order, test::field_device());
    REQUIRE(enrolled);
    CHECK(enrolled->token == "t0ken");
    CHECK(enrolled->key_id == "k1");
    CHECK(enrolled->public_key == office.key.public_key);
    const Json sent = Json::parse(office.seen.back().body);
    CHECK(sent.at("code") == "ABC");
    CHECK(sent.at("public_key") == to_hex(byte_view(test::field_device().key().public_key)));

    service();
    office.instead.push_back(WireResponse{401, {}, "{}"});
    const auto wrong = enrol(office, order, test::field_device());
    REQUIRE_FALSE(wrong);
    CHECK(wrong.error().code == engine::ErrorCode::bad_input);
    service();
    office.instead.push_back(WireResponse{201, {}, R"({"device_id":"x","expires_ms":5,"token":"a b"})"});
    CHECK_FALSE(enrol(office, order, test::field_device()));
    office.instead.push_back(tl::make_unexpected(WireFault::untrusted));
    const auto untrusted = enrol(office, order, test::field_device());
    REQUIRE_FALSE(untrusted);
    CHECK(untrusted.error().where == "sync.why.untrusted");
}

TEST_CASE("an office is reached by TLS, or in clear on this machine only", "[sync]") {
    for (const char* good : {"https://office.example", "https://office.example:8443", "http://127.0.0.1:8477",
                             "http://localhost", "http://[::1]:1"})
        CHECK(is_office_address(good));
    for (const char* bad :
         {"", "https://", "http://office.example", "ftp://office.example", "https://a/b", "https://u@h",
          "http://127.0.0.1.example", "http://localhost.example", "https://a b", "file:///etc"})
        CHECK_FALSE(is_office_address(bad));
}
