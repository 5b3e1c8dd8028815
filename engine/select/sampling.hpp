#pragma once
/// Readings to take again: the readings of one cart are drawn inside their tolerances, each independent of the others
/// and equally likely anywhere in its range; each draw is assessed as if it were the truth. A missing reading is drawn
/// inside its plausible range. Pure: the seed is passed in.

#include "engine/model/advice.hpp"
#include "engine/model/survey.hpp"
#include "engine/model/tables.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace sillwalk::engine {

/// Where a reading that is not there may lie, SI: kelvin, tangent, share, hertz.
struct PlausibleRange {
    ReadingRef reading;
    double low_si = 0, high_si = 0;
};

struct SamplingOptions {
    std::size_t draws = 2000;
    std::uint64_t seed = 1;
    /// Assess every candidate in every draw. Slow; for checking the short way.
    bool every_candidate = false;
};

/// `advice` is assess() of the same survey, catalogue and tables. Ranges for readings that it does not miss are not
/// used.
/// Each draw needs only the candidates that can come first. Those are found by drawing with all candidates, to start
/// with, until `settled_draws` draws in a row brought no first choice that was not kept before.
[[nodiscard]] ReadAgain read_again(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                                   const CartAdvice& advice, std::span<const PlausibleRange> plausible,
                                   const SamplingOptions& options = {});

/// If none of n draws in a row shows a thing, its chance is below 3/n with 95 % confidence (the "rule of three":
/// (1 - 3/n)^n is about e^-3). So at most 4.7 % of the later draws are expected to have a first choice that was left
/// out.
inline constexpr std::size_t settled_draws = 64;

/// The headline of each draw, in order: what read_again() counts.
[[nodiscard]] std::vector<Headline> sampled_headlines(const Survey& survey, const Catalogue& catalogue,
                                                      const Tables& tables, const CartAdvice& advice,
                                                      std::span<const PlausibleRange> plausible,
                                                      const SamplingOptions& options);

/// First-order share of the variance of the outputs together that an input carries, the input given as its quantile 0
/// to 1 in each draw: sum of Var(E[Y_k|X]) over the outputs, over the sum of Var(Y_k) (Gamboa, Janon, Klein, Lagnoux,
/// "Sensitivity analysis for multidimensional and functional outputs", arXiv 1311.1797; with one output, Sobol's
/// first-order index). Estimated from the draws themselves by classes of equal width of the quantile (Plischke,
/// "Computing Global Sensitivity Measures from Given Samples"), freed of what chance alone adds (epsilon squared: Liu,
/// "Bias Correction for Eta Squared in One-Way ANOVA", Methodology 18(1), 2022). May be slightly negative; 0 where
/// nothing varies.
[[nodiscard]] double first_order_share(std::span<const double> quantile, std::span<const std::vector<double>> outputs,
                                       std::size_t classes);
/// Classes for so many draws.
[[nodiscard]] std::size_t sampling_classes(std::size_t draws);

}  // namespace sillwalk::engine
