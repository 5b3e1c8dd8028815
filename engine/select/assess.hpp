#pragma once
/// The only door: a survey, a catalogue and the tables in, the advice out. Pure and deterministic.

#include "engine/base/result.hpp"
#include "engine/model/advice.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::engine {

class CandidateSpace;

struct AssessOptions {
    std::size_t ranked = 5;       ///< how many ranked candidates are kept per cart
    std::size_t turned_down = 5;  ///< how many turned-down constructions are kept per cart
    std::optional<std::size_t> only_cart;
};

/// Contradictions and dangling ids in a survey, each with its JSON path. Empty means assess() may be called.
[[nodiscard]] std::vector<Error> validate(const Survey& survey, const Catalogue& catalogue, const Tables& tables);

/// Precondition: validate() is empty.
[[nodiscard]] Advice assess(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                            const AssessOptions& options = {});
/// The same with a catalogue prepared once for many surveys (engine/select/score_catalogue.hpp).
[[nodiscard]] Advice assess(const Survey& survey, CandidateSpace& space, const AssessOptions& options = {});

/// Folds findings: any fails -> does not fit; else any not known -> cannot tell; else any tight -> with conditions.
[[nodiscard]] Verdict verdict_of(const std::vector<Finding>& findings);

[[nodiscard]] const char* engine_version();

}  // namespace sillwalk::engine
