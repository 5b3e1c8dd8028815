// What the app knows of sending: what is asked before, what is typed for the office, states of the visits.
#include "tests/app_core/world.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk;
using namespace sillwalk::app;
using test::World;

namespace {

void send(World& world, SendAction action) {
    world.act(Action(std::move(action)));
}

template <class T>
const T* order(const World& world) {
    const auto* one = world.effect<SendOrder>();
    return one ? std::get_if<T>(one) : nullptr;
}

VisitLine line(const std::string& id, DeliveryState state, std::int64_t changed_ms = 1) {
    VisitLine one{id, id, changed_ms};
    one.delivery = state;
    return one;
}

const std::string visit_id = test::small_survey().id.text();

}  // namespace

TEST_CASE("nothing leaves before the person was told what, to whom and from whom", "[sending]") {
    engine::Survey survey = test::small_survey();
    survey.surveyor = "M. Ebner";
    World world(survey);
    send(world, OpenSend{});
    CHECK(world.effects.empty());
    CHECK(world.model.sending.asks_to_send);
    CHECK(world.model.sending.author == "M. Ebner");
    world.act(GoBack{});
    CHECK_FALSE(world.model.sending.asks_to_send);
    send(world, OpenSend{});
    send(world, SetAuthor{"  A. Vik "});
    CHECK(world.effect<SaveSetting>()->key == "author");
    send(world, SendVisit{});
    const auto* seal = order<OrderSeal>(world);
    REQUIRE(seal);
    CHECK(seal->survey_id == visit_id);
    CHECK(seal->author == "A. Vik");
    CHECK_FALSE(seal->hand_off);
    CHECK(world.model.sending.sealing == visit_id);
    CHECK_FALSE(world.model.sending.asks_to_send);
    // One at a time.
    send(world, OpenSend{});
    CHECK_FALSE(world.model.sending.asks_to_send);
    send(world, SendVisit{});
    CHECK_FALSE(order<OrderSeal>(world));
}

TEST_CASE("a seal that fails says why and leaves the visit free to be sent again", "[sending]") {
    World world;
    send(world, SendVisit{});
    send(world, SealFailed{visit_id, {"seal.why.storage", "full"}});
    CHECK(world.model.sending.sealing.empty());
    CHECK(world.model.sending.failed_visit == visit_id);
    CHECK(world.model.sending.fault == SendingFault{"seal.why.storage", "full"});
    REQUIRE(world.model.toast);
    CHECK(world.model.toast->key == "seal.why.storage");
    send(world, SendVisit{true});
    CHECK_FALSE(world.model.sending.fault);
    REQUIRE(order<OrderSeal>(world));
    CHECK(order<OrderSeal>(world)->hand_off);
    send(world, HandOffWritten{{"a.ndjson", 10, 1, 0, 0}});
    send(world, VisitSealed{visit_id});
    CHECK(world.model.sending.sealing.empty());
    CHECK_FALSE(world.model.sending.writing);
    CHECK(world.model.toast->key == "toast.hand_off");
}

TEST_CASE("the text of the office's QR code fills the form from any field", "[sending]") {
    const std::string key(64, 'a');
    const auto code = read_enrolment_code("sillwalk:enrol?url=https://office.example&code=AB12&key=" + key);
    REQUIRE(code);
    CHECK(code->address == "https://office.example");
    CHECK(code->code == "AB12");
    CHECK(code->key == key);
    for (const char* other : {"", "AB12", "https://office.example", "sillwalk:enrol?", "sillwalk:enrol?url=&code=x",
                              "sillwalk:enrol?url=https://a", "sillwalk:enrol?&&=&url"})
        CHECK_FALSE(read_enrolment_code(other));

    World world;
    const EnrolmentForm& form = world.model.sending.form;
    for (const EnrolmentText which : {EnrolmentText::address, EnrolmentText::code, EnrolmentText::name}) {
        send(world, SetEnrolmentText{which, " sillwalk:enrol?url=https://office.example&code=AB12&key=" + key + "\n"});
        CHECK(form.address == "https://office.example");
        CHECK(form.code == "AB12");
        CHECK(form.key == key);
        CHECK(form.name.empty());
    }
    send(world, SetEnrolmentText{EnrolmentText::address, "https://other.example"});
    CHECK(form.key.empty());  // it was the other office's
}

