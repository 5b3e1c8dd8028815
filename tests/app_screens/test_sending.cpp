// Sending from the app's own screens, by touches, against an office in memory.
#include "app/photo/jpeg.hpp"
#include "app/storage/outbox.hpp"
#include "app/storage/schema.hpp"
#include "tests/app_photo/camera.hpp"
#include "tests/app_screens/screen_checks.hpp"

#include <atomic>
#include <chrono>
#include <filesystem>
#include <thread>

using namespace sillwalk;
using test::AppHost;
using Way = test::FakeOffice::Way;

namespace {

const std::string qr_text(const AppHost& host) {
    return "sillwalk:enrol?url=https://office.example&code=" + host.office.code +
           "&key=" + app::to_hex(app::byte_view(host.office.key.public_key));
}

/// From the overview to an enrolled tablet, with the whole text of the QR code pasted.
void enrol(AppHost& host) {
    host.clipboard = qr_text(host);
    host.run(
        "tap nav.overview\ntap overview.office\nexpect office.phase contains \"not enrolled\"\n"
        "tap office.paste\nexpect office.address contains \"https://office.example\"\n"
        "type office.name \"Tablet 3\"\ntap office.enrol\n"
        "expect office.where is \"https://office.example\"\nexpect office.phase contains \"Everything\"\n");
    CHECK(host.office.device_name == "Tablet 3");
}

void send(AppHost& host) {
    host.run(
        "tap nav.hand_over\ntap hand_over.send\nexpect send.what contains \"Quillwater\"\n"
        "expect send.where contains \"https://office.example\"\ntap send.send\n");
}

void add_photo(AppHost& host) {
    const auto jpeg = app::encode_jpeg(test::four_quarters(640, 480), 90);
    REQUIRE(jpeg);
    host.put_photo("sill.jpg", *jpeg);
    host.run("tap nav.overview\ntap overview.evidence\ntap evidence.add\ntap evidence.file.1\ntap photo_files.close\n");
}

app::DeliveryState state_of(AppHost& host) {
    const app::AppModel& model = host.shell().model();
    const app::VisitLine* line = app::find_visit(model, model.visit->id.text());
    REQUIRE(line);
    return line->delivery;
}

}  // namespace

TEST_CASE("a tablet is enrolled and a visit with its photo sent by touch alone", "[journey][sending]") {
    AppHost host;
    host.run("tap nav.hand_over\nexpect hand_over.delivery contains \"Not sent yet\"\n");
    add_photo(host);
    enrol(host);
    host.run("tap nav.hand_over\ntap hand_over.send\nexpect send.what contains \"1 photo\"\n");
    host.run("expect send.what contains \"MB\"\nclear send.author\ntype send.author \"A. Vik\"\ntap send.not_now\n");
    CHECK(host.office.revisions.empty());
    send(host);
    host.run("expect hand_over.delivery contains \"At the office\"\n");
    REQUIRE(host.office.revisions.size() == 1);
    CHECK(host.office.blobs.size() == 1);
    const auto envelope = app::read_envelope(host.office.revisions.begin()->second);
    REQUIRE(envelope);
    CHECK(envelope->revision.at("author").at("name") == "A. Vik");
    CHECK(envelope->revision.at("advice").contains("carts"));
    // A change makes it unsent; sending again builds on what the office has.
    host.run(
        "tap nav.route\ntap route.crossing.freezer-door\ntap reading.crossing_rise\ntap sheet.key.6\n"
        "tap sheet.done\ntap nav.hand_over\nexpect hand_over.delivery contains \"Not sent yet\"\n");
    host.office.forked = true;  // another tablet changed the visit meanwhile
    send(host);
    host.run("expect hand_over.delivery contains \"Two versions at the office\"\n");
    CHECK(host.office.revisions.size() == 2);
    CHECK(host.office.blobs.size() == 1);
    // The office, the author and the state outlive a restart.
    host.run(
        "restart\ntap nav.hand_over\nexpect hand_over.delivery contains \"Two versions at the office\"\n"
        "tap hand_over.send\nexpect send.author contains \"A. Vik\"\n");
}

