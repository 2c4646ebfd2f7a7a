#!/usr/bin/env python3
"""Whatever goes wrong, no file is lost and none is half written.

Usage: faults.py PROGRAM SOURCE [GROUP ...]. Prints the number of faults tried and held, by group; exits 1 where one did
not hold, 77 where all that was asked for had to be skipped.
"""
import os
import pathlib
import re
import shutil
import signal
import socket
import stat
import subprocess
import sys
import threading
import time

sys.dont_write_bytecode = True  # the source tree stays as it is
from harness import (OLD, PATIENCE, RUNS, WITH_OUTPUT, Program, Scratch, Tally, commands_of, formats_of, label, limited,
                     order, surroundings)

ENDING = [signal.SIGHUP, signal.SIGINT, signal.SIGTERM, signal.SIGQUIT, signal.SIGPIPE]
STREAMED = [[], ["--decisions"], ["--full"]]  # forms of newline-delimited records


def is_root():
    return os.geteuid() == 0


def says_unchanged(ran, name="out"):
    return f"{name} was not changed".encode() in ran.stderr


def the_list_is_whole(program, tally):
    """Each command that takes -o, and each of its formats, is among the runs."""
    for command in commands_of(program):
        page = program.help_of(command)
        if "--output" not in page:
            continue
        mine = [run for run in WITH_OUTPUT if run[0] == command]
        tally.check(command, is_run=bool(mine))
        for form in formats_of(page):
            usual = form == "text"
            tally.check(f"{command} --format {form}", is_run=any(usual or form in run for run in mine))


# --- what was read ------------------------------------------------------------------------------------------------


def ways_of_reading(command, forms):
    """(arguments, file read, what is on standard input, whether the user's own settings are read)"""
    base = {"plan": ["plan", "other.json"], "batch": ["batch", "orders.ndjson"], "table": ["table", "--material", "PVC"],
            "identify": ["identify", "--od", "6.9 in"],
            "trial": ["trial", "--threads", "14", "--trial", "depth=1.5 in, wrench=2, showing=3"],
            "record": ["record", "other.json", "readings.json", "--set", "order=AV-1045"], "rules": ["rules", "show"], "schema": ["schema", "job"]}[command]
    ways = [(base + ["--data", "data"], "data/sources.json", None, False)]
    if command != "schema":
        ways += [(base + ["--rules", "rules.json"], "rules.json", None, False),
                 (base + ["--settings", "truck.json"], "truck.json", None, False),
                 (base + ["--settings", "truck.json"], "named.json", None, False),
                 (base + ["--rules", "-"], "rules.json", "rules.json", False)]
    if command not in ("schema", "batch"):
        ways.append((base, "mainbore/settings.json", None, True))
    ways += {
        "plan": [(["plan", "job.json"], "job.json", None, False), (["plan", "-"], "job.json", "job.json", False),
                 (["plan"], "job.json", "job.json", False), (["plan", "/dev/stdin"], "job.json", "job.json", False)],
        "batch": [(["batch", "week.csv"], "week.csv", None, False),
                  (["batch", "orders.ndjson", "week.csv"], "week.csv", None, False),
                  (["batch", "-"], "week.csv", "week.csv", False),
                  (["batch", "export.csv", "--map", "map.json"], "map.json", None, False),
                  (["batch", "export.csv", "--map", "-"], "map.json", "map.json", False),
                  (["batch", "export.csv", "--map", "map.json", "--columns"], "export.csv", None, False),
                  (["batch", "export.csv", "--map", "map.json", "--columns"], "map.json", None, False)],
        "table": [(base + ["--machine", "machine.json"], "machine.json", None, False),
                  (base + ["--machine", "-"], "machine.json", "machine.json", False)],
        "record": [(["record", "job.json", "readings.json"], "job.json", None, False),
                   (["record", "job.json", "readings.json"], "readings.json", None, False),
                   (["record", "job.json", "-"], "readings.json", "readings.json", False)],
        "rules": [(["rules", "check", "rules.json"], "rules.json", None, False),
                  (["rules", "check", "rules.json", "named.json"], "named.json", None, False),
                  (["rules", "diff", "default", "rules.json"], "rules.json", None, False),
                  (["rules", "diff", "rules.json", "default"], "rules.json", None, False)],
    }.get(command, [])
    if command == "schema":
        return ways
    if command == "record":  # a ledger is written out in forms of its own
        ways = [(arguments + ["--format", form], *rest) for arguments, *rest in ways for form in ("text", "json")]
        return ways + [(["record", "--export", "ledger.ndjson", "--format", form], "ledger.ndjson", None, False)
                       for form in ("json", "csv", "geojson")]
    # Features of two files are refused before either is read.
    return [(arguments + (["--format", form] if "--columns" not in arguments else []), *rest)
            for arguments, *rest in ways for form in (forms or ["text"])
            if form != "geojson" or "orders.ndjson" not in arguments or "week.csv" not in arguments]


