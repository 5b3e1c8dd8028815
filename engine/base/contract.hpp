#pragma once
/// EXPECT_CONTRACT(condition): a programming error ends the program, always, with file and line. Never for user input.

#include <cstdio>
#include <cstdlib>

#define EXPECT_CONTRACT(condition)                                                                \
    do {                                                                                          \
        if (!(condition)) {                                                                       \
            std::fprintf(stderr, "%s:%d: contract broken: %s\n", __FILE__, __LINE__, #condition); \
            std::abort();                                                                         \
        }                                                                                         \
    } while (false)
