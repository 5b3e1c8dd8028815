// A14 through the whole app: its own process is killed while a reading is typed, and the app opened again. The killing
// of the store alone, two hundred times, is in tests/app_storage/test_kill.cpp.
#include "app/core/reading_access.hpp"
#include "tests/app_screens/app_host.hpp"
#include "tests/app_storage/killed.hpp"

#include <random>

using namespace sillwalk;

namespace {

constexpr engine::ReadingRef typed_rise{engine::Field::crossing_rise, 0, 0};
constexpr std::int32_t first_rise_mm = 10;

/// The last that the disk was heard to have.
struct Heard {
    std::int32_t rise_mm = 0;  ///< kept; 0: none yet
    std::int32_t keys = 0;     ///< of the reading in hand
};

std::unique_ptr<app::Shell> opened_app(const std::string& database) {
    app::ShellOptions options;
    options.database = database;
    options.demo = true;
    options.threads = false;
    options.services.utc_ms = [] { return std::int64_t{1795600000000}; };
    auto shell = app::Shell::open(test::shared_data(), std::move(options));
    return shell ? std::move(*shell) : nullptr;
}

/// 10 mm to 99 mm, key by key, until it is killed.
[[noreturn]] void type_rises(const std::string& database, int pipe_end) {
    const auto shell = opened_app(database);
    if (!shell) ::_exit(2);
    const auto tell = [&](Heard heard) {
        if (!shell->flush(5000)) ::_exit(3);
        test::tell(pipe_end, heard);
    };
    tell({0, 0});
    for (std::int32_t rise = first_rise_mm; rise < 100; ++rise) {
        const std::int32_t before = rise == first_rise_mm ? 0 : rise - 1;
        shell->act(app::OpenSheet{typed_rise});
        std::int32_t keys = 0;
        for (const char digit : std::to_string(rise)) {
            shell->act(app::SheetDigit{digit});
            tell({before, ++keys});
        }
        shell->act(app::SheetKeep{});
        tell({rise, 0});
    }
    for (;;) ::pause();
}

}  // namespace

TEST_CASE("A14 the app killed while a reading is typed opens with all of it but a key", "[kill]") {
    constexpr std::int64_t nm_per_mm = 1'000'000;
    std::mt19937 random(20260902);
    std::uniform_int_distribution<useconds_t> pause(0, 40000);
    (void)test::shared_data();  // before the processes part
    for (int round = 0; round < 8; ++round) {
        const test::Scratch scratch;
        const std::string path = scratch.file("a.db");
        const auto heard =
            test::killed_after<Heard>(pause(random), [&path](int pipe_end) { type_rises(path, pipe_end); });
        INFO("round " << round << ", told of " << heard.rise_mm << " mm and " << heard.keys << " keys");
        const auto shell = opened_app(path);
        REQUIRE(shell);
        const app::AppModel& model = shell->model();
        REQUIRE(model.visit);
        const std::int64_t kept = app::read_number(model.visit->survey, typed_rise)->value.value_or(0);
        const std::int64_t least = heard.rise_mm * nm_per_mm;
        const bool next_kept = kept == least + nm_per_mm || (heard.rise_mm == 0 && kept == first_rise_mm * nm_per_mm);
        if (heard.rise_mm != 0) CHECK((kept == least || next_kept));
        if (heard.keys == 0 || next_kept) continue;
        REQUIRE(model.sheet);
        CHECK(model.sheet->ref == typed_rise);
        CHECK(static_cast<std::int32_t>(model.sheet->entry.digits.size()) >= heard.keys);
    }
}