def what_was_read(program, tally):
    """A result never replaces what it is made from, under whatever name that is given or read."""
    with Scratch(program, tables=True) as folder:
        folder.copy(program.source / "examples/jobs/ductile_iron_direct.json", "machine.json")
        for command in commands_of(program):
            page = program.help_of(command)
            if "--output" not in page:
                continue
            for arguments, read, stdin, own in ways_of_reading(command, formats_of(page)):
                try_every_name(program, tally, folder, arguments, read, stdin, own)


def try_every_name(program, tally, folder, arguments, read, stdin, own):
    file = folder / read
    before = file.read_bytes()
    os.symlink(file, folder / "soft")
    os.symlink("soft", folder / "soft-to-soft")
    os.link(file, folder / "hard")
    os.symlink(file.parent, folder / "folder")
    names = {"its name": read, "another path": f"./mainbore/../{read}", "the whole path": str(file), "a link": "soft",
             "a link to a link": "soft-to-soft", "a hard link": "hard", "a linked folder": f"folder/{file.name}"}
    if stdin:
        names["the descriptor"] = "/dev/stdin"
    listing = folder.names()
    env = {**surroundings(folder.path), **({"XDG_CONFIG_HOME": str(folder.path)} if own else {})}
    for how, name in names.items():
        given = open(folder / stdin, "rb") if stdin else None
        ran = program.run([*arguments, "-o", name], folder.path, stdin=given, env=env)
        tally.check(f"{label(arguments)} -o {name} ({how} of {read})", refused=ran.returncode == 64,
                    nothing_printed=ran.stdout == b"", told_what_to_do=b"give -o another name" in ran.stderr,
                    file_as_it_was=file.read_bytes() == before, nothing_left=folder.names() == listing)
        file.write_bytes(before)
    given = open(folder / stdin, "rb") if stdin else None
    with open(file, "ab") as output:
        ran = program.run(arguments, folder.path, output=output, stdin=given, env=env)
    tally.check(f"{label(arguments)} >> {read}", refused=ran.returncode == 64,
                told_what_to_do=b"send it to another file" in ran.stderr, file_as_it_was=file.read_bytes() == before)
    file.write_bytes(before)
    for name in ("soft", "soft-to-soft", "hard", "folder"):
        os.remove(folder / name)


# --- names, targets, modes ----------------------------------------------------------------------------------------


def names_beside(program, tally):
    """A user's own files beside the result stay, whatever they are called; a link is not written through."""
    links = ("out.tmp", "out~", ".out.swp")
    with Scratch(program) as folder:
        for arguments in WITH_OUTPUT:
            (folder / "out.part").write_bytes(b"mine")
            (folder / "victim").write_bytes(b"mine")
            for link in links:
                os.symlink("victim", folder / link)
            ran = program.run([*arguments, "-o", "out"], folder.path)
            shown = program.run(arguments, folder.path)
            tally.check(label(arguments), same_status=ran.returncode == shown.returncode,
                        same_result=(folder / "out").read_bytes() == shown.stdout, nothing_printed=ran.stdout == b"",
                        own_file_stays=(folder / "out.part").is_file() and (folder / "out.part").read_bytes() == b"mine",
                        not_written_through=(folder / "victim").read_bytes() == b"mine")
            (folder / "out.part").unlink(missing_ok=True)
            os.symlink("victim", folder / "out.part")
            program.run([*arguments, "-o", "out"], folder.path)
            tally.check(f"{label(arguments)}, a link beside", not_written_through=(folder / "victim").read_bytes() == b"mine",
                        link_stays=(folder / "out.part").is_symlink(),
                        nothing_left=folder.left() == sorted([*links, "out.part", "victim"]))
            for name in ("out", "out.part", *links):
                (folder / name).unlink(missing_ok=True)


