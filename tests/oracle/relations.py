"""Changes of a job that can never better its verdict, and changes that may not touch it at all."""

import jobs
import judge
import tables

BEST_FIRST = ("go", "hold", "no-go")
LOWER = {"hand_limit": 0.6, "body_rating": 0.6, "bar_travel": 0.7, "saddle_od_to": 0.7, "chain_length": 0.6,
         "powered_limit": 0.6}


def more_pressure(case, choose):
    """The lowest pressure is not given, so the line's stands for it: more then betters the water at the customer."""
    if "flow" in case.figures:
        return False
    case.figures["line"] += choose.choice([1, 5, 20, 60])
    case.job["main"]["pressure"] = jobs.psi(case.figures["line"])
    return True


def more_surge(case, choose):
    surge = case.figures.get("surge")
    if surge is None:
        return False
    case.job["main"]["surge"] = jobs.psi(surge + choose.choice([5, 30, 100]))
    return True


def an_occasional_surge(case, choose):
    if "occasional" in case.figures:
        return False
    case.job["main"]["occasional_surge"] = jobs.psi(choose.choice([10, 60, 200]))
    return True


def bigger_tap(case, choose):
    """Only where the tap is one that is made and the machine makes, and nobody counts on the water it brings."""
    tap = case.figures["tap"]
    machine = case.figures.get("machine")
    if tap not in jobs.TAPS[:-1] or tap == 0.625 or "flow" in case.figures or "tube" in case.figures or \
            (machine and tap < machine["smallest_tap"]):
        return False
    larger = choose.choice([size for size in jobs.TAPS if size > tap])
    case.job["service"]["size"] = jobs.size_name(larger)
    return True


def thinner_wall(case, choose):
    """Only from a reading that a sound pipe of the main can give: one too thick is a contradiction."""
    wall = case.figures.get("wall")
    pipes = judge.candidates(case.figures)
    if not wall or not pipes or wall > min(pipe.wall for pipe in pipes):
        return False
    case.job["main"]["wall"] = jobs.inches(round(max(0.03, wall - choose.choice([0.01, 0.03, 0.1])), 3))
    return True


def nearer(case, choose):
    things = case.figures.get("nearby")
    if not things:
        return False
    place = choose.randrange(len(things))
    along = things[place][1]
    if abs(along) < 3:  # in its way already: the tap moves, and may move less
        return False
    case.job["nearby"][place]["along"] = f"{along * choose.choice([0.8, 0.5, 0.2]):.2f} ft"
    return True


def one_thing_more(case, choose):
    if "nearby" not in case.figures:
        return False
    case.job["nearby"].append({"what": choose.choice(jobs.THINGS), "along": f"{choose.uniform(-9, 9):.1f} ft"})
    return True


def clock_unknown(case, choose):
    for place, (what, _, clock) in enumerate(case.figures.get("nearby", ())):
        if clock:
            del case.job["nearby"][place]["clock"]
            return True
    return False


def worse_condition(case, choose):
    if case.figures.get("condition") != "sound":
        return False
    case.job["main"]["condition"] = choose.choice(["pitted", "poor"])
    return True


def bent(case, choose):
    if case.figures.get("curved") is not False:
        return False
    case.job["main"]["curved"] = True
    return True


def warmer(case, choose):
    degrees = case.figures.get("temperature")
    if case.figures["material"] not in judge.PLASTIC or degrees is None or not 34 <= degrees <= 115:
        return False
    case.job["main"]["temperature"] = f"{degrees + choose.choice([3, 10, 30])} degF"
    return True


def left_out(*path, unless=lambda figures: False):
    def change(case, choose):
        if unless(case.figures):
            return False
        inner = case.job
        for name in path[:-1]:
            inner = inner.get(name)
            if inner is None:
                return False
        return inner.pop(path[-1], None) is not None
    change.__name__ = "without " + ".".join(path)
    change.leaves_out = True  # may turn a no-go into a hold, which asks for the fact, and never anything into a go
    return change


def contradicted(figures):
    """Readings at odds with the card are held; without them nothing shows."""
    pipes = tables.BY_MAIN.get((figures["material"], figures["size"]))
    fits = judge.candidates(figures)
    if not pipes or not fits or figures.get("forbids") is not None:
        return True
    return figures["material"] != "PVC" and "wall" in figures and \
        figures["wall"] < max(p.least + 0.011 if p.least else p.wall for p in fits)


