"""Two clients that we did not write, curl and node's fetch, do what docs/reference/office.md shows, word for word.

Usage: test_examples.py PROGRAM ROOT …"""
import json
import os
import pathlib
import re
import subprocess
import sys

from office_process import PUBLIC_KEY, Office, canonical, revision, scratch, sha256

PROGRAM, ROOT = sys.argv[1], pathlib.Path(sys.argv[2])
PAGE = (ROOT / "docs/reference/office.md").read_text(encoding="utf-8")
PHOTO = os.urandom(400_000)


def blocks(language):
    found = re.findall(rf"^```{language}\n(.*?)^```", PAGE, re.DOTALL | re.MULTILINE)
    assert found, f"the page has no {language} block"
    return "\n".join(found)


def with_curl(office, folder):
    # The tablet's id is known only once it is enrolled; the example's visit is signed by nobody, so it must be its own.
    device = ('DEVICE=$(python3 -c \'import json; print(json.load(open("enrolled.json"))["device_id"])\')\n'
              'sed -i "s/00000000-0000-7000-8000-000000000000/$DEVICE/" visit.json\n')
    script = blocks("sh").replace("# A revision.", device + "# A revision.")
    (folder / "visit.json").write_bytes(revision("00000000-0000-7000-8000-000000000000", 1, note="curl", blobs=[PHOTO])[1])
    (folder / "photo.jpg").write_bytes(PHOTO)
    words = {"OFFICE": f"http://127.0.0.1:{office.port}", "CODE": office.enrolment_code(), "PUBLIC_KEY": PUBLIC_KEY}
    done = subprocess.run(["sh", "-eu", "-c", script], cwd=folder, env=os.environ | words, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    sent, back = (json.loads((folder / name).read_text()) for name in ("visit.json", "again.json"))
    assert canonical(sent["rev"]) == canonical(back["rev"]), "curl got another revision back"


def with_node(office, folder):
    other = PHOTO[::-1]
    device = "11111111-1111-7111-8111-111111111111"
    _, envelope = revision(device, 2, note="node", blobs=[other])
    (folder / "photo.bin").write_bytes(other)
    before = f"""import {{ readFileSync }} from "node:fs";
import {{ createHash }} from "node:crypto";
const office = "http://127.0.0.1:{office.port}", code = "{office.enrolment_code()}", publicKey = "{PUBLIC_KEY}";
const photo = readFileSync("photo.bin"), photoDigest = "{sha256(other)}";
let visit = {json.dumps(envelope.decode())}, revision = "";
const entered_as = (id) => {{
  visit = visit.replace("{device}", id);
  // Canonical text is what the envelope holds between "rev": and ,"sig"; it has been written that way.
  const text = visit.slice(visit.indexOf('"rev":') + 6, visit.lastIndexOf(',"sig":'));
  revision = createHash("sha256").update(text).digest("hex");
}};
"""
    script = blocks("js").replace("const { token } = await entered.json();",
                                  "const { token, device_id } = await entered.json();\nentered_as(device_id);")
    after = """
if (!receipt.complete || receipt.fork) throw new Error(JSON.stringify(receipt));
if (Buffer.compare(Buffer.from(back), photo) !== 0) throw new Error("another photo came back");
"""
    (folder / "example.mjs").write_text(before + script + after, encoding="utf-8")
    done = subprocess.run(["node", "example.mjs"], cwd=folder, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


with scratch() as scratch_folder, Office(PROGRAM, scratch_folder / "data") as running:
    with_curl(running, scratch_folder)
    with_node(running, scratch_folder)
print("curl and node did it all from the page")
