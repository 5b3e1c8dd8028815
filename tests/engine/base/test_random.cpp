#include "engine/base/random.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;

TEST_CASE("random: the published outputs of SplitMix64", "[random]") {
    // Rosetta Code, "Pseudo-random numbers/Splitmix64": the first five integers with the seed 1234567.
    const std::uint64_t published[] = {6457827717110365317ULL, 3203168211198807973ULL, 9817491932198370423ULL,
                                       4593380528125082431ULL, 16408922859458223821ULL};
    for (std::uint64_t i = 0; i < 5; ++i) CHECK(random_bits(1234567, i) == published[i]);
}

TEST_CASE("random: the unit draw is spread as published for the seed 987654321", "[random]") {
    // The same page: 100 000 draws, floor(5 x) of each; counts of 0 to 4.
    int counts[5] = {};
    for (std::uint64_t i = 0; i < 100000; ++i) ++counts[static_cast<int>(5.0 * random_unit(987654321, i))];
    CHECK(counts[0] == 20027);
    CHECK(counts[1] == 19892);
    CHECK(counts[2] == 20073);
    CHECK(counts[3] == 19978);
    CHECK(counts[4] == 20030);
}
