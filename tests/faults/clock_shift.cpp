// Preloaded into a program, it shifts the clock on the wall by SILLWALK_CLOCK_SHIFT_S seconds; clocks that never jump
// are left alone. libfaketime does the same, but waits for ever at the start of a program that the address sanitizer
// watches.
#include <cstdlib>
#include <ctime>
#include <sys/syscall.h>
#include <sys/time.h>
#include <unistd.h>

namespace {

long shift_s() {
    const char* text = std::getenv("SILLWALK_CLOCK_SHIFT_S");
    return text == nullptr ? 0 : std::strtol(text, nullptr, 10);
}

}  // namespace

extern "C" {

int clock_gettime(clockid_t clock, timespec* out) noexcept {
    const long done = syscall(SYS_clock_gettime, clock, out);
    if (done == 0 && (clock == CLOCK_REALTIME || clock == CLOCK_REALTIME_COARSE)) out->tv_sec += shift_s();
    return static_cast<int>(done);
}

int gettimeofday(timeval* out, void*) noexcept {
    timespec now{};
    if (clock_gettime(CLOCK_REALTIME, &now) != 0) return -1;
    out->tv_sec = now.tv_sec;
    out->tv_usec = now.tv_nsec / 1000;
    return 0;
}

time_t time(time_t* out) noexcept {
    timespec now{};
    if (clock_gettime(CLOCK_REALTIME, &now) != 0) return -1;
    if (out != nullptr) *out = now.tv_sec;
    return now.tv_sec;
}
}
