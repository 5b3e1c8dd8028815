#pragma once
/// Everything that update() asks the world to do.

#include "app/bundle/entries.hpp"
#include "app/core/sending.hpp"
#include "engine/model/survey.hpp"

#include <memory>
#include <string>
#include <variant>
#include <vector>

namespace sillwalk::app {

struct SaveEdit {
    std::string survey_id;
    std::int64_t step = 0;
    int kind = 0;  ///< 0 edit, 1 undo, 2 redo
    std::string label;
    std::vector<Change> changes;
    std::int64_t at_ms = 0;
    std::string title{};  ///< of the visit, as it is now
};
struct SaveVisit {  ///< a new one, whole
    std::string survey_id, title;
    Entries entries;
    std::int64_t at_ms = 0;
};
struct SaveDraft {
    std::string survey_id, path, text;
    std::int64_t at_ms = 0;
};  ///< an empty path deletes it
struct SaveSetting {
    std::string key, value;
};
struct SavePhoto {
    std::string sha256;  ///< 64 hex digits
    std::shared_ptr<const std::string> bytes;
    std::int64_t width_px = 0, height_px = 0;
};
/// List the files from which photos are taken.
struct ListPhotoFiles {};
struct ReadPhotoFile {
    std::string survey_id, name;
};
/// Take a photo with the open camera.
struct TakePicture {
    std::string survey_id;
};
struct LoadVisit {
    std::string id;
    bool follow_up = false;  ///< to be copied
};
struct ListVisits {};
/// Work out a new answer; of several the newest version wins.
struct Assess {
    std::uint64_t version = 0;
};

/// Work out what is being tried.
struct AssessWhatIf {
    std::uint64_t version = 0;
};

/// The clipboard's text, as an enrolment code.
struct ReadClipboard {};

using Effect = std::variant<SaveEdit, SaveVisit, SaveDraft, SaveSetting, SavePhoto, ListPhotoFiles, ReadPhotoFile,
                            TakePicture, LoadVisit, ListVisits, Assess, AssessWhatIf, SendOrder, ReadClipboard>;
using Effects = std::vector<Effect>;

}  // namespace sillwalk::app
