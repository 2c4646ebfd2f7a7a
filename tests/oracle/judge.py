"""What a go may not be: each function yields a reason why this tap breaks a limit in some pipe that the facts allow."""

import math

import tables

CLEARANCES = {"joint": 2, "bell": 2, "fitting": 2, "valve": 2, "tap": 1.5, "saddle": 1.5, "repair clamp": 2, "defect": 2,
              "hydrant": 2, "sewer": 2, "gas line": 2, "electric line": 2, "other": 1}  # feet
PLASTIC = ("PVC", "PVCO", "polyethylene")
NO_THREAD = ("PVCO", "polyethylene", "asbestos cement", "steel", "concrete cylinder", "galvanized steel", "copper")
WALL_UNCERTAINTY = 0.01
NEAR = 0.02  # inches of diameter by which a doubtful reading is given the benefit of the doubt
TUBING = {"polyethylene SDR 9": 200, "PEX SDR 9": 160}  # psi at 73 degF; recalled
OLD_SURGE = 41  # psi: the most that any reading of the old edition counts for a stop of 2 ft/s


def diameter_read(figures):
    if "circumference" in figures:
        return figures["circumference"] / math.pi, 0.125 / math.pi
    if "od" in figures:
        return figures["od"], 0.03
    return None, None


def candidates(figures):
    """Pipes of the tables that the words and the readings allow; the oracle is strict in what it lets in."""
    pipes = [p for p in tables.BY_MAIN.get((figures["material"], figures["size"]), ()) if figures["fits"](p)]
    year = figures.get("installed")
    if figures["material"] == "PVC" and year and year < 2007:
        pipes = [p for p in pipes if p.family != "C900" or p.old_rating or p.size > 12]
    read, off = diameter_read(figures)
    if read:
        allowed = 0.04 if figures["material"] == "cast iron" else 0.005
        pipes = [p for p in pipes if abs(p.od - read) <= off + allowed]
    wall = figures.get("wall")
    if wall:
        if figures["material"] == "PVC":
            pipes = [p for p in pipes if p.wall - 0.005 <= wall <= 1.10 * p.wall]
        else:
            pipes = [p for p in pipes if wall <= p.wall + 0.03]
    return pipes


def of_identity(figures, method):
    if figures.get("carries") != "water":
        yield "the main is not proved to carry water"
    if figures.get("condition") != "sound":
        yield "nobody has found the main sound"
    if "nearby" not in figures:
        yield "nobody has looked what lies near"
    if figures.get("forbids") == "go":
        yield f"the class {figures['card']!r} contradicts the main"
    if figures.get("forbids") == "direct" and method == "direct":
        yield f"the class {figures['card']!r} is of pipe that holds no thread"
    named = (figures.get("card") or "").startswith(("C900", "C905", "D2241", "C151"))  # then the standard tells the diameter
    if figures.get("metric") and not named and "circumference" not in figures and "od" not in figures:
        yield "a metric size says nothing sure of the diameter, and nobody measured it"
    if figures.get("unmade"):
        yield "no thread and no stop is made in this size"


def of_readings(figures):
    read, off = diameter_read(figures)
    pipes = tables.BY_MAIN.get((figures["material"], figures["size"]))
    if read and pipes and all(abs(p.od - read) > off + 0.15 for p in pipes):
        if figures["material"] != "ductile iron" or figures["size"] < 54:
            yield f"no such main measures {read:.2f} in across"
    wall = figures.get("wall")
    if wall and pipes and figures["material"] == "PVC" and wall < min(p.wall for p in pipes) - 0.02:
        yield f"no such pipe is as thin as {wall} in when it is sound"


