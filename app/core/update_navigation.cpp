#include "app/core/update.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>

namespace sillwalk::app::detail {

namespace {

constexpr std::size_t deepest = 20;

/// Lists and overviews are the roots: going to one forgets the way back.
bool is_root(Screen screen) {
    return screen != Screen::room && screen != Screen::crossing && screen != Screen::cart &&
           screen != Screen::washing_step && screen != Screen::temperature && screen != Screen::push &&
           screen != Screen::what_if && screen != Screen::damage && screen != Screen::setup &&
           screen != Screen::about && screen != Screen::places && screen != Screen::plan &&
           screen != Screen::evidence && screen != Screen::photo && screen != Screen::office;
}

void save(Context& context, const char* key, std::string value) {
    context.effects.emplace_back(SaveSetting{key, std::move(value)});
}

/// The first unit of each kind that belongs to the system; kinds without a choice keep theirs.
void take_units(Settings& settings, bool us) {
    for (std::size_t kind = 0; kind < quantity_kind_count; ++kind) {
        const auto units = units_of(static_cast<QuantityKind>(kind));
        if (units[settings.unit[kind]].us == us) continue;
        for (std::size_t i = 0; i < units.size(); ++i) {
            if (units[i].us != us) continue;
            settings.unit[kind] = static_cast<std::uint8_t>(i);
            break;
        }
    }
}

/// Of the scale check; 0 where there was none, or where no glass is like that.
double scale_of(const std::string& px_per_10_m) {
    int kept = 0;
    const auto done = std::from_chars(px_per_10_m.data(), px_per_10_m.data() + px_per_10_m.size(), kept);
    const double px_per_mm = kept / 10000.0;
    return done.ec == std::errc() && px_per_mm >= least_px_per_mm && px_per_mm <= most_px_per_mm ? px_per_mm : 0;
}

void load_settings(Settings& settings, const std::map<std::string, std::string>& values) {
    const auto value = [&](const char* key) {
        const auto found = values.find(key);
        return found == values.end() ? std::string() : found->second;
    };
    if (value("theme") == "sun" || value("theme") == "dark") settings.theme = value("theme");
    if (value("language") == "es") settings.language = "es";
    settings.glove = value("glove") != "off";
    settings.left_handed = value("left_handed") == "on";
    settings.us_units = value("units") == "us";
    if (value("text_percent") == "115") settings.text_percent = 115;
    if (value("text_percent") == "130") settings.text_percent = 130;
    settings.px_per_mm = scale_of(value("px_per_10_m"));
    take_units(settings, settings.us_units);
    for (std::size_t kind = 0; kind < quantity_kind_count; ++kind) {
        const auto units = units_of(static_cast<QuantityKind>(kind));
        const auto found = values.find("unit." + std::string(quantity_name(static_cast<QuantityKind>(kind))));
        for (std::size_t i = 0; found != values.end() && i < units.size(); ++i) {
            if (units[i].name == found->second) settings.unit[kind] = static_cast<std::uint8_t>(i);
        }
    }
}

struct SettingsDispatch {
    Context& context;
    Settings& settings;

    void operator()(const SetTheme& action) const {
        settings.theme = action.theme;
        save(context, "theme", action.theme);
    }
    void operator()(const SetGlove& action) const {
        settings.glove = action.glove;
        save(context, "glove", action.glove ? "on" : "off");
    }
    void operator()(const SetLeftHanded& action) const {
        settings.left_handed = action.left;
        save(context, "left_handed", action.left ? "on" : "off");
    }
    void operator()(const SetTextPercent& action) const {
        settings.text_percent = action.percent;
        save(context, "text_percent", std::to_string(action.percent));
    }
    void operator()(const SetScale& action) const {
        settings.px_per_mm = std::clamp(action.px_per_mm, least_px_per_mm, most_px_per_mm);
        save(context, "px_per_10_m", std::to_string(std::lround(settings.px_per_mm * 10000)));
    }
    void operator()(const SetUsUnits& action) const {
        settings.us_units = action.us;
        take_units(settings, action.us);
        save(context, "units", action.us ? "us" : "si");
        for (std::size_t kind = 0; kind < quantity_kind_count; ++kind) {
            const auto quantity = static_cast<QuantityKind>(kind);
            const std::string key = "unit." + std::string(quantity_name(quantity));
            save(context, key.c_str(), std::string(units_of(quantity)[settings.unit[kind]].name));
        }
    }
    void operator()(const SetLanguage& action) const {
        settings.language = action.code;
        save(context, "language", action.code);
    }
    void operator()(const SettingsLoaded& action) const { load_settings(settings, action.values); }
    template <class T>
    void operator()(const T&) const {}
};

}  // namespace

void go_to(Context& context, const Spot& spot) {
    AppModel& model = context.model;
    if (spot.screen == Screen::visits) {
        (void)update(model, CloseVisit{}, context.moment);
        context.effects.emplace_back(SaveSetting{"open_visit", ""});
        context.effects.emplace_back(ListVisits{});
        return;
    }
    if (!model.visit && spot.screen != Screen::setup && spot.screen != Screen::office) return;
    close_sheet(context);
    model.choice.reset();
    model.pick.reset();
    model.castors.reset();
    model.photos.files.reset();
    model.photos.camera.reset();
    model.photos.binding = false;
    model.photos.tool.reset();
    model.sending.asks_to_send = model.sending.asks_to_erase = false;
    model.sending.form.open = false;
    model.open_reason.reset();
    if (is_root(spot.screen)) {
        model.back.clear();
    } else if (spot != model.spot) {
        model.back.push_back(model.spot);
        if (model.back.size() > deepest) model.back.erase(model.back.begin());
    }
    model.spot = spot;
    if (spot.screen == Screen::cart) model.cart = spot.index;
}

void go_back(Context& context) {
    AppModel& model = context.model;
    if (model.sheet) return close_sheet(context);
    if (model.choice) return model.choice.reset();
    if (model.pick) return model.pick.reset();
    if (model.castors) return model.castors.reset();
    if (model.photos.files) return model.photos.files.reset();
    if (model.photos.camera) return model.photos.camera.reset();
    if (model.photos.binding) {
        model.photos.binding = false;
        return;
    }
    if (model.sending.asks_to_send || model.sending.asks_to_erase) {
        model.sending.asks_to_send = model.sending.asks_to_erase = false;
        return;
    }
    if (model.open_reason) return model.open_reason.reset();
    if (model.back.empty()) return;
    model.spot = model.back.back();
    model.back.pop_back();
}

void on_settings(Context& context, const Action& action) {
    std::visit(SettingsDispatch{context, context.model.settings}, action);
    if (const auto* loaded = std::get_if<SettingsLoaded>(&action)) load_sending(context.model, loaded->values);
}

}  // namespace sillwalk::app::detail
