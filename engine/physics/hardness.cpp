#include "engine/physics/elastic.hpp"
#include "engine/physics/guard.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sillwalk::engine {

namespace {

Modulus with_band(double megapascals, double below, double above) {
    return {megapascals * megapascal, megapascals * below * megapascal, megapascals * above * megapascal};
}

/// Scatter between compounds of one hardness, the hardness rows of the sources.
constexpr double compound_low = 0.7;
constexpr double compound_high = 1.3;
/// Measured small-strain moduli of urethane over the relation, the measured rows of urethanes: the highest row up to
/// 95A.
constexpr double above_gent_when_hard = 3.4;
constexpr double above_log_when_firm = 2.0;
constexpr double above_log_when_hard = 10.1;
constexpr double below_log_when_hard = 0.5;

bool usable(double hardness) {
    return std::isfinite(hardness) && hardness > 0;
}

}  // namespace

Result<Modulus> modulus_gent(double shore_a) {
    if (!usable(shore_a)) {
        return bad_input("must be over 0", "value");
    }
    if (shore_a < 20 || shore_a >= 100) {
        return no_answer("Gent's relation holds from 20 Shore A and has no finite value at 100 and above.");
    }
    const double megapascals = 0.0981 * (56 + 7.62336 * shore_a) / (0.137505 * (254 - 2.54 * shore_a));
    return with_band(megapascals, compound_low, shore_a <= 80 ? compound_high : above_gent_when_hard);
}

Result<Modulus> modulus_log10(HardnessScale scale, double value) {
    if (!usable(value)) {
        return bad_input("must be over 0", "value");
    }
    const bool shore_a = scale == HardnessScale::shore_a;
    if (shore_a && (value < 20 || value > 100)) {
        return no_answer("The logarithmic relation holds for 20 to 80 Shore A, with a wide band to 100.");
    }
    if (!shore_a && (value < 30 || value > 85)) {
        return no_answer("The logarithmic relation holds for 30 to 85 Shore D.");
    }
    const double megapascals = std::pow(10.0, 0.0235 * (shore_a ? value : value + 50) - 0.6403);
    if (shore_a) {
        return with_band(megapascals, compound_low, value <= 80 ? compound_high : above_log_when_firm);
    }
    return with_band(megapascals, below_log_when_hard, value <= 50 ? above_log_when_firm : above_log_when_hard);
}

Result<double> shore_d_from_a(double shore_a) {
    struct Row {
        double a, d;
    };
    constexpr std::array<Row, 5> rows{{{80, 30}, {85, 34}, {90, 39}, {93, 41}, {95, 46.5}}};
    if (!usable(shore_a)) {
        return bad_input("must be over 0", "value");
    }
    if (shore_a < rows.front().a || shore_a > rows.back().a) {
        return no_answer("Shore A turns into Shore D from 80 to 95 A only; read the hardness in Shore D.");
    }
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (shore_a <= rows[i].a) {
            const double part = (shore_a - rows[i - 1].a) / (rows[i].a - rows[i - 1].a);
            return rows[i - 1].d + part * (rows[i].d - rows[i - 1].d);
        }
    }
    return rows.back().d;
}

}  // namespace sillwalk::engine
