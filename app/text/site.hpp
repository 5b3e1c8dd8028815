#pragma once
/// The fewest kinds of wheel and bearing for a site, and what each saving costs, as a person reads it.

#include "app/text/explain.hpp"

#include <string>
#include <vector>

namespace sillwalk::app {

struct KindSetText {
    std::string title;               ///< "2 kinds of wheel serve every cart that can be served."
    std::vector<std::string> lines;  ///< one per kind: what it is and whom it serves; or one per cart that loses
};
struct SiteText {
    std::vector<KindSetText> sets;  ///< wheels: the fewest, then what each kind less costs; then bearings
    std::string nothing_holds;      ///< names the carts that nothing serves; empty where there are none
};

[[nodiscard]] SiteText site_text(const engine::SiteAdvice& site, const TextContext& context);

}  // namespace sillwalk::app
