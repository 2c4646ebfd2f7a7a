#!/usr/bin/env python3
"""Words that planning puts into a finding by themselves, such as why a figure is out of range, have a Spanish term.

Usage: check_terms.py SOURCE_DIR
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(sys.argv[1])
TEXT = r'"((?:[^"\\]|\\.)*)"'
PATH = re.compile(r"[a-z_]+(?:\.[a-z_]+)*(?:\[\])?")  # of a fact, the same in every language


def read(file):
    """A text that is broken over lines is one."""
    return re.sub(r'"\s*\n\s*"', "", file.read_text(encoding="utf-8"))


def details(source):
    """What stands between the brackets of each .with()."""
    for start in re.finditer(r"\.with\(", source):
        depth, end = 1, start.end()
        while depth:
            depth += {"(": 1, ")": -1}.get(source[end], 0)
            end += 1
        yield from re.findall(r"string_view\(\s*" + TEXT, source[start.end():end])


def main():
    terms = set(re.findall(r"Term\{\s*" + TEXT, read(ROOT / "src/words/spanish/terms.cpp")))
    said = {text: file.name for file in sorted((ROOT / "src/planning").glob("*.cpp")) for text in details(read(file))}
    wanting = {text: file for text, file in said.items() if text not in terms and not PATH.fullmatch(text)}
    for text, file in wanting.items():
        print(f'{file}: no Spanish term of "{text}" (src/words/spanish/terms.cpp)')
    print(f"{len(said)} texts, {len(wanting)} without a Spanish term")
    return 1 if wanting or len(said) < 10 else 0


sys.exit(main())
