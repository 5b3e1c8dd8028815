#include "app/core/ids.hpp"
#include "app/core/survey_texts.hpp"
#include "app/core/update.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::app {

namespace detail {

namespace {

constexpr std::int64_t most_of_one = 12;  ///< photos of one reading or place: more than anyone looks at

std::string* text_at(std::vector<VisitPhoto>& photos, const PhotoTextRef& ref) {
    if (ref.photo >= photos.size()) return nullptr;
    VisitPhoto& photo = photos[ref.photo];
    if (!ref.mark) return &photo.caption;
    return *ref.mark < photo.marks.size() ? &photo.marks[*ref.mark].text : nullptr;
}

struct PhotoDispatch {
    Context& context;
    AppModel& model;

    [[nodiscard]] std::vector<VisitPhoto> copy() const { return model.visit->photos; }
    [[nodiscard]] bool there(std::uint16_t photo) const { return photo < model.visit->photos.size(); }
    void keep(std::vector<VisitPhoto> photos, const char* label) const {
        commit_photos(context, std::move(photos), label);
    }
    void say(const char* key, std::vector<std::string> arguments, bool undo = false) const {
        model.toast = Toast{key, std::move(arguments), undo, context.moment.now};
    }

    /// Says so where it is.
    [[nodiscard]] bool is_full() const {
        const bool full = model.visit->photos.size() + model.photos.on_their_way.size() >= most_photos;
        if (full) say("toast.photos_full", {std::to_string(most_photos)});
        return full;
    }

    void operator()(const OpenPhotoFiles&) const {
        model.photos.files = PhotoFiles{};
        context.effects.emplace_back(ListPhotoFiles{});
    }
    void operator()(const ClosePhotoFiles&) const { model.photos.files.reset(); }
    void operator()(const PhotoFilesListed& news) const {
        if (!model.photos.files) return;
        model.photos.files->listed = true;
        model.photos.files->folder = news.folder;
        model.photos.files->names = news.names;
        model.photos.files->unreadable = news.unreadable;
    }
    void operator()(const TakePhotoFile& action) const {
        if (is_full()) return;
        // A second tap on the same file is one too many.
        if (model.photos.files && model.photos.files->taken.count(action.name) != 0) return;
        if (!model.photos.on_their_way.insert(action.name).second) return;
        context.effects.emplace_back(ReadPhotoFile{model.visit->id.text(), action.name});
    }
    void operator()(const OpenCamera&) const { model.photos.camera = CameraView{}; }
    void operator()(const CloseCamera&) const { model.photos.camera.reset(); }
    void operator()(const ShootPhoto&) const {
        if (!model.photos.camera || model.photos.camera->shooting) return;
        if (is_full()) return;
        model.photos.camera->shooting = true;
        context.effects.emplace_back(TakePicture{model.visit->id.text()});
    }
    void operator()(const CameraSeen& news) const {
        const bool rests = !news.picture && news.why.empty();
        if (!model.photos.camera || rests) return;
        CameraView& camera = *model.photos.camera;
        if (news.picture) camera.picture = news.picture;
        camera.why = news.why;
        if (!news.why.empty()) camera.shooting = false;
    }
    void operator()(const PhotoTaken& news) const {
        model.photos.on_their_way.erase(news.name);
        if (model.photos.camera && news.name.empty()) model.photos.camera->shooting = false;
        if (model.visit->id.text() != news.survey_id) return;
        if (model.photos.files) model.photos.files->taken.insert(news.name);
        for (const VisitPhoto& photo : model.visit->photos) {
            if (photo.sha256 != news.sha256) continue;
            return news.name.empty() ? say("toast.photo_same", {}) : say("toast.photo_twice", {news.name});
        }
        if (news.small) model.photos.small[news.sha256] = news.small;
        context.effects.emplace_back(SavePhoto{news.sha256, news.bytes, news.width_px, news.height_px});
        auto photos = copy();
        const auto bytes = static_cast<std::int64_t>(news.bytes->size());
        photos.push_back({IdMaker(context.moment).next(), news.sha256, bytes, news.width_px, news.height_px});
        keep(std::move(photos), "done.photo_added");
    }
    void operator()(const PhotoRefused& news) const {
        model.photos.on_their_way.erase(news.name);
        if (model.photos.camera && news.name.empty()) model.photos.camera->shooting = false;
        say("toast.photo_refused", {news.name, news.why});
    }
    void operator()(const PictureReady& news) const {
        if (!news.picture) {
            model.photos.unreadable.insert(news.sha256);
        } else if (news.whole) {
            model.photos.whole_of = news.sha256;
            model.photos.whole = news.picture;
        } else {
            model.photos.small[news.sha256] = news.picture;
        }
    }

