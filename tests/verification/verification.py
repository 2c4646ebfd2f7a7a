#!/usr/bin/env python3
"""Makes docs/verification.md from what the tests compare with values from outside the project.

    verification.py write|check TEST_DIRECTORY SOURCE_DIRECTORY

The unit tests that read tests/reference/ are run once more, and write down each comparison as they make it
(tests/support/check_log.hpp): published, ours. Sources and tolerances are those at the head of each table. Which function a
table holds is read from the test case that reads the table: the public functions that it calls. Nothing is worked out here
but differences and counts.

Exit status: 0 the page is as it must be, or written; 1 it is not; 77 a test program is not built.
"""
import collections
import csv
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

SUBJECTS = {
    "catalog": "Tables of pipe, tubing and meters", "iron": "Threads in iron walls", "npt": "Taper pipe threads",
    "mechanics": "Machine, bar and threads", "pvc": "Plastic pipe under pressure", "hydraulics": "Water for the customer",
    "sanitary": "Cleaning", "excavation": "The pit", "municipal": "What towns write", "text": "Text of others",
}
# The test programs that compare numbers: of formulas and of tables. What others ask of a reference table is a verdict or an
# answer in words, which a line of its table is told by alone.
AREAS = ("catalog", "mechanics", "hydraulics", "sanitary", "excavation")
ROOMS = ("mechanics", "hydraulics", "sanitary", "excavation")

# Which reference tables hold a file of data/. What stands under none of them is told at the top of the page.
DATA = {
    "demand_curves.json": ["hydraulics_demand_curve.csv", "hydraulics_house_demand.csv"],
    "fixtures.json": ["hydraulics_house_demand.csv"],
    "disinfection.json": ["sanitary_dechlorination.csv", "sanitary_liquid_dose.csv"],
    "meters.json": ["catalog_meter_loss.csv", "hydraulics_meter_losses.csv"],
    "pipes/cast_iron.json": ["catalog_cast_iron_1908.csv"],
    "pipes/copper.json": ["catalog_copper_tube.csv"],
    "pipes/ductile_iron.json": ["catalog_ductile_iron_pressure_class.csv", "catalog_ductile_iron_thickness_class.csv"],
    "pipes/pvc.json": ["catalog_pvc_c900.csv", "catalog_pvc_c900_pressure.csv", "catalog_pvc_ips.csv"],
    "rules/default.json": ["excavation_thresholds.csv", "excavation_slopes.csv"],
    "temperature_factors.json": ["catalog_pvc_temperature.csv", "pvc_temperature_factor.csv"],
    "threads.json": ["npt_dimensions.csv", "npt_tap_projection.csv"],
    "tubing.json": ["hydraulics_tubing_contents.csv", "catalog_copper_tube.csv"],
    "water.json": ["hydraulics_water_properties.csv"],
}
NUMBER = r"-?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?"


class Table:
    """A file of tests/reference/."""

    def __init__(self, path):
        lines = path.read_text().splitlines()
        self.name = path.name
        self.source = "; ".join(line.split(":", 1)[1].strip() for line in lines if line.startswith("# source:"))
        stated = [line.split(":", 1)[1].strip() for line in lines if line.startswith("# tolerance:")]
        self.tolerance = float(stated[0]) if stated else None
        self.cells = {}  # line: {column: text}
        columns = None
        for number, line in enumerate(lines, 1):
            if not line or line.startswith("#"):
                continue
            fields = next(csv.reader([line]))
            if columns is None:
                columns = fields
            else:
                self.cells[number] = dict(zip(columns, fields))
        self.rows = len(self.cells)
        self.checks = []

    def printed(self, line, column, value):
        """(column, text) of the value compared: a tolerance of the row may have been read after it."""
        row = self.cells.get(line, {})
        for name in [column, *row]:
            try:
                if float(row.get(name, "")) == value:
                    return name, row[name]
            except ValueError:
                continue
        return column, None

    @property
    def subject(self):
        return self.name.split("_", 1)[0]

    @property
    def derived(self):
        return "derived" in self.source or "worked apart" in self.source


