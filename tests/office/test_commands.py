"""The commands of sillwalk-office on a served and on an unserved office.

Usage: test_commands.py PROGRAM ROOT SILLWALK_DESK …"""
import contextlib
import json
import pathlib
import subprocess
import sys

from office_process import Client, Office, canonical, revision, scratch, sha256

PROGRAM, ROOT, DESK = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]


def expect(condition, what):
    if not condition:
        raise AssertionError(what)


def desk_envelope(device):
    """The demo visit as the desk tool bundles it, in the name of the tablet."""
    made = subprocess.run([DESK, "bundle", ROOT / "assets/demo/quillwater.json"], capture_output=True, check=True)
    envelope = json.loads(made.stdout)
    envelope["rev"]["author"]["device_id"] = device
    return sha256(canonical(envelope["rev"])), canonical(envelope), envelope["rev"]


def check_recompute(office, client, device):
    digest, envelope, rev = desk_envelope(device)
    expect(client.put_revision(digest, envelope)[0] == 201, "the demo visit is taken")
    expect("same advice" in office.run("recompute", digest), "the engine gives the same advice here")
    rev["advice"]["carts"][0]["turned_down_total"] += 1
    rev["parents"] = [digest]
    changed = sha256(canonical(rev))
    status = client.put_revision(changed, canonical({"format": "sillwalk-envelope/1", "rev": rev, "sig": []}))[0]
    expect(status == 201, "a changed advice is taken as well")
    told = office.run("recompute", changed, status=3)
    expect("differs: /carts/0/turned_down_total" in told, told)


def check_merge(office, client, device):
    survey = 5
    visit = f"018f3c1a-0000-7000-8000-{survey:012d}"
    root, root_envelope = revision(device, survey, note="root")
    left, right = (revision(device, survey, [root], note) for note in ("left", "right"))
    for digest, envelope in ((root, root_envelope), left, right):
        expect(client.put_revision(digest, envelope)[0] == 201, "taken")
    expect("2 states" in office.run("list"), "the list tells of the fork")
    expect(office.run("heads", visit).split() == sorted([left[0], right[0]]), "two heads")
    shown = office.run("merge", visit)
    expect("/text" in shown and '"left"' in shown and '"right"' in shown and '"root"' in shown, shown)
    key = next(line.split()[0] for line in shown.splitlines() if "/text" in line)
    office.run("merge", visit, "--confirm=Ada", status=3)
    expect(len(office.run("heads", visit).split()) == 2, "without choices nothing is merged")
    office.run("merge", visit, f"--take={key}=right", "--confirm=Ada")
    expect(len(office.run("heads", visit).split()) == 1, "one head after the merge")
    office.run("merge", visit, status=2)
    return visit


def check_hand_off(office, folder, visit):
    file = folder / "visit.ndjson"
    office.run("export", visit, str(file))
    office.run("export", visit, str(file), status=2)
    other = Office(PROGRAM, folder / "other")
    told = other.run("import", str(file), status=3)
    expect(told.count("put aside") == 4, told)  # nothing is signed by a tablet or office that this one knows
    told = other.run("import", str(file), "--accept-unknown=yes")
    expect(told.count("stored") == 4, told)
    expect(other.run("import", str(file), "--accept-unknown=yes").count("known") == 4, "known the second time")
    expect(other.run("heads", visit) == office.run("heads", visit), "the same heads")
    broken = folder / "broken.ndjson"
    broken.write_bytes(file.read_bytes()[:200])
    other.run("import", str(broken), status=2)


with scratch() as folder, Office(PROGRAM, folder / "data") as office:
    device, token = office.enrol()
    with contextlib.closing(Client(office.port, token)) as client:
        check_recompute(office, client, device)
        visit = check_merge(office, client, device)
        check_hand_off(office, folder, visit)
        expect("--url" in office.run("enrol"), "without an address there is no QR code")
        expect("█" in office.run("--url", "https://office.example", "enrol", "van"), "a QR code with the address")
        expect(device in office.run("devices"), "the tablet is listed")
        office.run("backup", str(folder / "backup"))
        office.run("revoke", device)
        expect(client.request("GET", "/v1/changes")[0] == 401, "withdrawn at the next call")
        office.run("revoke", "nobody", status=2)
        office.run("nonsense", status=2)
        expect("checked" in office.run("verify"), "verified while it is served")
    office.stop()
    expect("withdrawn" in office.run("devices"), "the same commands work on an office that is not served")
    restored = Office(PROGRAM, folder / "restored")
    restored.run("restore", str(folder / "backup"))
    expect(restored.run("list") == office.run("list"), "the restored office lists the same")
    office.run("restore", str(folder / "backup"), status=2)
print("the commands do what their page says")
