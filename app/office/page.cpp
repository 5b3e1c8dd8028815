#include "app/office/page.hpp"

#include "app/bundle/uuid.hpp"
#include "app/office/html.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::office {

namespace {

constexpr int tries_a_minute = 10;
constexpr const char* cookie_name = "sillwalk_login";

/// Nothing but our own style sheet, pictures and forms; no script at all.
constexpr const char* content_policy =
    "default-src 'none'; style-src 'self'; img-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

HttpResponse html(int status, std::string body) {
    return {status,
            {{"Content-Type", "text/html; charset=utf-8"},
             {"Content-Security-Policy", content_policy},
             {"X-Content-Type-Options", "nosniff"},
             {"Referrer-Policy", "no-referrer"},
             {"Cache-Control", "no-store"}},
            std::move(body),
            {}};
}

HttpResponse to(const char* address) {
    HttpResponse out = html(303, "");
    out.headers.emplace_back("Location", address);
    return out;
}

HttpResponse missing(const std::string& person) {
    return html(404, page_html("Not here", person, "<p>There is nothing under this address.</p>"));
}
HttpResponse broken(const std::string& person) {
    return html(503, page_html("Not now", person, "<p>The office's storage does not answer. Try again soon.</p>"));
}
HttpResponse failed_page(const engine::Error& error, const std::string& person) {
    return error.code == engine::ErrorCode::not_found ? missing(person) : broken(person);
}

std::string login_form(std::string_view remark) {
    return page_html(
        "Log in", "",
        fmt::format("<p>{}</p><form method=\"post\" action=\"/login\"><p><label for=\"code\">Your code</label></p>"
                    "<p><input id=\"code\" name=\"code\" autocomplete=\"current-password\" autofocus required "
                    "maxlength=\"64\"></p><p><button>Log in</button></p></form>",
                    escaped(remark)));
}

std::string cookie_of(const HttpRequest& request) {
    std::string_view rest = request.header("cookie");
    const std::string start = std::string(cookie_name) + "=";
    while (!rest.empty()) {
        while (rest.starts_with(' ')) rest.remove_prefix(1);
        const auto end = std::min(rest.find(';'), rest.size());
        if (rest.starts_with(start)) return std::string(rest.substr(start.size(), end - start.size()));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return "";
}

/// Over TLS the browser must never send the login without it. nginx says which it was and nobody else can.
std::string cookie_text(const HttpRequest& request, const std::string& value, std::int64_t seconds) {
    return fmt::format("{}={}; Path=/; Max-Age={}; HttpOnly; SameSite=Strict{}", cookie_name, value, seconds,
                       request.header("x-forwarded-proto") == "https" ? "; Secure" : "");
}

std::string state_html(const SurveyRow& row) {
    if (row.heads.size() > 1)
        return fmt::format("<span class=\"mark tight\">{} states, not merged</span>", row.heads.size());
    if (row.missing_blobs > 0)
        return fmt::format("<span class=\"mark unknown\">{} {} on the way</span>", row.missing_blobs,
                           row.missing_blobs == 1 ? "photo" : "photos");
    return "<span class=\"mark fits\">Complete</span>";
}

std::string revision_card(const RevisionRow& row, bool is_head) {
    const Json author = row.revision.value("author", Json::object());
    return fmt::format(
        "<a class=\"card\" href=\"/revision/{0}\"><strong>{1}</strong> {2}<br><span class=\"soft\">Arrived "
        "{3} · {4} · <code>{5}</code></span></a>",
        row.digest, escaped(author.value("name", "")), is_head ? "<span class=\"mark fits\">Newest</span>" : "",
        time_text(row.received_ms), author.value("role", "") == "office" ? "Office" : "Visit",
        row.digest.substr(0, 12));
}

}  // namespace

HttpResponse Page::handle(const HttpRequest& request) {
    if (request.path == "/style.css") {
        return {200,
                {{"Content-Type", "text/css; charset=utf-8"},
                 {"Cache-Control", "max-age=3600"},
                 {"X-Content-Type-Options", "nosniff"}},
                std::string(style_sheet()),
                {}};
    }
    if (request.path == "/favicon.ico") return {204, {{"Cache-Control", "max-age=86400"}}, {}, {}};
    if (request.path == "/login" && request.method == "POST") return log_in(request);
    const std::string login = cookie_of(request);
    const auto person =
        login.empty() ? Result<Person>(engine::fail(engine::ErrorCode::not_found, "", "")) : store_.logged_in(login);
    if (!person && person.error().code != engine::ErrorCode::not_found) return broken("");
    if (!person) return html(request.path == "/" ? 200 : 401, login_form("The office gave you a code of your own."));
    if (request.path == "/logout" && request.method == "POST") {
        if (auto gone = store_.log_out(login); !gone) return broken(person->name);
        HttpResponse out = to("/");
        out.headers.emplace_back("Set-Cookie", cookie_text(request, "", 0));
        return out;
    }
    if (request.method != "GET")
        return html(405, page_html("Not possible", person->name, "<p>This page only shows.</p>"));
    return with_person(request, *person);
}

HttpResponse Page::log_in(const HttpRequest& request) {
    const std::int64_t minute = store_.now_ms() / minute_ms;
    const std::lock_guard lock(tries_mutex_);
    if (tries_minute_ != minute) failed_tries_ = 0;
    tries_minute_ = minute;
    if (failed_tries_ >= tries_a_minute) {
        HttpResponse out = html(429, login_form("Too many wrong codes. Wait a minute."));
        out.headers.emplace_back("Retry-After", "60");
        return out;
    }
    constexpr std::string_view field = "code=";
    const std::string_view body = request.body;
    const auto login = body.starts_with(field) && body.size() <= 200
                           ? store_.log_in(std::string(body.substr(field.size())))
                           : Result<std::string>(engine::fail(engine::ErrorCode::not_found, "", ""));
    if (!login && login.error().code != engine::ErrorCode::not_found) return broken("");
    if (!login) {
        ++failed_tries_;
        return html(401, login_form("This code does not work."));
    }
    HttpResponse out = to("/");
    out.headers.emplace_back("Set-Cookie", cookie_text(request, *login, login_lifetime_ms / 1000));
    return out;
}

HttpResponse Page::with_person(const HttpRequest& request, const Person& person) {
    if (request.path == "/") return visits(person);
    const std::string_view path = request.path;
    const auto slash = path.find('/', 1);
    if (slash == std::string_view::npos) return missing(person.name);
    const std::string_view kind = path.substr(1, slash - 1);
    const std::string name(path.substr(slash + 1));
    if (kind == "visit" && app::is_uuid(name)) return visit(name, person);
    if (!app::digest_from_hex(name)) return missing(person.name);
    if (kind == "revision") return revision(name, person);
    if (kind == "photo") return file(name, false);
    if (kind == "download") return file(name, true);
    if (kind == "envelope") return envelope(name);
    return missing(person.name);
}

HttpResponse Page::visits(const Person& person) {
    const auto rows = store_.surveys();
    if (!rows) return failed_page(rows.error(), person.name);
    std::string body;
    for (const SurveyRow& row : *rows) {
        body += fmt::format(
            "<a class=\"card\" href=\"/visit/{}\"><strong>{}</strong> {}<br><span class=\"soft\">Last "
            "arrival {} · {} {}</span></a>",
            row.id, escaped(row.title.empty() ? row.id : row.title), state_html(row), time_text(row.received_ms),
            row.revisions, row.revisions == 1 ? "revision" : "revisions");
    }
    return html(200, page_html("Visits", person.name, body.empty() ? "<p>No visit has arrived yet.</p>" : body));
}

HttpResponse Page::visit(const std::string& survey_id, const Person& person) {
    const auto rows = store_.history(survey_id);
    if (!rows) return failed_page(rows.error(), person.name);
    const auto heads = store_.heads(survey_id);
    if (!heads) return failed_page(heads.error(), person.name);
    std::string body;
    if (heads->size() > 1) {
        body += fmt::format(
            "<p class=\"caution\">Two or more states of this visit stand side by side. Nothing is lost. "
            "Merge them on the office's machine: <code>sillwalk-office merge {}</code></p>",
            survey_id);
    }
    for (auto row = rows->rbegin(); row != rows->rend(); ++row)
        body += revision_card(*row, std::find(heads->begin(), heads->end(), row->digest) != heads->end());
    const std::string title = rows->empty() ? "" : title_of(rows->back().revision);
    return html(200, page_html(title.empty() ? "Visit" : title, person.name, body));
}

HttpResponse Page::revision(const std::string& digest, const Person& person) {
    const auto row = store_.revision(digest);
    if (!row) return failed_page(row.error(), person.name);
    const auto blobs = store_.blobs_of(digest);
    if (!blobs) return failed_page(blobs.error(), person.name);
    std::string body = fmt::format(
        "<p class=\"soft\">Arrived {} · <a href=\"/visit/{}\">all revisions of this visit</a> · "
        "<code>{}</code></p><p><a class=\"button\" href=\"/envelope/{}\">Download the "
        "revision</a></p>",
        time_text(row->received_ms), row->survey_id, digest, digest);
    body += revision_html(row->revision) + blobs_html(*blobs);
    const std::string title = title_of(row->revision);
    return html(200, page_html(title.empty() ? "Visit" : title, person.name, body));
}

HttpResponse Page::file(const std::string& digest, bool download) {
    const auto row = store_.blob(digest);
    if (!row) return failed_page(row.error(), "");
    const bool picture = row->media.starts_with("image/") && !download;
    return {200,
            {{"Content-Type", row->media},
             {"Content-Disposition", picture ? "inline"
                                             : "attachment; filename=\"" + digest.substr(0, 16) +
                                                   (row->media == "application/pdf" ? ".pdf\"" : "\"")},
             {"Content-Security-Policy", "default-src 'none'; sandbox"},
             {"X-Content-Type-Options", "nosniff"},
             {"Cache-Control", "private, max-age=3600"}},
            {},
            store_.blobs().path(*app::digest_from_hex(digest))};
}

HttpResponse Page::envelope(const std::string& digest) {
    const auto row = store_.revision(digest);
    if (!row) return failed_page(row.error(), "");
    return {200,
            {{"Content-Type", "application/json"},
             {"Content-Disposition", "attachment; filename=\"" + digest.substr(0, 16) + ".json\""},
             {"Content-Security-Policy", "default-src 'none'; sandbox"},
             {"X-Content-Type-Options", "nosniff"},
             {"Cache-Control", "no-store"}},
            app::canonical_json({{"format", app::envelope_format}, {"rev", row->revision}, {"sig", row->signatures}}) +
                "\n",
            {}};
}

}  // namespace sillwalk::office
