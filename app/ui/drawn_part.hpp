#pragma once
/// What a part of the screen drew, so that the next frame copies it instead of working it out. Not for screens.

#include <imgui.h>

#include <vector>

namespace sillwalk::ui {

/// Where no edge of a list cuts anything.
inline constexpr float far_away = 1e6F;

/// Where a list stood when a part began.
struct PartStart {
    int commands = 0, vertices = 0, indices = 0;
    unsigned int number = 0;  ///< of the first vertex
    ImDrawCmd last{};         ///< the command that the part goes on with
    ImDrawCmdHeader header{};
    bool whole = false;
};

struct DrawnPart {
    struct Run {
        ImVec4 clip;
        bool outer_clip = false;  ///< that of the list around the part
        ImTextureID texture = nullptr;
        int indices = 0;
    };
    std::vector<ImDrawVert> vertices;
    std::vector<ImDrawIdx> indices;  ///< counted from the part's first vertex
    std::vector<Run> runs;
};

/// `whole`: what is drawn from here on is not cut by the clip around it, and is on the list only once it is drawn
/// again.
[[nodiscard]] PartStart start_part(ImDrawList& list, bool whole);
/// What came onto the list since; a whole part is taken off it. False where it cannot be copied: then it stays on it.
[[nodiscard]] bool end_part(ImDrawList& list, const PartStart& start, DrawnPart& part);
/// Draws it again, moved down by whole pixels.
void draw_part(ImDrawList& list, const DrawnPart& part, float down);

}  // namespace sillwalk::ui
