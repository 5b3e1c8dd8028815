#pragma once
/// Random numbers by counter: the n-th number of a seed is a pure function of both, the same on every machine.
/// SplitMix64: Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (from memory; its
/// published outputs are in the test).

#include <cstdint>

namespace sillwalk::engine {

/// The `index`-th output, from 0, of SplitMix64 started at `seed`.
[[nodiscard]] constexpr std::uint64_t random_bits(std::uint64_t seed, std::uint64_t index) {
    std::uint64_t z = seed + (index + 1) * 0x9e3779b97f4a7c15ULL;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31);
}

/// Uniform on [0, 1), a multiple of 2^-53.
[[nodiscard]] constexpr double random_unit(std::uint64_t seed, std::uint64_t index) {
    return static_cast<double>(random_bits(seed, index) >> 11) * 0x1.0p-53;
}

}  // namespace sillwalk::engine
