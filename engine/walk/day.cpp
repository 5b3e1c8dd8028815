#include "engine/walk/day.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

namespace sillwalk::engine {
namespace {

constexpr double repeat_limit_K = 0.1;
constexpr double faded = 16.0;  // e^-16 of 100 K is 10 microkelvin
constexpr int most_doublings = 30;

/// out (n x m) = left (n x k) * right (k x m). A width known to the compiler makes it four times as fast. Sanitizers
/// leave it alone, or it is a third of what their tests take: multiply() has looked at the sizes.
template <std::size_t m>
__attribute__((no_sanitize("address", "undefined"))) void multiply_wide(const double* left, const double* right,
                                                                        double* out, std::size_t n, std::size_t k) {
    for (std::size_t i = 0; i < n; ++i) {
        double row[m] = {};
        for (std::size_t l = 0; l < k; ++l) {
            const double factor = left[i * k + l];
            for (std::size_t j = 0; j < m; ++j) row[j] += factor * right[l * m + j];
        }
        for (std::size_t j = 0; j < m; ++j) out[i * m + j] = row[j];
    }
}

void multiply(std::span<const double> left, std::span<const double> right, std::span<double> out, std::size_t n,
              std::size_t k, std::size_t m) {
    EXPECT_CONTRACT(left.size() >= n * k && right.size() >= k * m && out.size() >= n * m);
    switch (m) {
        case 1:
            return multiply_wide<1>(left.data(), right.data(), out.data(), n, k);
        case 8:
            return multiply_wide<8>(left.data(), right.data(), out.data(), n, k);
        case 14:
            return multiply_wide<14>(left.data(), right.data(), out.data(), n, k);
        default:
            EXPECT_CONTRACT(false);  // the sizes of thermal_wheel.cpp
    }
}

void transpose(const double* in, double* out, std::size_t n) {
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) out[j * n + i] = in[i * n + j];
    }
}

void take_in(Day::Extremes& extremes, double kelvin, std::size_t stay) {
    if (kelvin < extremes.coldest_K) {
        extremes.coldest_K = kelvin;
        extremes.coldest_stay = stay;
    }
    if (kelvin > extremes.hottest_K) {
        extremes.hottest_K = kelvin;
        extremes.hottest_stay = stay;
    }
}

double mean_air(const std::vector<Stay>& stays) {
    double weighted = 0.0, seconds = 0.0, plain = 0.0;
    for (const Stay& stay : stays) {
        weighted += stay.air_K * stay.seconds;
        seconds += stay.seconds;
        plain += stay.air_K;
    }
    return seconds > 0.0 ? weighted / seconds : plain / static_cast<double>(stays.size());
}

}  // namespace

Day::Day(std::vector<Stay> stays) : stays_(std::move(stays)) {
    EXPECT_CONTRACT(!stays_.empty());
    rows_ = stays_.front().model->radial.size();
    columns_ = stays_.front().model->axial.size();
    propagators_.reserve(stays_.size());
    for (const Stay& stay : stays_) {
        propagators_.push_back(propagator(*stay.model, stay.seconds));
        fading_ += (stay.model->radial.rates().front() + stay.model->axial.rates().front()) * stay.seconds;
    }
}

Day::Propagator Day::propagator(const FilmModel& model, double seconds) const {
    Propagator result;
    std::array<double, ThermalWheel::max_rows * ThermalWheel::max_rows> fading;
    const auto fade = [&](const HeatLine& line) {
        const std::size_t n = line.size();
        std::array<double, ThermalWheel::max_rows> left;
        for (std::size_t mode = 0; mode < n; ++mode) left[mode] = std::exp(-line.rates()[mode] * seconds);
        for (std::size_t cell = 0; cell < n; ++cell) {
            for (std::size_t mode = 0; mode < n; ++mode) {
                fading[cell * n + mode] = line.from_modes()[cell * n + mode] * left[mode];
            }
        }
    };
    fade(model.radial);
    multiply(fading, model.radial.to_modes(), result.radial, rows_, rows_, rows_);
    std::array<double, ThermalWheel::max_columns * ThermalWheel::max_columns> axial;
    fade(model.axial);
    multiply(fading, model.axial.to_modes(), axial, columns_, columns_, columns_);
    transpose(axial.data(), result.axial_turned.data(), columns_);
    return result;
}

void Day::apply(const Propagator& by, Cells& cells) const {
    Cells half;
    multiply(by.radial, cells, half, rows_, rows_, columns_);
    multiply(half, by.axial_turned, cells, rows_, columns_, columns_);
}

void Day::stand(std::size_t stay, Cells& cells) const {
    const double air = stays_[stay].air_K;
    const std::size_t count = rows_ * columns_;
    for (std::size_t k = 0; k < count; ++k) cells[k] -= air;
    apply(propagators_[stay], cells);
    for (std::size_t k = 0; k < count; ++k) cells[k] += air;
}

PlaceTemperatures Day::places(const Stay& stay, const Cells& cells) const {
    const FilmModel& model = *stay.model;
    PlaceTemperatures result;
    result.fill(stay.air_K);
    for (std::size_t i = 0; i < rows_; ++i) {
        double middle = 0.0, mean = 0.0;
        for (std::size_t j = 0; j < columns_; ++j) {
            const double over_air = cells[i * columns_ + j] - stay.air_K;
            middle += over_air * model.axial_middle[j];
            mean += over_air * model.axial_mean[j];
        }
        for (std::size_t place = 0; place < wheel_places; ++place) {
            const bool is_mean = place == static_cast<std::size_t>(WheelPlace::mean);
            result[place] += model.radial_views[place][i] * (is_mean ? mean : middle);
        }
    }
    return result;
}

