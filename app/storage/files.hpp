#pragma once
/// Files beside the database, written so that a power cut leaves the old one or the new one.

#include "engine/base/result.hpp"

#include <cstdint>
#include <string>

namespace sillwalk::app {

[[nodiscard]] bool file_exists(const std::string& path);
/// Waits until the file's bytes are on the disk.
[[nodiscard]] engine::Result<void> sync_file(const std::string& path);
/// Renames and waits until the folder says so; takes the place of a file of that name.
[[nodiscard]] engine::Result<void> move_file(const std::string& from, const std::string& to);
/// A whole copy under `to`, by way of "<to>.part".
[[nodiscard]] engine::Result<void> copy_file(const std::string& from, const std::string& to);
/// A file of `bytes` bytes that really take space.
[[nodiscard]] engine::Result<void> fill_file(const std::string& path, std::int64_t bytes);
/// Bytes that a program may still write there; nothing is known: 0.
[[nodiscard]] std::int64_t free_bytes(const std::string& path);

}  // namespace sillwalk::app
