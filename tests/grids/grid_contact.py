"""Elliptic Hertz contact against mpmath, two ways.

(1) The ratio of the axes from the transcendental equation with ellipk and ellipe, solved by bisection.
(2) Without elliptic integrals: the pressure W 3/(2 pi a b) sqrt(1 - x2/a2 - y2/b2) on the patch that the program gives must press
the half space into the wheel's own shape. Johnson, Contact Mechanics, ch. 4 (from memory): A, B and the approach are
(3 W/2 pi E*) times integrals of t from 0 to infinity, of 1/((a2+t2)^3/2 (b2+t2)^1/2), the same with a and b exchanged, and
1/((a2+t2)(b2+t2))^1/2. grid_contact.py SOLVE_LINES"""
import itertools

from mpmath import ellipe, ellipk, findroot, inf, mp, mpf, pi, quad, sqrt

from grid import Comparison, solve

mp.dps = 20
RELATIVE = 1e-9
GRID = list(itertools.product(("1000", "5000"), ("0.1", "0.25"), ("0.03", "0.2", "3"), ("50e6", "2.9e9")))
POISSON = mpf("0.4")


def semi_axes(load, small_radius, large_radius, e_star):
    """(short, long) half axes: short along the smaller radius."""
    ratio = large_radius / small_radius  # B/A
    if ratio == 1:
        k = mpf(1)
        long_axis = (3 * load * small_radius / (4 * e_star)) ** (mpf(1) / 3)
        return long_axis, long_axis

    def mismatch(k):
        m = 1 - k * k
        return (ellipe(m) / k**2 - ellipk(m)) / (ellipk(m) - ellipe(m)) - ratio

    k = findroot(mismatch, (mpf("1e-4"), mpf(1) - mpf("1e-9")), solver="anderson", maxsteps=200)
    m = 1 - k * k
    a = (3 * load * (ellipk(m) - ellipe(m)) / (2 * pi * e_star * m / (2 * large_radius))) ** (mpf(1) / 3)
    return k * a, a


def shape(load, e_star, x, y):
    """Curvatures 1/(2 R) along x and y and the approach, from the patch with half axes x and y."""
    factor = 3 * load / (2 * pi * e_star)
    scale = max(x, y)
    p, q = x / scale, y / scale
    ends = sorted({mpf(0), p, q, mpf(10), inf})
    along_x = quad(lambda t: 1 / ((p * p + t * t) * sqrt((p * p + t * t) * (q * q + t * t))), ends) / scale**3
    along_y = quad(lambda t: 1 / ((q * q + t * t) * sqrt((p * p + t * t) * (q * q + t * t))), ends) / scale**3
    deep = quad(lambda t: 1 / sqrt((p * p + t * t) * (q * q + t * t)), ends) / scale
    return factor * along_x, factor * along_y, factor * deep


def main():
    calls = [["contact", f"load={load}N", f"diameter={diameter}m", "width=5m", f"crown-radius={crown}m",
              f"modulus={modulus}Pa", "poisson=0.4"] for load, diameter, crown, modulus in GRID]
    comparison = Comparison()
    for (load, diameter, crown, modulus), answer in zip(GRID, solve(calls)):
        where = f"{load} N, {diameter} m, crown {crown} m, {modulus} Pa"
        load, rolling, crown, e_star = mpf(load), mpf(diameter) / 2, mpf(crown), mpf(modulus) / (1 - POISSON**2)
        short, long_axis = semi_axes(load, min(rolling, crown), max(rolling, crown), e_star)
        along, across = (short, long_axis) if rolling <= crown else (long_axis, short)
        x, y = mpf(answer["half_width_m"]), mpf(answer["half_length_m"])
        for kind, got, wanted in (("along", x, along), ("across", y, across),
                                  ("peak", answer["peak_Pa"], 3 * load / (2 * pi * along * across))):
            comparison.check(kind, where, float(got), wanted, RELATIVE, relative=True)
        of_rolling, of_crown, approach = shape(load, e_star, x, y)
        for kind, got, wanted in (("1/2R", of_rolling, 1 / (2 * rolling)), ("1/2 crown", of_crown, 1 / (2 * crown)),
                                  ("approach", answer["approach_m"], approach)):
            comparison.check(kind, where, float(got), wanted, RELATIVE, relative=True)
    comparison.finish()


if __name__ == "__main__":
    main()
