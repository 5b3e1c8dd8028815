// What the camera sees, and the key that takes a photo of it.

#include "app/ui/screens/facts.hpp"
#include "app/ui/screens/photo_parts.hpp"

namespace sillwalk::ui {

namespace {

TextureId camera_texture(ScreenContext& context, const std::shared_ptr<const app::Picture>& picture) {
    Scratch& scratch = context.scratch;
    if (scratch.camera_picture == picture) return scratch.camera_texture;
    if (scratch.camera_texture != no_texture) context.ui.textures().remove(scratch.camera_texture);
    scratch.camera_texture =
        picture ? context.ui.textures().add(picture->width, picture->height, picture->rgba) : no_texture;
    scratch.camera_picture = picture;
    return scratch.camera_texture;
}

void seen(ScreenContext& context, const app::CameraView& camera, const Rect& box) {
    Ui& ui = context.ui;
    const TextureId texture = camera_texture(context, camera.picture);
    ui.canvas().fill_rect(box, ui.theme().muted_fill, ui.metrics().radius);
    if (!camera.picture) {
        const auto column = ui.column(box.inset(ui.metrics().pad, ui.metrics().pad));
        ui.text(context.say("camera.waiting"), TextRole::body, Weight::regular, {}, "camera.waiting");
        return;
    }
    ui.image(texture, fitted_rect(box, camera.picture->width, camera.picture->height));
}

}  // namespace

void draw_camera_sheet(ScreenContext& context) {
    const auto& camera = context.model.photos.camera;
    if (!camera) {
        (void)camera_texture(context, nullptr);
        return;
    }
    Ui& ui = context.ui;
    bool closed = false;
    {
        const std::size_t taken = context.model.visit->photos.size();
        const auto sheet = ui.sheet("camera", context.say("camera.title"), closed,
                                    {.subtitle = counted(context, "overview.photos", taken)});
        Rect rest = ui.remaining();
        const Rect keys = rest.cut_bottom(ui.metrics().target_size(TargetClass::key), ui.metrics().gap);
        const bool stopped = !camera->why.empty();
        if (stopped) {
            const auto column = ui.column(rest);
            ui.text(context.say(camera->why), TextRole::body, Weight::regular, {}, "camera.why");
        } else {
            seen(context, *camera, rest);
        }
        ButtonOptions key{.style = ButtonStyle::primary, .icon = Icon::camera, .rect = keys};
        key.enabled = stopped || (camera->picture && !camera->shooting);
        const char* words = stopped ? "camera.again" : camera->shooting ? "camera.taking" : "camera.shoot";
        if (ui.button("camera.shoot", context.say(words), key)) {
            context.act(stopped ? app::PhotoAction(app::OpenCamera{}) : app::PhotoAction(app::ShootPhoto{}));
        }
    }
    if (closed) context.act(app::PhotoAction(app::CloseCamera{}));
}

}  // namespace sillwalk::ui
