#pragma once
/// The hand-off file for a stick or a mail: NDJSON, one line an envelope or a photo. No names in it, so no path can be
/// smuggled in; memory is one line. Format: docs/reference/bundle.md.
///   HandOffReader reader(stream);
///   while (auto line = reader.next()) { … }        // ends with reader.at_end() or reader.fault()

#include "app/bundle/envelope.hpp"

#include <iosfwd>
#include <variant>

namespace sillwalk::app {

struct HandOffBlob {
    Digest digest{};    ///< of `bytes`; it was checked against the one in the file
    std::string bytes;  ///< at most greatest_blob_bytes
};
using HandOffLine = std::variant<Envelope, HandOffBlob>;

inline constexpr std::size_t greatest_hand_off_line = std::size_t{12} << 20;

class HandOffReader {
public:
    explicit HandOffReader(std::istream& in) : in_(in) {}
    /// The next line, or nothing at the end and after the first fault.
    [[nodiscard]] std::optional<HandOffLine> next();
    [[nodiscard]] bool at_end() const { return at_end_; }
    [[nodiscard]] const EnvelopeFault& fault() const { return fault_; }
    [[nodiscard]] std::size_t line_number() const { return line_number_; }

private:
    [[nodiscard]] bool read_line(std::string& line);
    std::istream& in_;
    EnvelopeFault fault_;
    std::size_t line_number_ = 0;
    bool at_end_ = false, stopped_ = false;
};

/// One line with its line end.
[[nodiscard]] std::string hand_off_line(const Envelope& envelope);
[[nodiscard]] std::string hand_off_blob_line(std::string_view bytes);

}  // namespace sillwalk::app
