"""Random jobs over the whole input space, each with the figures it was made from.

A Case holds the job as the program reads it and, in `figures`, the same facts as plain numbers (inches, psi, degF).
"""

import copy
import json
import math
import shlex

import tables

MATERIALS = ["ductile iron"] * 5 + ["cast iron"] * 4 + ["PVC"] * 6 + ["PVCO", "polyethylene", "polyethylene",
             "asbestos cement", "steel", "concrete cylinder", "galvanized steel", "copper"]
MAIN_SIZES = {"ductile iron": [3, 4, 6, 8, 10, 12, 14, 16, 18, 20, 24, 30, 36, 48],
              "cast iron": [3, 4, 6, 8, 10, 12, 14, 16, 20, 24, 30], "PVC": [3, 4, 6, 8, 10, 12, 14, 16, 20, 24, 30]}
OTHER_SIZES = [2, 3, 4, 6, 8, 10, 12, 16, 24]
TAPS = [0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 6]
NAMES = {0.5: "1/2 in", 0.625: "5/8 in", 0.75: "3/4 in", 1.25: "1-1/4 in", 1.5: "1-1/2 in", 2.5: "2-1/2 in"}
THREADS = ["AWWA taper", "NPT", "ISO 7-1"]
THINGS = ["joint", "bell", "fitting", "valve", "tap", "saddle", "repair clamp", "defect", "hydrant", "sewer",
          "gas line", "electric line", "other"]
CLOCKS = ["12:00", "1:00", "1:30", "2:00", "3:00", "4:30", "6:00", "9:00", "10:30", "11:00"]


def size_name(size):
    return NAMES.get(size) or f"{size:g} in"


def inches(value):
    return f"{value:.6g} in"


def psi(value):
    return f"{value:.6g} psi"


class Case:
    __slots__ = ("job", "figures")

    def __init__(self, job, figures):
        self.job = job
        self.figures = figures

    def copy(self):
        return Case(copy.deepcopy(self.job), dict(self.figures))

    def text(self):
        return json.dumps(self.job, separators=(",", ":"))

    def command(self):
        return command(self.job)


def command(job):
    """The job as a command to repeat it."""
    words = ["mainbore", "plan"]

    def walk(value, path):
        if isinstance(value, dict):
            for key, inner in value.items():
                walk(inner, f"{path}.{key}" if path else key)
        elif isinstance(value, list):
            if not value:
                words.append("--set " + path + "=none")
            for place, inner in enumerate(value):
                walk(inner, f"{path}[{place}]")
        else:
            words.append("--set " + shlex.quote(f"{path}={str(value).lower() if isinstance(value, bool) else value}"))

    walk(job, "")
    return " ".join(words)


def always(_):
    return True


def never(_):
    return False


def class_words(pipe, choose):
    """A class as somebody may write it on a card: the text, which pipes of the tables it can mean, what it forbids.

    Forbids: None, "direct" (no direct tap can be a go on these words), "go" (nothing can: they contradict the main) or
    "old name" (nothing, but the name is of the edition before 2007).
    """
    kind = choose.random()
    if kind < 0.20:
        return None, always, None
    material = pipe.material
    if material == "ductile iron":
        if kind < 0.90:
            digits = pipe.cls.split()[1]
            text = choose.choice(["PC {}", "PC{}", "Pressure Class {}"] if pipe.family == "pressure class"
                                 else ["Class {}", "class {}", "Thickness Class {}"]).format(digits)
            return text, (lambda row: row.cls == pipe.cls), None
        if kind < 0.95:
            return "C151", always, None
        return choose.choice(["DR 18", "C900 DR 14", "SDR 21", "Class 49", "PC 375"]), never, "go"
    if material == "cast iron":
        if kind < 0.92:
            return pipe.cls, (lambda row: row.cls == pipe.cls), None
        return choose.choice(["DR 18", "C900", "PC 350"]), never, "go"
    ratio = pipe.cls.split()[1]
    if kind > 0.94:
        return choose.choice(["C909 PC 235", "C909 Class 150", "C909"]), never, "direct"
    if kind > 0.90:
        return choose.choice(["C906 DR 18", "PC 350", "Class 52", "DR 19", "C151 Class 52"]), never, "go"
    if pipe.family == "D2241":
        if kind < 0.70:
            return choose.choice(["SDR {}", "D2241 SDR {}"]).format(ratio), (lambda row: row.cls == pipe.cls), None
        rating = pipe.rating
        return f"D2241 {rating:g} psi", (lambda row: row.family == "D2241" and row.rating == rating), None
    if kind < 0.65:
        standard = "C905 " if pipe.size >= 14 and choose.random() < 0.5 else choose.choice(["C900 ", ""])
        if standard:
            return f"{standard}DR {ratio}", (lambda row: row.cls == pipe.cls), None
        return f"DR {ratio}", (lambda row: row.cls.split()[1] == ratio), None
    if pipe.old_rating and kind < 0.80:
        old = pipe.old_rating
        if choose.random() < 0.5:
            return f"C900 Class {old:g}", (lambda row: row.old_rating == old), "old name"
        # Bare, it may also be the rating of a pipe of iron pipe size.
        either = lambda row: row.old_rating == old or (row.family == "D2241" and row.rating == old)
        return f"Class {old:g}", either, "old name"
    rating = pipe.rating
    return f"C900 PC {rating:g}", (lambda row: row.family == "C900" and row.rating == rating), None


