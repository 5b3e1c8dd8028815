"""Rooms of different film coefficients against an independent discretisation: quadratic finite elements over radius and half
width, both directions in one system, exact in time by NumPy's eigenvectors of the whole of it.

grid_heat_march.py SOLVE_LINES"""
import itertools

import numpy

from grid import Comparison, solve

TOLERANCE_K = 0.02  # the project asks 0.05 K of its own two methods
POINTS = numpy.array([-0.7745966692414834, 0.0, 0.7745966692414834])
WEIGHTS = numpy.array([5.0, 8.0, 5.0]) / 9
RHO_C = 1150.0 * 1800.0


def line(length, elements, radial):
    """Mass and stiffness matrices of quadratic elements, and the integral of each shape; weight r where radial."""
    nodes = 2 * elements + 1
    mass, stiff, shape_sum = numpy.zeros((nodes, nodes)), numpy.zeros((nodes, nodes)), numpy.zeros(nodes)
    step = length / elements
    for element in range(elements):
        index = slice(2 * element, 2 * element + 3)
        for point, weight in zip(POINTS, WEIGHTS):
            at = (element + 0.5 + 0.5 * point) * step
            factor = weight * step / 2 * (at if radial else 1.0)
            shape = numpy.array([point * (point - 1) / 2, 1 - point * point, point * (point + 1) / 2])
            slope = numpy.array([point - 0.5, -2 * point, point + 0.5]) * 2 / step
            mass[index, index] += factor * numpy.outer(shape, shape)
            stiff[index, index] += factor * numpy.outer(slope, slope)
            shape_sum[index] += factor * shape
    return mass, stiff, shape_sum


class Wheel:
    def __init__(self, diameter, width, conductivity):
        self.radius, self.half, self.conductivity = diameter / 2, width / 2, conductivity
        self.radial, self.axial = line(self.radius, 9, True), line(self.half, 6, False)
        self.kelvin = numpy.zeros((19, 13))

    def stand(self, air, film, seconds):
        radial_mass, radial_stiff, _ = self.radial
        axial_mass, axial_stiff, _ = self.axial
        radial_stiff, axial_stiff = self.conductivity * radial_stiff, self.conductivity * axial_stiff
        radial_stiff[-1, -1] += film * self.radius
        axial_stiff[-1, -1] += film
        mass = RHO_C * numpy.kron(radial_mass, axial_mass)
        stiff = numpy.kron(radial_stiff, axial_mass) + numpy.kron(radial_mass, axial_stiff)
        lower = numpy.linalg.cholesky(mass)
        half_done = numpy.linalg.solve(lower, stiff)
        rates, modes = numpy.linalg.eigh(numpy.linalg.solve(lower, half_done.T))
        over_air = lower.T @ (self.kelvin - air).ravel()
        later = modes @ (numpy.exp(-rates * seconds) * (modes.T @ over_air))
        self.kelvin = air + numpy.linalg.solve(lower.T, later).reshape(self.kelvin.shape)

    def seen(self):
        mean = self.radial[2] @ self.kelvin @ self.axial[2] / (self.radial[2].sum() * self.axial[2].sum())
        return {"core": self.kelvin[0, 0], "rim": self.kelvin[-1, 0], "mean": mean}


BODIES = list(itertools.product((0.1, 0.2), (0.03, 0.06), (0.21, 0.5)))
ROOMS = [(-30, 34.0, 3600), (4, 9.37, 1800), (20, 15.8, 2400)]


def main():
    stages = ",".join(f"{air}degC@{film}W/m2K:{time}s" for air, film, time in ROOMS)
    answers = solve([["wheel-temperature", f"diameter={diameter}m", f"width={width}m", f"conductivity={k}W/mK",
                      "density=1150kg/m3", "specific-heat=1800J/kgK", "start=20degC", f"stages={stages}"]
                     for diameter, width, k in BODIES])
    comparison = Comparison()
    for body, answer in zip(BODIES, answers):
        wheel = Wheel(*body)
        wheel.kelvin += 20.0
        for number, room in enumerate(ROOMS):
            wheel.stand(*room)
            for place, wanted in wheel.seen().items():
                comparison.check(place, f"{body} room {number + 1}", answer["stages"][number][f"{place}_C"], wanted,
                                 TOLERANCE_K)
    comparison.finish()


if __name__ == "__main__":
    main()
