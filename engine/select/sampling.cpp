#include "engine/select/sampling.hpp"

#include "engine/base/random.hpp"
#include "engine/select/missing.hpp"
#include "engine/select/sampling_demand.hpp"
#include "engine/select/sampling_search.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace sillwalk::engine {
namespace {

constexpr std::size_t kept_at_first = 12;  // of the best and of the near misses, at the readings as they stand
constexpr std::size_t kept_each_draw = 4;

std::vector<PlausibleRange> needed(std::span<const PlausibleRange> plausible, const CartAdvice& advice) {
    std::vector<PlausibleRange> ranges;
    for (const PlausibleRange& range : plausible) {
        const auto& missing = advice.not_read;
        if (std::find(missing.begin(), missing.end(), range.reading) != missing.end()) ranges.push_back(range);
    }
    return ranges;
}

using CandidateKey = std::tuple<std::uint32_t, std::uint32_t, std::uint32_t, Preparation>;
CandidateKey key_of(const Candidate& candidate) {
    return {candidate.wheel, candidate.bearing, candidate.rig, candidate.preparation};
}

struct Draw {
    Headline headline;
    bool first_choice_holds = false;
};

class Sampler {
public:
    Sampler(const Survey& survey, const Catalogue& catalogue, const Tables& tables, const CartAdvice& advice,
            std::span<const PlausibleRange> plausible, const SamplingOptions& options)
        : space_(catalogue, tables),
          demand_(resolve(survey, advice.cart, tables)),
          options_(options),
          readings_(sampled_readings(demand_, needed(plausible, advice))),
          sampled_(demand_, readings_),
          score_(space_, sampled_.demand()),
          unscored_(unscored_candidates(space_, demand_)),
          kept_(unscored_.size(), false) {
        set_first_choice(advice);
    }

    [[nodiscard]] const std::vector<SampledReading>& readings() const { return readings_; }
    [[nodiscard]] double quantile(std::size_t draw, std::size_t reading) const {
        return random_unit(options_.seed, draw * readings_.size() + reading);
    }

    std::vector<Draw> run() {
        std::vector<Draw> draws;
        draws.reserve(options_.draws);
        keep_from_survey();
        for (std::size_t in_a_row = 0; draws.size() < options_.draws;) {
            if (!options_.every_candidate && in_a_row >= settled_draws) break;
            in_a_row = draw_with_all(draws) ? in_a_row + 1 : 0;
        }
        std::vector<ScoredCandidate> few = kept();
        while (draws.size() < options_.draws) {
            set_draw(draws.size());
            const auto best = best_holding(score_, few, 1);
            draws.push_back(result(best));
            if (!best.empty()) bring_forward(few, best.front().candidate);
        }
        return draws;
    }

private:
    void set_first_choice(const CartAdvice& advice) {
        const RankedCandidate* first = advice.nearest ? &*advice.nearest : nullptr;
        if (!advice.ranked.empty()) first = &advice.ranked.front();
        for (const ScoredCandidate& scored : unscored_) {
            if (first != nullptr && scored.candidate == first->candidate) first_choice_ = scored;
        }
    }

    void set_draw(std::size_t draw) {
        std::vector<double> values;
        for (std::size_t i = 0; i < readings_.size(); ++i) {
            const SampledReading& reading = readings_[i];
            values.push_back(reading.low_si + quantile(draw, i) * (reading.high_si - reading.low_si));
        }
        sampled_.set(values);
        score_.begin_again(sampled_.demand());
    }

    Draw result(const std::vector<ScoredCandidate>& best) {
        Draw draw;
        draw.headline = headline_of(best);
        if (!first_choice_) return draw;
        ScoredCandidate first = *first_choice_;
        while (first.next != Stage::complete && first.score.counts.fails == 0) score_.advance(first);
        draw.first_choice_holds = first.score.counts.fails == 0;
        return draw;
    }

    /// Keeps a candidate; says whether it was kept before.
    bool keep(const ScoredCandidate& scored) {
        const auto at = std::lower_bound(
            unscored_.begin(), unscored_.end(), key_of(scored.candidate),
            [](const ScoredCandidate& row, const CandidateKey& key) { return key_of(row.candidate) < key; });
        const auto index = static_cast<std::size_t>(at - unscored_.begin());
        const bool before = kept_[index];
        if (!before) order_.push_back(index);
        kept_[index] = true;
        return before;
    }

    /// The best and the near misses at the careful ends of the ranges and in their middle.
    void keep_from_survey() {
        for (const CartDemand& demand : {demand_, collapse(demand_)}) {
            score_.begin_again(demand);
            for (const ScoredCandidate& scored : best_holding(score_, unscored_, kept_at_first)) keep(scored);
            for (const ScoredCandidate& scored : nearest_to_holding(score_, unscored_, kept_at_first)) keep(scored);
        }
    }

    /// Says whether the first choice was among those kept before.
    bool draw_with_all(std::vector<Draw>& draws) {
        set_draw(draws.size());
        const auto best = best_holding(score_, unscored_, kept_each_draw);
        draws.push_back(result(best));
        bool known = true;
        for (std::size_t i = 0; i < best.size(); ++i) {
            const bool before = keep(best[i]);
            if (i == 0) known = before;
        }
        return known;
    }

    /// Those kept first lead: they are likely to come first, and then the others are soon left.
    [[nodiscard]] std::vector<ScoredCandidate> kept() const {
        std::vector<ScoredCandidate> few;
        for (const std::size_t index : order_) few.push_back(unscored_[index]);
        return few;
    }

