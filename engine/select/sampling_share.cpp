// Shares of variance from given draws.

#include "engine/base/contract.hpp"
#include "engine/select/sampling.hpp"

#include <algorithm>
#include <numeric>

namespace sillwalk::engine {

std::size_t sampling_classes(std::size_t draws) {
    return std::clamp<std::size_t>(draws / 100, 2, 32);
}

double first_order_share(std::span<const double> quantile, std::span<const std::vector<double>> outputs,
                         std::size_t classes) {
    EXPECT_CONTRACT(classes >= 2);
    std::vector<std::size_t> class_of(quantile.size()), count(classes, 0);
    for (std::size_t i = 0; i < quantile.size(); ++i) {
        class_of[i] = std::min(classes - 1, static_cast<std::size_t>(quantile[i] * static_cast<double>(classes)));
        ++count[class_of[i]];
    }
    const auto used = static_cast<double>(classes) - static_cast<double>(std::count(count.begin(), count.end(), 0u));
    const auto draws = static_cast<double>(quantile.size());
    double all = 0.0, between = 0.0;
    for (const std::vector<double>& output : outputs) {
        EXPECT_CONTRACT(output.size() == quantile.size());
        std::vector<double> sum(classes, 0.0);
        for (std::size_t i = 0; i < output.size(); ++i) sum[class_of[i]] += output[i];
        const double mean = std::accumulate(output.begin(), output.end(), 0.0) / draws;
        for (const double value : output) all += (value - mean) * (value - mean);
        for (std::size_t k = 0; k < classes; ++k) {
            if (count[k] == 0) continue;
            const double off = sum[k] / static_cast<double>(count[k]) - mean;
            between += static_cast<double>(count[k]) * off * off;
        }
    }
    if (!(all > 0.0) || !(draws > used)) return 0.0;
    // Chance alone gives each class but one its part of the variance that is left within the classes.
    const double within = (all - between) / (draws - used);
    return (between - (used - 1.0) * within) / all;
}

}  // namespace sillwalk::engine
