"""F21: python3-jsonschema and ajv, neither of them ours, judge the corpus as our reader does; so do they the desk tool's bundle.

Usage: run_validators.py ROOT SILLWALK_DESK FOLDER_FOR_AJV"""
import copy
import json
import pathlib
import shutil
import subprocess
import sys

import jsonschema

ROOT, DESK, AJV = pathlib.Path(sys.argv[1]).resolve(), sys.argv[2], pathlib.Path(sys.argv[3])
CORPUS = ROOT / "tests/bundle_corpus"


def load(path):
    return json.loads(path.read_text(encoding="utf-8"))


def changed(document, change):
    document = copy.deepcopy(document)
    if change["at"] == "":
        return change["set"]
    *parents, last = change["at"].lstrip("/").split("/")
    node = document
    for step in parents:
        node = node[int(step)] if isinstance(node, list) else node[step]
    key = int(last) if isinstance(node, list) else last
    if "remove" in change:
        del node[key]
    elif "repeat" in change:
        node[key] = [node[key][0]] * change["repeat"]
    else:
        node[key] = change["set"]
    return document


def desk_bundle():
    made = subprocess.run([DESK, "bundle", ROOT / "assets/demo/quillwater.json"], capture_output=True, check=True)
    return json.loads(made.stdout)


def cases():
    base = load(CORPUS / "envelope.json")
    yield {"why": "the document itself", "valid": True, "document": base}
    yield {"why": "what the desk tool writes", "valid": True, "document": desk_bundle()}
    for name, valid in (("accepted.json", True), ("refused.json", False)):
        for change in load(CORPUS / name):
            yield {"why": f"{change['at']}: {change['why']}", "valid": valid, "document": changed(base, change)}


def ajv_verdicts(rows):
    """One verdict a row; the package comes from its lock file, once."""
    AJV.mkdir(parents=True, exist_ok=True)
    for name in ("package.json", "package-lock.json", "validate.mjs"):
        shutil.copy(CORPUS / "ajv" / name, AJV / name)
    if not (AJV / "node_modules/ajv").is_dir():
        subprocess.run(["npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts"], cwd=AJV, check=True,
                       stdout=subprocess.DEVNULL)
    (AJV / "cases.json").write_text(json.dumps([row["document"] for row in rows]), encoding="utf-8")
    schema = ROOT / "docs/reference/bundle.schema.json"
    told = subprocess.run(["node", "validate.mjs", schema, "cases.json"], cwd=AJV, check=True, capture_output=True, text=True)
    return json.loads(told.stdout)


schema = load(ROOT / "docs/reference/bundle.schema.json")
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
rows = list(cases())
faults = []
for row, ajv in zip(rows, ajv_verdicts(rows), strict=True):
    for name, verdict in (("python3-jsonschema", validator.is_valid(row["document"])), ("ajv", ajv)):
        if verdict != row["valid"]:
            faults.append(f"{name} {'takes' if verdict else 'refuses'} {row['why']}")
print("\n".join(faults) or f"{len(rows)} documents, two validators, no disagreement")
sys.exit(1 if faults else 0)
