"""F15 and F16: what a hostile client sends, over a raw socket, to the office alone and through nginx with TLS.

Usage: test_http_matrix.py PROGRAM ROOT"""
import contextlib
import gzip
import json
import pathlib
import shutil
import socket
import ssl
import sys

from office_process import Nginx, Office, resident_kib, revision, scratch, small_quarantine

PROGRAM, ROOT = sys.argv[1], pathlib.Path(sys.argv[2])
faults = []


def probes(token, device):
    """Name, bytes, statuses the office gives, statuses allowed through nginx."""
    digest, envelope = revision(device, note="matrix")
    put = f"PUT /v1/revisions/{digest} HTTP/1.1\r\nHost: office\r\nAuthorization: Bearer {token}\r\nContent-Type: application/json\r\n"

    def with_headers(lines, body=b""):
        return (put + "".join(line + "\r\n" for line in lines) + "\r\n").encode() + body

    size = len(envelope)
    bad = range(400, 600)
    get = "GET /v1/service HTTP/1.1\r\n"
    yield "two content lengths", with_headers([f"Content-Length: {size}", f"Content-Length: {size + 1}"], envelope), [400], bad
    yield "the same content length twice", with_headers([f"Content-Length: {size}"] * 2, envelope), [400], bad
    yield "content length and chunked", with_headers([f"Content-Length: {size}", "Transfer-Encoding: chunked"], b"0\r\n\r\n"), [400], bad
    yield "transfer encoding xchunked", with_headers(["Transfer-Encoding: xchunked"], b"0\r\n\r\n"), [501], bad
    yield "transfer encoding gzip, chunked", with_headers(["Transfer-Encoding: gzip, chunked"], b"0\r\n\r\n"), [501], bad
    yield "chunk size -2", with_headers(["Transfer-Encoding: chunked"], b"-2\r\nab\r\n0\r\n\r\n"), [400], bad
    yield "chunk size that overflows", with_headers(["Transfer-Encoding: chunked"], b"fffffffffffffffff\r\nab\r\n"), [400, 413], bad
    yield "content length -1", with_headers(["Content-Length: -1"]), [400], bad
    yield "content length +5", with_headers(["Content-Length: +5"], b"abcde"), [400], bad
    yield "content length 1e9", with_headers(["Content-Length: 1000000000"]), [413], bad
    yield "chunked 3 MB", with_headers(["Transfer-Encoding: chunked"], b"8000\r\n" + b"x" * 32768 + b"\r\n" * 1 + (b"8000\r\n" + b"x" * 32768 + b"\r\n") * 91 + b"0\r\n\r\n"), [413], bad
    yield "a header of 200 KB", (get + "Host: office\r\nX-Long: " + "x" * 200_000 + "\r\n\r\n").encode(), [431], bad
    yield "5000 headers", (get + "Host: office\r\n" + "X-A: 1\r\n" * 5000 + "\r\n").encode(), [431], bad
    yield "65 headers", (get + "Host: office\r\n" + "X-A: 1\r\n" * 65 + "\r\n").encode(), [431], range(200, 600)
    yield "a folded header", (get + "Host: office\r\nX-A: 1\r\n  folded\r\n\r\n").encode(), [400], bad
    yield "space before the colon", (get + "Host: office\r\nX-A : 1\r\n\r\n").encode(), [400], bad
    yield "no host", (get + "\r\n").encode(), [400], bad
    yield "two hosts", (get + "Host: office\r\nHost: other\r\n\r\n").encode(), [400], bad
    yield "bare line ends", (get + "Host: office\r\n\r\n").replace("\r\n", "\n").encode(), [400], range(200, 600)
    yield "a zero byte in a header", (get + "Host: office\r\nX-A: a\0b\r\n\r\n").encode(), [400], bad
    yield "HTTP/1.0", b"GET /v1/service HTTP/1.0\r\nHost: office\r\n\r\n", [505], range(200, 600)
    yield "HTTP/3.0", b"GET /v1/service HTTP/3.0\r\nHost: office\r\n\r\n", [505], bad
    yield "no HTTP at all", b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03\r\n\r\n", [400], bad
    for path in ("/%2e%2e/%2e%2e/etc/passwd", "/v1/../office.key", "/v1/blobs/..%2f..%2foffice.key", "/v1//service", "/v1/service/",
                 "/v1/revisions/" + "A" * 64, "/v1/revisions/" + "a" * 63, "/photo/../office.key", "/office.sqlite"):
        yield f"path {path}", f"GET {path} HTTP/1.1\r\nHost: office\r\nAuthorization: Bearer {token}\r\n\r\n".encode(), [400, 401, 404], bad
    bomb = gzip.compress(b" " * 50_000_000)
    yield "gzip of 50 MB", with_headers(["Content-Encoding: gzip", f"Content-Length: {len(bomb)}"], bomb), [415], bad
    brackets = b"[" * 1_000_000
    yield "a million open brackets", with_headers([f"Content-Length: {len(brackets)}"], brackets), [400], bad
    yield "a text that is no envelope", with_headers(["Content-Length: 2"], b"{}"), [422], bad
    yield "another digest", with_headers(["Content-Length: 2"], b"{}").replace(digest.encode(), b"0" * 64), [422], bad
    yield "no token", f"PUT /v1/revisions/{digest} HTTP/1.1\r\nHost: office\r\nContent-Length: 0\r\n\r\n".encode(), [401], bad
    yield "another method", b"BREW /v1/service HTTP/1.1\r\nHost: office\r\nContent-Length: 0\r\n\r\n", [405], bad
    yield "commands without their token", b"POST /commands HTTP/1.1\r\nHost: office\r\nContent-Length: 2\r\n\r\n{}", [404], bad
    yield "a good one, chunked", with_headers(["Transfer-Encoding: chunked"], b"%x\r\n" % size + envelope + b"\r\n0\r\n\r\n"), [201, 200], [200, 201]
    yield "a good one", with_headers([f"Content-Length: {size}"], envelope), [200], [200]


