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
                                    engine::CandidateSpace& space) {
    if (!candidate) return std::nullopt;
    const std::size_t kind = space.wheels()[candidate->candidate.wheel].walk;
    const engine::WalkMissing missing = engine::walk_missing(demand, space.walk_keys()[kind], space.tables());
    if (!missing.readings.empty() || missing.material_figures) return std::nullopt;
    return engine::walk_route(demand, space.thermal_wheel(kind), space.tables(), engine::WalkEnd::nominal, true);
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

double since(std::chrono::steady_clock::time_point start) {
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    return took.count();
}

/// Without any cart yet.
Answer begun(const engine::Survey& survey, const EngineData& data, std::uint64_t version) {
    Answer answer;
    answer.version = version;
    answer.refused = engine::validate(survey, data.catalogue, data.tables);
    if (!answer.refused.empty()) return answer;
    answer.walks.resize(survey.carts.size());
    answer.walks_present.resize(survey.carts.size());
    answer.damage.resize(survey.carts.size());
    return answer;
}

void add_cart(Answer& answer, const engine::Survey& survey, engine::CandidateSpace& space, std::size_t cart) {
    engine::AssessOptions options;
    options.only_cart = cart;
    engine::Advice one = engine::assess(survey, space, options);
    if (one.carts.empty()) return;
    const engine::CartAdvice& advice = one.carts.front();
    const engine::CartDemand demand = engine::resolve(survey, cart, space.tables());
    answer.walks[cart] = walk_of(demand, headline(&advice), space);
    answer.walks_present[cart] = walk_of(demand, advice.present ? &*advice.present : nullptr, space);
    answer.damage[cart] =
        engine::read_damage(survey.carts[cart], demand, space.tables(),
                            advice.present ? advice.present->findings : std::vector<engine::Finding>());
    std::vector<engine::CartAdvice> carts = std::move(answer.advice.carts);
    carts.push_back(std::move(one.carts.front()));
    answer.advice = std::move(one);
    answer.advice.carts = std::move(carts);
}

}  // namespace

Answer work_out(const engine::Survey& survey, const EngineData& data, std::uint64_t version,
                std::optional<std::size_t> only_cart, const Answer* before) {
    engine::CandidateSpace space(data.catalogue, data.tables);
    return work_out(survey, data, space, version, only_cart, before);
}

Answer work_out(const engine::Survey& survey, const EngineData& data, engine::CandidateSpace& space,
                std::uint64_t version, std::optional<std::size_t> only_cart, const Answer* before) {
    if (!only_cart) return *work_out_all(survey, data, space, version, [] { return false; });
    const auto start = std::chrono::steady_clock::now();
    Answer answer = begun(survey, data, version);
    answer.partial = true;
    if (answer.refused.empty()) {
        add_cart(answer, survey, space, *only_cart);
        if (before) take_over_others(answer, *before, *only_cart);
    }
    answer.milliseconds = since(start);
    return answer;
}

std::optional<Answer> work_out_all(const engine::Survey& survey, const EngineData& data, engine::CandidateSpace& space,
                                   std::uint64_t version, const std::function<bool()>& overtaken) {
    const auto start = std::chrono::steady_clock::now();
    Answer answer = begun(survey, data, version);
    const std::size_t carts = answer.refused.empty() ? survey.carts.size() : 0;
    // Of no cart, so that the advice says what it was made from even where there is none.
    if (answer.refused.empty()) answer.advice = engine::assess(survey, space, {.only_cart = carts});
    for (std::size_t cart = 0; cart < carts; ++cart) {
        if (overtaken()) return std::nullopt;
        add_cart(answer, survey, space, cart);
    }
    answer.milliseconds = since(start);
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
