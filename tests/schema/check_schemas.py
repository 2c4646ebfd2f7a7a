#!/usr/bin/env python3
"""Hold the schemas the program writes against what the program reads and writes.

    check_schemas.py PROGRAM SOURCE_DIRECTORY [MAKE_ORDERS]

Every job, rules, map, settings and machine file of the examples and tests goes through the program and through
jsonschema, and both must say the same. Files in a folder `beyond` are wrong in a way that a schema cannot say (include/mainbore/schema.hpp): only the
program refuses them. Every plan must match the schema of plans, and the job in it that of jobs: those of all jobs, of the
tables of orders, of the cases of tests/cli, and of orders that the program MAKE_ORDERS makes up.

Exit status: 0 all agree, 1 some differ, 77 when jsonschema is not installed (Debian and Ubuntu: python3-jsonschema).
"""

import csv
import io
import json
import os
import pathlib
import re
import shlex
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
        for name in ("job", "rules", "plan", "map", "machine", "settings", "verdict", "record", "approved"):
            schema = json.loads(self.run("schema", name).stdout)
            jsonschema.Draft7Validator.check_schema(schema)
            self.validators[name] = jsonschema.Draft7Validator(schema)

    def run(self, *arguments, text=None):
        # An empty input where none is given: the program must not wait for one.
        return subprocess.run(
            [self.program, *arguments], input=text or "", capture_output=True, encoding="utf-8", timeout=60,
            cwd=self.source, env={**os.environ, "XDG_CONFIG_HOME": "/nonexistent"}
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
        self.check_document(label, json.loads(done.stdout))

    def check_document(self, label, plan):
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

    def settings(self, path, valid, beyond=False):
        text = path.read_text(encoding="utf-8")
        done = self.run("plan", "-", "--format", "json", "--settings", str(path), text=json.dumps(JOB))
        self.compare(path, "settings", done, json.loads(text), valid, beyond)

    def approved(self, path, valid, beyond=False):
        done = self.run("plan", "-", "--format", "json", "--approved", str(path), text=json.dumps(JOB))
        self.compare(path, "approved", done, json.loads(path.read_text(encoding="utf-8")), valid, beyond)

    def machine(self, path, valid, beyond=False):
        """As the machine of a job and as that of settings."""
        machine = json.loads(path.read_text(encoding="utf-8"))
        self.compare(path, "machine", self.read_by("job", {**JOB, "machine": machine}), machine, valid, beyond)
        self.compare(path, "machine", self.read_by("settings", {"machine": machine}), machine, valid, beyond)

    def map(self, path, valid, beyond=False):
        text = path.read_text(encoding="utf-8")
        done = self.columns_through(str(path), json.loads(text))
        self.compare(path, "map", done, json.loads(text), valid, beyond)

    def columns_through(self, path, document):
        """A table that has the columns the map names, read through it."""
        columns = document.get("columns") if isinstance(document, dict) else None
        joined = document.get("id") if isinstance(document, dict) else None
        names = [*(columns if isinstance(columns, dict) else []), *(joined if isinstance(joined, list) else [])]
        names = dict.fromkeys(str(name) for name in names)  # a column may be mapped and part of the id
        header = io.StringIO()
        csv.writer(header).writerow(list(names) or ["spare"])
        arguments = ("batch", "-", "--in", "csv", "--columns", "--map", path)
        done = self.run(*arguments, text=header.getvalue())
        if "error[csv." in done.stderr:
            self.fault(f"{path}: the table, not the map, is refused: {done.stderr}")
        return done

    def compare(self, label, what, done, document, valid, beyond):
        reads = done.returncode in (0, 1, 3)
        if not reads and done.returncode != UNREADABLE:
            self.fault(f"{label}: exit status {done.returncode}: {done.stderr}")
        self.expect(label, what, reads, self.schema_faults(what, document), valid, beyond)
        if reads and what != "map":
            self.check_plan(label, done)

    def read_by(self, what, document):
        """The program with the document as a file of that kind."""
        text = json.dumps(document)
        if what == "job":
            return self.run("plan", "-", "--format", "json", text=text)
        with tempfile.NamedTemporaryFile("w", suffix=".json", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            if what == "map":
                return self.columns_through(file.name, document)
            return self.run("plan", "-", "--format", "json", f"--{what}", file.name, text=json.dumps(JOB))

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
            label = f"{what} {path} = {json.dumps(value)}"
            self.compare(label, what, self.read_by(what, document), document, valid, beyond)

    def batch(self, make_orders):
        """Plans as `batch` writes them, whole and with their decisions alone."""
        orders = [json.loads(path.read_text(encoding="utf-8")) for path in self.files("examples/jobs")]
        self.check_records(
            "examples", ("-", "--in", "ndjson"), "".join(json.dumps(order) + "\n" for order in orders), len(orders))
        self.check_records("week.csv", ("examples/orders/week.csv",))
        mapped = ("examples/orders/ashby_vale_export.csv", "--map", "examples/orders/ashby_vale_map.json")
        self.check_records("an export", mapped)
        self.check_records("settings", (*mapped, "--settings", "examples/settings/truck.json"))
        if make_orders:
            made = subprocess.run([make_orders, "600"], capture_output=True, encoding="utf-8", check=True).stdout
            self.check_records("made orders", ("-", "--in", "ndjson"), made, 600)

    def verdicts(self, make_orders):
        """Every record a batch writes of an order, unreadable ones among them."""
        forms = ([], ["--no-rows"], ["--units", "si"], ["--keep", "all"])
        week, mapped = ("examples/orders/week.csv",), ("examples/orders/ashby_vale_export.csv", "--map",
                                                      "examples/orders/ashby_vale_map.json")
        inputs = [(week, None), (mapped, None), ((*week, *week), None), (("examples/orders/taps.geojson",), None),
                  (("-", "--in", "ndjson"), '{"id": 7\n[1]\n{"id": 8, "main": {}}\n'),
                  (("-", "--in", "json"), '[{"id": 7},]')]
        if make_orders:
            made = subprocess.run([make_orders, "600"], capture_output=True, encoding="utf-8", check=True).stdout
            inputs.append((("-", "--in", "ndjson"), made.replace('"size":"', '"size":"x', 40)))
        known = set(self.validators["verdict"].schema["properties"])
        seen = set()
        for arguments, text in inputs:
            for form in forms:
                done = self.run("batch", *arguments, "--format", "ndjson", *form, text=text)
                label = f"batch {' '.join((*arguments, *form))}"
                for line in done.stdout.splitlines():
                    record = json.loads(line)
                    self.count(f"records {record['verdict']}")
                    seen |= set(record)
                    for error in self.schema_faults("verdict", record):
                        self.fault(f"{label}: {line[:80]} at {error}")
                    for name in set(record) - known:
                        self.fault(f"{label}: the schema does not name {name}")
        for name in known - seen - {"count"}:  # several taps are rare
            self.fault(f"no record has {name}")

    def check_records(self, label, arguments, text=None, wanted=None):
        for scope in ("--full", "--decisions"):
            done = self.run("batch", *arguments, "--format", "ndjson", scope, text=text)
            records = [json.loads(line) for line in done.stdout.splitlines()]
            if not records or (wanted is not None and len(records) != wanted):
                self.fault(f"{label} {scope}: {len(records)} records: {done.stderr}")
            for record in records:
                plan = record.get("plan", record)
                if plan.get("verdict") in ("go", "hold", "no-go"):
                    self.check_document(f"{label} {scope}", plan)

    def records(self):
        """Records of every job: with all readings, with none, with one outside; and the lines of a ledger of them."""
        readings = "examples/readings/AV-1041.json"
        place = ("--set", "longitude=-85.5", "--set", "latitude=41.25", "--set", "deviations.clock=a gas line")
        with tempfile.TemporaryDirectory() as folder:
            ledger = pathlib.Path(folder) / "ledger.ndjson"
            for job in self.files("examples/jobs"):
                number = json.loads(job.read_text(encoding="utf-8"))["id"]
                for given in ((readings, *place), ("--set", "tie_1=3 m"), ("--set", "line_pressure=390 psi")):
                    done = self.run("record", str(job), *given, "--set", f"order={number}", "--format", "json", "--append",
                                    str(ledger))
                    if done.returncode not in (0, 1, 3):
                        self.fault(f"record {job} {given}: exit status {done.returncode}: {done.stderr}")
                        continue
                    self.check_record(f"record {job} {given}", json.loads(done.stdout))
            for line in ledger.read_text(encoding="utf-8").splitlines():
                self.check_record("a line of a ledger", json.loads(line))

    def check_record(self, label, record):
        for error in self.schema_faults("record", record):
            self.fault(f"{label}: at {error}")
        self.count("records")

    def cases(self):
        """Every plan that the cases of tests/cli ask for as JSON."""
        for path in sorted((self.source / "tests/cli/cases").glob("*.txt")):
            for case in re.split(r"^\$ ", path.read_text(encoding="utf-8"), flags=re.M)[1:]:
                arguments = shlex.split(case.split("\n", 1)[0])
                if not arguments or arguments[0] != "plan" or {"--what-if", "--help", "-o"} & {*arguments}:
                    continue
                piped = re.search(r"^--- stdin\n(.*?)(?=^--- |\Z)", case, re.S | re.M)
                kept = [word for i, word in enumerate(arguments)
                        if word != "--format" and arguments[i - 1] != "--format"]
                done = self.run(*kept, "--format", "json", text=piped and piped.group(1))
                if done.returncode in (0, 1, 3):
                    self.check_plan(f"{path.name}: {' '.join(arguments)}", done)


JOBS_VALID = [
    ("id", 3001),
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
    ("service/line/color", "red"),
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
    ("id", True),
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
    ("direct/default_thread", {"value": "npt", "reason": "all stops in stock"}),
    ("direct/plastic_wet_tap_warmest", "30 degC"),
    ("direct/largest", []),
    ("direct/largest", [{"largest": "1 in", "reason": "tried"}]),
    ("direct/largest_first", [{"material": "PVC", "largest": "none", "why": "saddles alone"}]),
    ("main/not_tapped", [{"main_above": "16 in", "why": "trunk mains", "reference": "Standard 2"}]),
    ("main/closed_season", [{"from": "11-01", "to": "04-01"}, {"material": "PVC", "from": "02-29", "to": "02-29", "why": "x"}]),
    ("main/closed_season", []),
    ("main/coldest_air", "-5 degC"),
    ("main/coldest_air", None),
    ("line/from_gas", {"value": 3, "unit": "ft"}),
    ("line/least_cover", None),
    ("water/most_premises", 2),
    ("water/by_dwellings", [{"dwellings_from": 1, "tap": "1 in"}, {"dwellings_from": 2, "dwellings_to": 4, "line": "1 in", "meter": "3/4 in"}]),
    ("water/by_dwellings", []),
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
    ("main/coldest_air", "20 ft"),
    ("water/most_premises", 0),
    ("water/by_dwellings", [{"tap": "1 in"}]),
    ("water/by_dwellings", [{"dwellings_from": 1}]),
    ("water/by_dwellings", [{"dwellings_from": 1, "pipe": "1 in"}]),
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

MAP = {"format": 1, "columns": {"A": {"to": "main.size"}}, "defaults": {}}
MAPS_VALID = [
    ("columns/A", {"to": "main.size", "optional": True}),
    ("columns/A", "main.size"),
    ("columns/A", "nearby[999].along"),
    ("columns/A/unit", "MM"),
    ("columns/A/values", {"x": "DN 200", "y": "8 in"}),
    ("columns/A/missing", []),
    ("columns/A/least", "2 in"),
    ("columns/A", {"to": "main.pressure", "unit": "psi", "values": {"x": -5e-1 + 80, "y": "82 kPa", "z": "90.5"}}),
    ("columns/A", {"to": "main.curved", "values": {"x": "TRUE", "y": "No"}}),
    ("columns/A", {"to": "main.material", "values": {"x": "Ductile-Iron"}}),
    ("columns/A", {"to": "crew", "values": {"x": "", "y": 7}}),
    ("materials", {"DICL": "ductile iron", "P": "pvc"}),
    ("materials", {"PVC200": {"main.material": "PVC", "main.class": "SDR 21", "main.installed": 1970}}),
    ("decimal", ","),
    ("defaults/main.pressure", "80 psi"),
    ("defaults/service.demand.shared", "no"),
    ("defaults/machine.studs", "2"),
    ("name", ""),
]
MAPS_INVALID = [
    ("columns/A", {"to": "main.size", "optional": "yes"}),
    ("format", 2),
    ("format", "1"),
    ("name", 7),
    ("columns", []),
    ("columns/A", "main.sise"),
    ("columns/A", "pressure"),
    ("columns/A", "Main.Size"),
    ("columns/A", "nearby[].what"),
    ("columns/A", "nearby[1000].what"),
    ("columns/A", "nearby[0]"),
    ("columns/A", 7),
    ("columns/A", {"unit": "in"}),
    ("columns/A/to", 7),
    ("columns/A/unti", "in"),
    ("columns/A/unit", "psi"),
    ("materials", {"PVC200": {"main.class": "SDR 21"}}),
    ("materials", {"PVC200": {"main.material": "PVC", "main.clas": "SDR 21"}}),
    ("materials", {"PVC200": {"main.material": "PVC", "main.installed": "old"}}),
    ("materials", {"PVC200": 7}),
    ("decimal", ";"),
    ("decimal", True),
    ("columns/A/unit", ""),
    ("columns/A/unit", 7),
    ("columns/A/missing", "XXX"),
    ("columns/A/missing", [[]]),
    ("columns/A/missing", [None]),
    ("columns/A/values", ["8 in"]),
    ("columns/A/values", {"x": 8}),
    ("columns/A/values", {"x": "8"}),
    ("columns/A/values", {"x": "8 psi"}),
    ("columns/A/values", {"x": None}),
    ("columns/A/least", 8),
    ("columns/A/least", True),
    ("columns/A", {"to": "main.material", "unit": "in"}),
    ("columns/A", {"to": "main.material", "least": 1}),
    ("columns/A", {"to": "main.material", "values": {"x": " "}}),
    ("columns/A", {"to": "main.installed", "unit": "in"}),
    ("columns/A", {"to": "main.installed", "least": "MCM"}),
    ("columns/A", {"to": "main.installed", "values": {"x": 19.5}}),
    ("columns/A", {"to": "main.carries", "values": {"x": "milk"}}),
    ("columns/A", {"to": "main.curved", "values": {"x": 1}}),
    ("columns/A", {"to": "service.clock", "values": {"x": 13}}),
    ("columns/A", {"to": "service.line.c", "unit": "psi"}),
    ("columns/A", {"to": "crew", "values": {"x": "bell \u0007"}}),
    ("id", "WO"),
    ("id", [7]),
    ("materials", ["copper"]),
    ("materials", {"CO": "cooper"}),
    ("materials", {"CO": 7}),
    ("missing", {}),
    ("ignore_others", "yes"),
    ("defaults", []),
    ("defaults/id", "X"),
    ("defaults/main.sise", "8 in"),
    ("defaults/nearby[0].what", "valve"),
    ("defaults/main.pressure", 80),
    ("defaults/main.pressure", {"value": 80, "unit": "psi"}),
    ("defaults/machine.profile", "no such machine"),
    ("defaults/main.installed", 1492),
    ("map", {}),
]
SETTINGS_VALID = [
    ("format", 1),
    ("crew", "North yard"),
    ("units", "us"),
    ("units", "si"),
    ("rules", []),
    ("machine", {}),
    ("machine/feed", "Powered"),
    ("machine/extensions", 20),
]
SETTINGS_INVALID = [
    ("format", 2),
    ("format", "1"),
    ("crew", 7),
    ("crew", None),
    ("crew", "x" * 301),
    ("crew", "bell \u0007"),
    ("crews", "North yard"),
    ("units", "SI"),
    ("units", "metric"),
    ("units", None),
    ("rules", "district.json"),
    ("rules", [""]),
    ("rules", ["-"]),
    ("rules", [7]),
    ("rules", ["a\nb"]),
    ("rules", ["a.json"] * 101),
    ("machine", "Truck 4"),
    ("machine/title", "Truck 4"),
    ("machine/feed", "foot"),
    ("machine/size", "8 in"),
    ("machine/extensions", 21),
    ("service/size", "1 in"),
]


def main():
    check = Check(sys.argv[1], pathlib.Path(sys.argv[2]))
    for folder in ("examples/jobs", "tests/browser/jobs", "tests/schema/jobs/valid"):
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
    for folder in ("examples/orders", "tests/maps", "tests/schema/maps/valid"):
        for path in check.files(folder):
            check.map(path, True)
    for path in check.files("examples/settings"):
        check.settings(path, True)
    for path in check.files("examples/approved"):
        check.approved(path, True)
    for what, folder in (("map", "maps"), ("settings", "settings"), ("machine", "machines")):
        for kind, valid, beyond in (("valid", True, False), ("invalid", False, False), ("beyond", False, True)):
            if what == "map" and kind == "valid" or what == "machine" and kind == "beyond":
                continue  # done; there are none
            for path in check.files(f"tests/schema/{folder}/{kind}"):
                getattr(check, what)(path, valid, beyond)
    for what, base, valid, invalid in (("job", JOB, JOBS_VALID, JOBS_INVALID), ("rules", {}, RULES_VALID, RULES_INVALID),
                                       ("map", MAP, MAPS_VALID, MAPS_INVALID),
                                       ("settings", {}, SETTINGS_VALID, SETTINGS_INVALID)):
        check.variants(what, base, valid, True)
        check.variants(what, base, invalid, False)
    check.batch(sys.argv[3] if len(sys.argv) > 3 else None)
    check.verdicts(sys.argv[3] if len(sys.argv) > 3 else None)
    check.cases()
    check.records()

    print("; ".join(f"{count} {what}" for what, count in check.counts.items()))
    for fault in check.faults:
        print(fault)
    return 1 if check.faults else 0


if __name__ == "__main__":
    sys.exit(main())
