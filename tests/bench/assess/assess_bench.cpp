/// Processor time of the advice for the demo site: full, after one changed reading, and over catalogues of 1,000 to
/// 100,000 candidates. Catalogues other than the shipped one repeat its wheels under other ids, each a little larger:
/// another body to walk. Every run starts from nothing; nothing is kept between runs. Medians.

#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "assets/embedded.hpp"
#include "engine/checks/checks.hpp"
#include "engine/select/assess.hpp"
#include "engine/select/score_catalogue.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <functional>
#include <sys/resource.h>
#include <vector>

using namespace sillwalk;

namespace {

double milliseconds(const std::function<void()>& f, int runs) {
    std::vector<double> times;
    for (int i = 0; i < runs; ++i) {
        const std::clock_t start = std::clock();
        f();
        times.push_back(1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
    }
    std::nth_element(times.begin(), times.begin() + runs / 2, times.end());
    return times[static_cast<std::size_t>(runs / 2)];
}

double peak_mebibytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// The shipped wheels over and over until there are so many candidates: wheel × bearing × rig × preparation.
engine::Catalogue sized(const engine::Catalogue& shipped, const engine::Tables& tables, std::size_t candidates) {
    const engine::CandidateSpace space(shipped, tables);
    engine::Catalogue catalogue = shipped;
    catalogue.wheels.clear();
    std::size_t reached = 0;
    for (std::size_t i = 0; reached < candidates; ++i) {
        // A stride that shares no factor with the list takes every construction and diameter in turn.
        const std::size_t row = (i * 37) % shipped.wheels.size();
        const std::size_t copy = i / shipped.wheels.size();
        engine::Wheel wheel = shipped.wheels[row];
        wheel.id = engine::WheelId(fmt::format("{}-{:04}", wheel.id.text(), copy));
        wheel.diameter += static_cast<double>(copy) * 0.0001 * engine::millimetre;
        const auto& rows = space.wheels()[row];
        reached += rows.bearings.size() * rows.rigs.size() * engine::preparations.size();
        catalogue.wheels.push_back(std::move(wheel));
    }
    return catalogue;
}

/// What a program would cost that asks each candidate one thing only: does the rating carry the cart?
std::size_t load_alone(const engine::Survey& survey, const engine::Catalogue& catalogue, const engine::Tables& tables) {
    engine::CandidateSpace space(catalogue, tables);
    std::size_t holding = 0;
    for (std::size_t cart = 0; cart < survey.carts.size(); ++cart) {
        const engine::CartDemand demand = engine::resolve(survey, cart, tables);
        for (std::uint32_t w = 0; w < space.wheels().size(); ++w) {
            for (const std::uint32_t bearing : space.wheels()[w].bearings) {
                for (const std::uint32_t rig : space.wheels()[w].rigs) {
                    for (const engine::Preparation preparation : engine::preparations) {
                        engine::CheckContext context = space.context_of({w, bearing, rig, preparation});
                        context.cart = &demand;
                        holding += engine::check_load(context).outcome == engine::Outcome::holds ? 1 : 0;
                    }
                }
            }
        }
    }
    return holding;
}

struct Size {
    double candidates = 0, milliseconds = 0;
};

/// Slope of ln(time) over ln(candidates) by least squares.
double exponent(const std::vector<Size>& sizes) {
    double x = 0, y = 0, xx = 0, xy = 0;
    const auto n = static_cast<double>(sizes.size());
    for (const Size& size : sizes) {
        const double a = std::log(size.candidates), b = std::log(size.milliseconds);
        x += a;
        y += b;
        xx += a * a;
        xy += a * b;
    }
    return (n * xy - x * y) / (n * xx - x * x);
}

}  // namespace

int main() {
    const app::LoadedTables tables = app::load_tables();
    const auto loaded = app::load_catalogue();
    auto survey = app::read_survey(*assets::embedded("demo/quillwater.json"));
    if (!tables.errors.empty() || !loaded.errors.empty() || !survey.errors.empty()) return 1;
    const double before = peak_mebibytes();
    const auto advise = [&](const engine::Catalogue& catalogue, const engine::AssessOptions& options = {}) {
        return engine::assess(survey.survey, catalogue, tables.tables, options);
    };
    const auto carts = survey.survey.carts.size();
    fmt::print("demo site: {} carts, {} crossings; shipped catalogue: {} candidates\n", carts,
               survey.survey.crossings.size(), engine::CandidateSpace(loaded.catalogue, tables.tables).candidates());

    const engine::Catalogue ten_thousand = sized(loaded.catalogue, tables.tables, 10'000);
    const double full = milliseconds([&] { (void)advise(ten_thousand); }, 5);
    fmt::print("full advice, 10,000 candidates: {:.1f} ms (goal 100)\n", full);
    fmt::print("peak memory of it: {:.1f} MiB, of which {:.1f} were there before (goal 64)\n", peak_mebibytes(),
               before);
    const double plain = milliseconds([&] { (void)load_alone(survey.survey, ten_thousand, tables.tables); }, 5);
    fmt::print("the load check alone in a plain loop: {:.1f} ms; full advice is {:.1f} times that\n", plain,
               full / plain);

    survey.survey.carts[0].payload.value = *survey.survey.carts[0].payload.value * 1.01;
    const double one = milliseconds([&] { (void)advise(loaded.catalogue, {5, 5, 0}); }, 9);
    fmt::print("one cart's reading changed, shipped catalogue: {:.1f} ms (goal 16)\n", one);
    const double all = milliseconds([&] { (void)advise(loaded.catalogue); }, 5);
    fmt::print("a reading that every cart shares, shipped catalogue: {:.1f} ms\n", all);

    std::vector<Size> sizes;
    for (const std::size_t candidates : {1'000u, 3'000u, 10'000u, 30'000u, 100'000u}) {
        const engine::Catalogue catalogue = sized(loaded.catalogue, tables.tables, candidates);
        const double time = milliseconds([&] { (void)advise(catalogue); }, candidates > 20'000 ? 3 : 5);
        const auto there = static_cast<double>(engine::CandidateSpace(catalogue, tables.tables).candidates());
        sizes.push_back({there, time});
        fmt::print("{:7.0f} candidates: {:8.1f} ms, {:.3f} us per candidate and cart\n", there, time,
                   1e3 * time / there / static_cast<double>(carts));
    }
    fmt::print("time grows with the candidates to the power of {:.3f} (goal at most 1.05)\n", exponent(sizes));
    return 0;
}
