#pragma once
/// Photos and papers as files named by their digest: blobs/aa/<64 hex>. A file stands under its name only when it is
/// whole and on the disk: temporary file, fsync, rename, fsync of the folder. Paths are made from digests that we
/// computed and ids that we made, never from a text that came from outside.

#include "app/bundle/digest.hpp"
#include "engine/base/result.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::office {

using engine::Result;

inline constexpr const char* other_content = "the content does not match its digest";

class BlobFolder {
public:
    [[nodiscard]] static Result<BlobFolder> open(const std::string& folder);

    [[nodiscard]] std::string path(const app::Digest& digest) const;
    [[nodiscard]] Result<void> store(const app::Digest& digest, std::string_view bytes) const;
    [[nodiscard]] Result<std::string> read(const app::Digest& digest) const;
    /// The digest of what the file holds now.
    [[nodiscard]] Result<app::Digest> computed(const app::Digest& digest) const;

    /// Into another folder; disagreement where the bytes have another digest by now.
    [[nodiscard]] Result<void> copy(const app::Digest& digest, const BlobFolder& to) const;

    // An upload that is under way: a file named by the id that the office gave it.
    /// Writes at `offset` and waits for the disk; what stood behind it is cut off.
    [[nodiscard]] Result<void> append(const std::string& upload_id, std::int64_t offset, std::string_view bytes) const;
    /// Moves the finished upload to its name where its digest is right; disagreement where it is not.
    [[nodiscard]] Result<void> finish(const std::string& upload_id, const app::Digest& digest) const;
    void drop(const std::string& upload_id) const;

private:
    explicit BlobFolder(std::string folder) : folder_(std::move(folder)) {}
    [[nodiscard]] std::string upload_path(const std::string& upload_id) const;
    [[nodiscard]] Result<void> move_in(const std::string& temporary, const app::Digest& digest) const;
    std::string folder_;
};

/// The whole file; storage where it cannot be read.
[[nodiscard]] Result<std::string> read_whole(const std::string& path);
/// Through a temporary file, durable, mode 0600.
[[nodiscard]] Result<void> write_whole(const std::string& path, std::string_view bytes);
/// Gives a file that was written otherwise its name, once it is on the disk.
[[nodiscard]] Result<void> settle(const std::string& temporary, const std::string& path);

}  // namespace sillwalk::office