TEST_CASE("on a phone: the code typed by hand, the visit sent, seen in the list", "[journey][sending]") {
    AppHost host(412, 915);
    host.run(
        "tap nav.answer\ntap answer.open.hand_over\ntap hand_over.send\nexpect send.where contains \"not enrolled\"\n"
        "expect-not send.send shown\ntap send.enrol\n"
        "type office.address \"office.example/\"\ntype office.code \"code\"\ntap office.enrol\n"
        "expect office.where is \"https://office.example\"\ntap top.back\ntap hand_over.send\ntap send.send\n"
        "expect hand_over.delivery contains \"At the office\"\ntap nav.overview\ntap overview.visits\n"
        "expect visit.1 contains \"At the office\"\nexpect visits.office contains \"Everything\"\n");
    CHECK(host.office.revisions.size() == 1);
    CHECK(host.office.device_name == "sillwalk");  // an office takes no tablet without a name
}

TEST_CASE("no network: it waits, says so, and goes out once the network is back", "[journey][sending]") {
    AppHost host;
    enrol(host);
    host.office.network = [](const app::WireRequest&) { return Way::lose_request; };
    send(host);
    host.run(
        "wait 1\ntap nav.overview\nexpect overview.office contains \"On its way\"\ntap overview.office\n"
        "expect office.phase contains \"cut off\"\nexpect office.visit.1 contains \"On its way\"\n");
    const std::size_t tried = host.office.seen.size();
    host.run("wait 10\n");
    CHECK(host.office.seen.size() - tried <= 10);  // at most one try a second
    host.office.network = [](const app::WireRequest&) { return Way::pass; };
    host.run("tap office.try\nexpect office.phase contains \"Everything\"\nexpect-not office.visit.1 shown\n");
    CHECK(host.office.revisions.size() == 1);
    CHECK(state_of(host) == app::DeliveryState::at_office);
}

TEST_CASE("what the office refuses needs attention, says why, and goes again or into a file", "[journey][sending]") {
    AppHost host;
    enrol(host);
    host.office.instead.push_back(app::WireResponse{403, {}, "{}"});
    send(host);
    host.run(
        "expect hand_over.delivery contains \"Needs attention. The office says that another tablet made this.\"\n"
        "tap nav.overview\ntap overview.office\nexpect office.visit.1 contains \"another tablet\"\n"
        "expect office.phase contains \"1 thing needs attention\"\ntap office.hand_off\n"
        "expect office.written contains \"MB, versions: 1, photos: 0\"\n");
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(host.hand_off_folder())) {
        CHECK(entry.path().extension() == ".ndjson");
        ++files;
    }
    CHECK(files == 1);
    host.run("tap office.try\nexpect office.phase contains \"Everything\"\n");
    CHECK(host.office.revisions.size() == 1);
    // Sent again though nothing has changed: nothing arrives twice.
    send(host);
    CHECK(host.office.revisions.size() == 1);
}

TEST_CASE("a lost right to send asks for a new code and loses nothing", "[journey][sending]") {
    AppHost host;
    enrol(host);
    host.office.token = "another";
    send(host);
    host.run(
        "tap nav.overview\nexpect overview.office contains \"Enrol this tablet again\"\ntap overview.office\n"
        "expect office.phase contains \"no longer lets this tablet in\"\n");
    host.office.code = "second";
    host.run("type office.code \"second\"\ntap office.enrol\nexpect office.phase contains \"Everything\"\n");
    CHECK(host.office.revisions.size() == 1);
}

TEST_CASE("bad input for an office is told in one sentence, and what was typed stays", "[journey][sending]") {
    AppHost host;
    host.run(
        "tap nav.setup\ntap setup.office\n"
        "type office.address \"http://office.example\"\ntype office.code \"wrong\"\ntap office.enrol\n"
        "expect office.fault contains \"“http://office.example” is no address of an office\"\n"
        "clear office.address\ntype office.address \"https://nowhere.example\"\ntap office.enrol\n"
        "expect office.fault contains \"Nobody answers at https://nowhere.example\"\n"
        "clear office.address\ntype office.address \"https://office.example\"\ntap office.enrol\n"
        "expect office.fault contains \"does not take the code\"\nexpect office.code contains \"wrong\"\n");
    host.office.instead.push_back(tl::make_unexpected(app::WireFault::untrusted));
    host.run("tap office.enrol\nexpect office.fault contains \"certificate of https://office.example\"\n");
    host.office.instead.push_back(app::WireResponse{200, {}, "<html>"});
    host.run("tap office.enrol\nexpect office.fault contains \"is no office\"\n");
    host.clipboard = "sillwalk:enrol?url=https://office.example&code=code&key=" + std::string(64, '0');
    host.run("tap office.paste\ntap office.enrol\nexpect office.fault contains \"another office\"\n");
    host.run("tap office.hand_off\nexpect office.hand_off_fault contains \"Nothing was sealed yet\"\n");
    CHECK(host.office.device_name.empty());
}

