#include "app/office/html.hpp"
#include "app/office/http_server.hpp"
#include "app/office/qr.hpp"
#include "app/office/secret.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

using namespace sillwalk::office;

TEST_CASE("text becomes HTML without becoming markup", "[office]") {
    CHECK(escaped("<a href=\"x\" onload='y'>&") == "&lt;a href=&quot;x&quot; onload=&#39;y&#39;&gt;&amp;");
    CHECK(escaped("Ångström – 冷凍") == "Ångström – 冷凍");
    CHECK(escaped("a\u202eb\u2066c") == "a\uFFFDb\uFFFDc");
    CHECK(escaped(std::string_view("a\0b\x1b", 4)) == "a\uFFFDb\uFFFD");
    CHECK(escaped("\xe2\x80") == "\xe2\x80");
    CHECK(page_html("<t>", "<p>", "").find("<t>") == std::string::npos);
    CHECK(time_text(1'795'600'000'000) == "2026-11-25 09:46 UTC");  // date -u -d @1795600000
}

TEST_CASE("the header is read strictly", "[office]") {
    const HttpOptions options;
    const auto status = [&](const std::string& text) { return check_header(text, options).refuse_status; };
    const std::string get = "GET / HTTP/1.1\r\nHost: x\r\n";
    CHECK(status(get + "\r\n") == 0);
    CHECK(status(get + "Content-Length: 0\r\n\r\n") == 0);
    CHECK(status(get + "Transfer-Encoding: Chunked\r\n\r\n") == 0);
    CHECK(check_header(get + "Expect: 100-continue\r\n\r\n", options).expects_continue);
    CHECK(status(get + "Content-Length: 1\r\nContent-Length: 1\r\n\r\n") == 400);
    CHECK(status(get + "Content-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n") == 400);
    CHECK(status(get + "Content-Length: 1048577\r\n\r\n") == 413);
    CHECK(status(get + "Content-Length: 99999999999999999999999\r\n\r\n") == 413);
    CHECK(status(get + "Content-Length: 0x10\r\n\r\n") == 400);
    CHECK(status(get + "Content-Length: \r\n\r\n") == 400);
    CHECK(status(get + "Transfer-Encoding: chunked, chunked\r\n\r\n") == 501);
    CHECK(status(get + "Content-Encoding: gzip\r\n\r\n") == 415);
    CHECK(status(get + "X: a\r\n b\r\n\r\n") == 400);
    CHECK(status(get + "X : a\r\n\r\n") == 400);
    CHECK(status(get + ": a\r\n\r\n") == 400);
    CHECK(status("GET / HTTP/1.1\r\n\r\n") == 400);
    CHECK(status("GET / HTTP/1.1\r\nHost:\r\n\r\n") == 400);
    CHECK(status("GET / HTTP/1.0\r\nHost: x\r\n\r\n") == 505);
    CHECK(status("GET http://x/ HTTP/1.1\r\nHost: x\r\n\r\n") == 400);
    CHECK(status("GET  / HTTP/1.1\r\nHost: x\r\n\r\n") == 400);
    CHECK(status("GET /\r\nHost: x\r\n\r\n") == 400);
    CHECK(status("GET / HTTP/1.1\nHost: x\r\n\r\n") == 400);
}

TEST_CASE("secrets are long, different and survive being typed", "[office]") {
    std::set<std::string> seen;
    for (int i = 0; i < 1000; ++i) {
        seen.insert(new_token());
        seen.insert(new_code());
    }
    CHECK(seen.size() == 2000);
    CHECK(new_token().size() == 43);             // 256 bits in base64url
    CHECK(plain_code(new_code()).size() == 26);  // 5 bits each
    CHECK(plain_code(" ABCDE-fgh23 ") == "abcdefgh23");
}

TEST_CASE("a QR code is square, bordered and holds what a phone can read", "[office]") {
    // 64 bytes at level M need version 5: 37 modules (ISO/IEC 18004, table of capacities: version 4 takes 62, 5 takes
    // 84).
    const auto picture = qr_text(std::string(64, 'x'));
    REQUIRE(picture.has_value());
    const auto lines = std::count(picture->begin(), picture->end(), '\n');
    CHECK(lines == (37 + 2 * 4 + 1) / 2);
    CHECK_FALSE(qr_text(std::string(5000, 'x')).has_value());
}

TEST_CASE("no statement is put together from values", "[office]") {
    // Text of a statement joined with "+" may only be followed or preceded by these names, all of them constants.
    const std::set<std::string> constants{"device_columns", "revision_columns", "settled", "next_in_sequence"};
    const std::regex joined(R"re("[^"\n]*(SELECT|INSERT|UPDATE|DELETE)[^"\n]*"\s*\+\s*([a-z_]+))re");
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(SILLWALK_TEST_DATA) + "/../app/office")) {
        if (entry.path().extension() != ".cpp") continue;
        ++files;
        std::ifstream file(entry.path());
        std::ostringstream text;
        text << file.rdbuf();
        const std::string source = text.str();
        for (std::sregex_iterator found(source.begin(), source.end(), joined), end; found != end; ++found) {
            INFO(entry.path() << ": " << found->str());
            CHECK(constants.contains((*found)[2].str()));
        }
    }
    CHECK(files > 15);
}
