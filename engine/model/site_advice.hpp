#pragma once
/// How few kinds of wheel, or of bearing, serve all carts of a site, and what each saving costs.

#include "engine/model/catalogue.hpp"
#include "engine/model/finding.hpp"

#include <cstdint>
#include <vector>

namespace sillwalk::engine {

/// What one cart gets when only the chosen kinds are stocked, beside what it would choose for itself.
struct ServedCart {
    std::uint16_t cart = 0;  ///< index in the survey
    bool served = false;     ///< false: none of the kinds holds; then candidate, verdict and use mean nothing
    Candidate candidate;     ///< the best of those with a chosen kind
    Verdict verdict = Verdict::does_not_fit, own_verdict = Verdict::does_not_fit;
    double worst_use = 0, own_use = 0;  ///< quantised to 0.001
};

struct KindSet {
    std::vector<std::uint32_t> kinds;  ///< catalogue indices, ascending
    std::vector<ServedCart> carts;     ///< those for which something holds, in the order of the survey
    int unserved = 0;                  ///< carts that none of the kinds serves
    int verdict_steps = 0;             ///< steps fits > with conditions > cannot tell that the served carts lose
    double use_added = 0;              ///< sum over the served carts of worst use minus own use
};

struct FewestKinds {
    std::size_t own = 0;         ///< distinct kinds when every cart gets its own first choice
    KindSet fewest;              ///< no cart gets a worse verdict
    std::vector<KindSet> fewer;  ///< one kind less, two less … down to one: the cheapest set of each size
};

struct SiteAdvice {
    std::vector<std::uint16_t> nothing_holds;  ///< carts that no candidate of the catalogue serves
    FewestKinds wheels, bearings;
};

}  // namespace sillwalk::engine
