/// Processor time of a full advice for the demo site, per catalogue size, and per candidate. Catalogues larger than the
/// shipped one repeat its wheels under other ids.

#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"

#include <fmt/core.h>

#include <ctime>

using namespace sillwalk;

namespace {

template <class F>
double milliseconds(F&& f) {
    const std::clock_t start = std::clock();
    f();
    return 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

/// The first wheels of the catalogue, or all of them several times over, until there are about so many candidates per
/// cart.
engine::Catalogue sized(const engine::Catalogue& shipped, std::size_t wheels) {
    engine::Catalogue catalogue = shipped;
    catalogue.wheels.clear();
    for (std::size_t i = 0; i < wheels; ++i) {
        // A stride that shares no factor with the list takes every construction and diameter in turn.
        engine::Wheel wheel = shipped.wheels[(i * 37) % shipped.wheels.size()];
        const std::size_t copy = i / shipped.wheels.size();
        wheel.id = engine::WheelId(fmt::format("{}-{:04}", wheel.id.text(), copy));
        wheel.diameter += static_cast<double>(copy) * 0.0001 * engine::millimetre;  // another body to walk
        catalogue.wheels.push_back(wheel);
    }
    return catalogue;
}

}  // namespace

int main() {
    const app::LoadedTables tables = app::load_tables();
    const auto loaded = app::load_catalogue();
    const auto survey = app::read_survey(*assets::embedded("demo/quillwater.json"));
    if (!tables.errors.empty() || !loaded.errors.empty() || !survey.errors.empty()) return 1;
    for (const std::size_t wheels : {15u, 60u, 212u, 600u}) {
        const engine::Catalogue catalogue = sized(loaded.catalogue, wheels);
        engine::Advice advice;
        const double time = milliseconds([&] { advice = engine::assess(survey.survey, catalogue, tables.tables); });
        std::size_t candidates = 0;
        for (const auto& cart : advice.carts) candidates += cart.candidates_total;
        fmt::print("{:4} wheels, {:7} candidates over {} carts: {:8.1f} ms, {:.3f} us per candidate\n", wheels,
                   candidates, advice.carts.size(), time, 1e3 * time / static_cast<double>(candidates));
    }
    return 0;
}
