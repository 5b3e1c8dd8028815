#pragma once
/// The disk as it may be after the power went: of what was not flushed, none, some or all is there.

#include "tests/faults/fault_vfs.hpp"

#include <cstdint>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace sillwalk::test {

enum class Damage {
    nothing_more,  ///< what was not flushed is not there
    some,          ///< each sector of 512 bytes of what was not flushed is there or not
    garbage,       ///< it is there, but one sector of it holds rubbish
};

using DiskImage = std::map<std::string, std::string>;  ///< path -> bytes

/// Goes through the events once; image() at any event makes the disk after a cut there.
class PowerCut {
public:
    /// A device that heeds flushes, or one that answers them and keeps the last `held` writes in its cache
    /// nevertheless.
    PowerCut(const std::vector<DiskEvent>& events, bool heeds_flushes, std::size_t held = 40)
        : events_(events), heeds_(heeds_flushes), held_(held) {}

    /// Must not go back.
    void go_to(std::size_t event);
    [[nodiscard]] DiskImage image(Damage damage, std::mt19937& random) const;

private:
    void settle(const std::string& path);
    const std::vector<DiskEvent>& events_;
    bool heeds_;
    std::size_t held_;
    std::size_t at_ = 0;
    DiskImage durable_;
    std::vector<const DiskEvent*> pending_;
};

}  // namespace sillwalk::test
