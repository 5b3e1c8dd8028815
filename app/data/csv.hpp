#pragma once
/// Comma-separated text by RFC 4180: quotes doubled inside quotes, line ends inside quotes, CRLF or LF. The separator
/// is ',' or ';', whichever the first line holds more of outside quotes. A byte order mark is passed over.

#include "engine/base/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::app {

struct CsvText {
    char separator = ',';
    std::vector<std::vector<std::string>>
        rows;  ///< blank lines are kept as empty rows, so that numbers agree with a spreadsheet
};

/// Fails only where a quote is never closed; the error names the row.
[[nodiscard]] engine::Result<CsvText> read_csv(std::string_view text);

}  // namespace sillwalk::app
