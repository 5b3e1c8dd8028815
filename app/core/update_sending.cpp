#include "app/core/survey_texts.hpp"
#include "app/core/update.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::app {

namespace detail {

namespace {

std::string& text_of(EnrolmentForm& form, EnrolmentText which) {
    return which == EnrolmentText::address ? form.address : which == EnrolmentText::code ? form.code : form.name;
}

struct SendDispatch {
    Context& context;
    AppModel& model;

    [[nodiscard]] SendingDesk& desk() const { return model.sending; }
    void order(SendOrder one) const { context.effects.emplace_back(std::move(one)); }
    void remember(const char* key, std::string value) const {
        context.effects.emplace_back(SaveSetting{key, std::move(value)});
    }
    /// Unless that screen is open, which tells it anyhow: a toast would only lie over it.
    void say(Screen told_there, const std::string& key, std::vector<std::string> arguments = {}) const {
        if (model.spot.screen != told_there) model.toast = Toast{key, std::move(arguments), false, context.moment.now};
    }

    void operator()(const OpenSend&) const {
        if (!model.visit || !desk().sealing.empty()) return;
        if (desk().author.empty()) desk().author = model.visit->survey.surveyor;
        desk().asks_to_send = true;
    }
    void operator()(const CloseSend&) const { desk().asks_to_send = false; }
    void operator()(const SetAuthor& action) const {
        desk().author = action.name;
        remember("author", action.name);
    }
    void operator()(const SendVisit& action) const {
        if (!model.visit || !desk().sealing.empty()) return;
        desk().asks_to_send = false;
        desk().sealing = model.visit->id.text();
        desk().failed_visit.clear();
        desk().fault.reset();
        desk().hand_off.reset();
        desk().hand_off_fault.reset();
        desk().writing = action.as_file;
        order(OrderSeal{desk().sealing, std::string(without_blanks(desk().author)), action.as_file});
    }
    void operator()(const OpenErase&) const {
        if (!model.visit) return;
        const VisitLine* line = find_visit(model, model.visit->id.text());
        desk().asks_to_erase = line && may_be_erased(line->delivery);
    }
    void operator()(const CloseErase&) const { desk().asks_to_erase = false; }
    void operator()(const EraseVisit&) const {
        if (!model.visit || !desk().asks_to_erase) return;
        const std::string id = model.visit->id.text();
        go_to(context, {Screen::visits, 0});  // nothing more of it is written
        order(OrderErase{id});
    }
    void operator()(const VisitErased&) const { say(Screen::office, "toast.erased"); }
    void operator()(const EraseFailed& news) const { say(Screen::office, news.fault.key, {news.fault.argument}); }
    void operator()(const TryNow&) const { order(OrderTry{}); }
    void operator()(const WriteHandOff&) const {
        if (desk().writing) return;
        desk().writing = true;
        desk().hand_off.reset();
        desk().hand_off_fault.reset();
        order(OrderHandOff{});
    }

    void operator()(const OpenEnrolment& action) const {
        desk().form.open = action.open;
        desk().form.fault.reset();
    }
    void operator()(const SetEnrolmentText& action) const {
        EnrolmentForm& form = desk().form;
        form.fault.reset();
        if (const auto code = read_enrolment_code(without_blanks(action.text))) {
            form.address = code->address;
            form.code = code->code;
            form.key = code->key;
        } else {
            text_of(form, action.which) = action.text;
            if (action.which == EnrolmentText::address) form.key.clear();  // it was that of the address before
        }
        if (action.which == EnrolmentText::name) remember("office.tablet_name", form.name);
        remember("office.address", form.address);
    }
    void operator()(const PasteEnrolment&) const { context.effects.emplace_back(ReadClipboard{}); }
    void operator()(const Enrol&) const {
        EnrolmentForm& form = desk().form;
        if (form.busy) return;
        form.fault.reset();
        const std::string address(without_blanks(form.address)), code(without_blanks(form.code));
        if (address.empty() || code.empty()) {
            form.fault = SendingFault{address.empty() ? "enrol.why.no_address" : "enrol.why.no_code", {}};
            return;
        }
        form.busy = true;
        order(OrderEnrolment{address, code, form.key, std::string(without_blanks(form.name))});
    }