def targets(program, tally):
    """Everything that -o can name."""
    with Scratch(program) as folder:
        for arguments in WITH_OUTPUT:
            try_targets(program, tally, folder, arguments)
            try_modes(program, tally, folder, arguments)


def try_targets(program, tally, folder, arguments):
    name = label(arguments)
    shown = program.run(arguments, folder.path)

    def written(target, read, **how):
        ran = program.run([*arguments, "-o", target], folder.path, **how)
        tally.check(f"{name} -o {target}", same_status=ran.returncode == shown.returncode, same_result=read(ran) == shown.stdout)

    def refused(target, status, word):
        listing = folder.names()
        ran = program.run([*arguments, "-o", target], folder.path)
        tally.check(f"{name} -o {target}", refused=ran.returncode == status, told_why=word in ran.stderr,
                    nothing_printed=ran.stdout == b"", nothing_left=folder.names() == listing)

    written("-", lambda ran: ran.stdout)
    written("/dev/stdout", lambda ran: ran.stdout)
    written("/dev/fd/1", lambda ran: ran.stdout)
    written("/dev/stderr", lambda ran: ran.stderr)
    written("/dev/null", lambda ran: shown.stdout)
    long_name = "o" * 255
    written(long_name, lambda ran: (folder / long_name).read_bytes())
    # Appending goes on appending: the name of a descriptor does not open the file anew.
    (folder / "log").write_bytes(OLD)
    with open(folder / "log", "ab") as log:
        program.run([*arguments, "-o", "/dev/stdout"], folder.path, output=log)
    tally.check(f"{name} -o /dev/stdout >> log", kept=(folder / "log").read_bytes() == OLD + shown.stdout)
    # A pipe between two programs, as a shell's >(...) makes it.
    reader, writer = os.pipe()
    got = []
    thread = threading.Thread(target=lambda: got.append(open(reader, "rb").read()))
    thread.start()
    program.run([*arguments, "-o", f"/dev/fd/{writer}"], folder.path, pass_fds=[writer])
    os.close(writer)
    thread.join()
    tally.check(f"{name} -o a descriptor", same_result=got == [shown.stdout])
    os.mkfifo(folder / "pipe")
    got = []
    thread = threading.Thread(target=lambda: got.append((folder / "pipe").read_bytes()))
    thread.start()
    program.run([*arguments, "-o", "pipe"], folder.path)
    thread.join()
    tally.check(f"{name} -o pipe", same_result=got == [shown.stdout], still_a_pipe=stat.S_ISFIFO((folder / "pipe").stat().st_mode))
    # A link stands for its file, and stays a link.
    (folder / "mainbore/real").write_bytes(OLD)
    os.symlink("mainbore/real", folder / "link")
    written("link", lambda ran: (folder / "mainbore/real").read_bytes())
    tally.check(f"{name} -o link", still_a_link=(folder / "link").is_symlink())
    (folder / "mainbore/real").unlink()
    refused("link", 74, b"it is a link to a file that is not there")
    os.symlink("loop", folder / "loop")
    refused("loop", 74, b"cannot write loop")
    with socket.socket(socket.AF_UNIX) as unix:
        unix.bind(str(folder / "socket"))
        refused("socket", 74, b"cannot write socket")
    refused("mainbore", 74, b"Is a directory")
    refused("missing/out", 74, b"No such file or directory")
    refused("missing/", 74, b"No such file or directory")
    refused("job.json/out", 74, b"Not a directory")
    refused("o" * 256, 74, b"too long")
    refused("", 64, b"--output is given with nothing in it")
    for left in (long_name, "log", "pipe", "link", "loop", "socket"):
        (folder / left).unlink()


