#pragma once
/// A camera by Video4Linux2, through libv4l2, which turns what a camera gives into plain pictures.

#include "app/photo/camera_source.hpp"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace sillwalk::platforms {

/// The system's calls, each as libv4l2 has it: below 0 is a failure, with errno.
struct CameraCalls {
    std::function<int(const char* path)> open;  ///< not blocking
    std::function<int(int fd, unsigned long request, void* argument)> ioctl;
    std::function<long(int fd, void* buffer, std::size_t bytes)> read;
    std::function<void(int fd)> close;
    std::function<void(int milliseconds)> wait;
};
[[nodiscard]] CameraCalls system_camera_calls();

/// Path of the first device that gives pictures; empty where there is none.
[[nodiscard]] std::optional<std::string> find_camera(const CameraCalls& calls);

/// storage where the device is gone, busy or gives no plain pictures.
[[nodiscard]] engine::Result<std::unique_ptr<app::CameraSource>> open_camera(CameraCalls calls,
                                                                             const std::string& path);

}  // namespace sillwalk::platforms
