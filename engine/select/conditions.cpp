#include "engine/select/conditions.hpp"

#include "engine/checks/checks.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/checks/judge.hpp"
#include "engine/checks/temperature_margin.hpp"
#include "engine/select/score_cart.hpp"

#include <algorithm>
#include <cstddef>

namespace sillwalk::engine {
namespace {

using Conditions = std::vector<Condition>;

void add(Conditions& conditions, Condition condition) {
    if (std::find(conditions.begin(), conditions.end(), condition) == conditions.end()) conditions.push_back(condition);
}

void add(Conditions& conditions, ConditionKind kind, Amount value, Place place = {}) {
    Condition condition;
    condition.kind = kind;
    condition.place = place;
    condition.amounts.push(value);
    add(conditions, condition);
}

void add(Conditions& conditions, ConditionKind kind, Place place = {}) {
    Condition condition;
    condition.kind = kind;
    condition.place = place;
    add(conditions, condition);
}

void add_for(Conditions& conditions, ConditionKind kind, const Finding& finding) {
    Condition condition;
    condition.kind = kind;
    condition.check = finding.check;
    if (kind == ConditionKind::tight) {
        condition.place = finding.place;
        condition.amounts.push({finding.use, Kind::share});
    }
    if (kind == ConditionKind::read_again) condition.reading = finding.turns_on_reading;
    add(conditions, condition);
}

/// The readings of the cart's way that were assumed.
std::vector<ReadingRef> assumed_readings(const CartDemand& demand) {
    std::vector<ReadingRef> assumed;
    const auto note = [&assumed](const auto& input) {
        if (input.given && input.known == Known::assumed) assumed.push_back(input.ref);
    };
    for_each_input(demand, note);
    note(demand.sharing), note(demand.moved_by), note(demand.plate_pattern);
    note(demand.static_ask), note(demand.non_marking);
    for (const StopDemand& stop : demand.stops) {
        note(stop.air_movement), note(stop.wetness), note(stop.floor), note(stop.hygiene), note(stop.cleanroom_class);
    }
    for (const CrossingDemand& crossing : demand.crossings) note(crossing.kind), note(crossing.run_up);
    for (const WashingDemand& washing : demand.washings) note(washing.agent), note(washing.rinsed);
    std::sort(assumed.begin(), assumed.end());
    assumed.erase(std::unique(assumed.begin(), assumed.end()), assumed.end());
    return assumed;
}

/// The check that a reading weighs on most: findings name the readings of their own place first. Among equals the
/// worst.
const Finding* heaviest_on(const std::vector<Finding>& findings, const ReadingRef& reading) {
    const Finding* heaviest = nullptr;
    std::ptrdiff_t nearest = 0;
    for (const Finding& finding : findings) {
        const auto at = std::find(finding.drivers.begin(), finding.drivers.end(), reading);
        if (at == finding.drivers.end()) continue;
        const std::ptrdiff_t place = at - finding.drivers.begin();
        const bool heavier =
            heaviest == nullptr || place < nearest ||
            (place == nearest && (finding.outcome > heaviest->outcome ||
                                  (finding.outcome == heaviest->outcome && finding.use > heaviest->use)));
        if (!heavier) continue;
        heaviest = &finding;
        nearest = place;
    }
    return heaviest;
}

/// Each assumed reading once.
void add_assumed(Conditions& conditions, const std::vector<Finding>& findings, const CartDemand& demand) {
    for (const ReadingRef& reading : assumed_readings(demand)) {
        const Finding* heaviest = heaviest_on(findings, reading);
        if (heaviest == nullptr) continue;
        Condition condition;
        condition.kind = ConditionKind::assumed_readings;
        condition.check = heaviest->check;
        condition.reading = reading;
        add(conditions, condition);
    }
}

/// What the cart was judged for.
void add_readings(Conditions& conditions, const CheckContext& context) {
    const CartDemand& cart = *context.cart;
    if (cart.payload.given) add(conditions, ConditionKind::payload, amount(cart.payload.nominal));
    const Wheel& wheel = *context.wheel;
    const RatingClassRow* row = wheel.rating_class ? context.tables->rating(*wheel.rating_class) : nullptr;
    if (wheel.rated_speed || row != nullptr) {
        add(conditions, ConditionKind::speed, amount(wheel.rated_speed ? *wheel.rated_speed : row->test_speed.value));
    }
    if (cart.parked_loaded.given) {
        const Duration allowed = context.tables->practice.parked_limit.value;
        const bool longer = cart.parked_loaded.high > allowed;
        add(conditions, ConditionKind::parked, amount(longer ? cart.parked_loaded.nominal : allowed));
    }
}

template <class Take>
void narrow(std::optional<Temperature>& limit, const std::optional<Temperature>& other, const Take& take) {
    if (other) limit = limit ? take(*limit, *other) : *other;
}

/// The narrowest range of wheel, bearing and rig. Where the maker of a one-piece urethane states none, practice speaks.
void add_temperatures(Conditions& conditions, const CheckContext& context) {
    const Wheel& wheel = *context.wheel;
    const Practice& practice = context.tables->practice;
    const bool one_piece = wheel.construction == Construction::one_piece_urethane;
    const auto or_practice = [&](const std::optional<Temperature>& own, const Figure<Temperature>& figure) {
        return own || !one_piece ? own : std::optional(figure.value);
    };
    auto least = or_practice(wheel.temperature_min, practice.urethane_rated_min);
    auto most = or_practice(wheel.temperature_max, practice.urethane_rated_max);
    const auto warmer = [](Temperature a, Temperature b) { return std::max(a, b); };
    const auto cooler = [](Temperature a, Temperature b) { return std::min(a, b); };
    narrow(least, context.bearing->temperature_min, warmer);
    narrow(least, context.rig->temperature_min, warmer);
    narrow(most, context.bearing->temperature_max, cooler);
    if (least && most) {
        Condition range;
        range.kind = ConditionKind::temperature_range;
        range.amounts.push(amount(*least));
        range.amounts.push(amount(*most));
        add(conditions, range);
    } else if (most) {
        add(conditions, ConditionKind::temperature_max, amount(*most));
    }
    const auto floor = or_practice(wheel.impact_floor, practice.urethane_impact_floor);
    Judge judge(CheckId::cold, context);
    const auto& crossings = context.cart->crossings;
    const bool edges = std::any_of(crossings.begin(), crossings.end(), [&](const CrossingDemand& crossing) {
        const auto obstacle = obstacle_at(judge, context, crossing, wheel.diameter);
        return obstacle && obstacle->has_edge();
    });
    if (floor && edges) add(conditions, ConditionKind::no_blows_below, amount(*floor));
}

/// Each washing by itself: what it asks of this candidate.
void add_washings(Conditions& conditions, const CheckContext& context) {
    const auto& washings = context.cart->washings;
    for (const WashingDemand& washing : washings) {
        const Place place{PlaceKind::washing, washing.washing};
        if (washing.temperature.given) {
            add(conditions, ConditionKind::wash_temperature, amount(washing.temperature.nominal), place);
        }
    }
    for (const WashingDemand& washing : washings) {
        CartDemand alone = *context.cart;
        alone.washings = {washing};
        CheckContext with_one = context;
        with_one.cart = &alone;
        const Finding finding = check_chemical(with_one);
        if (finding.outcome != Outcome::tight) continue;
        const bool short_only = finding.demand.si == static_cast<double>(ChemicalLevel::short_contact);
        if (short_only) {
            add(conditions, ConditionKind::rinse_within, amount(context.tables->practice.short_contact.value),
                finding.place);
        } else {
            add(conditions, ConditionKind::watch_attack, finding.place);
        }
    }
}

/// Crossing by crossing: a finding of the whole route names its worst place alone.
void add_crossings(Conditions& conditions, const CheckContext& context) {
    for (const bool rolling : {true, false}) {
        for (std::uint16_t pass = 0; pass < context.cart->crossings.size(); ++pass) {
            CheckContext alone = context;
            alone.only_crossing = pass;
            const Place place = place_of(context.cart->crossings[pass]);
            for (const Finding& finding : {check_push(alone), check_traction(alone)}) {
                if (finding.outcome != Outcome::tight || !(rolling ? finding.needs_rolling : finding.needs_team))
                    continue;
                add(conditions, rolling ? ConditionKind::cross_rolling : ConditionKind::assess_team, place);
            }
        }
    }
}

void add_preparation(Conditions& conditions, Preparation preparation) {
    if (preparation == Preparation::degreased) add(conditions, ConditionKind::degreased);
    if (preparation == Preparation::h1_lubricated) add(conditions, ConditionKind::h1_lubricant);
}

/// Whether what is tight about it is said by a condition of its own.
bool is_said(const Finding& finding) {
    return finding.needs_rolling || finding.needs_team || finding.check == CheckId::chemical ||
           finding.statement == Statement::heat_standing;
}

void add_findings(Conditions& conditions, const std::vector<Finding>& findings) {
    for (const Finding& finding : findings) {
        if (finding.outcome == Outcome::tight && !is_said(finding)) add_for(conditions, ConditionKind::tight, finding);
    }
    for (const Finding& finding : findings) {
        if (finding.conflict) add_for(conditions, ConditionKind::figures_differ, finding);
    }
    for (const Finding& finding : findings) {
        if (finding.turns_on) add_for(conditions, ConditionKind::read_again, finding);
    }
}

}  // namespace

std::vector<Condition> conditions_of(const Survey& survey, const Catalogue& catalogue, const Tables& tables,
                                     std::size_t cart, const RankedCandidate& candidate) {
    const CandidateSpace space(catalogue, tables);
    const CartDemand demand = resolve(survey, cart, tables);
    CheckContext context = space.context_of(candidate.candidate);
    context.cart = &demand;
    Conditions conditions;
    add_readings(conditions, context);
    add_temperatures(conditions, context);
    add_washings(conditions, context);
    for (const Finding& finding : candidate.findings) {
        const bool standing = finding.statement == Statement::heat_standing && finding.outcome == Outcome::tight;
        if (standing) add(conditions, ConditionKind::no_standing_hot, amount(tables.practice.creep_critical.value));
    }
    add_crossings(conditions, context);
    const auto& findings = candidate.findings;
    const bool team_starts = std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.outcome == Outcome::tight && finding.needs_team && finding.place.kind != PlaceKind::crossing;
    });
    if (team_starts) add(conditions, ConditionKind::assess_team);
    add_preparation(conditions, candidate.candidate.preparation);
    add_findings(conditions, findings);
    add_assumed(conditions, findings, demand);
    return conditions;
}

}  // namespace sillwalk::engine
