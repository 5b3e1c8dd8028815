#include "app/bundle/bundle_advice.hpp"

#include "app/bundle/advice_json.hpp"
#include "engine/select/assess.hpp"

namespace sillwalk::app {

BundleAdvice make_bundle_advice(const engine::Survey& survey, const engine::Catalogue& catalogue,
                                const engine::Tables& tables) {
    engine::AssessOptions kept;
    kept.ranked = 2;
    kept.turned_down = 3;
    engine::Advice advice = engine::assess(survey, catalogue, tables, kept);
    for (engine::CartAdvice& cart : advice.carts) {
        cart.crossings.clear();
        cart.crossings_present.clear();
    }
    return {advice_to_json(advice, survey, catalogue, tables, NumberForm::decimal_text), advice.engine_version,
            advice.catalogue_edition, advice.tables_edition};
}

}  // namespace sillwalk::app
