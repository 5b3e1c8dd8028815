#pragma once
/// A camera that is open. Implementations: platforms/linux/v4l2_camera, and one of the tests.

#include "app/photo/pixels.hpp"
#include "engine/base/result.hpp"

#include <functional>
#include <memory>

namespace sillwalk::app {

class CameraSource {
public:
    virtual ~CameraSource() = default;
    /// The newest picture; waits for it, a few seconds at most. An error where none came: the camera is then closed.
    [[nodiscard]] virtual engine::Result<Pixels> frame() = 0;
};

/// Opens the device's camera; called on a thread that may wait.
using OpenCameraSource = std::function<engine::Result<std::unique_ptr<CameraSource>>()>;

}  // namespace sillwalk::app
