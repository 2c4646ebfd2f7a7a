#!/usr/bin/env python3
"""Runs every example of the documentation and of --help, and compares what it prints.

In README.md and docs/*.md a ```console block holds commands after "$ " and what they print; a line of "..." stands for
any number of lines, and a comment "# exit N" behind a command for its exit status (0 where there is none). Blocks of
```json that begin a job, rules or map file are only read as JSON. In help pages a line that begins with "  mainbore " is
a command; it must be one the program understands (any status but 64 and 70). What asks its
questions on a terminal is run on one, and answered by Enter alone.

Usage: run_examples.py PROGRAM SOURCE_DIR
"""
import json
import os
import pathlib
import pty
import re
import shutil
import subprocess
import sys
import tempfile


def run(command, folder, program):
    path = os.pathsep.join([str(program.parent), os.environ["PATH"]])
    environment = {**os.environ, "PATH": path, "NO_COLOR": "1", "XDG_CONFIG_HOME": "/nonexistent"}
    if command.startswith("mainbore new "):
        return run_on_terminal(command, folder, environment)
    return subprocess.run(["bash", "-c", command], cwd=folder, env=environment,
                          stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False)


def run_on_terminal(command, folder, environment):
    """Every question is answered by Enter alone."""
    ours, theirs = pty.openpty()
    with subprocess.Popen(["bash", "-c", command], cwd=folder, env=environment,
                          stdin=theirs, stdout=theirs, stderr=theirs) as process:
        os.close(theirs)
        os.write(ours, b"\n" * 200)
        shown = b""
        try:
            while block := os.read(ours, 65536):
                shown += block
        except OSError:  # the other end is closed
            pass
    os.close(ours)
    return subprocess.CompletedProcess(command, process.returncode, shown.decode().replace("\r", ""), "")


def matches(expected, printed):
    """Whether the lines printed are the lines expected, "..." standing for any number of them."""
    if not expected:
        return not printed
    if expected[0].strip() == "...":
        return any(matches(expected[1:], printed[i:]) for i in range(len(printed) + 1))
    return bool(printed) and expected[0].rstrip() == printed[0].rstrip() and matches(expected[1:], printed[1:])


def console_examples(text):
    """Yields (command, expected exit status, expected lines) of every ```console block."""
    for block in re.findall(r"^```console\n(.*?)^```$", text, re.S | re.M):
        command, lines = None, []
        for line in block.splitlines():
            if command is not None and command.endswith("\\"):
                command = command[:-1] + " " + line.strip()
            elif line.startswith("$ "):
                if command is not None:
                    yield finished(command, lines)
                command, lines = line[2:], []
            else:
                lines.append(line)
        if command is not None:
            yield finished(command, lines)


def finished(command, lines):
    status = re.search(r"\s+# exit (\d+)\s*$", command)
    return command[:status.start()] if status else command, int(status.group(1)) if status else 0, lines


def check_page(page, folder, program):
    faults, count = [], 0
    text = page.read_text(encoding="utf-8")
    for command, status, expected in console_examples(text):
        count += 1
        result = run(command, folder, program)
        printed = (result.stdout + result.stderr).splitlines()
        if result.returncode != status:
            faults.append(f"{page.name}: `{command}` exits {result.returncode}, not {status}\n{result.stderr}")
        elif expected and not matches(expected, printed):
            faults.append(f"{page.name}: `{command}` prints something else:\n" + "\n".join(printed[:60]))
    for block in re.findall(r"^```json\n(.*?)^```$", text, re.S | re.M):
        count += 1
        try:
            json.loads(block)
        except ValueError as fault:
            faults.append(f"{page.name}: a JSON example is not JSON: {fault}\n{block}")
    return faults, count


def check_help(folder, program):
    faults, count = [], 0
    overview = run("mainbore --help", folder, program).stdout
    commands = re.findall(r"^  ([a-z]+) {2,}", overview.split("Subcommands:", 1)[-1], re.M)
    for page in ["mainbore --help", *(f"mainbore {name} --help" for name in commands)]:
        text = run(page, folder, program).stdout
        for example in re.findall(r"^  (mainbore (?:.*\\\n)*.*)$", text, re.M):
            count += 1
            command = re.sub(r"\\\n\s*", " ", example)
            result = run(command, folder, program)
            if result.returncode in (64, 70):
                faults.append(f"{page}: `{command}` exits {result.returncode}\n{result.stderr}")
    return faults, count


def main():
    program, source = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    faults, count = [], 0
    with tempfile.TemporaryDirectory() as scratch:
        # Examples run where a reader would stand: at the top of the project, on a copy, so that they may write files.
        folder = pathlib.Path(scratch)
        shutil.copytree(source / "examples", folder / "examples")
        shutil.copytree(source / "data", folder / "data")
        for page in [source / "README.md", *sorted((source / "docs").glob("*.md"))]:
            more, seen = check_page(page, folder, program)
            faults += more
            count += seen
        # Files that help pages name.
        for name, example in (("job.json", "jobs/ductile_iron_direct.json"), ("district.json", "rules/ashby_vale.json"),
                              ("truck.json", "settings/truck.json"), ("export.csv", "orders/ashby_vale_export.csv"),
                              ("map.json", "orders/ashby_vale_map.json"), ("mains.geojson", "orders/taps.geojson")):
            shutil.copy(source / "examples" / example, folder / name)
        more, seen = check_help(folder, program)
        faults += more
        count += seen
    for fault in faults:
        print(fault)
    print(f"{count} examples, {len(faults)} wrong")
    return 1 if faults or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
