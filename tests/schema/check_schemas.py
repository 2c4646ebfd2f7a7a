#!/usr/bin/env python3
"""Hold the schemas the program writes against what the program reads and writes.

    check_schemas.py PROGRAM SOURCE_DIRECTORY

Every job and rules file of the examples and tests goes through the program and through jsonschema, and both must say the
same. Files in a folder `beyond` are wrong in a way that a schema cannot say (include/mainbore/schema.hpp): only the
program refuses them. Every plan must match the schema of plans, and the job in it that of jobs.

Exit status: 0 all agree, 1 some differ, 77 when jsonschema is not installed (Debian and Ubuntu: python3-jsonschema).
"""

import json
import pathlib
import subprocess
import sys
import tempfile

try:
    import jsonschema
except ImportError:
    print("jsonschema is not installed: nothing compared")
    sys.exit(77)

UNREADABLE = 2  # the program's exit status
JOB = {
    "main": {"material": "ductile iron", "size": "8 in", "pressure": "70 psi"},
    "service": {"size": "1 in"},
}


class Check:
    def __init__(self, program, source):
        self.program = program
        self.source = source
        self.faults = []
        self.counts = {}
        self.validators = {}
        for name in ("job", "rules", "plan"):
            schema = json.loads(self.run("schema", name).stdout)
            jsonschema.Draft7Validator.check_schema(schema)
            self.validators[name] = jsonschema.Draft7Validator(schema)

    def run(self, *arguments, text=None):
        # An empty input where none is given: the program must not wait for one.
        return subprocess.run(
            [self.program, *arguments], input=text or "", capture_output=True, encoding="utf-8", timeout=60
        )

    def fault(self, what):
        self.faults.append(what)

    def count(self, what):
        self.counts[what] = self.counts.get(what, 0) + 1

    def schema_faults(self, name, document):
        errors = sorted(self.validators[name].iter_errors(document), key=lambda e: list(map(str, e.path)))
        return [f"/{'/'.join(map(str, e.path))}: {e.message[:200]}" for e in errors]

    def check_plan(self, label, done):
        """The plan of a run with --format json, against its schema."""
        plan = json.loads(done.stdout)
        for error in self.schema_faults("plan", plan):
            self.fault(f"{label}: the plan at {error}")
        for error in self.schema_faults("job", plan["job"]):
            self.fault(f"{label}: the plan's job at {error}")
        self.count("plans")

    def expect(self, label, what, program_reads, schema_faults, valid, beyond=False):
        """`valid`: what must be, or None where only agreement is asked."""
        self.count(f"{what} files " + ("read" if program_reads else "refused by the program alone" if beyond else "refused"))
        if valid is not None and program_reads != valid:
            self.fault(f"{label}: the program {'reads' if program_reads else 'refuses'} it")
        schema_accepts = not schema_faults
        if schema_accepts != (program_reads or beyond):
            self.fault(
                f"{label}: the program {'reads' if program_reads else 'refuses'} it and the schema "
                + ("accepts it" if schema_accepts else f"does not: {schema_faults[0]}")
            )

    def job(self, path, valid, beyond=False):
        text = path.read_text(encoding="utf-8")
        done = self.run("plan", "-", "--format", "json", text=text)
        reads = done.returncode in (0, 1, 3)
        if not reads and done.returncode != UNREADABLE:
            self.fault(f"{path}: exit status {done.returncode}: {done.stderr}")
        self.expect(path, "job", reads, self.schema_faults("job", json.loads(text)), valid, beyond)
        if reads:
            self.check_plan(path, done)
            for extra in (["--units", "si"], *(["--rules", str(r)] for r in self.rules_files())):
                done = self.run("plan", "-", "--format", "json", *extra, text=text)
                self.check_plan(f"{path} {' '.join(extra)}", done)

    def rules(self, path, valid, beyond=False):
        text = path.read_text(encoding="utf-8")
        done = self.run("plan", "-", "--format", "json", "--rules", str(path), text=json.dumps(JOB))
        reads = done.returncode in (0, 1, 3)
        if not reads and done.returncode != UNREADABLE:
            self.fault(f"{path}: exit status {done.returncode}: {done.stderr}")
        self.expect(path, "rules", reads, self.schema_faults("rules", json.loads(text)), valid, beyond)

    def rules_files(self):
        return [*self.files("examples/rules"), *self.files("tests/rules_files")]

    def files(self, folder):
        found = sorted((self.source / folder).glob("*.json"))
        if not found:
            self.fault(f"{folder}: no files")
        return found

    def variants(self, what, base, variants, valid, beyond=False):
        """Small documents by the path of the one value that differs: too many for a file each."""
        for path, value in variants:
            document = json.loads(json.dumps(base))
            keys = path.split("/")
            inner = document
            for key in keys[:-1]:
                inner = inner.setdefault(key, {})
            inner[keys[-1]] = value
            text = json.dumps(document)
            label = f"{what} {path} = {json.dumps(value)}"
            if what == "job":
                done = self.run("plan", "-", "--format", "json", text=text)
            else:
                with tempfile.NamedTemporaryFile("w", suffix=".json", encoding="utf-8") as file:
                    file.write(text)
                    file.flush()
                    done = self.run("plan", "-", "--format", "json", "--rules", file.name, text=json.dumps(JOB))
            reads = done.returncode in (0, 1, 3)
            self.expect(label, what, reads, self.schema_faults(what, document), valid, beyond)
            if reads:
                self.check_plan(label, done)

    def batch(self):
        """Plans as `batch` writes them, whole and with their decisions alone."""
        orders = [json.loads(path.read_text(encoding="utf-8")) for path in self.files("examples/jobs")]
        text = "".join(json.dumps(order) + "\n" for order in orders)
        for scope in ("--full", "--decisions"):
            done = self.run("batch", "-", "--in", "ndjson", "--format", "ndjson", scope, text=text)
            records = [json.loads(line) for line in done.stdout.splitlines()]
            if len(records) != len(orders):
                self.fault(f"batch {scope}: {len(records)} records of {len(orders)} orders: {done.stderr}")
            for record in records:
                plan = record.get("plan", record)
                for error in self.schema_faults("plan", plan):
                    self.fault(f"batch {scope}: the plan at {error}")
                self.count("plans")


