#include "app/office/blob_folder.hpp"

#include "app/office/secret.hpp"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>

namespace sillwalk::office {

namespace {

tl::unexpected<engine::Error> system_error(const std::string& what) {
    const int code = errno;
    return engine::fail(engine::ErrorCode::storage, what + ": " + std::strerror(code),
                        code == ENOSPC || code == EDQUOT ? "full" : "");
}

class File {
public:
    File(const std::string& path, int flags) : handle_(::open(path.c_str(), flags | O_CLOEXEC, 0600)) {}
    ~File() {
        if (handle_ >= 0) ::close(handle_);
    }
    File(const File&) = delete;
    File& operator=(const File&) = delete;
    [[nodiscard]] bool open() const { return handle_ >= 0; }
    [[nodiscard]] int handle() const { return handle_; }

    [[nodiscard]] bool write(std::string_view bytes) const {
        while (!bytes.empty()) {
            const auto count = ::write(handle_, bytes.data(), bytes.size());
            if (count < 0 && errno == EINTR) continue;
            if (count < 0) return false;
            bytes.remove_prefix(static_cast<std::size_t>(count));
        }
        return true;
    }

private:
    int handle_;
};

Result<void> flush_folder(const std::string& folder) {
    const File file(folder, O_RDONLY | O_DIRECTORY);
    if (!file.open() || ::fsync(file.handle()) != 0) return system_error(folder);
    return {};
}

Result<void> write_durably(const std::string& path, std::string_view bytes) {
    const File file(path, O_WRONLY | O_CREAT | O_TRUNC);
    if (!file.open() || !file.write(bytes) || ::fsync(file.handle()) != 0) return system_error(path);
    return {};
}

std::string parent_of(const std::string& path) {
    return std::filesystem::path(path).parent_path().string();
}

Result<void> rename_durably(const std::string& temporary, const std::string& path) {
    if (::rename(temporary.c_str(), path.c_str()) != 0) return system_error(path);
    const std::string folder = parent_of(path);
    return flush_folder(folder.empty() ? "." : folder);
}

}  // namespace

Result<std::string> read_whole(const std::string& path) {
    const File file(path, O_RDONLY);
    struct ::stat status {};
    if (!file.open() || ::fstat(file.handle(), &status) != 0) return system_error(path);
    std::string bytes(static_cast<std::size_t>(status.st_size), '\0');
    std::size_t got = 0;
    while (got < bytes.size()) {
        const auto count = ::read(file.handle(), bytes.data() + got, bytes.size() - got);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return system_error(path);
        if (count == 0) break;
        got += static_cast<std::size_t>(count);
    }
    bytes.resize(got);
    return bytes;
}

Result<void> write_whole(const std::string& path, std::string_view bytes) {
    const std::string temporary = path + ".new";
    if (auto written = write_durably(temporary, bytes); !written) return written;
    return rename_durably(temporary, path);
}

Result<void> settle(const std::string& temporary, const std::string& path) {
    {
        const File file(temporary, O_RDONLY);
        if (!file.open() || ::fsync(file.handle()) != 0) return system_error(temporary);
    }
    return rename_durably(temporary, path);
}

Result<BlobFolder> BlobFolder::open(const std::string& folder) {
    std::error_code error;
    for (const char* part : {"blobs", "uploads"}) {
        std::filesystem::create_directories(std::filesystem::path(folder) / part, error);
        if (error) return engine::fail(engine::ErrorCode::storage, error.message(), folder);
    }
    for (int first = 0; first < 256; ++first) {
        const char byte = static_cast<char>(first);
        std::filesystem::create_directory(std::filesystem::path(folder) / "blobs" / app::to_hex({&byte, 1}), error);
        if (error) return engine::fail(engine::ErrorCode::storage, error.message(), folder);
    }
    if (auto flushed = flush_folder(folder + "/blobs"); !flushed) return tl::make_unexpected(flushed.error());
    return BlobFolder(folder);
}

std::string BlobFolder::path(const app::Digest& digest) const {
    const std::string hex = app::to_hex(digest);
    return folder_ + "/blobs/" + hex.substr(0, 2) + "/" + hex;
}
std::string BlobFolder::upload_path(const std::string& upload_id) const {
    return folder_ + "/uploads/" + upload_id;
}

Result<void> BlobFolder::move_in(const std::string& temporary, const app::Digest& digest) const {
    const std::string name = path(digest);
    if (::rename(temporary.c_str(), name.c_str()) != 0) return system_error(name);
    return flush_folder(parent_of(name));
}

Result<void> BlobFolder::store(const app::Digest& digest, std::string_view bytes) const {
    // A name of its own for each writer: two that bring the same photo do not write into one file.
    const std::string temporary = upload_path("whole-" + app::to_hex(random_bytes(16)));
    if (auto written = write_durably(temporary, bytes); !written) {
        ::unlink(temporary.c_str());
        return written;
    }
    return move_in(temporary, digest);
}

Result<std::string> BlobFolder::read(const app::Digest& digest) const {
    return read_whole(path(digest));
}

Result<app::Digest> BlobFolder::computed(const app::Digest& digest) const {
    auto bytes = read(digest);
    if (!bytes) return tl::make_unexpected(bytes.error());
    return app::sha256(*bytes);
}

Result<void> BlobFolder::copy(const app::Digest& digest, const BlobFolder& to) const {
    auto bytes = read(digest);
    if (!bytes) return tl::make_unexpected(bytes.error());
    if (app::sha256(*bytes) != digest) return engine::fail(engine::ErrorCode::disagreement, other_content);
    return to.store(digest, *bytes);
}

Result<void> BlobFolder::append(const std::string& upload_id, std::int64_t offset, std::string_view bytes) const {
    const std::string name = upload_path(upload_id);
    const File file(name, O_WRONLY | O_CREAT);
    if (!file.open() || ::ftruncate(file.handle(), offset) != 0 || ::lseek(file.handle(), offset, SEEK_SET) != offset ||
        !file.write(bytes) || ::fsync(file.handle()) != 0)
        return system_error(name);
    return {};
}

Result<void> BlobFolder::finish(const std::string& upload_id, const app::Digest& digest) const {
    const std::string name = upload_path(upload_id);
    auto bytes = read_whole(name);
    if (!bytes) return tl::make_unexpected(bytes.error());
    if (app::sha256(*bytes) != digest) return engine::fail(engine::ErrorCode::disagreement, other_content);
    return move_in(name, digest);
}

void BlobFolder::drop(const std::string& upload_id) const {
    ::unlink(upload_path(upload_id).c_str());
}

}  // namespace sillwalk::office
