#pragma once
/// Draws a frame with OpenGL ES 2, the common subset of Linux and the web.

#include "app/ui/frame_output.hpp"
#include "app/ui/textures.hpp"

#include <cstdint>
#include <map>

namespace sillwalk::platforms {

class GlRenderer {
public:
    /// A context must be current. Call again after the context was lost.
    [[nodiscard]] bool start();
    void draw(const ui::FrameOutput& frame, int width, int height);

private:
    struct Uploaded {
        unsigned name = 0;
        std::uint32_t version = 0;
    };
    void warm_up();
    void begin_drawing(float width, float height) const;
    void upload(const ui::Textures& textures);

    unsigned program_ = 0;
    unsigned vertices_ = 0;
    unsigned indices_ = 0;
    int projection_ = -1;
    int texture_ = -1;
    std::map<ui::TextureId, Uploaded> uploaded_;
};

}  // namespace sillwalk::platforms