def make_main(choose, figures):
    material = choose.choice(MATERIALS)
    size = choose.choice(MAIN_SIZES.get(material, OTHER_SIZES))
    figures.update(material=material, size=size)
    main = {"material": material, "size": f"{size} in"}
    if choose.random() < 0.04 and size in (3, 4, 6, 8, 10, 12, 16, 24):
        metric = {3: 80, 4: 100, 6: 150, 8: 200, 10: 250, 12: 300, 16: 400, 24: 600}[size]
        main["size"] = choose.choice([f"DN {metric}", f"{metric} mm"])
        figures["metric"] = True
    pipes = tables.BY_MAIN.get((material, size))
    chance = choose.random
    if pipes:
        pipe = choose.choice(pipes)
        figures["pipe"] = pipe
        text, fits, forbids = class_words(pipe, choose)
        if text:
            main["class"] = text
        figures.update(fits=fits, forbids=forbids, card=text)
        diameter, wall = pipe.od, pipe.wall
    else:
        figures.update(fits=always, forbids=None)
        diameter = size * choose.uniform(1.05, 1.2)
        wall = diameter * choose.uniform(0.03, 0.12)
        if material in ("polyethylene", "PVCO"):
            ratio = choose.choice(["9", "11", "13.5", "17", "21", "26"])
            if chance() < 0.8 and material == "PVCO":
                figures["pvco_class"] = choose.choice([165, 235, 305])
                main["class"] = f"PC {figures['pvco_class']}"
            elif chance() < 0.8:
                figures["ratio"] = float(ratio)
                main["class"] = f"DR {ratio}"
            if material == "polyethylene":
                diameter = choose.choice([4.8, 6.9, 9.05, 11.1, 13.2]) if size not in (4, 6, 8, 10, 12) else \
                    choose.choice([{4: 4.8, 6: 6.9, 8: 9.05, 10: 11.1, 12: 13.2}[size],
                                   {4: 4.5, 6: 6.625, 8: 8.625, 10: 10.75, 12: 12.75}[size]])
                wall = diameter / float(ratio)
        elif material == "asbestos cement" and chance() < 0.8:
            figures["ac_class"] = choose.choice([100, 150, 200])
            main["class"] = f"Class {figures['ac_class']}"
            wall = diameter * 0.09
    if chance() < 0.06:
        diameter *= choose.uniform(0.85, 1.15)
    if chance() < 0.65:
        around = math.floor(diameter * math.pi * 16 + choose.uniform(-0.6, 1.4)) / 16
        main["circumference"] = inches(around)
        figures["circumference"] = around
    elif chance() < 0.15:
        figures["od"] = round(diameter + choose.uniform(-0.02, 0.02), 2)
        main["od"] = inches(figures["od"])
    if chance() < (0.8 if material == "cast iron" else 0.4):
        share = choose.choice([1, 1, 1, 1.02, 1.05, 1.1, 0.95, 0.9, 0.8, 0.6, 1.3])
        reading = max(0.04, round(wall * share, choose.choice([2, 2, 3])))
        main["wall"] = inches(reading)
        figures["wall"] = reading
    return main


