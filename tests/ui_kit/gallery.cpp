/// Writes pictures of the sample screens in every theme, to be looked at: ui_kit_gallery FOLDER

#include "platforms/common/software_renderer.hpp"
#include "tests/ui_kit/drawings.hpp"
#include "tests/ui_kit/sample_app.hpp"

#include <cstdio>
#include <string>

using namespace sillwalk;

namespace {

bool write(const ui::FrameOutput& out, const std::string& name) {
    std::printf("%s\n", name.c_str());
    return platforms::write_png(platforms::render(out), name).has_value();
}

bool write_drawings(ui::ThemeName theme, const std::string& folder) {
    ui::Ui kit;
    ui::UiSettings settings;
    settings.theme = theme;
    kit.begin({}, settings);
    test::draw_vocabulary(kit);
    return write(kit.end(), folder + "/drawings-" + ui::theme_name(theme) + ".png");
}

bool write_screen(ui::ThemeName theme, bool phone, int screen, const std::string& folder) {
    test::SampleApp app;
    app.settings.theme = theme;
    app.screen = screen % 3;
    app.sheet_open = screen == 3;
    ui::FrameInput input;
    input.width = phone ? 412 : 1280;
    input.height = phone ? 915 : 800;
    (void)app.frame(input);
    if (screen == 1) app.toast_since = 0;
    input.now = 1;
    const std::string suffix = std::string(ui::theme_name(theme)) + (phone ? "-phone" : "");
    return write(app.frame(input), folder + "/" + std::to_string(screen) + "-" + suffix + ".png");
}

}  // namespace

int main(int argc, char** argv) {
    const std::string folder = argc > 1 ? argv[1] : ".";
    bool done = true;
    for (const ui::ThemeName theme : {ui::ThemeName::light, ui::ThemeName::sun, ui::ThemeName::dark}) {
        done = write_drawings(theme, folder) && done;
        for (const bool phone : {false, true}) {
            for (int screen = 0; screen < 4; ++screen) done = write_screen(theme, phone, screen, folder) && done;
        }
    }
    return done ? 0 : 1;
}