JOBS_VALID = [
    ("main/pressure", "5.6 bar"),
    ("main/pressure", {"value": 565, "unit": "kPa"}),
    ("main/pressure", {"value": 82, "unit": "PSI"}),
    ("main/pressure", "82psi"),
    ("main/pressure", "8.2e1 psi"),
    ("main/size", "DN 200"),
    ("main/size", "dn200"),
    ("main/size", "200 mm"),
    ("main/size", {"value": 8, "unit": "in"}),
    ("service/size", "1-1/4 in"),
    ("service/size", "1 1/4\""),
    ("service/size", "5/8 in"),
    ("main/cover", "4 ft 6 in"),
    ("main/cover", "4'6\""),
    ("main/cover", "1.4 m"),
    ("main/temperature", "50 degF"),
    ("main/temperature", "10 \u00b0C"),
    ("main/temperature", {"value": 10, "unit": "degC"}),
    ("main/material", "Ductile Iron"),
    ("main/material", "ductile_iron"),
    ("main/material", "DIP"),
    ("main/carries", "drinking water"),
    ("main/carries", "Reclaimed-Water"),
    ("main/condition", "SOUND"),
    ("main/installed", 1968),
    ("main/encased", True),
    ("service/clock", "10:30"),
    ("service/clock", "2 o'clock"),
    ("service/clock", "2"),
    ("service/thread", "CC"),
    ("service/line/c", 130),
    ("service/line/c", "130"),
    ("service/line/c", {"value": 130}),
    ("service/line/rise", "-4 ft"),
    ("service/demand/flow", "18 gpm"),
    ("sanitary/stock", "12.5 %"),
    ("sanitary/stock", {"value": 12.5, "unit": "%"}),
    ("excavation/strength", "1.5 tsf"),
    ("excavation/open_for", "24 h"),
    ("excavation/soil", "type b"),
    ("excavation/speed", "35 mph"),
    ("machine/profile", "unspecified"),
    ("machine/extensions", 2),
    ("nearby", []),
    ("nearby", [{"what": "repair clamp", "along": "-3 ft", "clock": "12:00", "size": "1 in"}]),
    ("note", "two\nlines"),
]
JOBS_INVALID = [
    ("main/pressure", 82),
    ("main/pressure", "82"),
    ("main/pressure", "82 in"),
    ("main/pressure", "82 psii"),
    ("main/pressure", "82 psi 3"),
    ("main/pressure", "about 82 psi"),
    ("main/pressure", ""),
    ("main/pressure", None),
    ("main/pressure", {"value": "82", "unit": "psi"}),
    ("main/pressure", {"value": 82}),
    ("main/pressure", {"value": 82, "unit": "gpm"}),
    ("main/pressure", {"value": 82, "unit": "psi", "at": "noon"}),
    ("main/pressure", {"unit": "psi"}),
    ("main/size", 8),
    ("main/size", "8"),
    ("main/size", "DN 201"),
    ("main/size", "1/0 in"),
    ("main/material", "irn"),
    ("main/material", "C"),
    ("main/material", 3),
    ("main/carries", "milk"),
    ("main/installed", "1968"),
    ("main/installed", 1968.5),
    ("main/installed", 1492),
    ("main/encased", "yes"),
    ("main/encased", 1),
    ("main/od", {"value": 6.9}),
    ("main/colour", "blue"),
    ("main", "8 in ductile iron"),
    ("mian", {"size": "8 in"}),
    ("service/clock", "13:00"),
    ("service/clock", "1:7"),
    ("service/clock", 2),
    ("service/thread", "BSW"),
    ("service/line/c", 20),
    ("service/line/c", "130 psi"),
    ("service/line/elbows", -1),
    ("service/line/colour", "red"),
    ("service/size", "4 ft 6 psi"),
    ("sanitary/stock", 12.5),
    ("excavation/open_for", "24 psi"),
    ("machine/profile", "no such machine"),
    ("machine/title", "the truck's machine"),
    ("nearby", "none"),
    ("nearby", [{"what": "joint"}]),
    ("nearby", [{"what": "joint", "along": 4}]),
    ("nearby", ["joint"]),
    ("nearby", {"what": "joint", "along": "4 ft"}),
    ("id", 7),
    ("id", "bell \u0007"),
    ("id", "x" * 301),
]
RULES_VALID = [
    ("name", "Fern Hollow Water"),
    ("pressure/stop_rating", "80 psi"),
    ("pressure/stop_rating", {"value": 80, "unit": "psi"}),
    ("pressure/stop_rating", {"value": "1 MPa", "reference": "Standard 3", "reason": "stocked"}),
    ("pressure/stop_rating", {"reference": "Standard 3"}),
    ("direct/required_threads", 3),
    ("direct/required_threads", "2.5 threads"),
    ("direct/required_threads", {"value": 3, "reason": "clay"}),
    ("direct/hole_ratio", "30 %"),
    ("direct/hole_ratio", 0.3),
    ("direct/default_thread", "npt"),
    ("direct/plastic_wet_tap_warmest", "30 degC"),
    ("direct/largest", []),
    ("direct/largest", [{"largest": "1 in", "reason": "tried"}]),
    ("direct/largest_first", [{"material": "PVC", "largest": "none", "why": "saddles alone"}]),
    ("main/not_tapped", [{"main_above": "16 in", "why": "trunk mains", "reference": "Standard 2"}]),
    ("main/closed_season", [{"from": "11-01", "to": "04-01"}, {"material": "PVC", "from": "02-29", "to": "02-29", "why": "x"}]),
    ("main/closed_season", []),
    ("saddle/specification", [{"text": "bronze"}, {"tap_above": "1 in", "tap_to": "2 in", "text": "double strap"}]),
    ("sleeve/specification", [{"main_below": "6 in", "text": "stainless"}]),
    ("place/least_cover", "1.8 m"),
    ("place/least_cover", None),
    ("place/greatest_cover", {"value": 8, "unit": "ft", "reason": "no long keys"}),
    ("water/smallest_tap", "3/4 in"),
    ("water/smallest_tap", {"value": "3/4 in", "reference": "Standard 2"}),
    ("water/smallest_tap", None),
    ("saddle/largest", [{"material": ["PVC", "cast iron"], "class": "DR 18", "series": "pvc-c900", "main_from": "6 in",
                         "main_to": "DN 300", "wall_from": "0.25 in", "largest": "None", "why": "use a sleeve"}]),
    ("place/default_clock", "10:30"),
    ("place/clearances", {"tap": "36 in", "gas_line": "2 ft", "hydrant": {"value": "0 ft", "reason": "x"}}),
    ("place/clearances", {"joint": {"value": 700, "unit": "mm"}}),
    ("cleaning/sample_above", "2 in"),
    ("cleaning/swab_percent", "1 %"),
    ("pit/short_term_open", "24 h"),
]
RULES_INVALID = [
    ("pressures", {}),
    ("pressure", None),
    ("pressure/stop_rating", 150),
    ("pressure/stop_rating", "18 in"),
    ("pressure/stop_rating", None),
    ("pressure/stop_rating", True),
    ("pressure/stop_rating", {"reason": "x"}),
    ("pressure/stop_rating", {"value": 150}),
    ("pressure/stop_rating", {"value": 150, "unit": "ft"}),
    ("direct/stop_rating", "100 psi"),
    ("direct/requird_threads", 3),
    ("direct/required_threads", {"value": 3, "reson": "clay"}),
    ("direct/required_threads", {"value": 3, "how": "published"}),
    ("direct/required_threads", "3 psi"),
    ("direct/required_threads", 40),
    ("direct/hole_ratio", 1.2),
    ("direct/hole_ratio", {"value": 1.2}),
    ("direct/default_thread", "NPTX"),
    ("direct/largest", None),
    ("direct/largest", {"largest": "1 in"}),
    ("saddle/largest", [7]),
    ("saddle/largest", [{"material": "PVC"}]),
    ("saddle/largest", [{"largest": "none"}]),
    ("saddle/largest", [{"largest": "none", "why": ""}]),
    ("saddle/largest", [{"largest": "1"}]),
    ("saddle/largest", [{"largest": 1}]),
    ("saddle/largest", [{"largest": "1 in", "material": ["PVC", "iron"]}]),
    ("saddle/largest", [{"largest": "1 in", "series": "pvc-c90"}]),
    ("saddle/largest", [{"largest": "1 in", "main_form": "6 in"}]),
    ("direct/largest_first", None),
    ("main/not_tapped", [{"main_above": "16 in"}]),
    ("main/not_tapped", [{"main_above": "16 in", "why": ""}]),
    ("main/not_tapped", [{"largest": "none", "why": "trunk mains"}]),
    ("main/not_tapped", {"main_above": "16 in", "why": "trunk mains"}),
    ("main/closed_season", [{"from": "11-01"}]),
    ("main/closed_season", [{"from": "11-31", "to": "04-01"}]),
    ("main/closed_season", [{"from": "02-30", "to": "04-01"}]),
    ("main/closed_season", [{"from": "2026-11-01", "to": "04-01"}]),
    ("main/closed_season", [{"from": "1 November", "to": "04-01"}]),
    ("main/season", []),
    ("saddle/specification", "bronze"),
    ("saddle/specification", [{"material": "PVC"}]),
    ("saddle/specification", [{"text": ""}]),
    ("place/least_cover", "82 psi"),
    ("place/least_cover", {"reference": "Standard 3"}),
    ("water/smallest_tap", {"reference": "Standard 3"}),
    ("place/clearances", {"hydrant": None}),
    ("place/default_clock", "13:00"),
    ("place/clearances", {"joints": "2 ft"}),
    ("place/clearances", {"joint": "2 psi"}),
    ("place/clearances", ["joint"]),
    ("name", 7),
    ("note", 7),
]


def main():
    check = Check(sys.argv[1], pathlib.Path(sys.argv[2]))
    for folder in ("examples/jobs", "tests/schema/jobs/valid"):
        for path in check.files(folder):
            check.job(path, True)
    for path in check.files("tests/schema/jobs/invalid"):
        check.job(path, False)
    for path in check.files("tests/schema/jobs/beyond"):
        check.job(path, False, beyond=True)
    for path in [*check.rules_files(), *check.files("tests/schema/rules/valid")]:
        check.rules(path, True)
    for path in check.files("tests/schema/rules/invalid"):
        check.rules(path, False)
    for path in check.files("tests/schema/rules/beyond"):
        check.rules(path, False, beyond=True)
    check.variants("job", JOB, JOBS_VALID, True)
    check.variants("job", JOB, JOBS_INVALID, False)
    check.variants("rules", {}, RULES_VALID, True)
    check.variants("rules", {}, RULES_INVALID, False)
    check.batch()

    print("; ".join(f"{count} {what}" for what, count in check.counts.items()))
    for fault in check.faults:
        print(fault)
    return 1 if check.faults else 0


if __name__ == "__main__":
    sys.exit(main())
