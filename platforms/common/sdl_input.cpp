#include "platforms/common/sdl_input.hpp"

#include "platforms/common/sdl_host.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace sillwalk::platforms {

namespace {

constexpr std::int64_t mouse_pointer = -1;
constexpr float wheel_step = 90;  ///< pixels a notch

struct Scale {
    float x = 1;
    float y = 1;
};

/// Drawable pixels per window unit (high-density displays).
Scale density(SDL_Window* window) {
    int w = 1, h = 1, dw = 1, dh = 1;
    SDL_GetWindowSize(window, &w, &h);
    SDL_GL_GetDrawableSize(window, &dw, &dh);
    return {static_cast<float>(dw) / static_cast<float>(std::max(1, w)),
            static_cast<float>(dh) / static_cast<float>(std::max(1, h))};
}

std::optional<ui::Key> key_of(const SDL_Keysym& sym) {
    const bool control = (sym.mod & (KMOD_CTRL | KMOD_GUI)) != 0;
    const bool shift = (sym.mod & KMOD_SHIFT) != 0;
    if (control && sym.sym == SDLK_z) return shift ? ui::Key::redo : ui::Key::undo;
    if (control && sym.sym == SDLK_y) return ui::Key::redo;
    switch (sym.sym) {
        case SDLK_TAB:
            return ui::Key::tab;
        case SDLK_RETURN:
        case SDLK_KP_ENTER:
            return ui::Key::enter;
        case SDLK_SPACE:
            return ui::Key::space;
        case SDLK_ESCAPE:
        case SDLK_AC_BACK:
            return ui::Key::escape;
        case SDLK_BACKSPACE:
            return ui::Key::backspace;
        case SDLK_DELETE:
            return ui::Key::erase;
        case SDLK_LEFT:
            return ui::Key::left;
        case SDLK_RIGHT:
            return ui::Key::right;
        case SDLK_UP:
            return ui::Key::up;
        case SDLK_DOWN:
            return ui::Key::down;
        case SDLK_HOME:
            return ui::Key::home;
        case SDLK_END:
            return ui::Key::end;
        case SDLK_PAGEUP:
            return ui::Key::page_up;
        case SDLK_PAGEDOWN:
            return ui::Key::page_down;
        default:
            return std::nullopt;
    }
}

/// Digits and signs reach the keypad even while no text field is open and SDL sends no text.
char typed_sign(const SDL_Keysym& sym) {
    if ((sym.mod & (KMOD_CTRL | KMOD_ALT | KMOD_GUI)) != 0) return 0;
    if (sym.sym >= SDLK_KP_1 && sym.sym <= SDLK_KP_9) return static_cast<char>('1' + (sym.sym - SDLK_KP_1));
    switch (sym.sym) {
        case SDLK_KP_0:
            return '0';
        case SDLK_KP_PERIOD:
            return '.';
        case SDLK_KP_MINUS:
            return '-';
        case SDLK_KP_DIVIDE:
            return '/';
        default:
            break;
    }
    const bool printable = sym.sym > 0x20 && sym.sym < 0x7F && (sym.mod & KMOD_SHIFT) == 0;
    return printable ? static_cast<char>(sym.sym) : '\0';
}

}  // namespace

double sdl_now() {
    return static_cast<double>(SDL_GetTicks()) / 1000;
}

void SdlInput::pointer(ui::PointerPhase phase, std::int64_t id, float x, float y, std::uint32_t ticks) {
    next_.pointers.push_back({phase, id, {x, y}, static_cast<double>(ticks) / 1000});
}

bool SdlInput::key(const SDL_KeyboardEvent& event) {
    const std::optional<ui::Key> known = key_of(event.keysym);
    if (known.has_value()) next_.keys.push_back({*known, (event.keysym.mod & KMOD_SHIFT) != 0});
    if (event.keysym.sym == SDLK_v && (event.keysym.mod & KMOD_CTRL) != 0) next_.text += SdlHost::clipboard();
    if (SDL_IsTextInputActive() == SDL_FALSE) {
        const char sign = typed_sign(event.keysym);
        if (sign != 0) next_.text += sign;
    }
    return true;
}

