"""F11: the office is killed under load, again and again; all that it acknowledged is there afterwards.

Usage: test_kill.py PROGRAM …   SILLWALK_LONG=1: 50 kills in place of 6."""
import os
import random
import signal
import sys
import time

from load import Load, not_there
from office_process import Office, free_port, scratch

kills = 50 if os.environ.get("SILLWALK_LONG") else 6
chance = random.Random(11)
with scratch() as folder:
    office = Office(sys.argv[1], folder / "data", port=free_port()).start()
    device, token = office.enrol()
    with Load([office.port], token, device) as load:
        for _ in range(kills):
            time.sleep(chance.uniform(0.3, 0.8))
            office.stop(signal.SIGKILL)
            office.start()
        before = len(load.acked)
        time.sleep(0.5)
    acked = sorted(load.acked)
    lost = not_there(office.port, token, acked)
    verified = office.run("verify")
    office.stop()

faults = []
if lost:
    faults.append(f"{len(lost)} of {len(acked)} acknowledged revisions are lost: {lost[:3]}")
if len(acked) < 10 * kills:
    faults.append(f"only {len(acked)} revisions were acknowledged; the test shows nothing")
if len(acked) <= before:
    faults.append("after the last start nothing more was taken")
print("\n".join(faults) or f"{kills} kills, {len(acked)} acknowledged, none lost; {verified.strip()}")
sys.exit(1 if faults else 0)