def make_pressures(choose, main, figures):
    chance = choose.random
    line = choose.choice([30, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 110, 125, 150, 175, 200, 251])
    if chance() < 0.5:
        line = min(line, choose.choice([40, 60, 80]))
    main["pressure"] = psi(line)
    figures["line"] = line
    if chance() < 0.6:
        figures["surge"] = choose.choice([0, 10, 20, 20, 30, 40, 60, 100])
        main["surge"] = psi(figures["surge"])
    if chance() < 0.1:
        figures["occasional"] = choose.choice([20, 60, 100, 150, 200, 250])
        main["occasional_surge"] = psi(figures["occasional"])
    if chance() < (0.5 if figures["material"] in ("steel", "concrete cylinder", "galvanized steel") else 0.05):
        figures["rating"] = choose.choice([60, 100, 150, 200, 250])
        main["rating"] = psi(figures["rating"])


def make_state(choose, main, figures):
    chance = choose.random
    if chance() < 0.94:
        figures["carries"] = main["carries"] = choose.choice(["water"] * 40 + ["unknown", "reclaimed water", "raw water",
                                                                               "sewage", "gas", "petroleum", "other"])
    if chance() < 0.92:
        figures["condition"] = main["condition"] = choose.choice(["sound"] * 20 + ["pitted", "poor"])
    if chance() < 0.85:
        figures["installed"] = main["installed"] = choose.choice(
            [1885, 1910, 1925, 1931, 1950, 1962, 1975, 1985, 1990, 1998, 2004, 2006, 2007, 2008, 2012, 2018])
    if chance() < 0.9:
        figures["curved"] = main["curved"] = chance() < 0.05
    if chance() < 0.9:
        figures["encased"] = main["encased"] = chance() < 0.1
    if chance() < 0.9:
        figures["temperature"] = choose.choice([45, 50, 55, 60, 60, 65, 70, 73, 78, 85, 90, 95, 110, 141, 34, 31, 10])
        main["temperature"] = f"{figures['temperature']} degF"
    if chance() < 0.05:
        figures["dry"] = True
        main["pressurized"] = False
    if chance() < 0.1:
        main["cover"] = choose.choice(["0 ft", "3 ft", "4 ft 6 in", "12 ft"])


def make_nearby(choose, job, figures):
    chance = choose.random
    if chance() < 0.06:
        return
    things = []
    for _ in range(choose.choice([0, 0, 1, 1, 2, 3])):
        what = choose.choice(THINGS)
        along = round(choose.uniform(1, 12) * choose.choice([-1, 1]), 1)
        thing = {"what": what, "along": f"{along} ft"}
        clock = None
        if what in ("tap", "saddle") and chance() < 0.8:
            clock = thing["clock"] = choose.choice(CLOCKS)
        things.append((what, along, clock))
        job.setdefault("nearby", []).append(thing)
    job.setdefault("nearby", [])
    figures["nearby"] = things


