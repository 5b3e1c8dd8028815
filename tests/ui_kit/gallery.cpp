/// Writes pictures of the sample screens in every theme, to be looked at: ui_kit_gallery FOLDER

#include "platforms/common/software_renderer.hpp"
#include "tests/ui_kit/sample_app.hpp"

#include <cstdio>
#include <string>

using namespace sillwalk;

int main(int argc, char** argv) {
    const std::string folder = argc > 1 ? argv[1] : ".";
    for (const ui::ThemeName theme : {ui::ThemeName::light, ui::ThemeName::sun, ui::ThemeName::dark}) {
        for (const bool phone : {false, true}) {
            for (int screen = 0; screen < 4; ++screen) {
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
                const ui::FrameOutput out = app.frame(input);
                const std::string name = folder + "/" + std::to_string(screen) + "-" + ui::theme_name(theme) +
                                         (phone ? "-phone" : "") + ".png";
                if (!platforms::write_png(platforms::render(out), name).has_value()) return 1;
                std::printf("%s\n", name.c_str());
            }
        }
    }
    return 0;
}
