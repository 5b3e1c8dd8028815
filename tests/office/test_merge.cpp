#include "app/office/merge.hpp"
#include "app/office/merge_store.hpp"
#include "app/office/recompute.hpp"
#include "office_world.hpp"

using namespace sillwalk;
using namespace sillwalk::test;
using office::Conflict;
using office::propose_merge;
using office::Side;

namespace {

Json revision(Json items) {
    return {{"items", std::move(items)}, {"blobs", Json::array()}};
}
Json item(Json values, int order = 0) {
    return {{"kind", "crossing"}, {"order", order}, {"v", std::move(values)}};
}
const std::string uuid = survey_id(7), other = survey_id(8);

}  // namespace

TEST_CASE("what one side changed is taken and both agree on a field each", "[office][merge]") {
    const Json base = revision({{uuid, item({{"name", "Door"}, {"rise", 19}, {"gap", 3}})}});
    const Json left = revision({{uuid, item({{"name", "Door"}, {"rise", 6}, {"gap", 3}})}});
    const Json right =
        revision({{uuid, item({{"name", "Door"}, {"rise", 19}, {"gap", 5}}, 2)}, {other, item({{"rise", 1}})}});
    const auto proposal = propose_merge(&base, left, right);
    CHECK(proposal.conflicts.empty());
    const auto items = merged_items(proposal, {});
    REQUIRE(items.has_value());
    CHECK(items->at(uuid) == item({{"name", "Door"}, {"rise", 6}, {"gap", 5}}, 2));
    CHECK(items->at(other) == item({{"rise", 1}}));
}

TEST_CASE("two changes of one field are shown beside where they come from, and wait for a person", "[office][merge]") {
    const Json base = revision({{uuid, item({{"name", "Door"}, {"rise", 19}})}});
    const Json left = revision({{uuid, item({{"name", "Door"}, {"rise", 6}})}});
    const Json right = revision({{uuid, item({{"name", "Door"}})}});
    const auto proposal = propose_merge(&base, left, right);
    REQUIRE(proposal.conflicts.size() == 1);
    const Conflict& conflict = proposal.conflicts[0];
    CHECK(conflict.field == "rise");
    CHECK(conflict.name == "Door");
    CHECK(conflict.base == Json(19));
    CHECK(conflict.left == Json(6));
    CHECK_FALSE(conflict.right.has_value());
    CHECK_FALSE(merged_items(proposal, {}).has_value());
    CHECK(merged_items(proposal, {{conflict.key(), Side::left}})->at(uuid).at("v").at("rise") == 6);
    CHECK_FALSE(merged_items(proposal, {{conflict.key(), Side::right}})->at(uuid).at("v").contains("rise"));
    CHECK(merged_items(proposal, {{conflict.key(), Side::base}})->at(uuid).at("v").at("rise") == 19);
}

TEST_CASE("a removed item against a changed one is a conflict, against an unchanged one is not", "[office][merge]") {
    const Json base = revision({{uuid, item({{"rise", 19}})}});
    const Json changed = revision({{uuid, item({{"rise", 6}})}});
    const Json gone = revision(Json::object());
    const auto quiet = propose_merge(&base, base, gone);
    CHECK(quiet.conflicts.empty());
    CHECK(merged_items(quiet, {})->at(uuid).at("deleted") == true);
    const auto proposal = propose_merge(&base, changed, gone);
    REQUIRE(proposal.conflicts.size() == 1);
    const std::string key = proposal.conflicts[0].key();
    CHECK(merged_items(proposal, {{key, Side::right}})->at(uuid).at("deleted") == true);
    CHECK(merged_items(proposal, {{key, Side::left}})->at(uuid) == item({{"rise", 6}}));
}