def try_modes(program, tally, folder, arguments):
    """A new file is as the user's mask says; one replaced keeps mode and owner, and its other names keep its text."""
    name = label(arguments)
    out = folder / "out"
    for mask in (0o022, 0o077, 0o000):
        program.run([*arguments, "-o", "out"], folder.path, umask=mask)
        tally.check(f"{name}, mask {mask:o}", mode=stat.S_IMODE(out.stat().st_mode) == 0o666 & ~mask)
        out.unlink()
    for mode in (0o600, 0o640, 0o664, 0o666, 0o755):
        out.write_bytes(OLD)
        out.chmod(mode)
        if is_root():
            os.chown(out, 65534, 65534)
        owner = (out.stat().st_uid, out.stat().st_gid)
        program.run([*arguments, "-o", "out"], folder.path)
        tally.check(f"{name}, mode {mode:o}", replaced=out.read_bytes() != OLD, mode=stat.S_IMODE(out.stat().st_mode) == mode,
                    owner=(out.stat().st_uid, out.stat().st_gid) == owner)
        out.unlink()
    out.write_bytes(OLD)
    os.link(out, folder / "copy")
    program.run([*arguments, "-o", "out"], folder.path)
    tally.check(f"{name}, two names", other_name_kept=(folder / "copy").read_bytes() == OLD)
    (folder / "copy").unlink()
    out.unlink()


def write_protected(program, tally):
    """A file or folder that may not be written is left alone, and the run says so."""
    drop = {"user": 65534, "group": 65534, "extra_groups": []} if is_root() else {}
    with Scratch(program) as folder:
        os.chmod(folder.path, 0o777)
        os.chmod(folder / "mainbore", 0o777)
        if program.run(["--version"], folder.path, **drop).returncode != 0:
            tally.skipped = "the program cannot be run by another user here"
            return
        for arguments in WITH_OUTPUT:
            out = folder / "mainbore/out"
            out.write_bytes(OLD)
            for what, file_mode, folder_mode in (("file", 0o444, 0o777), ("folder", 0o666, 0o555)):
                out.chmod(file_mode)
                out.parent.chmod(folder_mode)
                ran = program.run([*arguments, "-o", "mainbore/out"], folder.path, **drop)
                tally.check(f"{label(arguments)}, a {what} that may not be written", refused=ran.returncode == 74,
                            told_why=b"Permission denied" in ran.stderr, kept=out.read_bytes() == OLD,
                            says_unchanged=says_unchanged(ran), nothing_left=sorted(os.listdir(out.parent)) == ["out", "settings.json"])
            out.parent.chmod(0o777)
            out.unlink()


# --- what fails ---------------------------------------------------------------------------------------------------


def failed_runs(program, tally):
    """Where a run fails before it writes, the old result stays and the run says so; where there was none, none is left."""
    bad = [(["plan", "missing.json"], 66), (["plan", "week.csv"], 2), (["plan", "job.json", "--set", "main.size=8"], 2),
           (["plan", "job.json", "--rules", "missing.json"], 66), (["plan", "job.json", "--settings", "missing.json"], 66),
           (["plan", "job.json", "--data", "missing"], 66), (["plan", "job.json", "--set", "main.size"], 64),
           (["plan", "job.json", "--frmat", "html"], 64), (["plan", "job.json", "--format", "htm"], 64),
           (["plan", "job.json", "again.json"], 64), (["batch", "missing.csv"], 66),
           (["batch", "week.csv", "missing.csv"], 66), (["batch", "week.csv", "--full"], 64),
           (["batch", "export.csv", "--map", "job.json"], 2), (["batch", "job.json", "--columns"], 64),
           (["table", "--material", "cheese"], 64), (["table", "--pressure", "8 in"], 64),
           (["table", "--machine", "missing.json"], 66), (["identify"], 64), (["identify", "--od", "8"], 64),
           (["trial"], 64), (["trial", "--threads", "14"], 64), (["rules", "chek", "rules.json"], 64),
           (["rules", "check", "week.csv"], 2), (["rules", "show", "nothing"], 64), (["rules", "diff", "default"], 64),
           (["schema", "nothing"], 64), (["schema", "job", "--data", "missing"], 66)]
    with Scratch(program) as folder:
        listing = folder.names()
        for arguments, status in bad:
            for place in ("front", "end"):
                words = [arguments[0], "-o", "out", *arguments[1:]] if place == "front" else [*arguments, "-o", "out"]
                (folder / "out").write_bytes(OLD)
                ran = program.run(words, folder.path)
                tally.check(label(words), failed=ran.returncode == status, kept=(folder / "out").read_bytes() == OLD,
                            says_unchanged=says_unchanged(ran))
                (folder / "out").unlink()
                ran = program.run(words, folder.path)
                tally.check(f"{label(words)}, no old file", failed=ran.returncode == status,
                            says_nothing_of_it=not says_unchanged(ran), nothing_left=folder.names() == listing)


