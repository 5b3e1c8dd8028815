// One revision as HTML: the advice as the tablet made it, the readings as they were entered. A revision may hold
// anything that the format allows, so every member is looked at before it is used, and escaped when it is written.

#include "app/data/load_catalogue.hpp"
#include "app/office/html.hpp"
#include "app/office/page.hpp"
#include "app/text/language.hpp"
#include "app/text/show.hpp"
#include "engine/base/numeric_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace sillwalk::office {

namespace {

std::string text_member(const Json& object, const char* name) {
    if (!object.is_object()) return "";
    const auto found = object.find(name);
    return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

const Json& member(const Json& object, const char* name) {
    static const Json none;
    if (!object.is_object()) return none;
    const auto found = object.find(name);
    return found == object.end() ? none : *found;
}

std::string spaced(std::string name) {
    std::replace(name.begin(), name.end(), '_', ' ');
    if (!name.empty() && name.front() >= 'a' && name.front() <= 'z')
        name.front() = static_cast<char>(name.front() - 'a' + 'A');
    return name;
}

/// Our word for a term of the wire, or the term itself where a later version brought one we have no word for.
std::string word(const app::Language& language, const std::string& group, std::string term) {
    std::string key = group + "." + term;
    std::replace_if(
        key.begin(), key.end(), [](char c) { return c == ' ' || c == '-'; }, '_');
    return language.has(key) ? language.get(key) : spaced(std::move(term));
}

const char* mark_class(const std::string& verdict) {
    if (verdict == "fits" || verdict == "holds") return "fits";
    if (verdict == "fits with conditions" || verdict == "tight") return "tight";
    return verdict == "does not fit" || verdict == "fails" ? "fails" : "unknown";
}

std::string mark(const app::Language& language, const std::string& group, const std::string& term) {
    return fmt::format("<span class=\"mark {}\">{}</span>", mark_class(term), escaped(word(language, group, term)));
}

/// {"length_m": "0.02"} as "20 mm"; what a later version may bring as it stands.
std::string amount(const Json& value) {
    if (!value.is_object() || value.empty() || !value.begin()->is_string()) return "";
    const std::string text = value.begin()->get<std::string>();
    const auto number = engine::parse_number(text);
    for (int kind = 0; number && kind <= static_cast<int>(engine::Kind::level); ++kind) {
        engine::Amount amount{*number, static_cast<engine::Kind>(kind)};
        if (value.begin().key() != app::amount_key(amount.kind)) continue;
        amount.si += *number - app::amount_in_key_unit(amount);
        return app::show(amount, app::UnitSystem::si);
    }
    return text + " (" + value.begin().key() + ")";
}

/// What a person calls a thing: parts by the catalogue that ships with the program, the rest by the visit itself.
using Names = std::map<std::string, std::string>;

Names names_of(const Json& items) {
    static const app::LoadedCatalogue loaded = app::load_catalogue();
    Names out;
    for (const auto& wheel : loaded.catalogue.wheels) out[wheel.id.text()] = wheel.description;
    for (const auto& bearing : loaded.catalogue.bearings) out[bearing.id.text()] = bearing.description;
    for (const auto& rig : loaded.catalogue.rigs) out[rig.id.text()] = rig.description;
    for (const Json& item : items) {
        const std::string id = text_member(member(item, "v"), "id"), name = text_member(member(item, "v"), "name");
        if (!id.empty() && !name.empty()) out[id] = name;
    }
    return out;
}

std::string named(const Names& names, const std::string& id) {
    const auto found = names.find(id);
    return found == names.end() ? id : found->second;
}

std::string place_text(const Names& names, const Json& place) {
    return place.is_object() && !place.empty() && place.begin()->is_string()
               ? named(names, place.begin()->get<std::string>())
               : "";
}

std::string findings_html(const app::Language& language, const Names& names, const Json& findings) {
    std::string rows;
    for (const Json& finding : findings) {
        const std::string outcome = text_member(finding, "outcome");
        if (outcome.empty() || outcome == "does not apply") continue;
        const std::string demand = amount(member(finding, "demand")), capacity = amount(member(finding, "capacity"));
        const std::string place = place_text(names, member(finding, "place"));
        std::string figures = demand + (capacity.empty() ? "" : " of " + capacity);
        if (!place.empty() && !demand.empty()) figures = ": " + figures;
        rows += fmt::format("<tr><th>{}</th><td>{}</td><td>{}</td></tr>",
                            escaped(word(language, "check", text_member(finding, "check"))),
                            mark(language, "outcome", outcome), escaped(place + (demand.empty() ? "" : figures)));
    }
    return "<table>" + rows + "</table>";
}

std::string cart_html(const app::Language& language, const Names& names, const Json& cart) {
    const Json& ranked = member(cart, "ranked");
    const bool holds = ranked.is_array() && !ranked.empty();
    const Json& first = holds ? ranked.front() : member(cart, "nearest");
    const Json& candidate = member(first, "candidate");
    std::string out = "<section class=\"card\"><h3>" + escaped(named(names, text_member(cart, "cart"))) + "</h3>";
    if (!first.is_object()) return out + "<p>No advice.</p></section>";
    out += "<p>" + mark(language, "verdict", text_member(first, "verdict")) + "</p>";
    const auto part = [&](const char* name) { return escaped(named(names, text_member(candidate, name))); };
    out += fmt::format("<p>{}:</p><ul><li>{}</li><li>{}</li><li>{}</li><li>{}</li></ul>",
                       holds ? "First choice" : "Nothing holds. Nearest", part("wheel"), part("bearing"), part("rig"),
                       escaped(word(language, "preparation", text_member(candidate, "preparation"))));
    return out + findings_html(language, names, member(first, "findings")) + "</section>";
}

std::string plain_text(const Json& value) {
    if (value.is_string()) return value.get<std::string>();
    if (value.is_boolean()) return value.get<bool>() ? "yes" : "no";
    return value.is_null() ? "" : value.dump();
}

std::string reading_text(const Json& value) {
    if (value.is_array()) {
        std::string list;
        for (const Json& entry : value) {
            if (entry.is_string()) list += (list.empty() ? "" : ", ") + entry.get<std::string>();
        }
        return list.empty() ? fmt::format("{} in all", value.size()) : list;
    }
    if (!value.is_object()) return plain_text(value);
    std::string out = text_member(value, "as_entered");
    if (out.empty()) out = plain_text(member(value, "value"));
    for (const char* name : {"known", "method"}) {
        const std::string more = text_member(value, name);
        if (!more.empty()) out += (out.empty() ? "" : ", ") + more;
    }
    return out;
}

std::string item_html(const Json& item) {
    const Json& values = member(item, "v");
    const std::string name = text_member(values, "name");
    std::string out =
        fmt::format("<section class=\"card\"><h3>{}{}{}</h3><table>", escaped(spaced(text_member(item, "kind"))),
                    name.empty() ? "" : ": " + escaped(name), item.value("deleted", false) ? " (removed)" : "");
    for (const auto& [field, value] : values.items()) {
        if (field == "name") continue;
        out += fmt::format("<tr><th>{}</th><td>{}</td></tr>", escaped(spaced(field)), escaped(reading_text(value)));
    }
    return out + "</table></section>";
}

}  // namespace

std::string revision_html(const Json& revision) {
    const auto language = app::Language::load("en");
    if (!language) return "";
    std::string out = "<h2>Advice</h2>";
    const Json& carts = member(member(revision, "advice"), "carts");
    const Names names = names_of(revision.at("items"));
    for (const Json& cart : carts) out += cart_html(*language, names, cart);
    if (!carts.is_array() || carts.empty()) out += "<p>This revision carries no advice.</p>";
    for (const char* caution : {"caution.moving", "caution.ratings", "caution.codes"})
        out += "<p class=\"caution\">" + escaped(language->get(caution)) + "</p>";
    out += "<h2>Readings</h2>";
    std::vector<const Json*> items;
    for (const Json& item : revision.at("items")) items.push_back(&item);
    std::stable_sort(items.begin(), items.end(), [](const Json* a, const Json* b) {
        return std::pair(a->at("kind"), a->at("order")) < std::pair(b->at("kind"), b->at("order"));
    });
    for (const Json* item : items) out += item_html(*item);
    return out;
}

std::string blobs_html(const std::vector<BlobRow>& blobs) {
    if (blobs.empty()) return "";
    std::string out = "<h2>Photos and papers</h2><div class=\"photos\">";
    for (const BlobRow& blob : blobs) {
        if (!blob.stored) {
            out += fmt::format("<p class=\"card\">On its way: <code>{}</code></p>", blob.digest.substr(0, 12));
        } else if (blob.media.starts_with("image/")) {
            out +=
                fmt::format("<a href=\"/download/{0}\"><img src=\"/photo/{0}\" alt=\"Photo {1}\" loading=\"lazy\"></a>",
                            blob.digest, blob.digest.substr(0, 12));
        } else {
            out += fmt::format("<a class=\"button\" href=\"/download/{}\">Paper, {} KiB</a>", blob.digest,
                               blob.bytes / 1024 + 1);
        }
    }
    return out + "</div>";
}

}  // namespace sillwalk::office
