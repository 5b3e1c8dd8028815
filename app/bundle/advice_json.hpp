#pragma once
/// Advice as JSON, format "sillwalk-advice/1": complete, key order fixed, no pointer, clock or locale in it.
/// Schema: docs/reference/advice.schema.json.

#include "app/data/json_reader.hpp"
#include "engine/model/advice.hpp"
#include "engine/model/tables.hpp"

namespace sillwalk::app {

/// How numbers are written. A bundle holds no floating-point numbers, so there they are decimal texts.
enum class NumberForm { number, decimal_text };

[[nodiscard]] Json advice_to_json(const engine::Advice& advice, const engine::Survey& survey,
                                  const engine::Catalogue& catalogue, const engine::Tables& tables, NumberForm form);
[[nodiscard]] Json finding_to_json(const engine::Finding& finding, const engine::Survey& survey,
                                   const engine::Tables& tables, NumberForm form);
[[nodiscard]] Json candidate_to_json(const engine::Candidate& candidate, const engine::Catalogue& catalogue);

/// {"length_m": 0.019}
[[nodiscard]] Json amount_to_json(const engine::Amount& amount, NumberForm form);
/// {"crossing": "freezer-door"}; null where there is none.
[[nodiscard]] Json place_to_json(const engine::Place& place, const engine::Survey& survey);

/// Rounded to nine significant digits, so that the last bit of a library function cannot change a byte.
[[nodiscard]] Json number_to_json(double value, NumberForm form);

}  // namespace sillwalk::app
