"""The figures of docs/explanation/scale.md: what one machine takes, and when the next step is due.

Usage: scale.py            prints the tables
       scale.py --check PAGE   fails where the page holds other tables"""
import pathlib
import random
import sys

FLUSH_MS = 4.0     # mean of one durable flush on the slow two-core machine of the trials (3.7 to 3.8 ms measured)
WORK_MS = 0.25     # one revision without its flush: hashing, checking, inserting; from the rate at full batches
BATCH = 128        # greatest batch of the writer thread
REVISION_KB, PHOTO_KB = 420, 700  # the demo visit with its advice; a photo of 2048 pixels


def group_commit(arrivals_a_second, seconds=60, seed=1):
    """Latencies in ms of one writer that commits together what waits, with Poisson arrivals and exponential flushes."""
    chance = random.Random(seed)
    arrivals, now = [], 0.0
    while now < seconds * 1000:
        now += chance.expovariate(arrivals_a_second / 1000)
        arrivals.append(now)
    latencies, clock, index = [], 0.0, 0
    while index < len(arrivals):
        clock = max(clock, arrivals[index])
        taken = index
        while taken < len(arrivals) and arrivals[taken] <= clock and taken - index < BATCH:
            taken += 1
        clock += WORK_MS * (taken - index) + chance.expovariate(1 / FLUSH_MS)
        latencies += [clock - arrival for arrival in arrivals[index:taken]]
        index = taken
    return sorted(latencies)


def one_by_one(arrivals_a_second):
    """Mean of an M/M/1 queue in ms: each revision pays its own flush. None where the queue grows for ever."""
    service = WORK_MS + FLUSH_MS
    load = arrivals_a_second * service / 1000
    return service / (1 - load) if load < 1 else None


def commit_rows():
    yield "| revisions a second | together: mean | together: 99 % | one by one: mean |"
    yield "| ---: | ---: | ---: | ---: |"
    for rate in (8, 50, 200, 500, 1000, 2000, 3000):
        found = group_commit(rate)
        alone = one_by_one(rate)
        yield (f"| {rate} | {sum(found) / len(found):.0f} ms | {found[int(len(found) * 0.99)]:.0f} ms | "
               f"{'grows for ever' if alone is None else f'{alone:.0f} ms'} |")


def storage_rows():
    yield "| tablets | visits a day | a year of revisions | a year of photos | photos in a rush of 10 minutes |"
    yield "| ---: | ---: | ---: | ---: | ---: |"
    for tablets in (10, 50, 200, 500, 2000):
        visits = tablets * 2
        revisions_gb = visits * 250 * 10 * REVISION_KB / 1e6
        photos_gb = visits * 250 * 40 * PHOTO_KB / 1e6
        rush = tablets * 40 * PHOTO_KB * 8 / 1000 / 600
        yield f"| {tablets} | {visits} | {revisions_gb:.0f} GB | {photos_gb:.0f} GB | {rush:.0f} Mbit/s |"


def loss_rows():
    """A disk that fails once in 50 years of running (2 % a year, in the middle of what fleets report, from memory)."""
    yield "| copies | repaired within | loss of an acknowledged revision, a year |"
    yield "| --- | ---: | ---: |"
    rate = 0.02
    yield f"| one disk, backup each night | – | {rate * 100:.0f} % that up to a day is lost |"
    for hours in (24, 72):
        both = 2 * rate * rate * hours / 8760
        yield f"| two disks in two machines, receipt after both | {hours} h | {both:.1e} |"


def tables():
    return {"commit": "\n".join(commit_rows()), "storage": "\n".join(storage_rows()), "loss": "\n".join(loss_rows())}


if __name__ == "__main__":
    if len(sys.argv) == 3:
        page = pathlib.Path(sys.argv[2]).read_text(encoding="utf-8")
        missing = [name for name, table in tables().items() if table not in page]
        print("the page has other figures: " + ", ".join(missing) if missing else "the page's figures are those of the script")
        sys.exit(1 if missing else 0)
    print("\n\n".join(tables().values()))
