#pragma once
/// Works out the answer beside the frames. Two threads: one for answers, so that a bar follows the finger (first the
/// cart in hand, then what is being tried, then all carts); one for what takes seconds, so that no answer waits for it.
/// Of several surveys that wait only the newest is worked out.

#include "app/shell/work_out.hpp"

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

namespace sillwalk::app {

struct AssessorOptions {
    bool own_threads = true;   ///< false: take() works it out itself, one piece at a time
    std::size_t draws = 2000;  ///< of the readings, for those to take again
};

/// The newest of each that is ready and was not taken yet.
struct AssessorNews {
    std::shared_ptr<const Answer> answer, what_if;
    std::shared_ptr<const Completion> completion;
};

class Assessor {
public:
    /// `on_ready` is called on a worker's thread.
    Assessor(std::shared_ptr<const EngineData> data, AssessorOptions options, std::function<void()> on_ready);
    ~Assessor();
    Assessor(const Assessor&) = delete;
    Assessor& operator=(const Assessor&) = delete;

    /// Nothing is worked out before: the first frame has the processor for itself.
    void start();
    void submit(engine::Survey survey, std::uint64_t version, std::size_t cart);
    /// What is being tried for one cart.
    void submit_what_if(engine::Survey survey, std::uint64_t version, std::size_t cart);
    /// Completes one cart of an answer on this survey; asked again for the same, does nothing.
    void complete(const engine::Survey& survey, std::shared_ptr<const Answer> answer, std::uint16_t cart);
    [[nodiscard]] AssessorNews take();
    [[nodiscard]] bool working() const;

private:
    struct Job {
        engine::Survey survey;
        std::uint64_t version = 0;
        std::size_t cart = 0;
        bool first_part_done = false;
    };
    struct CompletionJob {
        engine::Survey survey;
        std::shared_ptr<const Answer> answer;
        std::uint16_t cart = 0;
    };
    using Lock = std::unique_lock<std::mutex>;

    [[nodiscard]] bool has_answer_work() const { return job_ || what_if_; }
    [[nodiscard]] engine::CandidateSpace& space();
    void work_on_answer(Lock& lock);
    void work_on_what_if(Lock& lock);
    void work_on_completion(Lock& lock);
    void answer_loop();
    void completion_loop();
    void tell(Lock& lock) const;

    std::shared_ptr<const EngineData> data_;
    engine::CandidateSpace space_;  ///< for answers, which one thread works out
    std::size_t answers_in_space_ = 0;
    AssessorOptions options_;
    std::function<void()> on_ready_;
    mutable std::mutex mutex_;
    std::condition_variable answer_work_, completion_work_;
    std::optional<Job> job_, what_if_;
    std::optional<CompletionJob> completion_;
    std::uint64_t asked_version_ = 0;  ///< of the completion last asked for
    std::uint16_t asked_cart_ = 0;
    Completion half_;  ///< limits of the job in hand, while its doubt is worked out
    AssessorNews news_;
    std::shared_ptr<const Answer> last_;
    bool answering_ = false, completing_ = false, closing_ = false;
    std::thread answers_, completions_;
};

}  // namespace sillwalk::app
