"""Every C++ file looks as .clang-format says. Usage: test_format.py ROOT"""
import pathlib
import subprocess
import sys

root = pathlib.Path(sys.argv[1])
files = sorted(path for layer in ("app", "assets", "engine", "platforms", "tests") for kind in ("*.cpp", "*.hpp")
               for path in (root / layer).rglob(kind) if "build" not in path.relative_to(root).parts)
done = subprocess.run(["clang-format", "--dry-run", *files], capture_output=True, text=True)
off = sorted({line.split(":")[0] for line in done.stderr.splitlines() if "clang-format-violations" in line})
for name in off:
    print(f"{name}: run clang-format -i on it")
print(f"{len(files)} files, {len(off)} of them not as the settings say")
sys.exit(1 if off or not files or done.returncode else 0)