class Comparison:
    def __init__(self, line, column, published, ours, text):
        self.line, self.column, self.published, self.ours = line, column, published, ours
        gap = abs(ours - published)
        self.gap = 0.0 if gap <= 1e-9 * max(abs(published), 1e-3) else gap
        # Half of the last digit that is printed there.
        mark = re.fullmatch(r"-?\d+(?:\.(\d+))?", text or "")
        half = 0.5 * 10.0 ** -len(mark.group(1) or "") if mark else 0.0
        self.rounding = self.gap <= 1.001 * half

    @property
    def share(self):
        """Of the published value; nothing where the last digit explains it."""
        if self.rounding:
            return 0.0
        return self.gap / abs(self.published) if self.published else self.gap


def test_cases(source):
    """(area, name, body) of each test case of a file that reads a reference table."""
    for path in sorted((source / "tests/unit").rglob("*_test.cpp")):
        text = path.read_text()
        if "ReferenceTable" not in text:
            continue
        for match in re.finditer(r'^TEST_CASE\("((?:[^"\\]|\\.)*)"[^\n]*\{\n(.*?)^\}', text, re.S | re.M):
            yield path.parent.name, match.group(1), match.group(2), text


def run_tests(tests, source):
    """The lines that the tests write down."""
    wanted = collections.defaultdict(list)
    for area, name, _, _ in test_cases(source):
        if area not in AREAS:
            continue
        wanted[area].append(re.sub(r"([\\,\[\]])", r"\\\1", name))
    with tempfile.TemporaryDirectory() as folder:
        log = pathlib.Path(folder) / "checks"
        for area, names in sorted(wanted.items()):
            program = tests / f"test_{area}"
            if not program.exists():
                print(f"{program} is not built")
                sys.exit(77)
            done = subprocess.run([program, "-s", "-o", os.devnull, ",".join(names)], check=False,
                                  env={**os.environ, "MAINBORE_CHECK_LOG": str(log)}, stdout=subprocess.DEVNULL)
            if done.returncode != 0:
                sys.exit(f"test_{area} fails: the page is made of tests that hold")
        return log.read_text().splitlines()


def read_comparisons(lines, tables):
    for line in lines:
        where, column, _, expression = line.split("\t", 3)
        name, number = where.rsplit(":", 1)
        match = re.fullmatch(rf"({NUMBER}) == (?:Approx\( ({NUMBER}) \)|({NUMBER}))", expression.strip())
        if match:
            published = float(match.group(2) or match.group(3))
            column, text = tables[name].printed(int(number), column, published)
            tables[name].checks.append(Comparison(int(number), column, published, float(match.group(1)), text))


def public_functions(source):
    """{name: header} of the functions of the rooms of formulas."""
    found = {}
    for room in ROOMS:
        for header in sorted((source / "include/mainbore" / room).glob("*.hpp")):
            for line in header.read_text().splitlines():
                match = re.match(r"(?:\[\[nodiscard\]\] )?(?:constexpr |inline )*[\w:<>]+(?:<[\w:, ]+>)? (\w+)\(", line)
                if match and not line.startswith((" ", "/", "#")) and match.group(1) != "name_of":
                    found.setdefault(match.group(1), f"{room}/{header.name}")
    return found


def held_functions(source, functions):
    """{function: reference tables of the test cases that call it}"""
    held = {name: set() for name in functions}
    for _, _, body, text in test_cases(source):
        files = set(re.findall(r'ReferenceTable\s*\w*\(?"([\w.]+)"', body)) | set(re.findall(r'"(\w+\.csv)"', body))
        if not files:
            continue
        # What a helper of the file calls is called too.
        called = set(re.findall(r"\b(\w+)\(", body))
        for helper in called - set(functions):
            inner = (re.search(rf"^[\w:<>&* ]+ {helper}\([^;{{\n]*\{{([^\n]*)\}}$", text, re.M)
                     or re.search(rf"^[\w:<>&* ]+ {helper}\([^;{{]*\{{\n(.*?)^\}}", text, re.S | re.M))
            if inner:
                called |= set(re.findall(r"\b(\w+)\(", inner.group(1)))
        for name in called & set(functions):
            held[name] |= files
    return held


