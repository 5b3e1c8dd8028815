"""The data files under assets/: schema, style, ids, sources, ranges. Usage: test_assets.py ROOT

Prints every fault and ends with 1 where there is one. Schemas follow JSON Schema 2020-12."""
import hashlib
import json
import pathlib
import re
import sys

import jsonschema

from json_style import styled

root = pathlib.Path(sys.argv[1])
assets = root / "assets"
faults = []

# Trade names of materials stand here as digests, so that the names stand nowhere in the tree.
TRADE_NAME_DIGESTS = {
    "608821bcab3c1d76", "e360ee4319a744ac", "4a781ad26b97547c", "19a5950cae847ddb", "209d0066e722cd53",
    "9bdefba4d3f9d694", "3eb20d54f20ae5c5", "6419cbcc12825f00", "f937cee8112e1d3c", "a1a1d16f23e9ee61",
    "f27c4ccf5f454efb", "11eb330f9b7b1706", "cc0f044ac5dbfd14", "f00bf8fd02a9d978", "7cae14b0c0f123b9",
    "ebe95cce2b89d0b6", "50ff4435fa013dd5", "71ffac2d9e6d3538",
}
FORBIDDEN = re.compile(r"®|™|\b(GmbH|Inc\.|Ltd|LLC|Corp\.)|/wor[k]/|/tm[p]/|/hom[e]/|https?://|www\.", re.IGNORECASE)


def fault(path, where, message):
    faults.append(f"{path.relative_to(root)}: {where}: {message}")


def load(path):
    try:
        return json.loads(path.read_text(encoding="utf-8"))
    except ValueError as error:
        fault(path, "/", f"not JSON: {error}")
        return None


def walk(value, where=""):
    """Each value with its JSON path."""
    yield where or "/", value
    if isinstance(value, dict):
        for key, item in value.items():
            yield from walk(item, f"{where}/{key}")
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from walk(item, f"{where}/{index}")


def bundled(schema, shared):
    """The schema with the shared ones it refers to inside, so that no resolver of a library version is needed."""
    names = {name: f"shared-{index}" for index, name in enumerate(sorted(shared))}

    def local(value):
        if isinstance(value, dict):
            return {key: f"#/$defs/{names[item]}" if key == "$ref" and item in names else local(item)
                    for key, item in value.items() if key not in ("$id", "$schema")}
        return [local(item) for item in value] if isinstance(value, list) else value

    return local(schema) | {"$defs": local(schema.get("$defs", {}))
                            | {names[name]: local(other) for name, other in shared.items()}}


def check_schemas(data, schemas):
    shared = {schema["$id"]: schema for path, schema in schemas.items() if path.parent.name == "schema"}
    for path, schema in schemas.items():
        jsonschema.Draft202012Validator.check_schema(schema)
        for where, part in walk(schema):
            if isinstance(part, dict) and part.get("type") == "object" and "additionalProperties" not in part:
                fault(path, where, "an object whose members are not closed")
    for path, document in data.items():
        schema_path = assets / "schema" / path.relative_to(assets).with_suffix(".schema.json")
        if schema_path not in schemas:
            if path.parent.name == "tables" or path.parent == assets:
                fault(path, "/", "has no schema")
            continue
        validator = jsonschema.Draft202012Validator(bundled(schemas[schema_path], shared))
        for error in validator.iter_errors(document):
            fault(path, "/" + "/".join(map(str, error.absolute_path)), error.message[:200])


def check_style(documents):
    for path, document in documents.items():
        if path.read_text(encoding="utf-8") != styled(document) + "\n":
            fault(path, "/", "not in the one style; run tests/repo/json_style.py on it")


def check_ids(path, document):
    for where, rows in walk(document):
        if not isinstance(rows, list) or not rows or not all(isinstance(row, dict) for row in rows):
            continue
        for name in ("id", "key"):
            ids = [row[name] for row in rows if name in row]
            if len(ids) != len(rows):
                continue
            if len(set(ids)) != len(ids):
                fault(path, where, f"an {name} stands twice")
            order = [(row["agent"], row.get("strength_share", 2)) for row in rows] if "agent" in rows[0] else ids
            if order != sorted(order):
                fault(path, where, f"not sorted by {'agent and strength' if 'agent' in rows[0] else name}")


