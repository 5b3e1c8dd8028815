"""The one style of our data files: two spaces, one row per line where it fits in 120 columns, members as written.
Usage: json_style.py FILE…   rewrites the files in place."""
import json
import pathlib
import sys

WIDTH = 120


def on_one_line(value):
    if isinstance(value, dict):
        members = (f"{json.dumps(key, ensure_ascii=False)}: {on_one_line(item)}" for key, item in value.items())
        return "{" + ", ".join(members) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(on_one_line(item) for item in value) + "]"
    return json.dumps(value, ensure_ascii=False)


def styled(value, indent=0, key_width=0):
    flat = on_one_line(value)
    fits = indent > 0 and indent + key_width + len(flat) + 1 <= WIDTH
    if fits or not value or not isinstance(value, (dict, list)):
        return flat
    pad = " " * (indent + 2)
    if isinstance(value, dict):
        opening, closing, lines = "{", "}", []
        for key, item in value.items():
            name = json.dumps(key, ensure_ascii=False) + ": "
            lines.append(pad + name + styled(item, indent + 2, len(name)))
    else:
        opening, closing = "[", "]"
        lines = [pad + styled(item, indent + 2) for item in value]
    return opening + "\n" + ",\n".join(lines) + "\n" + " " * indent + closing


if __name__ == "__main__":
    for name in sys.argv[1:]:
        path = pathlib.Path(name)
        path.write_text(styled(json.loads(path.read_text(encoding="utf-8"))) + "\n", encoding="utf-8")
