#include "app/shell/shell.hpp"

#include "app/bundle/survey_entries.hpp"
#include "app/bundle/survey_json.hpp"
#include "app/core/ids.hpp"
#include "app/core/survey_texts.hpp"
#include "app/core/update.hpp"
#include "app/shell/assessor.hpp"
#include "app/shell/photo_worker.hpp"
#include "app/shell/visit_lines.hpp"
#include "app/storage/writer.hpp"
#include "app/text/language.hpp"
#include "app/ui/screens/screen.hpp"
#include "assets/embedded.hpp"

#include <algorithm>
#include <chrono>
#include <optional>
#include <random>
#include <utility>

namespace sillwalk::app {

using engine::Result;

namespace {

constexpr std::string_view demo_file = "demo/quillwater.json";

ui::UiSettings ui_settings(const Settings& settings) {
    ui::UiSettings result;
    result.theme = settings.theme == "sun"    ? ui::ThemeName::sun
                   : settings.theme == "dark" ? ui::ThemeName::dark
                                              : ui::ThemeName::light;
    result.glove = settings.glove;
    result.left_handed = settings.left_handed;
    result.text_percent = settings.text_percent;
    result.px_per_mm = static_cast<float>(settings.px_per_mm);
    return result;
}

EditKind edit_kind(int kind) {
    return kind == 1 ? EditKind::undo : kind == 2 ? EditKind::redo : EditKind::edit;
}

/// Language key of how the file of visits was found; nothing where there is nothing to tell.
const char* words_of(Found found) {
    switch (found) {
        case Found::clean:
            return nullptr;
        case Found::unclean:
            return "storage.unclean";
        case Found::restored:
            return "storage.restored";
        case Found::started_anew:
            return "storage.started_anew";
    }
    return nullptr;
}

RandomBytes drawn_bytes() {
    std::random_device device;
    RandomBytes bytes{};
    for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(device() & 0xFFU);
    return bytes;
}

std::int64_t system_steady_ms() {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

SendWorkerOptions send_options(const ShellOptions& options) {
    const PlatformServices& services = options.services;
    return {options.threads,         services.transport,
            services.utc_ms,         services.steady_ms ? services.steady_ms : system_steady_ms,
            options.hand_off_folder, services.wake};
}

VisitLoaded loaded_from(const LoadVisit& load, StoredVisit stored) {
    VisitLoaded loaded{load.id, std::move(stored.entries), {}, {}, {}, load.follow_up};
    for (StoredEdit& edit : stored.edits) {
        loaded.edits.push_back({edit.step, static_cast<int>(edit.kind), std::move(edit.label), std::move(edit.change)});
    }
    if (stored.draft) {
        loaded.draft_path = stored.draft->path;
        loaded.draft = stored.draft->text;
    }
    return loaded;
}

Result<StoreVisit> demo_visit(std::int64_t at_ms) {
    const auto text = assets::embedded(demo_file);
    if (!text) return engine::fail(engine::ErrorCode::not_found, "the demo survey is missing", std::string(demo_file));
    const SurveyRead read = read_survey(*text);
    if (!read.errors.empty()) return tl::make_unexpected(read.errors.front());
    return StoreVisit{read.survey.id.text(), visit_title(read.survey), entries_of(read.survey), at_ms};
}

}  // namespace

std::string drawn_letters(const EngineData& data) {
    // Beyond words and formulas: signs of numbers and units, and the letters of Latin names.
    std::string texts =
        "\u00A0\u202F\u2009\u2212\u00B1\u00D7\u2264\u2265\u2248\u2026\u00B0\u00B7\u2013\u2014\u00BD\u00BC\u00BE\u215B"
        "\u215C\u215D\u215E";
    for (const engine::FormulaRow& formula : data.tables.formulas) texts += formula.text + formula.range;
    for (const char* code : {"en", "es"}) {
        const auto language = Language::load(code);
        if (!language) continue;
        for (const auto& [key, word] : language->words()) texts += word;
    }
    return texts;
}

struct Shell::Impl {
    Impl(std::shared_ptr<const EngineData> engine_data, ShellOptions shell_options, std::unique_ptr<Writer> store)
        : data(std::move(engine_data)),
          options(std::move(shell_options)),
          writer(std::move(store)),
          assessor(data, {options.threads, options.draws}, options.services.wake),
          photo_worker({options.photo_folder, options.threads,
                        [this](const Digest& sha256) { return writer->photo(sha256); }, options.services.wake,
                        options.services.camera}),
          send_worker(data, *writer, send_options(options)),
          kit(drawn_letters(*data)) {
        model.data = data.get();
        model.has_camera = static_cast<bool>(options.services.camera);
        model.sending.can_paste = options.services.clipboard != nullptr;
        random = options.services.random ? options.services.random() : drawn_bytes();
    }

