/// Time from a committed reading to the cart's new answer, as the app works it out: the sill of the demo site read
/// again and again, each cart in hand once a round. First the cart in hand, then all carts with the temperatures along
/// their routes. Wall clock, one thread.

#include "app/bundle/survey_json.hpp"
#include "app/shell/assessor.hpp"
#include "app/shell/engine_data.hpp"
#include "assets/embedded.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <functional>
#include <vector>

using namespace sillwalk;

namespace {

double milliseconds(const std::function<void()>& f) {
    const auto start = std::chrono::steady_clock::now();
    f();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

void report(const char* what, std::vector<double> times) {
    std::sort(times.begin(), times.end());
    const auto at = [&](double share) { return times[static_cast<std::size_t>(share * double(times.size() - 1))]; };
    fmt::print("{}: median {:.1f} ms, p99 {:.1f} ms, most {:.1f} ms of {}\n", what, at(0.5), at(0.99), times.back(),
               times.size());
}

}  // namespace

int main() {
    const auto data = app::load_engine_data();
    auto loaded = app::read_survey(*assets::embedded("demo/quillwater.json"));
    if (!data || !loaded.errors.empty()) return 1;
    engine::Survey& survey = loaded.survey;
    engine::CandidateSpace space((*data)->catalogue, (*data)->tables);  // as the app keeps it
    std::vector<double> one, all;
    std::uint64_t version = 0;
    for (int sixteenths = 1; sixteenths <= 12; ++sixteenths) {
        for (engine::Crossing& crossing : survey.crossings) {
            if (crossing.id.text() != "freezer-door") continue;
            crossing.rise.value = sixteenths / 16.0 * engine::inch;
            crossing.rise.as_entered = fmt::format("{}/16 in", sixteenths);
        }
        app::Answer answer;
        for (std::size_t cart = 0; cart < survey.carts.size(); ++cart) {
            one.push_back(milliseconds([&] { answer = app::work_out(survey, **data, space, ++version, cart); }));
        }
        all.push_back(milliseconds([&] { answer = app::work_out(survey, **data, space, ++version); }));
        for (const engine::Error& error : answer.refused) fmt::print("{}: {}\n", error.where, error.message);
        if (!answer.refused.empty()) return 1;
    }
    report("the cart in hand", one);
    report("all carts", all);
    return 0;
}
