"""The top level is the card's, no file names a machine's path or a brand, and the docs' links lead somewhere.

Usage: test_tree.py ROOT"""
import pathlib
import re
import subprocess
import sys

TOP = {"CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE", "app", "engine", "assets",
       "platforms", "tests", "docs"}
# Trade names that creep in where a generic name is meant; written in pieces so that this file does not hold them.
BRANDS = ["del" + "rin", "tef" + "lon", "vulko" + "llan", "cel" + "con", "nylat" + "ron", "bake" + "lite", "santo" + "prene",
          "neo" + "lon", "zy" + "tel", "hosta" + "form", "pleq" + "uel"]
PATHS = ["/" + "work/", "/" + "tmp/wt", "/" + "root/", "/" + "home/"]


def tracked(root):
    listed = subprocess.run(["git", "-C", root, "ls-files"], capture_output=True, text=True)
    if listed.returncode != 0:  # an exported tree has no git; then every file counts
        return [p.relative_to(root).as_posix() for p in pathlib.Path(root).rglob("*")
                if p.is_file() and not p.relative_to(root).as_posix().startswith(("build", "out"))]
    return listed.stdout.split("\n")[:-1]


def faults(root):
    files = tracked(root)
    for extra in sorted({name.split("/")[0] for name in files} - TOP):
        if not extra.startswith("."):
            yield f"{extra} is not part of the top level"
    for name in files:
        path = pathlib.Path(root) / name
        if not path.is_file() or path.suffix in {".png", ".sqlite", ".jpg"}:
            continue
        text = path.read_text(encoding="utf-8", errors="replace")
        lower = text.lower()
        for word in BRANDS:
            if re.search(r"\b" + word + r"\b", lower):
                yield f"{name}: names the brand '{word}'"
        for word in PATHS:
            if word in text:
                yield f"{name}: names a path of a machine, '{word}'"
        if path.suffix == ".md":
            for link in re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", text):
                if not re.match(r"[a-z]+:", link) and not (path.parent / link).exists():
                    yield f"{name}: the link {link} leads nowhere"


if __name__ == "__main__":
    found = list(faults(sys.argv[1]))
    print("\n".join(found) or "the tree is as it should be")
    sys.exit(1 if found else 0)
