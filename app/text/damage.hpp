#pragma once
/// What the present wheels show, set against what is computed for them, as a customer reads it.

#include "app/text/explain.hpp"
#include "engine/select/damage.hpp"

#include <string>
#include <vector>

namespace sillwalk::app {

struct DamageCauseText {
    std::string check;     ///< "Step"
    std::string place;     ///< "Freezer door sill"; may be empty
    std::string support;   ///< "supported"
    std::string sentence;  ///< the finding's, with its numbers; or that it was not computed
};
struct DamageText {
    std::string kind;     ///< "Flat spots"
    std::string support;  ///< of the strongest cause
    std::vector<DamageCauseText> causes;
    std::vector<std::string> notes;  ///< dew; that nothing computed bears on it; that the present wheel is not known
};

[[nodiscard]] DamageText damage_text(const engine::DamageReading& damage, const TextContext& context);
[[nodiscard]] std::string damage_name(engine::DamageKind kind, const Language& words);
[[nodiscard]] std::string support_text(engine::Support support, const Language& words);

}  // namespace sillwalk::app
