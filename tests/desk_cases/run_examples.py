"""Every calculation of `solve --list` has help whose example works: run_examples.py BINARY

Also: output for people has one value per line, and bad input is one line that names the key."""
import json
import shlex
import subprocess
import sys


def run(binary, *words):
    return subprocess.run([binary, *words], capture_output=True, text=True, timeout=60)


def example_faults(binary, name):
    told = run(binary, "solve", name, "--help")
    for part in ("formula", "source", "keys in", "keys out", "example"):
        if part not in told.stdout:
            yield f"{name} --help has no '{part}'"
    words = shlex.split(told.stdout.strip().split("\n")[-1])
    if words[:2] != ["sillwalk-desk", "solve"]:
        yield f"{name} --help does not end in an example"
        return
    answer = run(binary, *words[1:], "--json")
    if answer.returncode != 0:
        yield f"the example of {name} fails: {answer.stderr or answer.stdout}"
        return
    keys = list(json.loads(answer.stdout))
    lines = run(binary, *words[1:]).stdout.strip().split("\n")
    if keys != ["stages"] and [line.split()[0] for line in lines] != keys:
        yield f"{name}: the lines for people do not show the same values: {lines}"


BAD = [
    ("step load=100 diameter=5in rise=1/4in", "load", "kg"),
    ("step load=100kg diameter=-5in rise=1/4in", "diameter", "over 0"),
    ("step load=100kg diameter=5furlong rise=1/4in", "diameter", "ft or km"),
    ("step load=100kg diamter=5in rise=1/4in", "diamter", "diameter"),
    ("step load=100kg diameter=5in", "rise", "missing"),
    ("step load=100kg diameter=5in diameter=6in rise=1/4in", "diameter", "twice"),
    ("step load=100kg diameter=12,5mm rise=1/4in", "diameter", "decimal point"),
    ("wheel-load tare=1kg payload=1kg castors=4 sharing=most", "sharing", "all-but-one"),
    ("wheel-load tare=1kg payload=1kg castors=2.5 sharing=all", "castors", "whole number"),
    ("wheel-load tare=1kg payload=1kg castors=3 sharing=diagonal", "castors", "4"),
    ("rolling load=1kN diameter=5in f=1mm slope=12", "slope", "1:12"),
    ("dew-point temperature=20degC humidity=120%", "humidity", "100 %"),
    ("dew-point temperature=-300degC humidity=50%", "temperature", "absolute zero"),
    ("chemical material=pu-ethr agent=acetone", "material", "pu-ether"),
    ("chemical material=pu-ether agent=acetnoe", "agent", "acetone"),
    ("wheel-temperature diameter=5in width=2in conductivity=0.2W/mK density=1g/cm3 specific-heat=1kJ/kgK "
     "start=20degC stages=-25degF@34W/m2K", "stages", "AIR@FILM:TIME"),
    ("stepp load=100kg", "stepp", "step"),
]


def bad_faults(binary, words, key, hint):
    answer = run(binary, "solve", *words.split(" "), "--json")
    if answer.returncode != 2 or answer.stdout:
        yield f"{words}: exit status {answer.returncode}, output {answer.stdout!r}"
    line = answer.stderr.rstrip("\n")
    if "\n" in line or not line.startswith(key + ":") or hint not in line:
        yield f"{words}: said {line!r}, wanted one line on {key} with {hint!r}"


def main():
    binary = sys.argv[1]
    names = [line.split()[0] for line in run(binary, "solve", "--list").stdout.strip().split("\n")]
    found = [] if len(names) == 20 else [f"{len(names)} calculations listed instead of 20"]
    for name in names:
        found += example_faults(binary, name)
    for words, key, hint in BAD:
        found += bad_faults(binary, words, key, hint)
    print("\n".join(found) or f"{len(names)} examples work, {len(BAD)} kinds of bad input are told in one line")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
