#!/usr/bin/env python3
"""Each system call that `record --append` makes on its ledger fails, or comes with a signal or a kill: no record is lost or torn.

Usage: faulty_calls.py PROGRAM SOURCE. Ends with 77 (skipped) where there is no strace. Whatever happened, the records that
stood in the ledger stand there still, the new one is there whole where the program ended well and is not where it said that
the file is as it was, and the next writer adds its own without more ado.
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
ENV = {**os.environ, "XDG_CONFIG_HOME": "/nonexistent", "ASAN_OPTIONS": "detect_leaks=0"}
# Errors that each call can have, on a file of its own.
CALLS = {"openat": ["EACCES", "EINTR", "EMFILE", "ENOSPC", "EROFS", "EIO"], "flock": ["EINTR", "ENOLCK", "EBADF"],
         "read": ["EIO", "EINTR"], "write": ["ENOSPC", "EIO", "EDQUOT", "EINTR", "EFBIG"], "fsync": ["EIO", "ENOSPC", "EINVAL"],
         "ftruncate": ["EIO", "EINTR"], "newfstatat": ["EIO", "EACCES", "ENOENT"]}
SIGNALS = ["SIGKILL", "SIGTERM", "SIGHUP", "SIGINT"]
faults = []
tried = 0


def command(ledger, note):
    return [PROGRAM, "record", str(SOURCE / "examples/jobs/ductile_iron_direct.json"), str(SOURCE / "examples/readings/AV-1041.json"),
            "--set", f"remarks={note}", "--append", str(ledger)]


def run(ledger, note):
    return subprocess.run(command(ledger, note), env=ENV, capture_output=True, check=False)


def traced(ledger, note, *options):
    # The folder too: a name that is not kept is a record that is lost.
    return subprocess.run(["strace", "-f", "-qq", "-P", str(ledger), "-P", str(ledger.parent), *options,
                           *command(ledger, note)], env=ENV, capture_output=True, timeout=60, check=False)


def notes(ledger):
    """What the whole lines say; a last line without its end was never acknowledged."""
    lines = (ledger.read_bytes() if ledger.exists() else b"").split(b"\n")[:-1]
    return [json.loads(line)["record"]["remarks"] for line in lines]


def places(ledger, before):
    """How many calls of each kind an append makes on its ledger."""
    begin(ledger, before)
    log = ledger.with_name("calls")
    traced(ledger, "new", "-e", "trace=" + ",".join("?" + call for call in CALLS), "-o", str(log))
    calls = re.findall(r"^(?:\d+ +)?(\w+)\(", log.read_text(), re.M)
    return {call: calls.count(call) for call in CALLS}


def begin(ledger, before):
    ledger.unlink(missing_ok=True)
    if before is not None:
        ledger.write_bytes(before)


def inject(ledger, name, before, old, mended, fault):
    """`old`: records with their line ends; `mended`: one that lacks nothing else, and counts as soon as somebody writes."""
    global tried
    tried += 1
    begin(ledger, before)
    ran = traced(ledger, "new", "-o", "/dev/null", "-e", "trace=" + fault.partition(":")[0], "-e", "inject=" + fault)
    what = f"{name}, {fault}, exit status {ran.returncode}"
    try:
        now = notes(ledger)
    except ValueError:
        faults.append(f"{what}: a torn line")
        return
    added = now == old + mended + ["new"]
    if not added and now not in (old, old + mended):
        faults.append(f"{what}: {now} where {old + mended} stood")
    if ran.returncode in (0, 3) and not added:
        faults.append(f"{what}: acknowledged, and not there")
    if b"as it was" in ran.stderr and added:
        faults.append(f"{what}: it is not as it was")
    if ran.returncode not in (0, 3, 66, 74, -2, -15, -9, -1, 129, 130, 137, 143):
        faults.append(f"{what}: {ran.stderr.decode()[-200:]}")
    after = run(ledger, "next")
    wanted = old + mended + (["new"] if added else []) + ["next"]
    if after.returncode not in (0, 3) or notes(ledger) != wanted:
        faults.append(f"{what}: the next writer ended with {after.returncode}, and left {notes(ledger)}: {after.stderr.decode()[-200:]}")


def main():
    if shutil.which("strace") is None or subprocess.run(["strace", "-o", "/dev/null", "true"], check=False,
                                                        capture_output=True).returncode != 0:
        print("skipped: strace is not to be had here")
        return 77
    with tempfile.TemporaryDirectory() as scratch:
        ledger = pathlib.Path(scratch) / "ledger.ndjson"
        run(ledger, "one")
        run(ledger, "two")
        two = ledger.read_bytes()
        first = two[:two.index(b"\n") + 1]
        states = {"no ledger": (None, [], []), "two records": (two, ["one", "two"], []), "a record cut off": (two[:-700], ["one"], []),
                  "a line end cut off": (two[:-1], ["one"], ["two"]), "the beginning alone": (first[:500], [], [])}
        for name, (before, old, mended) in states.items():
            count = places(ledger, before)
            if not count["openat"] or not count["flock"] or not count["write"] or not count["fsync"]:
                faults.append(f"{name}: {count} calls were seen")
            for call, errors in CALLS.items():
                for when in range(1, count[call] + 1):
                    for fault in [f"error={error}" for error in errors] + [f"signal={number}" for number in SIGNALS]:
                        inject(ledger, name, before, old, mended, f"{call}:{fault}:when={when}")
    print(f"{tried} faults")
    for fault in faults[:20]:
        print("FAIL " + fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
