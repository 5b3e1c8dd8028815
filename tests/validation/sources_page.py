"""docs/reference/sources.md: every publication that a figure or a formula names."""
from project import STATUS_WORDS, cell

HEAD = """# Sources

Generated from `assets/sources.json` by `cmake --build BUILD --target reference-pages`. Each figure in `assets/tables` and each
formula names one of these keys, its place in it (locator), and how it was read: """ + ", ".join(
    f"*{STATUS_WORDS[word]}*" for word in ("read", "second_hand", "memory", "practice", "derived")) + "."


def entry(row):
    of = ", ".join(row[key] for key in ("publisher", "edition") if row.get(key))
    lines = [f"## {row['key']}", "", f"**{cell(row['title'])}**" + (f", {of}" if of else "") + ".", ""]
    lines += [f"- where: {row['where']}", f"- licence: {row['licence']}"]
    if row.get("note"):
        lines.append(f"- note: {row['note']}")
    return lines


def page(project):
    lines = [HEAD]
    for row in sorted(project.sources(), key=lambda row: row["key"]):
        lines += ["", *entry(row)]
    return "\n".join(lines) + "\n"
