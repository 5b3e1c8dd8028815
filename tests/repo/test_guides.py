"""Tutorials and how-tos say what the screen says: bold words are texts of the app, sentences are short, pictures small.

In a guide **bold** is kept for words on the screen and `code` for what is typed or read there.
Usage: test_guides.py ROOT"""
import json
import pathlib
import re
import sys

MOST_WORDS = 25
MOST_PICTURE_BYTES = 120_000
FOLDERS = ("docs/tutorials", "docs/how-to")
# Names that the screens take from a table and not from the texts.
TABLES = (("assets/tables/floors.json", "rows", "name"), ("assets/tables/chemicals.json", "rows", "name"))


def table_names(root):
    for file, rows, field in TABLES:
        table = json.loads((root / file).read_text(encoding="utf-8"))
        for row in table[rows]:
            if field in row:
                yield row[field]


def patterns(root):
    """Regular expressions of all that a screen can say: a text as it stands or with its slots filled."""
    texts = list(json.loads((root / "assets/text/en.json").read_text(encoding="utf-8")).values())
    texts += table_names(root)
    for text in texts:
        parts = re.split(r"\{\d+\}", text)
        if sum(len(re.findall(r"\w", part)) for part in parts) < 2:
            continue  # nothing but slots would match everything
        yield ".+".join(re.escape(part) for part in parts)


def sentences(text):
    """Running text without code, links' targets, pictures and marks; one sentence each."""
    text = re.sub(r"```.*?```", "", text, flags=re.S)
    text = re.sub(r"!\[([^\]]*)\]\([^)]*\)", r"\1", text)
    text = re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", text)
    for block in re.split(r"\n\s*\n|\n(?=\s*(?:[-*#|]|\d+\.)\s)", text):
        for sentence in re.split(r"(?<=[.!?:])[*`]*\s+|\|", block.replace("\n", " ")):
            yield sentence.strip(" #*-")


def faults(root):
    known = re.compile("|".join(f"(?:{one})" for one in patterns(root)), re.IGNORECASE)
    guides = sorted(page for folder in FOLDERS for page in (root / folder).glob("*.md"))
    if not guides:
        yield "there is no guide at all"
    for page in guides:
        name = page.relative_to(root).as_posix()
        text = page.read_text(encoding="utf-8")
        bold = re.findall(r"\*\*(.+?)\*\*", text, flags=re.S)
        if not bold:
            yield f"{name}: names nothing on the screen"
        for words in bold:
            words = " ".join(words.split())
            if not known.fullmatch(words):
                yield f"{name}: the app has no text '{words}'"
        for sentence in sentences(text):
            count = len(re.findall(r"[\w/'’.,-]*\w", sentence))
            if count > MOST_WORDS:
                yield f"{name}: {count} words in one sentence: {sentence[:60]}"
        for picture in re.findall(r"!\[[^\]]*\]\(([^)]+)\)", text):
            path = page.parent / picture
            if not path.exists():
                yield f"{name}: the picture {picture} is missing"
            elif path.stat().st_size > MOST_PICTURE_BYTES:
                yield f"{name}: the picture {picture} has {path.stat().st_size} bytes"


if __name__ == "__main__":
    found = list(faults(pathlib.Path(sys.argv[1])))
    print("\n".join(found) or "the guides say what the screens say")
    sys.exit(1 if found else 0)
