#pragma once
/// Reads, shrinks and decodes photos beside the frames, one after the other on a thread of its own.

#include "app/core/photos.hpp"
#include "app/photo/camera_source.hpp"
#include "engine/base/result.hpp"

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <set>
#include <string>
#include <thread>
#include <vector>

namespace sillwalk::app {

struct PhotoWorkerOptions {
    std::string folder;      ///< of the files; empty: there is none
    bool own_thread = true;  ///< false: take() does one piece of work
    /// The stored picture of that name. Called on the worker's thread.
    std::function<engine::Result<std::string>(const Digest&)> load;
    std::function<void()> on_ready;  ///< called on the worker's thread
    OpenCameraSource camera{};       ///< none: there is no camera
};

class PhotoWorker {
public:
    explicit PhotoWorker(PhotoWorkerOptions options);
    ~PhotoWorker();
    PhotoWorker(const PhotoWorker&) = delete;
    PhotoWorker& operator=(const PhotoWorker&) = delete;

    void list_files();
    void read_file(std::string survey_id, std::string name);
    /// Asked again for the same picture while it is on its way, does nothing.
    void decode(const std::string& sha256, bool whole);
    /// Whether pictures of the camera are wanted; opens and closes it. Asked with every frame.
    void watch(bool wanted);
    /// A photo of what the camera sees now.
    void shoot(std::string survey_id);
    [[nodiscard]] std::vector<PhotoAction> take();
    [[nodiscard]] bool working() const;

private:
    using Job = std::function<PhotoAction()>;
    void submit(Job job);
    void work(std::unique_lock<std::mutex>& lock);
    void loop();
    // On the worker's thread.
    [[nodiscard]] engine::Result<Pixels> see();
    [[nodiscard]] PhotoAction look();
    [[nodiscard]] PhotoAction taken_now(const std::string& survey_id);

    PhotoWorkerOptions options_;
    mutable std::mutex mutex_;
    std::condition_variable waiting_;
    std::deque<Job> jobs_;
    std::vector<PhotoAction> news_;
    std::set<std::pair<std::string, bool>> asked_;
    bool at_work_ = false, closing_ = false;
    bool watched_ = false, looking_ = false;  ///< the camera is open, or about to be; a picture of it is on its way
    std::unique_ptr<CameraSource> camera_;    ///< worker's thread only
    std::thread thread_;
};

/// JPEG files of a folder, the newest first, at most 500.
[[nodiscard]] engine::Result<std::vector<std::string>> jpeg_files(const std::string& folder);

}  // namespace sillwalk::app
