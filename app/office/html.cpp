#include "app/office/html.hpp"

#include <fmt/format.h>

#include <array>
#include <ctime>

namespace sillwalk::office {

namespace {

/// U+202A–U+202E and U+2066–U+2069 in UTF-8: they turn the direction of what follows.
bool turns_direction(std::string_view text) {
    if (text.size() < 3 || text[0] != '\xe2') return false;
    const auto second = static_cast<unsigned char>(text[1]), third = static_cast<unsigned char>(text[2]);
    return (second == 0x80 && third >= 0xaa && third <= 0xae) || (second == 0x81 && third >= 0xa6 && third <= 0xa9);
}

}  // namespace

std::string escaped(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (turns_direction(text.substr(i))) {
            out += "\xef\xbf\xbd";
            i += 2;
        } else if (c == '&') {
            out += "&amp;";
        } else if (c == '<') {
            out += "&lt;";
        } else if (c == '>') {
            out += "&gt;";
        } else if (c == '"') {
            out += "&quot;";
        } else if (c == '\'') {
            out += "&#39;";
        } else if ((static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7f) {
            out += "\xef\xbf\xbd";
        } else {
            out += c;
        }
    }
    return out;
}

std::string time_text(std::int64_t unix_ms) {
    const std::time_t seconds = static_cast<std::time_t>(unix_ms / 1000);
    std::tm parts{};
    std::array<char, 32> text{};
    if (::gmtime_r(&seconds, &parts) == nullptr) return "";
    const auto size = std::strftime(text.data(), text.size(), "%Y-%m-%d %H:%M UTC", &parts);
    return {text.data(), size};
}

std::string page_html(std::string_view title, std::string_view person, std::string_view body) {
    std::string who;
    if (!person.empty()) {
        who = fmt::format("<form method=\"post\" action=\"/logout\"><span>{}</span> <button>Log out</button></form>",
                          escaped(person));
    }
    return fmt::format(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
        "content=\"width=device-width, initial-scale=1\"><title>{0} – Sillwalk</title><link rel=\"stylesheet\" "
        "href=\"/style.css\"></head><body><header><a href=\"/\">Sillwalk office</a>{1}</header><main><h1>{0}</h1>{2}"
        "</main></body></html>\n",
        escaped(title), who, body);
}

std::string_view style_sheet() {
    return R"(:root{--ground:#f3f5f7;--surface:#fff;--text:#12171c;--soft:#3f4a55;--line:#d3dae0;--primary:#00528f;
--fits:#00624a;--tight:#7a4300;--fails:#8c2300;--unknown:#4a5560}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--text);font:17px/1.45 Roboto,system-ui,sans-serif;overflow-wrap:anywhere}
header{display:flex;flex-wrap:wrap;gap:12px;justify-content:space-between;align-items:center;padding:12px 16px;background:var(--surface);border-bottom:1px solid var(--line)}
header a{font-weight:700;text-decoration:none}
main{max-width:960px;margin:0 auto;padding:8px 16px 48px}
h1{font-size:26px;line-height:1.2}h2{font-size:20px;margin-top:32px}h3{font-size:17px;margin:16px 0 4px}
a{color:var(--primary)}
.card{display:block;background:var(--surface);border:1px solid var(--line);border-radius:12px;padding:14px 16px;margin:12px 0;color:inherit;text-decoration:none}
a.card{min-height:56px}a.card:hover,a.card:focus{border-color:var(--primary);outline:2px solid var(--primary)}
.soft{color:var(--soft);font-size:15px}
.mark{display:inline-block;border:2px solid;border-radius:8px;padding:1px 10px;font-weight:700;font-size:15px;overflow-wrap:normal}
.fits{color:var(--fits)}.tight{color:var(--tight)}.fails{color:#fff;background:var(--fails);border-color:var(--fails)}.unknown{color:var(--unknown)}
ul{margin:0 0 12px;padding-left:20px}
table{border-collapse:collapse;width:100%}td,th{text-align:left;vertical-align:top;padding:6px 8px 6px 0;border-bottom:1px solid var(--line)}th{font-weight:500;width:34%}
.photos{display:flex;flex-wrap:wrap;gap:12px}.photos img{max-width:100%;width:280px;border-radius:8px;background:#e3e7eb}
input,button,.button{font:inherit;min-height:48px;padding:8px 16px;border-radius:10px;border:1px solid #66737f;background:var(--surface);color:inherit}
button,.button{background:var(--primary);border-color:var(--primary);color:#fff;text-decoration:none;display:inline-block}
.caution{border-left:6px solid var(--tight);padding-left:12px}
code{font-size:14px}
)";
}

}  // namespace sillwalk::office
