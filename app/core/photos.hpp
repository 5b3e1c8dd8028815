#pragma once
/// Photos of the visit in hand: what is on its way, and what can be done with them.

#include "app/bundle/photos.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace sillwalk::app {

/// A decoded picture, ready to be drawn.
struct Picture {
    int width = 0, height = 0;
    std::vector<std::uint8_t> rgba;
};

inline constexpr std::size_t most_photos = 60;  ///< of one visit

/// The files from which photos are taken.
struct PhotoFiles {
    bool listed = false;
    std::string folder;
    std::vector<std::string> names;  ///< newest first
    bool unreadable = false;         ///< the folder
    std::set<std::string> taken;     ///< since the sheet was opened
};

/// A camera that is open.
struct CameraView {
    std::shared_ptr<const Picture> picture;  ///< the newest; null: none yet
    bool shooting = false;                   ///< a photo is being taken
    std::string why;                         ///< key of the words why no picture comes; empty: nothing is wrong
};

struct PhotoDesk {
    std::optional<PhotoFiles> files;                              ///< the sheet is open
    std::set<std::string> on_their_way;                           ///< files that are being read
    std::optional<CameraView> camera;                             ///< the sheet of the camera is open
    std::optional<MarkKind> tool;                                 ///< what a finger draws on the photo
    bool binding = false;                                         ///< the sheet of what a photo belongs to is open
    std::map<std::string, std::shared_ptr<const Picture>> small;  ///< by SHA-256
    std::string whole_of;                                         ///< SHA-256 of the one below
    std::shared_ptr<const Picture> whole;
    std::set<std::string> unreadable;  ///< by SHA-256
};

// ---- taking photos
struct OpenPhotoFiles {};
struct ClosePhotoFiles {};
struct TakePhotoFile {
    std::string name;
};
struct OpenCamera {};  ///< also tries again
struct CloseCamera {};
struct ShootPhoto {};

// ---- what a photo says; `photo` counts those of the visit
struct PickPhotoTool {
    std::optional<MarkKind> tool;
};
struct AddPhotoMark {
    std::uint16_t photo = 0;
    PhotoMark mark;
};
struct RemoveLastMark {
    std::uint16_t photo = 0;
};
/// A text of a photo: its caption, or what stands on a dimension.
struct PhotoTextRef {
    std::uint16_t photo = 0;
    std::optional<std::uint16_t> mark;  ///< empty: the caption
    friend bool operator==(const PhotoTextRef&, const PhotoTextRef&) = default;
};
struct TypePhotoText {
    PhotoTextRef ref;
    std::string text;
};  ///< while it is typed: outlives a dead battery
struct SetPhotoText {
    PhotoTextRef ref;
    std::string text;
};
struct OpenPhotoBinding {};
struct ClosePhotoBinding {};
struct BindPhoto {
    std::uint16_t photo = 0;
    std::string about;
};
struct DeletePhoto {
    std::uint16_t photo = 0;
};

// ---- news
struct PhotoFilesListed {
    std::string folder;
    std::vector<std::string> names;
    bool unreadable = false;
};
struct PhotoTaken {
    std::string survey_id, name;
    std::string sha256;
    std::shared_ptr<const std::string> bytes;
    std::int64_t width_px = 0, height_px = 0;
    std::shared_ptr<const Picture> small;
};
struct PhotoRefused {
    std::string name, why;  ///< key of the words that say why
};
/// What the open camera sees, or why it sees nothing.
struct CameraSeen {
    std::shared_ptr<const Picture> picture;
    std::string why;  ///< key of the words; empty: there is a picture
};
struct PictureReady {
    std::string sha256;
    bool whole = false;
    std::shared_ptr<const Picture> picture;  ///< null: it cannot be read
};

using PhotoAction =
    std::variant<OpenPhotoFiles, ClosePhotoFiles, TakePhotoFile, OpenCamera, CloseCamera, ShootPhoto, PickPhotoTool,
                 AddPhotoMark, RemoveLastMark, TypePhotoText, SetPhotoText, OpenPhotoBinding, ClosePhotoBinding,
                 BindPhoto, DeletePhoto, PhotoFilesListed, PhotoTaken, PhotoRefused, CameraSeen, PictureReady>;

/// A picture that the screen shows and that is not decoded yet.
struct WantedPicture {
    std::string sha256;
    bool whole = false;
};

/// Entry path of a text: "/photos/<id>/caption", "/photos/<id>/marks/2". Empty where there is none.
[[nodiscard]] std::string photo_text_path(const std::vector<VisitPhoto>& photos, const PhotoTextRef& ref);
[[nodiscard]] std::optional<PhotoTextRef> find_photo_text(const std::vector<VisitPhoto>& photos,
                                                          const std::string& path);

}  // namespace sillwalk::app
