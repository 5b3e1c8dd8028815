// sillwalk-desk enrol, send, outbox: how what was sealed gets to the office.

#include "app/storage/quarantine.hpp"
#include "app/sync/enrol.hpp"
#include "app/sync/fresh_identity.hpp"
#include "app/sync/sender.hpp"
#include "platforms/common/curl_transport.hpp"
#include "platforms/desk/field/field_store.hpp"
#include "platforms/desk/subcommand.hpp"
#include "platforms/desk/workspace.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <thread>

namespace sillwalk::desk {

namespace {

struct SendWords {
    FieldOptions field;
    std::string server, certificate;
    std::int64_t patience_s = 60;
    std::int64_t first_wait_ms = app::RetryLimits{}.first_ms;
    bool retry_parked = false;
};

constexpr const char* state_keys[] = {"sync.state.queued", "sync.state.sending", "sync.state.parked",
                                      "sync.state.done"};

int bad_address(const std::string& url) {
    fmt::print(stderr, "--server: '{}' is no address of an office; https://HOST or https://HOST:PORT is one\n", url);
    return exit_bad_input;
}

/// Steps until everything is sent or nothing moved for as long as patience lasts.
app::SendState send_all(app::Sender& sender, std::int64_t patience_ms) {
    std::int64_t moved_ms = steady_ms();
    for (;;) {
        const std::int64_t now = steady_ms();
        const app::SendState state = sender.step(now);
        if (state.phase == app::SendPhase::busy) {
            moved_ms = now;
            continue;
        }
        const bool later = state.phase == app::SendPhase::waiting || state.phase == app::SendPhase::storage_fault;
        if (!later || now - moved_ms >= patience_ms) return state;
        const std::int64_t wait = std::min(state.next_ms, moved_ms + patience_ms) - now;
        std::this_thread::sleep_for(std::chrono::milliseconds(std::max<std::int64_t>(wait, 1)));
    }
}

std::string phase_in_words(const app::SendState& state, const app::Language& language) {
    switch (state.phase) {
        case app::SendPhase::all_sent:
            return language.get("sync.phase.all_sent");
        case app::SendPhase::busy:
            return language.get("sync.phase.busy");
        case app::SendPhase::waiting:
            return language.fill("sync.phase.waiting",
                                 {language.get(state.reason.empty() ? "sync.why.busy" : state.reason)});
        case app::SendPhase::not_enrolled:
            return language.get("sync.phase.not_enrolled");
        case app::SendPhase::enrol_again:
            return language.get("sync.phase.enrol_again");
        case app::SendPhase::storage_fault:
            return language.fill("sync.phase.storage_fault", {state.error.message});
    }
    return {};
}

int tell_end(FieldStore& store, const app::SendState& state) {
    const auto count = store.with([](app::Database& database) { return app::count_outbox(database); });
    if (!count) {
        print_error(count.error());
        return exit_failed;
    }
    fmt::print("{} sent, {} waiting, {} parked, {} exchanges\n", count->done, count->waiting, count->parked,
               state.exchanges);
    const bool parked = state.phase == app::SendPhase::all_sent && count->parked > 0;
    fmt::print("{}\n", parked ? store.language.fill("sync.phase.parked", {std::to_string(count->parked)})
                              : phase_in_words(state, store.language));
    if (state.phase == app::SendPhase::all_sent) return parked ? exit_refused : exit_ok;
    const bool later = state.phase == app::SendPhase::waiting || state.phase == app::SendPhase::storage_fault;
    return later ? exit_failed : exit_refused;
}

}  // namespace

int run_enrol(int argc, char** argv) {
    CLI::App command{"Enrols this device at an office", "sillwalk-desk enrol"};
    FieldOptions field;
    app::EnrolOrder order;
    std::string certificate;
    add_field_options(command, field);
    command.add_option("--server", order.url, "Address of the office")->required();
    command.add_option("--code", order.code, "The office's code, good once and for 15 minutes")->required();
    command.add_option("--name", order.device_name, "Name of this device at the office");
    command.add_option("--pin", order.pin, "sha256//… of the server's public key, where only that one is trusted");
    command.add_option("--certificate", certificate, "File of certificates to trust in place of the system's");
    if (const auto status = parse(command, argc, argv)) return *status;
    while (!order.url.empty() && order.url.back() == '/') order.url.pop_back();
    if (!app::is_office_address(order.url)) return bad_address(order.url);
    auto store = open_field_store(field);
    if (!store) return exit_failed;
    if (order.device_name.empty()) order.device_name = "sillwalk-desk";
    platforms::CurlTransport transport({order.url, order.pin, certificate});
    const auto office = app::enrol(transport, order, store->device);
    if (!office) {
        const bool unreached = office.error().code == engine::ErrorCode::transport;
        // Nobody tries it again by itself, as it would what waits in the outbox.
        const std::string reason = app::enrolment_reason(office.error());
        if (store->language.has(reason)) {
            fmt::print(stderr, "{}\n", store->language.fill(reason, {order.url}));
        } else {
            print_error(office.error());
        }
        return unreached ? exit_failed : exit_bad_input;
    }
    const auto stored = store->with([&](app::Database& database) { return app::store_office(database, *office); });
    if (!stored) {
        print_error(stored.error());
        return exit_failed;
    }
    fmt::print("{}\n", office->device_id);
    return exit_ok;
}

int run_send(int argc, char** argv) {
    CLI::App command{"Sends what is in the outbox", "sillwalk-desk send"};
    SendWords words;
    add_field_options(command, words.field);
    command.add_option("--server", words.server, "Address of the office in place of the one it was enrolled at");
    command.add_option("--certificate", words.certificate, "File of certificates to trust in place of the system's");
    command.add_option("--patience", words.patience_s, "Seconds without progress after which it stops (60)");
    command.add_option("--first-wait-ms", words.first_wait_ms, "Longest wait after a first failure (2000)")
        ->check(CLI::Range(1, 60000));
    command.add_flag("--retry-parked", words.retry_parked, "Also take up what needs attention");
    if (const auto status = parse(command, argc, argv)) return *status;
    if (!words.server.empty() && !app::is_office_address(words.server)) return bad_address(words.server);
    auto store = open_field_store(words.field);
    if (!store) return exit_failed;
    const auto office = store->with([](app::Database& database) { return app::load_office(database); });
    if (!office) {
        print_error(office.error());
        return exit_failed;
    }
    if (!*office) {
        fmt::print(stderr, "{}\n", store->language.get("sync.phase.not_enrolled"));
        return exit_refused;
    }
    platforms::CurlTransport transport(
        {words.server.empty() ? (*office)->url : words.server, (*office)->pin, words.certificate});
    app::SenderOptions options;
    options.limits.first_ms = words.first_wait_ms;
    options.unit = app::random_share;
    options.utc_ms = utc_ms;
    app::Writer& writer = *store->writer;
    app::Sender sender([&](const std::function<void(app::Database&)>& job) { writer.with_database(job); }, transport,
                       options);
    if (words.retry_parked) sender.hurry(true);
    return tell_end(*store, send_all(sender, words.patience_s * 1000));
}

int run_outbox(int argc, char** argv) {
    CLI::App command{"What waits for the office and what became of it", "sillwalk-desk outbox"};
    FieldOptions field;
    add_field_options(command, field);
    if (const auto status = parse(command, argc, argv)) return *status;
    auto store = open_field_store(field);
    if (!store) return exit_failed;
    const auto rows = store->with([](app::Database& database) { return app::list_outbox(database); });
    const auto aside = store->with([](app::Database& database) { return app::list_quarantine(database); });
    if (!rows || !aside) {
        print_error(rows ? aside.error() : rows.error());
        return exit_failed;
    }
    const app::Language& language = store->language;
    for (const app::OutboxRow& row : *rows) {
        const char* kind = row.kind == app::OutboxKind::blob ? "sync.kind.blob" : "sync.kind.revision";
        fmt::print("{}  {}  {}  {}\n", app::to_hex(row.digest), language.get(kind),
                   language.get(state_keys[static_cast<int>(row.state)]),
                   row.last_error.empty() ? "" : language.get(row.last_error));
    }
    for (const app::QuarantineRow& row : *aside) {
        fmt::print("{}  {} B  {}\n", row.digest ? app::to_hex(*row.digest) : "", row.bytes, language.get(row.why));
    }
    return exit_ok;
}

}  // namespace sillwalk::desk
