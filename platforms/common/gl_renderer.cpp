#include "platforms/common/gl_renderer.hpp"

#include <imgui.h>

#include <GLES2/gl2.h>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstdio>

namespace sillwalk::platforms {

namespace {

constexpr GLenum index_type = sizeof(ImDrawIdx) == 2 ? GL_UNSIGNED_SHORT : GL_UNSIGNED_INT;

enum Attribute : GLuint { position = 0, map = 1, color = 2 };

constexpr const char* vertex_source = R"(
uniform vec4 projection;
attribute vec2 position;
attribute vec2 map;
attribute vec4 color;
varying vec2 at;
varying vec4 ink;
void main() {
    at = map;
    ink = color;
    gl_Position = vec4(position * projection.xy + projection.zw, 0.0, 1.0);
}
)";

constexpr const char* fragment_source = R"(
#ifdef GL_ES
precision mediump float;
#endif
uniform sampler2D picture;
varying vec2 at;
varying vec4 ink;
void main() { gl_FragColor = ink * texture2D(picture, at); }
)";

GLuint compile(GLenum kind, const char* source) {
    const GLuint shader = glCreateShader(kind);
    glShaderSource(shader, 1, &source, nullptr);
    glCompileShader(shader);
    GLint done = GL_FALSE;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &done);
    if (done == GL_TRUE) return shader;
    char log[512] = {};
    glGetShaderInfoLog(shader, sizeof log, nullptr, log);
    std::fprintf(stderr, "shader: %s\n", log);
    return 0;
}

void set_texture(GLuint name, int width, int height, const std::uint8_t* rgba) {
    glBindTexture(GL_TEXTURE_2D, name);
    constexpr GLenum sides[] = {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T};
    constexpr GLenum filters[] = {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER};
    for (const GLenum side : sides) glTexParameteri(GL_TEXTURE_2D, side, GL_CLAMP_TO_EDGE);
    for (const GLenum filter : filters) glTexParameteri(GL_TEXTURE_2D, filter, GL_LINEAR);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, rgba);
}

/// Into the buffers that are bound.
void set_vertices(const ImDrawVert* vertices, GLsizeiptr vertex_bytes, const ImDrawIdx* indices,
                  GLsizeiptr index_bytes) {
    glBufferData(GL_ARRAY_BUFFER, vertex_bytes, vertices, GL_STREAM_DRAW);
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, index_bytes, indices, GL_STREAM_DRAW);
}

const void* offset(std::size_t bytes) {
    return std::bit_cast<const void*>(bytes);
}

void describe_vertices() {
    constexpr auto size = static_cast<GLsizei>(sizeof(ImDrawVert));
    for (const GLuint attribute : {position, map, color}) glEnableVertexAttribArray(attribute);
    glVertexAttribPointer(position, 2, GL_FLOAT, GL_FALSE, size, offset(offsetof(ImDrawVert, pos)));
    glVertexAttribPointer(map, 2, GL_FLOAT, GL_FALSE, size, offset(offsetof(ImDrawVert, uv)));
    glVertexAttribPointer(color, 4, GL_UNSIGNED_BYTE, GL_TRUE, size, offset(offsetof(ImDrawVert, col)));
}

}  // namespace

bool GlRenderer::start() {
    uploaded_.clear();
    const GLuint vertex = compile(GL_VERTEX_SHADER, vertex_source);
    const GLuint fragment = compile(GL_FRAGMENT_SHADER, fragment_source);
    if (vertex == 0 || fragment == 0) return false;
    program_ = glCreateProgram();
    glAttachShader(program_, vertex);
    glAttachShader(program_, fragment);
    glBindAttribLocation(program_, position, "position");
    glBindAttribLocation(program_, map, "map");
    glBindAttribLocation(program_, color, "color");
    glLinkProgram(program_);
    glDeleteShader(vertex);
    glDeleteShader(fragment);
    GLint linked = GL_FALSE;
    glGetProgramiv(program_, GL_LINK_STATUS, &linked);
    projection_ = glGetUniformLocation(program_, "projection");
    texture_ = glGetUniformLocation(program_, "picture");
    GLuint buffers[2] = {};
    glGenBuffers(2, buffers);
    vertices_ = buffers[0];
    indices_ = buffers[1];
    if (linked != GL_TRUE) return false;
    warm_up();
    return true;
}

