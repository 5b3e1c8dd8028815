// What a person orders of the worker that sends.

#include "app/bundle/canonical.hpp"
#include "app/shell/send_worker.hpp"
#include "app/storage/erase.hpp"
#include "app/storage/files.hpp"
#include "app/sync/enrol.hpp"
#include "app/sync/fresh_identity.hpp"
#include "app/sync/hand_off_files.hpp"
#include "app/sync/sealed_visit.hpp"

#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <utility>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

namespace fs = std::filesystem;

constexpr int flush_ms = 10000;
constexpr const char* nameless = "sillwalk";  ///< as the office lists a tablet to which nobody gave a name
constexpr int most_tries = 3;                 ///< of sealing while the visit is changed

SendingFault enrolment_fault(const engine::Error& error, const std::string& address) {
    std::string reason = enrolment_reason(error);
    if (reason.empty()) return {"enrol.why.storage", error.message};
    return {std::move(reason), address};
}

SendingFault seal_fault(const engine::Error& error) {
    if (error.code == ErrorCode::storage) return {"seal.why.storage", error.message};
    if (error.code == ErrorCode::disagreement) return {"seal.why.changing", {}};
    if (error.code == ErrorCode::not_found) return {"seal.why.photo_gone", {}};
    return {"seal.why.visit", error.where.empty() ? error.message : error.where + ": " + error.message};
}

/// "2026-11-26-071500" of that moment, UTC.
std::string stamp(std::int64_t utc_ms) {
    using namespace std::chrono;
    const sys_time<milliseconds> at{milliseconds(utc_ms)};
    const auto day = floor<days>(at);
    const year_month_day date(day);
    const hh_mm_ss clock(floor<seconds>(at - day));
    return fmt::format("{:04}-{:02}-{:02}-{:02}{:02}{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), clock.hours().count(),
                       clock.minutes().count(), clock.seconds().count());
}

/// A name that nothing in the folder has yet.
fs::path free_path(const fs::path& folder, std::int64_t utc_ms) {
    const std::string name = "sillwalk-" + stamp(utc_ms);
    fs::path path = folder / (name + ".ndjson");
    std::error_code ignored;
    for (int i = 2; fs::exists(path, ignored); ++i) path = folder / fmt::format("{}-{}.ndjson", name, i);
    return path;
}

}  // namespace

std::vector<Action> SendWorker::carry_out(const SendOrder& order) {
    if (const auto* one = std::get_if<OrderSeal>(&order)) return seal(*one);
    if (const auto* one = std::get_if<OrderEnrolment>(&order)) return enrol_tablet(*one);
    if (const auto* one = std::get_if<OrderHandOff>(&order)) return hand_off(one->survey_id);
    if (const auto* one = std::get_if<OrderErase>(&order)) return erase(one->survey_id);
    wake_line(true, true);
    return {};
}

Result<DeviceIdentity> SendWorker::identity() {
    Result<DeviceIdentity> device;
    const DeviceIdentity fresh = fresh_identity(options_.utc_ms());
    writer_.with_database([&](Database& database) { device = device_identity(database, fresh); });
    return device;
}

std::vector<Action> SendWorker::seal(const OrderSeal& order) {
    Result<void> done;
    for (int i = 0; i < most_tries; ++i) {
        done = seal_as_it_stands(order);
        if (done || done.error().code != ErrorCode::disagreement) break;
    }
    // Nothing has changed since: it is sealed, and a person wants it sent.
    if (!done && done.error().code != ErrorCode::no_answer)
        return {SendAction(SealFailed{order.survey_id, seal_fault(done.error())})};
    wake_line(false, false);
    News news;
    if (order.hand_off) news = hand_off(order.survey_id);
    news.emplace_back(SendAction(VisitSealed{order.survey_id}));
    return news;
}

