#include "app/shell/assessor.hpp"

#include "engine/checks/demand.hpp"
#include "engine/select/assess.hpp"
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
    }
    std::sort(answer.advice.carts.begin(), answer.advice.carts.end(),
              [](const engine::CartAdvice& a, const engine::CartAdvice& b) { return a.cart < b.cart; });
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
        for (const engine::CartAdvice& advice : answer.advice.carts) {
            const engine::CartDemand demand = engine::resolve(survey, advice.cart, data.tables);
            answer.walks[advice.cart] = walk_of(demand, headline(&advice), data);
            answer.walks_present[advice.cart] = walk_of(demand, advice.present ? &*advice.present : nullptr, data);
        }
        if (only_cart && before) take_over_others(answer, *before, *only_cart);
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    answer.milliseconds = took.count();
    return answer;
}

Assessor::Assessor(std::shared_ptr<const EngineData> data, bool own_thread, std::function<void()> on_ready)
    : data_(std::move(data)), on_ready_(std::move(on_ready)) {
    if (own_thread) thread_ = std::thread([this] { loop(); });
}

Assessor::~Assessor() {
    {
        const std::lock_guard lock(mutex_);
        closing_ = true;
    }
    work_.notify_all();
    if (thread_.joinable()) thread_.join();
}

void Assessor::submit(engine::Survey survey, std::uint64_t version, std::size_t cart) {
    {
        const std::lock_guard lock(mutex_);
        job_ = Job{std::move(survey), version, cart, false};
    }
    work_.notify_one();
}

std::shared_ptr<const Answer> Assessor::next_part(Job& job) const {
    const bool whole = job.first_part_done || job.cart >= job.survey.carts.size();
    job.first_part_done = true;
    if (whole) return std::make_shared<const Answer>(work_out(job.survey, *data_, job.version));
    return std::make_shared<const Answer>(work_out(job.survey, *data_, job.version, job.cart, last_.get()));
}

std::shared_ptr<const Answer> Assessor::take() {
    if (!thread_.joinable() && job_) {
        last_ = next_part(*job_);
        if (!last_->partial) job_.reset();
        return last_;
    }
    const std::lock_guard lock(mutex_);
    return std::exchange(ready_, nullptr);
}

bool Assessor::working() const {
    const std::lock_guard lock(mutex_);
    return busy_ || job_ || ready_;
}

void Assessor::loop() {
    std::unique_lock lock(mutex_);
    for (;;) {
        work_.wait(lock, [this] { return closing_ || job_; });
        if (closing_) return;
        Job job = std::move(*job_);
        job_.reset();
        busy_ = true;
        // A newer survey makes the second part of this one needless.
        for (bool more = true; more && !job_ && !closing_;) {
            lock.unlock();
            auto answer = next_part(job);
            lock.lock();
            last_ = ready_ = answer;
            more = answer->partial;
            lock.unlock();
            if (on_ready_) on_ready_();
            lock.lock();
        }
        busy_ = false;
    }
}

}  // namespace sillwalk::app
