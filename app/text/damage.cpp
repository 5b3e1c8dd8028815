#include "app/text/damage.hpp"

#include "app/bundle/survey_words.hpp"

namespace sillwalk::app {

using engine::DamageCause;
using engine::DamageReading;
using engine::Support;

namespace {

DamageCauseText cause_text(const DamageCause& cause, const TextContext& context) {
    DamageCauseText text;
    text.check = context.language.get(std::string("check.") + engine::check_name(cause.check));
    text.support = support_text(cause.support, context.language);
    if (!cause.finding) {
        text.sentence = context.language.get("damage.not_computed");
        return text;
    }
    const bool applies = cause.finding->outcome != engine::Outcome::does_not_apply;
    text.place = place_name(cause.finding->place, context.survey);
    text.sentence = applies ? sentence(*cause.finding, context) : context.language.get("damage.does_not_apply");
    return text;
}

bool computed(const DamageReading& damage) {
    for (const DamageCause& cause : damage.causes) {
        if (cause.finding) return true;
    }
    return false;
}

}  // namespace

std::string damage_name(engine::DamageKind kind, const Language& words) {
    return words.get("damage.kind." + std::string(word_of(kind)));
}

std::string support_text(Support support, const Language& words) {
    constexpr const char* keys[] = {"damage.not_supported", "damage.cannot_tell", "damage.supported"};
    return words.get(keys[static_cast<std::size_t>(support)]);
}

DamageText damage_text(const DamageReading& damage, const TextContext& context) {
    const Language& words = context.language;
    DamageText text{damage_name(damage.kind, words), support_text(damage.support, words), {}, {}};
    for (const DamageCause& cause : damage.causes) text.causes.push_back(cause_text(cause, context));
    if (engine::causes_of(damage.kind).empty()) {
        text.notes.push_back(words.get("damage.no_check"));
    } else if (!computed(damage)) {
        text.notes.push_back(words.get("damage.present_unknown"));
    }
    if (damage.dew) {
        const auto& rooms = context.survey.rooms;
        const std::string room = damage.dew->room < rooms.size() ? rooms[damage.dew->room].name : "";
        const auto degrees = [&](engine::Temperature at) {
            return show({at.kelvin(), engine::Kind::temperature}, context.units);
        };
        text.notes.push_back(
            words.fill("damage.dew", {room, degrees(damage.dew->cold_air), degrees(damage.dew->dew_point)}));
    }
    return text;
}

}  // namespace sillwalk::app
