#pragma once
/// One day of stays as an operator on the wheel's cells, and the state that the day repeats.
///
/// A stay takes the cells U (radius by half width) to T + E_r (U - T) E_x'. Stays in a row multiply: the day is
/// U -> b + P_r U P_x', so that n days are summed by doubling: 2^k days cost k steps. Internal to walk.

#include "engine/walk/thermal_wheel.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace sillwalk::engine {

struct Stay {
    const FilmModel* model = nullptr;
    double air_K = 0, seconds = 0;
};

/// Temperatures of the places, kelvin.
using PlaceTemperatures = std::array<double, wheel_places>;

class Day {
public:
    using Cells = std::array<double, ThermalWheel::max_rows * ThermalWheel::max_columns>;
    struct Extremes {
        double coldest_K = 0, hottest_K = 0;
        std::size_t coldest_stay = 0, hottest_stay = 0;
    };
    struct Result {
        std::vector<PlaceTemperatures> at_end;  ///< of each stay, on the repeated day
        std::vector<Cells> at_start;            ///< of each stay
        Extremes extremes;                      ///< of core and rim, sampled at stay ends and five times within
        int days = 0;
        bool repeats = false;
    };

    /// Precondition: at least one stay, seconds >= 0.
    explicit Day(std::vector<Stay> stays);
    [[nodiscard]] Result repeat() const;
    /// Cells after `seconds` in a stay's room.
    [[nodiscard]] PlaceTemperatures within(const Stay& stay, const Cells& start, double seconds) const;

private:
    struct Propagator {
        std::array<double, ThermalWheel::max_rows * ThermalWheel::max_rows> radial;
        std::array<double, ThermalWheel::max_columns * ThermalWheel::max_columns> axial_turned;  // transposed
    };
    [[nodiscard]] Propagator propagator(const FilmModel& model, double seconds) const;
    void apply(const Propagator& by, Cells& cells) const;
    void stand(std::size_t stay, Cells& cells) const;
    [[nodiscard]] PlaceTemperatures places(const Stay& stay, const Cells& cells) const;
    void look_within(std::size_t stay, const Cells& start, Extremes& extremes) const;
    [[nodiscard]] Cells settled(int& days) const;

    std::size_t rows_, columns_;
    std::vector<Stay> stays_;
    std::vector<Propagator> propagators_;
    double fading_ = 0;  ///< the slowest mode loses at least exp(-fading) a day
};

}  // namespace sillwalk::engine
