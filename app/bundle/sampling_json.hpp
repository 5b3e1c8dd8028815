#pragma once
/// The parts of the advice that are asked for apart, as JSON: member "read_again" of a cart and "site" of the advice.

#include "app/bundle/advice_json.hpp"

namespace sillwalk::app {

[[nodiscard]] Json read_again_to_json(const engine::ReadAgain& again, const engine::Catalogue& catalogue,
                                      NumberForm form);
[[nodiscard]] Json site_to_json(const engine::SiteAdvice& site, const engine::Survey& survey,
                                const engine::Catalogue& catalogue, NumberForm form);

}  // namespace sillwalk::app
