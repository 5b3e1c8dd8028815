"""What the reference pages and their tests are made from: the registry of desk calculations, the tables, the cases."""
import json
import pathlib
import subprocess

STATUS_WORDS = {"P": "read in the original", "S": "read second-hand", "M": "from memory", "D": "derived",
                "practice": "common practice, no published source", "read": "read in the original",
                "second_hand": "read second-hand", "memory": "from memory", "derived": "derived"}


class Project:
    def __init__(self, solve_lines, root):
        self.solve_lines = solve_lines
        self.root = pathlib.Path(root)

    def json(self, path):
        return json.loads((self.root / path).read_text(encoding="utf-8"))

    def registry(self):
        return self.ask("--registry")

    def units(self):
        return self.ask("--units")

    def ask(self, option):
        done = subprocess.run([self.solve_lines, option], capture_output=True, text=True, check=True, timeout=120)
        return json.loads(done.stdout)

    def formulas(self):
        return self.json("assets/tables/formulas.json")["rows"]

    def sources(self):
        return self.json("assets/sources.json")["rows"]

    def formula_cases(self):
        return self.json("tests/validation/formula_cases.json")["formulas"]

    def cases(self):
        """All cases in their order, each with the file it stands in."""
        for file in ("desk_cases/cases.json", "validation/cases.json", "validation/found.json"):
            for case in self.json(f"tests/{file}")["cases"]:
                yield {**case, "file": file}

    def solve(self, calls):
        """Answers of many calculations, each call a list of words: [{"exit": 0, "printed": {…}}, …]."""
        lines = "".join(json.dumps(words) + "\n" for words in calls)
        done = subprocess.run([self.solve_lines], input=lines, capture_output=True, text=True, check=True, timeout=300)
        return [json.loads(line) for line in done.stdout.splitlines()]


def value_at(printed, path):
    """Follows "stages.0.core_C" into lists and objects."""
    for step in path.split("."):
        printed = printed[int(step)] if isinstance(printed, list) else printed[step]
    return printed


def cell(text):
    return str(text).replace("|", "\\|").replace("\n", " ")


def table(head, rows):
    lines = ["| " + " | ".join(head) + " |", "| " + " | ".join("---" for _ in head) + " |"]
    return lines + ["| " + " | ".join(cell(value) for value in row) + " |" for row in rows]
