#include "app/bundle/revision.hpp"

#include "app/bundle/canonical.hpp"
#include "app/bundle/uuid.hpp"
#include "engine/base/contract.hpp"

#include <algorithm>
#include <array>

namespace sillwalk::app {

namespace {

/// Name space of the ids that this format derives; made once, at random.
constexpr std::string_view item_name_space = "6f0d5bbe-1f0c-4d64-9f0e-6b6c1d6f6a11";

struct ListKind {
    const char* list;
    const char* kind;
};
constexpr std::array<ListKind, 4> list_kinds{
    {{"rooms", "room"}, {"crossings", "crossing"}, {"washings", "washing"}, {"carts", "cart"}}};

Json item(const char* kind, std::int64_t order, Json value) {
    return {{"kind", kind}, {"order", order}, {"v", std::move(value)}};
}

/// Damage is an item of its own, so that two people can note different damage on one cart without a conflict.
void take_damage(Json& cart, const std::string& survey_id, const std::string& cart_uuid, Json& items) {
    const auto damage = cart.find("damage");
    if (damage == cart.end()) return;
    std::int64_t order = 0;
    for (Json& row : *damage) {
        const std::string name = cart_uuid + "/" + std::to_string(order);
        row["cart"] = cart_uuid;
        items[item_uuid(survey_id, "damage", name)] = item("damage", order++, std::move(row));
    }
    cart.erase(damage);
}

Json survey_json(const engine::Survey& survey) {
    JsonErrors errors;
    auto parsed = parse_json(write_survey(survey), errors);
    EXPECT_CONTRACT(parsed && parsed->is_object());
    return std::move(*parsed);
}

Json blob_json(const BlobRef& blob) {
    Json out{{"sha256", to_hex(blob.digest)},
             {"bytes", blob.bytes},
             {"media", blob.media},
             {"width_px", blob.width_px},
             {"height_px", blob.height_px}};
    if (!blob.item.empty()) out["item"] = blob.item;
    return out;
}

/// Items of one kind, in their order.
std::vector<std::pair<std::string, const Json*>> of_kind(const Json& items, std::string_view kind) {
    std::vector<std::pair<std::string, const Json*>> out;
    for (const auto& [uuid, entry] : items.items()) {
        if (entry.value("kind", "") == kind && !entry.value("deleted", false)) out.emplace_back(uuid, &entry);
    }
    std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
        return a.second->value("order", std::int64_t{0}) < b.second->value("order", std::int64_t{0});
    });
    return out;
}

}  // namespace

std::string survey_uuid(const engine::SurveyId& id) {
    return is_uuid(id.text()) ? id.text() : uuid_v5(item_name_space, id.text());
}

std::string item_uuid(std::string_view survey_id, std::string_view kind, std::string_view id) {
    if (is_uuid(id)) return std::string(id);
    std::string name(survey_id);
    name.append("/").append(kind).append("/").append(id);
    return uuid_v5(item_name_space, name);
}

Json make_revision(const RevisionInput& input) {
    Json survey = survey_json(input.survey);
    const std::string survey_id = survey_uuid(input.survey.id);
    Json items = Json::object();
    for (const ListKind& row : list_kinds) {
        std::int64_t order = 0;
        for (Json& value : survey[row.list]) {
            const std::string uuid = item_uuid(survey_id, row.kind, value.at("id").get<std::string>());
            if (std::string_view(row.kind) == "cart") take_damage(value, survey_id, uuid, items);
            items[uuid] = item(row.kind, order++, std::move(value));
        }
        survey.erase(row.list);
    }
    if (const auto notes = survey.find("notes"); notes != survey.end()) {
        items[item_uuid(survey_id, "notes", "visit")] = item("notes", 0, {{"text", *notes}});
        survey.erase(notes);
    }
    items[item_uuid(survey_id, "site", "site")] = item("site", 0, std::move(survey));

    Json parents = Json::array();
    for (const Digest& parent : input.parents) parents.push_back(to_hex(parent));
    Json blobs = Json::array();
    for (const BlobRef& blob : input.blobs) blobs.push_back(blob_json(blob));
    Json out{
        {"format", revision_format},
        {"requires", Json::array()},
        {"survey_id", survey_id},
        {"parents", std::move(parents)},
        {"author", {{"device_id", input.author.device_id}, {"role", input.author.role}, {"name", input.author.name}}},
        {"captured", {{"device_ms", input.captured_ms}}},
        {"editions",
         {{"engine", input.engine_version}, {"catalogue", input.catalogue_edition}, {"tables", input.tables_edition}}},
        {"items", std::move(items)},
        {"blobs", std::move(blobs)}};
    if (input.advice) out["advice"] = *input.advice;
    return out;
}

SurveyRead survey_of_revision(const Json& revision) {
    const Json& items = revision.at("items");
    Json survey = Json::object();
    for (const auto& [uuid, site] : of_kind(items, "site")) survey = site->at("v");
    for (const ListKind& row : list_kinds) {
        Json list = Json::array();
        for (const auto& [uuid, entry] : of_kind(items, row.kind)) {
            Json value = entry->at("v");
            if (std::string_view(row.kind) == "cart") {
                for (const auto& [damage_uuid, damage] : of_kind(items, "damage")) {
                    if (damage->at("v").value("cart", "") != uuid) continue;
                    Json noted = damage->at("v");
                    noted.erase("cart");
                    value["damage"].push_back(std::move(noted));
                }
            }
            list.push_back(std::move(value));
        }
        survey[row.list] = std::move(list);
    }
    for (const auto& [uuid, notes] : of_kind(items, "notes")) survey["notes"] = notes->at("v").at("text");
    return read_survey(survey.dump(), UnknownMembers::ignore);
}

Digest revision_digest(const Json& revision) {
    return sha256(canonical_json(revision));
}

std::string make_envelope(const Json& revision, const SigningKey* key, std::string_view key_id) {
    Json envelope{{"format", envelope_format}, {"rev", revision}, {"sig", Json::array()}};
    if (key != nullptr) {
        const Signature signature = sign(*key, revision_format, revision_digest(revision));
        envelope["sig"].push_back({{"alg", "Ed25519"}, {"kid", key_id}, {"value", to_base64url(byte_view(signature))}});
    }
    return canonical_json(envelope);
}

}  // namespace sillwalk::app
