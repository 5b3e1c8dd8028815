#pragma once
/// The advice that a revision carries: worked out by the engine, cut to what a reader needs, numbers as decimal texts.

#include "app/data/json_reader.hpp"
#include "engine/model/catalogue.hpp"
#include "engine/model/survey.hpp"
#include "engine/model/tables.hpp"

#include <string>

namespace sillwalk::app {

struct BundleAdvice {
    Json advice;
    std::string engine_version, catalogue_edition, tables_edition;
};

/// Two candidates and three turned down per cart; what each crossing says is left out, since it can be computed again.
/// Precondition: validate() of the survey is empty.
[[nodiscard]] BundleAdvice make_bundle_advice(const engine::Survey& survey, const engine::Catalogue& catalogue,
                                              const engine::Tables& tables);

}  // namespace sillwalk::app
