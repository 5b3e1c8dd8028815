// The only file that knows Boost.Beast and Asio, which are slow to compile.

#include "app/office/http_server.hpp"

#include <boost/asio/connect.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/strand.hpp>
#include <boost/asio/thread_pool.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>

#include <atomic>
#include <thread>

namespace sillwalk::office {

namespace beast = boost::beast;
namespace http = boost::beast::http;
namespace net = boost::asio;
using tcp = net::ip::tcp;
using beast::error_code;

struct HttpServer::Inside {
    HttpOptions options;
    HttpHandler handler;
    net::io_context io{1};
    net::thread_pool handlers;
    tcp::acceptor acceptor{io};
    std::thread thread;
    std::atomic<std::size_t> connections{0};

    Inside(HttpOptions given, HttpHandler answer)
        : options(std::move(given)), handler(std::move(answer)), handlers(options.handler_threads) {}
    void accept();
};

namespace {

constexpr std::size_t read_chunk = 16u << 10;
constexpr std::size_t drain_bytes = 256u << 10;

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return out;
}

HttpRequest request_of(http::request<http::string_body>&& message) {
    HttpRequest out;
    out.method = std::string(message.method_string());
    const std::string_view target(message.target().data(), message.target().size());
    const auto mark = target.find('?');
    out.path = std::string(target.substr(0, mark));
    if (mark != std::string_view::npos) out.query = std::string(target.substr(mark + 1));
    for (const auto& field : message) {
        out.headers[lower(std::string_view(field.name_string().data(), field.name_string().size()))] =
            std::string(field.value());
    }
    out.body = std::move(message.body());
    return out;
}

template <class Body>
void set_head(http::response<Body>& message, const HttpResponse& answer, bool keep_alive) {
    message.version(11);
    message.result(static_cast<unsigned>(answer.status));
    for (const auto& [name, value] : answer.headers) message.set(name, value);
    message.keep_alive(keep_alive);
}

/// One connection. Its steps follow one another; nothing of it runs twice at a time.
class Session : public std::enable_shared_from_this<Session> {
public:
    Session(tcp::socket socket, HttpServer::Inside& inside)
        : stream_(std::move(socket)), inside_(inside), over_limit_(++inside.connections > inside.options.connections) {}
    ~Session() { --inside_.connections; }
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    void start() {
        if (over_limit_) return refuse(503, "busy", "too many connections", "later");
        raw_.clear();
        stream_.expires_after(inside_.options.header_time);
        read_header();
    }

private:
    void read_header() {
        const auto end = raw_.find("\r\n\r\n");
        if (end != std::string::npos) return on_header(end + 4);
        if (raw_.size() > inside_.options.header_bytes) return refuse(431, "too-large", "the header is too large");
        // A line end without its carriage return never becomes a header that we take: no reason to wait for more.
        for (auto at = raw_.find('\n'); at != std::string::npos; at = raw_.find('\n', at + 1)) {
            if (at == 0 || raw_[at - 1] != '\r') return refuse(400, "malformed", "a bare line end");
        }
        const auto had = raw_.size();
        raw_.resize(had + read_chunk);
        stream_.async_read_some(net::buffer(raw_.data() + had, read_chunk),
                                [self = shared_from_this(), had](error_code error, std::size_t count) {
                                    self->raw_.resize(had + count);
                                    if (error == beast::error::timeout && had > 0)
                                        return self->refuse(408, "timeout", "the header took too long", "later");
                                    if (error) return self->close();
                                    if (had == 0) self->stream_.expires_after(self->inside_.options.header_time);
                                    self->read_header();
                                });
    }

    void on_header(std::size_t size) {
        if (size > inside_.options.header_bytes) return refuse(431, "too-large", "the header is too large");
        const HeaderCheck check = check_header(std::string_view(raw_).substr(0, size), inside_.options);
        if (check.refuse_status != 0) return refuse(check.refuse_status, type_of(check.refuse_status), check.why);
        buffer_.clear();
        buffer_.commit(net::buffer_copy(buffer_.prepare(raw_.size()), net::buffer(raw_)));
        raw_.clear();
        parser_.emplace();
        parser_->body_limit(inside_.options.body_bytes);
        parser_->header_limit(static_cast<std::uint32_t>(inside_.options.header_bytes + 1024));
        stream_.expires_after(inside_.options.body_time);
        if (!check.expects_continue) return read_body();
        static constexpr std::string_view go_on = "HTTP/1.1 100 Continue\r\n\r\n";
        net::async_write(stream_, net::buffer(go_on), [self = shared_from_this()](error_code error, std::size_t) {
            if (error) return self->close();
            self->read_body();
        });
    }

    void read_body() {
        http::async_read(stream_, buffer_, *parser_, [self = shared_from_this()](error_code error, std::size_t) {
            if (error == http::error::body_limit) return self->refuse(413, "too-large", "the body is too large");
            if (error == beast::error::timeout) return self->refuse(408, "timeout", "the body took too long", "later");
            if (error == http::error::partial_message || error == net::error::connection_reset) return self->close();
            if (error) return self->refuse(400, "malformed", error.message());
            self->handle();
        });
    }

    void handle() {
        keep_alive_ = parser_->keep_alive();
        stream_.expires_never();
        auto request = std::make_shared<HttpRequest>(request_of(parser_->release()));
        raw_.assign(static_cast<const char*>(buffer_.data().data()), buffer_.size());
        buffer_.clear();
        net::post(inside_.handlers, [self = shared_from_this(), request] {
            auto answer = std::make_shared<HttpResponse>(self->inside_.handler(*request));
            const bool head_only = request->method == "HEAD";
            net::post(self->stream_.get_executor(), [self, answer, head_only] { self->answer(*answer, head_only); });
        });
    }

