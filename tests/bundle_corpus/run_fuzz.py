"""F14: builds the fuzz target with clang, address and undefined-behaviour sanitizers, and runs it from the corpus.

Usage: run_fuzz.py ROOT BUILD_FOLDER   15 s; SILLWALK_LONG=1: one hour. Fails on any finding, and below
2000 tries a second; the short run below 500, since machines differ."""
import json
import os
import pathlib
import re
import resource
import shutil
import subprocess
import sys

ROOT, BUILD = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
# Few units, since most of compiling these files is reading the same headers.
UNITS = {"reader": ["tests/bundle_corpus/fuzz_envelope.cpp", "app/bundle/envelope.cpp", "app/bundle/hand_off.cpp"],
         "parts": ["app/bundle/canonical.cpp", "app/bundle/digest.cpp", "app/bundle/uuid.cpp", "app/data/json_reader.cpp"]}
seconds = 3600 if os.environ.get("SILLWALK_LONG") else 15

if not shutil.which("clang++"):
    print("clang is not here; packages-test.txt names it")
    sys.exit(1)
BUILD.mkdir(parents=True, exist_ok=True)
sanitizers = "-fsanitize=fuzzer,address,undefined"
flags = ["-std=c++20", "-O2", "-g1", f"-I{ROOT}", sanitizers, "-fno-sanitize-recover=all"]
ccache = ["ccache"] if shutil.which("ccache") else []
objects = []
for name, sources in UNITS.items():
    unit = BUILD / f"{name}.cpp"
    unit.write_text("".join(f'#include "{source}"\n' for source in sources))
    objects.append(unit.with_suffix(".o"))
    subprocess.run([*ccache, "clang++", *flags, "-c", unit, "-o", objects[-1]], check=True)
program = BUILD / "fuzz_envelope"
subprocess.run(["clang++", sanitizers, *objects, "-lsodium", "-lfmt", "-o", program], check=True)

corpus = BUILD / "corpus"
if not os.environ.get("SILLWALK_LONG"):
    shutil.rmtree(corpus, ignore_errors=True)  # a short run from the same start; a long one goes on from what it found
corpus.mkdir(exist_ok=True)
base = json.loads((ROOT / "tests/bundle_corpus/envelope.json").read_text(encoding="utf-8"))
(corpus / "envelope").write_text(json.dumps(base, separators=(",", ":")))
(corpus / "hand_off").write_text(json.dumps(base, separators=(",", ":")) + '\n{"sha256":"' + "0" * 64 + '","data":"AAAA"}\n')
planted = subprocess.run([program, "-runs=1", f"-artifact_prefix={BUILD}/planted-", corpus / "envelope"], capture_output=True,
                         env=os.environ | {"SILLWALK_PLANTED_FAULT": "1"})
if planted.returncode == 0:
    print("control: a planted fault was not found")
    sys.exit(1)
before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
done = subprocess.run([program, f"-max_total_time={seconds}", "-max_len=4096", "-timeout=10", "-rss_limit_mb=2048",
                       f"-artifact_prefix={BUILD}/", corpus], capture_output=True, text=True)
runs = re.search(r"Done (\d+) runs", done.stderr)
if done.returncode or not runs:
    print(done.stderr[-3000:])
    sys.exit(1)
spent = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before
rate = int(runs[1]) / spent
print(f"{runs[1]} tries in {seconds} s, {rate:.0f} a second of processor time, no finding")
sys.exit(0 if rate >= (2000 if os.environ.get("SILLWALK_LONG") else 500) else 1)
