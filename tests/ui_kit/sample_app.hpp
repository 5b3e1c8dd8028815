#pragma once
/// A small application made from the kit, for the tests of the kit only.

#include "app/ui/ui.hpp"

#include <map>
#include <string>

namespace sillwalk::test {

struct SampleApp {
    ui::Ui kit;
    ui::UiSettings settings;
    std::map<std::string, int> taps;  ///< how often each id fired
    int screen = 0;                   ///< 0 crossing, 1 list, 2 controls
    bool sheet_open = false;
    std::string note = "Heater on";
    double slider = 0.4;
    int unit = 0;
    int longs = 0;
    double toast_since = -100;
    std::string entered;
    std::size_t rows = 60;
    std::size_t rows_built = 0;  ///< by all frames

    ui::FrameOutput frame(const ui::FrameInput& input);

private:
    void chrome();
    void crossing(const ui::Rect& content);
    void long_list(const ui::Rect& content);
    void controls(const ui::Rect& content);
    void measure();
    void note_tap(const std::string& id, bool tapped);
};

}  // namespace sillwalk::test
