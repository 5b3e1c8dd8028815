"""Contact, heat, people and sills against SciPy: its elliptic integrals, Bessel functions, normal distribution, root finder,
minimiser and stiff integrator. Each relation is written down anew here. grid_scipy.py SOLVE_LINES"""
import itertools
import math

import numpy
from scipy import integrate, optimize, special, stats

from grid import Comparison, solve

RHO_C = 1150.0 * 1800.0


def contact(comparison):
    """Hertz's elliptic patch: B/A = (E/k2 - K)/(K - E), k the ratio of its axes."""
    grid = list(itertools.product((500.0, 3000.0), (0.08, 0.2), (0.05, 0.4, 2.0), (40e6, 3e9)))
    calls = [["contact", f"load={load}N", f"diameter={diameter}m", "width=5m", f"crown-radius={crown}m",
              f"modulus={modulus}Pa", "poisson=0.45"] for load, diameter, crown, modulus in grid]
    for (load, diameter, crown, modulus), answer in zip(grid, solve(calls)):
        small, large = sorted((diameter / 2, crown))
        e_star = modulus / (1 - 0.45**2)

        def mismatch(k):
            first, second = special.ellipkm1(k * k), special.ellipe(1 - k * k)
            return (second / k**2 - first) / (first - second) - large / small

        k = optimize.brentq(mismatch, 1e-3, 1 - 1e-9, xtol=1e-15, rtol=1e-14)
        first, second = special.ellipkm1(k * k), special.ellipe(1 - k * k)
        long_axis = (3 * load * large * (first - second) / (math.pi * e_star * (1 - k * k))) ** (1 / 3)
        peak = 3 * load / (2 * math.pi * k * long_axis**2)
        comparison.check("contact", f"{load} {diameter} {crown} {modulus}", answer["peak_Pa"], peak, 1e-8, relative=True)


def push(comparison):
    """A limit is median (1 - CV z): the ratio of two of them gives z, whatever the spread."""
    task = ["action=push", "phase=sustain", "sex=female", "hand-height=1m", "distance=5m", "rate=1/5"]
    shares = (0.1, 0.25, 0.5, 0.75, 0.9, 0.99)
    answers = solve([["push-limit", *task, f"share={share}"] for share in shares])
    median = answers[0]["median_kgf"]
    spread = (1 - answers[4]["force_kgf"] / median) / stats.norm.ppf(0.9)
    for share, answer in zip(shares, answers):
        wanted = median * (1 - spread * stats.norm.ppf(share))
        comparison.check("push limit", f"{share}", answer["force_kgf"], wanted, 1e-9, relative=True)


def sills(comparison):
    """The push over an edge is the steepest climb of the axle, whose path is an arc about the edge."""
    grid = list(itertools.product((0.1, 0.2), (0.002, 0.01, 0.02)))
    calls = [["step", "load=1000N", f"diameter={diameter}m", f"rise={rise}m"] for diameter, rise in grid]
    for (diameter, rise), answer in zip(grid, solve(calls)):
        radius = diameter / 2
        reach = math.sqrt(radius**2 - (radius - rise) ** 2)

        def climb(x, radius=radius, reach=reach):
            return -(reach - x) / math.sqrt(radius**2 - (reach - x) ** 2)

        steepest = -optimize.minimize_scalar(climb, bounds=(0, reach), method="bounded", options={"xatol": 1e-12}).fun
        comparison.check("sill", f"{diameter} {rise}", answer["force_N"], 1000 * steepest, 1e-6, relative=True)