def check_figure(path, where, figure):
    value, low, high = (figure.get(name) for name in ("value", "low", "high"))
    if low is not None and low > value or high is not None and high < value:
        fault(path, where, f"{value} is outside its range {low} to {high}")
    for other in figure.get("conflicting", []):
        if other["value"] == value:
            fault(path, where, "the conflicting figure is the figure itself")


def check_citation(path, where, row, keys, used):
    source, status = row["source"], row.get("status")
    used.add(source)
    if source not in keys:
        fault(path, where, f"source '{source}' is not in sources.json")
    if status is None:
        return
    if (source == "practice") != (status == "practice") or source == "memory" and status != "memory":
        fault(path, where, f"source '{source}' does not go with status '{status}'")


def check_sources(data):
    sources = assets / "sources.json"
    keys = {row["key"] for row in data[sources]["rows"]}
    used = set()
    for path, document in data.items():
        if path.parent.name != "tables":
            continue
        for where, value in walk(document):
            if not isinstance(value, dict) or not isinstance(value.get("source"), str):
                continue
            check_citation(path, where, value, keys, used)
            if isinstance(value.get("value"), (int, float)):
                check_figure(path, where, value)
    for key in sorted(keys - used):
        fault(sources, key, "no table uses this source")


def check_diffusivity(path, document):
    """k/(rho c) of solids: about 5e-8 (rubber) to 1.2e-4 m2/s (copper)."""
    for row in document["rows"]:
        names = ("conductivity_w_per_m_k", "density_kg_per_m3", "specific_heat_j_per_kg_k")
        if all(name in row for name in names):
            conductivity, density, heat = (row[name]["value"] for name in names)
            if not 5e-8 < conductivity / (density * heat) < 1.2e-4:
                fault(path, row["id"], f"diffusivity {conductivity / (density * heat):.2g} m2/s is no solid's")


def check_words(path, document):
    for where, value in walk(document):
        if not isinstance(value, str):
            continue
        if FORBIDDEN.search(value):
            fault(path, where, f"names a company, an address or a machine path: {value[:80]}")
        for word in re.findall(r"[a-z]+", value.lower()):
            if hashlib.sha256(word.encode()).hexdigest()[:16] in TRADE_NAME_DIGESTS:
                fault(path, where, f"trade name: {value[:80]}")


def check_formulas(path, document):
    """Every formula id that a finding cites has its row: all hyphened words in the checks, `formula = "…"` elsewhere."""
    known = {row["id"] for row in document["rows"]}
    for name in ("materials", "floors", "chemicals"):
        known |= {row["id"] for row in documents[path.with_name(f"{name}.json")]["rows"]}
    for source in sorted((root / "engine").rglob("*.cpp")):
        text = source.read_text(encoding="utf-8")
        cited = set(re.findall(r'formula = "([a-z0-9-]+)"', text))
        if source.parent.name == "checks":
            cited |= set(re.findall(r'"([a-z]+(?:-[a-z0-9]+)+)"', text))
        for formula in sorted(cited - known):
            fault(source, formula, "no row of tables/formulas.json has this id")


paths = sorted(path for path in assets.rglob("*.json"))
documents = {path: load(path) for path in paths}
if not faults:
    schema_files = {path: document for path, document in documents.items() if "schema" in path.parts}
    data_files = {path: document for path, document in documents.items() if "schema" not in path.parts}
    ours = {path: document for path, document in data_files.items()
            if path.parent.name == "tables" or path.parent == assets}
    check_schemas(data_files, schema_files)
    check_style(ours | schema_files)
    for data_path, data_document in data_files.items():
        check_words(data_path, data_document)
    for data_path, data_document in ours.items():
        check_ids(data_path, data_document)
    check_sources(ours)
    check_diffusivity(assets / "tables/materials.json", documents[assets / "tables/materials.json"])
    check_formulas(assets / "tables/formulas.json", documents[assets / "tables/formulas.json"])
    if len({document["edition"] for document in ours.values()}) != 1:
        fault(assets / "sources.json", "/edition", "the tables are of different editions")
print("\n".join(faults) or f"{len(paths)} data files are as they should be")
sys.exit(1 if faults else 0)
