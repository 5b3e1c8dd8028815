"""Clients that send revisions at the same time and keep what was acknowledged."""
import contextlib
import http.client
import json
import threading
import time

from office_process import Client, canonical, revision, sha256


class Load:
    """`clients` threads; each sends its own revisions again and again until `stop` or until all are acknowledged."""

    def __init__(self, ports, token, device, clients=16, revisions=0, survey_of=lambda number: number, pause=0.02,
                 first=0):
        self.ports, self.token, self.device, self.pause = ports, token, device, pause
        self.survey_of, self.revisions = survey_of, revisions
        self.acked, self.tries, self.statuses = {}, 0, {}
        self.lock, self.over = threading.Lock(), threading.Event()
        self.next_number, self.last_number = first, first + revisions
        self.threads = [threading.Thread(target=self.work, args=(index,), daemon=True) for index in range(clients)]

    def __enter__(self):
        for thread in self.threads:
            thread.start()
        return self

    def __exit__(self, *_):
        self.over.set()
        self.join()

    def join(self):
        for thread in self.threads:
            thread.join()

    def take_number(self):
        with self.lock:
            if self.revisions and self.next_number >= self.last_number:
                return None
            self.next_number += 1
            return self.next_number

    def work(self, index):
        with contextlib.closing(Client(self.ports[index % len(self.ports)], self.token)) as client:
            while not self.over.is_set():
                number = self.take_number()
                if number is None:
                    return
                self.deliver(client, number)

    def deliver(self, client, number):
        digest, envelope = revision(self.device, self.survey_of(number), note=f"revision {number} " + "x" * 500)
        while not self.over.is_set():
            with self.lock:
                self.tries += 1
            try:
                status = client.put_revision(digest, envelope)[0]
            except (OSError, http.client.HTTPException):
                status = 0
            with self.lock:
                self.statuses[status] = self.statuses.get(status, 0) + 1
                if status in (200, 201, 412):
                    self.acked[digest] = status
                    return
            # A stopped office: another one, where there is one, and a little patience.
            client.port = self.ports[(self.ports.index(client.port) + 1) % len(self.ports)]
            client.close()
            time.sleep(self.pause)


def not_there(port, token, digests):
    """Digests that the office does not give back whole."""
    lost = []
    with contextlib.closing(Client(port, token)) as client:
        for digest in digests:
            status, _, body = client.request("GET", f"/v1/revisions/{digest}")
            if status != 200 or sha256(canonical(json.loads(body)["rev"])) != digest:
                lost.append(digest)
    return lost
