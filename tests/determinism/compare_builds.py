"""The advice is the same byte for byte from every build: g++ -O0, g++ -O2 and clang++ -O2.

compare_builds.py ROOT BUILD_FOLDER [--rest LIBRARIES LINKER] [--clang PROGRAM] [SURVEY.json...]: builds project/ three times
below BUILD_FOLDER, lets each program assess each survey, and compares what they print. The engine is compiled three times;
what reads and writes JSON comes from LIBRARIES (separated by semicolons), or, without --rest, is compiled three times too.
--clang names a desk tool that clang++ -O2 has compiled already. Two more things are checked: that a second run prints the
same, and that a survey with one reading changed does not (so that equality says something)."""
import hashlib
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2] / "platforms"))
from units import write_units  # noqa: E402

BUILDS = [("g++ -O0", "g++", "-O0"), ("g++ -O2", "g++", "-O2"), ("clang++ -O2", "clang++", "-O2")]


def run(words, **options):
    done = subprocess.run(words, capture_output=True, text=True, **options)
    return done.returncode, done.stdout, done.stderr


def build(root, folder, compiler, level, split, rest):
    """Builds one program, with the libraries `rest` for all but the engine where there are some. Adds to `split` the units that do not compile as one, and compiles their files apart."""
    units = f"{folder}/units"
    configure = ["cmake", "-G", "Ninja", "-S", f"{root}/tests/determinism/project", "-B", folder,
                 "-DCMAKE_BUILD_TYPE=None", f"-DCMAKE_CXX_COMPILER={compiler}", f"-DCMAKE_CXX_FLAGS={level}",
                 f"-DUNITS={units}", f"-DREST={rest[0]}", f"-DREST_LINKER={rest[1]}"]
    for _ in range(2):
        write_units(root, units, split)
        status, out, err = run(configure)
        if status == 0:
            status, out, err = run(["cmake", "--build", folder, "-j", str(os.cpu_count() or 1), "--", "-k", "0"])
        if status == 0:
            return pathlib.Path(folder) / "advise"
        split.update(re.findall(r"FAILED: \S*/units/(\w+)\.cpp", out))
    print(out[-3000:], err[-3000:])
    raise SystemExit(f"{compiler} {level} does not build")


def advice(program, survey):
    status, out, err = run([*program, survey, "--json"])
    if status != 0 or not out:
        raise SystemExit(f"{program[0]} {survey}: exit status {status}: {err.strip()}")
    return out


def first_difference(one, other):
    at = next((i for i, (a, b) in enumerate(zip(one, other)) if a != b), min(len(one), len(other)))
    return f"byte {at}: …{one[max(0, at - 120):at + 60]!r} against …{other[max(0, at - 120):at + 60]!r}"


def other_survey(survey, folder):
    """The same site with the loads of its carts a fifth higher."""
    changed = json.loads(pathlib.Path(survey).read_text(encoding="utf-8"))
    for cart in changed["carts"]:
        payload = cart["payload"]
        if "value_g" in payload:
            payload["value_g"] = payload["value_g"] * 6 // 5
            payload["as_entered"] = f"{payload['value_g'] / 1000:g} kg"
    path = pathlib.Path(folder) / "changed.json"
    path.write_text(json.dumps(changed), encoding="utf-8")
    return path


def main():
    root, folder, *surveys = sys.argv[1:]
    rest = ("", "")
    if surveys[:1] == ["--rest"]:
        rest, surveys = (surveys[1], surveys[2]), surveys[3:]
    programs, split = [], set()
    clang = ""
    if surveys[:1] == ["--clang"]:
        clang, surveys = surveys[1], surveys[2:]
    for name, compiler, level in BUILDS:
        if clang and compiler == "clang++":
            programs.append((name, [clang, "assess"]))
            continue
        start = time.monotonic()
        programs.append((name, [build(root, f"{folder}/{name.replace(' ', '')}", compiler, level, split, rest)]))
        print(f"{name}: built in {time.monotonic() - start:.0f} s, units split: {', '.join(sorted(split)) or 'none'}")
    wrong = 0
    for survey in surveys:
        first_name, first = programs[0]
        wanted = advice(first, survey)
        for name, program in [(f"{first_name} again", first), *programs[1:]]:
            got = advice(program, survey)
            if got != wanted:
                wrong += 1
                print(f"{survey}: {name} differs from {first_name} at {first_difference(wanted, got)}")
        digest = hashlib.sha256(wanted.encode()).hexdigest()
        print(f"{pathlib.Path(survey).name}: {len(wanted)} bytes, sha256 {digest}")
    with tempfile.TemporaryDirectory() as scratch:
        if advice(programs[0][1], other_survey(surveys[0], scratch)) == advice(programs[0][1], surveys[0]):
            wrong += 1
            print("changed payloads change nothing: the comparison says nothing")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
