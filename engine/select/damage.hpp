#pragma once
/// What the present wheels show, set against what the present wheel's checks compute: which cause they support.

#include "engine/base/small_list.hpp"
#include "engine/checks/demand.hpp"
#include "engine/checks/moisture.hpp"
#include "engine/model/advice.hpp"

#include <optional>
#include <vector>

namespace sillwalk::engine {

/// Supported: the computation fails there, so this damage is to be expected. Not supported: it holds with room to
/// spare. Cannot tell: tight, not known, or nothing that is computed bears on it.
enum class Support : std::uint8_t { not_supported, cannot_tell, supported };
[[nodiscard]] const char* support_name(Support support);  ///< "not supported", "cannot tell", "supported"

struct DamageCause {
    CheckId check = CheckId::load;
    Support support = Support::cannot_tell;
    std::optional<Finding> finding;  ///< of the present wheel; empty where it was not computed
};

struct DamageReading {
    std::size_t damage = 0;  ///< index in Cart::damage
    DamageKind kind = DamageKind::flat_spot;
    Support support = Support::cannot_tell;  ///< the strongest of its causes
    SmallList<DamageCause, 4> causes;        ///< in the order in which they are looked at first
    /// Seized bearings only: dew or frost that gets into the bearing and freezes on the way back.
    std::optional<Condensation> dew;
};

/// The checks that could have caused a damage. Empty where no check computes it (wrapped thread).
[[nodiscard]] SmallList<CheckId, 4> causes_of(DamageKind kind);

/// One reading per damage of the cart, in its order. `present` are the findings of the wheel that is on the cart; empty
/// where it is not known, and then nothing can be told.
/// Causes by kind: common practice, no published source.
[[nodiscard]] std::vector<DamageReading> read_damage(const Cart& cart, const CartDemand& demand, const Tables& tables,
                                                     const std::vector<Finding>& present);

}  // namespace sillwalk::engine