def class_is_contradicted(figures):
    """The classes of 1908 on pipe of later years: two records disagree, and one alone does not."""
    return contradicted(figures) or (figures["material"] == "cast iron" and figures.get("installed", 0) > 1925)


def wall_is_thin(figures):
    pipes = judge.candidates(figures)
    return "wall" not in figures or contradicted(figures) or figures["wall"] < max(p.wall for p in pipes) + 0.02 or \
        figures["wall"] > min(p.wall for p in pipes) * 1.1


def machine_lesser(case, choose):
    machine = case.figures.get("machine")
    names = [name for name in LOWER if machine and name in machine]
    if not names:
        return False
    name = choose.choice(names)
    value = machine[name] * LOWER[name]
    case.job["machine"][name] = jobs.psi(value) if name.endswith(("limit", "rating")) else jobs.inches(value)
    return True


def weaker_fitting(case, choose):
    name = choose.choice(["stop_rating", "saddle_rating"])
    if name not in case.figures:
        return False
    case.job["service"][name] = jobs.psi(case.figures[name] * 0.6)
    return True


def method_asked(case, choose):
    if "method" in case.figures:
        return False
    case.job["service"]["method"] = choose.choice(["direct", "saddle", "sleeve"])
    return True


def in_metric_name(case, choose):
    metric = {3: 80, 4: 100, 6: 150, 8: 200, 10: 250, 12: 300, 16: 400, 24: 600}.get(case.figures["size"])
    if metric is None or case.figures.get("metric"):
        return False
    case.job["main"]["size"] = f"DN {metric}"
    return True


def under_pressure(case, choose):
    return case.job["main"].pop("pressurized", True) is False


NEVER_BETTER = [
    more_pressure, more_surge, an_occasional_surge, bigger_tap, thinner_wall, nearer, one_thing_more,
    clock_unknown, worse_condition, bent, warmer, machine_lesser, weaker_fitting, method_asked, in_metric_name,
    under_pressure, left_out("main", "carries"), left_out("main", "condition"), left_out("nearby"), left_out("main", "curved"),
    left_out("main", "temperature", unless=lambda figures: figures["material"] not in judge.PLASTIC),
    left_out("main", "class", unless=class_is_contradicted),
    left_out("main", "circumference", unless=contradicted), left_out("main", "wall", unless=wall_is_thin),
    left_out("main", "surge", unless=lambda figures: figures.get("surge", 0) > 40),
    left_out("machine"), left_out("machine", "standoff"), left_out("machine", "bar_travel"),
    left_out("machine", "chain_length"),
    left_out("service", "stop_rating", unless=lambda figures: figures.get("stop_rating", 0) < 100),
    left_out("service", "saddle_rating", unless=lambda figures: figures.get("saddle_rating", 0) < 150),
]


def other_units(value, key):
    """A quantity of the job in the other units; nominal sizes are names and stay."""
    if key in ("size", "smallest_tap", "largest_tap") or not isinstance(value, str):
        return value
    head, _, unit = value.rpartition(" ")
    try:
        number = tables.number(head.strip())
    except ValueError:
        return value
    if unit == "psi":
        return f"{number * 6.894757293168361:.9g} kPa"
    if unit == "in":
        return f"{number * 25.4:.9g} mm"
    if unit == "ft" and " ft " not in value:
        return f"{number * 0.3048:.9g} m"
    if unit == "degF":
        return f"{(number - 32) / 1.8:.9g} degC"
    return value


def in_other_units(case, choose):
    def walk(value, key):
        if isinstance(value, dict):
            return {name: walk(inner, name) for name, inner in value.items()}
        if isinstance(value, list):
            return [walk(inner, key) for inner in value]
        if isinstance(value, str) and value.startswith("-"):
            other = other_units(value[1:], key)
            return "-" + other
        return other_units(value, key)
    case.job = walk(case.job, "")
    return True


def in_other_order(case, choose):
    if len(case.job.get("nearby", ())) < 2:
        return False
    case.job["nearby"].reverse()
    return True


THE_SAME = [in_other_units, in_other_order]


def betters(change, before, after):
    """Whether a verdict after a change is better than one that bounds it."""
    if getattr(change, "leaves_out", False):
        return after == "go" and before != "go"
    return BEST_FIRST.index(after) < BEST_FIRST.index(before)