Result<void> SendWorker::seal_as_it_stands(const OrderSeal& order) {
    if (!writer_.flush(flush_ms)) {
        const engine::Error why = writer_.state().error;
        return engine::fail(ErrorCode::storage, why.message, why.where);
    }
    const auto device = identity();
    if (!device) return tl::make_unexpected(device.error());
    Result<StoredVisit> visit;
    Result<VisitHead> head;
    writer_.with_database([&](Database& database) {
        head = load_head(database, order.survey_id);
        visit = load_visit(database, order.survey_id);
    });
    if (!head) return tl::make_unexpected(head.error());
    if (!visit) return tl::make_unexpected(visit.error());
    const auto made = make_seal_order(order.survey_id, *visit, *head,
                                      {data_->catalogue, data_->tables, *device, order.author, options_.utc_ms()});
    if (!made) return tl::make_unexpected(made.error());
    return writer_.seal(*made);
}

std::vector<Action> SendWorker::enrol_tablet(const OrderEnrolment& order) {
    const auto failed = [](SendingFault fault) -> News { return {SendAction(EnrolmentFailed{std::move(fault)})}; };
    std::string address = order.address;
    if (address.find("://") == std::string::npos) address = "https://" + address;
    while (address.ends_with('/')) address.pop_back();
    if (!is_office_address(address)) return failed({"enrol.why.address", order.address});
    if (!options_.transport) return failed({"enrol.why.no_network", {}});
    const auto device = identity();
    if (!device) return failed({"enrol.why.storage", device.error().message});
    auto transport = options_.transport(address, "");
    Transport& line = *transport;
    {
        const std::lock_guard lock(mutex_);
        if (closing_) return {};
        enrolment_ = std::move(transport);
    }
    const auto office =
        enrol(line, {address, order.code, order.name.empty() ? nameless : order.name, "", order.key}, *device);
    {
        const std::lock_guard lock(mutex_);
        enrolment_.reset();
    }
    if (!office) return failed(enrolment_fault(office.error(), address));
    Result<void> stored;
    writer_.with_database([&](Database& database) { stored = store_office(database, *office); });
    if (!stored) return failed({"enrol.why.storage", stored.error().message});
    wake_line(true, false);
    return {SendAction(TabletEnrolled{})};
}

std::vector<Action> SendWorker::erase(const std::string& survey_id) {
    (void)writer_.flush(flush_ms);
    Result<void> done;
    writer_.with_database([&](Database& database) { done = erase_visit(database, survey_id); });
    wake_line(false, false);  // which tells the list anew
    if (done) return {SendAction(VisitErased{})};
    const bool not_all = done.error().code == ErrorCode::no_answer;
    return {SendAction(EraseFailed{not_all ? SendingFault{"erase.why.not_all", {}}
                                           : SendingFault{"erase.why.storage", done.error().message}})};
}

std::vector<Action> SendWorker::hand_off(const std::string& survey_id) {
    const auto told = write_file(survey_id);
    if (told) return {SendAction(HandOffWritten{*told})};
    const bool nothing = told.error().code == ErrorCode::no_answer;
    return {SendAction(HandOffFailed{nothing ? SendingFault{"hand_off.why.nothing", {}}
                                             : SendingFault{"hand_off.why.folder", told.error().where}})};
}

Result<HandOffTold> SendWorker::write_file(const std::string& survey_id) {
    std::error_code failed;
    const fs::path folder = options_.hand_off_folder.empty() ? fs::path(".") : fs::path(options_.hand_off_folder);
    fs::create_directories(folder, failed);
    const std::string path = free_path(folder, options_.utc_ms()).string();
    const std::string part = path + ".part";
    std::ofstream file(part, std::ios::binary);
    Result<HandedOff> written;
    writer_.with_database([&](Database& database) { written = write_hand_off(database, survey_id, file); });
    file.close();
    Result<void> kept;
    if (!written) kept = tl::make_unexpected(written.error());
    if (kept && !file) kept = engine::fail(ErrorCode::storage, "the file cannot be written", folder.string());
    if (kept && written->revisions == 0) kept = engine::no_answer("nothing was sealed yet");
    if (kept) kept = sync_file(part);
    const auto size = static_cast<std::int64_t>(fs::file_size(part, failed));
    if (kept) kept = move_file(part, path);
    if (!kept) {
        fs::remove(part, failed);
        engine::Error error = kept.error();
        error.where = folder.string();
        return tl::make_unexpected(std::move(error));
    }
    return HandOffTold{path, size, written->revisions, written->photos,
                       static_cast<std::int64_t>(written->damaged.size())};
}

}  // namespace sillwalk::app