def make_service(choose, job, figures):
    chance = choose.random
    tap = choose.choice([0.5, 0.625, 0.75, 0.75, 0.75, 1, 1, 1, 1, 1.25, 1.5, 2, 2, 2.5, 3, 4, 6])
    figures["tap"] = tap
    service = {"size": size_name(tap)}
    if chance() < 0.04:
        figures["unmade"] = True
        service["size"] = choose.choice(["0.6 in", "0.8 in", "0.9 in", "22 mm", "1.1 in"])
        figures["tap"] = {"0.6 in": 0.6, "0.8 in": 0.8, "0.9 in": 0.9, "22 mm": 0.866, "1.1 in": 1.1}[service["size"]]
    if chance() < 0.85:
        figures["thread"] = service["thread"] = choose.choice(["AWWA taper", "NPT", "NPT", "ISO 7-1"])
    if chance() < 0.4:
        figures["method"] = service["method"] = choose.choice(["direct", "direct", "saddle", "saddle", "sleeve"])
    if chance() < 0.5:
        figures["clock"] = service["clock"] = choose.choice(CLOCKS)
    for name, usual in (("stop_rating", [75, 100, 150, 200, 300]), ("saddle_rating", [100, 150, 200, 250])):
        if chance() < 0.7:
            figures[name] = choose.choice(usual)
            service[name] = psi(figures[name])
    if chance() < 0.1:
        service["existing"] = choose.choice(["none", "copper", "plastic", "galvanized", "lead"])
    if chance() < 0.8:
        figures["stop_length"] = choose.choice([3, 3.5, 4, 5])
        service["stop_length"] = inches(figures["stop_length"])
    if chance() < 0.8:
        figures["saddle_height"] = choose.choice([0.75, 1, 1.5])
        service["saddle_height"] = inches(figures["saddle_height"])
    if chance() < 0.25:
        make_line(choose, service, figures)
    job["service"] = service


def make_line(choose, service, figures):
    chance = choose.random
    material = choose.choice(["copper type K", "copper type L", "polyethylene SDR 9", "PEX SDR 9"])
    length = choose.choice([20, 60, 120, 250])
    line = {"material": material, "length": f"{length} ft"}
    figures.update(tube=material, length=length, line_size=figures["tap"])
    if chance() < 0.5:
        figures["line_size"] = choose.choice([0.75, 0.75, 1, 1.25, 1.5, 2, 0.6, 1.1, 50])
        line["size"] = size_name(figures["line_size"])
    if chance() < 0.5:
        figures["rise"] = choose.choice([-10, 0, 10, 30])
        line["rise"] = f"{figures['rise']} ft"
    if chance() < 0.3:
        line["elbows"] = choose.randrange(6)
    if chance() < 0.8:
        figures["flow"] = choose.choice([5, 8, 12, 18, 25, 40, 80])
        service["demand"] = {"flow": f"{figures['flow']} gpm"}
    service["line"] = line


def make_machine(choose, job, figures):
    chance = choose.random
    if chance() < 0.1:
        job["machine"] = {"feed": choose.choice(["hand", "powered"])}
        figures["feed"] = job["machine"]["feed"]
        return
    if chance() < 0.1:
        return
    pick = choose.choice
    given = {"smallest_tap": pick([0.5, 0.5, 0.75]), "largest_tap": pick([1, 2, 2, 2, 6]),
             "hand_limit": pick([80, 100, 100, 150]), "body_rating": pick([100, 150, 200, 250, 300]),
             "bar_diameter": pick([0.75, 1, 1.25]), "powered_limit": pick([100, 150, 250]),
             "bar_travel": pick([6, 9, 14, 18, 24]), "standoff": pick([3, 4, 4.5]),
             "saddle_od_from": pick([3, 4.5, 4.5, 6]),
             "saddle_od_to": pick([9.05, 14, 14, 34]), "chain_length": pick([24, 36, 48, 60, 120]),
             "chain_extension": pick([12, 24]), "anchor_offset": pick([2, 2.5, 3, 3.5]),
             "anchor_height": pick([1.5, 2, 2.5]),
             "chain_thickness": pick([0.4, 0.5]), "gasket_diameter": pick([2, 2.25, 2.5, 3]),
             "stud_diameter": pick([0.5, 0.625, 0.75]), "adapter_standoff": pick([1, 2, 3]),
             "valve_height": pick([2, 3]), "feed_pitch": 0.125}
    required = ("smallest_tap", "largest_tap", "hand_limit", "body_rating", "bar_diameter")
    for name in list(given):
        if name not in required and chance() < 0.015:
            del given[name]
    if chance() < 0.4:
        given.pop("powered_limit", None)
    machine = {"title": "the crew's machine"}
    for name, value in given.items():
        machine[name] = psi(value) if name.endswith(("limit", "rating")) else \
            size_name(value) if name.endswith("_tap") else inches(value)
    if chance() < 0.97:
        machine["studs"] = pick([2, 2, 4])
    machine["extensions"] = given["extensions"] = pick([0, 1, 2, 4])
    machine["feed"] = given["feed"] = pick(["hand", "hand", "powered"])
    job["machine"] = machine
    figures["machine"] = given
    figures["feed"] = given["feed"]
    if chance() < 0.9:
        job["tool"] = {"length": inches(pick([3, 4, 5])), "lead": inches(pick([1, 1.5, 2])),
                       "insertion_length": inches(pick([3, 4, 5]))}


