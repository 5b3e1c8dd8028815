#include "platforms/common/sdl_host.hpp"

#include "platforms/common/gl_renderer.hpp"
#include "platforms/common/sdl_input.hpp"

#include <SDL.h>
#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::platforms {

namespace {

constexpr int frames_after_event = 2;      ///< a press shows, and what it caused shows
constexpr double longest_sleep = 3600;     ///< seconds; any event ends it
constexpr float default_px_per_mm = 5.9F;  ///< 10.1 inches at 1280 by 800

/// Displays often report nonsense; only a plausible density is believed.
float display_px_per_mm(SDL_Window* window) {
    float dpi = 0;
    const int index = SDL_GetWindowDisplayIndex(window);
    if (SDL_GetDisplayDPI(index, nullptr, &dpi, nullptr) != 0 || dpi < 100 || dpi > 400) return default_px_per_mm;
    return dpi / 25.4F;
}

engine::Error sdl_error(const char* what) {
    return {engine::ErrorCode::storage, fmt::format("{}: {}", what, SDL_GetError()), {}};
}

}  // namespace

struct SdlHost::Impl {
    SDL_Window* window = nullptr;
    SDL_GLContext context = nullptr;
    GlRenderer renderer;
    SdlInput input;
    float px_per_mm = default_px_per_mm;
    long drawn = 0;
    bool writing = false;

    void text_input(const ui::FrameOutput& out);
    void present(const ui::FrameOutput& out);
    [[nodiscard]] int sleep_ms(const ui::FrameOutput& out, int extra) const;
};

SdlHost::SdlHost() : impl_(std::make_unique<Impl>()) {}

SdlHost::~SdlHost() {
    if (impl_->context != nullptr) SDL_GL_DeleteContext(impl_->context);
    if (impl_->window != nullptr) SDL_DestroyWindow(impl_->window);
    SDL_Quit();
}

engine::Result<std::unique_ptr<SdlHost>> SdlHost::open(const WindowOptions& options) {
    SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
    SDL_SetHint(SDL_HINT_MOUSE_TOUCH_EVENTS, "0");
    SDL_SetHint(SDL_HINT_MOUSE_AUTO_CAPTURE, "0");
    SDL_SetHint(SDL_HINT_VIDEO_ALLOW_SCREENSAVER, "1");
    std::unique_ptr<SdlHost> host(new SdlHost);
    Impl& impl = *host->impl_;
    if (SDL_Init(SDL_INIT_VIDEO | SDL_INIT_EVENTS) != 0) return tl::make_unexpected(sdl_error("No display"));
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_ES);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 2);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 0);
    SDL_GL_SetAttribute(SDL_GL_DOUBLEBUFFER, 1);
    SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 0);
    const auto flags = static_cast<Uint32>(SDL_WINDOW_OPENGL | SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
    impl.window = SDL_CreateWindow(options.title.c_str(), SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED, options.width,
                                   options.height, flags);
    if (impl.window == nullptr) return tl::make_unexpected(sdl_error("No window"));
    impl.context = SDL_GL_CreateContext(impl.window);
    if (impl.context == nullptr) return tl::make_unexpected(sdl_error("No OpenGL ES 2"));
    SDL_GL_SetSwapInterval(1);
    SDL_StopTextInput();  // SDL opens it by itself, and with it an on-screen keyboard
    if (!impl.renderer.start()) return tl::make_unexpected(sdl_error("The shaders do not compile"));
    impl.px_per_mm = options.px_per_mm > 0 ? options.px_per_mm : display_px_per_mm(impl.window);
    return host;
}

void SdlHost::Impl::text_input(const ui::FrameOutput& out) {
    if (out.wants_text == writing) return;
    writing = out.wants_text;
    if (!writing) {
        SDL_StopTextInput();
        return;
    }
    const SDL_Rect rect{static_cast<int>(out.text_rect.x0), static_cast<int>(out.text_rect.y0),
                        static_cast<int>(out.text_rect.width()), static_cast<int>(out.text_rect.height())};
    SDL_SetTextInputRect(&rect);
    SDL_StartTextInput();
}

void SdlHost::Impl::present(const ui::FrameOutput& out) {
    int width = 1;
    int height = 1;
    SDL_GL_GetDrawableSize(window, &width, &height);
    renderer.draw(out, width, height);
    SDL_GL_SwapWindow(window);
    ++drawn;
    text_input(out);
}

int SdlHost::Impl::sleep_ms(const ui::FrameOutput& out, int extra) const {
    if (!input.hidden() && (extra > 0 || out.wants_frame)) return 0;
    const double seconds = out.wants_frame_in >= 0 ? out.wants_frame_in : longest_sleep;
    return static_cast<int>(std::min(seconds, longest_sleep) * 1000) + 1;
}

void SdlHost::run(const ui::FrameFunction& application) {
    Impl& impl = *impl_;
    int extra = frames_after_event;
    ui::FrameOutput out = show(application, impl.input.frame(impl.window, impl.px_per_mm));
    while (!impl.input.quit() && !out.quit) {
        const int sleep = impl.sleep_ms(out, extra);
        SDL_Event event;
        int waiting = sleep == 0 ? SDL_PollEvent(&event) : SDL_WaitEventTimeout(&event, sleep);
        const bool woken_by_time = waiting == 0 && sleep > 0;
        bool wanted = woken_by_time;
        for (; waiting != 0; waiting = SDL_PollEvent(&event)) wanted = impl.input.take(event, impl.window) || wanted;
        if (wanted) extra = woken_by_time ? 1 : frames_after_event;
        if (impl.input.hidden() || (extra == 0 && !out.wants_frame)) continue;
        out = show(application, impl.input.frame(impl.window, impl.px_per_mm));
        if (extra > 0) --extra;
    }
}

ui::FrameOutput SdlHost::show(const ui::FrameFunction& application, const ui::FrameInput& input) {
    const ui::FrameOutput out = application(input);
    impl_->present(out);
    return out;
}

long SdlHost::frames_drawn() const {
    return impl_->drawn;
}

void SdlHost::tell(const std::string& words) {
    SDL_ShowSimpleMessageBox(SDL_MESSAGEBOX_ERROR, SDL_GetWindowTitle(impl_->window), words.c_str(), impl_->window);
}

std::string SdlHost::clipboard() {
    const std::unique_ptr<char, decltype(&SDL_free)> text(SDL_GetClipboardText(), &SDL_free);
    return text ? text.get() : "";
}

void SdlHost::wake() {
    SDL_Event event{};
    event.type = SDL_USEREVENT;
    SDL_PushEvent(&event);
}

}  // namespace sillwalk::platforms
