#pragma once
/// Ids of what a person adds: UUIDs of version 7, made from the moment of the action alone.

#include "app/core/action.hpp"

#include <string>

namespace sillwalk::app {

class IdMaker {
public:
    explicit IdMaker(const Moment& moment) : utc_ms_(moment.utc_ms), random_(moment.random) {}
    /// Another one each time; at most 65 536 of one moment.
    [[nodiscard]] std::string next();

private:
    std::int64_t utc_ms_;
    RandomBytes random_;
};

/// Counts the bytes up as one number, the last byte first. A process draws them once from the system and then counts,
/// so that no two of its ids are alike.
void count_up(RandomBytes& bytes, std::size_t from_the_right = 0);

}  // namespace sillwalk::app
