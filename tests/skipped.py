#!/usr/bin/env python3
"""One line: the tests of a run that were skipped, each with the last words it said. Usage: skipped.py JUNIT_FILE"""
import sys
import xml.etree.ElementTree as xml

skipped = []
for test in xml.parse(sys.argv[1]).iter("testcase"):
    if test.get("status") == "notrun":
        said = (test.findtext("system-out") or "").strip().splitlines()
        skipped.append(test.get("name") + (f" ({said[-1].strip()})" if said else ""))
if skipped:
    print(f"Skipped {len(skipped)}: {'; '.join(skipped)}")
