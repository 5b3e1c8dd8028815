"""The tablet's link with the real programs. F10: one packet in five lost and the link down for a while (nftables, in a network of
its own), the wall clock a year off (a library that shifts it). Besides: a server with another key, and one that points elsewhere.

Usage: test_tablet_link.py trust|loss|clock OFFICE ROOT DESK FILL_TABLET CLOCK_SHIFT
`loss` needs root and says 77 (skipped) without. SILLWALK_LONG=1: the link is down for 30 s in place of 4."""
import base64
import hashlib
import http.server
import json
import os
import pathlib
import re
import subprocess
import sys
import threading
import time

PART, OFFICE, ROOT, DESK, FILL, CLOCK = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3]), *sys.argv[4:7]
sys.path.insert(0, str(ROOT / "tests/office"))
from office_process import Nginx, Office, scratch

LONG = bool(os.environ.get("SILLWALK_LONG"))
SKIPPED = 77
REVISIONS, PHOTOS, PHOTO_BYTES = 5, 2, 400_000


def desk(*words, status=0, before=(), environment=None):
    done = subprocess.run([*before, DESK, *map(str, words)], capture_output=True, text=True, timeout=200, env=environment)
    assert status is None or done.returncode == status, (words, done.returncode, done.stdout, done.stderr)
    return done


def fill(tablet):
    tablet.mkdir()
    subprocess.run([FILL, tablet, str(REVISIONS), str(PHOTOS), str(PHOTO_BYTES)], check=True, stdout=subprocess.DEVNULL)


def arrived(office):
    words = office.run("verify").split()
    return int(words[0]), int(words[3])


def exchanges(told):
    return int(re.search(r"(\d+) exchanges", told)[1])


def pin_of(certificate):
    """As curl's documentation makes it: the SHA-256 of the public key in DER."""
    key = subprocess.run(["openssl", "x509", "-in", certificate, "-pubkey", "-noout"], capture_output=True, check=True).stdout
    der = subprocess.run(["openssl", "pkey", "-pubin", "-outform", "der"], input=key, capture_output=True, check=True).stdout
    return "sha256//" + base64.b64encode(hashlib.sha256(der).digest()).decode()


class Counting(http.server.BaseHTTPRequestHandler):
    """Counts what it is asked; sends every caller to `elsewhere`, where there is one."""

    def answer(self):
        self.server.asked += 1
        self.send_response(302 if self.server.elsewhere else 200)
        if self.server.elsewhere:
            self.send_header("Location", self.server.elsewhere)
        self.send_header("Content-Length", "0")
        self.end_headers()

    do_GET = do_PUT = do_POST = do_HEAD = do_PATCH = answer

    def log_message(self, *_):
        pass


def counting(elsewhere=None):
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Counting)
    server.asked, server.elsewhere = 0, elsewhere
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server


def trust(folder):
    tablet = folder / "tablet"
    fill(tablet)
    with Office(OFFICE, folder / "office") as office:
        with Nginx(ROOT, folder / "one", [office.port]) as right, Nginx(ROOT, folder / "two", [office.port]) as other:
            both = folder / "both.pem"
            both.write_text(right.certificate.read_text() + other.certificate.read_text())
            words = ["enrol", "--data", tablet, "--certificate", both, "--server", f"https://localhost:{right.port}", "--code"]
            code = office.enrolment_code()
            wrong = desk(*words, code, "--pin", pin_of(other.certificate), status=1)
            assert "not trusted" in wrong.stderr, wrong
            # The code was not spent: the server with the other key never saw it.
            desk(*words, code, "--pin", pin_of(right.certificate))

            # The certificate of the other server is trusted, but its key is not the pinned one.
            send = ["send", "--data", tablet, "--certificate", both, "--first-wait-ms", "20", "--patience", "1"]
            wrong = desk(*send, "--server", f"https://localhost:{other.port}", status=1)
            assert "not the office" in wrong.stdout, wrong
            assert arrived(office) == (0, 0)

            # A server that points elsewhere is not followed there, neither on this machine nor off it.
            there = counting()
            here = counting(f"http://127.0.0.1:{there.server_port}/")
            away = desk(*send, "--server", f"http://127.0.0.1:{here.server_port}", status=1)
            assert here.asked > 0 and there.asked == 0, (here.asked, there.asked, away)
            assert arrived(office) == (0, 0)
            desk(*send)
            assert arrived(office) == (REVISIONS, PHOTOS), arrived(office)
    print("another key and a server that points elsewhere get nothing; the pinned key gets all")


