#pragma once
/// What the screens of the photos share: the picture as a texture, what it belongs to, what was drawn on it.

#include "app/ui/screens/screen.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::ui {

/// Gives back the textures of pictures that the model has given up; before the first photo_texture of a frame.
void forget_lost_photos(ScreenContext& context);
/// The picture for the screen; no_texture while it is not decoded. Of whole ones only the last is kept.
[[nodiscard]] TextureId photo_texture(ScreenContext& context, const std::string& sha256, bool whole);

/// As large as it fits, in the middle.
[[nodiscard]] Rect fitted_rect(const Rect& box, std::int64_t width_px, std::int64_t height_px);

/// A room, crossing, washing or cart that a photo can show.
struct PhotoPlace {
    std::string path;  ///< "/crossings/<id>": VisitPhoto::about of a photo of the place as a whole
    std::string name;
    engine::ReadingRef any;  ///< some reading of it
};
/// In their order.
[[nodiscard]] const std::vector<PhotoPlace>& photo_places(const ScreenContext& context);
/// The photo shows the place or a reading of it.
[[nodiscard]] bool shows(const std::string& about, const PhotoPlace& place);
/// Null where the photo is loose, or what it showed is gone.
[[nodiscard]] const PhotoPlace* photo_place(const std::vector<PhotoPlace>& places, const std::string& about);

/// What a photo shows: a place, or a reading of it.
struct PhotoSubject {
    std::string path;                       ///< VisitPhoto::about
    std::string name;                       ///< "Freezer door", "Freezer door: rise"
    std::string reading;                    ///< "Rise"; empty for the place itself
    std::optional<engine::ReadingRef> ref;  ///< empty for the place itself
};
[[nodiscard]] std::vector<PhotoSubject> photo_readings(const ScreenContext& context, const PhotoPlace& place);
[[nodiscard]] std::optional<PhotoSubject> photo_subject(const ScreenContext& context, const PhotoPlace* place,
                                                        const std::string& about);

/// "Sill seen from the dock", else what it belongs to, else "Photo 3".
[[nodiscard]] std::string photo_name(const ScreenContext& context, std::size_t photo,
                                     const std::optional<PhotoSubject>& subject);

/// In a picture that fills `picture`.
void draw_photo_mark(Canvas& canvas, const Theme& theme, const Rect& picture, const app::PhotoMark& mark);
/// "Arrow", "Dimension 19 mm".
[[nodiscard]] std::string mark_text(const ScreenContext& context, const app::PhotoMark& mark);

}  // namespace sillwalk::ui
