"""Stop numbers bear their own readings: each bound, entered as it is printed, leaves the verdict at least as good."""

import copy

PATHS = {"pressure": ("main", "pressure"), "wall": ("main", "wall"), "circumference": ("main", "circumference"),
         "temperature": ("main", "temperature"), "surge": ("main", "surge")}


def kind(reading):
    words = reading.get("id", "") + " " + reading["what"]
    if "surge" in words:
        return "surge"
    for name in ("pressure", "wall", "circumference", "temperature"):
        if name in words:
            return name
    return "joint" if "joint" in words else None


def as_text(quantity):
    return f"{quantity['value']:.9g} {quantity['unit']}"


def enter(job, name, bound):
    """The job with one reading written in. A distance stands as a bell at it."""
    if name == "joint":
        job["nearby"] = [*job.get("nearby", []), {"what": "bell", "along": as_text(bound)}]
        return
    section, key = PATHS[name]
    job[section][key] = as_text(bound)


def jobs_of(job, plan):
    """(what was entered, the job with it) for each bound alone, and for all lower and all upper bounds together."""
    bounds = []
    for reading in plan.get("readings", []):
        name = kind(reading)
        if name:
            ends = [(end, reading[end]) for end in ("at_least", "at_most") if end in reading]
            bounds.append((name, ends))
    for name, ends in bounds:
        for end, bound in ends:
            changed = copy.deepcopy(job)
            enter(changed, name, bound)
            yield f"{name} {end} {as_text(bound)}", changed
    for pick in (0, -1):
        changed = copy.deepcopy(job)
        told = []
        for name, ends in bounds:
            if name != "joint" or "nearby" in job:
                enter(changed, name, ends[pick][1])
                told.append(f"{name} {as_text(ends[pick][1])}")
        if len(told) > 1:
            yield "all together: " + ", ".join(told), changed