def enrolled(office, tablet):
    fill(tablet)
    desk("enrol", "--data", tablet, "--server", f"http://127.0.0.1:{office.port}", "--code", office.enrolment_code())


YEAR_S = 365 * 24 * 3600


def sealed_at_s(tablet, folder, environment):
    """The time that the desk tool writes into what it seals."""
    desk("seal", "--data", tablet, ROOT / "assets/demo/quillwater.json", environment=environment)
    file = folder / f"{tablet.name}.ndjson"
    desk("hand-off", "--data", tablet, "--output", file)
    revisions = [json.loads(line)["rev"] for line in file.read_text(encoding="utf-8").splitlines() if '"rev"' in line]
    whole = max(revisions, key=lambda revision: len(revision["items"]))  # the others were filled in, with times of their own
    return whole["captured"]["device_ms"] / 1000


def clock(folder):
    """The waits go by a clock that never jumps; the wall clock is only noted."""
    for shift in (-YEAR_S, YEAR_S):
        environment = os.environ | {"LD_PRELOAD": CLOCK, "SILLWALK_CLOCK_SHIFT_S": str(shift)}
        with Office(OFFICE, folder / f"office{shift}") as office:
            tablet = folder / f"tablet{shift}"
            enrolled(office, tablet)
            # The control: the program does see the other time.
            assert abs(sealed_at_s(tablet, folder, environment) - time.time() - shift) < 3600
            office.stop()
            began = time.monotonic()
            down = desk("send", "--data", tablet, "--patience", "3", status=1, environment=environment)
            assert exchanges(down.stdout) <= 2 + (time.monotonic() - began), down
            office.wanted_port = office.port
            office.start()
            desk("send", "--data", tablet, environment=environment)
            assert arrived(office) == (REVISIONS + 1, PHOTOS), arrived(office)
    print("sent with the clock a year behind and a year ahead; not hammered while the office was away")


def run(*words):
    subprocess.run(words, check=True)


LOSSY = ("add table inet link", "add chain inet link in { type filter hook input priority 0 ; }",
         "add rule inet link in meta l4proto tcp numgen random mod 100 < 20 counter drop")


def lose_packets():
    run("nft", "\n".join(LOSSY))


def may_lose_packets():
    """Whether this user and this kernel let a program have a network of its own, with such rules."""
    words = "ip link set lo up && nft '" + "\n".join(LOSSY) + "'"
    return subprocess.run(["unshare", "-n", "sh", "-c", words], capture_output=True).returncode == 0


def lost_packets():
    listed = subprocess.run(["nft", "list", "ruleset"], capture_output=True, text=True, check=True).stdout
    return int(re.search(r"counter packets (\d+)", listed)[1])


def loss(folder):
    run("ip", "link", "set", "lo", "up")
    with Office(OFFICE, folder / "office") as office:
        tablet = folder / "tablet"
        enrolled(office, tablet)
        lose_packets()
        down_s = 30 if LONG else 4
        began = time.monotonic()
        with subprocess.Popen([DESK, "send", "--data", tablet, "--patience", "120"], stdout=subprocess.PIPE, text=True) as sending:
            time.sleep(0.3)
            run("ip", "link", "set", "lo", "down")
            time.sleep(down_s)
            assert sending.poll() is None, "the link was not down while it sent"
            run("ip", "link", "set", "lo", "up")
            told = sending.communicate(timeout=200)[0]
        assert sending.returncode == 0, told
        parts = REVISIONS + PHOTOS * (2 + PHOTO_BYTES // 65536)
        assert exchanges(told) <= parts + (time.monotonic() - began), told
        assert lost_packets() > 5, f"{lost_packets()} packets lost: the test shows nothing"
        print(f"sent though {lost_packets()} packets were lost and the link was down for {down_s} s")
        run("nft", "flush ruleset")
        assert arrived(office) == (REVISIONS, PHOTOS), arrived(office)


if PART == "loss" and "INSIDE" not in os.environ:
    if not may_lose_packets():
        print("skipped: there can be no network of its own here that loses packets")
        sys.exit(SKIPPED)
    sys.exit(subprocess.run(["unshare", "-n", sys.executable, "-B", *sys.argv], env=os.environ | {"INSIDE": "1"}).returncode)
with scratch() as scratch_folder:
    {"trust": trust, "loss": loss, "clock": clock}[PART](scratch_folder)
