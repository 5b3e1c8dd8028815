#pragma once
/// The pull of a bonded tread that shrinks or swells more than its core: stress = integral of E (a_tread - a_core) dT
/// from 23 C. An elastic upper bound of the hoop stress; the shear that it causes at the tread's edges is of the same
/// order. Derived: docs/reference/methods.md "bond-mismatch".

#include "engine/checks/judge.hpp"

#include <optional>

namespace sillwalk::engine {

struct Mismatch {
    Pressure stress;                                   ///< always positive
    Pressure modulus;                                  ///< of the tread at the temperature
    double strain = 0;                                 ///< free strain between tread and core, always positive
    CitationId citation_tread = 0, citation_core = 0;  ///< of the expansions
};
/// Hard urethane follows its modulus over temperature (-40 to 80 C, the ends beyond); all other treads keep their own.
/// At the worst corner the tread's high and the core's low expansion. Empty where a figure is missing, which is noted.
[[nodiscard]] std::optional<Mismatch> mismatch_at(Judge& judge, const CheckContext& context, Temperature at);

}  // namespace sillwalk::engine
