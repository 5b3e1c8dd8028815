#pragma once
/// Merging two heads that the office holds.

#include "app/office/merge.hpp"
#include "app/office/store.hpp"

namespace sillwalk::office {

struct MergeCase {
    RevisionRow left, right;
    std::string base;  ///< digest; empty where the two have no common ancestor
    Proposal proposal;
};

/// The first two heads of the visit. bad_input where there is nothing to merge.
[[nodiscard]] Result<MergeCase> merge_case(Store& store, const std::string& survey_id);

/// Makes the merged revision in the name of `person`, signed by the office, and stores it. bad_input where a conflict
/// has no choice. The advice is worked out anew where the merged survey can be judged.
[[nodiscard]] Result<StoredRevision> confirm_merge(Store& store, const MergeCase& merge, const Choices& choices,
                                                   const std::string& person);

}  // namespace sillwalk::office
