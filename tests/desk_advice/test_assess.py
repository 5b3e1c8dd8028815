"""Drives assess, explain and bundle as a person or a program would. Usage: test_assess.py BINARY ROOT

What is expected comes from the format's schema, from the wording of the tool's own contract (exit statuses, one line a mistake)
and, for the bundle's name, from this file's own SHA-256 of the canonical text (RFC 8785)."""
import copy
import functools
import hashlib
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

import jsonschema

BINARY, ROOT = sys.argv[1], pathlib.Path(sys.argv[2])
DEMO = ROOT / "assets/demo/quillwater.json"


def desk(*words):
    return subprocess.run([BINARY, *map(str, words)], capture_output=True, text=True, timeout=300)


def written(folder, survey):
    path = pathlib.Path(folder) / "survey.json"
    path.write_text(json.dumps(survey), encoding="utf-8")
    return path


def advice_of(path, *words):
    run = desk("assess", path, "--json", *words)
    assert run.returncode == 0, run.stderr
    return json.loads(run.stdout)


@functools.cache
def demo_advice(*words):
    """The demo's advice, worked out once for the tests that only read it."""
    return advice_of(DEMO, *words)


class Assess(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.survey = json.loads(DEMO.read_text(encoding="utf-8"))

    def test_output_obeys_the_published_schema(self):
        schema = json.loads((ROOT / "docs/reference/advice.schema.json").read_text(encoding="utf-8"))
        validator = jsonschema.Draft202012Validator(schema)
        for demo in ("quillwater", "quillwater-us", "half-read"):
            faults = [f"{list(e.absolute_path)}: {e.message[:120]}"
                      for e in validator.iter_errors(advice_of(ROOT / f"assets/demo/{demo}.json"))]
            self.assertEqual(faults[:5], [], demo)

    def test_limits_and_conditions_come_when_asked_for_and_obey_the_schema(self):
        schema = json.loads((ROOT / "docs/reference/advice.schema.json").read_text(encoding="utf-8"))
        validator = jsonschema.Draft202012Validator(schema)
        plain = advice_of(DEMO, "--cart", "Tray rack")["carts"][0]
        self.assertNotIn("would_hold", plain)
        self.assertNotIn("conditions", plain)
        advice = demo_advice("--limits")
        self.assertEqual([f"{list(e.absolute_path)}: {e.message[:120]}" for e in validator.iter_errors(advice)][:5], [])
        for cart in advice["carts"]:
            self.assertEqual(cart["nothing_holds"], not cart["conditions"], cart["cart"])
        once, again = (desk("assess", DEMO, "--json", "--cart", "Tote cart", "--limits").stdout for _ in range(2))
        self.assertEqual(once, again)

    def test_a_solved_rise_put_into_the_survey_file_holds(self):
        """The file takes whole nanometres; so the solved rise is rounded down to one."""
        cart = advice_of(DEMO, "--cart", "Tray rack", "--limits")["carts"][0]
        family = cart["would_hold"][0]
        self.assertEqual(family["candidate"], cart["nearest"]["candidate"])
        step = next(c for c in family["checks"] if c["finding"]["check"] == "step")
        rise = next(row for row in step["limits"] if row["driver"] == "rise")
        lowered = copy.deepcopy(self.survey)
        sill = next(c for c in lowered["crossings"] if c["id"] == rise["place"]["crossing"])
        sill["rise"]["value_nm"] = int(rise["value"]["length_m"] * 1e9)
        sill["rise"]["as_entered"] = ""
        after = advice_of(written(self.folder.name, lowered), "--cart", "Tray rack", "--top", "100")["carts"][0]
        self.assertEqual(rise["then"], "fits with conditions")
        found = next(row for row in after["ranked"] if row["candidate"] == family["candidate"])
        self.assertEqual(found["verdict"], rise["then"])
        self.assertEqual(next(f for f in found["findings"] if f["check"] == "step")["outcome"], "holds")

    def test_the_detail_of_a_cart_says_what_would_make_it_hold(self):
        rack = desk("assess", DEMO, "--cart", "Tray rack", "--draws", "20").stdout
        self.assertIn("What would make it hold", rack)
        self.assertIn("rise at most 7.63\u00a0mm", rack)
        self.assertIn("Conditions of use", desk("assess", DEMO, "--cart", "Tote cart", "--draws", "20").stdout)

    def test_readings_to_take_again_come_when_asked_for_and_obey_the_schema(self):
        schema = json.loads((ROOT / "docs/reference/advice.schema.json").read_text(encoding="utf-8"))
        validator = jsonschema.Draft202012Validator(schema)
        half = ROOT / "assets/demo/half-read.json"
        words = ("--cart", "Tray rack", "--draws", "80", "--seed", "5")
        advice = advice_of(half, *words)
        self.assertEqual([f"{list(e.absolute_path)}: {e.message[:120]}" for e in validator.iter_errors(advice)][:5], [])
        again = advice["carts"][0]["read_again"]
        self.assertEqual((again["draws"], again["seed"]), (80, "5"))
        # the two readings that were taken out of the tray rack's route come before every tolerance
        self.assertEqual({row["reading"] for row in again["readings"][:2]}, set(advice["carts"][0]["not_read"]))
        self.assertEqual(len(again["missing"]), 2)
        self.assertNotIn("read_again", advice_of(half, "--cart", "Tray rack")["carts"][0])
        self.assertIn("Readings to take again", desk("assess", half, "--cart", "Tray rack", "--draws", "20").stdout)

    def test_the_site_names_every_cart_once(self):
        advice = demo_advice()
        site = advice["site"]
        nothing = [cart["cart"] for cart in advice["carts"] if cart["nothing_holds"]]
        self.assertEqual(site["nothing_holds"], nothing)
        served = [cart["cart"] for cart in advice["carts"] if not cart["nothing_holds"]]
        verdict = {cart["cart"]: cart["ranked"][0]["verdict"] for cart in advice["carts"] if not cart["nothing_holds"]}
        for part in ("wheels", "bearings"):
            fewest = site[part]["fewest"]
            self.assertEqual([row["cart"] for row in fewest["carts"]], served)
            for row in fewest["carts"]:
                self.assertEqual(row["verdict"], verdict[row["cart"]])
                self.assertIn(row["candidate"][part[:-1]], fewest["kinds"])
        human = desk("assess", DEMO).stdout
        for cart in self.survey["carts"]:
            self.assertIn(cart["name"], human.split("For the whole site")[1])

    def test_the_same_survey_gives_the_same_bytes(self):
        self.assertEqual(desk("assess", DEMO, "--json").stdout, desk("assess", DEMO, "--json").stdout)

    def test_a_failing_wheel_is_never_a_first_choice(self):
        for cart in demo_advice()["carts"]:
            for row in cart["ranked"]:
                self.assertNotIn("fails", [finding["outcome"] for finding in row["findings"]])
            self.assertEqual(cart["nothing_holds"], not cart["ranked"])
            self.assertEqual(cart["nothing_holds"], cart["nearest"] is not None)

    def test_a_lower_sill_lets_the_tray_rack_through(self):
        """19 mm is over 5 % of every wheel of the catalogue (the largest has 203.2 mm); 6 ± 1 mm is under 5 % of the largest."""
        lowered = copy.deepcopy(self.survey)
        sill = next(c for c in lowered["crossings"] if c["id"] == "freezer-door")
        sill["rise"].update(value_nm=6_000_000, as_entered="6 mm")
        before = advice_of(DEMO, "--cart", "Tray rack")["carts"][0]
        after = advice_of(written(self.folder.name, lowered), "--cart", "Tray rack")["carts"][0]
        self.assertTrue(before["nothing_holds"])
        self.assertFalse(after["nothing_holds"])

    def test_twelve_mistakes_give_twelve_lines_and_write_nothing(self):
        bad = self.survey
        bad["carts"][0]["tare"]["value_g"] = "heavy"                       # 1 a text where a number is needed
        bad["carts"][1]["payload"]["tolerance_g"] = -1                     # 2 a negative tolerance
        bad["carts"][2]["colour"] = "red"                                  # 3 an unknown member
        bad["carts"][3]["route"][0]["room"] = "cellar"                     # 4 a room that is not there
        bad["carts"][4]["moved_by"]["value"] = "mule"                      # 5 an unknown word
        bad["rooms"][0]["air"]["known"] = "guessed"                        # 6 an unknown way of knowing
        del bad["rooms"][1]["name"]                                        # 7 a missing name
        bad["rooms"][2]["humidity"]["value_ppm"] = 2_000_000               # 8 a humidity of 200 %
        bad["crossings"][1]["rise"]["value_nm"] = 19.5                     # 9 not a whole number
        bad["crossings"][2]["to"] = "moon"                                 # 10 a room that is not there
        bad["washings"][0]["agent"]["value"] = "holy-water"                # 11 an agent that no table knows
        bad["washings"][1]["temperature"]["value_millikelvin"] = -5        # 12 below absolute zero
        output = pathlib.Path(self.folder.name) / "bundle.json"
        path = written(self.folder.name, bad)
        for command in (["assess", path], ["assess", path, "--json"], ["bundle", path, "--output", output]):
            run = desk(*command)
            lines = run.stderr.strip().splitlines()
            self.assertEqual(run.returncode, 2, command)
            self.assertEqual(len(lines), 12, "\n".join(lines))
            self.assertEqual(run.stdout, "")
            for line in lines:
                self.assertRegex(line, r" /(carts|rooms|crossings|washings)/\d+")
        self.assertFalse(output.exists())

    def test_bad_words_get_one_line_and_exit_2(self):
        for words in (["assess"], ["assess", "nowhere.json"], ["assess", ROOT], ["assess", DEMO, "--cart", "sledge"],
                      ["assess", DEMO, "--top", "0"], ["assess", DEMO, "--language", "xx"], ["assess", DEMO, "--colour"],
                      ["explain", DEMO, "--cart", "Tray rack", "--check", "luck"], ["fly"],
                      ["bundle", DEMO, "--output", "/nowhere/at/all.json"]):
            run = desk(*words)
            self.assertEqual(run.returncode, 2, words)
            self.assertEqual(len(run.stderr.strip().splitlines()), 1, (words, run.stderr))

    def test_explain_shows_formula_and_source(self):
        for check in ("load", "step", "gap", "cold", "heat", "push", "traction", "chemical", "fit"):
            run = desk("explain", DEMO, "--cart", "Tray rack", "--check", check, "--present")
            self.assertEqual(run.returncode, 0, run.stderr)
            for title in ("Outcome", "In words", "Source"):
                self.assertIn(title, run.stdout, check)
            self.assertNotRegex(run.stdout, r"<[a-z_]+\.", f"{check}: a text is missing")

    def test_no_text_is_missing_in_either_language_or_unit_system(self):
        """In turn: English, Spanish, the units of the United States, and both together."""
        names = [cart["name"] for cart in self.survey["carts"]]
        spanish = ["--language", "es"]
        for words, carts in (([], names[::4]), (spanish, names[1::4]), (["--us-units"], names[2::4]),
                             ([*spanish, "--us-units"], names[3::4])):
            for name in carts:
                run = desk("assess", DEMO, "--cart", name, "--draws", "20", *words)
                self.assertEqual(run.returncode, 0)
                self.assertNotRegex(run.stdout, r"<[a-z_]+\.", name)

    def test_an_own_catalogue_is_used_and_its_bad_rows_named(self):
        catalogue = json.loads((ROOT / "assets/catalogue/catalogue.json").read_text(encoding="utf-8"))
        catalogue["wheels"] = catalogue["wheels"][:40]
        catalogue["wheels"][3]["diameter_mm"] = "big"
        path = pathlib.Path(self.folder.name) / "own.json"
        path.write_text(json.dumps(catalogue), encoding="utf-8")
        run = desk("assess", DEMO, "--catalogue", path, "--json")
        self.assertEqual(run.returncode, 0, run.stderr)
        self.assertIn("diameter_mm", run.stderr)
        self.assertLess(json.loads(run.stdout)["carts"][0]["candidates"], demo_advice()["carts"][0]["candidates"])

    def test_the_bundle_is_canonical_and_named_by_its_digest(self):
        output = pathlib.Path(self.folder.name) / "bundle.json"
        run = desk("bundle", DEMO, "--output", output)
        self.assertEqual(run.returncode, 0, run.stderr)
        text = output.read_text(encoding="utf-8").rstrip("\n")
        envelope = json.loads(text, parse_float=lambda _: self.fail("a bundle holds no fractions"))
        canonical = json.dumps(envelope, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
        self.assertEqual(text, canonical)
        revision = json.dumps(envelope["rev"], sort_keys=True, separators=(",", ":"), ensure_ascii=False)
        self.assertIn(hashlib.sha256(revision.encode()).hexdigest(), run.stdout)
        kinds = [item["kind"] for item in envelope["rev"]["items"].values()]
        for kind, count in (("room", "rooms"), ("crossing", "crossings"), ("washing", "washings"), ("cart", "carts")):
            self.assertEqual(kinds.count(kind), len(self.survey[count]))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
