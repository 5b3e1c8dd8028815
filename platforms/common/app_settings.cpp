#include "platforms/common/app_settings.hpp"

#include <fmt/format.h>

namespace sillwalk::platforms {

engine::Result<app::Action> setting_action(std::string_view name, std::string_view value) {
    const auto is = [&](std::string_view n, std::string_view v) { return name == n && value == v; };
    if (name == "theme" && (value == "light" || value == "sun" || value == "dark")) {
        return app::SetTheme{std::string(value)};
    }
    if (is("glove", "on") || is("glove", "off")) return app::SetGlove{value == "on"};
    if (is("hand", "left") || is("hand", "right")) return app::SetLeftHanded{value == "left"};
    if (is("text", "100")) return app::SetTextPercent{100};
    if (is("text", "115")) return app::SetTextPercent{115};
    if (is("text", "130")) return app::SetTextPercent{130};
    if (is("units", "metric") || is("units", "us")) return app::SetUsUnits{value == "us"};
    if (name == "language") return app::SetLanguage{std::string(value)};
    return engine::bad_input(fmt::format("There is no setting {} {}.", name, value));
}

}  // namespace sillwalk::platforms
