#include "app/bundle/hand_off.hpp"

#include <fmt/format.h>

#include <istream>

namespace sillwalk::app {

namespace {

/// A photo's line starts with its digest; an envelope never does. Looking at the first bytes keeps the tree of a long
/// line from being built under the limits of the other kind.
constexpr std::string_view blob_start = R"({"sha256":)";

tl::expected<HandOffBlob, EnvelopeFault> read_blob(std::string_view line) {
    EnvelopeFault fault;
    const StrictLimits limits{greatest_hand_off_line, 2, 8, 64, greatest_hand_off_line};
    const std::optional<Json> document = parse_strict(line, fault.errors, limits);
    if (!document) {
        fault.refusal = EnvelopeRefusal::not_strict;
        return tl::make_unexpected(std::move(fault));
    }
    JsonObject object(*document, "", fault.errors);
    const auto hex = object.text("sha256");
    const auto data = object.text("data");
    if (!hex || !data) return tl::make_unexpected(std::move(fault));
    const auto digest = digest_from_hex(*hex);
    if (!digest) object.error("sha256", "no SHA-256 in 64 lower-case hex digits");
    HandOffBlob blob;
    if (auto bytes = from_base64(*data)) {
        blob.bytes = std::move(*bytes);
    } else {
        object.error("data", "no base64");
    }
    if (blob.bytes.size() > static_cast<std::size_t>(greatest_blob_bytes)) object.error("data", "larger than 8 MiB");
    if (fault.errors.empty()) {
        blob.digest = sha256(blob.bytes);
        if (blob.digest != *digest) object.error("data", "the content does not match its digest");
    }
    if (!fault.errors.empty()) return tl::make_unexpected(std::move(fault));
    return blob;
}

}  // namespace

bool HandOffReader::read_line(std::string& line) {
    line.clear();
    auto* const buffer = in_.rdbuf();
    for (auto c = buffer->sbumpc(); c != std::istream::traits_type::eof(); c = buffer->sbumpc()) {
        if (c == '\n') return true;
        if (line.size() >= greatest_hand_off_line) {
            fault_.refusal = EnvelopeRefusal::too_large;
            fault_.errors.push_back({engine::ErrorCode::bad_input, "the line is longer than 12 MiB", ""});
            stopped_ = true;
            return false;
        }
        line.push_back(static_cast<char>(c));
    }
    if (line.empty()) at_end_ = true;
    return !line.empty();
}

std::optional<HandOffLine> HandOffReader::next() {
    std::string line;
    if (stopped_ || at_end_) return std::nullopt;
    ++line_number_;
    if (!read_line(line)) return std::nullopt;
    if (line.ends_with('\r')) line.pop_back();
    if (std::string_view(line).starts_with(blob_start)) {
        auto blob = read_blob(line);
        if (blob) return HandOffLine(std::move(*blob));
        fault_ = std::move(blob.error());
    } else {
        auto envelope = read_envelope(line);
        if (envelope) return HandOffLine(std::move(*envelope));
        fault_ = std::move(envelope.error());
    }
    stopped_ = true;
    return std::nullopt;
}

std::string hand_off_line(const Envelope& envelope) {
    return envelope_text(envelope) + "\n";
}

std::string hand_off_blob_line(std::string_view bytes) {
    return fmt::format("{{\"sha256\":\"{}\",\"data\":\"{}\"}}\n", to_hex(sha256(bytes)), to_base64(bytes));
}

}  // namespace sillwalk::app
