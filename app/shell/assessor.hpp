#pragma once
/// Works out the answer beside the frames: first for the cart in hand, so that its bar follows the finger, then for
/// all. Of several surveys that wait only the newest is worked out.

#include "app/core/model.hpp"

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

namespace sillwalk::app {

/// The engine's answer for one survey, with the temperatures along each cart's route. Pure. With `only_cart` the answer
/// is partial: the other carts are taken over from `before`.
[[nodiscard]] Answer work_out(const engine::Survey& survey, const EngineData& data, std::uint64_t version,
                              std::optional<std::size_t> only_cart = {}, const Answer* before = nullptr);

class Assessor {
public:
    /// `own_thread` false: take() works it out itself. `on_ready` is called on the worker's thread.
    Assessor(std::shared_ptr<const EngineData> data, bool own_thread, std::function<void()> on_ready);
    ~Assessor();
    Assessor(const Assessor&) = delete;
    Assessor& operator=(const Assessor&) = delete;

    void submit(engine::Survey survey, std::uint64_t version, std::size_t cart);
    /// The newest answer that is ready and was not taken yet.
    [[nodiscard]] std::shared_ptr<const Answer> take();
    [[nodiscard]] bool working() const;

private:
    struct Job {
        engine::Survey survey;
        std::uint64_t version = 0;
        std::size_t cart = 0;
        bool first_part_done = false;
    };
    [[nodiscard]] std::shared_ptr<const Answer> next_part(Job& job) const;
    void loop();

    std::shared_ptr<const EngineData> data_;
    std::function<void()> on_ready_;
    mutable std::mutex mutex_;
    std::condition_variable work_;
    std::optional<Job> job_;
    std::shared_ptr<const Answer> ready_, last_;
    bool busy_ = false, closing_ = false;
    std::thread thread_;
};

}  // namespace sillwalk::app
