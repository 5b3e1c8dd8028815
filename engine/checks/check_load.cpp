/// Does the rating carry the cart? The lower rating of wheel and rig.
/// Statements: load_rating: load with factor, rating, factor, load without it. load_speed_unknown: speed, speed of the
/// rating test.

#include "engine/checks/checks.hpp"
#include "engine/checks/crossing_case.hpp"
#include "engine/checks/rated_load.hpp"

namespace sillwalk::engine {

Finding check_load(const CheckContext& context) {
    Judge judge(CheckId::load, context);
    const auto load = factored_load(judge, context);
    const auto rated = rated_load(judge, context);
    judge_rated_speed(judge, context);
    if (load && rated) {
        judge.part({.demand = amount(load->demand),
                    .capacity = amount(*rated),
                    .use = load->demand / *rated,
                    .statement = Statement::load_rating,
                    .formula = "wheel-load",
                    .numbers = {amount(load->demand), amount(*rated), amount(load->factor), amount(load->plain)}});
    }
    return judge.finish();
}

}  // namespace sillwalk::engine
