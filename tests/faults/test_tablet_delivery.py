"""F8 with the real programs: what was sealed on a tablet arrives once and whole through a proxy that cuts half the connections,
nginx with TLS and the office, into SQLite and into PostgreSQL with two offices of which one is killed. The desk tool is killed on
the way and started again.

Usage: test_tablet_delivery.py OFFICE ROOT DESK FILL_TABLET   SILLWALK_LONG=1: 300 revisions and 60 photos in place of 60 and 8."""
import contextlib
import json
import os
import pathlib
import signal
import subprocess
import sys
import threading
import time

ROOT = pathlib.Path(sys.argv[2])
sys.path.insert(0, str(ROOT / "tests/office"))
from chaos import Chaos
from office_process import Client, Nginx, Office, Postgres, scratch, sha256

OFFICE, DESK, FILL = sys.argv[1], sys.argv[3], sys.argv[4]
LONG = bool(os.environ.get("SILLWALK_LONG"))
REVISIONS, PHOTOS, BYTES = (300, 60, 700_000) if LONG else (60, 8, 500_000)
os.environ |= {"SILLWALK_CALLS": "2000", "SILLWALK_BURST": "4000", "SILLWALK_CONNECTIONS": "256"}


class Ruthless(Chaos):
    """The tablet keeps its connection, so that each is cut: half of them at once, as the other tests do, the others later."""

    def plan(self):
        limit_in, limit_out = super().plan()
        if limit_in is None and limit_out is None:
            with self.lock:
                self.cuts["late"] = self.cuts.get("late", 0) + 1
                return self.chance.randrange(2_000, 600_000), None
        return limit_in, limit_out


def desk(*words, status=0):
    done = subprocess.run([DESK, *map(str, words)], capture_output=True, text=True, timeout=500)
    assert done.returncode == status, (words, done.returncode, done.stdout, done.stderr)
    return done.stdout


def send_words(tablet, port, certificate):
    return ["send", "--data", tablet, "--server", f"https://localhost:{port}", "--certificate", certificate,
            "--first-wait-ms", "20", "--patience", "60"]


def killed_on_the_way(tablet, port, certificate, times):
    for _ in range(times):
        process = subprocess.Popen([DESK, *map(str, send_words(tablet, port, certificate))], stdout=subprocess.DEVNULL,
                                   stderr=subprocess.DEVNULL)
        time.sleep(1.0)
        process.send_signal(signal.SIGKILL)
        process.wait(timeout=30)


def fill(tablet):
    tablet.mkdir()
    filled = subprocess.run([FILL, tablet, str(REVISIONS), str(PHOTOS), str(BYTES)], capture_output=True, text=True, check=True)
    lines = [line.split() for line in filled.stdout.splitlines()]
    revisions, photos = ([name for kind, name in lines if kind == wanted] for wanted in ("revision", "photo"))
    assert (len(set(revisions)), len(set(photos))) == (REVISIONS, PHOTOS)
    return revisions, photos


def enrol(office, tablet, nginx):
    address = f"https://localhost:{nginx.port}"
    assert "not enrolled" in subprocess.run([DESK, "send", "--data", tablet], capture_output=True, text=True).stderr
    # Without the certificate the server is not trusted, and nothing is told to it.
    words = ["enrol", "--data", tablet, "--server", address, "--code"]
    untrusted = subprocess.run([DESK, *map(str, words), "x"], capture_output=True, text=True)
    assert untrusted.returncode == 1 and "not trusted" in untrusted.stderr, untrusted
    desk(*words, "wrong", "--certificate", nginx.certificate, status=2)
    desk(*words, office.enrolment_code(), "--certificate", nginx.certificate)


def check_arrived(office, revisions, photos):
    verified = office.run("verify").split()
    assert (int(verified[0]), int(verified[3])) == (REVISIONS, PHOTOS), verified
    _, token = office.enrol()
    with contextlib.closing(Client(office.port, token)) as client:
        for digest in revisions:
            receipt = json.loads(client.request("GET", f"/v1/receipts/{digest}")[2])["receipt"]
            assert receipt["complete"] and not receipt["fork"], receipt
        for digest in photos:
            assert sha256(client.request("GET", f"/v1/blobs/{digest}")[2]) == digest, "another photo came back"


def deliver(folder, offices, disturb):
    tablet = folder / "tablet"
    revisions, photos = fill(tablet)
    with Nginx(ROOT, folder, [office.port for office in offices]) as nginx:
        enrol(offices[0], tablet, nginx)
        with Ruthless(nginx.port, seed=8) as chaos:
            killed_on_the_way(tablet, chaos.port, nginx.certificate, 3 if LONG else 1)
            disturbing = threading.Thread(target=disturb)
            disturbing.start()
            print(desk(*send_words(tablet, chaos.port, nginx.certificate)).strip())
            disturbing.join()
            assert min(chaos.cuts["in"], chaos.cuts["out"], chaos.cuts["late"]) > 2, chaos.cuts
    shown = desk("outbox", "--data", tablet)
    assert shown.count("At the office") == REVISIONS + PHOTOS, shown
    check_arrived(offices[0], revisions, photos)
    # The same visits by a file: what arrived already is stored once.
    desk("hand-off", "--data", tablet, "--output", folder / "visits.ndjson")
    offices[0].run("import", str(folder / "visits.ndjson"))
    assert int(offices[0].run("verify").split()[0]) == REVISIONS
    return chaos.cuts


def kill_one(office):
    def disturb():
        for _ in range(5 if LONG else 1):
            time.sleep(0.5)
            office.stop(signal.SIGKILL)
            time.sleep(0.3)
            office.wanted_port = office.port
            office.start()
    return disturb


with scratch() as folder, Office(OFFICE, folder / "office") as office:
    print(f"SQLite: {REVISIONS} revisions and {PHOTOS} photos, cuts: {deliver(folder, [office], lambda: None)}")
with scratch() as folder, Postgres(folder) as database, Office(OFFICE, folder / "data", database.url) as one, \
        Office(OFFICE, folder / "data", database.url) as two:
    cuts = deliver(folder, [one, two], kill_one(two))
    print(f"PostgreSQL, two offices, one of them killed: {REVISIONS} revisions and {PHOTOS} photos, cuts: {cuts}")
