#!/usr/bin/env python3
"""Asks a real shell what it offers behind `mainbore ...`, and compares with what the program says of itself.

Exits 77, "skipped", where the shell is not installed.
Usage: check_completions.py bash|zsh|fish PROGRAM SOURCE_DIR
"""
import os
import pathlib
import pty
import re
import select
import shlex
import shutil
import subprocess
import sys
import tempfile
import time

SKIPPED = 77


def printed(program, *arguments):
    result = subprocess.run([program, *arguments], stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False)
    return result.stdout + result.stderr


def commands_below(program, path):
    """The names in the list of commands of a help page."""
    listed = printed(program, *path, "--help").partition("\nSubcommands:\n")[2]
    return re.findall(r"^  ([a-z][a-z-]*) ", listed, re.M)


def long_options(program, path):
    listed = printed(program, *path, "--help").partition("\nOptions:\n")[2]
    return re.findall(r"^  (?:-\w,)?(--[a-z-]+)", listed, re.M)


def all_paths(program, path=()):
    yield path
    for name in commands_below(program, path):
        yield from all_paths(program, (*path, name))


def lists(program, source):
    """What is typed, and everything that must be offered."""
    for path in all_paths(program):
        begun = "".join(name + " " for name in path)
        yield begun + "--", long_options(program, path)
        below = commands_below(program, path)
        if below:
            yield begun, below
    plan = long_options(program, ["plan"])
    yield "plan --format ", ["text", "json", "html", "calc", "calc-html"]
    yield "plan --format j", ["json"]
    yield "plan --fo", ["--format"]
    yield "plan --format json --", [name for name in plan if name != "--format"]
    yield "plan --set id=7 -o sheet --set note=x --", [name for name in plan if name != "--output"]
    yield "explain ", re.findall(r"^(\S+)", printed(program, "explain", "--list"), re.M)
    yield "explain direct.f", ["direct.few-threads"]
    page = (source / "docs/job.md").read_text(encoding="utf-8")
    paths = [path.replace("[]", "[0]") + "=" for path in re.findall(r"^\| `([^`]+)`", page, re.M)]
    yield "plan --set ", paths
    yield "plan --set machine.e", [path for path in paths if path.startswith("machine.e")]
    yield "schema ", printed(program, "schema", "nothing").partition("one of: ")[2].replace(",", " ").split()
    yield "table --material d", ["ductile iron"]
    yield "table --material PVC --material d", ["ductile iron"]
    yield "table --from 6 --t", ["--to", "--thread"]
    yield "identify --carries ", ["water", "unknown", "reclaimed water", "raw water", "sewage", "gas", "petroleum", "other"]
    yield "identify --magnet ", ["yes", "no"]
    yield "plan --rules we", ["week.csv"]
    yield "batch one.csv --steps we", ["week.csv"]
    yield "plan we", ["week.csv"]
    yield "rules ", ["check", "show", "diff"]
    yield "rules s", ["show"]
    yield "rules check we", ["week.csv"]
    yield "plan --data fo", ["folder/"]


def typed():
    """What is typed before the tabulator, and the words the program is then given."""
    yield "pl", ["plan"]
    yield "plan we", ["plan", "week.csv"]
    yield "plan --rules=we", ["plan", "--rules=week.csv"]
    yield "plan < we", ["plan"]
    yield "plan --set main.si", ["plan", "--set", "main.size="]
    yield "plan --set main.si\t7", ["plan", "--set", "main.size=7"]  # the value follows at once
    yield "plan --set=main.si", ["plan", "--set=main.size="]
    yield "plan --set main.size=", ["plan", "--set", "main.size="]
    yield "plan --format=j", ["plan", "--format=json"]
    yield "table --material d", ["table", "--material", "ductile iron"]
    yield 'table --material "d', ["table", "--material", "ductile iron"]
    yield "table --material ductile\\ ", ["table", "--material", "ductile iron"]
    yield "table --from 4 --th", ["table", "--from", "4", "--thread"]
    yield "table --from w", ["table", "--from", "w"]  # a size is no file
    yield "plan --data=fo", ["plan", "--data=folder"]
    yield "explain direct.few-threads --l", ["explain", "direct.few-threads", "--list"]


class Terminal:
    """A shell on a terminal of its own. What it writes to the file named in $CAPTURE is the answer to a line."""

    def __init__(self, command, folder, setup):
        self.capture = folder / "capture"
        self.process, self.terminal = pty.fork()
        if self.process == 0:
            os.chdir(folder / "work")
            environment = {"PATH": os.environ["PATH"], "HOME": str(folder), "TERM": "dumb", "HISTFILE": "/dev/null",
                           "CAPTURE": str(self.capture)}
            os.execvpe(command[0], command, environment)
        self.answer(setup.encode() + b" print_done\n")

    def answer(self, keys):
        self.capture.write_text("")
        os.write(self.terminal, keys)
        end = time.monotonic() + 30
        while time.monotonic() < end:
            if select.select([self.terminal], [], [], 0.02)[0]:
                os.read(self.terminal, 65536)  # so that the shell can go on writing
            lines = self.capture.read_text().splitlines()
            if lines and lines[-1] == "done":
                return lines[:-1]
        raise TimeoutError(f"no answer to {keys!r}")

    def close(self):
        os.close(self.terminal)  # hangs up
        os.waitpid(self.process, 0)