TEST_CASE("what was typed stays until the office took the tablet in", "[sending]") {
    World world;
    const EnrolmentForm& form = world.model.sending.form;
    send(world, Enrol{});
    CHECK_FALSE(order<OrderEnrolment>(world));
    CHECK(form.fault == SendingFault{"enrol.why.no_address", {}});
    send(world, SetEnrolmentText{EnrolmentText::address, "office.example"});
    send(world, Enrol{});
    CHECK(form.fault == SendingFault{"enrol.why.no_code", {}});
    send(world, SetEnrolmentText{EnrolmentText::code, " AB12 "});
    send(world, SetEnrolmentText{EnrolmentText::name, "Tablet 3"});
    send(world, Enrol{});
    REQUIRE(order<OrderEnrolment>(world));
    CHECK(order<OrderEnrolment>(world)->code == "AB12");
    CHECK(form.busy);
    send(world, Enrol{});
    CHECK_FALSE(order<OrderEnrolment>(world));  // a second tap
    send(world, EnrolmentFailed{{"enrol.why.code", "https://office.example"}});
    CHECK_FALSE(form.busy);
    CHECK(form.code == " AB12 ");
    CHECK(form.address == "office.example");
    send(world, TabletEnrolled{});
    CHECK(form.code.empty());
    CHECK(form.address == "office.example");
    CHECK(form.name == "Tablet 3");
    world.act(SettingsLoaded{{{"office.address", "https://a.example"}, {"office.tablet_name", "T"}, {"author", "B"}}});
    CHECK(form.address == "https://a.example");
    CHECK(form.name == "T");
    CHECK(world.model.sending.author == "B");
}

TEST_CASE("unsent visits come first, and a change makes a visit unsent at once", "[sending]") {
    World world;
    world.act(VisitsListed{{line("a", DeliveryState::at_office), line("b", DeliveryState::waits),
                            line("c", DeliveryState::forked), line("d", DeliveryState::attention),
                            line(visit_id, DeliveryState::at_office)}});
    std::string order;
    for (const VisitLine& one : world.model.visits) order += one.id.substr(0, 1);
    CHECK(order == "bdac0");
    world.act(OpenSheet{test::door_rise});
    world.type("6");
    world.act(SheetKeep{});
    CHECK(find_visit(world.model, visit_id)->delivery == DeliveryState::not_sent);
    // A list that was read before that change reached the disk knows nothing of it; the next one does.
    world.act(VisitsListed{{line(visit_id, DeliveryState::at_office)}});
    CHECK(find_visit(world.model, visit_id)->delivery == DeliveryState::not_sent);
    world.act(VisitsListed{{line(visit_id, DeliveryState::waits, find_visit(world.model, visit_id)->changed_ms)}});
    CHECK(find_visit(world.model, visit_id)->delivery == DeliveryState::waits);
    CHECK_FALSE(find_visit(world.model, "none"));
}

TEST_CASE("only what the office has whole can be erased, after a question", "[sending]") {
    World world;
    for (int i = 0; i <= static_cast<int>(DeliveryState::from_file); ++i) {
        const auto state = static_cast<DeliveryState>(i);
        world.act(VisitsListed{{line(visit_id, state)}});
        send(world, OpenErase{});
        CHECK(world.model.sending.asks_to_erase ==
              (state == DeliveryState::at_office || state == DeliveryState::forked));
        send(world, CloseErase{});
        send(world, EraseVisit{});
        CHECK_FALSE(order<OrderErase>(world));
    }
    world.act(VisitsListed{{line(visit_id, DeliveryState::at_office)}});
    send(world, OpenErase{});
    send(world, EraseVisit{});
    REQUIRE(order<OrderErase>(world));
    CHECK(order<OrderErase>(world)->survey_id == visit_id);
    CHECK_FALSE(world.model.visit);
    CHECK(world.model.spot.screen == Screen::visits);
}

TEST_CASE("the office is a screen with or without a visit, and back leads where one came from", "[sending]") {
    World world;
    world.act(GoTo{{Screen::hand_over, 0}});
    send(world, OpenSend{});
    world.act(GoTo{{Screen::office, 0}});
    CHECK_FALSE(world.model.sending.asks_to_send);
    world.act(GoBack{});
    CHECK(world.model.spot.screen == Screen::hand_over);
    world.act(CloseVisit{});
    world.act(GoTo{{Screen::office, 0}});
    CHECK(world.model.spot.screen == Screen::office);
    world.act(GoBack{});
    CHECK(world.model.spot.screen == Screen::visits);
    send(world, OpenSend{});
    send(world, SendVisit{});
    CHECK_FALSE(order<OrderSeal>(world));
    send(world, WriteHandOff{});
    REQUIRE(order<OrderHandOff>(world));
    send(world, WriteHandOff{});
    CHECK_FALSE(order<OrderHandOff>(world));
    send(world, TryNow{});
    CHECK(order<OrderTry>(world));
}