TEST_CASE("merging offers the same values whichever side is called left", "[office][merge]") {
    const Json base = revision({{uuid, item({{"a", 1}, {"b", 1}, {"c", 1}})}, {other, item({{"a", 1}})}});
    const Json one = revision({{uuid, item({{"a", 2}, {"b", 2}, {"c", 1}})}});
    const Json two = revision({{uuid, item({{"a", 3}, {"b", 1}, {"c", 4}})}, {other, item({{"a", 9}})}});
    const auto forth = propose_merge(&base, one, two), back = propose_merge(&base, two, one);
    CHECK(forth.items == back.items);
    REQUIRE(forth.conflicts.size() == back.conflicts.size());
    for (std::size_t i = 0; i < forth.conflicts.size(); ++i) {
        CHECK(forth.conflicts[i].key() == back.conflicts[i].key());
        CHECK(forth.conflicts[i].left == back.conflicts[i].right);
        CHECK(forth.conflicts[i].right == back.conflicts[i].left);
    }
}

TEST_CASE("the nearest common ancestor is found", "[office][merge]") {
    const std::map<std::string, std::vector<std::string>> parents{{"r", {}},    {"a", {"r"}}, {"b", {"a"}},
                                                                  {"c", {"a"}}, {"d", {"c"}}, {"alone", {}}};
    CHECK(office::common_ancestor(parents, "b", "d") == "a");
    CHECK(office::common_ancestor(parents, "a", "d") == "a");
    CHECK_FALSE(office::common_ancestor(parents, "alone", "d").has_value());
}

TEST_CASE("a confirmed merge has both parents, is signed by the office and ends the fork", "[office][merge]") {
    World world;
    const auto root = envelope({1, {}, "root"});
    const auto left = envelope({1, {hex(root)}, "left"}), right = envelope({1, {hex(root)}, "right"});
    for (const auto* one : {&root, &left, &right}) must(world.store->put(*one, device));
    const auto merge = must(office::merge_case(*world.store, survey_id(1)));
    CHECK(merge.base == hex(root));
    REQUIRE(merge.proposal.conflicts.size() == 1);
    CHECK_FALSE(confirm_merge(*world.store, merge, {}, "Ada").has_value());
    CHECK(must(world.store->heads(survey_id(1))).size() == 2);
    const auto stored =
        must(confirm_merge(*world.store, merge, {{merge.proposal.conflicts[0].key(), Side::left}}, "Ada"));
    CHECK(receipt_of(stored).at("fork") == false);
    const auto row = must(world.store->revision(receipt_of(stored).at("digest").get<std::string>()));
    CHECK(row.parents.size() == 2);
    CHECK(row.revision.at("author").at("role") == "office");
    const auto read = app::read_envelope(
        app::canonical_json({{"format", app::envelope_format}, {"rev", row.revision}, {"sig", row.signatures}}));
    REQUIRE(read.has_value());
    CHECK(world.store->signature_state(*read) == app::SignatureState::good);
    CHECK_FALSE(office::merge_case(*world.store, survey_id(1)).has_value());
    CHECK(must(world.store->revision(hex(right))).revision.at("items").begin()->at("v").at("text") == "right");
}

TEST_CASE("advice that differs is told with its place, and so is what one side lacks", "[office]") {
    const Json ours{{"carts", {{{"cart", "a"}, {"ranked", {{{"verdict", "fits"}}}}}}}};
    const Json differs{{"carts", {{{"cart", "a"}, {"ranked", {{{"verdict", "does not fit"}}}}}}}};
    const Json lacks{{"carts", {{{"ranked", {{{"verdict", "fits"}}}}}}}};
    const Json fewer{{"carts", {{{"cart", "a"}, {"ranked", Json::array()}}}}};
    CHECK(office::advice_differences(ours, ours).empty());
    CHECK(office::advice_differences(differs, ours) ==
          std::vector<std::string>{"/carts/0/ranked/0/verdict: does not fit, here fits"});
    CHECK(office::advice_differences(lacks, ours) == std::vector<std::string>{"/carts/0/cart: null, here a"});
    CHECK(office::advice_differences(ours, lacks) == std::vector<std::string>{"/carts/0/cart: a, here null"});
    CHECK(office::advice_differences(fewer, ours).size() == 1);
    CHECK(office::advice_differences({{"carts", Json::array()}}, ours).size() == 1);
}
