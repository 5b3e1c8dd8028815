/// Must it bleed charge? The resistance class asked against the wheel's figure, and the path through bearing and
/// grease. Statement static_resistance: limit, the other published limit (0 = none), what decides (0 wheel too high, 1
/// wheel too low, 2 grease in the path, 3 plain plastic bearing in the path), and the wheel's resistance where it is
/// known. static_not_asked: none. Where published limits conflict the careful one decides. Source: [iso-22878],
/// second-hand, and [service-manual-iso-22881].

#include "engine/checks/checks.hpp"
#include "engine/checks/judge.hpp"

namespace sillwalk::engine {
namespace {

enum class Decides { too_high, too_low, grease, plain_bearing };

struct Limits {
    double limit = 0, other = 0;
    CitationId citation = 0, other_citation = 0;
};

Amount ohm(double value) {
    return {value, Kind::resistance};
}

struct Case {
    Limits limits;
    Decides decides = Decides::too_high;
    double use = 0;
    bool conflict = false;
    std::optional<Outcome> outcome;
};

void add(Judge& judge, const std::optional<double>& resistance, const Case& given) {
    const Amount limit = ohm(given.limits.limit), other = ohm(given.limits.other);
    const Amount decides{static_cast<double>(given.decides), Kind::number};
    const std::initializer_list<Amount> unknown{limit, other, decides};
    const std::initializer_list<Amount> known{limit, other, decides, ohm(resistance.value_or(0.0))};
    judge.part({.demand = limit,
                .capacity = ohm(resistance.value_or(0.0)),
                .use = given.use,
                .statement = Statement::static_resistance,
                .formula = "static-class",
                .numbers = resistance ? known : unknown,
                .citations = {given.limits.citation, given.limits.other_citation},
                .outcome = given.outcome,
                .conflict = given.conflict});
}

/// Conductive: at most the stricter limit. Between the two published limits the sources disagree.
void add_conductive(Judge& judge, const CheckContext& context, const Limits& limits) {
    const double resistance = *context.wheel->resistance_ohm;
    const bool between = resistance > limits.limit && resistance <= limits.other;
    add(judge, resistance, {limits, Decides::too_high, resistance / limits.limit, between, std::nullopt});
}

/// Antistatic: one source asks for less than the upper limit, another also for at least the lower one.
void add_antistatic(Judge& judge, const CheckContext& context, const Limits& high, const Limits& low) {
    const double resistance = *context.wheel->resistance_ohm;
    add(judge, resistance, {high, Decides::too_high, resistance / high.limit, false, std::nullopt});
    if (resistance <= 0.0 || resistance >= low.limit) return;
    add(judge, resistance, {low, Decides::too_low, low.limit / resistance, true, Outcome::fails});
}

/// Grease insulates and so does a plain plastic bearing: the path to the axle is measured on the fitted castor.
void add_path(Judge& judge, const CheckContext& context, const Limits& limits) {
    const Bearing& bearing = *context.bearing;
    const auto& resistance = context.wheel->resistance_ohm;
    if (bearing.kind == BearingKind::plain_acetal) {
        add(judge, resistance, {limits, Decides::plain_bearing, 2.0, false, Outcome::fails});
        return;
    }
    const bool degreased = !bearing.sealed && context.preparation == Preparation::degreased;
    const bool greased = !degreased && (bearing.grease != "none" || context.preparation == Preparation::h1_lubricated);
    if (greased) add(judge, resistance, {limits, Decides::grease, 0.95, false, Outcome::tight});
}

}  // namespace

Finding check_static(const CheckContext& context) {
    Judge judge(CheckId::static_charge, context);
    const auto ask = judge.value(context.cart->static_ask);
    if (!ask) return judge.finish();
    if (*ask == StaticAsk::none) {
        judge.part({.statement = Statement::static_not_asked, .outcome = Outcome::does_not_apply});
        return judge.finish();
    }
    const Practice& practice = context.tables->practice;
    const bool conductive = *ask == StaticAsk::conductive;
    const auto& first = conductive ? practice.conductive_ohm : practice.antistatic_high_ohm;
    const auto& other = conductive ? practice.conductive_ohm_other : practice.antistatic_low_ohm;
    if (first.value <= 0.0 || other.value <= 0.0) {
        judge.missing_figure();
        return judge.finish();
    }
    const Limits limits{first.value, other.value, first.citation, other.citation};
    add_path(judge, context, limits);
    if (!context.wheel->resistance_ohm) {
        judge.missing_figure();
    } else if (conductive) {
        add_conductive(judge, context, limits);
    } else {
        add_antistatic(judge, context, limits, {other.value, first.value, other.citation, first.citation});
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