# The program stands for itself: what it is given becomes the answer.
STAND_IN = """print_done() { echo done >> "$CAPTURE"; }; mainbore() { printf '%s\\n' "$@" >> "$CAPTURE"; print_done; };"""


class Bash:
    def __init__(self, file, folder):
        self.file, self.folder = file, folder
        setup = f"source {shlex.quote(str(file))}; bind 'set bell-style none'; {STAND_IN}"
        self.terminal = Terminal(["bash", "--norc", "--noprofile", "-i"], folder, setup)

    def offered(self, line):
        """By the function itself; names of files come from the shell behind it, and so from a line that is typed."""
        script = ('source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _mainbore;'
                  'for word in "${COMPREPLY[@]}"; do printf "%s\\n" "${word//\\\\/}"; done')
        words = ["mainbore", *line.split(" ")]
        result = subprocess.run(["bash", "--norc", "-c", script, "-", str(self.file), *words], capture_output=True,
                                text=True, check=True)
        if result.stderr:
            raise RuntimeError(result.stderr)
        return result.stdout.splitlines() or self.terminal.answer(f"mainbore {line}\t\n".encode())[-1:]

    def typed(self, line):
        return self.terminal.answer(f"mainbore {line}\t\n".encode())


class Zsh:
    def __init__(self, file, folder):
        # A listing on a terminal is cut and folded: what is offered is written down as the completion adds it.
        setup = f"""
            fpath=({shlex.quote(str(file.parent))} $fpath); autoload -Uz compinit; compinit -u -D; {STAND_IN}
            compadd() {{
              local -a hits
              if (( offering )) && [[ ${{@[1,(i)(-|--)]}} != *-(O|A|D)\\ * ]]; then
                builtin compadd -O hits "$@"
                (( $#hits )) && print -rl -- $hits >> $CAPTURE
              fi
              builtin compadd "$@"
            }}
            offering=0
            offer() {{ offering=1; zle complete-word; offering=0; BUFFER=; print_done }}
            zle -N offer; bindkey '^T' offer
            unsetopt automenu autolist beep;"""
        script = folder / "setup.zsh"
        script.write_text(setup)
        self.terminal = Terminal(["zsh", "-f", "-i"], folder, f"source {shlex.quote(str(script))};")

    def offered(self, line):
        names = self.terminal.answer(f"mainbore {line}\x14".encode())
        return ["folder/" if name == "folder" else name.replace("\\ ", " ") for name in names]

    def typed(self, line):
        return self.terminal.answer(f"mainbore {line}\t\n".encode())


class Fish:
    def __init__(self, file, folder):
        self.file, self.work = file, folder / "work"

    def offered(self, line):
        script = f"source {shlex.quote(str(self.file))}; complete -C {shlex.quote('mainbore ' + line)}"
        result = subprocess.run(["fish", "--no-config", "-c", script], cwd=self.work, capture_output=True, text=True,
                                check=True)
        if result.stderr:
            raise RuntimeError(result.stderr)
        return [offer.split("\t")[0] for offer in result.stdout.splitlines()]


def main():
    name, program, source = sys.argv[1], str(pathlib.Path(sys.argv[2]).resolve()), pathlib.Path(sys.argv[3])
    if shutil.which(name) is None:
        print(f"{name} is not installed")
        return SKIPPED
    kind, file = {"bash": (Bash, "mainbore.bash"), "zsh": (Zsh, "_mainbore"), "fish": (Fish, "mainbore.fish")}[name]
    faults, count = [], 0
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        (folder / "work" / "folder").mkdir(parents=True)
        (folder / "work" / "week.csv").touch()
        (folder / "work" / "folder.csv").touch()
        shell = kind((source / "docs" / "completions" / file).resolve(), folder)
        for line, expected in lists(program, source):
            count += 1
            offered = [word for word in shell.offered(line) if not re.fullmatch(r"-\w", word)]
            if sorted(set(offered)) != sorted(expected):
                faults.append(f"`mainbore {line}` is offered\n  {offered}\nnot\n  {expected}")
        if kind is not Fish:
            for line, expected in typed():
                count += 1
                given = [word.rstrip("/") for word in shell.typed(line)]  # zsh takes the slash back before a blank
                if given != expected:
                    faults.append(f"`mainbore {line}` becomes\n  {given}\nnot\n  {expected}")
            shell.terminal.close()
    for fault in faults:
        print(fault)
    print(f"{count} lines, {len(faults)} wrong")
    return 1 if faults or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
