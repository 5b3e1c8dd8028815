#pragma once
/// Space kept in reserve beside the database: 8 MiB that are given back when the disk is full, so that the visit in
/// hand can still be finished and handed off.

#include "engine/base/result.hpp"

#include <cstdint>
#include <string>

namespace sillwalk::app {

inline constexpr std::int64_t ballast_bytes = std::int64_t{8} << 20;

class Ballast {
public:
    explicit Ballast(std::string database_path, std::int64_t bytes = ballast_bytes)
        : path_(std::move(database_path) + ".ballast"), bytes_(bytes) {}

    /// Makes it where it is not there and the disk has four times its size left. False where it was not made.
    bool keep();
    /// Gives the space back. False where there was none to give.
    bool drop();
    [[nodiscard]] bool there() const;

private:
    std::string path_;
    std::int64_t bytes_;
};

}  // namespace sillwalk::app
