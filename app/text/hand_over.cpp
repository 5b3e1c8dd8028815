#include "app/text/hand_over.hpp"

#include "app/text/would_hold.hpp"
#include "engine/select/bench_sheet.hpp"
#include "engine/select/cautions.hpp"

#include <algorithm>

namespace sillwalk::app {

using engine::BenchSheet;
using engine::CartAdvice;
using engine::Finding;
using engine::Outcome;
using engine::RankedCandidate;

namespace {

void add(std::vector<HandOverSection>& sections, const char* key, std::vector<HandOverLine> lines,
         const TextContext& context) {
    if (lines.empty()) return;
    sections.push_back({key, context.language.get(std::string("hand_over.") + key), std::move(lines)});
}

std::vector<HandOverLine> candidate_lines(const CartAdvice& cart, const RankedCandidate& candidate,
                                          const TextContext& context) {
    const Language& words = context.language;
    const engine::Catalogue& catalogue = context.catalogue;
    std::vector<HandOverLine> lines;
    if (cart.nothing_holds) {
        lines.push_back({words.get("hand_over.nothing_holds"), ""});
        lines.push_back({words.fill("hand_over.nearest", {candidate_name(candidate.candidate, context)}), ""});
        for (const Finding& finding : candidate.findings) {
            if (finding.outcome == Outcome::fails) lines.push_back({sentence(finding, context), ""});
        }
        return lines;
    }
    const auto& wheel = catalogue.wheels[candidate.candidate.wheel];
    const auto& bearing = catalogue.bearings[candidate.candidate.bearing];
    const auto& rig = catalogue.rigs[candidate.candidate.rig];
    constexpr const char* preparations[] = {"preparation.as_supplied", "preparation.degreased",
                                            "preparation.h1_lubricated"};
    lines.push_back({wheel.description, wheel.id.text()});
    lines.push_back({bearing.description, bearing.id.text()});
    lines.push_back({rig.description, rig.id.text()});
    lines.push_back({words.get(preparations[static_cast<std::size_t>(candidate.candidate.preparation)]), ""});
    std::string key = "verdict.";
    for (const char c : std::string_view(engine::verdict_name(candidate.verdict))) key += c == ' ' ? '_' : c;
    lines.push_back({words.get(key), ""});
    return lines;
}

std::vector<HandOverLine> condition_lines(const CartAdvice& cart,
                                          const std::optional<std::vector<engine::Condition>>& conditions,
                                          const TextContext& context) {
    std::vector<HandOverLine> lines;
    if (cart.nothing_holds) return lines;
    if (!conditions) return {{context.language.get("answer.working"), ""}};
    for (std::string& line : conditions_text(*conditions, context)) lines.push_back({std::move(line), ""});
    return lines;
}

std::vector<HandOverLine> number_lines(const RankedCandidate& candidate, const TextContext& context) {
    std::vector<HandOverLine> lines;
    for (const Finding& finding : candidate.findings) {
        const std::string value = compared(finding, context);
        if (value.empty()) continue;
        std::string name = context.language.get(std::string("check.") + engine::check_name(finding.check));
        const std::string place = place_name(finding.place, context.survey);
        if (!place.empty()) name += ", " + place;
        lines.push_back({std::move(name), value});
    }
    return lines;
}

std::vector<HandOverLine> assumption_lines(const RankedCandidate& candidate, const TextContext& context) {
    std::vector<engine::Assumption> seen;
    for (const Finding& finding : candidate.findings) {
        if (finding.outcome == Outcome::does_not_apply) continue;
        seen.insert(seen.end(), finding.assumptions.begin(), finding.assumptions.end());
    }
    std::sort(seen.begin(), seen.end());
    seen.erase(std::unique(seen.begin(), seen.end()), seen.end());
    std::vector<HandOverLine> lines;
    for (const engine::Assumption assumption : seen) {
        lines.push_back({context.language.get(std::string("assumption.") + engine::assumption_key(assumption)), ""});
    }
    return lines;
}

std::vector<HandOverLine> unknown_lines(const CartAdvice& cart, const RankedCandidate& candidate,
                                        const TextContext& context) {
    std::vector<HandOverLine> lines;
    for (const engine::ReadingRef& ref : cart.not_read) {
        if (ref.field != engine::Field::none) lines.push_back({reading_name(ref, context), ""});
    }
    for (const Finding& finding : candidate.findings) {
        if (finding.outcome != Outcome::not_known || !finding.missing.empty()) continue;
        const std::string check = context.language.get(std::string("check.") + engine::check_name(finding.check));
        lines.push_back({check + ": " + sentence(finding, context), ""});
    }
    return lines;
}

std::vector<HandOverLine> key_lines(const std::vector<const char*>& keys, const Language& words) {
    std::vector<HandOverLine> lines;
    for (const char* key : keys) lines.push_back({words.get(key), ""});
    return lines;
}

std::vector<HandOverLine> part_lines(const BenchSheet& sheet, const Language& words) {
    std::vector<HandOverLine> lines;
    for (const engine::BenchPart& part : sheet.parts) {
        const std::string name = part.note.empty() ? part.name : part.name + ": " + part.note;
        lines.push_back({name, std::to_string(part.per_cart)});
    }
    for (const engine::RigGap& gap : sheet.rig_gaps) {
        const std::string function = words.get(function_key(gap.function));
        lines.push_back({words.fill("hand_over.no_such_rig", {function}), std::to_string(gap.per_cart)});
    }
    return lines;
}

std::vector<HandOverLine> fitting_lines(const BenchSheet& sheet, const TextContext& context) {
    const Language& words = context.language;
    std::vector<HandOverLine> lines;
    for (const std::string& step : sheet.fitting) lines.push_back({step, ""});
    lines.push_back({words.get(sheet.tool), ""});
    lines.push_back({words.get(sheet.first_side), ""});
    const auto length = [&](engine::Length l) { return show({l.si(), engine::Kind::length}, context.units); };
    if (sheet.end_play) {
        const std::string least = length(sheet.end_play->least);
        const std::string most = length(sheet.end_play->most);
        const std::string range = least == most ? least : words.fill("hand_over.from_to", {least, most});
        const bool none = sheet.end_play->most.si() == 0.0;
        lines.push_back({words.get("hand_over.end_play"), none ? words.get("hand_over.no_end_play") : range});
    }
    lines.push_back({words.get("hand_over.room_in_fork"), length(sheet.room_in_fork)});
    return lines;
}

void add_bench(HandOver& out, const CartAdvice& cart, const TextContext& context) {
    std::vector<engine::CastorFunction> functions;
    for (const engine::CastorPosition& castor : context.survey.carts[cart.cart].castors) {
        functions.push_back(castor.function);
    }
    if (cart.ranked.empty()) return;
    if (functions.empty()) {
        add(out.bench, "parts", {{context.language.get("hand_over.no_castors"), ""}}, context);
        return;
    }
    const BenchSheet sheet =
        engine::bench_sheet(context.catalogue, context.tables, cart.ranked.front().candidate, functions);
    add(out.bench, "parts", part_lines(sheet, context.language), context);
    add(out.bench, "prepare", key_lines(sheet.prepare, context.language), context);
    add(out.bench, "fitting", fitting_lines(sheet, context), context);
    add(out.bench, "finish", key_lines(sheet.finish, context.language), context);
    add(out.bench, "by_hand", key_lines(sheet.check_by_hand, context.language), context);
}

}  // namespace

HandOver hand_over(const engine::Advice& advice, const CartAdvice& cart,
                   const std::optional<std::vector<engine::Condition>>& conditions, const TextContext& context) {
    HandOver out;
    const RankedCandidate* candidate = !cart.ranked.empty() ? &cart.ranked.front()
                                       : cart.nearest       ? &*cart.nearest
                                                            : nullptr;
    if (candidate) {
        const auto& wheel = context.catalogue.wheels[candidate->candidate.wheel];
        out.headline = cart.nothing_holds ? context.language.get("answer.nothing_holds") : wheel.description;
        add(out.specification, "candidate", candidate_lines(cart, *candidate, context), context);
        add(out.specification, "conditions", condition_lines(cart, conditions, context), context);
        add(out.specification, "numbers", number_lines(*candidate, context), context);
        add(out.specification, "assumptions", assumption_lines(*candidate, context), context);
        add(out.specification, "unknowns", unknown_lines(cart, *candidate, context), context);
    } else {
        out.headline = context.language.get("answer.none");
    }
    std::vector<HandOverLine> cautions;
    for (const char* key : engine::caution_keys) cautions.push_back({context.language.get(key), ""});
    add(out.specification, "cautions", std::move(cautions), context);
    add(out.specification, "made_with",
        {{context.language.fill("desk.editions",
                                {advice.engine_version, advice.catalogue_edition, advice.tables_edition}),
          ""}},
        context);
    add_bench(out, cart, context);
    return out;
}

}  // namespace sillwalk::app
