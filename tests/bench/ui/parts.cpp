#include "tests/bench/ui/parts.hpp"

#include "app/bundle/digest.hpp"
#include "app/bundle/survey_entries.hpp"
#include "app/bundle/survey_json.hpp"
#include "assets/embedded.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <utility>

namespace sillwalk::bench {

engine::Survey big_site() {
    auto read = app::read_survey(*assets::embedded("demo/quillwater.json"));
    engine::Survey survey = std::move(read.survey);
    const auto crossings = survey.crossings;
    const auto carts = survey.carts;
    const auto numbered = [](const std::string& id, std::size_t copy) { return fmt::format("{}-{}", id, copy); };
    for (std::size_t copy = 1; survey.crossings.size() < big_crossings; ++copy) {
        for (const engine::Crossing& crossing : crossings) {
            if (survey.crossings.size() == big_crossings) break;
            survey.crossings.push_back(crossing);
            survey.crossings.back().id = engine::CrossingId(numbered(crossing.id.text(), copy));
        }
    }
    for (std::size_t copy = 1; survey.carts.size() < big_carts; ++copy) {
        for (const engine::Cart& cart : carts) {
            if (survey.carts.size() == big_carts) break;
            survey.carts.push_back(cart);
            survey.carts.back().id = engine::CartId(numbered(cart.id.text(), copy));
            // Every copy goes by the copied crossings, so that all of them count.
            for (engine::Stop& stop : survey.carts.back().route) {
                if (stop.leaves_by) stop.leaves_by = engine::CrossingId(numbered(stop.leaves_by->text(), copy));
            }
        }
    }
    return survey;
}

void add_photos(app::Shell& shell) {
    const app::AppModel& model = shell.model();
    const std::string visit = model.visit->id.text();
    const auto small = std::make_shared<app::Picture>(app::Picture{384, 288, std::vector<std::uint8_t>(384 * 288 * 4)});
    for (std::uint16_t i = 0; i < app::most_photos; ++i) {
        const auto bytes = std::make_shared<const std::string>(fmt::format("photo {}", i));
        const std::string name = app::to_hex(app::sha256(*bytes));
        shell.act(app::PhotoAction(app::PhotoTaken{visit, *bytes, name, bytes, 1600, 1200, small}));
        const engine::Crossing& crossing = model.visit->survey.crossings[i % model.visit->survey.crossings.size()];
        shell.act(app::PhotoAction(app::BindPhoto{i, "/crossings/" + crossing.id.text() + "/rise"}));
        const app::PhotoMark mark{app::MarkKind::dimension, {2000, 3000}, {6000, 3000}, "19 mm"};
        shell.act(app::PhotoAction(app::AddPhotoMark{i, mark}));
    }
}

std::unique_ptr<app::Shell> open_shell(const std::shared_ptr<const app::EngineData>& data, const engine::Survey& survey,
                                       bool threads, std::function<void()> wake) {
    app::ShellOptions options;
    options.database = ":memory:";
    options.threads = threads;
    options.services.wake = std::move(wake);
    options.services.utc_ms = [] {
        const auto now = std::chrono::system_clock::now().time_since_epoch();
        return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
    };
    auto shell = app::Shell::open(data, std::move(options));
    if (!shell.has_value()) {
        fmt::print("{}: {}\n", shell.error().where, shell.error().message);
        std::exit(1);
    }
    // As a follow-up, so that it is stored.
    (*shell)->act(app::VisitLoaded{survey.id.text(), app::entries_of(survey), {}, {}, {}, true});
    return std::move(*shell);
}

ui::FrameOutput Still::frame(double seconds_later) {
    input_.now += seconds_later;
    input_.delta = static_cast<float>(seconds_later);
    last_ = shell_.frame(input_);
    return last_;
}

ui::FrameOutput Still::scrolled_frame(float pixels) {
    for (const ui::ScrollRegion& list : last_.hit_map->scrolls()) {
        if (list.covered || list.max_offset <= 0) continue;
        if (list.offset >= list.max_offset) direction_ = 1;
        if (list.offset <= 0) direction_ = -1;
        input_.wheels.push_back({list.view.center(), {0, direction_ * pixels}});
    }
    ui::FrameOutput out = frame(1.0 / 60);
    input_.wheels.clear();
    return out;
}

void Still::settle() {
    while (frame(1.0 / 60).wants_frame) {
    }
}

long Still::frames_within(double seconds) {
    const double end = input_.now + seconds;
    long frames = 0;
    while (last_.wants_frame || last_.wants_frame_in >= 0) {
        const double pause = last_.wants_frame ? 1.0 / 60 : last_.wants_frame_in;
        if (input_.now + pause > end) break;
        frame(pause);
        ++frames;
    }
    return frames;
}

double quantile(std::vector<double>& values, double share) {
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

bool has_display() {
    return std::getenv("DISPLAY") != nullptr || std::getenv("WAYLAND_DISPLAY") != nullptr;
}

}  // namespace sillwalk::bench
