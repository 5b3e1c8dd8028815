#include "app/data/csv.hpp"

#include <fmt/format.h>

namespace sillwalk::app {

namespace {

char separator_of(std::string_view text) {
    bool quoted = false;
    int commas = 0, semicolons = 0;
    for (const char c : text) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == '\n' || c == '\r') break;
        commas += c == ',' ? 1 : 0;
        semicolons += c == ';' ? 1 : 0;
    }
    return semicolons > commas ? ';' : ',';
}

class Scanner {
public:
    Scanner(std::string_view text, char separator) : text_(text), separator_(separator) {}

    bool at_end() const { return at_ == text_.size(); }

    /// One row and the line end after it. False where a quote is never closed.
    bool row(std::vector<std::string>& cells) {
        if (line_end()) return true;
        while (true) {
            std::string& cell = cells.emplace_back();
            if (!read_cell(cell)) return false;
            if (at_end() || line_end()) return true;
            ++at_;  // the separator
        }
    }

private:
    bool line_end() {
        if (text_.substr(at_, 2) == "\r\n") {
            at_ += 2;
            return true;
        }
        if (!at_end() && (text_[at_] == '\n' || text_[at_] == '\r')) {
            ++at_;
            return true;
        }
        return false;
    }
    /// Up to the next separator, line end or end of the text. A quote counts only at the start of a cell.
    bool read_cell(std::string& cell) {
        if (!at_end() && text_[at_] == '"' && !quoted(cell)) return false;
        while (!at_end() && text_[at_] != separator_ && text_[at_] != '\n' && text_[at_] != '\r') cell += text_[at_++];
        return true;
    }
    bool quoted(std::string& cell) {
        ++at_;
        while (!at_end()) {
            const char c = text_[at_++];
            if (c != '"') {
                cell += c;
            } else if (!at_end() && text_[at_] == '"') {
                cell += '"';
                ++at_;
            } else {
                return true;
            }
        }
        return false;
    }

    std::string_view text_;
    char separator_;
    std::size_t at_ = 0;
};

}  // namespace

engine::Result<CsvText> read_csv(std::string_view text) {
    constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
    if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
    CsvText out;
    out.separator = separator_of(text);
    Scanner scanner(text, out.separator);
    while (!scanner.at_end()) {
        std::vector<std::string>& cells = out.rows.emplace_back();
        if (!scanner.row(cells)) {
            return engine::bad_input("a quote is opened and never closed", fmt::format("row {}", out.rows.size()));
        }
    }
    return out;
}

}  // namespace sillwalk::app