TEST_CASE("a visit that the office has whole is erased from the tablet, and only such a one", "[journey][sending]") {
    AppHost host;
    add_photo(host);
    enrol(host);
    host.run("tap nav.overview\ntap overview.about\nexpect-not about.erase shown\n");
    send(host);
    host.run(
        "tap nav.overview\ntap overview.about\ntap about.erase\nexpect erase.what contains \"1 photo\"\n"
        "tap erase.not_now\nexpect top.title contains \"This visit\"\ntap about.erase\ntap erase.erase\n"
        "expect top.title contains \"Visits\"\nexpect toast contains \"Erased\"\nexpect-not visit.1 shown\n");
    CHECK(host.shell().model().visits.empty());
    CHECK(host.office.revisions.size() == 1);
}

TEST_CASE("without an office the visit goes into a file, and waits for one", "[journey][sending]") {
    AppHost host;
    host.run(
        "tap nav.hand_over\ntap hand_over.send\ntap send.file\nexpect hand_over.delivery contains \"Waits\"\nwait 9\n"
        "tap nav.overview\ntap overview.office\nexpect office.written contains \"versions: 1\"\n");
    enrol(host);
    CHECK(host.office.revisions.size() == 1);
}

TEST_CASE("the office's connection is cut off when the program ends, and a seal does not wait for it",
          "[sending][worker]") {
    /// Answers nothing until it is stopped: a network that lost the way back.
    struct Hanging : app::Transport {
        std::atomic<bool>& asked;
        std::atomic<bool> stopped = false;
        explicit Hanging(std::atomic<bool>& flag) : asked(flag) {}
        app::WireResult send(const app::WireRequest&) override {
            asked = true;
            while (!stopped) std::this_thread::sleep_for(std::chrono::milliseconds(2));
            return tl::make_unexpected(app::WireFault::broken);
        }
        void stop() override { stopped = true; }
    };
    const test::Scratch scratch;
    const auto data = test::shared_data();
    app::ShellOptions setup;
    setup.database = scratch.file("visits.db");
    setup.demo = true;
    setup.threads = false;
    setup.services.utc_ms = [] { return std::int64_t{1795600000000}; };
    std::string visit;
    {
        auto shell = app::Shell::open(data, setup);
        REQUIRE(shell);
        visit = (*shell)->model().visit->id.text();
    }
    auto writer = app::Writer::open(scratch.file("visits.db"), {});
    REQUIRE(writer);
    test::FakeOffice office;
    (*writer)->with_database([&](app::Database& database) {
        REQUIRE(app::store_office(database, {"https://office.example", "018f3c1a-0000-7000-8000-00000000dddd", "token",
                                             std::int64_t{1} << 52, office.key_id, office.key.public_key, ""}));
    });
    std::atomic<bool> asked = false;
    app::SendWorkerOptions options;
    options.transport = [&](const std::string&, const std::string&) { return std::make_unique<Hanging>(asked); };
    options.utc_ms = setup.services.utc_ms;
    options.steady_ms = [] {
        return std::chrono::duration_cast<std::chrono::milliseconds>(
                   std::chrono::steady_clock::now().time_since_epoch())
            .count();
    };
    options.hand_off_folder = scratch.file("handed");
    app::SendWorker worker(data, **writer, options);
    const auto wait_for = [&](auto found) {
        const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(60);
        while (std::chrono::steady_clock::now() < end) {
            for (const app::Action& one : worker.take()) {
                const auto* news = std::get_if<app::SendAction>(&one);
                if (news && found(*news)) return true;
            }
            std::this_thread::sleep_for(std::chrono::milliseconds(2));
        }
        return false;
    };
    worker.submit(app::OrderSeal{visit, "A. Vik", false});
    CHECK(wait_for([](const app::SendAction& one) { return std::holds_alternative<app::VisitSealed>(one); }));
    while (!asked) std::this_thread::sleep_for(std::chrono::milliseconds(2));
    // The line hangs; a file is written all the same.
    worker.submit(app::OrderHandOff{});
    CHECK(wait_for([](const app::SendAction& one) { return std::holds_alternative<app::HandOffWritten>(one); }));
}
