#include "engine/model/catalogue.hpp"

#include <algorithm>

namespace sillwalk::engine {

namespace {

/// Binary search in a list sorted by id.
template <class Item>
const Item* find_by_id(const std::vector<Item>& items, std::string_view id) {
    const auto found = std::lower_bound(items.begin(), items.end(), id,
                                        [](const Item& item, std::string_view key) { return item.id.text() < key; });
    return found != items.end() && found->id.text() == id ? &*found : nullptr;
}

std::string_view preparation_word(Preparation preparation) {
    if (preparation == Preparation::degreased) return "degreased";
    if (preparation == Preparation::h1_lubricated) return "h1_lubricated";
    return "as_supplied";
}

}  // namespace

const Wheel* Catalogue::wheel(std::string_view id) const {
    return find_by_id(wheels, id);
}
const Bearing* Catalogue::bearing(std::string_view id) const {
    return find_by_id(bearings, id);
}
const Rig* Catalogue::rig(std::string_view id) const {
    return find_by_id(rigs, id);
}

bool same_make(const Wheel& a, const Wheel& b) {
    return a.construction == b.construction && a.tread_material == b.tread_material &&
           a.core_material == b.core_material && a.hygiene == b.hygiene && a.resistance_ohm == b.resistance_ohm;
}

bool same_make(const Rig& a, const Rig& b) {
    return a.material == b.material && a.finish == b.finish && a.exposed_threads == b.exposed_threads &&
           a.hollow_back == b.hollow_back;
}

std::string candidate_key(const Catalogue& catalogue, const Candidate& candidate) {
    std::string key = catalogue.wheels[candidate.wheel].id.text();
    key += '+';
    key += catalogue.bearings[candidate.bearing].id.text();
    key += '+';
    key += catalogue.rigs[candidate.rig].id.text();
    key += '+';
    key += preparation_word(candidate.preparation);
    return key;
}

}  // namespace sillwalk::engine
