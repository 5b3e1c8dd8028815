#include "app/shell/photo_worker.hpp"

#include "app/photo/photo.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

namespace fs = std::filesystem;

constexpr int small_px = 384;
constexpr int seen_px = 960;        ///< of the camera's picture on the screen
constexpr int camera_quality = 95;  ///< it is written once more when it is kept
constexpr std::size_t most_files = 500;

bool is_jpeg_name(const fs::path& path) {
    std::string extension = path.extension().string();
    for (char& letter : extension) letter = letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter;
    return extension == ".jpg" || extension == ".jpeg";
}

Result<std::string> file_bytes(const std::string& folder, const std::string& name) {
    const fs::path path = fs::path(folder) / name;
    std::error_code failed;
    const std::uintmax_t size = fs::file_size(path, failed);
    if (failed) return engine::fail(engine::ErrorCode::not_found, "the file is gone; choose another", name);
    if (size > PhotoLimits{}.bytes) return engine::bad_input("the file is larger than 64 MB; choose another", name);
    std::string bytes(static_cast<std::size_t>(size), '\0');
    std::ifstream file(path, std::ios::binary);
    file.read(bytes.data(), static_cast<std::streamsize>(size));
    if (!file) return engine::fail(engine::ErrorCode::storage, "the file cannot be read; copy it again", name);
    return bytes;
}

std::shared_ptr<const Picture> picture_from(const Pixels& pixels) {
    auto picture = std::make_shared<Picture>(Picture{pixels.width, pixels.height, {}});
    picture->rgba.reserve(pixels.rgb.size() / 3 * 4);
    for (std::size_t i = 0; i + 2 < pixels.rgb.size(); i += 3) {
        const std::uint8_t* p = &pixels.rgb[i];
        picture->rgba.insert(picture->rgba.end(), {p[0], p[1], p[2], 255});
    }
    return picture;
}

Result<std::shared_ptr<const Picture>> picture_of(std::string_view jpeg, int longest_px, const std::string& where) {
    auto decoded = decode_jpeg(jpeg, longest_px, {}, where);
    if (!decoded) return tl::make_unexpected(decoded.error());
    return picture_from(shrunk(std::move(*decoded), longest_px));
}

/// Key of the words that say why; the message itself is for programs.
PhotoRefused refused(const std::string& name, const engine::Error& error) {
    const bool gone = error.code == engine::ErrorCode::not_found;
    const bool unreadable = error.code == engine::ErrorCode::storage;
    return {name, gone ? "photo.why.gone" : unreadable ? "photo.why.unreadable" : "photo.why.unusable"};
}

/// `name` is the file's; empty: from the camera.
PhotoAction kept(std::string_view jpeg, const std::string& survey_id, const std::string& name) {
    auto photo = import_photo(jpeg, name);
    if (!photo) return refused(name, photo.error());
    auto small = picture_of(photo->bytes, small_px, name);
    if (!small) return refused(name, small.error());
    PhotoTaken news{survey_id, name, to_hex(photo->sha256), {}, photo->width_px, photo->height_px, std::move(*small)};
    news.bytes = std::make_shared<const std::string>(std::move(photo->bytes));
    return news;
}

PhotoAction taken(const std::string& folder, const std::string& survey_id, const std::string& name) {
    const auto file = file_bytes(folder, name);
    if (!file) return refused(name, file.error());
    return kept(*file, survey_id, name);
}

}  // namespace

Result<std::vector<std::string>> jpeg_files(const std::string& folder) {
    std::error_code failed;
    std::vector<std::pair<fs::file_time_type, std::string>> found;
    for (fs::directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed)) {
        std::error_code ignored;
        if (!is_jpeg_name(at->path()) || !at->is_regular_file(ignored)) continue;
        found.emplace_back(at->last_write_time(ignored), at->path().filename().string());
    }
    if (failed) return engine::fail(engine::ErrorCode::not_found, failed.message(), folder);
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return a.first != b.first ? a.first > b.first : a.second > b.second;
    });
    if (found.size() > most_files) found.resize(most_files);
    std::vector<std::string> names;
    for (auto& [time, name] : found) names.push_back(std::move(name));
    return names;
}

PhotoWorker::PhotoWorker(PhotoWorkerOptions options) : options_(std::move(options)) {
    if (options_.own_thread) thread_ = std::thread([this] { loop(); });
}

