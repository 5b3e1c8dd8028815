#include "engine/checks/judge.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>

namespace sillwalk::engine {

Outcome outcome_of(double use, const Practice& practice) {
    if (use > 1.0) return Outcome::fails;
    return use > practice.holds_below.value ? Outcome::tight : Outcome::holds;
}

Judge::Judge(CheckId check, const CheckContext& context)
    : context_(&context), worst_(context.corner == Corner::worst), brief_(context.castor_loads != nullptr) {
    EXPECT_CONTRACT(context.cart != nullptr && context.tables != nullptr);
    finding_.check = check;
    finding_.outcome = Outcome::does_not_apply;
}

bool Judge::note(bool given, const ReadingRef& ref, Known known) {
    if (!given) {
        missing(ref);
        return false;
    }
    if (ref.field == Field::none || brief_) return true;
    finding_.drivers.add(ref);
    if (known == Known::assumed) assume(Assumption::reading_assumed);
    if (known == Known::by_eye) assume(Assumption::reading_by_eye);
    return true;
}

void Judge::missing(ReadingRef ref) {
    finding_.missing.add(ref);
}

void Judge::missing_figure() {
    figure_missing_ = true;
}

void Judge::missing_walk() {
    if (context_->walk_gap == nullptr) {
        figure_missing_ = true;
        return;
    }
    for (const ReadingRef& ref : context_->walk_gap->readings) missing(ref);
    figure_missing_ = figure_missing_ || context_->walk_gap->material_figures || context_->walk_gap->readings.empty();
}

void Judge::assume(Assumption assumption) {
    if (!brief_) finding_.assumptions.add(assumption);
}

void Judge::cite(CitationId citation) {
    if (citation != 0 && !brief_) finding_.citations.add(citation);
}

void Judge::part(const Part& part) {
    EXPECT_CONTRACT(part.use >= 0.0);
    const Outcome outcome = part.outcome.value_or(outcome_of(part.use, context_->tables->practice));
    for (const CitationId citation : part.citations) cite(citation);
    const bool worse =
        !any_part_ || outcome > finding_.outcome || (outcome == finding_.outcome && part.use > finding_.use);
    any_part_ = true;
    if (worse) replace_worst(part, outcome);
    if (outcome == Outcome::tight) {
        finding_.needs_rolling = finding_.needs_rolling || part.needs_rolling;
        finding_.needs_team = finding_.needs_team || part.needs_team;
    }
}

void Judge::replace_worst(const Part& part, Outcome outcome) {
    finding_.outcome = outcome;
    finding_.statement = part.statement;
    finding_.place = part.place;
    finding_.demand = part.demand;
    finding_.capacity = part.capacity;
    finding_.use = part.use;
    finding_.has_use = outcome != Outcome::does_not_apply;
    finding_.formula = part.formula;
    finding_.conflict = part.conflict;
    EXPECT_CONTRACT(part.numbers.size() <= finding_.numbers.size());
    finding_.numbers = {};
    std::copy(part.numbers.begin(), part.numbers.end(), finding_.numbers.begin());
    finding_.number_count = static_cast<std::uint8_t>(part.numbers.size());
}

Finding Judge::finish() const {
    Finding finding = finding_;
    const bool lacking = !finding.missing.empty() || figure_missing_;
    if (finding.outcome != Outcome::fails && lacking) finding.outcome = Outcome::not_known;
    if (finding.outcome == Outcome::not_known) {
        finding.has_use = false;
        finding.use = 0;
    }
    finding.outcome_nominal = finding.outcome;
    return finding;
}

}  // namespace sillwalk::engine