    void operator()(const SendingTold& news) const { desk().status = news.status; }
    void operator()(const TabletEnrolled&) const {
        EnrolmentForm& form = desk().form;
        form.code.clear();
        form.key.clear();
        form.open = form.busy = false;
        form.fault.reset();
        say(Screen::office, "toast.enrolled");
    }
    void operator()(const EnrolmentFailed& news) const {
        desk().form.busy = false;
        desk().form.fault = news.fault;
    }
    void operator()(const VisitSealed& news) const {
        if (desk().sealing == news.id) desk().sealing.clear();
        // A file tells of itself where it lies.
        if (!desk().hand_off && !desk().hand_off_fault)
            say(Screen::hand_over, desk().status.office.empty() ? "toast.sealed_kept" : "toast.sealed",
                {desk().status.office});
    }
    void operator()(const SealFailed& news) const {
        if (desk().sealing == news.id) desk().sealing.clear();
        desk().writing = false;
        desk().failed_visit = news.id;
        desk().fault = news.fault;
        say(Screen::hand_over, news.fault.key, {news.fault.argument});
    }
    void operator()(const HandOffWritten& news) const {
        desk().writing = false;
        desk().hand_off = news.told;
        say(Screen::office, "toast.hand_off", {news.told.path});
    }
    void operator()(const HandOffFailed& news) const {
        desk().writing = false;
        desk().hand_off_fault = news.fault;
        say(Screen::office, news.fault.key, {news.fault.argument});
    }
};

}  // namespace

void send(Context& context, const SendAction& action) {
    std::visit(SendDispatch{context, context.model}, action);
}

void load_sending(AppModel& model, const std::map<std::string, std::string>& settings) {
    const auto value = [&](const char* key) {
        const auto found = settings.find(key);
        return found == settings.end() ? std::string() : found->second;
    };
    model.sending.author = value("author");
    model.sending.form.address = value("office.address");
    model.sending.form.name = value("office.tablet_name");
}

void take_visits(AppModel& model, std::vector<VisitLine> visits) {
    for (VisitLine& line : visits) {
        const VisitLine* known = find_visit(model, line.id);
        // The list was read before the last change of the visit reached the disk.
        if (!model.visit || model.visit->id.text() != line.id || !known || known->changed_ms <= line.changed_ms)
            continue;
        line.changed_ms = known->changed_ms;
        line.delivery = DeliveryState::not_sent;
        line.why.clear();
    }
    std::stable_partition(visits.begin(), visits.end(), [](const VisitLine& one) { return is_unsent(one.delivery); });
    model.visits = std::move(visits);
}

void mark_changed(AppModel& model, std::int64_t at_ms) {
    for (VisitLine& line : model.visits) {
        if (line.id != model.visit->id.text()) continue;
        line.delivery = DeliveryState::not_sent;
        line.why.clear();
        line.changed_ms = at_ms;
    }
}

}  // namespace detail

const VisitLine* find_visit(const AppModel& model, std::string_view id) {
    const auto found =
        std::find_if(model.visits.begin(), model.visits.end(), [&](const VisitLine& one) { return one.id == id; });
    return found == model.visits.end() ? nullptr : &*found;
}

std::optional<EnrolmentCode> read_enrolment_code(std::string_view text) {
    constexpr std::string_view start = "sillwalk:enrol?";
    if (!text.starts_with(start)) return std::nullopt;
    EnrolmentCode code;
    std::string_view rest = text.substr(start.size());
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find('&'), rest.size());
        const std::string_view pair = rest.substr(0, end);
        rest.remove_prefix(std::min(end + 1, rest.size()));
        const std::size_t equals = pair.find('=');
        if (equals == std::string_view::npos) continue;
        const std::string value(pair.substr(equals + 1));
        const std::string_view name = pair.substr(0, equals);
        if (name == "url") code.address = value;
        if (name == "code") code.code = value;
        if (name == "key") code.key = value;
    }
    if (code.address.empty() || code.code.empty()) return std::nullopt;
    return code;
}

}  // namespace sillwalk::app
