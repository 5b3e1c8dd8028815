"""Every control of docs/explanation/threats.md names a test that there is, and every fault by number has one.

Usage: test_threats.py ROOT BUILD_FOLDER"""
import pathlib
import re
import subprocess
import sys

ROOT, BUILD = pathlib.Path(sys.argv[1]), sys.argv[2]
listed = subprocess.run(["ctest", "--test-dir", BUILD, "-N"], capture_output=True, text=True, check=True).stdout
names = re.findall(r"^ *Test +#\d+: (.*)$", listed, re.MULTILINE)
page = (ROOT / "docs/explanation/threats.md").read_text(encoding="utf-8")
faults = []
threats, numbered = page.split("## Faults by number")
for row in re.findall(r"^\| (?!threat \||---)(.*) \|$", threats, re.MULTILINE):
    wanted = re.findall(r"`([^`]+)`", row.split(" | ")[2])
    if not wanted:
        faults.append(f"no test: {row}")
    faults += [f"there is no test '{name}'" for name in wanted if not any(name.rstrip(" …") in known for known in names)]
for number in re.findall(r"^\| (F\d+) \|", numbered, re.MULTILINE):
    if not any(number in re.findall(r"F\d+", name) for name in names):
        faults.append(f"no test bears {number}")
if len(names) < 30:
    faults.append(f"ctest lists {len(names)} tests only")
print("\n".join(faults) or f"{len(names)} tests; every control names some")
sys.exit(1 if faults else 0)