def full_disk(program, tally):
    """A full device, a full disk, no room for another name: status 74, and the old file stays."""
    with Scratch(program) as folder:
        for arguments, takes_output in RUNS:
            with open("/dev/full", "wb") as full:
                ran = program.run(arguments, folder.path, output=full)
            tally.check(f"{label(arguments)} > /dev/full", status=ran.returncode == 74,
                        told=b"cannot write standard output: No space left" in ran.stderr)
            if takes_output:
                ran = program.run([*arguments, "-o", "/dev/full"], folder.path)
                tally.check(f"{label(arguments)} -o /dev/full", status=ran.returncode == 74,
                            told=b"cannot write /dev/full: No space left" in ran.stderr)
        disk = folder / "disk"
        disk.mkdir()
        if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=64k,nr_inodes=8", "none", str(disk)], check=False,
                          capture_output=True).returncode != 0:
            return
        try:
            try_full_disk(program, tally, folder, disk)
        finally:
            subprocess.run(["umount", str(disk)], check=True)


def try_full_disk(program, tally, folder, disk):
    for arguments in WITH_OUTPUT:
        for what in ("bytes", "names"):
            (disk / "out").write_bytes(OLD)
            fill(disk, what)
            listing = sorted(os.listdir(disk))
            ran = program.run([*arguments, "-o", str(disk / "out")], folder.path)
            tally.check(f"{label(arguments)}, no more {what}", status=ran.returncode == 74,
                        told=b"No space left on device" in ran.stderr, kept=(disk / "out").read_bytes() == OLD,
                        says_unchanged=says_unchanged(ran), nothing_left=sorted(os.listdir(disk)) == listing)
            for name in os.listdir(disk):
                (disk / name).unlink()


def fill(disk, what):
    try:
        if what == "bytes":
            (disk / "filler").write_bytes(bytes(1 << 20))
        else:
            for number in range(100):
                (disk / str(number)).touch()
    except OSError:
        pass


