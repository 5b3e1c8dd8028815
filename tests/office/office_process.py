"""Starts and stops the office, PostgreSQL and nginx for tests, each in a folder of its own, and speaks to the office."""
import contextlib
import hashlib
import http.client
import json
import os
import pathlib
import pwd
import shutil
import signal
import socket
import subprocess
import tempfile
import time

PUBLIC_KEY = "00" * 32
DEVICE_NAME = "Test tablet"


def canonical(value):
    """RFC 8785 for what the format allows: whole numbers and ASCII names."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def wait_for(condition, seconds=30, what="it"):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if condition():
            return
        time.sleep(0.05)
    raise TimeoutError(f"{what} did not happen within {seconds} s")


def answers(port):
    try:
        socket.create_connection(("127.0.0.1", port), timeout=1).close()
        return True
    except OSError:
        return False


def resident_kib(pid):
    for line in pathlib.Path(f"/proc/{pid}/status").read_text().splitlines():
        if line.startswith("VmRSS"):
            return int(line.split()[1])
    return 0


def small_quarantine():
    """The address sanitizer keeps freed memory aside, 256 MB of it. With little of that a program's size tells what it holds."""
    return os.environ | {"ASAN_OPTIONS": os.environ.get("ASAN_OPTIONS", "") + ":quarantine_size_mb=1:thread_local_quarantine_size_kb=64"}


def revision(device, survey=1, parents=(), note="", blobs=()):
    uuid = "018f3c1a-0000-7000-8000-%012d"
    rev = {"format": "sillwalk-revision/1", "requires": [], "survey_id": uuid % survey, "parents": list(parents),
           "author": {"device_id": device, "role": "field", "name": "Test"}, "captured": {"device_ms": 1},
           "editions": {"engine": "0", "catalogue": "0", "tables": "0"},
           "items": {uuid % 900: {"kind": "notes", "order": 0, "v": {"text": note}}},
           "blobs": [{"sha256": sha256(blob), "bytes": len(blob), "media": "image/jpeg", "width_px": 20, "height_px": 10}
                     for blob in blobs]}
    return sha256(canonical(rev)), canonical({"format": "sillwalk-envelope/1", "rev": rev, "sig": []})


class Office:
    """One process of sillwalk-office serve."""

    def __init__(self, program, data, database="", port=0):
        self.program, self.data, self.database, self.wanted_port = program, str(data), database, port
        self.process = None

    def words(self, *words):
        database = ["--database", self.database] if self.database else []
        return [self.program, "--data", self.data, *database, *words]

    def start(self, environment=None):
        self.process = subprocess.Popen(self.words("--port", str(self.wanted_port), "serve"), stdout=subprocess.PIPE, text=True,
                                        env=environment)
        line = self.process.stdout.readline()
        if "Serving on" not in line:
            raise RuntimeError(f"the office did not start: {line!r}")
        self.port = int(line.rsplit(":", 1)[1])
        return self

    def stop(self, how=signal.SIGTERM):
        if self.process and self.process.poll() is None:
            self.process.send_signal(how)
            self.process.wait(timeout=60)
        if self.process:
            self.process.stdout.close()

    def __enter__(self):
        return self.start()

    def __exit__(self, *_):
        self.stop()

    def close(self):
        self.stop()

    def run(self, *words, status=0):
        done = subprocess.run(self.words(*words), capture_output=True, text=True, timeout=120)
        if status is not None and done.returncode != status:
            raise AssertionError(f"{words}: status {done.returncode}: {done.stdout}{done.stderr}")
        return done.stdout

    def enrolment_code(self):
        return self.run("enrol").split("minutes: ")[1].split()[0]

    def enrol(self):
        body = json.dumps({"code": self.enrolment_code(), "public_key": PUBLIC_KEY, "device_name": DEVICE_NAME})
        with contextlib.closing(Client(self.port)) as client:
            status, _, answer = client.request("POST", "/v1/enrolments", body)
        assert status == 201, (status, answer)
        told = json.loads(answer)
        return told["device_id"], told["token"]


