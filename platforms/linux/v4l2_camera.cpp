#include "platforms/linux/v4l2_camera.hpp"

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdint>
#include <fcntl.h>
#include <libv4l2.h>
#include <linux/videodev2.h>
#include <thread>
#include <utility>
#include <vector>

namespace sillwalk::platforms {

using app::Pixels;
using engine::ErrorCode;
using engine::Result;

namespace {

constexpr unsigned wanted_width = 1600, wanted_height = 1200;  ///< as a photo is kept; a camera gives its nearest
constexpr unsigned greatest_side = 8192;
constexpr int devices = 16;
constexpr int patience_ms = 3000;  ///< a camera that starts takes up to two seconds
constexpr int pause_ms = 10;

bool gives_pictures(const CameraCalls& calls, int fd) {
    v4l2_capability capability{};
    if (calls.ioctl(fd, VIDIOC_QUERYCAP, &capability) < 0) return false;
    const bool per_node = (capability.capabilities & V4L2_CAP_DEVICE_CAPS) != 0;
    const std::uint32_t able = per_node ? capability.device_caps : capability.capabilities;
    return (able & V4L2_CAP_VIDEO_CAPTURE) != 0 && (able & (V4L2_CAP_READWRITE | V4L2_CAP_STREAMING)) != 0;
}

class V4l2Camera : public app::CameraSource {
public:
    V4l2Camera(CameraCalls calls, int fd, std::string path, const v4l2_pix_format& format)
        : calls_(std::move(calls)),
          fd_(fd),
          path_(std::move(path)),
          width_(format.width),
          height_(format.height),
          row_(std::max(format.bytesperline, format.width * 3)),
          buffer_(static_cast<std::size_t>(row_) * height_) {}
    ~V4l2Camera() override { calls_.close(fd_); }
    V4l2Camera(const V4l2Camera&) = delete;
    V4l2Camera& operator=(const V4l2Camera&) = delete;

    Result<Pixels> frame() override {
        for (int waited = 0; waited < patience_ms; waited += pause_ms) {
            const long got = calls_.read(fd_, buffer_.data(), buffer_.size());
            if (got == static_cast<long>(buffer_.size())) return pixels();
            // A short picture is one that was damaged on the cable; the next may be whole.
            if (got < 0 && errno != EAGAIN && errno != EINTR)
                return engine::fail(ErrorCode::storage, "the camera is gone", path_);
            calls_.wait(pause_ms);
        }
        return engine::fail(ErrorCode::storage, "the camera gave no picture in time", path_);
    }

private:
    [[nodiscard]] Pixels pixels() const {
        Pixels out{static_cast<int>(width_), static_cast<int>(height_), {}};
        out.rgb.reserve(std::size_t{width_} * height_ * 3);
        for (unsigned y = 0; y < height_; ++y) {
            const auto start = buffer_.begin() + static_cast<std::ptrdiff_t>(std::size_t{y} * row_);
            out.rgb.insert(out.rgb.end(), start, start + static_cast<std::ptrdiff_t>(std::size_t{width_} * 3));
        }
        return out;
    }

    CameraCalls calls_;
    int fd_;
    std::string path_;
    unsigned width_, height_, row_;
    std::vector<std::uint8_t> buffer_;
};

}  // namespace

CameraCalls system_camera_calls() {
    CameraCalls calls;
    calls.open = [](const char* path) { return v4l2_open(path, O_RDWR | O_NONBLOCK | O_CLOEXEC, 0); };
    calls.ioctl = [](int fd, unsigned long request, void* argument) { return v4l2_ioctl(fd, request, argument); };
    calls.read = [](int fd, void* buffer, std::size_t bytes) {
        return static_cast<long>(v4l2_read(fd, buffer, bytes));
    };
    calls.close = [](int fd) { (void)v4l2_close(fd); };
    calls.wait = [](int milliseconds) { std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds)); };
    return calls;
}

std::optional<std::string> find_camera(const CameraCalls& calls) {
    for (int number = 0; number < devices; ++number) {
        const std::string path = "/dev/video" + std::to_string(number);
        const int fd = calls.open(path.c_str());
        if (fd < 0) continue;
        const bool found = gives_pictures(calls, fd);
        calls.close(fd);
        if (found) return path;
    }
    return std::nullopt;
}

Result<std::unique_ptr<app::CameraSource>> open_camera(CameraCalls calls, const std::string& path) {
    const int fd = calls.open(path.c_str());
    if (fd < 0) return engine::fail(ErrorCode::storage, "the camera cannot be opened", path);
    v4l2_format format{};
    format.type = V4L2_BUF_TYPE_VIDEO_CAPTURE;
    format.fmt.pix.width = wanted_width;
    format.fmt.pix.height = wanted_height;
    format.fmt.pix.pixelformat = V4L2_PIX_FMT_RGB24;
    format.fmt.pix.field = V4L2_FIELD_ANY;
    const bool set = calls.ioctl(fd, VIDIOC_S_FMT, &format) >= 0;
    const v4l2_pix_format& got = format.fmt.pix;
    const bool sane = got.width > 0 && got.height > 0 && got.width <= greatest_side && got.height <= greatest_side &&
                      got.bytesperline <= 4 * greatest_side;
    if (!set || !sane || got.pixelformat != V4L2_PIX_FMT_RGB24) {
        calls.close(fd);
        return engine::fail(ErrorCode::storage, "the camera gives no plain pictures", path);
    }
    return std::unique_ptr<app::CameraSource>(std::make_unique<V4l2Camera>(std::move(calls), fd, path, got));
}

}  // namespace sillwalk::platforms
