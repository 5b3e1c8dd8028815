// sillwalk-desk seal: a visit becomes a revision that never changes again, and waits in the outbox.

#include "app/bundle/photos.hpp"
#include "app/bundle/survey_entries.hpp"
#include "app/bundle/survey_json.hpp"
#include "app/bundle/uuid.hpp"
#include "app/core/survey_texts.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "app/photo/photo.hpp"
#include "app/sync/sealed_visit.hpp"
#include "platforms/desk/field/field_store.hpp"
#include "platforms/desk/subcommand.hpp"
#include "platforms/desk/workspace.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <vector>

namespace sillwalk::desk {

using engine::Result;

namespace {

struct SealWords {
    FieldOptions field;
    std::string visit;
    std::vector<std::string> photos;
    std::string author;
};

constexpr const char* photo_name_space = "0b2c8a60-3f0e-4a51-9d0a-7c1f4f0f5a77";

/// Adds the picture to the file and to the visit's entries; a picture that the visit has already is left as it is.
Result<void> add_photo(const std::string& path, std::vector<app::StoreCommand>& commands,
                       std::vector<app::VisitPhoto>& photos) {
    const auto bytes = read_file(path);
    if (!bytes) return tl::make_unexpected(bytes.error());
    const auto photo = app::import_photo(*bytes, path);
    if (!photo) return tl::make_unexpected(photo.error());
    const std::string name = app::to_hex(photo->sha256);
    const bool known =
        std::any_of(photos.begin(), photos.end(), [&](const app::VisitPhoto& one) { return one.sha256 == name; });
    if (known) return {};
    commands.push_back(app::StorePhoto{photo->sha256, std::make_shared<const std::string>(photo->bytes),
                                       photo->width_px, photo->height_px});
    app::VisitPhoto row;
    row.id = app::uuid_v5(photo_name_space, name);
    row.sha256 = name;
    row.bytes = static_cast<std::int64_t>(photo->bytes.size());
    row.width_px = photo->width_px;
    row.height_px = photo->height_px;
    row.caption = std::filesystem::path(path).stem().string();
    photos.push_back(std::move(row));
    return {};
}

/// The visit's entries as the words want them: of the survey file, or as they are, with the photos added.
struct Wanted {
    std::string survey_id, title;
    app::Entries before, now;
    std::int64_t step = 1;
    bool is_new = false;
    std::vector<app::StoreCommand> photos;
};

Result<Wanted> read_visit(FieldStore& store, const SealWords& words) {
    Wanted wanted;
    const bool is_file = std::filesystem::exists(words.visit);
    wanted.survey_id = words.visit;
    if (is_file) {
        const auto text = read_file(words.visit);
        if (!text) return tl::make_unexpected(text.error());
        const app::SurveyRead read = app::read_survey(*text);
        if (!read.errors.empty()) return tl::make_unexpected(read.errors.front());
        wanted.survey_id = read.survey.id.text();
        wanted.title = app::visit_title(read.survey);
        wanted.now = app::entries_of(read.survey);
    }
    const auto stored =
        store.with([&](app::Database& database) { return app::load_visit(database, wanted.survey_id); });
    if (stored) {
        wanted.before = stored->entries;
        wanted.step = static_cast<std::int64_t>(stored->edits.size()) + 1;
    } else if (!is_file || stored.error().code != engine::ErrorCode::not_found) {
        return tl::make_unexpected(stored.error());
    }
    wanted.is_new = !stored;
    if (!is_file) wanted.now = wanted.before;
    auto photos = app::photos_of(wanted.before);
    if (!photos) return tl::make_unexpected(photos.error());
    for (const std::string& path : words.photos) {
        if (auto done = add_photo(path, wanted.photos, *photos); !done) return tl::make_unexpected(done.error());
    }
    for (auto it = wanted.now.begin(); it != wanted.now.end();)
        it = app::is_photo_entry(it->first) ? wanted.now.erase(it) : std::next(it);
    wanted.now.merge(app::photo_entries(*photos));
    return wanted;
}

Result<void> store_visit(FieldStore& store, Wanted& wanted) {
    std::vector<app::StoreCommand> commands = std::move(wanted.photos);
    const std::int64_t now = utc_ms();
    auto changes = app::difference(wanted.before, wanted.now);
    if (wanted.is_new) {
        commands.push_back(app::StoreVisit{wanted.survey_id, wanted.title, wanted.now, now});
    } else if (!changes.empty()) {
        commands.push_back(app::StoreStep{wanted.survey_id, wanted.step, app::EditKind::edit, "edit.taken_in",
                                          std::move(changes), now, wanted.title});
    }
    return store.with([&](app::Database& database) { return app::apply_all(database, commands); });
}

Result<app::SealOrder> order_of(FieldStore& store, const std::string& survey_id, const std::string& author) {
    const app::LoadedTables tables = app::load_tables();
    const app::LoadedCatalogue catalogue = app::load_catalogue();
    if (!tables.errors.empty()) return tl::make_unexpected(tables.errors.front());
    if (!catalogue.errors.empty()) return tl::make_unexpected(catalogue.errors.front());
    return store.with([&](app::Database& database) -> Result<app::SealOrder> {
        const auto visit = app::load_visit(database, survey_id);
        if (!visit) return tl::make_unexpected(visit.error());
        const auto head = app::load_head(database, survey_id);
        if (!head) return tl::make_unexpected(head.error());
        return app::make_seal_order(survey_id, *visit, *head,
                                    {catalogue.catalogue, tables.tables, store.device, author, utc_ms()});
    });
}

int status_of(const engine::Error& error) {
    print_error(error);
    if (error.code == engine::ErrorCode::no_answer) return exit_refused;
    return error.code == engine::ErrorCode::storage ? exit_failed : exit_bad_input;
}

}  // namespace

int run_seal(int argc, char** argv) {
    CLI::App command{"Seals a visit: it becomes a revision and waits in the outbox", "sillwalk-desk seal"};
    SealWords words;
    add_field_options(command, words.field);
    command.add_option("visit", words.visit, "A survey file, or the id of a visit in the folder")->required();
    command.add_option("--photo", words.photos, "A JPEG file to go with it; may be given again");
    command.add_option("--author", words.author, "Name of the person");
    if (const auto status = parse(command, argc, argv)) return *status;
    auto store = open_field_store(words.field);
    if (!store) return exit_failed;
    auto wanted = read_visit(*store, words);
    if (!wanted) return status_of(wanted.error());
    if (auto done = store_visit(*store, *wanted); !done) return status_of(done.error());
    const auto order = order_of(*store, wanted->survey_id, words.author);
    if (!order) return status_of(order.error());
    if (auto done = store->writer->seal(*order); !done) return status_of(done.error());
    fmt::print("{}\n", app::to_hex(order->digest));
    const app::WriterState state = store->writer->state();
    if (!state.backup_error.message.empty()) print_error(state.backup_error);
    if (state.reserve_used) fmt::print(stderr, "{}\n", store->language.get("storage.reserve_used"));
    return exit_ok;
}

}  // namespace sillwalk::desk
