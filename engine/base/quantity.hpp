#pragma once
/// Physical quantities with the unit in the type. SI inside; the bare number is reached only by naming a unit.
///   Length a = 3.0 * millimetre;   double x = a.in(metre);   Force f = mass * acceleration;
/// A product whose dimensions cancel is a plain double. There is no conversion to or from double.

#include <cmath>
#include <compare>

namespace sillwalk::engine {

/// Exponents of metre, kilogram, second and kelvin.
struct Dim {
    int length{}, mass{}, time{}, temperature{};
    friend constexpr bool operator==(Dim, Dim) = default;
    friend constexpr Dim operator+(Dim a, Dim b) {
        return {a.length + b.length, a.mass + b.mass, a.time + b.time, a.temperature + b.temperature};
    }
    friend constexpr Dim operator-(Dim a, Dim b) {
        return {a.length - b.length, a.mass - b.mass, a.time - b.time, a.temperature - b.temperature};
    }
};

template <Dim D>
class Quantity {
public:
    constexpr Quantity() = default;
    [[nodiscard]] static constexpr Quantity from_si(double value) {
        Quantity quantity;
        quantity.si_ = value;
        return quantity;
    }
    [[nodiscard]] constexpr double si() const { return si_; }
    [[nodiscard]] constexpr double in(Quantity unit) const { return si_ / unit.si_; }

    constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
    constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }

    friend constexpr Quantity operator+(Quantity a, Quantity b) { return from_si(a.si_ + b.si_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return from_si(a.si_ - b.si_); }
    friend constexpr Quantity operator-(Quantity a) { return from_si(-a.si_); }
    friend constexpr Quantity operator*(double k, Quantity a) { return from_si(k * a.si_); }
    friend constexpr Quantity operator*(Quantity a, double k) { return from_si(k * a.si_); }
    friend constexpr Quantity operator/(Quantity a, double k) { return from_si(a.si_ / k); }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;

private:
    double si_{};
};

/// Quantity<D>, or double where every exponent is zero.
template <Dim D>
struct OfDim {
    using type = Quantity<D>;
    static constexpr type make(double si) { return type::from_si(si); }
};
template <>
struct OfDim<Dim{}> {
    using type = double;
    static constexpr double make(double si) { return si; }
};

template <Dim A, Dim B>
constexpr auto operator*(Quantity<A> a, Quantity<B> b) {
    return OfDim<A + B>::make(a.si() * b.si());
}
template <Dim A, Dim B>
constexpr auto operator/(Quantity<A> a, Quantity<B> b) {
    return OfDim<A - B>::make(a.si() / b.si());
}
template <Dim A>
constexpr auto operator/(double k, Quantity<A> b) {
    return OfDim<Dim{} - A>::make(k / b.si());
}

template <Dim A>
auto sqrt(Quantity<A> a) {
    static_assert(A.length % 2 == 0 && A.mass % 2 == 0 && A.time % 2 == 0 && A.temperature % 2 == 0,
                  "the square root needs even exponents");
    return OfDim<Dim{A.length / 2, A.mass / 2, A.time / 2, A.temperature / 2}>::make(std::sqrt(a.si()));
}
template <Dim A>
constexpr Quantity<A> abs(Quantity<A> a) {
    return a.si() < 0 ? -a : a;
}

}  // namespace sillwalk::engine
