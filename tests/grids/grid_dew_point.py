"""Dew point against mpmath's root of e(dew) = h e(air) with the same published vapour-pressure equation (WMO guide).

grid_dew_point.py SOLVE_LINES"""
import itertools

from mpmath import exp, findroot, mp, mpf

from grid import Comparison, solve

mp.dps = 30
TOLERANCE_K = 1e-9


def vapour_pressure(celsius):
    return mpf("6.112") * exp(mpf("17.62") * celsius / (mpf("243.12") + celsius))


def dew_point(air, humidity):
    target = humidity * vapour_pressure(air)
    return findroot(lambda t: vapour_pressure(t) / target - 1, (mpf(-120), air), solver="anderson", maxsteps=500)


def main():
    grid = list(itertools.product(range(-45, 61, 5), ("1", "5", "20", "40", "60", "80", "90", "99")))
    answers = solve([["dew-point", f"temperature={air}degC", f"humidity={percent}%"] for air, percent in grid])
    comparison = Comparison()
    for (air, percent), answer in zip(grid, answers):
        wanted = dew_point(mpf(air), mpf(percent) / 100)
        comparison.check("dew point", f"{air} C {percent} %", answer["dew_point_C"], wanted, TOLERANCE_K)
    comparison.finish()


if __name__ == "__main__":
    main()
