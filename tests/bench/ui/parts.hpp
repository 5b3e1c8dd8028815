#pragma once
/// The parts of the user interface's bench. Each prints its own lines.

#include "app/shell/shell.hpp"
#include "app/ui/frame_input.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace sillwalk::bench {

constexpr std::size_t big_crossings = 60;
constexpr std::size_t big_carts = 20;

/// The demo site, its crossings and carts repeated under other ids until there are 60 and 20.
[[nodiscard]] engine::Survey big_site();

/// The app on a database in memory, with the survey open.
[[nodiscard]] std::unique_ptr<app::Shell> open_shell(const std::shared_ptr<const app::EngineData>& data,
                                                     const engine::Survey& survey, bool threads,
                                                     std::function<void()> wake);

/// Sixty photos, each of the rise of a crossing and with a mark.
void add_photos(app::Shell& shell);

/// Frames on a clock of the bench's own, without input but for lists that are moved.
class Still {
public:
    explicit Still(app::Shell& shell) : shell_(shell) {}
    ui::FrameOutput frame(double seconds_later);
    /// A frame in which every list moves by so many pixels, down to its end and up again.
    ui::FrameOutput scrolled_frame(float pixels);
    /// Until the app asks for no further frame.
    void settle();
    /// Frames that the app asks for within the time, counted as the window's loop would draw them.
    [[nodiscard]] long frames_within(double seconds);

private:
    app::Shell& shell_;
    ui::FrameInput input_;
    ui::FrameOutput last_;
    float direction_ = -1;
};

/// The value below which the share of the values lies; the values get sorted.
[[nodiscard]] double quantile(std::vector<double>& values, double share);
[[nodiscard]] bool has_display();

void bench_first_frame();
void bench_screens(const std::shared_ptr<const app::EngineData>& data);
void bench_answers(const std::shared_ptr<const app::EngineData>& data);
void bench_idle_window(const std::shared_ptr<const app::EngineData>& data);

}  // namespace sillwalk::bench
