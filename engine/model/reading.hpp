#pragma once
/// A reading: the value, what was typed, how far it may be off, and how it is known.

#include "engine/base/units.hpp"

#include <optional>
#include <string>

namespace sillwalk::engine {

/// How a value is known. The last two have no value. "Zero", "none" (a measured zero) and "not yet read" are different.
enum class Known {
    measured,        ///< with an instrument, named in `method`
    by_eye,          ///< without an instrument
    told,            ///< by the customer
    copied,          ///< taken over from another place, data sheet or visit
    assumed,         ///< filled in by the tool or the specialist; shown as an assumption wherever it matters
    not_accessible,  ///< could not be reached
    not_yet_read,
};

template <class T>
struct ToleranceOf {
    using type = T;
};
template <>
struct ToleranceOf<Temperature> {
    using type = TemperatureChange;
};

/// A number read on site. `tolerance` is the half-width of the range the true value lies in (rectangular), never
/// negative.
template <class T>
struct Reading {
    std::optional<T> value;
    typename ToleranceOf<T>::type tolerance{};
    Known known = Known::not_yet_read;
    std::string as_entered;  ///< exactly what was typed, with its unit: "3/4 in"; empty where nothing was typed
    std::string method;      ///< instrument or source: "tape 1/16 in"
    friend bool operator==(const Reading&, const Reading&) = default;
};

/// A choice made on site, with no tolerance.
template <class E>
struct Choice {
    std::optional<E> value;
    Known known = Known::not_yet_read;
    std::string as_entered;
    friend bool operator==(const Choice&, const Choice&) = default;
};

template <class T>
[[nodiscard]] Reading<T> measured(T value, typename ToleranceOf<T>::type tolerance = {}) {
    return Reading<T>{value, tolerance, Known::measured, {}, {}};
}
template <class E>
[[nodiscard]] Choice<E> chosen(E value) {
    return Choice<E>{value, Known::measured, {}};
}

}  // namespace sillwalk::engine