    void operator()(const PickPhotoTool& action) const { model.photos.tool = action.tool; }
    void operator()(const AddPhotoMark& action) const {
        if (!there(action.photo)) return;
        auto photos = copy();
        photos[action.photo].marks.push_back(action.mark);
        keep(std::move(photos), "done.photo_marked");
    }
    void operator()(const RemoveLastMark& action) const {
        if (!there(action.photo) || model.visit->photos[action.photo].marks.empty()) return;
        auto photos = copy();
        photos[action.photo].marks.pop_back();
        keep(std::move(photos), "done.photo_mark_removed");
    }
    void operator()(const TypePhotoText& action) const {
        const std::string path = photo_text_path(model.visit->photos, action.ref);
        if (path.empty()) return;
        context.effects.emplace_back(SaveDraft{model.visit->id.text(), path, action.text, context.moment.utc_ms});
    }
    void operator()(const SetPhotoText& action) const {
        context.effects.emplace_back(SaveDraft{model.visit->id.text(), "", "", context.moment.utc_ms});
        auto photos = copy();
        std::string* text = text_at(photos, action.ref);
        if (!text) return;
        *text = std::string(without_blanks(action.text));
        keep(std::move(photos), "done.text");
    }
    void operator()(const OpenPhotoBinding&) const { model.photos.binding = true; }
    void operator()(const ClosePhotoBinding&) const { model.photos.binding = false; }
    void operator()(const BindPhoto& action) const {
        if (!there(action.photo)) return;
        auto photos = copy();
        const auto same = [&](const VisitPhoto& photo) { return photo.about == action.about; };
        const auto others = std::count_if(photos.begin(), photos.end(), same) - (same(photos[action.photo]) ? 1 : 0);
        if (!action.about.empty() && others >= most_of_one) {
            return say("toast.photos_of_one_full", {std::to_string(most_of_one)});
        }
        photos[action.photo].about = action.about;
        keep(std::move(photos), "done.photo_bound");
    }
    void operator()(const DeletePhoto& action) const {
        if (!there(action.photo)) return;
        auto photos = copy();
        photos.erase(photos.begin() + action.photo);
        keep(std::move(photos), "done.photo_deleted");
        say("toast.photo_deleted", {}, true);
        // Not to the photo that takes its place: a second tap would delete that one too.
        std::erase_if(model.back, [](const Spot& spot) { return spot.screen == Screen::photo; });
        if (model.spot.screen == Screen::photo) model.spot = {Screen::evidence, 0};
        if (!model.back.empty() && model.back.back() == model.spot) model.back.pop_back();
    }
};

}  // namespace

void photo(Context& context, const PhotoAction& action) {
    if (context.model.visit) std::visit(PhotoDispatch{context, context.model}, action);
}

}  // namespace detail

std::string photo_text_path(const std::vector<VisitPhoto>& photos, const PhotoTextRef& ref) {
    if (ref.photo >= photos.size()) return {};
    const VisitPhoto& photo = photos[ref.photo];
    if (!ref.mark) return "/photos/" + photo.id + "/caption";
    if (*ref.mark >= photo.marks.size()) return {};
    return "/photos/" + photo.id + "/marks/" + std::to_string(*ref.mark);
}

std::optional<PhotoTextRef> find_photo_text(const std::vector<VisitPhoto>& photos, const std::string& path) {
    for (std::uint16_t i = 0; i < photos.size(); ++i) {
        if (photo_text_path(photos, {i, {}}) == path) return PhotoTextRef{i, {}};
        for (std::uint16_t mark = 0; mark < photos[i].marks.size(); ++mark) {
            if (photo_text_path(photos, {i, mark}) == path) return PhotoTextRef{i, mark};
        }
    }
    return std::nullopt;
}

}  // namespace sillwalk::app