/// A driver makes its program with the first triangle; one that shows nothing is drawn while nobody waits for it.
void GlRenderer::warm_up() {
    constexpr ImDrawIdx order[] = {0, 1, 2};
    const ImDrawVert corners[3] = {};
    const std::uint8_t clear[4] = {};
    GLuint texture = 0;
    glGenTextures(1, &texture);
    set_texture(texture, 1, 1, clear);
    begin_drawing(1, 1);
    set_vertices(corners, sizeof corners, order, sizeof order);
    glDrawElements(GL_TRIANGLES, 3, index_type, nullptr);
    glFinish();
    glDeleteTextures(1, &texture);
}

void GlRenderer::upload(const ui::Textures& textures) {
    for (const auto& [id, texture] : textures.all()) {
        Uploaded& known = uploaded_[id];
        if (known.version == texture.version) continue;
        if (known.name == 0) glGenTextures(1, &known.name);
        set_texture(known.name, texture.width, texture.height, texture.rgba.data());
        known.version = texture.version;
    }
    for (auto it = uploaded_.begin(); it != uploaded_.end();) {
        if (textures.find(it->first) != nullptr) {
            ++it;
            continue;
        }
        glDeleteTextures(1, &it->second.name);
        it = uploaded_.erase(it);
    }
}

void GlRenderer::begin_drawing(float width, float height) const {
    glEnable(GL_BLEND);
    glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
    glDisable(GL_CULL_FACE);
    glDisable(GL_DEPTH_TEST);
    glEnable(GL_SCISSOR_TEST);
    glUseProgram(program_);
    glUniform4f(projection_, 2 / width, -2 / height, -1, 1);
    glUniform1i(texture_, 0);
    glActiveTexture(GL_TEXTURE0);
    glBindBuffer(GL_ARRAY_BUFFER, vertices_);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_);
    describe_vertices();
}

void GlRenderer::draw(const ui::FrameOutput& frame, int width, int height) {
    upload(*frame.textures);
    const ImDrawData& data = *frame.draw_data;
    glViewport(0, 0, width, height);
    glDisable(GL_SCISSOR_TEST);
    const ui::Color ground = frame.background;
    glClearColor(static_cast<float>(ground.r) / 255, static_cast<float>(ground.g) / 255,
                 static_cast<float>(ground.b) / 255, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    begin_drawing(data.DisplaySize.x, data.DisplaySize.y);
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        set_vertices(list.VtxBuffer.Data, list.VtxBuffer.size_in_bytes(), list.IdxBuffer.Data,
                     list.IdxBuffer.size_in_bytes());
        for (const ImDrawCmd& command : list.CmdBuffer) {
            const auto& clip = command.ClipRect;
            if (clip.z <= clip.x || clip.w <= clip.y) continue;
            glScissor(static_cast<GLint>(clip.x), static_cast<GLint>(static_cast<float>(height) - clip.w),
                      static_cast<GLsizei>(clip.z - clip.x), static_cast<GLsizei>(clip.w - clip.y));
            const auto id = static_cast<ui::TextureId>(reinterpret_cast<std::uintptr_t>(command.GetTexID()));
            const auto found = uploaded_.find(id);
            glBindTexture(GL_TEXTURE_2D, found == uploaded_.end() ? 0 : found->second.name);
            glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(command.ElemCount), index_type,
                           offset(command.IdxOffset * sizeof(ImDrawIdx)));
        }
    }
}

}  // namespace sillwalk::platforms