    void answer(const HttpResponse& answer, bool head_only) {
        if (!answer.file.empty() && !head_only) return answer_file(answer);
        auto message = std::make_shared<http::response<http::string_body>>();
        set_head(*message, answer, keep_alive_);
        if (!head_only) message->body() = answer.body;
        if (answer.status != 204) message->content_length(answer.body.size());
        send(message);
    }

    void answer_file(const HttpResponse& answer) {
        auto message = std::make_shared<http::response<http::file_body>>();
        set_head(*message, answer, keep_alive_);
        error_code error;
        message->body().open(answer.file.c_str(), beast::file_mode::scan, error);
        if (error) return refuse(503, "busy", "the file cannot be read now", "later");
        message->prepare_payload();
        send(message);
    }

    template <class Message>
    void send(const std::shared_ptr<Message>& message) {
        stream_.expires_after(inside_.options.body_time);
        http::async_write(stream_, *message, [self = shared_from_this(), message](error_code error, std::size_t) {
            if (error) return self->close();
            if (!self->keep_alive_) return self->drain();
            self->stream_.expires_after(self->inside_.options.idle_time);
            self->read_header();
        });
    }

    void refuse(int status, std::string_view type, std::string_view detail, std::string_view retry = "never") {
        keep_alive_ = false;
        HttpResponse refused = problem(status, type, "The request cannot be taken", detail, retry);
        if (status == 503) refused.headers.emplace_back("Retry-After", "5");
        answer(refused, false);
    }

    static std::string_view type_of(int status) {
        return status == 413 || status == 431 ? "too-large" : status == 415 ? "unsupported-encoding" : "malformed";
    }

    /// Reads a little of what the client still sends, so that it sees the answer before the connection ends.
    void drain() {
        error_code ignored;
        stream_.socket().shutdown(tcp::socket::shutdown_send, ignored);
        stream_.expires_after(std::chrono::seconds(2));
        drain_more(0);
    }
    void drain_more(std::size_t had) {
        raw_.resize(read_chunk);
        stream_.async_read_some(net::buffer(raw_),
                                [self = shared_from_this(), had](error_code error, std::size_t count) {
                                    if (error || had + count > drain_bytes) return self->close();
                                    self->drain_more(had + count);
                                });
    }

    void close() {
        error_code ignored;
        stream_.socket().close(ignored);
    }

    beast::tcp_stream stream_;
    HttpServer::Inside& inside_;
    beast::flat_buffer buffer_{64u << 10};
    std::optional<http::request_parser<http::string_body>> parser_;
    std::string raw_;
    bool keep_alive_ = false, over_limit_ = false;
};

}  // namespace

void HttpServer::Inside::accept() {
    acceptor.async_accept([this](error_code error, tcp::socket socket) {
        if (error == net::error::operation_aborted || !acceptor.is_open()) return;
        if (!error) std::make_shared<Session>(std::move(socket), *this)->start();
        accept();
    });
}

HttpServer::HttpServer(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}

HttpServer::~HttpServer() {
    net::post(inside_->io, [inside = inside_.get()] {
        error_code ignored;
        inside->acceptor.close(ignored);
    });
    inside_->handlers.join();
    inside_->io.stop();
    inside_->thread.join();
}

std::uint16_t HttpServer::port() const {
    error_code ignored;
    return inside_->acceptor.local_endpoint(ignored).port();
}

engine::Result<std::unique_ptr<HttpServer>> HttpServer::start(const HttpOptions& options, HttpHandler handler) {
    auto inside = std::make_unique<Inside>(options, std::move(handler));
    error_code error;
    const auto address = net::ip::make_address(options.address, error);
    const tcp::endpoint endpoint(address, options.port);
    if (!error) inside->acceptor.open(endpoint.protocol(), error);
    if (!error) inside->acceptor.set_option(tcp::acceptor::reuse_address(true), error);
    if (!error) inside->acceptor.bind(endpoint, error);
    if (!error) inside->acceptor.listen(net::socket_base::max_listen_connections, error);
    if (error) return engine::fail(engine::ErrorCode::transport, error.message(), options.address);
    inside->accept();
    inside->thread = std::thread([io = &inside->io] { io->run(); });
    return std::unique_ptr<HttpServer>(new HttpServer(std::move(inside)));
}

void HttpServer::wait_for_signal() {
    net::io_context waiting;
    net::signal_set signals(waiting, SIGINT, SIGTERM);
    signals.async_wait([](error_code, int) {});
    waiting.run();
}

engine::Result<HttpResponse> http_request_here(std::uint16_t port, const HttpRequest& request) {
    net::io_context io;
    beast::tcp_stream stream(io);
    error_code error;
    stream.connect(tcp::endpoint(net::ip::address_v4::loopback(), port), error);
    http::request<http::string_body> message;
    message.version(11);
    message.method_string(request.method);
    message.target(request.path);
    message.set(http::field::host, "localhost");
    for (const auto& [name, value] : request.headers) message.set(name, value);
    message.body() = request.body;
    message.prepare_payload();
    message.keep_alive(false);
    if (!error) http::write(stream, message, error);
    beast::flat_buffer buffer;
    http::response_parser<http::string_body> parser;
    parser.body_limit(std::uint64_t{64} << 20);
    if (!error) http::read(stream, buffer, parser, error);
    if (error) return engine::fail(engine::ErrorCode::transport, error.message(), "the office that is being served");
    return HttpResponse{static_cast<int>(parser.get().result_int()), {}, std::move(parser.get().body()), {}};
}

}  // namespace sillwalk::office
