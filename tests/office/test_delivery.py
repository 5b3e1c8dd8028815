"""Everything arrives once: revisions with photos through nginx with TLS and a proxy that cuts half the connections, into SQLite
and into PostgreSQL with two offices of which one is killed.

Usage: test_delivery.py PROGRAM ROOT …   SILLWALK_LONG=1: 300 revisions and 60 photos in place of 60 and 8."""
import contextlib
import http.client
import json
import os
import pathlib
import random
import signal
import ssl
import sys
import threading
import time

from chaos import Chaos
from load import not_there
from office_process import Client, Nginx, Office, Postgres, revision, scratch, sha256

PROGRAM, ROOT = sys.argv[1], pathlib.Path(sys.argv[2])
LONG = bool(os.environ.get("SILLWALK_LONG"))
REVISIONS, PHOTOS, CLIENTS = (300, 60, 6) if LONG else (60, 8, 4)
APPEND = 256 << 10
# Limits of the site are for many tablets; here all come from one address.
os.environ |= {"SILLWALK_CALLS": "2000", "SILLWALK_BURST": "4000", "SILLWALK_CONNECTIONS": "256"}


class SecureClient(Client):
    def __init__(self, port, token, certificate):
        super().__init__(port, token, timeout=15)
        self.context = ssl.create_default_context(cafile=certificate)

    def request(self, method, path, body=None, **headers):
        if self.connection is None:
            self.connection = http.client.HTTPSConnection("localhost", self.port, timeout=self.timeout, context=self.context)
        return super().request(method, path, body, **headers)


class Courier:
    """Sends as a tablet does: again until it is told that it is there."""

    def __init__(self, client):
        self.client, self.tries, self.sent_bytes = client, 0, 0

    def again(self, method, path, body=None, **headers):
        while True:
            self.tries += 1
            self.sent_bytes += len(body or b"")
            try:
                status, told, answer = self.client.request(method, path, body, **headers)
            except (OSError, http.client.HTTPException):
                time.sleep(0.01)
                continue
            if status in (429, 500, 502, 503, 504):
                time.sleep(0.05)
                continue
            return status, told, answer

    def revision(self, digest, envelope):
        status = self.again("PUT", f"/v1/revisions/{digest}", envelope, Content_Type="application/json", If_None_Match="*")[0]
        assert status in (200, 201, 412), status

    def photo(self, photo):
        digest = sha256(photo)
        status, headers, _ = self.again("POST", f"/v1/blobs/{digest}/uploads", Upload_Complete="?0", Upload_Length=str(len(photo)),
                                        Content_Length="0")
        if status == 412:
            return
        assert status == 201, status
        upload, offset = headers["Location"], 0
        while True:
            end = min(offset + APPEND, len(photo))
            status, headers, answer = self.again("PATCH", upload, photo[offset:end], Content_Type="application/partial-upload",
                                                 Upload_Offset=str(offset), Upload_Complete="?1" if end == len(photo) else "?0")
            if status == 201:
                return
            if status == 404:  # the end of it was stored, and the answer cut off
                told = json.loads(self.again("POST", "/v1/blobs/query", json.dumps({"digests": [digest]}).encode())[2])
                assert told == {"missing": []}, told
                return
            assert status in (204, 409), (status, answer)
            offset = int(headers["Upload-Offset"])


def deliver(folder, offices, disturb):
    photos = [random.Random(number).randbytes(700_000) for number in range(PHOTOS)]
    device, token = offices[0].enrol()
    made = [revision(device, number % 20, note=f"delivery {number}", blobs=[photos[number % PHOTOS]]) for number in range(REVISIONS)]
    with Nginx(ROOT, folder, [office.port for office in offices]) as nginx, Chaos(nginx.port, seed=8) as chaos:
        couriers = [Courier(SecureClient(chaos.port, token, nginx.certificate)) for _ in range(CLIENTS)]
        failures = []

        def work(index):
            try:
                for digest, envelope in made[index::CLIENTS]:
                    couriers[index].revision(digest, envelope)
                    couriers[index].client.close()  # a tablet opens a connection for each delivery
                for photo in photos[index::CLIENTS]:
                    couriers[index].photo(photo)
                    couriers[index].client.close()
            except Exception as failure:  # told by the main thread
                failures.append(repr(failure))

        threads = [threading.Thread(target=work, args=(index,)) for index in range(CLIENTS)]
        for thread in threads:
            thread.start()
        disturb(threads)
        for thread in threads:
            thread.join()
        tries = sum(courier.tries for courier in couriers)
        assert not failures, failures
        assert chaos.cuts["in"] > 5 and chaos.cuts["out"] > 5, chaos.cuts
    lost = not_there(offices[0].port, token, [digest for digest, _ in made])
    assert not lost, f"{len(lost)} of {len(made)} are lost"
    with contextlib.closing(Client(offices[0].port, token)) as client:
        for digest, _ in made:
            receipt = json.loads(client.request("GET", f"/v1/receipts/{digest}")[2])["receipt"]
            assert receipt["complete"], receipt
        for photo in photos:
            assert client.request("GET", f"/v1/blobs/{sha256(photo)}")[2] == photo, "another photo came back"
    verified = offices[0].run("verify").split()
    assert (int(verified[0]), int(verified[3])) == (REVISIONS, PHOTOS), verified
    return tries


def kill_one(office):
    def disturb(threads):
        while any(thread.is_alive() for thread in threads):
            time.sleep(1.5)
            office.stop(signal.SIGKILL)
            time.sleep(0.2)
            office.wanted_port = office.port
            office.start()
            if not LONG:
                return
    return disturb


with scratch() as folder:
    with Office(PROGRAM, folder / "sqlite") as office:
        tries = deliver(folder, [office], lambda threads: None)
        print(f"SQLite: {REVISIONS} revisions and {PHOTOS} photos in {tries} tries")
with scratch() as folder, Postgres(folder) as database, Office(PROGRAM, folder / "data", database.url) as one, \
        Office(PROGRAM, folder / "data", database.url) as two:
    tries = deliver(folder, [one, two], kill_one(two))
    print(f"PostgreSQL, two offices, one of them killed: {REVISIONS} revisions and {PHOTOS} photos in {tries} tries")
