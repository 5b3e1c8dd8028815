"""F11: the office is killed under load, again and again; all that it acknowledged is there afterwards. The control, a server that
acknowledges too early, must be seen to lose something.

Usage: test_kill.py PROGRAM …   SILLWALK_LONG=1: 50 kills in place of 6."""
import os
import random
import signal
import sys
import time

from chaos import Hasty
from load import Load, not_there
from office_process import Office, free_port, scratch

kills = 50 if os.environ.get("SILLWALK_LONG") else 6
chance = random.Random(11)
faults = []


def killed_under_load(office, token, device):
    with Load([office.port], token, device) as load:
        for _ in range(kills):
            time.sleep(chance.uniform(0.3, 0.8))
            office.stop(signal.SIGKILL)
            office.start()
        before = len(load.acked)
        time.sleep(0.5)
    acked = sorted(load.acked)
    lost = not_there(office.port, token, acked)
    if lost:
        faults.append(f"{len(lost)} of {len(acked)} acknowledged revisions are lost: {lost[:3]}")
    if len(acked) < 10 * kills:
        faults.append(f"only {len(acked)} revisions were acknowledged; the test shows nothing")
    if len(acked) <= before:
        faults.append("after the last start nothing more was taken")
    return len(acked)


def lost_by_control(office, token, device):
    with Hasty(office.port) as hasty, Load([hasty.port], token, device, clients=4, first=1_000_000) as load:
        time.sleep(1)
        hasty.crash()
        office.stop(signal.SIGKILL)
        load.over.set()
    office.start()
    lost = not_there(office.port, token, sorted(load.acked))
    if not 0 < len(lost) < len(load.acked):
        faults.append(f"control: {len(lost)} of {len(load.acked)} are seen to be lost; some must be, and not all")
    return len(lost)


with scratch() as folder:
    running = Office(sys.argv[1], folder / "data", port=free_port()).start()
    tablet, secret = running.enrol()
    count = killed_under_load(running, secret, tablet)
    verified = running.run("verify").strip()
    control = lost_by_control(running, secret, tablet)
    running.stop()
print("\n".join(faults) or f"{kills} kills, {count} acknowledged, none lost; {verified}; control: {control} lost")
sys.exit(1 if faults else 0)
