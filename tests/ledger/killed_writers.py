#!/usr/bin/env python3
"""Two writers append records to one ledger and are killed at random: no record is lost, none is torn.

Usage: killed_writers.py PROGRAM SOURCE [RECORDS [SEED]]. A record is acknowledged by exit status 0; a killed writer tries
again. Afterwards each acknowledged record stands in the ledger, every line of it is a record, and the ledger is what an
export reads. Full disks and limits of a file's size leave it as it was.
"""
import json
import os
import pathlib
import random
import resource
import signal
import subprocess
import sys
import tempfile
import threading
import time

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
RECORDS = int(sys.argv[3]) if len(sys.argv) > 3 else 200
SEED = int(sys.argv[4]) if len(sys.argv) > 4 else 1
JOB = SOURCE / "examples/jobs/ductile_iron_direct.json"
READINGS = SOURCE / "examples/readings/AV-1041.json"
ENV = {**os.environ, "XDG_CONFIG_HOME": "/nonexistent"}
faults = []


def expect(holds, what):
    if not holds:
        faults.append(what)


def command(ledger, tap, note):
    return [PROGRAM, "record", str(JOB), str(READINGS), "--set", f"tap_number={tap}", "--set", f"remarks={note}",
            "--append", str(ledger)]


def write(ledger, numbers, seed, kills, acknowledged):
    chance = random.Random(seed)
    for number in numbers:
        tries = 0
        while True:
            tries += 1
            note = f"record {number}, try {tries}"
            run = subprocess.Popen(command(ledger, number % 99 + 1, note), stdout=subprocess.DEVNULL,
                                   stderr=subprocess.DEVNULL, env=ENV)
            if chance.random() < 0.6 and tries < 20:
                time.sleep(chance.random() * 0.02)
                run.kill()
            status = run.wait()
            if status == -signal.SIGKILL:
                kills.append(number)
                continue
            expect(status == 0, f"record {number}: exit status {status}")
            acknowledged.append(note)
            break


def two_writers(folder):
    ledger = folder / "ledger.ndjson"
    kills, acknowledged = [], []
    writers = [threading.Thread(target=write, args=(ledger, range(first, RECORDS, 2), SEED + first, kills, acknowledged))
               for first in (0, 1)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    text = ledger.read_text()
    expect(text.endswith("\n"), "the last line is not whole")
    records = []
    for number, line in enumerate(text.splitlines(), 1):
        try:
            records.append(json.loads(line))
        except ValueError:
            expect(False, f"line {number} is torn: {line[:80]}")
    notes = [record["record"]["remarks"] for record in records]
    for note in acknowledged:
        expect(notes.count(note) == 1, f"{note!r} stands there {notes.count(note)} times")
    revisions = {}
    for record in records:
        tap = record["tap_number"]
        revisions[tap] = revisions.get(tap, 0) + 1
        expect(record["revision"] == revisions[tap], f"tap {tap}: revision {record['revision']}")
    done = subprocess.run([PROGRAM, "record", "--export", str(ledger)], capture_output=True, env=ENV, check=False)
    expect(done.returncode == 0 and len(json.loads(done.stdout)) == len(revisions), "the export is another")
    return len(acknowledged), len(kills), len(records)


def torn_end(folder):
    """What a writer left unfinished goes, whatever its length; what is no record is left alone."""
    ledger = folder / "torn.ndjson"
    subprocess.run(command(ledger, 1, "first"), capture_output=True, env=ENV, check=True)
    whole = ledger.read_bytes()
    for cut in (1, 10, 23, 24, 60, len(whole) // 2, len(whole) - 2, len(whole) - 1):
        ledger.write_bytes(whole + whole[:cut])
        done = subprocess.run(command(ledger, 2, "second"), capture_output=True, env=ENV, check=False)
        lines = ledger.read_bytes().splitlines(keepends=True)
        kept = 2 if cut == len(whole) - 1 else 1  # a record that lacks its line end alone is whole
        expect(done.returncode == 0, f"cut {cut}: exit status {done.returncode}")
        expect(lines[0] == whole and len(lines) == kept + 1, f"cut {cut}: {len(lines)} lines")
    for strange in (b"notes of the week\n", whole + b"not a record", whole + b"{}\n", b"\n"):
        ledger.write_bytes(strange)
        done = subprocess.run(command(ledger, 2, "second"), capture_output=True, env=ENV, check=False)
        expect(done.returncode == 2 and ledger.read_bytes() == strange, f"{strange[-20:]!r} was touched")


def full_disk(folder):
    """A file that may not grow is as it was, at every byte that a write may end at."""
    ledger = folder / "full.ndjson"
    subprocess.run(command(ledger, 1, "first"), capture_output=True, env=ENV, check=True)
    whole = ledger.read_bytes()
    for room in (0, 1, 2, 23, 100, len(whole) // 2, len(whole) - 10):
        most = len(whole) + room
        done = subprocess.run(command(ledger, 2, "second"), capture_output=True, env=ENV, check=False,
                              preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (most, most)))
        expect(done.returncode == 74 and ledger.read_bytes() == whole, f"{room} bytes of room: exit {done.returncode}")
        expect(done.stdout == b"" and b"it is as it was" in done.stderr, f"{room} bytes of room: {done.stderr!r}")


def refused_names(folder):
    job = folder / "job.json"
    job.write_bytes(JOB.read_bytes())
    for target, status in ((job, 64), (folder, 74), (pathlib.Path("/dev/null"), 74), (folder / "no" / "such", 74)):
        done = subprocess.run([PROGRAM, "record", str(job), str(READINGS), "--append", str(target)], capture_output=True,
                              env=ENV, check=False)
        expect(done.returncode == status and done.stdout == b"", f"--append {target}: exit {done.returncode}")
    expect(job.read_bytes() == JOB.read_bytes(), "the job was changed")
    ledger = folder / "mine.ndjson"
    subprocess.run(command(ledger, 1, "first"), capture_output=True, env=ENV, check=True)
    before = ledger.read_bytes()
    for arguments in (command(ledger, 2, "second") + ["-o", str(ledger)],
                      [PROGRAM, "record", "--export", str(ledger), "-o", str(ledger)]):
        done = subprocess.run(arguments, capture_output=True, env=ENV, check=False)
        expect(done.returncode == 64 and ledger.read_bytes() == before, f"{arguments[2:]}: exit {done.returncode}")


def main():
    with tempfile.TemporaryDirectory(prefix="mainbore-ledger-") as name:
        folder = pathlib.Path(name)
        torn_end(folder)
        full_disk(folder)
        refused_names(folder)
        acknowledged, kills, lines = two_writers(folder)
        print(f"{acknowledged} records acknowledged, {kills} writers killed, {lines} lines")
        expect(kills > RECORDS // 10, "hardly a writer was killed")
    for fault in faults[:20]:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
