"""Every desk calculation and every formula has a published or hand-derived case, at least thirty published cases are of our
own finding, and each case says where its number comes from.

test_coverage.py SOLVE_LINES ROOT"""
import re
import sys

from project import Project

PUBLISHED = {"P", "S", "M"}
STATUSES = PUBLISHED | {"D", "practice"}
LEAST_FOUND = 30


def case_faults(cases):
    seen = set()
    for case in cases:
        name = (case["file"], case["solve"], case["id"])
        if name in seen:
            yield f"two cases are called {case['id']} in {case['file']}"
        seen.add(name)
        if case["status"] not in STATUSES:
            yield f"{case['id']}: the status {case['status']} is not one of {', '.join(sorted(STATUSES))}"
        if not case["source"].strip():
            yield f"{case['id']}: no source"
        if not case["file"].startswith("desk_cases") and not (case.get("locator") and case.get("why_tolerance")):
            yield f"{case['id']}: a case names its place in the source and why its tolerance is what it is"


def has_value_case(cases, calculation):
    return any(case["solve"] == calculation and case["expect"] and case["status"] != "practice" for case in cases)


def desk_faults(project, cases):
    for row in project.registry():
        if not has_value_case(cases, row["name"]):
            yield f"solve {row['name']} has no published or derived case"


def test_names(text):
    """The names of Catch2 test cases, a name over two lines joined."""
    return {"".join(re.findall(r'"((?:[^"\\]|\\.)*)"', found.group(1)))
            for found in re.finditer(r'TEST_CASE\(\s*((?:"(?:[^"\\]|\\.)*"\s*)+),', text)}


def formula_faults(project, cases):
    listed = project.formula_cases()
    formulas = {row["id"]: row for row in project.formulas()}
    for extra in sorted(set(listed) - set(formulas)):
        yield f"{extra} is listed in formula_cases.json but is no formula"
    for name, row in formulas.items():
        held = listed.get(name, [])
        if not held:
            yield f"{name} has no case"
        rule_only = row["status"] == "practice"
        if held and not rule_only and all(case.get("status") == "practice" for case in held):
            yield f"{name} rests on practice alone, yet its formula does not"
        for case in held:
            if "desk" in case:
                if not has_value_case(cases, case["desk"]):
                    yield f"{name}: solve {case['desk']} has no case"
                continue
            if case["status"] not in STATUSES:
                yield f"{name}: unknown status {case['status']}"
            path = project.root / case["file"]
            if not path.exists() or case["test"] not in test_names(path.read_text(encoding="utf-8")):
                yield f"{name}: {case['file']} has no test “{case['test']}”"


def found_faults(cases):
    found = [case for case in cases if case["file"].endswith("found.json") and case["status"] in PUBLISHED]
    if len(found) < LEAST_FOUND:
        yield f"{len(found)} published cases of our own finding; at least {LEAST_FOUND} are asked"
    print(f"{len(found)} published cases of our own finding, over {len({case['solve'] for case in found})} calculations")


def main():
    project = Project(solve_lines=sys.argv[1], root=sys.argv[2])
    cases = list(project.cases())
    faults = [*case_faults(cases), *desk_faults(project, cases), *formula_faults(project, cases), *found_faults(cases)]
    print("\n".join(faults) or f"{len(cases)} cases; every calculation and formula has one")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
