#pragma once
/// The cautions (README.md "Limits and cautions"), as keys of assets/text, in the order in which every hand-over shows
/// them.

#include <array>

namespace sillwalk::engine {

inline constexpr std::array<const char*, 7> caution_keys{"caution.ratings", "caution.push",    "caution.chemical",
                                                         "caution.moving",  "caution.lifting", "caution.agents",
                                                         "caution.codes"};

}  // namespace sillwalk::engine
