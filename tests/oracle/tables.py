"""Published tables of the oracle's own, and every pipe they list."""

import csv
import math
import pathlib
from collections import namedtuple

FOLDER = pathlib.Path(__file__).parent / "tables"

# od, nominal wall and least wall in inches; ratings in psi, None where nobody published one. `direct`: the largest
# direct tap in inches. `doubt`: recalled, so it may forbid a go and never allow one.
Pipe = namedtuple("Pipe", "material family cls size od wall least rating old_rating direct doubt")


def rows(name):
    with open(FOLDER / name, encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def number(text):
    """3/4, 1-1/4, 0.25 -> float."""
    whole, _, part = text.partition("-")
    if part:
        return float(whole) + number(part)
    above, _, below = whole.partition("/")
    return float(above) / float(below) if below else float(whole)


def casting_tolerance(size):
    """AWWA C150: recalled, but all published walls of the pressure classes agree with it."""
    return 0.05 if size <= 8 else 0.06 if size <= 12 else 0.07 if size <= 42 else 0.08 if size == 48 else 0.09


def iron_direct(size, wall):
    """Largest direct tap in ductile iron: the 3/4 in is published, the rest recalled."""
    if size <= 4:
        return 0.75
    if size <= 10:
        return 1.0
    if size == 12:
        return 1.25
    if size == 14:
        return 1.5 if wall >= 0.30 else 1.25 if wall >= 0.28 else 0.75
    if size == 16:
        return 2.0 if wall >= 0.32 else 1.5 if wall >= 0.30 else 0.75
    return 2.0


def ductile_iron():
    diameters = {}
    for row in rows("ductile_iron_pressure_class.csv"):
        size = int(row["nps"])
        diameters[size] = float(row["od_in"])
        for column, wall in row.items():
            if column.startswith("pc") and wall:
                wall = float(wall)
                yield Pipe("ductile iron", "pressure class", "PC " + column[2:], size, diameters[size], wall,
                           wall - casting_tolerance(size), float(column[2:]), None, iron_direct(size, wall), False)
    for row in rows("ductile_iron_thickness_class.csv"):
        size = int(row["nps"])
        for column, wall in row.items():
            if column.startswith("c") and wall:
                wall = float(wall)
                yield Pipe("ductile iron", "thickness class", "Class " + column[1:], size, diameters[size], wall,
                           wall - casting_tolerance(size), None, None, iron_direct(size, wall), False)


# Head of the classes of 1908 in feet: two groups are published, the pairing with the letters is recalled.
HEAD = {letter: 100 * (place + 1) for place, letter in enumerate("ABCDEFGH")}


def cast_iron():
    for row in rows("cast_iron_1908.csv"):
        size = int(row["nps"])
        wall = float(row["wall_in"])
        direct = 0.75 if size == 3 else 1.0 if size <= 24 else 0
        yield Pipe("cast iron", "1908", "Class " + row["class"], size, float(row["od_in"]), wall, None,
                   0.434 * HEAD[row["class"]], None, direct, False)


def pvc():
    pressures = {row["dr"]: row for row in rows("pvc_c900_pressure.csv")}
    for row in rows("pvc_c900.csv"):
        size = int(row["nps"])
        for column, wall in row.items():
            if column.startswith("dr") and wall:
                ratio = column[2:]
                old = pressures[ratio]["old_class"] if size <= 12 else ""
                direct = 1.0 if ratio in ("14", "18") and 6 <= size <= 12 else 0
                yield Pipe("PVC", "C900", "DR " + ratio, size, float(row["od_in"]), float(wall), float(wall),
                           float(pressures[ratio]["pressure_class"]), float(old) if old else None, direct, False)
    for row in rows("pvc_d2241.csv"):
        size = int(row["nps"])
        for column, wall in row.items():
            if column.startswith("sdr") and wall:
                ratio, pressure = column[3:-3].split("_")
                yield Pipe("PVC", "D2241", "SDR " + ratio, size, float(row["od_in"]), float(wall), float(wall),
                           float(pressure), None, 0, False)


def read_factors(name):
    return [(float(row["temp_f"]), float(row["factor"])) for row in rows(name)]


FACTORS = {"PVC": read_factors("pvc_temperature.csv"), "PVCO": read_factors("pvc_temperature.csv"),
           "polyethylene": read_factors("pe_temperature.csv")}


def temperature_factor(material, fahrenheit):
    points = FACTORS.get(material)
    if not points or fahrenheit <= points[0][0]:
        return 1.0
    for (low, at_low), (high, at_high) in zip(points, points[1:]):
        if fahrenheit <= high:
            return at_low + (at_high - at_low) * (fahrenheit - low) / (high - low)
    return 0.0


PIPES = [*ductile_iron(), *cast_iron(), *pvc()]
BY_MAIN = {}
for pipe in PIPES:
    BY_MAIN.setdefault((pipe.material, pipe.size), []).append(pipe)

NPT = {number(row["size"]): {key: float(value) for key, value in row.items() if key != "size" and value}
       for row in rows("npt.csv")}
BORES = {(column, number(row["nominal"])): float(value)
         for row in rows("tubing.csv") for column, value in row.items() if column != "nominal"}
for (tube, size), bore in list(BORES.items()):
    if tube == "SDR 9":
        BORES["polyethylene SDR 9", size] = BORES["PEX SDR 9", size] = bore


def drop(outside_diameter, hole):
    """Depth below the crown at which a round hole closes in the wall of a pipe."""
    radius, half = outside_diameter / 2, hole / 2
    return radius - math.sqrt(radius * radius - half * half)


def complete_threads(outside_diameter, wall, thread):
    return thread["tpi"] * (wall - drop(outside_diameter, thread["major"]))
