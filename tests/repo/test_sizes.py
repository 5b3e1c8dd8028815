"""No hand-written source file over 600 lines. Usage: test_sizes.py ROOT"""
import pathlib
import sys

LIMIT = 600
root = pathlib.Path(sys.argv[1])
long_files = []
for folder in ("engine", "app", "platforms", "tests", "assets"):
    for path in (root / folder).rglob("*"):
        if path.suffix in {".cpp", ".hpp", ".py", ".c", ".h"} and "node_modules" not in path.parts:
            lines = path.read_text(encoding="utf-8").count("\n")
            if lines > LIMIT:
                long_files.append(f"{path.relative_to(root)}: {lines} lines, more than {LIMIT}")
print("\n".join(sorted(long_files)) or "no file is too long")
sys.exit(1 if long_files else 0)