    std::shared_ptr<const EngineData> data;
    ShellOptions options;
    std::unique_ptr<Writer> writer;
    Assessor assessor;
    PhotoWorker photo_worker;  ///< after the writer, whose photos it reads
    SendWorker send_worker;
    ui::Ui kit;
    ui::Scratch scratch;
    AppModel model;
    std::optional<Language> language;
    std::vector<Effect> unsaved;  ///< refused by a full queue; offered again with every frame
    std::uint64_t durable = 0;
    bool reserve_used = false;  ///< told already
    double now = 0;
    bool first_frame = true;
    const ui::HitMap* seen = nullptr;  ///< of the last frame
    std::uint64_t acts = 1;            ///< the model is the same while this is
    std::uint64_t asked_at = 0;        ///< acts when what the screen waits for was last asked for
    RandomBytes random{};

    [[nodiscard]] Moment moment() const { return {options.services.utc_ms(), now, random}; }

    void act(const Action& action) {
        ++acts;
        count_up(random, 2);  // the last two bytes count the ids of one action
        for (const Effect& effect : update(model, action, moment())) run(effect);
    }

    void run(const Effect& effect) {
        std::visit([this](const auto& one) { perform(one); }, effect);
    }
    void perform(const SaveEdit& save) {
        store(save, StoreStep{save.survey_id, save.step, edit_kind(save.kind), save.label, save.changes, save.at_ms,
                              save.title});
    }
    void perform(const SaveVisit& save) {
        store(save, StoreVisit{save.survey_id, save.title, save.entries, save.at_ms});
    }
    void perform(const SaveDraft& save) { store(save, StoreDraft{save.survey_id, save.path, save.text, save.at_ms}); }
    void perform(const SaveSetting& save) { store(save, StoreSetting{save.key, save.value}); }
    void perform(const SavePhoto& save) {
        if (const auto digest = digest_from_hex(save.sha256))
            store(save, StorePhoto{*digest, save.bytes, save.width_px, save.height_px});
    }
    void perform(const ListPhotoFiles&) { photo_worker.list_files(); }
    void perform(const ReadPhotoFile& read) { photo_worker.read_file(read.survey_id, read.name); }
    void perform(const TakePicture& take) { photo_worker.shoot(take.survey_id); }
    /// What is sealed must hold every reading before it.
    void perform(const SendOrder& order) {
        if (unsaved.empty()) {
            send_worker.submit(order);
        } else {
            unsaved.emplace_back(order);
        }
    }
    void perform(const ReadClipboard&) {
        if (options.services.clipboard)
            act(SendAction(SetEnrolmentText{EnrolmentText::code, options.services.clipboard()}));
    }
    void perform(const LoadVisit& load) {
        auto stored = writer->visit(load.id);
        if (stored) {
            act(loaded_from(load, std::move(*stored)));
        } else {
            act(LoadFailed{stored.error().message});
        }
    }
    void perform(const ListVisits&) { list_visits(); }
    void perform(const Assess& assess) {
        if (model.visit) assessor.submit(model.visit->survey, assess.version, model.cart);
    }

    void perform(const AssessWhatIf& assess) {
        if (model.what_if) assessor.submit_what_if(model.what_if->survey, assess.version, model.what_if->cart);
    }

    void store(const Effect& effect, StoreCommand command) {
        // What comes after something that waits must wait too: an edit may name a photo.
        if (!unsaved.empty() || writer->submit(std::move(command)) == 0) unsaved.push_back(effect);
    }

    void list_visits() {
        Result<std::vector<VisitLine>> lines;
        writer->with_database([&](Database& database) { lines = visit_lines(database); });
        act(VisitsListed{lines ? std::move(*lines) : std::vector<VisitLine>{}});
    }

    /// News from the disk and the engine, before the frame is drawn.
    void gather_news() {
        for (const Effect& effect : std::exchange(unsaved, {})) run(effect);
        if (!options.threads) writer->pump();
        const WriterState state = writer->state();
        Storage storage = model.storage;
        storage.waiting = state.submitted - state.durable;
        storage.refused = state.refused;
        storage.why = state.error.where;
        if (state.durable != durable) {
            durable = state.durable;
            storage.saved_ms = options.services.utc_ms();
        }
        if (state.reserve_used && !reserve_used) model.toast = Toast{"storage.reserve_used", {}, false, now};
        reserve_used = state.reserve_used;
        if (!(storage == model.storage)) act(StorageChanged{storage});
        AssessorNews news = assessor.take();
        if (news.answer) act(AnswerReady{std::move(news.answer)});
        if (news.what_if) act(WhatIfAnswered{std::move(news.what_if)});
        if (news.completion) act(AnswerCompleted{std::move(news.completion)});
        for (PhotoAction& one : photo_worker.take()) act(std::move(one));
        for (Action& one : send_worker.take()) act(one);
        photo_worker.watch(model.photos.camera && model.photos.camera->why.empty());
        if (std::exchange(asked_at, acts) != acts) ask_for_more();
    }

