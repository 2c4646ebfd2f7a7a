#!/usr/bin/env python3
"""Each row of the tables is behind something: with a number of it changed, some plan or identification changes.

Usage: check_bites.py PROGRAM DATA. A row that nothing depends on is listed; it fails unless it is named below with a reason.
Of long tables of pipe one row in MAINBORE_TABLE_STEP (60) is tried; 1 tries all.
"""
import copy
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

PROGRAM, DATA = sys.argv[1], pathlib.Path(sys.argv[2])
STEP = int(os.environ.get("MAINBORE_TABLE_STEP", "60"))

DWELLING = "of rows with one name that of a dwelling is taken"
ONLY_SERVICE = "no service line is of it"
COUNTED = "a job counts elbows and couplings alone"
RANGES = "the published ranges that the rules' swell was taken from"
# "file /table": {words that begin the row: why nothing depends on it}.
UNUSED = {
    "disinfection.json /stock": {"sodium hypochlorite": "a stock at hand goes by its label, and none at hand by the weakest sold"},
    "fittings.json /awwa": {
        "elbow 90 (steel)": ONLY_SERVICE, "elbow 45": COUNTED, "tee side outlet": COUNTED, "straight tee run (steel)": COUNTED,
        "coupling (steel)": ONLY_SERVICE},
    "fixtures.json /ipc": {
        "bathtub public": DWELLING, "kitchen sink hotel/restaurant": DWELLING, "lavatory public": DWELLING,
        "shower head public": DWELLING, "washing machine 8 lb public": DWELLING, "water closet public flush": DWELLING},
    "roughness.json /hazen_williams": {"ductile iron": ONLY_SERVICE},
    "roughness.json /epsilon": {"galvanized steel": "steel in service is counted as rough as old iron"},
    "soils.json /swell": {"": RANGES},
    "threads.json /awwa taper": {
        "1-1/2": "no default allows a direct tap so large; a utility's rule may", "2 ": "no default allows a direct tap so large"},
}

MACHINE = {
    "title": "truck", "smallest_tap": "1/2 in", "largest_tap": "2 in", "hand_limit": "150 psi", "body_rating": "300 psi",
    "bar_diameter": "1 in", "bar_travel": "20 in", "standoff": "6 in", "saddle_od_from": "2 in", "saddle_od_to": "60 in",
    "chain_length": "57 in", "chain_extension": "24 in", "anchor_offset": "3 in", "anchor_height": "4 in",
    "chain_thickness": "0.6 in", "gasket_diameter": "3.25 in", "stud_diameter": "0.75 in", "adapter_standoff": "2 in"}


def job(main=None, service=None, **more):
    facts = {"main": {"material": "ductile iron", "size": "12 in", "class": "Class 56", "pressure": "70 psi"} | (main or {}),
             "service": {"size": "1 in"} | (service or {})}
    return facts | more


def choices(path):
    """The words that the schema of a job has for a fact."""
    node = SCHEMA
    for key in path.split("."):
        node = node["properties"][key]
    return node["anyOf"][0]["enum"]


def line(material, size, **more):
    return {"size": size, "line": {"material": material, "length": "80 ft", "elbows": 3, "couplings": 2} | more,
            "demand": {"flow": "12 gpm"}}


def probes(file, table):
    tubings = choices("service.line.material")
    codes = choices("service.demand.code")
    sizes = ["1/2 in", "5/8 in", "3/4 in", "1 in", "1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in", "3 in", "4 in", "6 in", "8 in",
             "10 in", "12 in"]
    if file in ("tubing.json", "fittings.json", "roughness.json"):
        return [job(service=line(t, s, friction=f)) for t in tubings for s in sizes for f in ("Hazen-Williams", "Darcy-Weisbach")]
    if file == "water.json":
        return [job({"temperature": f"{t} degF"}, line("copper type K", "1 in", friction="Darcy-Weisbach"))
                for t in range(33, 110, 3)]
    if file == "meters.json":
        return [job(service=line("copper type K", "2 in") | {"meter": m, "demand": {"flow": f"{q} gpm"}})
                for m in ["5/8 in", "3/4 in", "1 in", "1-1/2 in", "2 in", "3 in", "4 in"]
                for q in [*range(1, 20), *range(20, 100, 5), *range(100, 520, 20)]]
    if file == "demand_curves.json":
        return [job(service=line("copper type K", "2 in") | {"demand": {"fixture_units": u, "code": c, "supply": s}})
                for c in codes for s in ("flush tank", "flush valve")
                for u in [*range(1, 40), *range(40, 300, 9), *range(300, 6000, 140)]]
    if file == "fixtures.json":
        names = sorted({row[0] for row in table["rows"]})
        return [job(service=line("copper type K", "2 in") | {"demand": {"fixtures": f"2 {n}", "code": c, "supply": s}})
                for n in names for c in codes for s in ("flush tank", "flush valve")]
    if file == "soils.json":
        return [job({"cover": "6 ft"}, excavation={"soil": s, "earth": e, "located": True})
                for s in choices("excavation.soil") for e in choices("excavation.earth")]
    if file == "disinfection.json":
        return [job(service=line("copper type K", s), sanitary=c) for s in ("1 in", "2 in", "4 in")
                for c in ({}, {"stock": 5.25}, {"stock": 12.5}, {"stock": 65})]
    if file == "temperature_factors.json":
        return [job({"material": m, "size": "8 in", "class": "", "temperature": f"{t} degF"})
                for m in ("PVC", "PVCO", "polyethylene") for t in range(60, 145, 3)]
    if file in ("threads.json", "stops.json", "materials.json", "machines.json"):
        return [job({"material": m, "class": ""}, {"size": s, "thread": t, "method": "direct"}, **({} if own is None else {"machine": own}))
                for m in ("ductile iron", "cast iron", "steel", "PVC", "polyethylene", "galvanized steel", "copper", "asbestos cement")
                for s in sizes for t in ("NPT", "AWWA taper", "ISO 7-1") for own in (None, MACHINE)]
    if file == "metric_sizes.json":
        return [j for row in table["rows"] for j in (job({"size": f"DN {row[0]}", "class": ""}), job(service={"size": f"DN {row[0]}"}))]
    return []


