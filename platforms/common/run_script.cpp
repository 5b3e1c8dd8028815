#include "platforms/common/run_script.hpp"

#include "platforms/common/software_renderer.hpp"

#include <fmt/format.h>

#include <fstream>
#include <sstream>
#include <utility>

namespace sillwalk::platforms {

engine::Result<void> save_shot(const ui::FrameOutput& frame, const std::string& path) {
    return write_png(render(frame), path);
}

engine::Result<void> run_script(driver::DriverHost host, const driver::DriverOptions& size,
                                const std::string& script_path, const std::string& shot_path) {
    host.save_shot = save_shot;
    host.print = [](std::string_view text) { fmt::print("{}", text); };
    driver::Driver driver(std::move(host), size);
    if (!script_path.empty()) {
        std::ifstream file(script_path);
        if (!file) return engine::fail(engine::ErrorCode::not_found, "The script cannot be read.", script_path);
        std::ostringstream text;
        text << file.rdbuf();
        const auto script = driver::parse_script(text.str());
        if (!script.has_value()) return tl::make_unexpected(script.error());
        if (auto done = driver.run(*script); !done.has_value()) return done;
    }
    return shot_path.empty() ? engine::Result<void>{} : save_shot(driver.last(), shot_path);
}

}  // namespace sillwalk::platforms
