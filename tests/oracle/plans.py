"""A whole plan: its numbers worked out again, one voice on its stop numbers, and a way forward from each refusal."""

import math
import re

import judge
import tables

PRESSURE_STEP = re.compile(r"[Ss]top (?:over|above) (\d+(?:\.\d+)?) (psi|kPa)")


def value(quantity):
    return None if quantity is None else quantity["value"]


def near(found, expected, share=0.01, by=0.0):
    return abs(found - expected) <= share * abs(expected) + by


def readings(plan):
    return {reading.get("id") or reading["what"]: reading for reading in plan.get("readings", [])}


def pressure_bound(plan):
    for reading in plan.get("readings", []):
        if "pressure" in reading["what"] and "surge" not in reading["what"]:
            return value(reading.get("at_most"))
    return None


def of_forward(plan):
    """A refusal says what to do instead."""
    for hold in plan["holds"]:
        if not hold.get("fix"):
            yield f"hold {hold['code']} says no way forward"
    for finding in plan["findings"]:
        if finding["severity"] in ("hold", "stop") and not finding.get("fix"):
            yield f"{finding['severity']} {finding['code']} says no way forward"
    if plan["verdict"] == "hold" and not plan["holds"]:
        yield "a hold without a hold"
    if plan["verdict"] == "no-go" and not any(f["severity"] == "stop" and f.get("fix") for f in plan["findings"]):
        yield "a no-go without a stop that says what to do"


def of_one_voice(plan):
    """The pressure told by a step is the stop number."""
    bound = pressure_bound(plan)
    for step in plan.get("procedure", []):
        for told, _ in PRESSURE_STEP.findall(step["text"]):
            if bound is not None and abs(float(told) - bound) > 0.5:
                yield f"step {step['id']} stops over {told}, the stop number is {bound:g}"
    limit = value(plan.get("pressure", {}).get("limit"))
    if bound is not None and limit is not None and plan["verdict"] == "go" and bound > limit + 0.5:
        yield f"the stop number is {bound:g} psi over a limit of {limit:g}"


def of_pressure(plan):
    pressure = plan.get("pressure", {})
    limits = pressure.get("limits", [])
    if limits and "limit" in pressure:
        least = min(value(limit["limit"]) for limit in limits)
        if not near(value(pressure["limit"]), least, 0.002, 0.6):
            yield f"limit {value(pressure['limit'])}, the least link bears {least}"


def of_threads(plan, figures):
    engagement, main, method = plan.get("engagement"), plan["main"], plan["method"]
    if not engagement or method.get("thread") != "NPT" or value(method["tap"]) not in tables.NPT:
        return
    thread = tables.NPT[value(method["tap"])]
    low = value(main.get("od_low") or main["od"])
    high = value(main.get("od_high") or main["od"])
    read, off = judge.diameter_read(figures)
    if read and not low - off - 0.05 <= read <= high + off + 0.05:
        return  # held as a contradiction: which of the two it counts with is its own affair
    wall = value(main.get("wall_min"))
    if wall and engagement.get("complete_threads") is not None and thread["major"] < low:
        # Rounded walls are printed to 0.001 in: by that much and the spread of the diameter the count may differ.
        least = tables.complete_threads(low, wall, thread) - 0.02
        most = tables.complete_threads(high, wall, thread) + 0.02
        if not min(least, most) <= engagement["complete_threads"] <= max(least, most) and least > 0:
            yield f"{engagement['complete_threads']} complete threads, {least:.2f} to {most:.2f} expected"
    if "wall_needed" in engagement and thread["major"] < low:
        needed = value(engagement["wall_needed"])
        least, most = (engagement["required_threads"] / thread["tpi"] + tables.drop(od, thread["major"]) for od in (high, low))
        if not least - 0.0015 <= needed <= most + 0.0015:
            yield f"{needed} in of wall needed, {least:.3f} to {most:.3f} expected"


def of_makeup(plan):
    makeup, method = plan.get("makeup"), plan["method"]
    if not makeup or method.get("thread") != "NPT" or value(method["tap"]) not in tables.NPT:
        return
    thread = tables.NPT[value(method["tap"])]
    pitch = 1 / thread["tpi"]
    tight = thread["L2"] - (makeup["wrench_turns"] + makeup["threads_showing"]) * pitch
    expected = {"hand_tight_length": tight, "stop_past_gauge": tight - thread["L1"],
                "engaged_length": tight + makeup["wrench_turns"] * pitch}
    if "projection" in thread:
        expected["tip_depth"] = tight + thread["projection"]
    for name, right in expected.items():
        if name in makeup and not near(value(makeup[name]), right, 0.001, 0.0015):
            yield f"{name} {value(makeup[name])}, {right:.3f} expected"


