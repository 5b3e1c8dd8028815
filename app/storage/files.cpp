#include "app/storage/files.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>
#include <vector>

namespace sillwalk::app {

using engine::ErrorCode;
using engine::Result;

namespace {

constexpr std::size_t copy_step = std::size_t{1} << 16;

tl::unexpected<engine::Error> file_error(const std::string& path) {
    const bool full = errno == ENOSPC || errno == EDQUOT;
    return engine::fail(ErrorCode::storage, full ? "the storage is full" : std::strerror(errno), full ? "full" : path);
}

/// Closes with the object.
class Handle {
public:
    Handle(const std::string& path, int flags) : number_(::open(path.c_str(), flags | O_CLOEXEC, 0600)) {}
    ~Handle() {
        if (number_ >= 0) ::close(number_);
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    [[nodiscard]] bool open() const { return number_ >= 0; }
    [[nodiscard]] int number() const { return number_; }

private:
    int number_;
};

Result<void> write_all(const Handle& file, const char* bytes, std::size_t count, const std::string& path) {
    while (count > 0) {
        const auto written = ::write(file.number(), bytes, count);
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return file_error(path);
        bytes += written;
        count -= static_cast<std::size_t>(written);
    }
    return {};
}

Result<void> sync_handle(const Handle& file, const std::string& path) {
    if (!file.open() || ::fsync(file.number()) != 0) return file_error(path);
    return {};
}

Result<void> copy_bytes(const std::string& from, const std::string& to) {
    const Handle source(from, O_RDONLY), target(to, O_WRONLY | O_CREAT | O_TRUNC);
    if (!source.open()) return file_error(from);
    if (!target.open()) return file_error(to);
    std::vector<char> buffer(copy_step);
    for (;;) {
        const auto count = ::read(source.number(), buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return file_error(from);
        if (count == 0) return sync_handle(target, to);
        if (auto done = write_all(target, buffer.data(), static_cast<std::size_t>(count), to); !done) return done;
    }
}

}  // namespace

bool file_exists(const std::string& path) {
    struct stat found {};
    return ::stat(path.c_str(), &found) == 0;
}

Result<void> sync_file(const std::string& path) {
    return sync_handle(Handle(path, O_RDONLY), path);
}

Result<void> move_file(const std::string& from, const std::string& to) {
    if (std::rename(from.c_str(), to.c_str()) != 0) return file_error(from);
    const std::string folder = std::filesystem::path(to).parent_path().string();
    return sync_file(folder.empty() ? "." : folder);
}

Result<void> copy_file(const std::string& from, const std::string& to) {
    const std::string part = to + ".part";
    if (auto done = copy_bytes(from, part); !done) return done;
    return move_file(part, to);
}

Result<void> fill_file(const std::string& path, std::int64_t bytes) {
    const Handle file(path, O_WRONLY | O_CREAT | O_TRUNC);
    if (!file.open()) return file_error(path);
    const std::vector<char> block(copy_step, '\x5a');
    for (std::int64_t written = 0; written < bytes; written += static_cast<std::int64_t>(block.size())) {
        if (auto done = write_all(file, block.data(), block.size(), path); !done) return done;
    }
    return sync_handle(file, path);
}

std::int64_t free_bytes(const std::string& path) {
    std::error_code failed;
    const auto space = std::filesystem::space(std::filesystem::absolute(path).parent_path(), failed);
    return failed ? 0 : static_cast<std::int64_t>(space.available);
}

}  // namespace sillwalk::app
