"""A proxy that cuts connections: some on the way in, part-way through a request; some on the way out, after the office has answered."""
import random
import socket
import threading


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
