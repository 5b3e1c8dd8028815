#include "engine/select/validate_readings.hpp"

#include "engine/base/numeric_text.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string_view>

namespace sillwalk::engine {

namespace {

/// What a reading may be, in the unit in which the message names it.
template <class T>
struct Limits {
    T low{}, high{};
    const char* words;  ///< "0 to 300 mm"
};

constexpr Limits<Temperature> air_limits{celsius(-80), celsius(150), "-80 to 150 degC"};
constexpr Limits<Temperature> liquid_limits{celsius(-80), celsius(200), "-80 to 200 degC"};
constexpr Limits<double> share_limits{0.0, 1.0, "0 to 100 %"};
constexpr Limits<Length> height_limits{0.0 * metre, 300.0 * millimetre, "0 to 300 mm"};
constexpr Limits<Length> opening_limits{0.0 * metre, 1.0 * metre, "0 to 1 m"};
constexpr Limits<Length> slope_length_limits{0.0 * metre, 200.0 * metre, "0 to 200 m"};
constexpr Limits<Slope> lip_slope_limits{Slope::from_tangent(0), Slope::from_tangent(10), "flat to 10:1"};
constexpr Limits<Slope> slope_limits{Slope::from_tangent(-0.5), Slope::from_tangent(0.5), "-50 % to 50 %"};
constexpr Limits<Duration> contact_limits{0.0 * second, 30.0 * day, "0 to 30 days"};
constexpr Limits<Duration> parked_limits{0.0 * second, 3660.0 * day, "0 to 10 years"};
constexpr Limits<Frequency> washing_limits{0.0 / day, 1440.0 / day, "0 to 1440 a day"};
constexpr Limits<Frequency> push_rate_limits{0.0 / day, 30.0 * per_minute, "0 to 30 a minute"};
constexpr Limits<Mass> mass_limits{0.0 * kilogram, 20000.0 * kilogram, "0 to 20 000 kg"};
constexpr Limits<double> people_limits{0.0, 6.0, "0 to 6 people"};
constexpr Limits<double> trips_limits{0.0, 5000.0, "0 to 5000 a day"};
constexpr Limits<double> factor_limits{1.0, 5.0, "1 to 5"};
constexpr Limits<Length> frame_limits{50.0 * millimetre, 10.0 * metre, "50 mm to 10 m"};
constexpr Limits<Length> forward_limits{-5.0 * metre, 10.0 * metre, "-5 to 10 m"};
constexpr Limits<Length> above_floor_limits{0.0 * metre, 4.0 * metre, "0 to 4 m"};
constexpr Limits<Length> handle_limits{300.0 * millimetre, 2.2 * metre, "300 mm to 2.2 m"};
constexpr Limits<Speed> speed_limits{0.01 * metre_per_second, 7.0 * metre_per_second, "0.01 to 7 m/s"};
constexpr Limits<Length> distance_limits{0.0 * metre, 1000.0 * metre, "0 to 1000 m"};
constexpr Limits<Length> fork_limits{10.0 * millimetre, 300.0 * millimetre, "10 to 300 mm"};
constexpr Limits<Length> axle_limits{3.0 * millimetre, 60.0 * millimetre, "3 to 60 mm"};
constexpr Limits<Length> castor_height_limits{30.0 * millimetre, 600.0 * millimetre, "30 to 600 mm"};
constexpr Limits<Length> damage_limits{0.0 * metre, 1.0 * metre, "0 to 1 m"};

double bare(double value) {
    return value;
}
double bare(Temperature value) {
    return value.kelvin();
}
double bare(Slope value) {
    return value.tangent();
}
template <Dim D>
double bare(Quantity<D> value) {
    return value.si();
}

bool without_value(Known known) {
    return known == Known::not_accessible || known == Known::not_yet_read;
}

Result<Length> typed(std::string_view text, const Length&) {
    return parse_length(text);
}
Result<Mass> typed(std::string_view text, const Mass&) {
    return parse_mass(text);
}
Result<Temperature> typed(std::string_view text, const Temperature&) {
    return parse_temperature(text);
}
Result<Duration> typed(std::string_view text, const Duration&) {
    return parse_duration(text);
}
Result<Speed> typed(std::string_view text, const Speed&) {
    return parse_speed(text);
}
Result<Slope> typed(std::string_view text, const Slope&) {
    return parse_slope(text);
}

class Readings {
public:
    Readings(std::string path, std::vector<Error>& errors) : path_(std::move(path)), errors_(errors) {}