PlaceTemperatures Day::within(const Stay& stay, const Cells& start, double seconds) const {
    Cells cells = start;
    const std::size_t count = rows_ * columns_;
    for (std::size_t k = 0; k < count; ++k) cells[k] -= stay.air_K;
    apply(propagator(*stay.model, seconds), cells);
    for (std::size_t k = 0; k < count; ++k) cells[k] += stay.air_K;
    return places(stay, cells);
}

void Day::look_within(std::size_t stay, const Cells& start, Extremes& extremes) const {
    const FilmModel& model = *stays_[stay].model;
    const double air = stays_[stay].air_K;
    // modes = to_r (start - air) to_x'
    Cells over_air = start, half, modes;
    for (std::size_t k = 0; k < rows_ * columns_; ++k) over_air[k] -= air;
    multiply(model.radial.to_modes(), over_air, half, rows_, rows_, columns_);
    multiply(half, model.axial_to_modes_turned, modes, rows_, columns_, columns_);
    std::array<double, ThermalWheel::max_rows> left_radial{};
    std::array<double, ThermalWheel::max_columns> left_axial{};
    const double least = stays_[stay].seconds / 32.0;
    for (std::size_t i = 0; i < rows_; ++i) left_radial[i] = std::exp(-model.radial.rates()[i] * least);
    for (std::size_t j = 0; j < columns_; ++j) left_axial[j] = std::exp(-model.axial.rates()[j] * least);
    for (int doubling = 0; doubling < 5; ++doubling) {  // 1/32, 1/16, 1/8, 1/4 and 1/2 of the stay
        double core = air, rim = air;
        for (std::size_t i = 0; i < rows_; ++i) {
            double sum = 0.0;
            for (std::size_t j = 0; j < columns_; ++j) {
                sum += modes[i * columns_ + j] * left_axial[j] * model.axial_on_modes[j];
            }
            core += sum * left_radial[i] * model.core_on_modes[i];
            rim += sum * left_radial[i] * model.rim_on_modes[i];
        }
        for (const double kelvin : {core, rim}) take_in(extremes, kelvin, stay);
        for (std::size_t i = 0; i < rows_; ++i) left_radial[i] *= left_radial[i];
        for (std::size_t j = 0; j < columns_; ++j) left_axial[j] *= left_axial[j];
    }
}

Day::Cells Day::settled(int& days) const {
    const std::size_t count = rows_ * columns_;
    Cells start;
    start.fill(mean_air(stays_));
    Cells gained = start;  // over `days` days, from the start
    for (std::size_t stay = 0; stay < stays_.size(); ++stay) stand(stay, gained);
    for (std::size_t k = 0; k < count; ++k) gained[k] -= start[k];
    days = 1;
    Propagator whole = propagators_.front(), product;
    for (std::size_t stay = 1; stay < stays_.size(); ++stay) {
        multiply(propagators_[stay].radial, whole.radial, product.radial, rows_, rows_, rows_);
        multiply(whole.axial_turned, propagators_[stay].axial_turned, product.axial_turned, columns_, columns_,
                 columns_);
        std::swap(whole, product);
    }
    for (int doubling = 0; doubling < most_doublings && fading_ * days < faded; ++doubling) {
        Cells later = gained;
        apply(whole, later);
        for (std::size_t k = 0; k < count; ++k) gained[k] += later[k];
        multiply(whole.radial, whole.radial, product.radial, rows_, rows_, rows_);
        multiply(whole.axial_turned, whole.axial_turned, product.axial_turned, columns_, columns_, columns_);
        std::swap(whole, product);
        days *= 2;
    }
    for (std::size_t k = 0; k < count; ++k) gained[k] += start[k];
    return gained;
}

Day::Result Day::repeat() const {
    Result result;
    Cells cells = settled(result.days);
    result.at_start.reserve(stays_.size());
    result.at_end.reserve(stays_.size());
    for (std::size_t stay = 0; stay < stays_.size(); ++stay) {
        result.at_start.push_back(cells);
        stand(stay, cells);
        result.at_end.push_back(places(stays_[stay], cells));
    }
    result.days += 1;
    // Conduction only evens out: no crossing changes from day to day by more than the cells at the day's start do. And
    // no mode fades slower than e^-fading a day, so this ratio is never below that of successive changes.
    double change = 0.0;
    for (std::size_t k = 0; k < rows_ * columns_; ++k) {
        change = std::max(change, std::abs(cells[k] - result.at_start.front()[k]));
    }
    const double ratio = std::exp(-fading_);
    result.repeats = change == 0.0 || (ratio < 1.0 && change * ratio / (1.0 - ratio) < repeat_limit_K);

    const auto core = static_cast<std::size_t>(WheelPlace::core), rim = static_cast<std::size_t>(WheelPlace::rim);
    result.extremes = {result.at_end[0][core], result.at_end[0][core], 0, 0};
    for (std::size_t stay = 0; stay < stays_.size(); ++stay) {
        look_within(stay, result.at_start[stay], result.extremes);
        for (const std::size_t place : {core, rim}) take_in(result.extremes, result.at_end[stay][place], stay);
    }
    return result;
}

}  // namespace sillwalk::engine
