/// The user interface in figures: first frame, the heaviest screen against the library's own demo window, frames drawn
/// while nothing happens, a kept reading to its new answer on a big site, memory. With a display (xvfb-run -a bench_ui)
/// the window counts too. Words choose parts: start, frames, answers, idle.

#include "tests/bench/ui/parts.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <fstream>
#include <string_view>
#include <sys/resource.h>
#include <unistd.h>

using namespace sillwalk;

namespace {

double resident_mebibytes() {
    std::ifstream file("/proc/self/statm");
    double pages = 0;
    double resident = 0;
    file >> pages >> resident;
    return resident * static_cast<double>(sysconf(_SC_PAGESIZE)) / (1024 * 1024);
}

double peak_mebibytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// Named on the command line, or all of them.
bool wanted(int count, char** words, std::string_view part) {
    if (count < 2) return true;
    return std::find(words + 1, words + count, part) != words + count;
}

}  // namespace

int main(int argc, char** argv) {
    const auto part = [&](std::string_view name) { return wanted(argc, argv, name); };
    if (part("start")) bench::bench_first_frame();
    const double empty = resident_mebibytes();
    const auto data = app::load_engine_data();
    if (!data.has_value()) return 1;
    fmt::print("memory: {:.0f} MiB before, {:.0f} MiB with tables and catalogue\n", empty, resident_mebibytes());
    if (part("frames")) bench::bench_screens(*data);
    if (part("answers")) bench::bench_answers(*data);
    if (part("idle") && bench::has_display()) bench::bench_idle_window(*data);
    fmt::print("memory: {:.0f} MiB at the end, {:.0f} MiB at most (goal 150)\n", resident_mebibytes(),
               peak_mebibytes());
    return 0;
}
