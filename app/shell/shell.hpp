#pragma once
/// The app without its window: owns the model, the database, the engine's data and the kit, and turns frames of input
/// into frames of output. Hosts (window, web page, script driver) call frame() and nothing else.

#include "app/core/action.hpp"
#include "app/photo/camera_source.hpp"
#include "app/shell/engine_data.hpp"
#include "app/shell/send_worker.hpp"
#include "app/ui/frame_input.hpp"
#include "app/ui/frame_output.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <memory>
#include <string>

namespace sillwalk::app {

/// What a platform gives.
struct PlatformServices {
    std::function<std::int64_t()> utc_ms;     ///< milliseconds since 1970
    int utc_offset_minutes = 0;               ///< of the clock on the wall
    std::function<void()> wake;               ///< from any thread: a frame is needed
    std::function<RandomBytes()> random;      ///< once at the start, from the system's generator; none: the library's
    MakeTransport transport;                  ///< none: nothing is sent, only handed off
    std::function<std::int64_t()> steady_ms;  ///< by a clock that never jumps; none: the system's
    std::function<std::string()> clipboard;   ///< its text; none: there is none
    OpenCameraSource camera{};                ///< none: there is no camera
};

struct ShellOptions {
    std::string database;           ///< path; ":memory:" keeps nothing
    std::string photo_folder{};     ///< where photos are taken from; empty: there is none
    std::string hand_off_folder{};  ///< where hand-off files are written; empty: where the program runs
    bool demo = false;              ///< puts the demo visit in, should it not be there, and opens it
    bool threads = true;            ///< false: disk and engine run within the frame (tests, web)
    std::size_t draws = 2000;       ///< of the readings inside their tolerances; tests take fewer
    PlatformServices services;
    bool keep = false;  ///< look after the file: see WriterOptions::keep
};

/// Every letter that words, formulas and numbers need, so that the font holds them.
[[nodiscard]] std::string drawn_letters(const EngineData& data);

class Shell {
public:
    [[nodiscard]] static engine::Result<std::unique_ptr<Shell>> open(std::shared_ptr<const EngineData> data,
                                                                     ShellOptions options);
    ~Shell();
    Shell(const Shell&) = delete;
    Shell& operator=(const Shell&) = delete;

    /// Does beforehand what a first frame like this one takes most time for. On any thread, before the first frame.
    void prepare(const ui::FrameInput& input);
    [[nodiscard]] ui::FrameOutput frame(const ui::FrameInput& input);
    /// The screen of the last frame as plain text.
    [[nodiscard]] std::string describe() const;
    /// What a host's own setting or a test wants done; takes effect at once.
    void act(const Action& action);
    [[nodiscard]] const AppModel& model() const;
    /// Before the program ends or sleeps: waits for the disk. False where it did not take everything.
    bool flush(int milliseconds);

private:
    Shell();
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace sillwalk::app
