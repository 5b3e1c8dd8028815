#include "app/bundle/photos.hpp"

#include "app/data/json_reader.hpp"
#include "engine/base/contract.hpp"

#include <array>
#include <set>
#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

constexpr std::string_view photos_path = "/photos";
constexpr std::string_view mark_words[] = {"arrow", "circle", "dimension"};
constexpr std::int64_t greatest_side = 65500, greatest_bytes = std::int64_t{1} << 30;

Json mark_json(const PhotoMark& mark) {
    Json out{{"kind", mark_words[static_cast<std::size_t>(mark.kind)]},
             {"from_x_per_10000", mark.from.x},
             {"from_y_per_10000", mark.from.y},
             {"to_x_per_10000", mark.to.x},
             {"to_y_per_10000", mark.to.y}};
    if (!mark.text.empty()) out["text"] = mark.text;
    return out;
}

Json photo_json(const VisitPhoto& photo) {
    Json out{{"id", photo.id},
             {"sha256", photo.sha256},
             {"bytes", photo.bytes},
             {"width_px", photo.width_px},
             {"height_px", photo.height_px}};
    if (!photo.about.empty()) out["about"] = photo.about;
    if (!photo.caption.empty()) out["caption"] = photo.caption;
    if (photo.marks.empty()) return out;
    Json marks = Json::array();
    for (const PhotoMark& mark : photo.marks) marks.push_back(mark_json(mark));
    out["marks"] = std::move(marks);
    return out;
}

PhotoMark read_mark(const Json& value, const std::string& path, JsonErrors& errors) {
    JsonObject object(value, path, errors);
    PhotoMark mark;
    mark.kind = object
                    .word<MarkKind>("kind", {{mark_words[0], MarkKind::arrow},
                                             {mark_words[1], MarkKind::circle},
                                             {mark_words[2], MarkKind::dimension}})
                    .value_or(MarkKind::arrow);
    const auto read = [&](const char* key) {
        return static_cast<int>(object.integer(key, 0, photo_point_max).value_or(0));
    };
    mark.from = {read("from_x_per_10000"), read("from_y_per_10000")};
    mark.to = {read("to_x_per_10000"), read("to_y_per_10000")};
    mark.text = object.text("text", Need::optional).value_or("");
    return mark;
}

VisitPhoto read_photo(const Json& value, const std::string& path, JsonErrors& errors) {
    JsonObject object(value, path, errors);
    VisitPhoto photo;
    photo.id = object.text("id").value_or("");
    photo.sha256 = object.text("sha256").value_or("");
    if (!digest_from_hex(photo.sha256)) object.error("sha256", "64 lower-case hex digits are wanted");
    photo.bytes = object.integer("bytes", 1, greatest_bytes).value_or(0);
    photo.width_px = object.integer("width_px", 1, greatest_side).value_or(0);
    photo.height_px = object.integer("height_px", 1, greatest_side).value_or(0);
    photo.about = object.text("about", Need::optional).value_or("");
    photo.caption = object.text("caption", Need::optional).value_or("");
    object.each(
        "marks", [&](const Json& mark, const std::string& at) { photo.marks.push_back(read_mark(mark, at, errors)); },
        Need::optional);
    return photo;
}

/// "crossing" and "4" of "/crossings/4/rise"; empty where it is none of the survey's lists.
std::pair<std::string, std::string> item_of(const std::string& about) {
    constexpr std::array<std::pair<std::string_view, const char*>, 4> lists = {
        {{"/rooms/", "room"}, {"/crossings/", "crossing"}, {"/washings/", "washing"}, {"/carts/", "cart"}}};
    for (const auto& [start, kind] : lists) {
        if (about.compare(0, start.size(), start) != 0) continue;
        return {kind, about.substr(start.size(), about.find('/', start.size()) - start.size())};
    }
    return {};
}

}  // namespace

bool is_photo_entry(std::string_view path) {
    return path == photos_path || path.substr(0, photos_path.size() + 1) == "/photos/";
}

Entries photo_entries(const std::vector<VisitPhoto>& photos) {
    if (photos.empty()) return {};
    Json list = Json::array();
    for (const VisitPhoto& photo : photos) list.push_back(photo_json(photo));
    auto entries = take_apart(Json{{"photos", std::move(list)}}.dump(-1, ' ', false, Json::error_handler_t::replace));
    EXPECT_CONTRACT(entries);  // just made as an object
    return std::move(*entries);
}

Result<std::vector<VisitPhoto>> photos_of(const Entries& entries) {
    Entries own;
    for (const auto& [path, text] : entries) {
        if (is_photo_entry(path)) own[path] = text;
    }
    std::vector<VisitPhoto> photos;
    if (own.empty()) return photos;
    const auto text = put_together(own);
    if (!text) return tl::make_unexpected(text.error());
    JsonErrors errors;
    const auto document = parse_json(*text, errors);
    if (document) {
        JsonObject object(*document, "", errors);
        object.each("photos", [&](const Json& value, const std::string& path) {
            photos.push_back(read_photo(value, path, errors));
        });
    }
    if (errors.empty()) return photos;
    std::string all;
    for (const engine::Error& error : errors) all += (all.empty() ? "" : "; ") + error.where + ": " + error.message;
    return engine::bad_input(std::move(all));
}

std::vector<BlobRef> blobs_of(const engine::SurveyId& survey, const std::vector<VisitPhoto>& photos) {
    std::vector<BlobRef> blobs;
    std::set<std::string> named;  // the same picture taken twice travels once
    for (const VisitPhoto& photo : photos) {
        const auto digest = digest_from_hex(photo.sha256);
        if (!digest || !named.insert(photo.sha256).second) continue;
        const auto [kind, id] = item_of(photo.about);
        const std::string item = kind.empty() ? "" : item_uuid(survey_uuid(survey), kind, id);
        blobs.push_back({*digest, photo.bytes, "image/jpeg", photo.width_px, photo.height_px, item});
    }
    return blobs;
}

}  // namespace sillwalk::app
