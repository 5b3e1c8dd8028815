"""Short-cylinder series against mpmath: roots of z J1(z) = Bi J0(z) and of z tan z = Bi found anew, 20 digits.

One room, and two rooms by superposition. grid_heat_series.py SOLVE_LINES"""
import itertools

from mpmath import besselj, besseljzero, cos, exp, findroot, mp, mpf, pi, sin

from grid import Comparison, solve

mp.dps = 20
TOLERANCE_K = 1e-9
TERMS_END = 60  # exp(-60) is far below 20 digits of any temperature here


def cylinder_root(biot, index):
    low = besseljzero(1, index) if index else mpf(0)
    high = besseljzero(0, index + 1)
    return findroot(lambda z: z * besselj(1, z) - biot * besselj(0, z), (low + mpf("1e-12"), high - mpf("1e-12")),
                    solver="anderson")


def wall_root(biot, index):
    low, high = index * pi, index * pi + pi / 2
    return findroot(lambda z: z * sin(z) - biot * cos(z), (low + mpf("1e-12"), high - mpf("1e-12")), solver="anderson")


def until_small(fourier, root, term):
    """Sum of terms until they vanish; each term a list (axis or middle, surface, mean)."""
    sums = [mpf(0)] * 3
    for index in range(400):
        z = root(index)
        if z * z * fourier > TERMS_END:
            return sums
        sums = [total + value * exp(-z * z * fourier) for total, value in zip(sums, term(z))]
    raise SystemExit("the series does not end")


def cylinder(biot, fourier):
    def term(z):
        j0, j1 = besselj(0, z), besselj(1, z)
        factor = 2 / z * j1 / (j0 * j0 + j1 * j1)
        return factor, factor * j0, factor * 2 * j1 / z

    return until_small(fourier, lambda index: cylinder_root(biot, index), term)


def wall(biot, fourier):
    def term(z):
        factor = 4 * sin(z) / (2 * z + sin(2 * z))
        return factor, factor * cos(z), factor * sin(z) / z

    return until_small(fourier, lambda index: wall_root(biot, index), term)


def left_over(body, film, time):
    """Share of the difference that is left: centre, running surface at mid-width, mean."""
    diameter, width, conductivity = (mpf(value) for value in body)
    diffusivity = conductivity / (1150 * mpf(1800))
    radius, half = diameter / 2, width / 2
    axis, surface, mean = cylinder(film * radius / conductivity, diffusivity * time / radius**2)
    middle, _, wall_mean = wall(film * half / conductivity, diffusivity * time / half**2)
    return {"core": axis * middle, "rim": surface * middle, "mean": mean * wall_mean}


BODIES = list(itertools.product(("0.075", "0.2"), ("0.03", "0.06"), ("0.2", "0.5")))
FILMS = (mpf("9.37"), mpf(34))
TIMES = ((600, 0), (1800, 0), (3600, 1800))
START, FIRST, SECOND = mpf(20), mpf(-30), mpf(4)


def call(body, film, times):
    stages = ",".join(f"{air}degC@{float(film)}W/m2K:{time}s" for air, time in zip((FIRST, SECOND), times) if time)
    return ["wheel-temperature", f"diameter={body[0]}m", f"width={body[1]}m", f"conductivity={body[2]}W/mK",
            "density=1150kg/m3", "specific-heat=1800J/kgK", f"start={float(START)}degC", "stages=" + stages.replace(".0degC", "degC")]


def main():
    grid = list(itertools.product(BODIES, FILMS, TIMES))
    answers = solve([call(*point) for point in grid])
    comparison = Comparison()
    for (body, film, times), answer in zip(grid, answers):
        whole = left_over(body, film, sum(times))
        second = left_over(body, film, times[1]) if times[1] else {"core": 1, "rim": 1, "mean": 1}
        for place in ("core", "rim", "mean"):
            wanted = START + (FIRST - START) * (1 - whole[place]) + (SECOND - FIRST) * (1 - second[place])
            comparison.check(place, f"{body} {film} {times}", answer["stages"][-1][f"{place}_C"], wanted, TOLERANCE_K)
    comparison.finish()


if __name__ == "__main__":
    main()
