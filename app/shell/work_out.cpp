#include "app/shell/work_out.hpp"

#include "app/core/plausible_ranges.hpp"
#include "engine/checks/demand.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/damage.hpp"
#include "engine/select/limits.hpp"
#include "engine/select/sampling.hpp"
#include "engine/walk/walk.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

namespace sillwalk::app {

namespace {

std::optional<engine::Walk> walk_of(const engine::CartDemand& demand, const engine::RankedCandidate* candidate,
                                    const EngineData& data) {
    if (!candidate) return std::nullopt;
    const engine::WalkKey key = engine::walk_key(data.catalogue.wheels[candidate->candidate.wheel], data.tables);
    const engine::WalkMissing missing = engine::walk_missing(demand, key, data.tables);
    if (!missing.readings.empty() || missing.material_figures) return std::nullopt;
    return engine::walk_route(demand, key, data.tables, engine::WalkEnd::nominal, true);
}

/// The other carts of the answer before, in the order of the survey.
void take_over_others(Answer& answer, const Answer& before, std::size_t cart) {
    for (const engine::CartAdvice& advice : before.advice.carts) {
        if (advice.cart == cart || advice.cart >= answer.walks.size()) continue;
        answer.advice.carts.push_back(advice);
        if (advice.cart < before.walks.size()) answer.walks[advice.cart] = before.walks[advice.cart];
        if (advice.cart < before.walks_present.size())
            answer.walks_present[advice.cart] = before.walks_present[advice.cart];
        if (advice.cart < before.damage.size()) answer.damage[advice.cart] = before.damage[advice.cart];
    }
    std::sort(answer.advice.carts.begin(), answer.advice.carts.end(),
              [](const engine::CartAdvice& a, const engine::CartAdvice& b) { return a.cart < b.cart; });
}

const engine::CartAdvice* advice_for(const Answer& answer, std::uint16_t cart) {
    for (const engine::CartAdvice& advice : answer.advice.carts) {
        if (advice.cart == cart) return &advice;
    }
    return nullptr;
}

}  // namespace

Answer work_out(const engine::Survey& survey, const EngineData& data, std::uint64_t version,
                std::optional<std::size_t> only_cart, const Answer* before) {
    const auto start = std::chrono::steady_clock::now();
    Answer answer;
    answer.version = version;
    answer.partial = only_cart.has_value();
    answer.refused = engine::validate(survey, data.catalogue, data.tables);
    if (answer.refused.empty()) {
        engine::AssessOptions options;
        options.only_cart = only_cart;
        answer.advice = engine::assess(survey, data.catalogue, data.tables, options);
        answer.walks.resize(survey.carts.size());
        answer.walks_present.resize(survey.carts.size());
        answer.damage.resize(survey.carts.size());
        for (const engine::CartAdvice& advice : answer.advice.carts) {
            const engine::CartDemand demand = engine::resolve(survey, advice.cart, data.tables);
            answer.walks[advice.cart] = walk_of(demand, headline(&advice), data);
            answer.walks_present[advice.cart] = walk_of(demand, advice.present ? &*advice.present : nullptr, data);
            answer.damage[advice.cart] =
                engine::read_damage(survey.carts[advice.cart], demand, data.tables,
                                    advice.present ? advice.present->findings : std::vector<engine::Finding>());
        }
        if (only_cart && before) take_over_others(answer, *before, *only_cart);
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    answer.milliseconds = took.count();
    return answer;
}

Completion work_out_limits(const engine::Survey& survey, const EngineData& data, const Answer& answer,
                           std::uint16_t cart) {
    Completion completion;
    completion.version = answer.version;
    completion.cart = cart;
    completion.would_hold.emplace();
    completion.conditions.emplace();
    const engine::CartAdvice* advice = advice_for(answer, cart);
    if (!advice) return completion;
    engine::Advice one;
    one.carts.push_back(*advice);
    engine::complete_advice(one, survey, data.catalogue, data.tables);
    completion.would_hold = std::move(one.carts.front().would_hold);
    completion.conditions = std::move(one.carts.front().conditions);
    return completion;
}

Completion work_out_doubt(Completion completion, const engine::Survey& survey, const EngineData& data,
                          const Answer& answer, std::size_t draws) {
    completion.read_again.emplace();
    const engine::CartAdvice* advice = advice_for(answer, completion.cart);
    if (!advice) return completion;
    engine::SamplingOptions options;
    options.draws = draws;
    const auto ranges = plausible_ranges(data.entry, survey, advice->not_read);
    completion.read_again = engine::read_again(survey, data.catalogue, data.tables, *advice, ranges, options);
    return completion;
}

}  // namespace sillwalk::app
