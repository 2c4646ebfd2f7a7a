#!/usr/bin/env python3
"""The guide for contributors names what there is: each file, folder and name that DEVELOPERS.md gives in backquotes, or as a
file, is one of the sources.

Usage: check_guide.py SOURCE_DIR
"""
import fnmatch
import pathlib
import re
import sys

ROOT = pathlib.Path(sys.argv[1])
FOLDERS = ("include", "src", "data", "tests", "examples", "docs", ".ci")
CODE = {".cpp", ".hpp", ".h", ".py", ".cmake", ".txt", ".json", ".map", ".js", ".sh", ""}
FILE = re.compile(r"[\w./*-]*[\w*]\.(?:hpp|cpp|h|py|json|js|map|cmake|csv|md|txt)(?!\w)")
NAME = re.compile(r"[A-Za-z_][\w:.]*(?:\(.*\)|<.*>)?")
# Words in backquotes that name no source: the values of provenance, and a place in a command.
SAID = {"common practice", "vVERSION"}


def sources():
    files = [p.name for p in ROOT.iterdir() if p.is_file()]
    for folder in FOLDERS:
        files += [p.relative_to(ROOT).as_posix() for p in (ROOT / folder).rglob("*") if p.is_file() and "__pycache__" not in p.parts]
    return files


def named(text):
    """Words in backquotes, and files outside of them; blocks of commands are run by other tests."""
    text = re.sub(r"```.*?```", "", text, flags=re.S)
    return dict.fromkeys(re.findall(r"`([^`\n]+)`", text) + FILE.findall(text))


def is_file(name, files):
    return any(fnmatch.fnmatch(f, name) or fnmatch.fnmatch(f, "*/" + name) for f in files)


def main():
    files = sources()
    words = set()
    for file in files:
        if pathlib.Path(file).suffix in CODE and not file.startswith("docs/"):
            words.update(re.findall(r"\w+", (ROOT / file).read_text(encoding="utf-8", errors="replace")))
    wrong = []
    for name in named((ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")):
        plain = name.rstrip("/")
        if plain in SAID or plain.startswith(("--", "build/")):
            continue
        if FILE.fullmatch(plain):
            if not is_file(plain, files):
                wrong.append(f"no such file: {name}")
        elif "/" in plain and " " not in plain:
            if not any(f"/{f}".find(f"/{plain}/") >= 0 or f == plain for f in files):
                wrong.append(f"no such folder: {name}")
        elif NAME.fullmatch(plain):
            if not all(part in words for part in re.findall(r"\w+", plain)):
                wrong.append(f"no such name in the sources: {name}")
    print("\n".join(wrong) if wrong else "the guide names what there is")
    return 1 if wrong else 0


sys.exit(main())
