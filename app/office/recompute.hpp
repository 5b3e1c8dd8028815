#pragma once
/// Runs the engine on what came in and compares with the advice that the tablet made.

#include "app/data/json_reader.hpp"

#include <string>
#include <vector>

namespace sillwalk::office {

struct Recomputed {
    bool has_advice = false;                ///< the revision carries one
    bool same_editions = false;             ///< engine, catalogue and tables are those of the tablet
    std::string tablet_editions, editions;  ///< "engine 0.1.0, catalogue 2026-11, tables 2026-11-25"
    std::vector<std::string> mistakes;      ///< why the survey cannot be judged; then nothing was compared
    std::vector<std::string> differences;   ///< "/carts/0/ranked/0/verdict: fits, here does not fit"
};

[[nodiscard]] Recomputed recompute(const app::Json& revision);

/// Where one says something that the other does not. Both are cut by make_bundle_advice, so what one lacks differs too.
[[nodiscard]] std::vector<std::string> advice_differences(const app::Json& theirs, const app::Json& ours);

}  // namespace sillwalk::office
