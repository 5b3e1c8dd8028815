"""The published schemas: valid themselves, kept by the shipped files, and of one mind with the readers in C++ (slips.json).

Checked with python3-jsonschema, an implementation that is not ours.
"""

import copy
import json
import pathlib
import subprocess
import sys

import jsonschema

ROOT = pathlib.Path(sys.argv[1])


def load(path):
    return json.loads((ROOT / path).read_text(encoding="utf-8"))


def validator(path):
    schema = load(path)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def changed(survey, change):
    survey = copy.deepcopy(survey)
    *parents, last = change["at"].lstrip("/").split("/")
    node = survey
    for step in parents:
        node = node[int(step)] if isinstance(node, list) else node[step]
    key = int(last) if isinstance(node, list) else last
    if "remove" in change:
        del node[key]
    else:
        node[key] = change["set"]
    return survey


def problems():
    survey_schema = validator("docs/reference/survey.schema.json")
    for path in sorted((ROOT / "assets/demo").glob("*.json")):
        for error in survey_schema.iter_errors(json.loads(path.read_text(encoding="utf-8"))):
            yield f"{path.name}: {error.json_path}: {error.message[:100]}"
    demo, slips = load("assets/demo/quillwater.json"), load("tests/app_data/survey/slips.json")
    for change in slips["bad"]:
        if survey_schema.is_valid(changed(demo, change)):
            yield f"the survey schema takes {change}"
    for change in slips["fine"]:
        if not survey_schema.is_valid(changed(demo, change)):
            yield f"the survey schema refuses {change}"
    for error in validator("assets/schema/catalogue/catalogue.schema.json").iter_errors(load("assets/catalogue/catalogue.json")):
        yield f"catalogue.json: {error.json_path}: {error.message[:100]}"
    made = subprocess.run([sys.executable, ROOT / "assets/catalogue/make_catalogue.py"], capture_output=True, check=True).stdout
    if made != (ROOT / "assets/catalogue/catalogue.json").read_bytes():
        yield "catalogue.json is not what make_catalogue.py writes"
    check = subprocess.run([sys.executable, ROOT / "assets/demo/make_demo.py", "--check"], capture_output=True, text=True)
    if check.returncode != 0:
        yield check.stderr.strip()


found = list(problems())
print("\n".join(found) or "schemas and files agree")
sys.exit(1 if found else 0)
