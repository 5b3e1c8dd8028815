"""Puts many source files into few translation units, since most of compiling a file is reading its headers.

    units.py ROOT UNITS FILE...     prints one line a unit: its files, separated by semicolons

Two files whose unnamed namespaces declare one name must not meet in a unit; which names a file declares is read off the
lines that start in the first column, as clang-format leaves them. That is a good guess and no more: the determinism test
splits a unit that does not compile into its files; in a build of the asan preset a clash is an error, mended by another
name."""
import pathlib
import re
import sys

# The parts stand apart, so that only those that read JSON or options compile these large headers.
PARTS = {"engine": (8, ["engine"]),
         "app": (3, ["app/data", "app/bundle", "app/text"]),
         "core": (2, ["app/core"]),
         "desk": (1, ["platforms/desk/assess.cpp", "platforms/desk/workspace.cpp"])}


def sources(root, places):
    for place in places:
        path = root / place
        for source in sorted(path.rglob("*.cpp")) if path.is_dir() else [path]:
            yield source


def private_names(text):
    names = set()
    for block in re.findall(r"^namespace \{\n(.*?)^\}  // namespace$", text, re.DOTALL | re.MULTILINE):
        names.update(declared(block))
    return names


def declared(block):
    for line in block.split("\n"):
        if re.match(r"[A-Za-z]", line) and not line.startswith("template"):
            plain = re.sub(r"<[^<>]*>", "", line)
            yield from re.findall(r"(\w+)\s*(?:[({=;\[]|$)", plain.split("(")[0] + "(")


def shared_names(root):
    """Types and functions that the headers of the layers declare."""
    types, functions = set(), set()
    for header in sorted(path for layer in ("engine", "app") for path in (root / layer).rglob("*.hpp")):
        text = header.read_text(encoding="utf-8")
        types.update(re.findall(r"^(?:struct|class|enum class|enum) (\w+)", text, re.MULTILINE))
        functions.update(re.findall(r"^(?:\[\[nodiscard\]\] )?[A-Za-z][^\n(]*?(\w+)\(", text, re.MULTILINE))
    return types, functions


def deal(files, units, types, functions):
    """Lists of files, at least `units` of them, none with a name twice. A file with a private type of a shared name stands
    alone; one with a private function of a shared name hides it from those after it, so it comes last."""
    groups = [([], set()) for _ in range(units)]
    alone, last = [], []
    for position, file in enumerate(files):
        names = private_names(file.read_text(encoding="utf-8"))
        if names & types:
            alone.append([file])
            continue
        if names & functions:
            last.append(file)
            names = names | {"a shared function"}
        turn = groups[position % len(groups):] + groups[:position % len(groups)]
        free = next((group for group in turn if not names & group[1]), None)
        if free is None:
            free = ([], set())
            groups.append(free)
        free[0].append(file)
        free[1].update(names)
    for group, _ in groups:
        group.sort(key=lambda file: file in last)
    return [group for group, _ in groups if group] + alone


def write_units(root, folder, split):
    """Writes the units that include the sources into `folder`; those named in `split` become one unit a file. Files that
    did not change keep their time."""
    root, folder = pathlib.Path(root).resolve(), pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    written = set()
    types, functions = shared_names(root)
    for part, (units, places) in PARTS.items():
        for number, group in enumerate(deal(list(sources(root, places)), units, types, functions)):
            name = f"{part}_{number}"
            units_of_group = {f"{name}_{i}": [file] for i, file in enumerate(group)} if name in split else {name: group}
            for unit, files in units_of_group.items():
                path = folder / f"{unit}.cpp"
                text = "".join(f'#include "{file.relative_to(root).as_posix()}"\n' for file in files)
                if not path.exists() or path.read_text(encoding="utf-8") != text:
                    path.write_text(text, encoding="utf-8")
                written.add(path)
    for left_over in set(folder.glob("*.cpp")) - written:
        left_over.unlink()


def main():
    root, units, *files = sys.argv[1:]
    types, functions = shared_names(pathlib.Path(root))
    for group in deal([pathlib.Path(file) for file in files], int(units), types, functions):
        print(";".join(str(file) for file in group))


if __name__ == "__main__":
    main()