    template <class T>
    void check(std::string_view key, const Reading<T>& reading, const Limits<T>& limits) {
        known(key, reading.value.has_value(), reading.known);
        if (!(bare_tolerance(reading) >= 0))
            error(key, "the tolerance is negative; it is half the width of a range, 0 or more");
        if (!reading.value) return;
        const double value = bare(*reading.value);
        if (!(value >= bare(limits.low) && value <= bare(limits.high))) {
            error(key, fmt::format("the value is impossible here; {} would be right", limits.words));
        } else {
            as_entered(key, reading);
        }
    }
    template <class E>
    void check(std::string_view key, const Choice<E>& choice) {
        known(key, choice.value.has_value(), choice.known);
    }
    void error(std::string_view key, std::string message) {
        errors_.push_back({ErrorCode::bad_input, std::move(message), fmt::format("{}/{}", path_, key)});
    }

private:
    template <class T>
    static double bare_tolerance(const Reading<T>& reading) {
        return bare(reading.tolerance);
    }
    void known(std::string_view key, bool has_value, Known known) {
        if (has_value && without_value(known)) error(key, "there is a value, yet it is said to be not read");
        if (!has_value && !without_value(known)) error(key, "it is said to be read, yet there is no value");
    }
    /// What was typed must be what is stored; words that are no quantity are let be.
    template <class T>
    void as_entered(std::string_view key, const Reading<T>& reading) {
        if constexpr (requires { typed(reading.as_entered, *reading.value); }) {
            const Result<T> entered = typed(reading.as_entered, *reading.value);
            if (!entered) return;
            const double stored = bare(*reading.value), given = bare(*entered);
            constexpr double rounding = 1e-3;  // of the value: the whole units of a survey file are finer
            if (std::abs(stored - given) > rounding * std::max(std::abs(stored), std::abs(given)) + 1e-9) {
                error(key, fmt::format("'{}' was entered, but the stored value differs; make them the same",
                                       reading.as_entered));
            }
        }
    }

