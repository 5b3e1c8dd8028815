"""A25: everything can be undone, so nothing asks whether the person is sure; only sending and erasing may ask.

Usage: confirmations.py ROOT. Reads the words of all languages and the sources of the screens."""
import json
import pathlib
import re
import sys

ASKS = re.compile(r"are you sure|do you really|really (delete|remove|want)|"
                  r"(está|estás|esta) segur[oa]|de verdad (quiere|desea)|seguro que", re.IGNORECASE)
CONFIRMS = re.compile(r"\b(confirm\w*|are_you_sure)\b", re.IGNORECASE)
MAY_ASK = re.compile(r"send|erase", re.IGNORECASE)
ADVICE = "use.assumed_readings.reading"  # advice to read again, no dialog


def faults(root):
    languages = sorted((root / "assets/text").glob("*.json"))
    if not languages:
        yield "there are no words to look at"
    for path in languages:
        for key, text in json.loads(path.read_text(encoding="utf-8")).items():
            if ASKS.search(text):
                yield f"{path.name}: {key} asks: {text}"
            if CONFIRMS.search(key) and not MAY_ASK.search(key):
                yield f"{path.name}: {key} is a confirmation"
            if CONFIRMS.search(text) and key != ADVICE and not MAY_ASK.search(key):
                yield f"{path.name}: {key} asks to confirm: {text}"
    sources = [path for folder in ("app/ui", "app/core", "app/shell") for path in sorted((root / folder).rglob("*.[ch]pp"))]
    if not sources:
        yield "there are no screens to look at"
    for path in sources:
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            code = line.split("//")[0]
            if CONFIRMS.search(code) and not MAY_ASK.search(code):
                yield f"{path.relative_to(root).as_posix()}:{number} opens a confirmation: {line.strip()}"


def main():
    found = list(faults(pathlib.Path(sys.argv[1])))
    print("\n".join(found))
    return 1 if found else 0


sys.exit(main())