    CandidateSpace space_;
    CartDemand demand_;
    SamplingOptions options_;
    std::vector<SampledReading> readings_;
    SampledDemand sampled_;
    CartScore score_;
    std::vector<ScoredCandidate> unscored_;
    std::optional<ScoredCandidate> first_choice_;
    std::vector<bool> kept_;
    std::vector<std::size_t> order_;
};

bool stays_first(const Headline& first, const Headline& drawn) {
    if (first.nothing_holds || drawn.nothing_holds) return first.nothing_holds == drawn.nothing_holds;
    return first.candidate == drawn.candidate;
}

double thousandths(double share) {
    return std::round(1000.0 * share) / 1000.0;
}

void add_others(ReadAgain& again, const Headline& first, const std::vector<Draw>& draws) {
    std::map<CandidateKey, std::size_t> counts;
    for (const Draw& draw : draws) {
        if (draw.headline.nothing_holds || stays_first(first, draw.headline)) continue;
        ++counts[key_of(draw.headline.candidate)];
    }
    for (const auto& [key, count] : counts) {
        const auto& [wheel, bearing, rig, preparation] = key;
        again.others.push_back(
            {{wheel, bearing, rig, preparation}, static_cast<double>(count) / static_cast<double>(draws.size())});
    }
    std::stable_sort(again.others.begin(), again.others.end(),
                     [](const OtherChoice& a, const OtherChoice& b) { return a.share > b.share; });
}

/// One output per answer that occurs: 1 in the draws that gave it.
std::vector<std::vector<double>> answers_of(const std::vector<Draw>& draws) {
    std::map<std::pair<bool, CandidateKey>, std::vector<double>> answers;
    for (std::size_t i = 0; i < draws.size(); ++i) {
        const Headline& headline = draws[i].headline;
        auto& output = answers[{headline.nothing_holds, key_of(headline.candidate)}];
        output.resize(draws.size(), 0.0);
        output[i] = 1.0;
    }
    std::vector<std::vector<double>> outputs;
    for (auto& [answer, output] : answers) outputs.push_back(std::move(output));
    return outputs;
}

void add_counts(ReadAgain& again, const Headline& first, const std::vector<Draw>& draws) {
    const auto share = [&](auto&& holds) {
        return static_cast<double>(std::count_if(draws.begin(), draws.end(), holds)) /
               static_cast<double>(draws.size());
    };
    again.stays_first = share([&](const Draw& draw) { return stays_first(first, draw.headline); });
    again.standard_error = std::sqrt(again.stays_first * (1.0 - again.stays_first) / static_cast<double>(draws.size()));
    again.holds = share([](const Draw& draw) { return draw.first_choice_holds; });
    again.nothing_holds = share([](const Draw& draw) { return draw.headline.nothing_holds; });
    add_others(again, first, draws);
}

void add_shares(ReadAgain& again, const Sampler& sampler, const std::vector<Draw>& draws) {
    const std::vector<std::vector<double>> answers = answers_of(draws);
    std::vector<double> quantiles(draws.size());
    const std::size_t classes = sampling_classes(draws.size());
    // Four standard deviations of the share that a reading without any effect gets by chance.
    again.least_share = 4.0 * std::sqrt(2.0 * static_cast<double>(classes - 1)) / static_cast<double>(draws.size());
    double sum = 0.0;
    for (std::size_t i = 0; i < sampler.readings().size(); ++i) {
        const SampledReading& reading = sampler.readings()[i];
        for (std::size_t draw = 0; draw < draws.size(); ++draw) quantiles[draw] = sampler.quantile(draw, i);
        const double share = first_order_share(quantiles, answers, classes);
        const double told = share < again.least_share ? 0.0 : thousandths(share);
        sum += told;
        again.readings.push_back({reading.reading, reading.missing, reading.low_si, reading.high_si, told});
    }
    again.together = answers.size() > 1 ? std::clamp(thousandths(1.0 - sum), 0.0, 1.0) : 0.0;
    std::sort(again.readings.begin(), again.readings.end(), [](const ReadingDoubt& a, const ReadingDoubt& b) {
        return std::make_tuple(-a.share, !a.missing, a.reading) < std::make_tuple(-b.share, !b.missing, b.reading);
    });
}

void add_not_sampled(ReadAgain& again, const CartAdvice& advice) {
    for (const ReadingRef& reading : advice.not_read) {
        if (reading.field == Field::none) continue;
        const bool sampled = std::any_of(again.readings.begin(), again.readings.end(),
                                         [&](const ReadingDoubt& row) { return row.reading == reading; });
        if (!sampled) again.not_sampled.push_back(reading);
    }
}

}  // namespace

std::vector<Headline> sampled_headlines(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                                        const CartAdvice& advice, std::span<const PlausibleRange> plausible,
                                        const SamplingOptions& options) {
    std::vector<Headline> headlines;
    for (const Draw& draw : Sampler(survey, catalogue, tables, advice, plausible, options).run()) {
        headlines.push_back(draw.headline);
    }
    return headlines;
}

ReadAgain read_again(const Survey& survey, const Catalogue& catalogue, const Tables& tables, const CartAdvice& advice,
                     std::span<const PlausibleRange> plausible, const SamplingOptions& options) {
    ReadAgain again;
    again.draws = options.draws;
    again.seed = options.seed;
    if (options.draws == 0) return again;
    Sampler sampler(survey, catalogue, tables, advice, plausible, options);
    const std::vector<Draw> draws = sampler.run();
    const Headline first = headline_of(advice);
    add_counts(again, first, draws);
    add_shares(again, sampler, draws);
    add_not_sampled(again, advice);
    for (const ReadingDoubt& row : again.readings) {
        if (!row.missing) continue;
        again.missing.push_back(
            missing_answers(survey, catalogue, tables, advice, {row.reading, row.low_si, row.high_si}));
    }
    return again;
}

}  // namespace sillwalk::engine
