"""Writes docs/reference/{validation,methods,sources,units}.md from the registry, the tables and the cases.

make_pages.py SOLVE_LINES ROOT [--check]: with --check nothing is written and the exit status says whether the pages are
up to date."""
import pathlib
import sys

import methods_page
import sources_page
import units_page
import validation_page
from project import Project

PAGES = {"validation.md": validation_page.page, "methods.md": methods_page.page, "sources.md": sources_page.page,
         "units.md": units_page.page}
HINT = "write them anew: cmake --build BUILD --target reference-pages"


def main():
    project = Project(solve_lines=sys.argv[1], root=pathlib.Path(sys.argv[2]))
    check = "--check" in sys.argv[3:]
    stale = []
    for name, page in PAGES.items():
        path = project.root / "docs/reference" / name
        text = page(project)
        if check and (not path.exists() or path.read_text(encoding="utf-8") != text):
            stale.append(name)
        elif not check:
            path.write_text(text, encoding="utf-8")
    if stale:
        print(f"out of date: {', '.join(stale)}; {HINT}")
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
