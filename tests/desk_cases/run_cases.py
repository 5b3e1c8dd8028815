"""Drives the real sillwalk-desk over files of cases: run_cases.py BINARY CASES.json...

Each case calls `BINARY solve NAME key=value... --json` and compares what it prints with what the source printed."""
import json
import subprocess
import sys

TIMEOUT_S = 60


def value_at(printed, path):
    """Follows "stages.0.core_C" into lists and objects."""
    for step in path.split("."):
        printed = printed[int(step)] if isinstance(printed, list) else printed[step]
    return printed


def agrees(got, expected, tolerance):
    if isinstance(expected, (bool, str)):
        return type(got) is type(expected) and got == expected
    if isinstance(got, bool) or not isinstance(got, (int, float)):
        return False
    if tolerance.startswith("abs "):
        return abs(got - expected) <= float(tolerance[4:])
    return abs(got - expected) <= max(float(tolerance), 1e-9) * abs(expected)


def check_bad_input(run):
    said = (run.stdout + run.stderr).strip().split("\n")
    if run.stdout.strip():
        yield "bad input wrote to the output instead of the error stream"
    if len(said) != 1 or not said[0]:
        yield f"bad input must give one line, gave {len(said)}"


def check_refusal(run):
    printed = json.loads(run.stdout)
    if list(printed) != ["refused"] or not printed["refused"]:
        yield "a refusal must print one object with its reason"


def check_values(run, case):
    printed = json.loads(run.stdout)
    for path, expected in case["expect"].items():
        try:
            got = value_at(printed, path)
        except (KeyError, IndexError, TypeError):
            yield f"{path} is not there"
            continue
        if not agrees(got, expected, case["tolerance"]):
            yield f"{path} is {got}, the source has {expected} (tolerance {case['tolerance']})"


def faults(binary, case):
    command = [binary, "solve", case["solve"], *case["args"], "--json"]
    run = subprocess.run(command, capture_output=True, text=True, timeout=TIMEOUT_S)
    status = case.get("exit", 0)
    if run.returncode != status:
        yield f"exit status {run.returncode} instead of {status}: {(run.stderr or run.stdout).strip()}"
        return
    try:
        if status == 2:
            yield from check_bad_input(run)
        elif status == 3:
            yield from check_refusal(run)
        else:
            yield from check_values(run, case)
    except ValueError:
        yield f"not JSON: {run.stdout!r}"


def main():
    binary, *files = sys.argv[1:]
    checked = wrong = 0
    for name in files:
        with open(name, encoding="utf-8") as file:
            cases = json.load(file)["cases"]
        for case in cases:
            checked += 1
            found = list(faults(binary, case))
            wrong += bool(found)
            for fault in found:
                print(f"{case['id']} [{case['source']}]: {fault}")
    print(f"{checked - wrong} of {checked} cases as published")
    return 0 if checked and not wrong else 1


if __name__ == "__main__":
    sys.exit(main())