LAID = {"ductile iron": [1975, 1990, 2004, 2012], "cast iron": [1885, 1910, 1925, 1931, 1950],
        "PVC": [1985, 1998, 2006, 2007, 2008, 2012, 2018], "PVCO": [2004, 2012], "polyethylene": [1998, 2012],
        "asbestos cement": [1950, 1962], "galvanized steel": [1925, 1950]}


def tame(choose, job, figures):
    """Most jobs of a week are plain. Takes out what would hold nearly any, so that many are a go."""
    main, service = job["main"], job["service"]
    main.update(carries="water", condition="sound")
    figures.update(carries="water", condition="sound")
    if figures["line"] > 90:
        figures["line"] = choose.choice([40, 55, 70, 80])
        main["pressure"] = psi(figures["line"])
    if figures.get("surge", 40) > 40:
        figures["surge"] = 20
        main["surge"] = psi(20)
    if figures["tap"] > 2:
        if figures.get("line_size") == figures["tap"]:
            figures["line_size"] = 1
        figures["tap"] = 1
        service["size"] = "1 in"
    if figures.get("clock") not in (None, "1:30", "3:00", "10:30"):
        figures["clock"] = service["clock"] = "2:00"
    if "line_size" in figures and choose.random() < 0.5:
        for name in ("tube", "length", "line_size", "rise", "flow"):
            figures.pop(name, None)
        service.pop("line")
        service.pop("demand", None)
    if "nearby" not in figures or choose.random() < 0.6:
        figures["nearby"] = []
        job["nearby"] = []
    if choose.random() < 0.8:
        figures["installed"] = main["installed"] = choose.choice(LAID.get(figures["material"], [1975, 1990]))
        figures["temperature"] = choose.choice([45, 55, 60, 60, 70, 75])
        main["temperature"] = f"{figures['temperature']} degF"
    for name, least in (("stop_rating", 100), ("saddle_rating", 150)):
        if figures.get(name, 999) < least:
            figures[name] = least
            service[name] = psi(least)
    machine = figures.get("machine")
    if machine and choose.random() < 0.8:
        easy = {"largest_tap": 2, "hand_limit": 100, "body_rating": 200, "bar_travel": 18, "saddle_od_from": 3,
                "saddle_od_to": 34, "chain_length": 120, "stud_diameter": 0.75, "standoff": 4, "anchor_offset": 3, "adapter_standoff": 1,
                "valve_height": 3, "gasket_diameter": 3}
        machine.update(easy, feed="hand")
        figures["feed"] = job["machine"]["feed"] = "hand"
        for name, value in {**easy, "stop_length": 3.5, "saddle_height": 1}.items():
            if name in ("stop_length", "saddle_height"):
                figures[name] = value
                service[name] = inches(value)
                continue
            job["machine"][name] = psi(value) if name.endswith(("limit", "rating")) else \
                size_name(value) if name.endswith("_tap") else inches(value)


def make(choose, known):
    """A random job of facts the program knows (`known`: their paths)."""
    figures = {}
    job = {"main": make_main(choose, figures)}
    make_pressures(choose, job["main"], figures)
    make_state(choose, job["main"], figures)
    make_nearby(choose, job, figures)
    make_service(choose, job, figures)
    make_machine(choose, job, figures)
    if choose.random() < 0.7:
        tame(choose, job, figures)
    for section in ("service", "machine", "tool"):
        if section in job:
            for name in [name for name in job[section] if f"{section}.{name}" not in known]:
                del job[section][name]
            if not job[section]:
                del job[section]
    return Case(job, figures)
