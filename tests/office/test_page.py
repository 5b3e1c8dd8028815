"""The office's page in Debian's chromium: login, list, one visit with advice and photo, fork, hostile text, a phone's width.

Usage: test_page.py PROGRAM ROOT SILLWALK_DESK BUILD_FOLDER"""
import contextlib
import json
import pathlib
import shutil
import struct
import subprocess
import sys
import zlib

from office_process import Client, Office, canonical, revision, scratch, sha256

PROGRAM, ROOT, DESK, BUILD = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3], pathlib.Path(sys.argv[4])
BROWSER = BUILD / "browser"


def png():
    """A blue picture of 8 by 8 (PNG, ISO/IEC 15948)."""
    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
    rows = b"".join(b"\0" + b"\0\x52\x8f" * 8 for _ in range(8))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", 8, 8, 8, 2, 0, 0, 0)) + \
        chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def fill(office):
    device, token = office.enrol()
    with contextlib.closing(Client(office.port, token)) as client:
        made = subprocess.run([DESK, "bundle", ROOT / "assets/demo/quillwater.json"], capture_output=True, check=True)
        rev = json.loads(made.stdout)["rev"]
        picture = png()
        rev["author"]["device_id"] = device
        rev["blobs"] = [{"sha256": sha256(picture), "bytes": len(picture), "media": "image/png", "width_px": 8, "height_px": 8}]
        send(client, sha256(canonical(rev)), canonical({"format": "sillwalk-envelope/1", "rev": rev, "sig": []}))
        assert client.request("PUT", f"/v1/blobs/{sha256(picture)}", picture)[0] == 201
        root = revision(device, 5, note="root")
        for digest, envelope in (root, revision(device, 5, [root[0]], "left"), revision(device, 5, [root[0]], "right"),
                                 revision(device, 6, note="waits", blobs=[b"a photo that does not come"])):
            send(client, digest, envelope)
        hostile = json.loads(revision(device, 7)[1])["rev"]
        text = "<script>alert(1)</script><img src=x onerror=alert(2)>\u202e"
        uuid = "018f3c1a-0000-7000-8000-000000000901"
        hostile["author"]["name"] = text
        hostile["items"][uuid] = {"kind": "site", "order": 0, "v": {"site": text, text[:8]: {"as_entered": text}}}
        hostile["advice"] = {"carts": [{"cart": text, "ranked": [{"verdict": text, "candidate": {"wheel": text}, "findings": [
            {"check": text, "outcome": text, "place": {"crossing": text}}]}]}, 7, None]}
        send(client, sha256(canonical(hostile)), canonical({"format": "sillwalk-envelope/1", "rev": hostile, "sig": []}))


def send(client, digest, envelope):
    status, _, answer = client.put_revision(digest, envelope)
    assert status == 201, (status, answer)


if not shutil.which("chromium"):
    print("SKIPPED: chromium is not here; platforms/office/packages-test.txt names it")
    sys.exit(77)
BROWSER.mkdir(parents=True, exist_ok=True)
for name in ("package.json", "package-lock.json", "page.mjs"):
    shutil.copy(ROOT / "tests/office/browser" / name, BROWSER / name)
if not (BROWSER / "node_modules/playwright-core").is_dir():
    subprocess.run(["npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts"], cwd=BROWSER, check=True, stdout=subprocess.DEVNULL)
with scratch() as folder, Office(PROGRAM, folder / "data") as office:
    fill(office)
    code = office.run("person", "Ada").split("Ada: ")[1].split()[0]
    sys.exit(subprocess.run(["node", "page.mjs", f"http://127.0.0.1:{office.port}", code, "."], cwd=BROWSER).returncode)