class Client:
    """One connection that is opened anew after a fault."""

    def __init__(self, port, token=None, timeout=30):
        self.port, self.token, self.timeout, self.connection = port, token, timeout, None

    def request(self, method, path, body=None, **headers):
        named = {name.replace("_", "-"): value for name, value in headers.items()}
        if self.token:
            named["Authorization"] = "Bearer " + self.token
        if self.connection is None:
            self.connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=self.timeout)
        try:
            self.connection.request(method, path, body, named)
            response = self.connection.getresponse()
            return response.status, response.headers, response.read()
        except (OSError, http.client.HTTPException):
            self.close()
            raise

    def put_revision(self, digest, envelope):
        return self.request("PUT", f"/v1/revisions/{digest}", envelope, Content_Type="application/json", If_None_Match="*")

    def close(self):
        if self.connection is not None:
            self.connection.close()
        self.connection = None


def postgres_programs():
    for folder in sorted(pathlib.Path("/usr/lib/postgresql").glob("*/bin"), reverse=True):
        if (folder / "initdb").exists():
            return folder
    return None


class Postgres:
    """A PostgreSQL server of its own. It refuses to run as root, so it then runs as the user that the package made."""

    def __init__(self, folder):
        self.programs = postgres_programs()
        self.folder = pathlib.Path(folder) / "postgres"
        self.port = free_port()
        self.prefix = ["runuser", "-u", "postgres", "--"] if os.getuid() == 0 else []
        self.folder.mkdir()
        if self.prefix:
            user = pwd.getpwnam("postgres")
            os.chown(self.folder, user.pw_uid, user.pw_gid)
            for parent in self.folder.parents:
                if str(parent).startswith(tempfile.gettempdir()) and str(parent) != tempfile.gettempdir():
                    os.chmod(parent, 0o755)
        self.data = self.folder / "data"
        self.call("initdb", "-D", self.data, "-A", "trust", "-U", "sillwalk", "--data-checksums", "-E", "UTF8", "--locale=C")
        self.url = f"postgresql://sillwalk@127.0.0.1:{self.port}/postgres"

    def call(self, name, *words):
        subprocess.run([*self.prefix, self.programs / name, *words], check=True, stdout=subprocess.DEVNULL, cwd="/")

    def start(self):
        options = f"-p {self.port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={self.folder} -c max_connections=100"
        self.call("pg_ctl", "-D", self.data, "-l", self.folder / "log", "-w", "-o", options, "start")

    def sql(self, statement):
        self.call("psql", "-q", "-d", self.url, "-c", statement)

    def stop(self, mode="fast"):
        self.call("pg_ctl", "-D", self.data, "-w", "-m", mode, "stop")

    def __enter__(self):
        self.start()
        return self

    def __exit__(self, *_):
        with contextlib.suppress(subprocess.CalledProcessError):
            self.stop("immediate")


@contextlib.contextmanager
def scratch():
    folder = tempfile.mkdtemp(prefix="sillwalk-test-")
    try:
        yield pathlib.Path(folder)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


class Nginx:
    """The site of platforms/office with a certificate made for the test, on a port of its own, as whoever runs the test."""

    def __init__(self, root, folder, office_ports):
        self.folder = pathlib.Path(folder) / "nginx"
        self.port = free_port()
        made = subprocess.run(["sh", root / "platforms/office/make_site", self.folder, str(self.port),
                               *(str(port) for port in office_ports)], capture_output=True, text=True)
        if made.returncode != 0:
            raise RuntimeError(made.stderr)
        self.certificate = self.folder / "certificate.pem"
        self.process = None

    def __enter__(self):
        self.process = subprocess.Popen(["nginx", "-e", self.folder / "error.log", "-c", self.folder / "nginx.conf", "-p", self.folder,
                                         "-g", "daemon off;"], stderr=subprocess.DEVNULL)
        wait_for(lambda: answers(self.port), what="nginx answering")
        return self

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait(timeout=30)
