#pragma once
/// A process of its own that tells what it has done until it is killed.

#include <catch2/catch.hpp>

#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

namespace sillwalk::test {

/// Writes to the pipe of killed_after(); ends the process where it cannot.
template <class Told>
void tell(int pipe_end, const Told& told) {
    if (::write(pipe_end, &told, sizeof told) != sizeof told) ::_exit(2);
}

/// Runs child(pipe_end) in a process of its own and kills it `microseconds` after it first told something. The last
/// that it told.
template <class Told, class Child>
Told killed_after(useconds_t microseconds, Child&& child) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const pid_t process = ::fork();
    REQUIRE(process >= 0);
    if (process == 0) {
        ::close(ends[0]);
        child(ends[1]);
        ::_exit(1);
    }
    ::close(ends[1]);
    Told last;
    REQUIRE(::read(ends[0], &last, sizeof last) == sizeof last);
    ::usleep(microseconds);
    ::kill(process, SIGKILL);
    int status = 0;
    ::waitpid(process, &status, 0);
    CHECK(WIFSIGNALED(status));
    for (Told one; ::read(ends[0], &one, sizeof one) == sizeof one;) last = one;
    ::close(ends[0]);
    return last;
}

}  // namespace sillwalk::test
