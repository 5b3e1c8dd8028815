#pragma once
/// The photos of a visit: which picture, what it shows, what was drawn on it. The pictures themselves travel apart,
/// named by their SHA-256. In the entries of a visit they are the collection "/photos"; a visit without photos has
/// none.

#include "app/bundle/entries.hpp"
#include "app/bundle/revision.hpp"
#include "engine/base/result.hpp"
#include "engine/model/survey.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

enum class MarkKind : std::uint8_t { arrow, circle, dimension };

/// A point of a picture in ten-thousandths of its width and height, from the upper left corner.
struct PhotoPoint {
    int x = 0, y = 0;
    friend bool operator==(const PhotoPoint&, const PhotoPoint&) = default;
};
inline constexpr int photo_point_max = 10000;

/// Drawn on a picture: an arrow with its tip at `to`, the ellipse within the rectangle of both points, or a dimension
/// line between them with its text.
struct PhotoMark {
    MarkKind kind = MarkKind::arrow;
    PhotoPoint from, to;
    std::string text{};
    friend bool operator==(const PhotoMark&, const PhotoMark&) = default;
};

struct VisitPhoto {
    std::string id;      ///< UUID
    std::string sha256;  ///< 64 hex digits: the name of the picture
    std::int64_t bytes = 0, width_px = 0, height_px = 0;
    std::string about{};  ///< entry path of a reading or place: "/crossings/<id>/rise", "/rooms/<id>"; empty: loose
    std::string caption{};
    std::vector<PhotoMark> marks{};
    friend bool operator==(const VisitPhoto&, const VisitPhoto&) = default;
};

[[nodiscard]] bool is_photo_entry(std::string_view path);
[[nodiscard]] Entries photo_entries(const std::vector<VisitPhoto>& photos);
/// Reads the entries of the photos among those of a visit. bad_input with all errors in one message.
[[nodiscard]] engine::Result<std::vector<VisitPhoto>> photos_of(const Entries& entries);

/// What a revision says of the pictures; a photo of a thing of the survey names its item.
[[nodiscard]] std::vector<BlobRef> blobs_of(const engine::SurveyId& survey, const std::vector<VisitPhoto>& photos);

}  // namespace sillwalk::app
