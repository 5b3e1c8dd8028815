#pragma once
/// Texts into HTML. Everything that is not ours goes through escaped().

#include <cstdint>
#include <string>
#include <string_view>

namespace sillwalk::office {

/// For text and for attributes in double quotes. Control characters and those that turn the writing direction are
/// shown as a mark, so that a name cannot pose as another.
[[nodiscard]] std::string escaped(std::string_view text);
/// "2026-11-25 18:03 UTC"
[[nodiscard]] std::string time_text(std::int64_t unix_ms);
/// The whole page: head, our look, header with the person's name (empty: nobody is logged in), `body`.
[[nodiscard]] std::string page_html(std::string_view title, std::string_view person, std::string_view body);
[[nodiscard]] std::string_view style_sheet();

}  // namespace sillwalk::office
