#include "app/shell/send_worker.hpp"

#include "app/shell/visit_lines.hpp"
#include "app/storage/identity.hpp"
#include "app/sync/fresh_identity.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

constexpr std::int64_t least_pause_ms = 1000;  ///< between tries that fail, however short the dice made the wait

SendingPhase phase_of(SendPhase phase) {
    switch (phase) {
        case SendPhase::all_sent:
            return SendingPhase::idle;
        case SendPhase::busy:
            return SendingPhase::sending;
        case SendPhase::waiting:
            return SendingPhase::waiting;
        case SendPhase::not_enrolled:
            return SendingPhase::not_enrolled;
        case SendPhase::enrol_again:
            return SendingPhase::enrol_again;
        case SendPhase::storage_fault:
            return SendingPhase::storage_fault;
    }
    return SendingPhase::idle;
}

}  // namespace

SendWorker::SendWorker(std::shared_ptr<const EngineData> data, Writer& writer, SendWorkerOptions options)
    : data_(std::move(data)), writer_(writer), options_(std::move(options)) {
    if (!options_.own_threads) return;
    order_thread_ = std::thread([this] { order_loop(); });
    line_thread_ = std::thread([this] { line_loop(); });
}

SendWorker::~SendWorker() {
    {
        const std::lock_guard lock(mutex_);
        closing_ = true;
        if (transport_) transport_->stop();
        if (enrolment_) enrolment_->stop();
    }
    order_work_.notify_all();
    line_work_.notify_all();
    if (order_thread_.joinable()) order_thread_.join();
    if (line_thread_.joinable()) line_thread_.join();
}

void SendWorker::submit(SendOrder order) {
    {
        const std::lock_guard lock(mutex_);
        orders_.push_back(std::move(order));
    }
    order_work_.notify_one();
}

std::vector<Action> SendWorker::take() {
    Lock lock(mutex_);
    if (!options_.own_threads) {
        if (!orders_.empty()) {
            work_on_order(lock);
        } else if (line_is_due()) {
            work_on_line(lock);
        }
    }
    return std::exchange(news_, {});
}

bool SendWorker::working() const {
    const std::lock_guard lock(mutex_);
    return !orders_.empty() || !news_.empty() || line_is_due();
}

std::optional<double> SendWorker::seconds_left() const {
    const std::lock_guard lock(mutex_);
    if (next_ms_ < 0) return std::nullopt;
    return static_cast<double>(std::max<std::int64_t>(0, next_ms_ - options_.steady_ms())) / 1000;
}

void SendWorker::tell(Lock& lock, News news) {
    if (news.empty()) return;
    news_.insert(news_.end(), std::make_move_iterator(news.begin()), std::make_move_iterator(news.end()));
    if (!options_.own_threads || !options_.on_ready) return;
    lock.unlock();
    options_.on_ready();
    lock.lock();
}

void SendWorker::work_on_order(Lock& lock) {
    const SendOrder order = std::move(orders_.front());
    orders_.pop_front();
    lock.unlock();
    News news = carry_out(order);
    lock.lock();
    tell(lock, std::move(news));
}

void SendWorker::order_loop() {
    Lock lock(mutex_);
    for (;;) {
        order_work_.wait(lock, [this] { return closing_ || !orders_.empty(); });
        if (closing_) return;
        work_on_order(lock);
    }
}

void SendWorker::wake_line(bool anew, bool parked_too) {
    {
        const std::lock_guard lock(mutex_);
        wish_.now = wish_.hurry = true;
        wish_.anew = wish_.anew || anew;
        wish_.parked_too = wish_.parked_too || parked_too;
    }
    line_work_.notify_one();
}

bool SendWorker::line_is_due() const {
    return wish_.now || (next_ms_ >= 0 && options_.steady_ms() >= next_ms_);
}

void SendWorker::work_on_line(Lock& lock) {
    const Wish wish = std::exchange(wish_, {false, false, false, false});
    lock.unlock();
    if (wish.anew) open_line();
    if (sender_ && wish.hurry) sender_->hurry(wish.parked_too);
    const SendState state = exchange();
    News news = news_of(state);
    lock.lock();
    const bool later = state.phase == SendPhase::waiting || state.phase == SendPhase::storage_fault;
    next_ms_ = state.phase == SendPhase::busy ? options_.steady_ms()
               : later                        ? std::max(state.next_ms, options_.steady_ms() + least_pause_ms)
                                              : -1;
    tell(lock, std::move(news));
}

void SendWorker::line_loop() {
    Lock lock(mutex_);
    for (;;) {
        if (closing_) return;
        if (line_is_due()) {
            work_on_line(lock);
        } else if (next_ms_ >= 0) {
            line_work_.wait_for(lock,
                                std::chrono::milliseconds(std::max<std::int64_t>(1, next_ms_ - options_.steady_ms())));
        } else {
            line_work_.wait(lock);
        }
    }
}

/// The office may be another one by now.
void SendWorker::open_line() {
    Result<std::optional<OfficeAccess>> office;
    writer_.with_database([&](Database& database) { office = load_office(database); });
    sender_.reset();
    office_ = office && *office ? (*office)->url : "";
    std::unique_ptr<Transport> fresh;
    if (!office_.empty() && options_.transport) fresh = options_.transport((*office)->url, (*office)->pin);
    {
        const std::lock_guard lock(mutex_);
        if (fresh && closing_) fresh->stop();
        transport_ = std::move(fresh);
    }
    if (!transport_) return;
    SenderOptions options;
    options.unit = random_share;
    options.utc_ms = options_.utc_ms;
    sender_ = std::make_unique<Sender>(
        [this](const std::function<void(Database&)>& job) { writer_.with_database(job); }, *transport_, options);
}

SendState SendWorker::exchange() {
    if (sender_) return sender_->step(options_.steady_ms());
    SendState state;
    state.phase = office_.empty() ? SendPhase::not_enrolled : SendPhase::all_sent;
    return state;
}

std::vector<Action> SendWorker::news_of(const SendState& state) {
    Result<OutboxCount> count;
    Result<std::vector<VisitLine>> lines;
    writer_.with_database([&](Database& database) {
        count = count_outbox(database);
        lines = visit_lines(database);
    });
    SendingStatus status;
    status.possible = options_.transport != nullptr;
    status.office = office_;
    status.phase = phase_of(state.phase);
    status.why = state.phase == SendPhase::storage_fault ? state.error.message : state.reason;
    if (count) {
        status.waiting = count->waiting;
        status.parked = count->parked;
        status.done = count->done;
    }
    News news;
    if (lines && (!told_once_ || *lines != told_lines_)) {
        news.emplace_back(VisitsListed{*lines});
        told_lines_ = std::move(*lines);
    }
    if (!told_once_ || status != told_) news.emplace_back(SendAction(SendingTold{status}));
    told_ = std::move(status);
    told_once_ = true;
    return news;
}

}  // namespace sillwalk::app
