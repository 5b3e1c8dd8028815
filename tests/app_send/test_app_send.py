"""The app as it is shipped enrols at an office as it is shipped and sends it a visit with a photo, by its screens alone.

Usage: test_app_send.py OFFICE ROOT APP"""
import base64
import json
import pathlib
import subprocess
import sys

OFFICE, ROOT, APP = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
sys.path.insert(0, str(ROOT / "tests/office"))
from office_process import Office, scratch

GREY_JPEG = base64.b64decode(
    "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7"
    "gYKBTmCNl4x9lnN+gXz/wAALCAAMABABAREA/8QAFQABAQAAAAAAAAAAAAAAAAAAAAH/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/9oA"
    "CAEBAAA/AIA//9k=")

ENROL_AND_SEND = """
tap nav.overview
tap overview.evidence
tap evidence.add
tap evidence.file.1
tap photo_files.close
tap nav.overview
tap overview.office
type office.address "http://127.0.0.1:{port}"
type office.code "{wrong}"
tap office.enrol
expect office.fault contains "does not take the code"
clear office.code
type office.code "{code}"
type office.name "Tablet of the test"
tap office.enrol
expect office.where is "http://127.0.0.1:{port}"
tap nav.hand_over
expect hand_over.delivery contains "Not sent yet"
tap hand_over.send
expect send.what contains "1 photo"
clear send.author
type send.author "A. Vik"
tap send.send
expect hand_over.delivery contains "At the office"
restart
tap nav.hand_over
expect hand_over.delivery contains "At the office"
"""
AGAIN = """
tap nav.hand_over
tap hand_over.send
tap send.send
expect hand_over.delivery contains "At the office"
tap nav.home
expect visit.1 contains "At the office"
"""


def app(folder, script):
    path = folder / "steps.script"
    path.write_text(script, encoding="utf-8")
    done = subprocess.run([APP, "--headless", "--demo", "--data", folder / "tablet", "--photos", folder / "photos", "--draws", "60",
                           "--script", path], capture_output=True, text=True, timeout=300)
    assert done.returncode == 0, (done.returncode, done.stdout, done.stderr)


def main():
    with scratch() as folder:
        (folder / "photos").mkdir()
        (folder / "photos/sill.jpg").write_bytes(GREY_JPEG)
        with Office(OFFICE, folder / "office") as office:
            app(folder, ENROL_AND_SEND.format(port=office.port, wrong="NOT-THE-CODE", code=office.enrolment_code()))
            app(folder, AGAIN)
            listed = office.run("list")
            assert listed.count("Quillwater Frozen Foods, Plant 2 (invented)") == 1, listed
            assert "Tablet of the test" in office.run("devices")
            assert "complete" in listed, listed
            digests = office.run("heads", listed.split()[0]).split()
            assert len(digests) == 1, digests
            revision = json.loads(office.run("show", digests[0], "--json=yes"))
            revision = revision.get("rev", revision)
            assert len(revision["blobs"]) == 1 and revision["author"]["name"] == "A. Vik", revision["author"]
            stored = [path for path in (folder / "office").rglob("*") if path.name == revision["blobs"][0]["sha256"]]
            assert len(stored) == 1 and stored[0].stat().st_size == revision["blobs"][0]["bytes"], stored
            office.run("verify")
    print("one visit, one photo, both whole")


main()