def send(connect, data):
    """Status of the answer and whether its body is a problem or JSON; 0 where the connection just ends."""
    with connect() as connection:
        connection.settimeout(15)
        try:
            connection.sendall(data)
        except OSError:
            pass  # the answer may be there already
        got = b""
        try:
            while b"\r\n\r\n" not in got:
                more = connection.recv(65536)
                if not more:
                    break
                got += more
        except OSError:
            pass
    return int(got.split(b" ", 2)[1]) if got.startswith(b"HTTP/") else 0


def check(where, connect, token, device, column):
    for probe in probes(token, device):
        name, data, allowed = probe[0], probe[1], probe[column]
        status = send(connect, data)
        # nginx may end a connection without an answer when it gives up on the bytes.
        if status not in allowed and not (column == 3 and status == 0 and 200 not in allowed):
            faults.append(f"{where}: {name}: {status}")


with scratch() as folder, contextlib.closing(Office(PROGRAM, folder / "data").start(small_quarantine())) as office:
    device, token = office.enrol()

    def plain():
        return socket.create_connection(("127.0.0.1", office.port))

    before = resident_kib(office.process.pid)
    check("office", plain, token, device, 2)
    grown = resident_kib(office.process.pid) - before
    if grown > 16_384:
        faults.append(f"F15: the office grew by {grown} KiB")

    if shutil.which("nginx"):
        with Nginx(ROOT, folder, [office.port]) as nginx:
            context = ssl.create_default_context(cafile=nginx.certificate)

            def secure():
                return context.wrap_socket(socket.create_connection(("127.0.0.1", nginx.port)), server_hostname="localhost")

            check("nginx", secure, token, device, 3)
    else:
        faults.append("nginx is not here; packages-test.txt names it")

print("\n".join(faults) or f"the matrix holds; the office grew by {grown} KiB")
sys.exit(1 if faults else 0)
