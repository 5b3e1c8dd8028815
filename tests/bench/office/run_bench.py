"""F17: durable answers a second and their times, SQLite and PostgreSQL, beside what the disk and the databases do alone.

Usage: run_bench.py SILLWALK_OFFICE BENCH_OFFICE SILLWALK_DESK   (a release build; -DSILLWALK_BENCH=ON)
Ends with 1 where SQLite at 16 connections and 4 KiB stays below 500 a second or its p99 above 250 ms."""
import os
import pathlib
import sqlite3
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parents[3]
sys.path.insert(0, str(ROOT / "tests/office"))
from office_process import Office, Postgres, postgres_programs, scratch  # noqa: E402

OFFICE, BENCH, DESK = sys.argv[1:4]


def rate(work, seconds=3):
    count, end = 0, time.monotonic() + seconds
    while time.monotonic() < end:
        work()
        count += 1
    return count / seconds


def raw_disk(folder):
    with open(folder / "raw", "wb", buffering=0) as file:
        def flush():
            file.write(b"x" * 4096)
            os.fdatasync(file.fileno())
        return rate(flush)


def raw_sqlite(folder):
    database = sqlite3.connect(folder / "raw.sqlite", isolation_level=None)
    database.execute("PRAGMA journal_mode=WAL")
    database.execute("PRAGMA synchronous=FULL")
    database.execute("CREATE TABLE t(id INTEGER PRIMARY KEY, body TEXT NOT NULL)")
    return rate(lambda: database.execute("INSERT INTO t(body) VALUES(?)", ("x" * 4096,)))


def raw_postgres(folder, database, clients):
    script = folder / "insert.sql"
    script.write_text("INSERT INTO raw(body) VALUES (repeat('x', 4096));\n")
    subprocess.run([database.programs / "psql", "-q", database.url, "-c", "CREATE TABLE IF NOT EXISTS raw(body text)"], check=True)
    told = subprocess.run([database.programs / "pgbench", "-n", "-f", script, "-c", str(clients), "-T", "3", database.url],
                          capture_output=True, text=True, check=True).stdout
    return float(next(line for line in told.splitlines() if line.startswith("tps")).split()[2])


def office_rates(office):
    device, token = office.enrol()
    found = {}
    for size in (4096, 32768):
        for connections in (1, 16, 64):
            count = {1: 600, 16: 4000, 64: 6000}[connections] // (4 if size > 4096 else 1)
            told = subprocess.run([BENCH, "load", str(office.port), token, device, str(connections), str(size), str(count)],
                                  capture_output=True, text=True, check=True).stdout
            found[size, connections] = [float(word) for word in told.split()]
            print(f"    {size // 1024:>3} KiB {connections:>3} connections: {told.split()[0]:>6} a second, p50 {told.split()[1]} ms, "
                  f"p99 {told.split()[2]} ms", flush=True)
    return found


with scratch() as folder:
    print(f"disk alone, 4 KiB and fdatasync: {raw_disk(folder):.0f} a second")
    print(f"SQLite alone, one row a transaction, FULL: {raw_sqlite(folder):.0f} a second")
    print("office on SQLite")
    with Office(OFFICE, folder / "sqlite") as office:
        sqlite_rates = office_rates(office)
    if postgres_programs():
        with Postgres(folder) as database:
            for clients in (1, 16):
                print(f"PostgreSQL alone, pgbench inserts, {clients} clients: {raw_postgres(folder, database, clients):.0f} a second")
            print("office on PostgreSQL")
            with Office(OFFICE, folder / "postgres-data", database.url) as office:
                office_rates(office)
    bundle = folder / "bundle.json"
    subprocess.run([DESK, "bundle", ROOT / "assets/demo/quillwater.json", "--output", bundle], check=True, stdout=subprocess.DEVNULL)
    print("the demo visit's envelope: ", end="", flush=True)
    subprocess.run([BENCH, "codec", bundle], check=True)
reached, _, slowest = sqlite_rates[4096, 16]
if reached < 500 or slowest > 250:
    print("F17 is not reached")
    sys.exit(1)