def of_setup(plan, figures):
    setup, machine, main = plan.get("setup", {}), figures.get("machine"), plan["main"]
    if machine and "thrust" in setup and plan["method"]["kind"] == "direct":
        push = 0 if figures.get("dry") else figures["line"] * math.pi / 4 * machine["bar_diameter"] ** 2
        if not near(value(setup["thrust"]), push, 0.01, 1):
            yield f"{value(setup['thrust'])} lbf on the bar, {push:.0f} expected"
    chain = setup.get("chain", {})
    if machine and "needed" in chain and all(n in machine for n in ("anchor_offset", "anchor_height", "chain_thickness")):
        ends = [judge.chain_needed(value(main.get(name) or main["od"]), machine) for name in ("od_low", "od", "od_high")]
        if None not in ends and not min(ends) - 0.1 <= value(chain["needed"]) <= max(ends) + 0.1:
            yield f"chain {value(chain['needed'])} in, {min(ends):.2f} to {max(ends):.2f} expected"
    if "drill_stroke" in setup and "drill" in setup and main.get("wall_nominal"):
        drill = value(setup["drill"])
        walls = [value(main[name]) for name in ("wall_nominal", "wall_min") if name in main]
        if "wall" in figures:
            walls.append(figures["wall"] + judge.WALL_UNCERTAINTY)
        strokes = []
        for od in (value(main.get("od_low") or main["od"]), value(main.get("od_high") or main["od"])):
            for wall in walls:
                strokes.append(wall + tables.drop(od - 2 * wall, drill) + drill / 2 / math.tan(math.radians(59)) + 0.125)
        # Of several candidates it may be worked with the thickest: it is a need, so more is safe.
        if value(setup["drill_stroke"]) < min(strokes) - 0.01:
            yield f"drill stroke {value(setup['drill_stroke'])} in, at least {min(strokes):.3f} expected"
    hole = plan.get("open_hole")
    if hole and not figures.get("dry"):
        flow = 29.84 * 0.80 * value(hole["bore"]) ** 2 * math.sqrt(figures["line"])
        if not near(value(hole["flow"]), flow, 0.01, 0.5):
            yield f"{value(hole['flow'])} gpm out of the hole, {flow:.1f} expected"


STANDARDS = {"AWWA C151/A21.51": "ductile iron", "AWWA C900": "C900", "ASTM D2241": "D2241"}


def of_main(plan, figures):
    """The main told of is a pipe of the published tables."""
    main = plan["main"]
    kind = STANDARDS.get(main.get("standard"))
    if kind is None or figures.get("metric"):
        return
    pipes = [p for p in tables.BY_MAIN.get((figures["material"], figures["size"]), ())
             if p.cls == main["class"] and kind in (p.family, p.material)]
    if not pipes:
        return
    pipe = pipes[0]
    read, _ = judge.diameter_read(figures)
    if read is None and not near(value(main["od"]), pipe.od, 0, 0.0015):
        yield f"outside diameter {value(main['od'])} of {pipe.family} {pipe.cls}, published {pipe.od}"
    if "wall_nominal" in main and "wall" not in figures and not near(value(main["wall_nominal"]), pipe.wall, 0, 0.0011):
        yield f"wall {value(main['wall_nominal'])} of {pipe.family} {pipe.cls}, published {pipe.wall}"
    if main.get("wall_basis") == "catalogue" and "wall_min" in main and value(main["wall_min"]) > pipe.wall + 0.0011:
        yield f"least wall {value(main['wall_min'])} of {pipe.family} {pipe.cls}, published {pipe.wall}"
    if "rating" in main and "rating" not in figures and pipe.rating and value(main["rating"]) > pipe.rating + 0.5:
        yield f"rating {value(main['rating'])} of {pipe.family} {pipe.cls}, published {pipe.rating}"


def of_water(plan, figures):
    service = plan.get("service", {})
    losses = service.get("losses")
    if not losses or "flow" not in figures:
        return
    left = value(service["supply"])
    for part in losses:
        if not near(value(part["left"]), left - value(part["loss"]), 0, 0.16):
            yield f"{part['part']} leaves {value(part['left'])} psi, {left - value(part['loss']):.1f} expected"
        left = value(part["left"])
    line, friction = service["line"], service["friction"]
    bore = tables.BORES.get((line["material"], value(line["size"])))
    if bore is None:
        return
    if not near(value(line["bore"]), bore, 0, 0.002):
        yield f"bore {value(line['bore'])}, published {bore}"
    if friction["method"] != "Hazen-Williams":
        return
    flow = figures["flow"]
    by_part = {part["part"]: part for part in losses}
    per_foot = 4.52 * flow ** 1.852 / (friction["c"] ** 1.852 * bore ** 4.8704)
    if "line" in by_part and not near(value(by_part["line"]["loss"]), per_foot * value(line["length"]), 0.01, 0.06):
        yield f"line loses {value(by_part['line']['loss'])} psi, {per_foot * value(line['length']):.1f} expected"
    if "rise" in by_part and not near(value(by_part["rise"]["loss"]), 0.433 * figures.get("rise", 0), 0.005, 0.06):
        yield f"rise loses {value(by_part['rise']['loss'])} psi, {0.433 * figures.get('rise', 0):.1f} expected"


def of_several(plan, figures):
    """n smaller taps stand for one larger: n is at least (D/d)^2.5."""
    method = plan["method"]
    if method.get("count", 1) > 1 and method["count"] < (figures["tap"] / value(method["tap"])) ** 2.5 - 1e-6:
        yield f"{method['count']} taps of {value(method['tap'])} in for one of {figures['tap']}"


def of_rating(plan, figures):
    """The rating told is never over that of the weakest pipe that fits."""
    if plan["verdict"] != "go" or "rating" not in plan["main"] or "rating" in figures:
        return
    factor = tables.temperature_factor(figures["material"], figures.get("temperature", 60))
    told = plan["main"]
    if "temperature_factor" in told and not near(told["temperature_factor"], factor, 0.002, 0.002):
        yield f"temperature factor {told['temperature_factor']}, {factor:.3f} expected"


def faults(plan, figures):
    yield from of_forward(plan)
    yield from of_one_voice(plan)
    yield from of_pressure(plan)
    if plan["verdict"] != "no-go":
        yield from of_threads(plan, figures)
        yield from of_makeup(plan)
        yield from of_setup(plan, figures)
        yield from of_rating(plan, figures)
        yield from of_main(plan, figures)
        yield from of_water(plan, figures)
        yield from of_several(plan, figures)
