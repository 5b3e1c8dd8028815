"""The field side from the command line: seal, outbox, hand-off and import. Usage: test_field.py BINARY ROOT

Expected names are this file's own SHA-256 of the canonical text (RFC 8785, for whole numbers and ASCII names)."""
import base64
import hashlib
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

BINARY, ROOT = sys.argv[1], pathlib.Path(sys.argv[2])
DEMO = ROOT / "assets/demo/quillwater.json"
GREY_JPEG = base64.b64decode(
    "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7"
    "gYKBTmCNl4x9lnN+gXz/wAALCAAMABABAREA/8QAFQABAQAAAAAAAAAAAAAAAAAAAAH/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/9oA"
    "CAEBAAA/AIA//9k=")


def desk(*words):
    return subprocess.run([BINARY, *map(str, words)], capture_output=True, text=True, timeout=300)


def name_of(revision):
    text = json.dumps(revision, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(text.encode()).hexdigest()


class Field(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)
        self.photo = self.folder / "Freezer door.jpg"
        self.photo.write_bytes(GREY_JPEG)

    def good(self, *words):
        run = desk(*words)
        self.assertEqual(run.returncode, 0, run.stderr)
        return run.stdout

    def test_a_visit_goes_from_one_tablet_to_another_by_a_file(self):
        here, there, file = self.folder / "here", self.folder / "there", self.folder / "visit.ndjson"
        digest = self.good("seal", "--data", here, DEMO, "--photo", self.photo, "--author", "Test").strip()
        again = desk("seal", "--data", here, DEMO, "--photo", self.photo)
        self.assertEqual((again.returncode, again.stdout), (3, ""), again.stderr)
        listed = self.good("outbox", "--data", here)
        self.assertIn(digest + "  Visit  Waits", listed)
        self.assertEqual(listed.count("Photo  Waits"), 1)
        self.assertIn("1 revisions and 1 photos", self.good("hand-off", "--data", here, "--output", file))

        envelope, photo = (json.loads(line) for line in file.read_text(encoding="utf-8").splitlines())
        self.assertEqual(name_of(envelope["rev"]), digest)
        self.assertEqual(hashlib.sha256(base64.b64decode(photo["data"])).hexdigest(), envelope["rev"]["blobs"][0]["sha256"])
        captions = [item["v"]["caption"] for item in envelope["rev"]["items"].values() if item["kind"] == "photo"]
        self.assertEqual(captions, ["Freezer door"])
        self.assertTrue(envelope["rev"]["advice"]["carts"])
        self.assertEqual(envelope["sig"][0]["kid"], envelope["rev"]["author"]["device_id"])

        stranger = desk("import", "--data", there, file)
        self.assertEqual(stranger.returncode, 3)
        self.assertIn("2 put aside", stranger.stdout)
        self.assertIn("1 revisions, 0 known already, 1 photos, 1 new visits, 0 put aside",
                      self.good("import", "--data", there, file, "--accept-unknown"))
        copy = self.folder / "copy.ndjson"
        self.good("hand-off", "--data", there, "--output", copy)
        self.assertEqual(copy.read_bytes(), file.read_bytes())

    def test_a_changed_survey_is_sealed_upon_the_last(self):
        here, file, changed = self.folder / "here", self.folder / "visits.ndjson", self.folder / "survey.json"
        first = self.good("seal", "--data", here, DEMO).strip()
        survey = json.loads(DEMO.read_text(encoding="utf-8"))
        survey["customer"] = "Another"
        changed.write_text(json.dumps(survey), encoding="utf-8")
        second = self.good("seal", "--data", here, changed).strip()
        self.good("hand-off", "--data", here, "--output", file)
        revisions = [json.loads(line)["rev"] for line in file.read_text(encoding="utf-8").splitlines()]
        self.assertEqual([name_of(revision) for revision in revisions], [first, second])
        self.assertEqual([revision["parents"] for revision in revisions], [[], [first]])
        self.assertTrue((here / "visits.sqlite3.backup").exists())
        self.assertTrue((here / "visits.sqlite3.backup-older").exists())

    def test_what_is_wrong_is_said_in_one_line(self):
        here = self.folder / "here"
        for words, status, part in (
                (("seal", "--data", here, "no-such-visit"), 2, "no such visit"),
                (("seal", "--data", here, DEMO, "--photo", DEMO), 2, "quillwater.json"),
                (("send", "--data", here), 3, "not enrolled"),
                (("send", "--data", here, "--server", "http://office.example"), 2, "no address of an office"),
                (("enrol", "--data", here, "--server", "http://127.0.0.1:9", "--code", "x"), 1, "Nobody answers at http://127.0.0.1:9"),
                (("import", "--data", here, self.folder / "none"), 2, "cannot be read"),
                (("outbox", "--data", here, "--language", "xx"), 1, "en and es")):
            run = desk(*words)
            self.assertEqual(run.returncode, status, (words, run.stderr))
            self.assertEqual(len(run.stderr.strip().splitlines()), 1, run.stderr)
            self.assertIn(part, run.stderr)

    def test_a_damaged_file_is_put_aside_and_told(self):
        here = self.folder / "here"
        self.good("seal", "--data", here, DEMO)
        database = here / "visits.sqlite3"
        database.write_bytes(b"no database")
        run = desk("outbox", "--data", here)
        self.assertEqual(run.returncode, 0)
        self.assertIn("damaged", run.stderr)
        self.assertIn("Visit  Waits", run.stdout)
        self.assertEqual((here / "visits.sqlite3.damaged-1").read_bytes(), b"no database")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