    std::string path_;
    std::vector<Error>& errors_;
};

void check_room(const Room& room, Readings readings) {
    readings.check("air", room.air, air_limits);
    readings.check("humidity", room.humidity, share_limits);
    readings.check("air_movement", room.air_movement);
    readings.check("wetness", room.wetness);
    readings.check("floor", room.floor);
    readings.check("hygiene", room.hygiene);
    readings.check("cleanroom_class", room.cleanroom_class);
    if (room.cleanroom_class.value && (*room.cleanroom_class.value < 0 || *room.cleanroom_class.value > 9)) {
        readings.error("cleanroom_class", "ISO classes run from 1 to 9; 0 says that it is no cleanroom");
    }
}

void check_crossing(const Crossing& crossing, Readings readings) {
    readings.check("kind", crossing.kind);
    readings.check("rise", crossing.rise, height_limits);
    readings.check("lip_slope", crossing.lip_slope, lip_slope_limits);
    readings.check("lip_height", crossing.lip_height, height_limits);
    readings.check("gap", crossing.gap, opening_limits);
    readings.check("slot", crossing.slot, opening_limits);
    readings.check("slope", crossing.slope, slope_limits);
    readings.check("slope_length", crossing.slope_length, slope_length_limits);
    readings.check("wetness", crossing.wetness);
    const Slope flat;
    if (crossing.lip_slope.value && *crossing.lip_slope.value > flat && crossing.lip_height.value &&
        crossing.lip_height.value->si() == 0) {
        readings.error("lip_slope", "a bevel is read, yet the bevelled part has no height");
    }
    if (crossing.slope.value && crossing.slope.value->tangent() != 0 && crossing.slope_length.value &&
        crossing.slope_length.value->si() == 0) {
        readings.error("slope_length", "there is a slope, yet it has no length");
    }
}

void check_washing(const Washing& washing, Readings readings) {
    readings.check("agent", washing.agent);
    readings.check("strength", washing.strength, share_limits);
    readings.check("temperature", washing.temperature, liquid_limits);
    readings.check("contact", washing.contact, contact_limits);
    readings.check("frequency", washing.frequency, washing_limits);
    readings.check("rinsed", washing.rinsed);
}

void check_cart_load(const Cart& cart, Readings& readings) {
    readings.check("tare", cart.tare, mass_limits);
    readings.check("payload", cart.payload, mass_limits);
    readings.check("sharing", cart.sharing);
    readings.check("length", cart.length, frame_limits);
    readings.check("width", cart.width, frame_limits);
    readings.check("cg_forward_loaded", cart.cg_forward_loaded, forward_limits);
    readings.check("cg_forward_empty", cart.cg_forward_empty, forward_limits);
    readings.check("cg_height_loaded", cart.cg_height_loaded, above_floor_limits);
    readings.check("cg_height_empty", cart.cg_height_empty, above_floor_limits);
    readings.check("load_factor", cart.load_factor, factor_limits);
    if (cart.tare.value && cart.tare.value->si() == 0)
        readings.error("tare", "a cart weighs something; more than 0 kg");
}

void check_cart_use(const Cart& cart, Readings& readings) {
    readings.check("moved_by", cart.moved_by);
    readings.check("people", cart.people, people_limits);
    readings.check("handle_height", cart.handle_height, handle_limits);
    readings.check("speed", cart.speed, speed_limits);
    readings.check("push_distance", cart.push_distance, distance_limits);
    readings.check("push_rate", cart.push_rate, push_rate_limits);
    readings.check("parked_loaded", cart.parked_loaded, parked_limits);
    readings.check("trips_per_day", cart.trips_per_day, trips_limits);
    const bool by_hand = cart.moved_by.value == MovedBy::hand;
    if (by_hand && cart.people.value && *cart.people.value < 1) {
        readings.error("people", "the cart is moved by hand, so 1 person or more pushes it");
    }
}

void check_cart_wheels(const Cart& cart, Readings& readings) {
    readings.check("fork_width", cart.fork_width, fork_limits);
    readings.check("axle_diameter", cart.axle_diameter, axle_limits);
    readings.check("overall_height_limit", cart.overall_height_limit, castor_height_limits);
    readings.check("plate_pattern", cart.plate_pattern);
    readings.check("static_ask", cart.static_ask);
    readings.check("non_marking", cart.non_marking);
    readings.check("present_wheel", cart.present_wheel);
    readings.check("present_bearing", cart.present_bearing);
    readings.check("present_rig", cart.present_rig);
}

void check_cart(const Cart& cart, const std::string& path, std::vector<Error>& errors) {
    Readings readings(path, errors);
    check_cart_load(cart, readings);
    check_cart_use(cart, readings);
    check_cart_wheels(cart, readings);
    for (std::size_t i = 0; i < cart.damage.size(); ++i) {
        Readings(fmt::format("{}/damage/{}", path, i), errors).check("size", cart.damage[i].size, damage_limits);
    }
    for (std::size_t i = 0; i < cart.route.size(); ++i) {
        Readings(fmt::format("{}/route/{}", path, i), errors).check("stay", cart.route[i].stay, contact_limits);
    }
}

}  // namespace

void validate_readings(const Survey& survey, std::vector<Error>& errors) {
    for (std::size_t i = 0; i < survey.rooms.size(); ++i) {
        check_room(survey.rooms[i], {fmt::format("/rooms/{}", i), errors});
    }
    for (std::size_t i = 0; i < survey.crossings.size(); ++i) {
        check_crossing(survey.crossings[i], {fmt::format("/crossings/{}", i), errors});
    }
    for (std::size_t i = 0; i < survey.washings.size(); ++i) {
        check_washing(survey.washings[i], {fmt::format("/washings/{}", i), errors});
    }
    for (std::size_t i = 0; i < survey.carts.size(); ++i) {
        check_cart(survey.carts[i], fmt::format("/carts/{}", i), errors);
    }
}

}  // namespace sillwalk::engine