def limits(program, tally):
    """A write that the system cuts short, at sizes from nothing to the whole result."""
    with Scratch(program) as folder:
        for arguments in WITH_OUTPUT:
            size = len(program.run(arguments, folder.path).stdout)
            for most in sorted({0, 1, 100, size // 3, size // 2, size - 1, size, size + 1}):
                (folder / "out").write_bytes(OLD)
                ran = program.run([*arguments, "-o", "out"], folder.path, preexec_fn=limited(most))
                whole = most >= size
                tally.check(f"{label(arguments)}, at most {most} of {size} bytes", status=(ran.returncode != 74) == whole,
                            told=whole or b"cannot write out: File too large" in ran.stderr,
                            whole_or_old=((folder / "out").read_bytes() == OLD) != whole,
                            says_unchanged=says_unchanged(ran) != whole,
                            nothing_left=not set(folder.left()) - {"shown"})
                if whole:
                    continue
                with open(folder / "shown", "wb") as shown:
                    ran = program.run(arguments, folder.path, output=shown, preexec_fn=limited(most))
                tally.check(f"{label(arguments)} > shown, at most {most} of {size} bytes", status=ran.returncode == 74,
                            told=b"cannot write standard output: File too large" in ran.stderr)


def closed_pipes(program, tally):
    """A reader that goes away, before the first byte or after some, ends the run quietly; closed streams are told."""
    with Scratch(program) as folder:
        for arguments, takes_output in RUNS:
            for ignored in (False, True):
                for taken in (0, 1):
                    reader, writer = os.pipe()
                    if taken == 0:
                        os.close(reader)
                    child = program.start(arguments, folder.path, stdout=writer, stdin=subprocess.DEVNULL,
                                          restore_signals=not ignored)
                    os.close(writer)
                    if taken:
                        os.read(reader, taken)
                        os.close(reader)
                    told = child.communicate(timeout=PATIENCE)[1]
                    quiet = (b"" if not told else told) == b"" or taken == 1
                    ended = {-signal.SIGPIPE, 74} if taken == 0 else {-signal.SIGPIPE, 74, 0, 1, 2, 3}
                    tally.check(f"{label(arguments)} | reader of {taken} bytes, signal ignored: {ignored}",
                                ended=child.returncode in ended, quiet=quiet)
            closed = subprocess.run(["sh", "-c", 'exec "$@" >&-', "sh", program.path, *arguments], cwd=folder.path,
                                    capture_output=True, check=False, stdin=subprocess.DEVNULL)
            tally.check(f"{label(arguments)} >&-", status=closed.returncode == 74,
                        told=b"cannot write standard output" in closed.stderr)
            if takes_output:
                shown = program.run(arguments, folder.path)
                for streams in ("2>&-", ">&- 2>&-", "<&- >&- 2>&-"):
                    subprocess.run(["sh", "-c", f'exec "$@" {streams}', "sh", program.path, *arguments, "-o", "out"],
                                   cwd=folder.path, check=False, stdin=subprocess.DEVNULL)
                    tally.check(f"{label(arguments)} -o out {streams}", result=(folder / "out").read_bytes() == shown.stdout)
                    (folder / "out").unlink()
        closed = subprocess.run(["sh", "-c", 'exec "$@" <&-', "sh", program.path, "plan", "-"], capture_output=True, check=False)
        tally.check("plan - <&-", status=closed.returncode == 66, told=b"cannot read standard input" in closed.stderr)


# --- signals and kills --------------------------------------------------------------------------------------------


class Stream:
    """A batch that is fed order by order, so that a signal can come between any two writes."""

    def __init__(self, program, folder, form, output, error=subprocess.PIPE, **how):
        self.folder = folder
        arguments = ["batch", "-", "--in", "ndjson", "--format", "ndjson", *form, "-o", output]
        self.file = None
        self.before = set(folder.left())
        self.child = subprocess.Popen([program.path, *arguments], cwd=folder.path, env=surroundings(folder.path), stdin=subprocess.PIPE,
                                      stdout=subprocess.DEVNULL, stderr=error, **how)

    def made(self):
        return [name for name in self.folder.left() if name not in self.before]

    def feed(self, first, count):
        """Waits until the records of all orders so far are in the file that is being made."""
        for number in range(first, first + count):
            self.child.stdin.write(order(number).encode())
        self.child.stdin.flush()
        until = time.monotonic() + PATIENCE
        while time.monotonic() < until:
            self.file = self.file or next(iter(self.made()), None)
            if self.file and (self.folder / self.file).read_bytes().count(b"\n") == first + count - 1:
                return
            time.sleep(0.001)
        raise AssertionError("no record came")

    def end(self):
        self.child.stdin.close()
        told = self.child.stderr.read() if self.child.stderr else b""
        return self.child.wait(PATIENCE), told


def signals(program, tally):
    """A signal between any two writes removes what was begun, leaves the old file and says so."""
    with Scratch(program) as folder:
        for form in STREAMED:
            for written in range(4):
                for number in ENDING + [signal.SIGKILL]:
                    for old in (True, False):
                        if old:
                            (folder / "out").write_bytes(OLD)
                        stream = Stream(program, folder, form, "out")
                        stream.feed(1, written)
                        stream.child.send_signal(number)
                        status, told = stream.end()
                        killed = number == signal.SIGKILL
                        left = stream.made()
                        kept = (folder / "out").read_bytes() == OLD if old else not (folder / "out").exists()
                        tally.check(f"batch {label(form)}, {number.name} after {written} records", kept=kept,
                                    ended_by_it=status == -number, nothing_left=killed or not left,
                                    told=killed or (b"out was not changed" in told) == old)
                        for name in left:
                            (folder / name).unlink()
                        (folder / "out").unlink(missing_ok=True)
        ignored_signals(program, tally, folder)


def ignored_signals(program, tally, folder):
    """What the caller ignores (nohup) stays ignored."""
    for number in (signal.SIGHUP, signal.SIGINT, signal.SIGTERM):
        stream = Stream(program, folder, [], "out", preexec_fn=lambda number=number: signal.signal(number, signal.SIG_IGN))
        stream.feed(1, 1)
        stream.child.send_signal(number)
        stream.feed(2, 1)
        status, _ = stream.end()
        tally.check(f"{number.name} ignored", went_on=status == 3, whole=(folder / "out").read_bytes().count(b"\n") == 2,
                    nothing_left=not stream.made())
        (folder / "out").unlink()


def killed_anywhere(program, tally):
    """A signal at any moment of a run: the file is the old one or the new one, whole."""
    with Scratch(program) as folder:
        for arguments in WITH_OUTPUT:
            begun = time.monotonic()
            new = program.run([*arguments, "-o", "out"], folder.path)
            took = time.monotonic() - begun
            whole = (folder / "out").read_bytes()
            for step in range(8):
                for number in (signal.SIGTERM, signal.SIGINT, signal.SIGHUP, signal.SIGKILL):
                    (folder / "out").write_bytes(OLD)
                    child = program.start([*arguments, "-o", "out"], folder.path, stdin=subprocess.DEVNULL,
                                          stdout=subprocess.DEVNULL)
                    time.sleep(took * step / 7)
                    child.send_signal(number)
                    told = child.communicate(timeout=PATIENCE)[1]
                    now = (folder / "out").read_bytes()
                    left = folder.left()
                    tally.check(f"{label(arguments)}, {number.name} at {step}/7", old_or_new=now in (OLD, whole),
                                ended=child.returncode in (-number, new.returncode),
                                nothing_left=not left or number == signal.SIGKILL,
                                true_word=b"was not changed" not in told or now == OLD)
                    for name in left:
                        (folder / name).unlink()


# Of the faults that system calls can be given, one in so many is tried; a prime, so that over the commands all kinds come
# round. 1: all of them.
SHARE = int(os.environ.get("MAINBORE_FAULTS_SHARE", "5"))


def every_call(program, tally):
    """Each system call of the writing fails, or a signal or kill comes with it: the same holds."""
    if shutil.which("strace") is None or subprocess.run(["strace", "-o", "/dev/null", "true"], check=False,
                                                        capture_output=True).returncode != 0:
        tally.skipped = "strace is not to be had here"
        return
    calls = {"write": ["ENOSPC", "EIO", "EDQUOT"], "fsync": ["EIO", "ENOSPC", "EINVAL"], "fchmod": ["EPERM"],
             "fchown": ["EPERM"], "renameat": ["EIO", "ENOSPC", "EBUSY"], "openat": ["EEXIST", "EACCES", "ENOSPC", "EMFILE"]}
    turn = 0
    with Scratch(program) as folder:
        for arguments in WITH_OUTPUT:
            (folder / "out").write_bytes(OLD)
            usual = program.run([*arguments, "-o", "out"], folder.path)
            whole = (folder / "out").read_bytes()
            places = places_of_calls(program, folder, arguments, calls)
            for call, errors in calls.items():
                for when in places[call]:
                    for what in [f"error={error}" for error in errors] + ["signal=SIGTERM", "signal=SIGHUP", "signal=SIGKILL"]:
                        turn += 1
                        if turn % SHARE == 0:
                            inject(program, tally, folder, arguments, f"{call}:{what}:when={when}", usual, whole)


def strace(program, folder, arguments, *options):
    # The search for leaks cannot run in a traced program, and says so in writes of its own.
    env = {**surroundings(folder.path), "ASAN_OPTIONS": "detect_leaks=0"}
    return subprocess.run(["strace", "-f", "-qq", *options, program.path, *arguments, "-o", "out"], cwd=folder.path,
                          env=env, stdin=subprocess.DEVNULL, capture_output=True, timeout=PATIENCE, check=False)


def places_of_calls(program, folder, arguments, calls):
    """Which of the calls of each kind matter: of the files opened, the one that is made; of what is written, not what the
    sanitizers write into pipes of their own."""
    (folder / "out").write_bytes(OLD)
    strace(program, folder, arguments, "-y", "-e", "trace=" + ",".join(calls), "-o", "calls")
    lines = (folder / "calls").read_text().splitlines()
    (folder / "calls").unlink()
    places = {}
    for call in calls:
        mine = [line for line in lines if f" {call}(" in f" {line}"]
        own = [re.search(r"\bwrite\((?![12]<)\d+<pipe:", line) is not None for line in mine]
        places[call] = [at + 1 for at, line in enumerate(mine) if not own[at] and (call != "openat" or "O_EXCL" in line)]
        # With several threads those come at other places in every run.
        if any(own) and "--jobs" in arguments:
            places[call] = []
    return places


def inject(program, tally, folder, arguments, fault, usual, whole):
    (folder / "out").write_bytes(OLD)
    call = fault.partition(":")[0]
    ran = strace(program, folder, arguments, "-o", "calls", "-e", f"trace={call}", "-e", f"inject={fault}")
    now = (folder / "out").read_bytes()
    # strace counts the calls of each thread: where one thread's write of the result fails, another's message may as well.
    silenced = re.search(r"\bwrite\(2, .*\(INJECTED\)", (folder / "calls").read_text(errors="replace")) is not None
    (folder / "calls").unlink()
    left = folder.left()
    killed = "SIGKILL" in fault
    ended = {usual.returncode, 74} if "error=" in fault else {-15, -1, -9, 143, 129, 137, usual.returncode}
    failed = ran.returncode == 74 or ran.returncode < 0
    tally.check(f"{label(arguments)}, {fault}", old_or_new=now in (OLD, whole), nothing_left=killed or not left,
                ended=ran.returncode in ended, new_where_it_says_so=ran.returncode != usual.returncode or now == whole,
                says_unchanged=not failed or killed or silenced or says_unchanged(ran) == (now == OLD))
    for name in left:
        (folder / name).unlink()


def two_writers(program, tally):
    """Runs that write to one file at once do not mix: the file is the whole result of the last to end."""
    with Scratch(program) as folder:
        for form in STREAMED:
            for writers in (2, 5):
                streams = []
                for number in range(writers):
                    streams.append(Stream(program, folder, form, "out"))
                    streams[-1].feed(1, 1)
                for record in range(2, 4):
                    for stream in streams:
                        stream.feed(record, 1)
                for number, stream in enumerate(streams):
                    stream.feed(4, number + 1)  # so that each result is of another length
                    status, _ = stream.end()
                    lines = (folder / "out").read_bytes().splitlines()
                    ids = [line.count(b'"AV-%d"' % (at + 1)) > 0 for at, line in enumerate(lines)]
                    tally.check(f"batch {label(form)}, the {number + 1}. of {writers} to end", status=status == 3,
                                whole=len(lines) == 4 + number and all(ids))
                tally.check(f"batch {label(form)}, {writers} writers", nothing_left=not streams[0].made())
                (folder / "out").unlink()
        at_once(program, tally, folder)


def at_once(program, tally, folder):
    """As fast as the machine starts them."""
    for arguments in WITH_OUTPUT:
        whole = program.run(arguments, folder.path).stdout
        children = [program.start([*arguments, "-o", "out"], folder.path, stdin=subprocess.DEVNULL,
                                  stdout=subprocess.DEVNULL) for _ in range(4)]
        for child in children:
            child.communicate(timeout=PATIENCE)
        tally.check(f"{label(arguments)}, four at once", whole=(folder / "out").read_bytes() == whole,
                    nothing_left=not folder.left())
        (folder / "out").unlink()


GROUPS = {"list": the_list_is_whole, "read": what_was_read, "beside": names_beside, "targets": targets,
          "protected": write_protected, "failed": failed_runs, "full": full_disk, "limits": limits,
          "pipes": closed_pipes, "signals": signals, "moments": killed_anywhere, "calls": every_call,
          "writers": two_writers}


def main():
    program = Program(sys.argv[1], sys.argv[2])
    tallies = []
    for name in sys.argv[3:] or GROUPS:
        tally = Tally(GROUPS[name].__name__.replace("_", " "))
        GROUPS[name](program, tally)
        print(tally.line(), flush=True)
        for fault in tally.faults[:20]:
            print("  " + fault)
        tallies.append(tally)
    if len(tallies) > 1:
        tried, faults = sum(t.tried for t in tallies), sum(len(t.faults) for t in tallies)
        print(f"{'all':<44} tried {tried:6}   held {tried - faults:6}")
    if any(tally.faults for tally in tallies):
        return 1
    return 77 if all(tally.skipped for tally in tallies) else 0


if __name__ == "__main__":
    sys.exit(main())
