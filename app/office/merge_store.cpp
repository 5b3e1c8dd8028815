#include "app/office/merge_store.hpp"

#include "app/bundle/bundle_advice.hpp"
#include "app/bundle/uuid.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"

namespace sillwalk::office {

namespace {

/// Name space of the office's own id as an author; made once, at random.
constexpr std::string_view office_name_space = "f1a7c0de-4d0e-4c5b-9a53-0a5b8c6d2e91";

const RevisionRow* find(const std::vector<RevisionRow>& rows, const std::string& digest) {
    for (const RevisionRow& row : rows) {
        if (row.digest == digest) return &row;
    }
    return nullptr;
}

/// Advice and editions of the merged survey; where it cannot be judged the old advice must not stay.
void put_advice(Json& revision) {
    revision.erase("advice");
    const auto tables = app::load_tables();
    const auto catalogue = app::load_catalogue();
    if (!tables.errors.empty() || !catalogue.errors.empty()) return;
    const app::SurveyRead read = app::survey_of_revision(revision);
    if (!app::survey_mistakes(read, catalogue.catalogue, tables.tables).empty()) return;
    const auto made = app::make_bundle_advice(read.survey, catalogue.catalogue, tables.tables);
    revision["advice"] = made.advice;
    revision["editions"] = {
        {"engine", made.engine_version}, {"catalogue", made.catalogue_edition}, {"tables", made.tables_edition}};
}

}  // namespace

Result<MergeCase> merge_case(Store& store, const std::string& survey_id) {
    auto heads = store.heads(survey_id);
    if (!heads) return tl::make_unexpected(heads.error());
    if (heads->size() < 2) return engine::bad_input("this visit has one state only; there is nothing to merge");
    auto rows = store.history(survey_id);
    if (!rows) return tl::make_unexpected(rows.error());
    std::map<std::string, std::vector<std::string>> parents;
    for (const RevisionRow& row : *rows) parents[row.digest] = row.parents;
    const RevisionRow* left = find(*rows, heads->at(0));
    const RevisionRow* right = find(*rows, heads->at(1));
    if (left == nullptr || right == nullptr) return engine::bad_input("a head of this visit is not there");
    MergeCase out{*left, *right, {}, {}};
    for (const RevisionRow* row : {left, right}) {
        // What this version does not understand it must not edit.
        if (!row->revision.at("requires").empty())
            return engine::fail(engine::ErrorCode::too_new, "a newer version of this program is needed to merge these");
    }
    const RevisionRow* base = nullptr;
    if (const auto digest = common_ancestor(parents, left->digest, right->digest)) {
        out.base = *digest;
        base = find(*rows, *digest);
    }
    out.proposal = propose_merge(base == nullptr ? nullptr : &base->revision, left->revision, right->revision);
    return out;
}

Result<StoredRevision> confirm_merge(Store& store, const MergeCase& merge, const Choices& choices,
                                     const std::string& person) {
    auto items = merged_items(merge.proposal, choices);
    if (!items) return engine::bad_input("each conflict needs a choice: --take ITEM/FIELD=left, right or base");
    Json revision = merge.left.revision;
    revision["items"] = std::move(*items);
    revision["blobs"] = merge.proposal.blobs;
    revision["parents"] = {merge.left.digest, merge.right.digest};
    revision["author"] = {
        {"device_id", app::uuid_v5(office_name_space, store.key_id())}, {"role", "office"}, {"name", person}};
    revision["captured"] = {{"device_ms", store.now_ms()}};
    put_advice(revision);
    const auto envelope = app::read_envelope(app::make_envelope(revision, &store.key(), store.key_id()));
    if (!envelope) {
        const auto& error = envelope.error().errors.front();
        return engine::bad_input("the merged revision breaks the format's rules: " + error.message, error.where);
    }
    return store.put(*envelope, envelope->author.device_id);
}

}  // namespace sillwalk::office
