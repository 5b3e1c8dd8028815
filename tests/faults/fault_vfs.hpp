#pragma once
/// A layer between SQLite and the disk for the app's own storage code: it can refuse calls, tell of every call, and
/// write down what was written and flushed, so that the disk after a power cut can be put together.

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace sillwalk::test {

enum class DiskCall { write, sync, truncate, remove };

struct DiskEvent {
    DiskCall call;
    std::string path;
    std::int64_t offset = 0;  ///< of a write; the new size of a truncate
    std::string data;
};

/// What becomes of one call.
struct Verdict {
    int code = 0;       ///< 0: goes on as usual; else SQLite's error code, and nothing is done
    bool half = false;  ///< of a write: half of it is done before the error
};

class FaultDisk {
public:
    /// Stands before the real disk from the first call on, for the whole process.
    static FaultDisk& stand();

    std::function<Verdict(DiskCall, const std::string& path)> verdict;  ///< empty: everything goes on
    bool recording = false;
    std::vector<DiskEvent> events;

    void calm() {
        verdict = nullptr;
        recording = false;
        events.clear();
    }

private:
    FaultDisk();
};

}  // namespace sillwalk::test