def one_room(comparison):
    """Centre of a short cylinder: product of the series of an endless one and of a wall."""
    grid = list(itertools.product((0.075, 0.15), (0.03, 0.05), (9.0, 30.0), (900, 5400)))
    calls = [["wheel-temperature", f"diameter={diameter}m", f"width={width}m", "conductivity=0.25W/mK",
              "density=1150kg/m3", "specific-heat=1800J/kgK", "start=20degC", f"stages=-25degC@{film}W/m2K:{time}s"]
             for diameter, width, film, time in grid]

    def axis(biot, fourier):
        total = 0.0
        for index in range(40):
            low = special.jn_zeros(1, index)[-1] if index else 0.0
            z = optimize.brentq(lambda z: z * special.j1(z) - biot * special.j0(z), low + 1e-12,
                                special.jn_zeros(0, index + 1)[-1] - 1e-12, xtol=1e-14)
            total += 2 / z * special.j1(z) / (special.j0(z) ** 2 + special.j1(z) ** 2) * math.exp(-z * z * fourier)
        return total

    def middle(biot, fourier):
        total = 0.0
        for index in range(40):
            z = optimize.brentq(lambda z: z * math.sin(z) - biot * math.cos(z), index * math.pi + 1e-12,
                                (index + 0.5) * math.pi - 1e-12, xtol=1e-14)
            total += 4 * math.sin(z) / (2 * z + math.sin(2 * z)) * math.exp(-z * z * fourier)
        return total

    for (diameter, width, film, time), answer in zip(grid, solve(calls)):
        radius, half, diffusivity = diameter / 2, width / 2, 0.25 / RHO_C
        left = axis(film * radius / 0.25, diffusivity * time / radius**2) * middle(film * half / 0.25, diffusivity * time / half**2)
        comparison.check("centre", f"{diameter} {width} {film} {time}", answer["stages"][0]["core_C"], -25 + 45 * left, 1e-8)


def two_rooms(comparison):
    """Finite volumes over radius and half width, marched by LSODA through rooms of different films."""
    rooms = [(-30.0, 30.0, 1800.0), (5.0, 9.0, 1200.0)]
    diameter, width, conductivity, cells_r, cells_x = 0.15, 0.05, 0.25, 40, 20
    answer, = solve([["wheel-temperature", f"diameter={diameter}m", f"width={width}m", f"conductivity={conductivity}W/mK",
                      "density=1150kg/m3", "specific-heat=1800J/kgK", "start=20degC",
                      "stages=" + ",".join(f"{air}degC@{film}W/m2K:{time}s" for air, film, time in rooms)]])
    edges = numpy.linspace(0, diameter / 2, cells_r + 1)
    dr, dx = edges[1], width / 2 / cells_x
    mean_r = (edges[1:] ** 2 - edges[:-1] ** 2) / (2 * dr)

    def rate(_, state, air, film):
        t = state.reshape(cells_r, cells_x)
        flow_r = conductivity * (t[1:] - t[:-1]) / dr * edges[1:-1, None]
        out_r = edges[-1] * (t[-1] - air) / (dr / 2 / conductivity + 1 / film)
        gain = numpy.zeros_like(t)
        gain[:-1] += flow_r / (mean_r[:-1, None] * dr)
        gain[1:] -= flow_r / (mean_r[1:, None] * dr)
        gain[-1] -= out_r / (mean_r[-1] * dr)
        flow_x = conductivity * (t[:, 1:] - t[:, :-1]) / dx
        gain[:, :-1] += flow_x / dx
        gain[:, 1:] -= flow_x / dx
        gain[:, -1] -= (t[:, -1] - air) / (dx / 2 / conductivity + 1 / film) / dx
        return (gain / RHO_C).ravel()

    state = numpy.full(cells_r * cells_x, 20.0)
    weights = numpy.repeat(mean_r, cells_x)
    for (air, film, time), stage in zip(rooms, answer["stages"]):
        state = integrate.solve_ivp(rate, (0, time), state, method="LSODA", args=(air, film), rtol=1e-7, atol=1e-7,
                                    lband=cells_x, uband=cells_x).y[:, -1]
        comparison.check("mean over rooms", f"{air} C", stage["mean_C"], numpy.average(state, weights=weights), 0.02)


def main():
    comparison = Comparison()
    for part in (contact, push, sills, one_room, two_rooms):
        part(comparison)
    comparison.finish()


if __name__ == "__main__":
    main()
