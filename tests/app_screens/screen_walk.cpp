#include "tests/app_screens/screen_walk.hpp"

#include "app/core/quantity.hpp"
#include "app/ui/fonts.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::test {

namespace {

/// Takes looks off the running app.
class Album {
public:
    void go(const std::string& name, app::Screen screen, std::uint16_t index = 0) {
        act(app::GoTo{{screen, index}});
        take(name);
    }
    void act(app::Action action) { host_.shell().act(std::move(action)); }
    void build(app::BuildAction action) { act(app::Action(std::move(action))); }
    Look& take(const std::string& name, bool with_toast = false) {
        host_.run("wait 0\n");
        looks_.push_back({name, host_.shell().model()});
        if (!with_toast) looks_.back().model.toast.reset();
        return looks_.back();
    }
    [[nodiscard]] const app::AppModel& model() { return host_.shell().model(); }
    [[nodiscard]] std::vector<Look> looks() { return std::move(looks_); }

private:
    AppHost host_;
    std::vector<Look> looks_;
};

void take_screens(Album& album) {
    using app::Screen;
    const std::string visit = album.model().visit->id.text();
    album.go("visits", Screen::visits);  // closes the visit
    album.take("visits, nothing found").scratch.search = "zzz";
    album.act(app::OpenVisit{visit});
    for (int i = static_cast<int>(Screen::visits) + 1; i <= static_cast<int>(Screen::plan); ++i) {
        const auto screen = static_cast<Screen>(i);
        album.go(app::screen_name(screen), screen, screen == Screen::crossing || screen == Screen::what_if ? 1 : 0);
        REQUIRE(album.model().spot.screen == screen);
    }
    album.act(app::ShowPresent{false});
    album.go("crossing with the first choice", Screen::crossing, 1);
    album.act(app::OpenReason{engine::CheckId::step});
    album.take("working behind a check at a crossing");
    album.act(app::OpenReason{});
    album.act(app::ShowPresent{true});
    album.act(app::ShowTable{true});
    album.go("answer as a table", Screen::answer);
    album.go("temperature as a table", Screen::temperature);
    album.go("push as a table", Screen::push);
    album.act(app::ShowTable{false});
    album.go("answer", Screen::answer);
    album.act(app::OpenReason{engine::CheckId::push});
    album.take("working behind a check");
    album.act(app::OpenReason{});
    album.take("answer with every construction").scratch.all_families = true;
    album.act(app::GoTo{{Screen::damage, 0}});
    for (const int part : {0, 1, 2}) album.take("choosing a present part").scratch.present_part = part;
    album.act(app::GoTo{{Screen::overview, 0}});
    album.take("overview with a cart opened").scratch.open_cart = 0;
    Look& full = album.take("overview with a full disk");
    full.model.storage.refused = true;
    full.model.storage.why = "full";
    full.model.storage.waiting = 12;
}

void take_what_if(Album& album) {
    album.act(app::WhatIfSet{{engine::Field::crossing_rise, 1, 0}, 6'000'000});
    album.go("what if, tried", app::Screen::what_if, 1);
    album.go("crossing, tried", app::Screen::crossing, 1);
    album.act(app::WhatIfForget{});
}

void take_sheets(Album& album) {
    album.act(app::GoTo{{app::Screen::plan, 0}});
    for (int i = 0; i <= static_cast<int>(app::PickKind::stop_crossing); ++i) {
        album.build(app::OpenPick{{static_cast<app::PickKind>(i), 0, 0}});
        album.take("pick " + std::to_string(i));
    }
    album.build(app::ClosePick{});
    album.build(app::OpenCastors{0});
    album.take("castors");
    album.build(app::CloseCastors{});
}

/// The keypad with something on it: odd values, inches with fractions, a second reading.
void take_keypads(Album& album) {
    const auto type = [&album](const char* keys) {
        for (const char* key = keys; *key != '\0'; ++key) album.act(app::SheetDigit{*key});
    };
    album.act(app::OpenSheet{{engine::Field::crossing_rise, 1, 0}});
    type("190");
    album.take("keypad, unusual value");
    type("0000");
    album.take("keypad, impossible value");
    album.act(app::SheetClear{});
    type("6");
    album.act(app::SheetAgain{});
    type("9");
    album.take("keypad, two readings that disagree");
    album.act(app::CloseSheet{});
    album.act(app::SetUsUnits{true});
    album.act(app::OpenSheet{{engine::Field::crossing_rise, 1, 0}});
    album.act(app::SheetUnit{1});
    album.act(app::SheetFraction{12});
    album.take("keypad, inches");
    album.act(app::SheetPage{true});
    album.take("keypad, fractions");
    album.act(app::CloseSheet{});
    for (const app::Screen screen :
         {app::Screen::crossing, app::Screen::room, app::Screen::cart, app::Screen::answer, app::Screen::temperature,
          app::Screen::push, app::Screen::hand_over, app::Screen::washing_step}) {
        album.go(std::string(app::screen_name(screen)) + " in US units", screen);
    }
    album.act(app::SetUsUnits{false});
    album.act(app::SetScale{5.9});
    album.act(app::OpenSheet{{engine::Field::crossing_rise, 1, 0}});
    album.take("keypad with a ruler");
    album.act(app::SheetRuler{true});
    type("19");
    album.take("ruler");
    album.act(app::SheetUnit{1});
    album.take("ruler, inches");
    album.act(app::CloseSheet{});
    album.go("setup, scale checked", app::Screen::setup);
}

/// Sending in every state that a person can see.
void take_sending(Album& album) {
    using app::DeliveryState;
    const std::string visit = album.model().visit->id.text();
    app::VisitLine line{visit, "Quillwater Foods, Plant 2", 1795600000000};
    line.customer = "Quillwater Foods";
    std::vector<app::VisitLine> lines;
    for (int i = 0; i <= static_cast<int>(DeliveryState::from_file); ++i) {
        line.delivery = static_cast<DeliveryState>(i);
        line.why = line.delivery == DeliveryState::attention ? "sync.why.not_yours" : "";
        lines.push_back(line);
        line.id += "x";
    }
    const auto enrolled = [&](Look& look, app::SendingPhase phase) -> app::SendingDesk& {
        look.model.visits = lines;
        app::SendingDesk& desk = look.model.sending;
        desk.status = {true, "https://office.quillwater.example:8443", phase, "sync.why.cut_off", 12, 0, 340};
        return desk;
    };
    album.go("office, not enrolled", app::Screen::office);
    app::EnrolmentForm& form = album.take("office with a wrong code").model.sending.form;
    form.address = "https://office.quillwater.example:8443";
    form.code = "ABCD-EFGH-JKLM-NPQR";
    form.name = "Tablet 3";
    form.fault = app::SendingFault{"enrol.why.code", form.address};
    app::SendingDesk& desk = enrolled(album.take("office, waiting"), app::SendingPhase::waiting);
    desk.hand_off = app::HandOffTold{"visits/sillwalk-2026-11-26-071500.ndjson", 12'345'678, 7, 31, 1};
    enrolled(album.take("office, enrol again"), app::SendingPhase::enrol_again);
    album.act(app::GoTo{{app::Screen::hand_over, 0}});
    album.act(app::SendAction(app::OpenSend{}));
    album.take("before sending, not enrolled");
    enrolled(album.take("before sending"), app::SendingPhase::idle);
    album.act(app::SendAction(app::CloseSend{}));
    album.take("before erasing").model.sending.asks_to_erase = true;
    app::SendingDesk& failed = enrolled(album.take("hand-over that could not be sealed"), app::SendingPhase::idle);
    failed.failed_visit = visit;
    failed.fault = app::SendingFault{"seal.why.storage", "full"};
    album.act(app::GoTo{{app::Screen::visits, 0}});
    enrolled(album.take("visits in every state"), app::SendingPhase::sending);
    album.act(app::OpenVisit{visit});
}

/// A visit that holds nothing yet, then little by little more.
void take_new_visit(Album& album) {
    using app::Screen;
    album.build(app::NewVisit{});
    for (const Screen screen : {Screen::about, Screen::overview, Screen::places, Screen::plan, Screen::route,
                                Screen::loads, Screen::washing, Screen::answer, Screen::hand_over}) {
        album.go(std::string(app::screen_name(screen)) + " of an empty visit", screen);
    }
    album.build(app::AddRoom{"Freezer"});
    album.build(app::AddRoom{"Dock"});
    album.go("room, new", Screen::room);
    album.build(app::AddCart{"Tray rack"});
    album.take("cart, new");
    album.build(app::AppendStop{0, 0});
    album.build(app::AppendStop{0, 1});
    album.go("plan without a way", Screen::plan);
    album.build(app::AddCrossing{0, 1});
    album.take("crossing, new");
    album.build(app::AddCrossing{0, 1});
    album.build(app::AppendStop{0, 0});
    album.build(app::ClosePick{});
    album.go("plan with several ways", Screen::plan);
    album.build(app::AddWashing{"Foam", 0});
    album.take("washing, new");
    album.build(app::DeletePart{app::Part::room, 0});
    album.take("a room deleted", true);
    album.go("visits, two", Screen::visits);
}

/// Each vowel once more until the text is long enough, then the last letter of each word.
std::string drawn_out(const std::string& text) {
    const std::vector<char32_t> letters = ui::code_points(text);
    double owed = 0.65;
    std::string out;
    bool slot = false;
    for (std::size_t i = 0, byte = 0; i < letters.size(); ++i) {
        const std::size_t begin = byte;
        do ++byte;
        while (byte < text.size() && (static_cast<unsigned char>(text[byte]) & 0xC0U) == 0x80U);
        const std::string letter = text.substr(begin, byte - begin);
        out += letter;
        slot = (slot || letter == "{") && letter != "}";
        owed += 0.35;
        const bool vowel = letter.find_first_of("aeiouAEIOU") == 0;
        const bool last = byte == text.size() || text[byte] == ' ';
        const bool plain = letter.size() == 1 && std::isalpha(static_cast<unsigned char>(letter[0])) != 0;
        while (!slot && plain && owed >= 1 && (vowel || last)) {
            out += static_cast<char>(std::tolower(static_cast<unsigned char>(letter[0])));
            owed -= 1;
        }
    }
    return out;
}

}  // namespace

