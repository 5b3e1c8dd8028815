// Every reading and every text of a survey can be entered somewhere.
#include "app/core/reading_access.hpp"
#include "app/ui/screens/facts.hpp"
#include "tests/app_screens/app_host.hpp"

using namespace sillwalk;
using engine::Field;
using test::AppHost;

namespace {

app::Screen screen_of(app::Owner owner) {
    switch (owner) {
        case app::Owner::room:
            return app::Screen::room;
        case app::Owner::crossing:
            return app::Screen::crossing;
        case app::Owner::washing:
            return app::Screen::washing_step;
        default:
            return app::Screen::cart;
    }
}

app::Screen screen_of(app::TextField field) {
    if (field <= app::TextField::notes) return app::Screen::about;
    if (field <= app::TextField::room_notes) return app::Screen::room;
    if (field <= app::TextField::crossing_notes) return app::Screen::crossing;
    return field == app::TextField::washing_name ? app::Screen::washing_step : app::Screen::cart;
}

}  // namespace

TEST_CASE("every reading of the model opens where it is entered, from the screen of its owner", "[screens][fields]") {
    const auto size = GENERATE(std::pair{1280.0F, 800.0F}, std::pair{412.0F, 915.0F});
    AppHost host(size.first, size.second);
    for (int i = 1; i <= static_cast<int>(engine::last_field); ++i) {
        const engine::ReadingRef ref{static_cast<Field>(i), 0, 0};
        const bool of_damage = ref.field == Field::cart_damage_size;
        const std::string id = ref.field == Field::cart_route ? "cart.route" : ui::reading_id(ref, of_damage);
        INFO(id);
        const app::Screen screen = of_damage ? app::Screen::damage : screen_of(app::owner_of(ref.field));
        host.shell().act(app::GoTo{{screen, 0}});
        host.run("wait 0.1\ntap " + id + "\n");
        const app::AppModel& model = host.shell().model();
        const bool typed = model.sheet && model.sheet->ref == ref;
        const bool chosen = model.choice && model.choice->ref == ref;
        const bool placed = ref.field == Field::cart_castors && model.castors;
        const bool walked = ref.field == Field::cart_route && model.spot.screen == app::Screen::plan;
        CHECK((typed || chosen || placed || walked));
    }
}

TEST_CASE("every text of the model has a field", "[screens][fields]") {
    AppHost host;
    for (std::size_t i = 0; i < app::text_field_count; ++i) {
        const auto field = static_cast<app::TextField>(i);
        const std::string id = std::string("text.") + app::text_field_word(field);
        host.shell().act(app::GoTo{{screen_of(field), 0}});
        host.run("wait 0.1\ntype " + id + " \"x\"\nkey enter\n");
        const bool several_lines = host.shell().model().visit->journal.done().empty();
        if (several_lines) host.run("key escape\n");
        INFO(id);
        const auto text = app::read_text(host.shell().model().visit->survey, {field, 0});
        REQUIRE(text);
        CHECK(text->find('x') != std::string::npos);
        host.shell().act(app::Undo{});
        host.shell().act(app::DismissToast{});
    }
}
