#pragma once
/// How sure the first choice is, which readings to take again, and what a missing reading would change, as a person
/// reads it.

#include "app/text/explain.hpp"

#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

struct MissingText {
    std::string reading;             ///< "rise, Freezer door sill"
    std::vector<std::string> lines;  ///< one per stretch of its range
};
struct ReadAgainText {
    std::string headline;              ///< "It stays first in 58 of 100 draws of the readings inside their tolerances."
    std::vector<std::string> answers;  ///< what else came first, or that nothing held
    std::vector<std::string> readings;  ///< those that carry doubt, the most first
    std::vector<MissingText> missing;
    std::vector<std::string> notes;  ///< what could not be sampled; draws and seed
};

/// Sentences of at most 25 words each. `others` says how many other first choices are named.
[[nodiscard]] ReadAgainText read_again_text(const engine::ReadAgain& again, const engine::CartAdvice& advice,
                                            const TextContext& context, std::size_t others = 3);

/// A reading's value as an amount; none for readings that are frequencies or choices.
[[nodiscard]] std::optional<engine::Amount> reading_amount(engine::Field field, double si);
/// "19 mm", "−25.0 °C", "12 an hour".
[[nodiscard]] std::string show_reading(engine::Field field, double si, const TextContext& context);

}  // namespace sillwalk::app
