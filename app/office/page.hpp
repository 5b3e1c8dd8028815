#pragma once
/// The office's page: visits with their state, one visit with advice, readings, photos and forks. Read-only. A person
/// logs in with a code of their own (`sillwalk-office person NAME`).

#include "app/office/http.hpp"
#include "app/office/store.hpp"

namespace sillwalk::office {

class Page {
public:
    explicit Page(Store& store) : store_(store) {}
    [[nodiscard]] HttpResponse handle(const HttpRequest& request);

private:
    [[nodiscard]] HttpResponse log_in(const HttpRequest& request);
    [[nodiscard]] HttpResponse with_person(const HttpRequest& request, const Person& person);
    [[nodiscard]] HttpResponse visits(const Person& person);
    [[nodiscard]] HttpResponse visit(const std::string& survey_id, const Person& person);
    [[nodiscard]] HttpResponse revision(const std::string& digest, const Person& person);
    [[nodiscard]] HttpResponse file(const std::string& digest, bool download);
    [[nodiscard]] HttpResponse envelope(const std::string& digest);

    Store& store_;
    std::mutex tries_mutex_;
    std::int64_t tries_minute_ = 0;
    int failed_tries_ = 0;
};

/// The advice and the readings of a revision as HTML (page_revision.cpp). Everything in it is escaped.
[[nodiscard]] std::string revision_html(const Json& revision);
/// Photos and papers with what is still missing.
[[nodiscard]] std::string blobs_html(const std::vector<BlobRow>& blobs);

}  // namespace sillwalk::office