def of_direct(figures, tap):
    material = figures["material"]
    if material in NO_THREAD:
        yield f"{material} takes no thread"
        return
    if material == "PVC":
        if figures.get("curved") is not False:
            yield "a plastic main that may be bent takes no direct tap"
        if tap > 1 or not 6 <= figures["size"] <= 12:
            yield "PVC takes no direct tap of this size here"
        temperature = figures.get("temperature")
        low, high = (0, 100) if figures.get("dry") else (32, 90)
        if temperature is None or not low <= temperature <= high:
            yield f"plastic is tapped between {low} and {high} degF"
        if figures.get("thread", "AWWA taper") != "AWWA taper":
            yield "PVC takes the corporation taper alone"
    if material == "cast iron" and "wall" not in figures:
        yield "old iron takes a thread where its wall was gauged, not else"
    if "machine" not in figures:
        yield "the machine's figures are not known"
    read, _ = diameter_read(figures)
    for pipe in candidates(figures):
        if tap > pipe.direct:
            yield f"{pipe.family} {pipe.cls} fits, and takes {pipe.direct or 'no'} in at most"
        thread = tables.NPT.get(tap)
        if figures.get("thread") == "NPT" and thread and material != "PVC":
            wall = figures["wall"] - WALL_UNCERTAINTY if "wall" in figures else pipe.least
            threads = tables.complete_threads(read or pipe.od, wall, thread) if wall else 0
            if threads < 2 - 0.02:
                yield f"{pipe.family} {pipe.cls} fits, and holds {threads:.2f} threads in {wall:.3f} in of wall"
        if thread and thread["major"] > 0.35 * pipe.od * 1.005 and figures.get("thread") == "NPT":
            yield f"the hole is over 0.35 of {pipe.od} in"


def of_saddle(figures):
    read, _ = diameter_read(figures)
    pipes = candidates(figures)
    if not read and not pipes:
        if figures["material"] in ("asbestos cement", "concrete cylinder"):
            yield "nobody measured a main that no table lists"
    if not read and pipes and max(p.od for p in pipes) - min(p.od for p in pipes) > 0.12:
        yield "the diameter is not settled: " + ", ".join(sorted({f"{p.od} in" for p in pipes}))
    if figures["tap"] > 0.5 * (read or figures["size"] * 1.2):
        yield "the hole is over half of the main"
    if figures["size"] < 3 and figures["material"] != "galvanized steel":
        yield "the main is too small for a saddle"


def rated(figures, pipe):
    """The rating of a pipe as the year and the words on the card leave it, and the surge inside it."""
    if pipe.old_rating is None:
        return pipe.rating, 0
    words = figures.get("card") or ""
    year = figures.get("installed")
    if "PC" in words or (year and year >= 2007 and figures.get("forbids") != "old name"):
        return pipe.rating, 0
    return pipe.old_rating, OLD_SURGE


def of_pressure(figures, method):
    line = figures["line"]
    surge = figures.get("surge", 40)
    most = max(surge, figures.get("occasional", 0))
    material = figures["material"]
    factor = tables.temperature_factor(material, figures.get("temperature", 60))
    limits = []
    if "rating" in figures:
        limits.append(("the rating stated by the utility", figures["rating"] * factor * 1.001))
    else:
        for pipe in candidates(figures):
            if pipe.rating is None:
                continue
            rating, inside = rated(figures, pipe)
            rating *= factor
            name = f"{pipe.family} {pipe.cls} fits, and its"
            limits.append((f"{name} rating", rating))
            if material in ("ductile iron",):
                limits.append((f"{name} rating with surge", rating + 100 - surge))
            elif material == "PVC":
                limits.append((f"{name} rating with recurring surge", rating + inside - surge))
                limits.append((f"{name} 1.6 times rating with surge", 1.6 * rating - most))
        if "ratio" in figures:  # the strongest polyethylene that is made
            limits.append(("the ratio's rating", 2000 / (figures["ratio"] - 1) * factor * 1.01))
        if "pvco_class" in figures:
            limits.append(("the class", figures["pvco_class"] * factor))
        if "ac_class" in figures:
            limits.append(("the class with surge", figures["ac_class"] - most))
        if material in ("steel", "galvanized steel", "concrete cylinder"):
            yield "nobody has rated this main"
    if factor == 0:
        yield "too warm for plastic under pressure"
    if figures.get("tube") in TUBING:
        warmth = tables.temperature_factor("polyethylene", figures.get("temperature", 60))
        limits.append((f"{figures['tube']} tubing", TUBING[figures["tube"]] * warmth))
    if method in ("direct", "saddle"):
        stop = figures.get("stop_rating", 100)
        limits += [("stop", stop), ("stop with surge", 1.5 * stop - most)]
    if method in ("saddle", "sleeve"):
        saddle = figures.get("saddle_rating", 150)
        limits += [("saddle", saddle), ("saddle with surge", 1.5 * saddle - most)]
    if not figures.get("dry"):
        limits.append(("limit for wet taps", 250))
        machine = figures.get("machine")
        if machine and method != "sleeve":
            limits.append(("machine's body", machine["body_rating"]))
            feed = machine["hand_limit"] if machine["feed"] == "hand" else machine.get("powered_limit", 0)
            limits.append((f"{machine['feed']} feed", feed))
    for name, limit in limits:
        if line > limit * 1.0005 + 0.05:
            yield f"{name}: {line} psi over {limit:.4g}"


