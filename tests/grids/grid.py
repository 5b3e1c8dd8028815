"""Asks the program for a whole grid at once and compares it with a reference."""
import json
import subprocess
import sys


def solve(calls):
    """Answers to many calculations, each call [name, "key=value", …]; a refusal ends the test."""
    lines = "".join(json.dumps(words) + "\n" for words in calls)
    done = subprocess.run([sys.argv[1]], input=lines, capture_output=True, text=True, check=True, timeout=300)
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    for words, answer in zip(calls, answers):
        if answer["exit"] != 0:
            raise SystemExit(f"{' '.join(words)}: {answer['printed']}")
    return [answer["printed"] for answer in answers]


class Comparison:
    """Counts, keeps the worst of each kind and lists what is off."""

    def __init__(self):
        self.worst = {}
        self.off = []
        self.count = 0

    def check(self, kind, where, got, wanted, tolerance, relative=False):
        error = abs(got - float(wanted)) / (abs(float(wanted)) if relative else 1)
        self.count += 1
        self.worst[kind] = max(self.worst.get(kind, 0), error)
        if not error <= tolerance:
            self.off.append(f"{where}: {kind} is {got!r}, the reference has {float(wanted)!r}")

    def finish(self):
        print("\n".join(self.off[:20]))
        worst = ", ".join(f"{kind} {error:.1e}" for kind, error in self.worst.items())
        print(f"{self.count - len(self.off)} of {self.count} agree; worst: {worst}")
        raise SystemExit(1 if self.off or not self.count else 0)
