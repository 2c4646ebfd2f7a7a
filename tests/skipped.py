#!/usr/bin/env python3
"""One line: the tests of a run that were skipped, each with its reason: what it said behind "[skipped]", else its last words.
Usage: skipped.py JUNIT_FILE"""
import sys
import xml.etree.ElementTree as xml

skipped = []
for test in xml.parse(sys.argv[1]).iter("testcase"):
    if test.get("status") == "notrun":
        said = (test.findtext("system-out") or "").strip().splitlines()
        reasons = [line.removeprefix("[skipped]") for line in said if line.startswith("[skipped]")] or said[-1:]
        skipped.append(test.get("name") + (f" ({reasons[0].strip()})" if reasons else ""))
if skipped:
    print(f"Skipped {len(skipped)}: {'; '.join(skipped)}")
