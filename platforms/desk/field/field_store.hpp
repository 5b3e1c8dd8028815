#pragma once
/// The field side from the command line: the same file of visits, outbox and key that the app uses, so that sealing,
/// sending and handing off can be tried without it.

#include "app/storage/identity.hpp"
#include "app/storage/writer.hpp"
#include "app/text/language.hpp"

namespace CLI {
class App;
}

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

namespace sillwalk::desk {

struct FieldOptions {
    std::string data;  ///< folder of the visits
    std::string language = "en";
};
/// --data and --language.
void add_field_options(CLI::App& command, FieldOptions& options);

struct FieldStore {
    std::unique_ptr<app::Writer> writer;
    app::DeviceIdentity device;
    app::Language language;

    /// Runs a job with the database and gives back what it returns.
    template <class F>
    auto with(F&& job) {
        decltype(job(std::declval<app::Database&>())) result;
        writer->with_database([&](app::Database& database) { result = job(database); });
        return result;
    }
};

/// Makes the folder, opens the file, makes the device's key where there is none. Prints what is wrong, or what was
/// found and put right, and returns nothing where it cannot be opened.
[[nodiscard]] std::optional<FieldStore> open_field_store(const FieldOptions& options);

/// Milliseconds since 1970.
[[nodiscard]] std::int64_t utc_ms();
/// Of a clock that never jumps.
[[nodiscard]] std::int64_t steady_ms();
/// One line on the error stream.
void print_error(const engine::Error& error);

int run_seal(int argc, char** argv);
int run_enrol(int argc, char** argv);
int run_send(int argc, char** argv);
int run_outbox(int argc, char** argv);
int run_hand_off(int argc, char** argv);
int run_import(int argc, char** argv);

}  // namespace sillwalk::desk
