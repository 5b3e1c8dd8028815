"""A proxy that cuts connections: some on the way in, part-way through a request; some on the way out, after the office has answered."""
import random
import socket
import threading
import time


class Chaos:
    def __init__(self, target_port, seed=1, cut_in=0.25, cut_out=0.25):
        self.target, self.cut_in, self.cut_out = target_port, cut_in, cut_out
        self.chance, self.lock = random.Random(seed), threading.Lock()
        self.cuts = {"in": 0, "out": 0}
        self.listener = socket.create_server(("127.0.0.1", 0), backlog=128)
        self.port = self.listener.getsockname()[1]
        self.over = False

    def __enter__(self):
        threading.Thread(target=self.accept, daemon=True).start()
        return self

    def __exit__(self, *_):
        self.over = True
        self.listener.close()

    def accept(self):
        while not self.over:
            try:
                connection, _ = self.listener.accept()
            except OSError:
                return
            threading.Thread(target=self.serve, args=(connection,), daemon=True).start()

    def plan(self):
        """How many bytes may pass each way; None: all."""
        with self.lock:
            dice, size = self.chance.random(), self.chance.randrange(1, 60_000)
            if dice < self.cut_in:
                self.cuts["in"] += 1
                return size, None
            if dice < self.cut_in + self.cut_out:
                self.cuts["out"] += 1
                return None, self.chance.randrange(0, 1500)
        return None, None

    def serve(self, connection):
        limit_in, limit_out = self.plan()
        try:
            office = socket.create_connection(("127.0.0.1", self.target), timeout=30)
        except OSError:
            connection.close()
            return
        both = (connection, office)
        inward = threading.Thread(target=pipe, args=(connection, office, limit_in, both), daemon=True)
        inward.start()
        pipe(office, connection, limit_out, both)
        inward.join()
        for end in both:
            end.close()


def pipe(source, target, limit, both):
    """Passes bytes on until the end, or cuts both ways once `limit` bytes went through."""
    try:
        while True:
            data = source.recv(16384)
            if not data:
                break
            if limit is not None:
                data, limit = data[:limit], limit - len(data)
            target.sendall(data)
            if limit is not None and limit <= 0:
                break
    except OSError:
        pass
    for end in both:
        try:
            end.shutdown(socket.SHUT_RDWR)
        except OSError:
            pass


class Hasty:
    """Acknowledges a revision before the office has it, and hands it on a little later, as a server does that keeps in memory
    what it says it stored. It is the control of the tests that kill: what they look for must be found here."""

    def __init__(self, target_port, hold=0.3):
        self.target, self.hold = target_port, hold
        self.waiting, self.lock, self.over = [], threading.Lock(), threading.Event()
        self.listener = socket.create_server(("127.0.0.1", 0), backlog=128)
        self.port = self.listener.getsockname()[1]

    def __enter__(self):
        for work in (self.accept, self.hand_on):
            threading.Thread(target=work, daemon=True).start()
        return self

    def __exit__(self, *_):
        self.over.set()
        self.listener.close()

    def crash(self):
        """The memory goes with the process."""
        self.over.set()
        with self.lock:
            self.waiting.clear()

    def accept(self):
        while not self.over.is_set():
            try:
                connection, _ = self.listener.accept()
            except OSError:
                return
            threading.Thread(target=self.serve, args=(connection,), daemon=True).start()

    def serve(self, connection):
        with connection, connection.makefile("rb") as reader:
            while not self.over.is_set():
                head = b"".join(iter(reader.readline, b"\r\n"))
                if not head.endswith(b"\r\n"):
                    return
                length = next(int(line.split(b":")[1]) for line in head.split(b"\r\n") if line.lower().startswith(b"content-length"))
                request = head + b"\r\n" + reader.read(length)
                with self.lock:
                    self.waiting.append((time.monotonic() + self.hold, request))
                time.sleep(0.01)
                connection.sendall(b"HTTP/1.1 201 Created\r\nContent-Length: 2\r\n\r\n{}")

    def hand_on(self):
        while not self.over.wait(0.02):
            with self.lock:
                due = [request for when, request in self.waiting if when <= time.monotonic()]
                self.waiting = [entry for entry in self.waiting if entry[0] > time.monotonic()]
            for request in due:
                try:
                    with socket.create_connection(("127.0.0.1", self.target), timeout=30) as office:
                        office.sendall(request)
                        office.recv(65536)
                except OSError:
                    return
