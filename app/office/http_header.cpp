// The strict reading of a request's header, before any library sees it. Rules: RFC 9110 and 9112, without the leniency
// that they allow: no folded lines, no bare line ends, no second Content-Length, no coding but "chunked".

#include "app/office/http_server.hpp"

#include <algorithm>
#include <set>

namespace sillwalk::office {

namespace {

HeaderCheck refuse(int status, std::string why) {
    return {status, std::move(why), false};
}

bool token_character(char c) {
    constexpr std::string_view marks = "!#$%&'*+-.^_`|~";
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           marks.find(c) != std::string_view::npos;
}
bool token(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), token_character);
}

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return out;
}

std::string_view trimmed(std::string_view text) {
    const auto blank = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    return text;
}

HeaderCheck check_request_line(std::string_view line) {
    const auto first = line.find(' ');
    const auto last = line.rfind(' ');
    if (first == std::string_view::npos || first == last || !token(line.substr(0, first)))
        return refuse(400, "no request line");
    const std::string_view target = line.substr(first + 1, last - first - 1);
    const bool plain = std::all_of(target.begin(), target.end(), [](char c) { return c > 0x20 && c < 0x7f; });
    if (target.empty() || target.front() != '/' || !plain) return refuse(400, "no target");
    const std::string_view version = line.substr(last + 1);
    if (version != "HTTP/1.1") return refuse(version.starts_with("HTTP/") ? 505 : 400, "only HTTP/1.1 is spoken");
    return {};
}

struct Seen {
    std::set<std::string> once;
    std::string length, coding;
    std::size_t lines = 0;
};

HeaderCheck check_field(std::string_view line, Seen& seen, HeaderCheck& out) {
    const auto colon = line.find(':');
    if (colon == std::string_view::npos || !token(line.substr(0, colon))) return refuse(400, "no header line");
    const std::string name = lower(line.substr(0, colon));
    const std::string_view value = trimmed(line.substr(colon + 1));
    static const std::set<std::string> single{
        "host",          "content-length",  "transfer-encoding", "content-type", "content-digest", "authorization",
        "upload-offset", "upload-complete", "upload-length",     "repr-digest",  "expect",         "cookie"};
    if (single.contains(name) && !seen.once.insert(name).second)
        return refuse(400, "the header " + name + " stands twice");
    if (name == "host" && value.empty()) return refuse(400, "the header host is empty");
    if (name == "content-length") seen.length = std::string(value);
    if (name == "transfer-encoding") seen.coding = lower(value);
    if (name == "content-encoding") return refuse(415, "requests are not decompressed");
    if (name == "upgrade") return refuse(400, "there is nothing to upgrade to");
    if (name == "expect") {
        if (lower(value) != "100-continue") return refuse(417, "only 100-continue is known");
        out.expects_continue = true;
    }
    return {};
}

HeaderCheck check_framing(const Seen& seen, const HttpOptions& options) {
    if (!seen.once.contains("host")) return refuse(400, "the header host is missing");
    const bool has_length = seen.once.contains("content-length");
    const bool has_coding = seen.once.contains("transfer-encoding");
    if (has_length && has_coding) return refuse(400, "both content-length and transfer-encoding");
    if (has_coding && seen.coding != "chunked") return refuse(501, "the only transfer coding is chunked");
    if (!has_length) return {};
    const bool digits =
        std::all_of(seen.length.begin(), seen.length.end(), [](char c) { return c >= '0' && c <= '9'; });
    if (seen.length.empty() || !digits) return refuse(400, "content-length is no number");
    if (seen.length.size() > 12 || std::stoull(seen.length) > options.body_bytes)
        return refuse(413, "the body is too large");
    return {};
}

}  // namespace

HeaderCheck check_header(std::string_view text, const HttpOptions& options) {
    HeaderCheck out;
    Seen seen;
    for (std::size_t number = 0; !text.empty(); ++number) {
        const auto end = text.find('\n');
        if (end == std::string_view::npos || end == 0 || text[end - 1] != '\r') return refuse(400, "a bare line end");
        const std::string_view line = text.substr(0, end - 1);
        text.remove_prefix(end + 1);
        if (line.empty()) break;
        const bool control = std::any_of(line.begin(), line.end(), [](char c) {
            return (static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7f;
        });
        if (control) return refuse(400, "a control character in the header");
        if (number == 0) {
            if (const auto line_check = check_request_line(line); line_check.refuse_status != 0) return line_check;
            continue;
        }
        if (line.front() == ' ' || line.front() == '\t') return refuse(400, "a folded header line");
        if (++seen.lines > options.header_count) return refuse(431, "too many header lines");
        if (const auto field = check_field(line, seen, out); field.refuse_status != 0) return field;
    }
    if (const auto framing = check_framing(seen, options); framing.refuse_status != 0) return framing;
    return out;
}

}  // namespace sillwalk::office