def pipe_probes(series, row, columns):
    """Of one pipe: by its class, with a wall read, and asked for directly."""
    cell = dict(zip(columns, row))
    main = {"material": series["material"], "size": f"{cell['size']} in", "class": cell.get("class") or "", "pressure": "60 psi"}
    if series["material"] == "PVC" or series["material"] == "PVCO":
        main["standard"] = series["standard"].removeprefix("AWWA ").split()[-1] if series["standard"].startswith("AWWA") else "D2241"
    if not main["class"]:
        del main["class"]
    jobs = []
    for service in ({"size": "3/4 in"}, {"size": "1 in", "method": "direct"}):
        jobs.append({"main": main, "service": service, "machine": MACHINE})
        jobs.append({"main": main | {"temperature": "100 degF"}, "service": service})
        if cell.get("wall"):
            jobs.append({"main": main | {"wall": f"{0.9 * cell['wall']:.3f} in"}, "service": service})
    return jobs


def answers(data, jobs, more):
    text = "".join(json.dumps(j) + "\n" for j in jobs)
    command = [PROGRAM, "batch", "-", "--in", "ndjson", "--format", "ndjson", "--full", "--data", str(data)]
    ran = subprocess.run(command, input=text, capture_output=True, text=True)
    out = ran.stdout if ran.returncode in (0, 1, 2, 3) else None
    for arguments in more:
        ran = subprocess.run([PROGRAM, *arguments, "--data", str(data)], capture_output=True, text=True)
        out = None if out is None or ran.returncode not in (0, 1, 3) else out + ran.stdout
    return out


def tables_of(value, path=""):
    if isinstance(value, dict):
        if "rows" in value:
            yield path, value
        for key, inner in value.items():
            yield from tables_of(inner, f"{path}/{key}")
    elif isinstance(value, list):
        for i, inner in enumerate(value):
            if isinstance(inner, dict):
                yield from tables_of(inner, f"{path}/{i}")


def numbers_in(row):
    return [i for i, cell in enumerate(row) if isinstance(cell, (int, float)) and not isinstance(cell, bool)]


def changes_of(number):
    """Other numbers in its place, the nearest first: a table may refuse what no pipe can be."""
    if isinstance(number, int):
        return [number + 1, number - 1, number + 10, max(number // 2, 1), number * 2]
    return [number * 1.02, number * 0.98, number * 1.1, number * 0.9, number * 1.001]


def bites(folder, file, document, row, at, usual, ask):
    kept = row[at]
    for number in changes_of(kept):
        if number == kept:
            continue
        row[at] = number
        (folder / file).write_text(json.dumps(document))
        got = ask()
        row[at] = kept
        if got is not None and got != usual:
            return True
    return False


def main():
    global SCHEMA
    SCHEMA = json.loads(subprocess.run([PROGRAM, "schema", "job"], capture_output=True, text=True, check=True).stdout)
    failed = tried = 0
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name) / "data"
        shutil.copytree(DATA, folder)
        for path in sorted(DATA.rglob("*.json")):
            file = str(path.relative_to(DATA))
            document = json.loads(path.read_text())
            for where, table in tables_of(document):
                unused = UNUSED.get(f"{file} {where}", {})
                rows = table["rows"]
                pipe = file.startswith("pipes/") and where.count("/") == 2
                series = document["series"][int(where.split("/")[2])] if pipe else None
                jobs = [] if pipe else probes(file, table)
                usual = None if pipe else answers(folder, jobs, [])
                if not pipe and not jobs:
                    continue
                for n, row in enumerate(rows):
                    if pipe and n % STEP:
                        continue
                    label = " ".join(str(cell) for cell in row if not isinstance(cell, list))[:60]
                    if any(label.startswith(words) for words in unused):
                        continue
                    more = []
                    if pipe:
                        columns = table["columns"]
                        jobs = pipe_probes(series, row, columns)
                        od = row[columns.index("od")]
                        more = [["identify", "--od", f"{od} in", "--format", "json"]] if od else []
                        usual = answers(folder, jobs, more)
                    cells = numbers_in(row)
                    cells = cells[n % len(cells):] + cells[:n % len(cells)] if cells else []
                    tried += 1
                    if cells and not any(bites(folder, file, document, row, at, usual, lambda: answers(folder, jobs, more)) for at in cells):
                        print(f"{file} {where}: nothing depends on row {n + 1}: {label}")
                        failed += 1
            (folder / file).write_text(path.read_text())
    print(f"{tried} rows, {failed} that nothing depends on")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