std::vector<Look> every_screen() {
    Album album;
    take_screens(album);
    take_what_if(album);
    take_sheets(album);
    take_keypads(album);
    take_sending(album);
    take_new_visit(album);
    return album.looks();
}

std::vector<Look> every_sheet() {
    using engine::Field;
    Album album;
    album.act(app::GoTo{{app::Screen::route, 0}});
    for (int i = 1; i <= static_cast<int>(engine::last_field); ++i) {
        const engine::ReadingRef ref{static_cast<Field>(i), 0, 0};
        if (ref.field == Field::cart_castors || ref.field == Field::cart_route) continue;
        const std::string name = app::field_key(ref.field);
        if (app::quantity_of(ref.field)) {
            album.act(app::OpenSheet{ref});
            album.take("keypad of " + name);
            album.act(app::CloseSheet{});
        } else {
            album.act(app::OpenChoice{ref});
            album.take("list of " + name);
            album.act(app::CloseChoice{});
        }
    }
    return album.looks();
}

app::Language language_of(const std::string& code) {
    auto language = app::Language::load(code == "long" ? "en" : code);
    if (!language) FAIL(language.error().message);
    if (code != "long") return std::move(*language);
    std::string json;
    for (const auto& [key, word] : language->words()) {
        std::string escaped;
        for (const char c : drawn_out(word)) {
            if (c == '"' || c == '\\') escaped += '\\';
            escaped += c == '\n' ? std::string("\\n") : std::string(1, c);
        }
        json += (json.empty() ? "{\"" : ",\"") + key + "\":\"" + escaped + "\"";
    }
    auto drawn = app::Language::from_text(code, json + "}");
    if (!drawn) FAIL(drawn.error().message);
    return std::move(*drawn);
}

