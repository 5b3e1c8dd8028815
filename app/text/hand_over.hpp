#pragma once
/// What is handed over for one cart: the specification, the bench sheet and the parts list, as text.

#include "app/text/explain.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

struct HandOverLine {
    std::string text;
    std::string value;  ///< right of it: a number, a count; may be empty
};
struct HandOverSection {
    std::string key;  ///< "candidate", "conditions", "numbers", "assumptions", "unknowns", "cautions", "parts" …
    std::string title;
    std::vector<HandOverLine> lines;  ///< never empty
};
struct HandOver {
    std::string headline;                        ///< the candidate, or that nothing holds yet
    std::vector<HandOverSection> specification;  ///< the cautions are always there
    std::vector<HandOverSection> bench;          ///< parts list first; empty where there is no first choice
};

/// `conditions` is empty while they are being worked out. A failing candidate is never specified: where nothing holds,
/// the nearest is named with what fails, and there is no bench sheet.
[[nodiscard]] HandOver hand_over(const engine::Advice& advice, const engine::CartAdvice& cart,
                                 const std::optional<std::vector<engine::Condition>>& conditions,
                                 const TextContext& context);

}  // namespace sillwalk::app
