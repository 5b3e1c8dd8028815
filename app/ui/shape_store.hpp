#pragma once
/// Shapes that were drawn before, as vertices about a whole pixel: the next of its kind is copied, not worked out.
/// Boxes with round corners, icons and marks are most of what a screen draws, and there are few kinds of them. Not for
/// screens.

#include "app/ui/draw/canvas.hpp"
#include "engine/base/name_index.hpp"

#include <imgui.h>

#include <string_view>
#include <vector>

namespace sillwalk::ui {

class ShapeStore {
public:
    /// Forgets all when the font's texture is another, or when there is too much.
    void begin(const ImDrawList& list);
    /// Draws the shape moved by whole pixels, if it is known.
    [[nodiscard]] bool draw(ImDrawList& list, const ShapeKey& key, Point fraction, Point whole) const;

    /// What is drawn between start() and keep() is the shape at `fraction`; keep() moves it by whole pixels.
    void start(const ImDrawList& list);
    void keep(ImDrawList& list, const ShapeKey& key, Point fraction, Point whole);

private:
    struct Name {
        ShapeKey key;
        Point fraction;
    };
    struct Entry {
        Name name;
        int vertex = 0, vertices = 0, index = 0, indices = 0;
    };
    [[nodiscard]] static std::string_view bytes(const Name& name) {
        return {reinterpret_cast<const char*>(&name), sizeof name};
    }

    std::vector<Entry> entries_;
    engine::NameIndex by_name_;
    std::vector<ImDrawVert> vertices_;
    std::vector<ImDrawIdx> indices_;
    int first_vertex_ = 0, first_index_ = 0;
    unsigned int first_number_ = 0;
    ImVec2 white_{};
};

}  // namespace sillwalk::ui
