#include "app/shell/assessor.hpp"

#include <utility>

namespace sillwalk::app {

Assessor::Assessor(std::shared_ptr<const EngineData> data, AssessorOptions options, std::function<void()> on_ready)
    : data_(std::move(data)),
      space_(data_->catalogue, data_->tables),
      options_(options),
      on_ready_(std::move(on_ready)) {}

void Assessor::start() {
    if (!options_.own_threads || answers_.joinable()) return;
    answers_ = std::thread([this] { answer_loop(); });
    completions_ = std::thread([this] { completion_loop(); });
}

Assessor::~Assessor() {
    {
        const std::lock_guard lock(mutex_);
        closing_ = true;
    }
    answer_work_.notify_all();
    completion_work_.notify_all();
    if (answers_.joinable()) answers_.join();
    if (completions_.joinable()) completions_.join();
}

void Assessor::submit(engine::Survey survey, std::uint64_t version, std::size_t cart) {
    {
        const std::lock_guard lock(mutex_);
        job_ = Job{std::move(survey), version, cart, false};
        what_if_.reset();
        completion_.reset();
    }
    answer_work_.notify_one();
}

void Assessor::submit_what_if(engine::Survey survey, std::uint64_t version, std::size_t cart) {
    {
        const std::lock_guard lock(mutex_);
        what_if_ = Job{std::move(survey), version, cart, false};
    }
    answer_work_.notify_one();
}

void Assessor::complete(const engine::Survey& survey, std::shared_ptr<const Answer> answer, std::uint16_t cart) {
    {
        const std::lock_guard lock(mutex_);
        if (asked_version_ == answer->version && asked_cart_ == cart) return;
        asked_version_ = answer->version;
        asked_cart_ = cart;
        completion_ = CompletionJob{survey, std::move(answer), cart};
    }
    completion_work_.notify_one();
}

AssessorNews Assessor::take() {
    Lock lock(mutex_);
    if (!options_.own_threads) {
        const bool first = job_ && !job_->first_part_done;
        if (what_if_ && !first) {
            work_on_what_if(lock);
        } else if (job_) {
            work_on_answer(lock);
        } else if (completion_) {
            work_on_completion(lock);
        }
    }
    return std::exchange(news_, {});
}

bool Assessor::working() const {
    const std::lock_guard lock(mutex_);
    return answering_ || completing_ || job_ || what_if_ || completion_ || news_.answer || news_.what_if ||
           news_.completion;
}

void Assessor::tell(Lock& lock) const {
    if (!options_.own_threads || !on_ready_) return;
    lock.unlock();
    on_ready_();
    lock.lock();
}

/// What it remembers of wheels grows with every air movement that it meets; now and then it begins anew.
engine::CandidateSpace& Assessor::space() {
    constexpr std::size_t most_answers = 200;
    if (++answers_in_space_ > most_answers) {
        space_ = engine::CandidateSpace(data_->catalogue, data_->tables);
        answers_in_space_ = 1;
    }
    return space_;
}

/// One part: the cart in hand, or all. The job stays until all of it is done, or a newer one has taken its place; what
/// is asked meanwhile does not wait for carts that nobody looks at.
void Assessor::work_on_answer(Lock& lock) {
    const Job job = *job_;
    const std::shared_ptr<const Answer> before = last_;
    const bool whole = job.first_part_done || job.cart >= job.survey.carts.size();
    const auto overtaken = [this, &job] {
        const std::lock_guard now(mutex_);
        return closing_ || what_if_ || (job_ && job_->version != job.version);
    };
    lock.unlock();
    std::optional<Answer> answer;
    if (whole) {
        answer = work_out_all(job.survey, *data_, space(), job.version, overtaken);
    } else {
        answer = work_out(job.survey, *data_, space(), job.version, job.cart, before.get());
    }
    lock.lock();
    if (!answer) return;
    last_ = news_.answer = std::make_shared<const Answer>(std::move(*answer));
    if (job_ && job_->version == job.version) {
        job_->first_part_done = true;
        if (whole) job_.reset();
    }
    tell(lock);
}

void Assessor::work_on_what_if(Lock& lock) {
    const Job job = std::move(*what_if_);
    what_if_.reset();
    lock.unlock();
    auto answer = std::make_shared<const Answer>(work_out(job.survey, *data_, space(), job.version, job.cart));
    lock.lock();
    news_.what_if = std::move(answer);
    tell(lock);
}

/// First the limits, then, unless a newer survey has come, the readings to take again.
void Assessor::work_on_completion(Lock& lock) {
    const CompletionJob job = *completion_;
    const bool begun = half_.version == job.answer->version && half_.cart == job.cart && half_.would_hold;
    Completion done = half_;
    lock.unlock();
    done = begun ? work_out_doubt(std::move(done), job.survey, *data_, *job.answer, options_.draws)
                 : work_out_limits(job.survey, *data_, *job.answer, job.cart);
    lock.lock();
    news_.completion = std::make_shared<const Completion>(done);
    half_ = std::move(done);
    const bool same = completion_ && completion_->answer == job.answer && completion_->cart == job.cart;
    if (same && begun) completion_.reset();
    tell(lock);
}

void Assessor::answer_loop() {
    Lock lock(mutex_);
    for (;;) {
        answer_work_.wait(lock, [this] { return closing_ || has_answer_work(); });
        if (closing_) return;
        answering_ = true;
        const bool first = job_ && !job_->first_part_done;
        if (what_if_ && !first) {
            work_on_what_if(lock);
        } else {
            work_on_answer(lock);
        }
        answering_ = false;
    }
}

void Assessor::completion_loop() {
    Lock lock(mutex_);
    for (;;) {
        completion_work_.wait(lock, [this] { return closing_ || completion_; });
        if (closing_) return;
        completing_ = true;
        work_on_completion(lock);
        completing_ = false;
    }
}

}  // namespace sillwalk::app
