#pragma once
/// Where a figure comes from and how far that can be trusted.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::engine {

enum class SourceStatus {
    read,         ///< P: read in the original
    second_hand,  ///< S
    memory,       ///< M
    practice,     ///< common practice, no published source
    derived,      ///< D: worked out from stated figures
};

struct Source {  ///< one row of assets/sources.json
    std::string key, title, publisher, edition, where, licence;
    std::string note;
};

/// A source and the place in it. Tables keep them in one list; everything else holds the index.
struct Citation {
    std::string source;   ///< key in sources
    std::string locator;  ///< "Table 3, row 2"
    SourceStatus status = SourceStatus::memory;
};
using CitationId = std::uint16_t;

/// A figure with its published range where there is one; conflicting figures stay beside it.
template <class T>
struct Figure {
    T value{};
    std::optional<T> low, high;
    CitationId citation = 0;
    struct Other {
        T value{};
        CitationId citation = 0;
    };
    std::vector<Other> conflicting;
    std::string validity{};  ///< range or caveat in words; empty where the name of the figure says it all
};

}  // namespace sillwalk::engine
