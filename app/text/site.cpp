#include "app/text/site.hpp"

#include <fmt/format.h>

namespace sillwalk::app {

using engine::FewestKinds;
using engine::KindSet;
using engine::ServedCart;

namespace {

enum class Part { wheel, bearing };

std::uint32_t kind_of(const ServedCart& row, Part part) {
    return part == Part::wheel ? row.candidate.wheel : row.candidate.bearing;
}

const std::string& description(std::uint32_t kind, Part part, const TextContext& context) {
    return part == Part::wheel ? context.catalogue.wheels[kind].description
                               : context.catalogue.bearings[kind].description;
}

/// The word for one kind or for several: "site.wheels.one", "site.wheels".
std::string counted(const char* key, Part part, std::size_t count) {
    return std::string(key) + (part == Part::wheel ? ".wheels" : ".bearings") + (count == 1 ? ".one" : "");
}

std::string use(double value) {
    return fmt::format("{:.2f}", value);
}

std::string verdict(engine::Verdict verdict, const TextContext& context) {
    std::string key = "verdict.";
    for (const char c : std::string_view(engine::verdict_name(verdict))) key += c == ' ' ? '_' : c;
    return context.language.get(key);
}

KindSetText served_text(const FewestKinds& kinds, Part part, const TextContext& context) {
    const KindSet& set = kinds.fewest;
    KindSetText text;
    text.title = context.language.fill(counted("site", part, set.kinds.size()),
                                       {std::to_string(set.kinds.size()), std::to_string(kinds.own)});
    for (const std::uint32_t kind : set.kinds) {
        std::string carts;
        for (const ServedCart& row : set.carts) {
            if (!row.served || kind_of(row, part) != kind) continue;
            carts += (carts.empty() ? "" : ", ") + context.survey.carts[row.cart].name;
        }
        text.lines.push_back(description(kind, part, context) + ": " + carts);
    }
    return text;
}

std::string loss_line(const ServedCart& row, const TextContext& context) {
    const std::string& name = context.survey.carts[row.cart].name;
    if (!row.served) return context.language.fill("site.unserved", {name});
    if (row.verdict != row.own_verdict) {
        return context.language.fill("site.worse",
                                     {name, verdict(row.verdict, context), verdict(row.own_verdict, context)});
    }
    return context.language.fill("site.more_use", {name, use(row.worst_use), use(row.own_use)});
}

KindSetText price_text(const KindSet& set, std::size_t count, Part part, const TextContext& context) {
    KindSetText text;
    text.title = context.language.fill(counted("site.with", part, count), {std::to_string(count)});
    for (const ServedCart& row : set.carts) {
        const bool loses = !row.served || row.verdict != row.own_verdict || row.worst_use > row.own_use;
        if (loses) text.lines.push_back(loss_line(row, context));
    }
    return text;
}

void add_part(SiteText& text, const FewestKinds& kinds, Part part, const TextContext& context) {
    if (kinds.fewest.kinds.empty()) return;
    text.sets.push_back(served_text(kinds, part, context));
    std::size_t count = kinds.fewest.kinds.size();
    for (const KindSet& set : kinds.fewer) text.sets.push_back(price_text(set, --count, part, context));
}

}  // namespace

SiteText site_text(const engine::SiteAdvice& site, const TextContext& context) {
    SiteText text;
    add_part(text, site.wheels, Part::wheel, context);
    add_part(text, site.bearings, Part::bearing, context);
    std::string names;
    for (const std::uint16_t cart : site.nothing_holds) {
        names += (names.empty() ? "" : ", ") + context.survey.carts[cart].name;
    }
    if (!names.empty()) text.nothing_holds = context.language.fill("site.nothing_holds", {names});
    return text;
}

}  // namespace sillwalk::app
