#pragma once
/// A window for an application that takes frames. Draws only when something changed; a finger never makes the window
/// system grab the pointer (that kills touch under X11).

#include "app/ui/frame_output.hpp"
#include "engine/base/result.hpp"

#include <memory>
#include <string>

namespace sillwalk::platforms {

struct WindowOptions {
    std::string title = "Sillwalk";
    int width = 1280;
    int height = 800;
    float px_per_mm = 0;  ///< 0: as the display reports it, when that is believable
};

class SdlHost {
public:
    [[nodiscard]] static engine::Result<std::unique_ptr<SdlHost>> open(const WindowOptions& options);
    ~SdlHost();
    SdlHost(const SdlHost&) = delete;
    SdlHost& operator=(const SdlHost&) = delete;

    /// Until the window is closed or the application quits.
    void run(const ui::FrameFunction& application);
    /// One frame drawn into the window with an input of the caller's: scripts that are to be watched.
    ui::FrameOutput show(const ui::FrameFunction& application, const ui::FrameInput& input);
    /// Frames that were drawn so far: stays the same while nothing changes.
    [[nodiscard]] long frames_drawn() const;
    /// A box with these words until it is closed: for what ends the program.
    void tell(const std::string& words);
    /// Any thread: something changed, draw again.
    static void wake();
    /// Text of the clipboard; empty where there is none.
    [[nodiscard]] static std::string clipboard();

private:
    SdlHost();
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace sillwalk::platforms