def mentioned(source, name):
    """How many unit tests call it, whatever they compare it with."""
    pattern = re.compile(rf"\b{name}\(")
    return sum(1 for path in (source / "tests/unit").rglob("*_test.cpp") if pattern.search(path.read_text()))


def recalled(source):
    """{data file: (numbers of columns or rows that are recalled, that are common practice)}, by their provenance."""
    counts = {}

    def walk(value, count):
        if isinstance(value, dict):
            for key, inner in value.items():
                if key == "how" and inner in count:
                    count[inner] += 1
                walk(inner, count)
        elif isinstance(value, list):
            for inner in value:
                walk(inner, count)

    for path in sorted((source / "data").rglob("*.json")):
        count = {"memory": 0, "common practice": 0}
        walk(json.loads(path.read_text()), count)
        if any(count.values()):
            counts[str(path.relative_to(source / "data"))] = count
    return counts


def short(text, most=130):
    text = text.replace("|", "/")
    return text if len(text) <= most else text[:most].rsplit(" ", 1)[0] + " ..."


def digits(value):
    return f"{value:.5g}"


def difference(check):
    return "0" if check.gap == 0 else f"{check.gap:.2g}" + (", rounding" if check.rounding else "")


def worst_of(table, count):
    """The comparisons that differ most, each kind of value by itself, by the share of the published value."""
    best = {}
    for check in table.checks:
        if check.column not in best or check.share > best[check.column].share:
            best[check.column] = check
    return sorted(best.values(), key=lambda check: (-check.share, check.line, check.column))[:count]


def weak_points(source):
    """The list of docs/method.md, as it stands."""
    text = (source / "docs/method.md").read_text()
    section = re.search(r"^## \d+\. What is weak\n(.*?)(?=^## |\Z)", text, re.S | re.M)
    return section.group(1).strip() if section else ""


