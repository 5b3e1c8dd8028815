#include "engine/base/number_reader.hpp"

#include <fmt/format.h>

#include <cmath>
#include <locale>
#include <optional>
#include <sstream>
#include <string>

namespace sillwalk::engine {

namespace {

bool digit(char c) {
    return c >= '0' && c <= '9';
}

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) {
        text.remove_prefix(1);
    }
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) {
        text.remove_suffix(1);
    }
    return text;
}

bool take(std::string_view& text, std::string_view word) {
    if (text.substr(0, word.size()) != word) {
        return false;
    }
    text.remove_prefix(word.size());
    return true;
}

/// 1 or -1; accepts a leading plus and the true minus U+2212.
double take_sign(std::string_view& text) {
    if (take(text, "-") || take(text, "\xE2\x88\x92")) {
        return -1;
    }
    take(text, "+");
    return 1;
}

std::size_t digits_from(std::string_view text, std::size_t at) {
    while (at < text.size() && digit(text[at])) {
        ++at;
    }
    return at;
}

/// End of an exponent that starts at `at`, or `at` where there is none.
std::size_t exponent_end(std::string_view text, std::size_t at) {
    if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) {
        return at;
    }
    std::size_t from = at + 1;
    if (from < text.size() && (text[from] == '-' || text[from] == '+')) {
        ++from;
    }
    const std::size_t to = digits_from(text, from);
    return to > from ? to : at;
}

double to_double(std::string_view plain) {
    std::istringstream in{std::string(plain)};
    in.imbue(std::locale::classic());
    double value = 0;
    in >> value;
    return value;
}

/// A decimal number without sign at the start of `text`, taken off it.
std::optional<double> take_decimal(std::string_view& text) {
    const std::size_t whole = digits_from(text, 0);
    std::size_t end = whole;
    if (end < text.size() && text[end] == '.') {
        end = digits_from(text, end + 1);
    }
    if (end == 0 || (whole == 0 && end == 1)) {
        return std::nullopt;
    }
    end = exponent_end(text, end);
    const double value = to_double(text.substr(0, end));
    text.remove_prefix(end);
    return value;
}

std::optional<double> take_vulgar_fraction(std::string_view& text) {
    struct Glyph {
        std::string_view bytes;
        double value;
    };
    static constexpr Glyph glyphs[] = {{"\xC2\xBC", 0.25},      {"\xC2\xBD", 0.5},       {"\xC2\xBE", 0.75},
                                       {"\xE2\x85\x9B", 0.125}, {"\xE2\x85\x9C", 0.375}, {"\xE2\x85\x9D", 0.625},
                                       {"\xE2\x85\x9E", 0.875}};
    for (const Glyph& glyph : glyphs) {
        if (take(text, glyph.bytes)) {
            return glyph.value;
        }
    }
    return std::nullopt;
}

/// Digits, a slash (or U+2044) and digits: 1/4. Nothing is taken where the text is anything else.
std::optional<double> take_slash_fraction(std::string_view& text) {
    std::string_view rest = text;
    const std::size_t top = digits_from(rest, 0);
    if (top == 0) {
        return std::nullopt;
    }
    const double numerator = to_double(rest.substr(0, top));
    rest.remove_prefix(top);
    if (!take(rest, "/") && !take(rest, "\xE2\x81\x84")) {
        return std::nullopt;
    }
    const std::size_t bottom = digits_from(rest, 0);
    if (bottom == 0) {
        return std::nullopt;
    }
    const double denominator = to_double(rest.substr(0, bottom));
    rest.remove_prefix(bottom);
    text = rest;
    return numerator / denominator;
}

std::optional<double> take_fraction(std::string_view& text) {
    const auto glyph = take_vulgar_fraction(text);
    return glyph ? glyph : take_slash_fraction(text);
}

/// The fraction after a whole number: " 1/2", "-1/2", "½". Blanks and the dash are taken only with it.
double take_fraction_part(std::string_view& text) {
    std::string_view rest = text;
    while (take(rest, " ")) {
    }
    take(rest, "-");
    const auto fraction = take_fraction(rest);
    if (!fraction) {
        return 0;
    }
    text = rest;
    return *fraction;
}

}  // namespace

Result<ReadNumber> read_number(std::string_view text) {
    std::string_view rest = without_blanks(text);
    const double sign = take_sign(rest);
    auto value = take_fraction(rest);
    if (!value) {
        const std::string_view before = rest;
        value = take_decimal(rest);
        if (!value) {
            return bad_input(fmt::format("\"{}\" does not start with a number", text));
        }
        const std::string_view taken = before.substr(0, before.size() - rest.size());
        if (taken.find_first_not_of("0123456789") == std::string_view::npos) {
            *value += take_fraction_part(rest);
        }
    }
    if (!rest.empty() && rest.front() == ',') {
        return bad_input(fmt::format("\"{}\" has a comma; write the decimal point, like 12.5", text));
    }
    if (!std::isfinite(*value)) {
        return bad_input(fmt::format("\"{}\" is not a finite number", text));
    }
    return ReadNumber{sign * *value, without_blanks(rest)};
}

}  // namespace sillwalk::engine
