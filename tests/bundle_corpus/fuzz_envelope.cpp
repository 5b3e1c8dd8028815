// F14: libFuzzer on what comes from outside: an envelope, or a hand-off file. What is taken must come back the same.

#include "app/bundle/hand_off.hpp"
#include "engine/base/contract.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>

using namespace sillwalk::app;

namespace {

void try_envelope(std::string_view text) {
    const auto read = read_envelope(text);
    if (!read) {
        EXPECT_CONTRACT(!read.error().errors.empty());
        return;
    }
    // The control: with a planted fault the run from the corpus must end with a finding.
    EXPECT_CONTRACT(std::getenv("SILLWALK_PLANTED_FAULT") == nullptr);
    const auto again = read_envelope(envelope_text(*read));
    EXPECT_CONTRACT(again && again->digest == read->digest && again->canonical == read->canonical);
}

void try_hand_off(std::string_view text) {
    std::istringstream file{std::string(text)};
    HandOffReader reader(file);
    while (reader.next()) {
    }
    EXPECT_CONTRACT(reader.at_end() || !reader.fault().errors.empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    try_envelope(text);
    try_hand_off(text);
    return 0;
}
