// The camera by Video4Linux2 against a device that keeps to the calls as the kernel's documentation has them (Linux
// Media Subsystem, Video for Linux API: VIDIOC_QUERYCAP, VIDIOC_S_FMT, read() of a device opened with O_NONBLOCK).
// There is no camera where the tests run: what a real one does beyond that is not shown here.
#include "platforms/linux/v4l2_camera.hpp"
#include "tests/app_photo/camera.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <deque>
#include <linux/videodev2.h>
#include <map>
#include <memory>

using namespace sillwalk;

namespace {

struct Device {
    std::uint32_t able = V4L2_CAP_VIDEO_CAPTURE | V4L2_CAP_STREAMING;
    std::uint32_t format = V4L2_PIX_FMT_RGB24;
    unsigned width = 40, height = 30, row = 128;  ///< rows are padded to whole units of 64 bytes
    std::deque<int> answers;                      ///< of the next reads: 0 a picture, -1 a short one, else errno
    int last = 0;                                 ///< once they are used up
    int open = 0, waited_ms = 0;
};

struct Machine {
    std::map<std::string, Device> devices;
    std::map<int, Device*> opened;
    int next = 10;
};

long read_of(Device& device, void* buffer, std::size_t bytes, const app::Pixels& scene) {
    int answer = device.last;
    if (!device.answers.empty()) {
        answer = device.answers.front();
        device.answers.pop_front();
    }
    if (answer > 0) {
        errno = answer;
        return -1;
    }
    if (answer < 0) return static_cast<long>(bytes / 2);
    REQUIRE(bytes == std::size_t{device.row} * device.height);
    auto* out = static_cast<std::uint8_t*>(buffer);
    std::memset(out, 0xEE, bytes);
    for (unsigned y = 0; y < device.height; ++y)
        std::memcpy(out + std::size_t{y} * device.row, &scene.rgb[std::size_t{y} * device.width * 3],
                    std::size_t{device.width} * 3);
    return static_cast<long>(bytes);
}

platforms::CameraCalls calls_of(const std::shared_ptr<Machine>& machine, const app::Pixels& scene) {
    platforms::CameraCalls calls;
    calls.open = [machine](const char* path) {
        const auto found = machine->devices.find(path);
        if (found == machine->devices.end()) {
            errno = ENOENT;
            return -1;
        }
        machine->opened[machine->next] = &found->second;
        ++found->second.open;
        return machine->next++;
    };
    calls.ioctl = [machine](int fd, unsigned long request, void* argument) {
        Device& device = *machine->opened.at(fd);
        if (request == VIDIOC_QUERYCAP) {
            auto& told = *static_cast<v4l2_capability*>(argument);
            told.capabilities = device.able | V4L2_CAP_DEVICE_CAPS;
            told.device_caps = device.able;
            return 0;
        }
        REQUIRE(request == VIDIOC_S_FMT);
        auto& told = static_cast<v4l2_format*>(argument)->fmt.pix;
        CHECK(told.pixelformat == V4L2_PIX_FMT_RGB24);
        told.pixelformat = device.format;
        told.width = device.width;
        told.height = device.height;
        told.bytesperline = device.row;
        return 0;
    };
    calls.read = [machine, scene](int fd, void* buffer, std::size_t bytes) {
        return read_of(*machine->opened.at(fd), buffer, bytes, scene);
    };
    calls.close = [machine](int fd) {
        --machine->opened.at(fd)->open;
        machine->opened.erase(fd);
    };
    calls.wait = [machine](int milliseconds) {
        for (auto& [path, device] : machine->devices) device.waited_ms += milliseconds;
    };
    return calls;
}

}  // namespace

TEST_CASE("the first device that gives pictures is the camera", "[photo][camera]") {
    const auto machine = std::make_shared<Machine>();
    const auto calls = calls_of(machine, test::four_quarters(40, 30));
    CHECK_FALSE(platforms::find_camera(calls));
    machine->devices["/dev/video0"].able =
        V4L2_CAP_META_CAPTURE | V4L2_CAP_STREAMING;  // the second node of many cameras
    CHECK_FALSE(platforms::find_camera(calls));
    machine->devices["/dev/video2"];
    CHECK(platforms::find_camera(calls) == "/dev/video2");
    CHECK(machine->opened.empty());
}

TEST_CASE("a camera's picture comes whole, without the padding of its rows", "[photo][camera]") {
    const app::Pixels scene = test::four_quarters(40, 30);
    const auto machine = std::make_shared<Machine>();
    Device& device = machine->devices["/dev/video0"];
    device.answers = {EAGAIN, EINTR, -1, EAGAIN};
    auto camera = platforms::open_camera(calls_of(machine, scene), "/dev/video0");
    REQUIRE(camera);
    const auto frame = (*camera)->frame();
    REQUIRE(frame);
    CHECK(*frame == scene);
    CHECK(device.answers.empty());
    CHECK(device.open == 1);
    camera->reset();
    CHECK(device.open == 0);
}

TEST_CASE("a camera that is gone, silent, busy or strange is an error and is closed", "[photo][camera]") {
    const app::Pixels scene = test::four_quarters(40, 30);
    const auto machine = std::make_shared<Machine>();
    Device& device = machine->devices["/dev/video0"];
    const auto calls = calls_of(machine, scene);
    CHECK_FALSE(platforms::open_camera(calls, "/dev/video7"));
    {
        device.answers = {0, ENODEV};
        const auto camera = platforms::open_camera(calls, "/dev/video0");
        REQUIRE(camera);
        CHECK((*camera)->frame());
        CHECK_FALSE((*camera)->frame());
        device.last = EAGAIN;
        device.waited_ms = 0;
        CHECK_FALSE((*camera)->frame());
        CHECK(device.waited_ms >= 2000);
        CHECK(device.waited_ms <= 5000);
    }
    device.format = V4L2_PIX_FMT_YUYV;
    CHECK_FALSE(platforms::open_camera(calls, "/dev/video0"));
    device.format = V4L2_PIX_FMT_RGB24;
    device.width = 100000;
    CHECK_FALSE(platforms::open_camera(calls, "/dev/video0"));
    device.width = 0;
    CHECK_FALSE(platforms::open_camera(calls, "/dev/video0"));
    CHECK(device.open == 0);
}
