#!/usr/bin/env python3
"""No room knows another but by its row of the table in DEVELOPERS.md.

Usage: check_rooms.py SOURCE BUILD NM [show]. A room knows another when it includes a header of it, or when its object files
use a symbol that only the other's define: headers under include/ hide where a thing is made, symbols do not. Names in
backquotes in the last column of the table are the rooms that may be known. Public headers are free to all, but none of a
room that stands further down the table. `show` prints what each room uses.
"""
import collections
import json
import pathlib
import re
import shlex
import subprocess
import sys


def rooms_of(source):
    """{room: rooms it may know} and {room: its row}, by the table."""
    allowed, rows = {}, {}
    for row, line in enumerate((source / "DEVELOPERS.md").read_text().splitlines()):
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if not line.startswith("| `src/") or len(cells) != 3:
            continue
        for room in re.findall(r"`([a-z/]+)`", cells[0]):
            room = room.removeprefix("src/")
            allowed[room] = set(re.findall(r"`([a-z/]+)`", cells[2]))
            rows[room] = row
    return allowed, rows


# The public headers that a room is about; those of a folder are its room's.
HEADERS = {"catalog.hpp": "catalog", "job.hpp": "job", "rules.hpp": "rules", "plan.hpp": "planning"}


def rooms_of_header(source, header, rooms):
    """The rooms that a public header is of, with all it includes."""
    found = {HEADERS.get(header) or header.partition("/")[0]} & rooms
    if (source / "include/mainbore" / (header + ".in")).exists():  # written by the build
        return found
    for inner in re.findall(r'#include "mainbore/([^"]+)"', (source / "include/mainbore" / header).read_text()):
        found |= rooms_of_header(source, inner, rooms)
    return found


def room_of(path, rooms):
    """The room that a path under src/ lies in: a folder of a room may be a room of its own."""
    return max((room for room in rooms if path.startswith(room + "/")), key=len, default="")


INCLUDE = re.compile(r'\s*#\s*include\s*["<]([^">]+)[">]')


def included(source, room, rooms):
    """(place, folder, header) of each include of a header of ours, however it is written: in quotes or brackets, by its path
    under src/ or from the file."""
    for file in sorted((source / "src" / room).rglob("*.[ch]pp")):
        if room_of(str(file.relative_to(source / "src")), rooms) != room:
            continue
        for number, line in enumerate(file.read_text().splitlines(), 1):
            match = INCLUDE.match(line)
            if not match:
                continue
            path = match.group(1)
            beside = (file.parent / path).resolve()
            if beside.is_file() and beside.is_relative_to(source / "src"):
                path = str(beside.relative_to(source / "src"))
            folder, _, header = path.partition("/")
            yield f"{file.relative_to(source)}:{number}: {line}", room_of(path, rooms) or folder, header


def includes(source, rooms):
    """(room, other room): one place that includes it."""
    found = {}
    for room in rooms:
        for place, folder, _ in included(source, room, rooms):
            if folder in rooms:
                found.setdefault((room, folder), place)
    return found


def headers_from_below(source, rows):
    return [f"src/{room} stands above src/{other} in the table: {place}"
            for room in sorted(rows) for place, folder, header in included(source, room, set(rows)) if folder == "mainbore"
            for other in sorted(rooms_of_header(source, header, set(rows))) if rows[other] > rows[room]]


OPENS_FILES = re.compile(r"\b(ifstream|ofstream|fstream|fopen|mkstemp)\b|fs::(rename|remove|copy_file|resize_file)\b")


def files_opened(source):
    """Files are read by InputFile and written by ResultWriter, nowhere else."""
    return [f"{file.relative_to(source)}:{number}: opens a file on its own: {line.strip()}"
            for file in sorted((source / "src").rglob("*.[ch]pp"))
            for number, line in enumerate(file.read_text().splitlines(), 1)
            if OPENS_FILES.search(line.partition("//")[0])]


UNITY_INCLUDE = re.compile(r'#include "(.+)"')


def object_files(source, build, rooms):
    """{room: its object files}. An object of a unity build is of several files, which must be of one room."""
    files = {room: [] for room in rooms}
    for command in json.loads((build / "compile_commands.json").read_text()):
        file = pathlib.Path(command["file"])
        words = shlex.split(command["command"])
        object_file = pathlib.Path(command["directory"], words[words.index("-o") + 1])
        of_unity = file.parent.name == "Unity"
        of_rooms = set()
        for path in UNITY_INCLUDE.findall(file.read_text()) if of_unity else [file]:
            for base in (source, build):  # some are written by the build
                if pathlib.Path(path).is_relative_to(base / "src"):
                    of_rooms.add(room_of(str(pathlib.Path(path).relative_to(base / "src")), rooms))
        if len(of_rooms) > 1:
            sys.exit(f"{file.name} is of several rooms: {', '.join(sorted(of_rooms))}")
        for room in of_rooms & set(rooms):
            files[room].append(object_file)
    return files


def symbols(files, nm):
    """(defined, {used: object file}) of object files. Inline code is compiled wherever it is used, and so is no room's
    own."""
    defined, used = set(), {}
    for file in files:
        listing = subprocess.run([nm, "-P", str(file)], capture_output=True, text=True, check=True).stdout
        for line in listing.splitlines():
            name, kind = line.split()[:2]
            if kind == "U":
                used[name] = file
            elif kind in "TBDR":
                defined.add(name)
    return defined, used


def calls(source, build, rooms, nm):
    """(room, other room): one symbol of the other that its object files use."""
    owner, uses, found = {}, {}, {}
    for room, files in object_files(source, build, rooms).items():
        if not all(file.exists() for file in files) or not files:
            sys.exit(f"no object files of src/{room} in {build}: build the library first")
        defined, uses[room] = symbols(files, nm)
        owner.update({name: room for name in defined})
    for room in rooms:
        for name, file in sorted(uses[room].items()):
            other = owner.get(name)
            if other and other != room:
                plain = subprocess.run(["c++filt", name], capture_output=True, text=True, check=False).stdout.strip() \
                    if (room, other) not in found else ""
                found.setdefault((room, other), f"src/{room}, in {file.name.removesuffix('.o')}, uses {plain or name}")
    return found


def main():
    source, build, nm = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve(), sys.argv[3]
    allowed, rows = rooms_of(source)
    there = {path.name for path in (source / "src").iterdir() if any(path.rglob("*.cpp"))}
    there |= {room for room in allowed if "/" in room and (source / "src" / room).is_dir()}
    faults = [f"src/{room} has no row in the table of DEVELOPERS.md" for room in sorted(there - set(allowed))]
    faults += [f"src/{room} has a row and is not there" for room in sorted(set(allowed) - there)]
    known = collections.defaultdict(list)
    for pair, why in [*includes(source, there).items(), *calls(source, build, there, nm).items()]:
        if pair[0] != pair[1]:
            known[pair].append(why)
    for room, other in sorted(known):
        if other not in allowed.get(room, ()):
            faults += [f"src/{room} may not know src/{other}: {why}" for why in known[room, other]]
    faults += headers_from_below(source, rows) + files_opened(source)
    if "show" in sys.argv:
        for room in sorted(there):
            print(f"{room}: {', '.join(sorted(other for one, other in known if one == room))}")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