bool SdlInput::window_event(const SDL_WindowEvent& event) {
    switch (event.event) {
        case SDL_WINDOWEVENT_HIDDEN:
        case SDL_WINDOWEVENT_MINIMIZED:
            hidden_ = true;
            return false;
        case SDL_WINDOWEVENT_SHOWN:
        case SDL_WINDOWEVENT_RESTORED:
            hidden_ = false;
            return true;
        case SDL_WINDOWEVENT_SIZE_CHANGED:
        case SDL_WINDOWEVENT_EXPOSED:
            return true;
        default:
            return false;
    }
}

bool SdlInput::take(const SDL_Event& event, SDL_Window* window) {
    int width = 1;
    int height = 1;
    SDL_GL_GetDrawableSize(window, &width, &height);
    const Scale scale = density(window);
    const auto finger = [&](ui::PointerPhase phase) {
        const SDL_TouchFingerEvent& t = event.tfinger;
        pointer(phase, t.fingerId, t.x * static_cast<float>(width), t.y * static_cast<float>(height), t.timestamp);
        return true;
    };
    const auto mouse = [&](ui::PointerPhase phase, int x, int y) {
        pointer(phase, mouse_pointer, static_cast<float>(x) * scale.x, static_cast<float>(y) * scale.y,
                event.common.timestamp);
        return true;
    };
    switch (event.type) {
        case SDL_QUIT:
            quit_ = true;
            return true;
        case SDL_FINGERDOWN:
            return finger(ui::PointerPhase::down);
        case SDL_FINGERMOTION:
            return finger(ui::PointerPhase::move);
        case SDL_FINGERUP:
            return finger(ui::PointerPhase::up);
        case SDL_MOUSEBUTTONDOWN:
            if (event.button.button != SDL_BUTTON_LEFT) return false;
            mouse_down_ = true;
            return mouse(ui::PointerPhase::down, event.button.x, event.button.y);
        case SDL_MOUSEBUTTONUP:
            if (event.button.button != SDL_BUTTON_LEFT || !mouse_down_) return false;
            mouse_down_ = false;
            return mouse(ui::PointerPhase::up, event.button.x, event.button.y);
        case SDL_MOUSEMOTION:
            return mouse_down_ && mouse(ui::PointerPhase::move, event.motion.x, event.motion.y);
        case SDL_MOUSEWHEEL: {
            int x = 0;
            int y = 0;
            SDL_GetMouseState(&x, &y);
            const ui::Point at{static_cast<float>(x) * scale.x, static_cast<float>(y) * scale.y};
            next_.wheels.push_back({at, {0, event.wheel.preciseY * wheel_step * scale.y}});
            return true;
        }
        case SDL_KEYDOWN:
            return key(event.key);
        case SDL_TEXTINPUT:
            next_.text += event.text.text;
            return true;
        case SDL_WINDOWEVENT:
            return window_event(event.window);
        case SDL_APP_WILLENTERBACKGROUND:
            hidden_ = true;
            return false;
        case SDL_APP_DIDENTERFOREGROUND:
            hidden_ = false;
            return true;
        default:
            return event.type >= SDL_USEREVENT;
    }
}

ui::FrameInput SdlInput::frame(SDL_Window* window, float px_per_mm) {
    ui::FrameInput out = std::move(next_);
    next_ = {};
    int width = 1;
    int height = 1;
    SDL_GL_GetDrawableSize(window, &width, &height);
    out.width = static_cast<float>(width);
    out.height = static_cast<float>(height);
    out.px_per_mm = px_per_mm;
    out.now = sdl_now();
    out.delta = static_cast<float>(std::clamp(out.now - last_, 0.001, 1.0));
    last_ = out.now;
    return out;
}

}  // namespace sillwalk::platforms
