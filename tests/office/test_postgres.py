"""F12, F13 and F24 on PostgreSQL: stopped at once under load, forks in any order through two offices, backup to SQLite. The
control of F12, a database that commits without waiting for the disk, must be seen to lose something, and is refused at the start.

Usage: test_postgres.py PROGRAM …"""
import contextlib
import json
import os
import random
import subprocess
import sys
import threading
import time

from load import Load, not_there
from office_process import Client, Office, Postgres, postgres_programs, revision, scratch

PROGRAM = sys.argv[1]
LONG = bool(os.environ.get("SILLWALK_LONG"))
faults = []


def stop_under_load(database, offices, token, device):
    with Load([office.port for office in offices], token, device) as load:
        for _ in range(10 if LONG else 2):
            time.sleep(1.5)
            database.stop("immediate")
            time.sleep(0.3)
            database.start()
        stopped = len(load.acked)
        time.sleep(2)
    lost = not_there(offices[0].port, token, sorted(load.acked))
    if lost:
        faults.append(f"F12: {len(lost)} of {len(load.acked)} acknowledged revisions are lost")
    if stopped < 20 or len(load.acked) <= stopped:
        faults.append(f"F12: {stopped} acknowledged before, {len(load.acked)} after; the test shows nothing")
    return len(load.acked)


def lost_without_waiting(database, offices, token, device):
    """The server stops waiting for the disk under offices that are connected already."""
    for setting in ("synchronous_commit = off", "wal_writer_delay = '10s'", "wal_writer_flush_after = '1GB'"):
        database.sql(f"ALTER SYSTEM SET {setting}")
    database.sql("SELECT pg_reload_conf()")
    time.sleep(0.5)
    with Load([office.port for office in offices], token, device, first=1_000_000) as load:
        time.sleep(1)
        database.stop("immediate")
        load.over.set()
    database.start()
    told = subprocess.run(offices[0].words("list"), capture_output=True, text=True)
    if told.returncode != 1 or "does not wait for the disk" not in told.stderr:
        faults.append(f"a database that does not wait for the disk is taken: {told}")
    database.sql("ALTER SYSTEM RESET ALL")
    database.sql("SELECT pg_reload_conf()")
    time.sleep(0.5)
    lost = not_there(offices[0].port, token, sorted(load.acked))
    if not 0 < len(lost) < len(load.acked):
        faults.append(f"F12 control: {len(lost)} of {len(load.acked)} are seen to be lost; some must be, and not all")
    return len(lost)


def same_from_all(offices, token, device):
    """16 clients send the same revisions at the same time: each is stored once."""
    made = [revision(device, 20_000 + number, note="same") for number in range(500 if LONG else 25)]
    statuses, lock = [], threading.Lock()

    def work(index):
        with contextlib.closing(Client(offices[index % len(offices)].port, token)) as client:
            for digest, envelope in made:
                status = client.put_revision(digest, envelope)[0]
                with lock:
                    statuses.append(status)

    run_all([threading.Thread(target=work, args=(index,)) for index in range(16)])
    if statuses.count(201) != len(made) or statuses.count(412) != 15 * len(made):
        faults.append(f"F13: {statuses.count(201)} of {len(made)} created, {statuses.count(412)} known, {len(statuses)} sent")


def run_all(threads):
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()


def forks_in_any_order(offices, token, device):
    surveys = 200 if LONG else 30
    sent, wanted = [], {}
    for survey in range(10_000, 10_000 + surveys):
        root, root_envelope = revision(device, survey, note="root")
        children = [revision(device, survey, [root], f"child {number}") for number in range(3)]
        sent += [(root, root_envelope), *children]
        wanted[survey] = sorted(digest for digest, _ in children)
    sent *= 2
    random.Random(13).shuffle(sent)
    created, lock = [], threading.Lock()

    def work(index):
        with contextlib.closing(Client(offices[index % len(offices)].port, token)) as client:
            for digest, envelope in sent[index::8]:
                status = client.put_revision(digest, envelope)[0]
                with lock:
                    created.append((status, digest))

    run_all([threading.Thread(target=work, args=(index,)) for index in range(8)])
    fresh = [digest for status, digest in created if status == 201]
    if sorted(fresh) != sorted({digest for digest, _ in sent}) or {status for status, _ in created} != {201, 412}:
        faults.append(f"F13: {len(fresh)} created of {len(sent) // 2}; statuses {sorted({s for s, _ in created})}")
    with contextlib.closing(Client(offices[0].port, token)) as client:
        for survey, heads in wanted.items():
            told = json.loads(client.request("GET", f"/v1/surveys/018f3c1a-0000-7000-8000-{survey:012d}/heads")[2])
            if told != {"heads": heads, "fork": True}:
                faults.append(f"F13: visit {survey} has other heads")
        follow_changes(client, {digest for digest, _ in sent})


def follow_changes(client, wanted):
    told, cursor = [], ""
    while True:
        page = json.loads(client.request("GET", f"/v1/changes?limit=500&after={cursor}")[2])
        if not page["items"]:
            break
        told += [item["digest"] for item in page["items"]]
        cursor = page["next"]
    if len(told) != len(set(told)) or not wanted <= set(told):
        faults.append(f"the changes tell {len(told)} revisions, {len(set(told))} different")


if postgres_programs() is None:
    print("PostgreSQL is not here; packages-test.txt names it")
    sys.exit(1)
with scratch() as folder, Postgres(folder) as database:
    offices = [Office(PROGRAM, folder / "data", database.url) for _ in range(2)]
    with contextlib.ExitStack() as running:
        for office in offices:
            running.enter_context(office)
        device, token = offices[0].enrol()
        count = stop_under_load(database, offices, token, device)
        control = lost_without_waiting(database, offices, token, device)
        forks_in_any_order(offices, token, device)
        same_from_all(offices, token, device)
        offices[0].run("backup", str(folder / "backup"))
        moved = Office(PROGRAM, folder / "moved")
        told = moved.run("restore", str(folder / "backup"))
        if moved.run("verify").split()[0] != told.split()[0] or offices[0].run("verify").split()[0] != told.split()[0]:
            faults.append("F24: the restored office has another number of revisions")
print("\n".join(faults) or f"{count} acknowledged under stops, none lost; control: {control} lost; forks exact; {told.strip()}")
sys.exit(1 if faults else 0)
