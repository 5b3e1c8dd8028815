#pragma once
/// Seals and sends beside the frames. Two threads: one does what a person orders, so that sealing and handing off never
/// wait for a network; one is the line to the office, one exchange after the other.

#include "app/core/action.hpp"
#include "app/storage/writer.hpp"
#include "app/sync/sender.hpp"

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace sillwalk::app {

/// A connection to the office at `url`, whose server must have the key of `pin` where one is given.
using MakeTransport = std::function<std::unique_ptr<Transport>(const std::string& url, const std::string& pin)>;

struct SendWorkerOptions {
    bool own_threads = true;  ///< false: take() does one order or one exchange
    MakeTransport transport;  ///< none: nothing is sent; what was sealed can be handed off
    std::function<std::int64_t()> utc_ms;
    std::function<std::int64_t()> steady_ms;  ///< a clock that never jumps
    std::string hand_off_folder;
    std::function<void()> on_ready;  ///< called on a worker's thread
};

class SendWorker {
public:
    SendWorker(std::shared_ptr<const EngineData> data, Writer& writer, SendWorkerOptions options);
    ~SendWorker();
    SendWorker(const SendWorker&) = delete;
    SendWorker& operator=(const SendWorker&) = delete;

    void submit(SendOrder order);
    /// What there is to tell since the last call.
    [[nodiscard]] std::vector<Action> take();
    /// Without threads: take() has something to do now.
    [[nodiscard]] bool working() const;
    /// Without threads: seconds until it has; nothing where it waits for a person.
    [[nodiscard]] std::optional<double> seconds_left() const;

private:
    using Lock = std::unique_lock<std::mutex>;
    using News = std::vector<Action>;

    // ---- orders
    void work_on_order(Lock& lock);
    void order_loop();
    [[nodiscard]] News carry_out(const SendOrder& order);
    [[nodiscard]] News seal(const OrderSeal& order);
    [[nodiscard]] engine::Result<void> seal_as_it_stands(const OrderSeal& order);
    [[nodiscard]] News enrol_tablet(const OrderEnrolment& order);
    [[nodiscard]] News erase(const std::string& survey_id);
    [[nodiscard]] News hand_off(const std::string& survey_id);
    [[nodiscard]] engine::Result<HandOffTold> write_file(const std::string& survey_id);
    [[nodiscard]] engine::Result<DeviceIdentity> identity();
    void wake_line(bool anew, bool parked_too);

    // ---- the line
    [[nodiscard]] bool line_is_due() const;
    void work_on_line(Lock& lock);
    void line_loop();
    void open_line();
    [[nodiscard]] SendState exchange();
    [[nodiscard]] News news_of(const SendState& state);

    void tell(Lock& lock, News news);

    std::shared_ptr<const EngineData> data_;
    Writer& writer_;
    SendWorkerOptions options_;
    mutable std::mutex mutex_;
    std::condition_variable order_work_, line_work_;
    std::deque<SendOrder> orders_;
    News news_;
    bool closing_ = false;
    std::unique_ptr<Transport> enrolment_;  ///< while one is on its way

    /// What the line is asked to do when it next looks.
    struct Wish {
        bool now = true, anew = true, hurry = false, parked_too = false;
    } wish_;
    std::int64_t next_ms_ = -1;  ///< of the line; -1: when it is asked
    std::unique_ptr<Transport> transport_;

    // the line's thread only
    std::unique_ptr<Sender> sender_;
    std::string office_;
    SendingStatus told_;
    std::vector<VisitLine> told_lines_;
    bool told_once_ = false;

    std::thread order_thread_, line_thread_;
};

}  // namespace sillwalk::app
