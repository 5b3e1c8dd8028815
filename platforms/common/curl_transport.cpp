#include "platforms/common/curl_transport.hpp"

#include "engine/base/contract.hpp"

#include <curl/curl.h>

#include <atomic>
#include <string_view>
#include <utility>

namespace sillwalk::platforms {

using app::WireFault;

namespace {

constexpr std::size_t greatest_answer = std::size_t{4} << 20;

/// curl_global_init() once a process, before any handle.
bool ready() {
    static const bool done = curl_global_init(CURL_GLOBAL_DEFAULT) == CURLE_OK;
    return done;
}

struct Received {
    app::WireResponse response;
    std::size_t bytes = 0;
};

/// Fewer bytes than given makes libcurl end the transfer.
std::size_t take(Received& received, std::size_t count) {
    received.bytes += count;
    return received.bytes <= greatest_answer ? count : 0;
}

std::size_t take_body(char* data, std::size_t, std::size_t count, void* user) {
    auto& received = *static_cast<Received*>(user);
    received.response.body.append(data, count);
    return take(received, count);
}

std::size_t take_header(char* data, std::size_t size, std::size_t count, void* user) {
    auto& received = *static_cast<Received*>(user);
    std::string_view line(data, size * count);
    if (line.starts_with("HTTP/")) received.response.headers.clear();  // those before were of an interim answer
    const auto colon = line.find(':');
    if (colon != std::string_view::npos) {
        std::string_view value = line.substr(colon + 1);
        while (!value.empty() && (value.front() == ' ' || value.front() == '\t')) value.remove_prefix(1);
        while (!value.empty() && static_cast<unsigned char>(value.back()) <= ' ') value.remove_suffix(1);
        received.response.headers.emplace_back(line.substr(0, colon), value);
    }
    return take(received, line.size());
}

/// Called by libcurl about once a second, and whenever something moves.
int go_on(void* user, curl_off_t, curl_off_t, curl_off_t, curl_off_t) {
    return static_cast<const std::atomic<bool>*>(user)->load() ? 1 : 0;
}

struct ListEnd {
    void operator()(curl_slist* list) const { curl_slist_free_all(list); }
};
using HeaderList = std::unique_ptr<curl_slist, ListEnd>;

HeaderList header_list(const app::WireRequest& request) {
    HeaderList list;
    const auto add = [&](const std::string& line) {
        curl_slist* longer = curl_slist_append(list.get(), line.c_str());
        EXPECT_CONTRACT(longer != nullptr);
        (void)list.release();
        list.reset(longer);
    };
    for (const auto& [name, value] : request.headers) add(name + ": " + value);
    add("Expect:");  // no waiting for an interim answer
    add("Accept: application/json, application/problem+json");
    return list;
}

WireFault fault_of(CURLcode code) {
    switch (code) {
        case CURLE_COULDNT_RESOLVE_HOST:
        case CURLE_COULDNT_RESOLVE_PROXY:
        case CURLE_COULDNT_CONNECT:
            return WireFault::unreachable;
        case CURLE_PEER_FAILED_VERIFICATION:
        case CURLE_SSL_PINNEDPUBKEYNOTMATCH:
        case CURLE_SSL_CACERT_BADFILE:
        case CURLE_SSL_CIPHER:
        case CURLE_SSL_ISSUER_ERROR:
            return WireFault::untrusted;
        default:
            return WireFault::broken;
    }
}

}  // namespace

struct CurlTransport::Impl {
    explicit Impl(CurlOptions wanted) : options(std::move(wanted)) {
        EXPECT_CONTRACT(ready());
        handle = curl_easy_init();
        EXPECT_CONTRACT(handle != nullptr);
    }
    ~Impl() { curl_easy_cleanup(handle); }
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;

    template <class Value>
    void set(CURLoption option, Value value) {
        const CURLcode code = curl_easy_setopt(handle, option, value);
        settled = settled && code == CURLE_OK;
    }

    void set_safety() {
        const bool plain = options.url.starts_with("http://");  // to this machine itself only: is_office_address()
        set(CURLOPT_PROTOCOLS_STR, plain ? "http" : "https");
        set(CURLOPT_FOLLOWLOCATION, 0L);
        set(CURLOPT_SSL_VERIFYPEER, 1L);
        set(CURLOPT_SSL_VERIFYHOST, 2L);
        set(CURLOPT_SSLVERSION, static_cast<long>(CURL_SSLVERSION_TLSv1_2));
        if (plain) set(CURLOPT_PROXY, "");
        if (!options.pin.empty()) set(CURLOPT_PINNEDPUBLICKEY, options.pin.c_str());
        if (!options.certificate.empty()) set(CURLOPT_CAINFO, options.certificate.c_str());
        set(CURLOPT_CONNECTTIMEOUT, options.connect_seconds);
        set(CURLOPT_LOW_SPEED_LIMIT, 1L);
        set(CURLOPT_LOW_SPEED_TIME, options.idle_seconds);
        set(CURLOPT_TIMEOUT, options.whole_seconds);
        set(CURLOPT_NOSIGNAL, 1L);
        set(CURLOPT_USERAGENT, "sillwalk/0.1");
    }

    void set_request(const app::WireRequest& request) {
        const std::string url = options.url + request.path;
        set(CURLOPT_URL, url.c_str());
        if (request.method == "HEAD") {
            set(CURLOPT_NOBODY, 1L);
        } else if (request.method != "GET") {
            set(CURLOPT_POSTFIELDSIZE_LARGE, static_cast<curl_off_t>(request.body.size()));
            set(CURLOPT_COPYPOSTFIELDS, request.body.data());
            set(CURLOPT_CUSTOMREQUEST, request.method.c_str());
        }
    }

    CurlOptions options;
    CURL* handle = nullptr;
    bool settled = true;
    std::atomic<bool> stopped = false;
};

CurlTransport::CurlTransport(CurlOptions options) : impl_(std::make_unique<Impl>(std::move(options))) {}
CurlTransport::~CurlTransport() = default;

app::WireResult CurlTransport::send(const app::WireRequest& request) {
    Impl& impl = *impl_;
    curl_easy_reset(impl.handle);  // keeps the connection
    impl.settled = true;
    Received received;
    const HeaderList headers = header_list(request);
    impl.set_safety();
    impl.set_request(request);
    impl.set(CURLOPT_HTTPHEADER, headers.get());
    impl.set(CURLOPT_WRITEFUNCTION, take_body);
    impl.set(CURLOPT_WRITEDATA, static_cast<void*>(&received));
    impl.set(CURLOPT_HEADERFUNCTION, take_header);
    impl.set(CURLOPT_HEADERDATA, static_cast<void*>(&received));
    impl.set(CURLOPT_NOPROGRESS, 0L);
    impl.set(CURLOPT_XFERINFOFUNCTION, go_on);
    impl.set(CURLOPT_XFERINFODATA, static_cast<void*>(&impl.stopped));
    if (!impl.settled) return tl::make_unexpected(WireFault::untrusted);  // never send with less than was asked for
    const CURLcode code = curl_easy_perform(impl.handle);
    if (code != CURLE_OK) return tl::make_unexpected(fault_of(code));
    long status = 0;
    curl_easy_getinfo(impl.handle, CURLINFO_RESPONSE_CODE, &status);
    received.response.status = static_cast<int>(status);
    return std::move(received.response);
}

void CurlTransport::stop() {
    impl_->stopped = true;
}

}  // namespace sillwalk::platforms
