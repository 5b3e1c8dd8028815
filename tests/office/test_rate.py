"""F17: durable answers a second and the slowest hundredth, over HTTP, 4 KiB, 16 connections. F20: what a long load leaves in the
database's log and in memory.

Usage: test_rate.py PROGRAM ROOT SILLWALK_DESK FOLDER BENCH_OFFICE   SILLWALK_LONG=1: 10 000 revisions in place of 3 000."""
import os
import pathlib
import subprocess
import sys

from office_process import Office, resident_kib, scratch, small_quarantine

PROGRAM, BENCH = sys.argv[1], sys.argv[5]
ROUNDS = 10 if os.environ.get("SILLWALK_LONG") else 3
faults, told = [], []
with scratch() as folder:
    office = Office(PROGRAM, folder / "data").start(small_quarantine())
    device, token = office.enrol()
    log, sizes = folder / "data/office.sqlite-wal", []
    for _ in range(ROUNDS):
        done = subprocess.run([BENCH, "load", str(office.port), token, device, "16", "4096", "1000"], capture_output=True, text=True)
        if done.returncode != 0:
            faults.append("a revision was not taken")
            break
        rate, _, slowest = (float(word) for word in done.stdout.split())
        told.append(f"{rate:.0f}/s, 99 % within {slowest:.0f} ms")
        if rate < 500 or slowest > 250:
            faults.append(f"F17: {rate:.0f} a second and {slowest:.0f} ms; 500 and 250 are the limits")
        sizes.append(resident_kib(office.process.pid))
        if log.stat().st_size > 16 << 20:
            faults.append(f"F20: the log has {log.stat().st_size} bytes")
    if sizes and sizes[-1] - sizes[0] > 5 * 1024:
        faults.append(f"F20: the office grew from {sizes[0]} to {sizes[-1]} KiB")
    office.stop()
print("\n".join(faults) or f"{'; '.join(told)}; memory {sizes} KiB")
sys.exit(1 if faults else 0)
