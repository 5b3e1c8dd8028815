"""Normal quantile inside the push limits, and its inverse inside the share, against mpmath's error functions.

The limit is median (1 - CV z): so (1 - force/median) over that at 90 % is z over z(90 %), whatever the spread.
grid_quantile.py SOLVE_LINES"""
import itertools

from mpmath import erf, erfinv, mp, mpf, sqrt

from grid import Comparison, solve

mp.dps = 30
RELATIVE = 1e-9
HEIGHT = "1m"
SHARES = ("0.1", "0.25", "0.4", "0.6", "0.75", "0.8", "0.95", "0.99")
TASKS = [[f"action={action}", f"phase={phase}", f"sex={sex}", f"hand-height={HEIGHT}", "distance=5m", "rate=1/5"]
         for action, phase, sex in itertools.product(("push", "pull"), ("start", "sustain"), ("female", "male"))]


def quantile(share):
    return sqrt(2) * erfinv(2 * mpf(share) - 1)


def below(z):
    return (1 + erf(z / sqrt(2))) / 2


def main():
    comparison = Comparison()
    spreads = []
    for task in TASKS:
        at_90, *others = solve([["push-limit", *task, f"share={share}"] for share in ("0.9", *SHARES)])
        median = at_90["median_kgf"]
        unit = (1 - mpf(at_90["force_kgf"]) / median) / quantile("0.9")
        spreads.append(float(unit))
        for share, answer in zip(SHARES, others):
            z = (1 - mpf(answer["force_kgf"]) / median) / unit
            comparison.check("z", f"{task} {share}", float(z), quantile(share), RELATIVE, relative=True)
        forces = [median * factor for factor in (0.3, 0.6, 0.9, 1.1)]
        for force, answer in zip(forces, solve([["push-share", *task, f"force={force:.17g}kgf"] for force in forces])):
            wanted = below((1 - mpf(force) / median) / unit)
            comparison.check("share", f"{task} {force}", answer["share"], wanted, RELATIVE)
    if not all(0.05 < spread < 0.6 for spread in spreads):
        raise SystemExit(f"the spreads {spreads} are not those of people")
    comparison.finish()


if __name__ == "__main__":
    main()