PhotoWorker::~PhotoWorker() {
    {
        const std::lock_guard lock(mutex_);
        closing_ = true;
    }
    waiting_.notify_all();
    if (thread_.joinable()) thread_.join();
}

void PhotoWorker::list_files() {
    submit([this]() -> PhotoAction {
        PhotoFilesListed news{options_.folder, {}};
        if (options_.folder.empty()) return news;
        auto names = jpeg_files(options_.folder);
        if (names) {
            news.names = std::move(*names);
        } else {
            news.unreadable = true;
        }
        return news;
    });
}

void PhotoWorker::read_file(std::string survey_id, std::string name) {
    submit([this, survey_id = std::move(survey_id), name = std::move(name)]() -> PhotoAction {
        return taken(options_.folder, survey_id, name);
    });
}

void PhotoWorker::decode(const std::string& sha256, bool whole) {
    {
        const std::lock_guard lock(mutex_);
        if (!asked_.emplace(sha256, whole).second) return;
    }
    submit([this, sha256, whole]() -> PhotoAction {
        PictureReady news{sha256, whole, nullptr};
        const auto digest = digest_from_hex(sha256);
        const auto bytes = digest ? options_.load(*digest) : engine::bad_input("no digest", sha256);
        if (!bytes) return news;
        auto picture = picture_of(*bytes, whole ? photo_longest_px : small_px, sha256);
        if (picture) news.picture = std::move(*picture);
        return news;
    });
}

void PhotoWorker::watch(bool wanted) {
    {
        const std::lock_guard lock(mutex_);
        if (looking_ || (!wanted && !watched_)) return;
        watched_ = wanted;
        looking_ = true;
    }
    submit([this, wanted]() -> PhotoAction {
        if (wanted) return look();
        camera_.reset();
        return CameraSeen{};
    });
}

void PhotoWorker::shoot(std::string survey_id) {
    submit([this, survey_id = std::move(survey_id)] { return taken_now(survey_id); });
}

Result<Pixels> PhotoWorker::see() {
    if (!camera_) {
        auto opened = options_.camera();
        if (!opened) return tl::make_unexpected(opened.error());
        camera_ = std::move(*opened);
    }
    auto pixels = camera_->frame();
    if (!pixels) camera_.reset();
    return pixels;
}

PhotoAction PhotoWorker::look() {
    auto pixels = see();
    if (!pixels) return CameraSeen{nullptr, "camera.why"};
    return CameraSeen{picture_from(shrunk(std::move(*pixels), seen_px)), {}};
}

PhotoAction PhotoWorker::taken_now(const std::string& survey_id) {
    const auto pixels = see();
    const auto jpeg = pixels ? encode_jpeg(*pixels, camera_quality) : tl::make_unexpected(pixels.error());
    if (!jpeg) return CameraSeen{nullptr, "camera.why"};
    return kept(*jpeg, survey_id, {});
}

std::vector<PhotoAction> PhotoWorker::take() {
    std::unique_lock lock(mutex_);
    if (!options_.own_thread && !jobs_.empty()) work(lock);
    for (const PhotoAction& one : news_) {
        if (const auto* ready = std::get_if<PictureReady>(&one)) asked_.erase({ready->sha256, ready->whole});
        if (std::holds_alternative<CameraSeen>(one)) looking_ = false;
    }
    return std::exchange(news_, {});
}

bool PhotoWorker::working() const {
    const std::lock_guard lock(mutex_);
    // The camera has always one more picture to show: that is no work that will be done some time.
    const std::size_t pictures = looking_ ? 1 : 0;
    return at_work_ || jobs_.size() > pictures || news_.size() > pictures;
}

void PhotoWorker::submit(Job job) {
    {
        const std::lock_guard lock(mutex_);
        jobs_.push_back(std::move(job));
    }
    waiting_.notify_one();
}

void PhotoWorker::work(std::unique_lock<std::mutex>& lock) {
    const Job job = std::move(jobs_.front());
    jobs_.pop_front();
    at_work_ = true;
    lock.unlock();
    PhotoAction news = job();
    lock.lock();
    news_.push_back(std::move(news));
    at_work_ = false;
    if (!options_.own_thread || !options_.on_ready) return;
    lock.unlock();
    options_.on_ready();
    lock.lock();
}

void PhotoWorker::loop() {
    std::unique_lock lock(mutex_);
    for (;;) {
        waiting_.wait(lock, [this] { return closing_ || !jobs_.empty(); });
        if (closing_) return;
        work(lock);
    }
}

}  // namespace sillwalk::app