def page(source, tables, functions, held):
    out = ["# What is checked against the outside", "",
           "Made by the tests (`python3 tests/verification/verification.py write`), which compare it; do not edit. Each line is a comparison of the",
           "program with a value from outside the project, kept under `tests/reference/` with its source. *Published* is a value that was read in",
           "the text named; *derived* was worked out apart from the program, by another formula or another program, and holds the arithmetic", 
           "but not the formula. Worst is the difference, as a share of the published value, of what half of its last printed digit does not explain.", ""]
    by_subject = collections.defaultdict(list)
    for table in tables.values():
        by_subject[table.subject].append(table)
    out += ["| subject | tables | rows | values compared | published | differ by more than rounding | worst |", "|---|---|---|---|---|---|---|"]
    for subject, title in SUBJECTS.items():
        group = by_subject[subject]
        checks = [check for table in group for check in table.checks]
        published = sum(len(table.checks) for table in group if not table.derived)
        worst = max((check.share for check in checks), default=None)
        out.append(f"| {title} | {len(group)} | {sum(table.rows for table in group)} | {len(checks)} | {published} | "
                   f"{sum(1 for check in checks if not check.rounding)} | "
                   f"{'answers, not numbers' if worst is None else f'{100 * worst:.2g} %'} |")
    total = sum(len(table.checks) for table in tables.values())
    out += [f"| all | {len(tables)} | {sum(t.rows for t in tables.values())} | {total} | "
            f"{sum(len(t.checks) for t in tables.values() if not t.derived)} | "
            f"{sum(1 for t in tables.values() for c in t.checks if not c.rounding)} | |", ""]

    none = sorted(name for name in functions if not held[name])
    out += ["## Held by nothing from outside", "",
            f"Of {len(functions)} public functions of formulas, {len(functions) - len(none)} are held by a value from outside. These are not; the number of test files",
            "that call each says what holds it instead: properties, worked cases, limits.", ""]
    out += ["| function | header | test files that call it |", "|---|---|---|"]
    out += [f"| `{name}` | `{functions[name]}` | {mentioned(source, name)} |" for name in none]
    data = sorted(str(path.relative_to(source / "data")) for path in (source / "data").rglob("*.json"))
    words = {"edition.json", "sources.json", "rules/sources.json", "material_names.json"}
    bare = [name for name in data if name not in DATA and name not in words]
    out += ["", "Of the tables under `data/`, no reference table holds: " + ", ".join(f"`{name}`" for name in bare) + ". Names and sources",
            "(" + ", ".join(f"`{name}`" for name in sorted(words)) + ") hold no numbers.", ""]

    out += ["## What could not be checked, and why", "",
            "What is recalled was read nowhere, so that nothing stands to compare it with; the program says \"check this value\" wherever a plan",
            "counts on it. Common practice has no publication. Groups of numbers by how they were had, in each file:", "",
            "| file | recalled | common practice |", "|---|---|---|"]
    out += [f"| `{name}` | {count['memory']} | {count['common practice']} |" for name, count in recalled(source).items()]
    out += ["", "From [method.md](method.md):", "", weak_points(source), ""]

    out += ["## By subject", "", "Of each table the three values that differ most, the worst first.", ""]
    for subject, title in SUBJECTS.items():
        group = sorted(by_subject[subject], key=lambda table: (-max((c.share for c in table.checks), default=-1.0), table.name))
        if not group:
            continue
        count = sum(len(table.checks) for table in group)
        out += ["<details>", f"<summary>{title}: {len(group)} tables, {count} values</summary>", "",
                "| table | source | had | values | tolerance | line, value | published | ours | difference |", "|---|---|---|---|---|---|---|---|---|"]
        for table in group:
            first = (f"| `{table.name}` | {short(table.source)} | {'derived' if table.derived else 'published'} | "
                     f"{len(table.checks) or str(table.rows) + ' answers'} | {table.tolerance if table.tolerance is not None else 'in the test'} |")
            worst = worst_of(table, 3)
            if not worst:
                out.append(first + " each row | an answer | the same | |")
            for check in worst:
                out.append(f"{first} {check.line}, {check.column} | {digits(check.published)} | {digits(check.ours)} | {difference(check)} |")
                first = "| | | | | |"
        out += ["", "</details>", ""]

    out += ["## Formulas and the tables that hold them", "", "<details>", f"<summary>{len(functions) - len(none)} functions</summary>", "",
            "| function | header | held by |", "|---|---|---|"]
    for name in sorted(functions):
        if held[name]:
            out.append(f"| `{name}` | `{functions[name]}` | {', '.join(f'`{file}`' for file in sorted(held[name]))} |")
    out += ["", "</details>", "", "## Data and the tables that hold it", "", "| file | held by |", "|---|---|"]
    out += [f"| `{name}` | {', '.join(f'`{file}`' for file in DATA[name])} |" for name in sorted(DATA)]
    out += ["", "Beside these, `tests/oracle/` judges random jobs with tables and formulas of its own, `tests/cross/` runs another library of fluids over",
            "random lines, and `tests/calc/` works every line of the calculation sheets out again from what is printed.", ""]
    return "\n".join(line.rstrip() for line in out)


def main():
    mode, tests, source = sys.argv[1], pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(sys.argv[3]).resolve()
    tables = {path.name: Table(path) for path in sorted((source / "tests/reference").glob("*.csv"))}
    missing = {file for files in DATA.values() for file in files} - set(tables)
    if missing or set(DATA) - {str(path.relative_to(source / "data")) for path in (source / "data").rglob("*.json")}:
        sys.exit(f"the list of data names what is not there: {missing}")
    read_comparisons(run_tests(tests, source), tables)
    functions = public_functions(source)
    made = page(source, tables, functions, held_functions(source, functions))
    path = source / "docs/verification.md"
    if mode == "write":
        path.write_text(made)
        return 0
    if path.exists() and path.read_text() == made:
        return 0
    print("docs/verification.md is not what the tests make; to bring it up to date:\n"
          f"  python3 tests/verification/verification.py write {tests} {source}")
    before = path.read_text().splitlines() if path.exists() else []
    for line in [line for line in made.splitlines() if line not in before][:10]:
        print("  " + line)
    return 1


if __name__ == "__main__":
    sys.exit(main())
