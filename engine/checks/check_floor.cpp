/// Will it mark or crush the floor? Peak contact pressure of the tread, stiffest on the route's coldest air, against
/// the floor's figure, room by room, without the load factor. Statement floor_pressure: peak, floor's limit, castor
/// load, modulus, half width along the travel, and where the tread's stiffness follows the cold: the temperature. The
/// place is the room. Source: Hertz [johnson-contact], chapter 4, from memory; a bonded tread [bonded-layer].

#include "engine/checks/castor_share.hpp"
#include "engine/checks/checks.hpp"
#include "engine/checks/tread_modulus.hpp"
#include "engine/physics/elastic.hpp"

#include <algorithm>

namespace sillwalk::engine {
namespace {

struct Press {
    Force load;
    Pressure modulus;
    double poisson = 0;
};

ContactInput input_of(const Wheel& wheel, const Floor& floor, const Press& press) {
    ContactInput input;
    input.load = press.load;
    input.diameter = wheel.diameter;
    input.width = wheel.tread_width;
    input.modulus = press.modulus;
    input.poisson = press.poisson;
    input.with_approach = false;
    if (floor.modulus) input.floor_modulus = floor.modulus->value;
    return input;
}

/// A crowned tread and a thin bonded one are each solved alone; where a tread is both, the higher pressure counts.
Result<Contact> hardest_contact(const Wheel& wheel, const ContactInput& plain, const LayerTable& layer) {
    ContactInput input = plain;
    input.crown_radius = wheel.crown_radius;
    const bool both = wheel.crown_radius && wheel.tread_thickness;
    if (!both) {
        input.tread_thickness = wheel.tread_thickness;
        return contact(input, layer);
    }
    const Result<Contact> crowned = contact(input, layer);
    input.crown_radius.reset();
    input.tread_thickness = wheel.tread_thickness;
    const Result<Contact> bonded = contact(input, layer);
    if (!crowned || !bonded) return crowned ? bonded : crowned;
    return crowned->peak > bonded->peak ? crowned : bonded;
}

const char* formula_of(ContactModel model) {
    switch (model) {
        case ContactModel::line:
            return "contact-line";
        case ContactModel::elliptic:
            return "contact-elliptic";
        case ContactModel::layer:
            break;
    }
    return "contact-layer";
}

void add_floor(Judge& judge, const CheckContext& context, const StopDemand& stop, const Press& press,
               const TreadModulus& tread) {
    const Floor& floor = *stop.floor.value;
    const auto contact = hardest_contact(*context.wheel, input_of(*context.wheel, floor, press), context.tables->layer);
    if (!floor.contact_limit || !contact) {
        judge.missing_figure();
        return;
    }
    const Pressure limit = floor.contact_limit->value;
    const Amount peak{contact->peak.si(), Kind::pressure}, most{limit.si(), Kind::pressure};
    const Amount load{press.load.si(), Kind::force}, modulus{press.modulus.si(), Kind::pressure};
    const Amount half_width{contact->half_width.si(), Kind::length};
    const std::initializer_list<Amount> plain{peak, most, load, modulus, half_width};
    const Amount cold{tread.temperature.value_or(Temperature{}).kelvin(), Kind::temperature};
    const std::initializer_list<Amount> with_cold{peak, most, load, modulus, half_width, cold};
    judge.part({.demand = peak,
                .capacity = most,
                .use = contact->peak / limit,
                .statement = Statement::floor_pressure,
                .place = {PlaceKind::room, stop.room},
                .formula = formula_of(contact->model),
                .numbers = tread.temperature ? with_cold : plain,
                .citations = {floor.contact_limit->citation,
                              contact->model == ContactModel::layer ? context.tables->layer.citation : CitationId{0}},
                .conflict = !floor.contact_limit->conflicting.empty()});
}

bool same_case(const StopDemand& a, const StopDemand& b) {
    return a.floor.given && a.floor.value == b.floor.value && a.loaded == b.loaded;
}

}  // namespace

Finding check_floor(const CheckContext& context) {
    Judge judge(CheckId::floor, context);
    const auto& stops = context.cart->stops;
    const auto tread = stiffest_tread(judge, context);
    const bool has_poisson = context.tread != nullptr && context.tread->poisson;
    if (!has_poisson) judge.missing_figure();
    const auto any = [&](bool loaded) {
        return std::any_of(stops.begin(), stops.end(), [&](const StopDemand& s) { return s.loaded == loaded; });
    };
    const auto loaded = any(true) ? castor_load(judge, context, CartState::loaded) : std::nullopt;
    const auto empty = any(false) ? castor_load(judge, context, CartState::empty) : std::nullopt;
    for (std::size_t i = 0; i < stops.size(); ++i) {
        if (judge.choice(stops[i].floor) == nullptr) continue;
        const auto done = std::any_of(stops.begin(), stops.begin() + static_cast<std::ptrdiff_t>(i),
                                      [&](const StopDemand& earlier) { return same_case(earlier, stops[i]); });
        const auto load = stops[i].loaded ? loaded : empty;
        if (done || !tread || !has_poisson || !load) continue;
        add_floor(judge, context, stops[i], {*load, tread->value, context.tread->poisson->value}, *tread);
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