    /// What the screen shows and nobody has worked out or decoded yet.
    void ask_for_more() {
        for (const WantedPicture& one : wanted_pictures(model)) photo_worker.decode(one.sha256, one.whole);
        if (wants_completion(model)) assessor.complete(model.visit->survey, model.answer, model.cart);
    }

    void choose_language() {
        if (language && language->code() == model.settings.language) return;
        if (auto loaded = Language::load(model.settings.language)) language = std::move(*loaded);
    }
};

Shell::Shell() = default;
Shell::~Shell() {
    if (impl_) (void)impl_->writer->flush(2000);
}

Result<std::unique_ptr<Shell>> Shell::open(std::shared_ptr<const EngineData> data, ShellOptions options) {
    WriterOptions writer_options;
    writer_options.own_thread = options.threads;
    writer_options.keep = options.keep;
    writer_options.on_change = options.services.wake;
    auto writer = Writer::open(options.database, writer_options);
    if (!writer) return tl::make_unexpected(writer.error());
    const auto settings = (*writer)->settings();
    if (!settings) return tl::make_unexpected(settings.error());

    std::unique_ptr<Shell> shell(new Shell);
    shell->impl_ = std::make_unique<Impl>(std::move(data), std::move(options), std::move(*writer));
    Impl& impl = *shell->impl_;
    impl.act(SettingsLoaded{*settings});
    impl.choose_language();
    if (!impl.language) return engine::fail(engine::ErrorCode::not_found, "the words are missing");

    std::string open_visit;
    if (const auto found = settings->find("open_visit"); found != settings->end()) open_visit = found->second;
    if (impl.options.demo) {
        const auto demo = demo_visit(impl.options.services.utc_ms());
        if (!demo) return tl::make_unexpected(demo.error());
        const auto visits = impl.writer->visits();
        if (!visits) return tl::make_unexpected(visits.error());
        bool there = false;
        for (const VisitRow& row : *visits) there = there || row.survey_id == demo->survey_id;
        if (!there && impl.writer->submit(*demo) == 0)
            return engine::fail(engine::ErrorCode::storage, "nothing can be stored");
        if (!impl.writer->flush(10000)) return tl::make_unexpected(impl.writer->state().error);
        if (open_visit.empty()) open_visit = demo->survey_id;
    }
    impl.list_visits();
    if (!open_visit.empty()) impl.act(OpenVisit{open_visit});
    if (const char* found = words_of(impl.writer->found())) impl.model.toast = Toast{found, {}, false, 0};
    return shell;
}

void Shell::prepare(const ui::FrameInput& input) {
    impl_->kit.begin(input, ui_settings(impl_->model.settings));  // the letters are drawn here
    (void)impl_->kit.end();
}

ui::FrameOutput Shell::frame(const ui::FrameInput& input) {
    Impl& impl = *impl_;
    const bool first = std::exchange(impl.first_frame, false);
    if (!first) impl.assessor.start();
    impl.now = input.now;
    impl.gather_news();
    impl.choose_language();
    std::vector<Action> actions;
    impl.kit.begin(input, ui_settings(impl.model.settings));
    ui::ScreenContext context{impl.kit,
                              impl.model,
                              *impl.language,
                              actions,
                              impl.scratch,
                              impl.options.services.utc_ms(),
                              impl.options.services.utc_offset_minutes,
                              false,
                              impl.acts};
    ui::draw_app(context);
    ui::FrameOutput output = impl.kit.end();
    impl.seen = output.hit_map;
    for (const Action& action : actions) impl.act(action);
    // What was done, or worked out within the frame, shows with the next one.
    const bool pending =
        !impl.options.threads && (impl.assessor.working() || impl.photo_worker.working() || impl.send_worker.working());
    if (!impl.options.threads && impl.model.photos.camera) output.wants_frame_in = 1.0 / 15;
    if (!impl.options.threads) {
        const auto left = impl.send_worker.seconds_left();
        const double now = output.wants_frame_in;
        if (left && (now < 0 || *left < now)) output.wants_frame_in = *left;
    }
    output.wants_frame = output.wants_frame || !actions.empty() || pending || first;
    output.quit = impl.model.quit;
    return output;
}

std::string Shell::describe() const {
    return impl_->seen ? impl_->seen->describe() : std::string();
}
void Shell::act(const Action& action) {
    impl_->act(action);
}
const AppModel& Shell::model() const {
    return impl_->model;
}
bool Shell::flush(int milliseconds) {
    return impl_->writer->flush(milliseconds);
}

}  // namespace sillwalk::app