def chain_needed(diameter, machine):
    across, up = machine["anchor_offset"], diameter / 2 + machine["anchor_height"]
    radius = (diameter + machine["chain_thickness"]) / 2
    reach = math.hypot(across, up)
    if reach <= radius:
        return None
    return 2 * math.sqrt(reach * reach - radius * radius) + radius * (
        2 * math.pi - 2 * (math.atan2(across, up) + math.acos(radius / reach)))


def of_machine(figures, method, tap):
    machine = figures.get("machine")
    if not machine or method == "sleeve":
        return
    if not machine["smallest_tap"] <= tap <= machine["largest_tap"]:
        yield "the machine does not make this tap"
    if method == "saddle" and all(name in machine for name in ("bar_travel", "adapter_standoff")):
        way = machine["adapter_standoff"] + figures.get("stop_length", 0) + figures.get("saddle_height", 0)
        if way > machine["bar_travel"] + 0.01:
            yield f"the bar has {machine['bar_travel']} in and {way} in to the crown alone"
    if method != "direct":
        return
    read, _ = diameter_read(figures)
    for diameter in [read] if read else [p.od for p in candidates(figures)]:
        low, high = machine.get("saddle_od_from", 99), machine.get("saddle_od_to", 0)
        if not low - NEAR - 0.1 <= diameter <= high + NEAR + 0.1:
            yield f"the machine's saddles seat on {low} to {high} in, not on {diameter:.2f}"
        if all(name in machine for name in ("anchor_offset", "anchor_height", "chain_thickness", "chain_length")):
            needed = chain_needed(diameter, machine)
            there = machine["chain_length"] + machine["extensions"] * machine.get("chain_extension", 0)
            if needed is None or needed > there * 1.002 + 0.05:
                yield f"{needed} in of chain needed, {there} in there"
    thread = tables.NPT.get(tap)
    if thread and figures.get("thread") == "NPT" and "projection" in thread:
        depth = thread["L2"] - 4 / thread["tpi"] + thread["projection"]
        if "bar_travel" not in machine or "standoff" not in machine or \
                machine["standoff"] + depth > machine["bar_travel"] + 0.01:
            yield "the bar does not reach"


def angle(clock):
    hour, minute = clock.split(":")
    return (int(hour) % 12 + int(minute) / 60) * 30


def of_place(figures):
    clock = figures.get("clock", "1:30")
    up = math.degrees(math.asin(max(-1, min(1, math.cos(math.radians(angle(clock)))))))
    if not -0.01 <= up <= 60.01:
        yield f"{clock} is outside 0 to 60 degrees above the level"
    for what, along, other in figures.get("nearby", ()):
        if abs(along) < CLEARANCES[what] - 0.001:
            yield f"{what} {along} ft off, nearer than {CLEARANCES[what]} ft"
        if "clock" in figures and what == "tap" and abs(along) < 2 and other in (None, clock):
            yield f"a tap in line, {along} ft off"


def of_water(figures):
    flow = figures.get("flow")
    if flow is None or "tube" not in figures:
        return
    bore = tables.BORES.get((figures["tube"], figures["line_size"]))
    if bore is None:
        if figures["line_size"] not in (0.5, 0.625):
            yield f"no {figures['tube']} of {figures['line_size']} in is made"
        return
    speed = flow / (2.448 * bore * bore)
    if speed > 8.05:
        yield f"{speed:.1f} ft/s in the line"
    smoothness = 130 if figures["tube"].startswith("copper") else 150
    lost = 4.52 * figures["length"] * flow ** 1.852 / (smoothness ** 1.852 * bore ** 4.8704)
    left = figures["line"] - lost - 0.433 * figures.get("rise", 0)
    if left < 19.8:
        yield f"{left:.1f} psi left of the line before stop, meter and fittings"


def wrong_go(figures, method, tap):
    """Every reason why a go with this method and tap is wrong; empty where it may stand."""
    yield from of_identity(figures, method)
    yield from of_readings(figures)
    yield from of_pressure(figures, method)
    yield from of_machine(figures, method, tap)
    yield from of_place(figures)
    yield from of_water(figures)
    if method == "direct":
        yield from of_direct(figures, tap)
    elif method == "saddle":
        yield from of_saddle(figures)
