#include "engine/select/missing.hpp"

#include "engine/select/sampling_demand.hpp"
#include "engine/select/sampling_search.hpp"

#include <optional>

namespace sillwalk::engine {
namespace {

constexpr int scanned = 128;  // parts of the range that are looked at first
constexpr int halvings = 8;   // of a part that holds a border

class Scan {
public:
    Scan(const Survey& survey, const Catalogue& catalogue, const Tables& tables, const CartAdvice& advice,
         const PlausibleRange& range)
        : space_(catalogue, tables), demand_(resolve(survey, advice.cart, tables)) {
        const std::vector<SampledReading> one{{range.reading, true, range.low_si, range.high_si}};
        sampled_.emplace(demand_, one);
        score_.emplace(space_, sampled_->demand());
        unscored_ = unscored_candidates(space_, demand_);
    }

    Headline at(double value) {
        sampled_->set({&value, 1});
        score_->begin_again(sampled_->demand());
        const auto best = best_holding(*score_, unscored_, 1);
        if (!best.empty()) bring_forward(unscored_, best.front().candidate);
        return headline_of(best);
    }

    /// Adds the stretches between two values to `ranges`, whose last one ends at `from` with the answer `before`.
    void add_between(std::vector<AnswerRange>& ranges, double from, const Headline& before, double to,
                     const Headline& after, int halvings_left) {
        if (before == after) {
            ranges.back().to_si = to;
            return;
        }
        const double middle = 0.5 * (from + to);
        if (halvings_left == 0) {
            ranges.back().to_si = middle;
            ranges.push_back({middle, to, after, false});
            return;
        }
        const Headline between = at(middle);
        add_between(ranges, from, before, middle, between, halvings_left - 1);
        add_between(ranges, middle, between, to, after, halvings_left - 1);
    }

private:
    CandidateSpace space_;
    CartDemand demand_;
    std::optional<SampledDemand> sampled_;
    std::optional<CartScore> score_;
    std::vector<ScoredCandidate> unscored_;
};

bool differs(const Headline& now, const Headline& then) {
    if (now.nothing_holds || then.nothing_holds) return now.nothing_holds != then.nothing_holds;
    if (!(now.candidate == then.candidate)) return true;
    return now.verdict != then.verdict && now.verdict != Verdict::cannot_tell;
}

}  // namespace

MissingReading missing_answers(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                               const CartAdvice& advice, const PlausibleRange& range) {
    MissingReading missing{range.reading, range.low_si, range.high_si, {}};
    Scan scan(survey, catalogue, tables, advice, range);
    const double part = (range.high_si - range.low_si) / scanned;
    double from = range.low_si;
    Headline before = scan.at(from);
    missing.ranges.push_back({from, from, before, false});
    for (int i = 1; i <= scanned; ++i) {
        const double to = i == scanned ? range.high_si : range.low_si + part * i;
        const Headline after = scan.at(to);
        scan.add_between(missing.ranges, from, before, to, after, halvings);
        from = to;
        before = after;
    }
    const Headline now = headline_of(advice);
    for (AnswerRange& stretch : missing.ranges) stretch.differs = differs(now, stretch.answer);
    return missing;
}

}  // namespace sillwalk::engine
