#pragma once
/// The data files and fonts that were compiled in.

#include <optional>
#include <span>
#include <string_view>

namespace sillwalk::assets {

struct EmbeddedFile {
    std::string_view path;  ///< below assets/: "tables/materials.json", "fonts/Roboto-Medium.ttf"
    std::string_view bytes;
};
[[nodiscard]] std::span<const EmbeddedFile> embedded_files();
[[nodiscard]] std::optional<std::string_view> embedded(std::string_view path);

}  // namespace sillwalk::assets