Viewer::Viewer(const Glass& glass, const ui::UiSettings& settings, const ui::Insets& insets)
    : kit_(app::drawn_letters(*shared_data())), settings_(settings) {
    input_.width = glass.width;
    input_.height = glass.height;
    input_.px_per_mm = glass.px_per_mm;
    input_.safe_area = insets;
}

void Viewer::frame(const Look& look, const app::Language& language) {
    input_.now = look.model.toast ? look.model.toast->since + 0.1 : 1;
    kit_.begin(input_, settings_);
    std::vector<app::Action> actions;
    ui::ScreenContext context{kit_, look.model, language, actions, scratch_, 1795600000000, 0, false, stamp_};
    ui::draw_app(context);
    out_ = kit_.end();
}

void Viewer::settle(const Look& look, const app::Language& language) {
    frame(look, language);
    for (int i = 0; i < 8 && out_.wants_frame; ++i) frame(look, language);
}

const ui::FrameOutput& Viewer::again(const Look& look, const app::Language& language) {
    frame(look, language);
    return out_;
}

const ui::HitMap& Viewer::show(const Look& look, const app::Language& language) {
    scratch_ = look.scratch;
    frame(look, language);
    bool moved = false;
    for (const ui::ScrollRegion& list : out_.hit_map->scrolls()) {
        if (list.offset <= 0) continue;
        kit_.scroll_to(list.id, 0);
        moved = true;
    }
    if (moved || out_.wants_frame) settle(look, language);
    return *out_.hit_map;
}

void Viewer::show_whole(const Look& look, const app::Language& language,
                        const std::function<void(const ui::HitMap&)>& each) {
    each(show(look, language));
    for (int step = 0; step < 100; ++step) {
        bool moved = false;
        for (const ui::ScrollRegion& list : std::vector<ui::ScrollRegion>(out_.hit_map->scrolls())) {
            if (list.covered || list.offset >= list.max_offset) continue;
            kit_.scroll_to(list.id, std::min(list.max_offset, list.offset + list.view.height() * 0.7F));
            moved = true;
        }
        if (!moved) return;
        settle(look, language);
        each(*out_.hit_map);
    }
}

}  // namespace sillwalk::test
