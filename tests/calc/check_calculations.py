#!/usr/bin/env python3
"""Works out every line of the calculation sheets again, from the formula and the figures as they are printed.

    check_calculations.py PROGRAM SOURCE_DIRECTORY

Units are handled here by hand: a figure is a number in meters, kilograms and seconds, with the powers of each. For every job of
examples/jobs and of tests/calc/jobs, which together have every formula, in both systems:
- the formula with the figures of its "with" lines gives the printed result, and so does the line of figures;
- the utilization is result over limit, or limit over result;
- a figure that names another line is that line's result;
- each number of the card that decides something stands on the sheet: stop numbers, what holds compare, set-up, marks.

A result may differ by half of its fifth digit, and by what half of the fifth digit of each figure moves it.
Exit status: 0 all agree, 1 some do not.
"""
import math
import pathlib
import re
import subprocess
import sys

# ---- units: (size, powers of meter, kilogram, second)
INCH, POUND, GALLON = 0.0254, 4.4482216152605, 231 * 0.0254**3
PLAIN, LENGTH, FORCE, PRESSURE, TIME = (0, 0, 0), (1, 0, 0), (1, 1, -2), (-1, 1, -2), (0, 0, 1)
UNITS = {
    "in": (INCH, LENGTH), "ft": (12 * INCH, LENGTH), "mm": (0.001, LENGTH), "m": (1.0, LENGTH),
    "psi": (POUND / INCH**2, PRESSURE), "kPa": (1000.0, PRESSURE),
    "lbf": (POUND, FORCE), "N": (1.0, FORCE),
    "ft-lbf": (12 * INCH * POUND, (2, 1, -2)), "N-m": (1.0, (2, 1, -2)),
    "gpm": (GALLON / 60, (3, 0, -1)), "L/s": (0.001, (3, 0, -1)),
    "gal": (GALLON, (3, 0, 0)), "L": (0.001, (3, 0, 0)),
    "yd3": ((36 * INCH)**3, (3, 0, 0)), "m3": (1.0, (3, 0, 0)),
    "ft/s": (12 * INCH, (1, 0, -1)), "m/s": (1.0, (1, 0, -1)),
    "s": (1.0, TIME), "min": (60.0, TIME), "h": (3600.0, TIME),
    "%": (0.01, PLAIN), "deg": (math.pi / 180, PLAIN), "threads": (1.0, PLAIN), "turns": (1.0, PLAIN),
}
DIGITS = 5


class Amount:
    def __init__(self, size, powers=PLAIN):
        self.size, self.powers = size, tuple(powers)

    def same(self, other):
        # Nothing is nothing in any unit.
        if self.powers != other.powers and self.size != 0 and other.size != 0:
            raise ValueError(f"units do not match: {self.powers} and {other.powers}")

    def __add__(self, other):
        self.same(other)
        return Amount(self.size + other.size, self.powers if self.size != 0 else other.powers)

    def __sub__(self, other):
        return self + Amount(-other.size, other.powers)

    def __mul__(self, other):
        return Amount(self.size * other.size, [a + b for a, b in zip(self.powers, other.powers)])

    def __truediv__(self, other):
        return Amount(self.size / other.size, [a - b for a, b in zip(self.powers, other.powers)])

    def __pow__(self, other):
        other.plain()
        return Amount(self.size**other.size, [round(a * other.size, 9) for a in self.powers])

    def plain(self):
        if any(self.powers):
            raise ValueError(f"not a plain number: {self.powers}")
        return self.size


def darcy_factor(reynolds, relative):
    """Laminar to 2000, Colebrook and White from 4000, a straight line between."""
    def colebrook(re):
        root = 8.0
        for _ in range(200):
            root = -2 * math.log10(relative / 3.7 + 2.51 * root / re)
        return 1 / root**2
    if reynolds <= 2000:
        return 64 / reynolds
    if reynolds >= 4000:
        return colebrook(reynolds)
    return 64 / 2000 + (reynolds - 2000) / 2000 * (colebrook(4000) - 64 / 2000)


def of_plain(function):
    return lambda *values: Amount(function(*(value.plain() for value in values)))


def pick(chosen):
    def function(*values):
        for value in values[1:]:
            values[0].same(value)
        return chosen(values, key=lambda value: value.size)
    return function


def hypot(a, b):
    a.same(b)
    return Amount(math.hypot(a.size, b.size), a.powers)


def atan2(a, b):
    a.same(b)
    return Amount(math.atan2(a.size, b.size))


NOISE = 1e-6  # a whole step but for the noise of having been worked out is one
FUNCTIONS = {
    "sqrt": lambda a: a**Amount(0.5), "hypot": hypot, "atan2": atan2, "max": pick(max), "min": pick(min),
    "abs": lambda a: Amount(abs(a.size), a.powers), "friction": of_plain(darcy_factor),
    "ceil": of_plain(lambda a: math.ceil(a - NOISE)), "floor": of_plain(lambda a: math.floor(a + NOISE)),
    **{name: of_plain(getattr(math, name)) for name in ("sin", "cos", "tan", "asin", "acos")},
}

UNIT_PATTERN = "|".join(sorted(map(re.escape, UNITS), key=len, reverse=True))
NUMBER = r"\d+(?:\.\d+)?(?:[eE][-+]?\d+)?"
TOKEN = re.compile(rf"\s*(?:({NUMBER})(?:\s?({UNIT_PATTERN})(?![A-Za-z0-9_]))?|([A-Za-z_]\w*)|(.))")


class Reader:
    """Works out one expression: + - * / ^, brackets, functions, symbols, figures with their units."""

    def __init__(self, text, known):
        self.tokens = [match.groups() for match in TOKEN.finditer(text.strip())]
        self.at, self.known = 0, known

    def sign(self, *signs):
        if self.at < len(self.tokens) and self.tokens[self.at][3] in signs:
            self.at += 1
            return self.tokens[self.at - 1][3]
        return None

    def all(self):
        value = self.sum()
        if self.at != len(self.tokens):
            raise ValueError(f"left over: {self.tokens[self.at:]}")
        return value

    def sum(self):
        value = self.product()
        while sign := self.sign("+", "-"):
            other = self.product()
            value = value + other if sign == "+" else value - other
        return value

    def product(self):
        value = self.power()
        while sign := self.sign("*", "/"):
            other = self.power()
            value = value * other if sign == "*" else value / other
        return value

    def power(self):
        if self.sign("-"):
            return Amount(-1) * self.power()
        value = self.atom()
        return value**self.power() if self.sign("^") else value

    def atom(self):
        if self.sign("("):
            value = self.sum()
            if not self.sign(")"):
                raise ValueError("a bracket is not closed")
            return value
        number, unit, name, _ = self.tokens[self.at]
        self.at += 1
        if number is not None:
            size, powers = UNITS[unit] if unit else (1.0, PLAIN)
            return Amount(float(number) * size, powers)
        if self.at < len(self.tokens) and self.tokens[self.at][3] == "(" and name in FUNCTIONS:
            self.at += 1
            values = [self.sum()]
            while self.sign(","):
                values.append(self.sum())
            if not self.sign(")"):
                raise ValueError("a bracket is not closed")
            return FUNCTIONS[name](*values)
        if name in self.known:
            return self.known[name]
        if name == "pi":
            return Amount(math.pi)
        size, powers = UNITS[name]
        return Amount(size, powers)


def work_out(formula, known):
    """The last of the assignments."""
    known = dict(known)
    value = None
    for assignment in formula.split(";"):
        name, expression = assignment.split("=", 1)
        value = known[name.strip()] = Reader(expression, known).all()
    return value


def half_digit(number):
    """Half of the fifth digit of a printed number, in its own unit."""
    size = abs(float(number))
    return 0.5 * 10.0 ** ((math.floor(math.log10(size)) + 1 if size > 0 else 1) - DIGITS)


FIGURE = re.compile(rf"(-?{NUMBER})(?: ({UNIT_PATTERN}))?$")


def figure(text):
    """(amount, half of its last digit as an amount)"""
    number, unit = FIGURE.match(text.strip()).groups()
    size, powers = UNITS[unit] if unit else (1.0, PLAIN)
    return Amount(float(number) * size, powers), half_digit(number) * size


# ---- the sheet

# A town whose code asks for several taps.
RULES = {"several_taps.json": "tests/rules_files/r03_stronghurst.json",
         "service_large.json": "tests/calc/rules/line_over_tap.json"}
LABELS = ("formula", "figures", "result", "limit", "with")


def lines_of(sheet):
    """Each line of the sheet: {"number", "title", "formula", "figures", "result", "limit", "with": [...]}"""
    lines, now, label = [], None, None
    for row in sheet.splitlines():
        start = re.match(r" {0,2}(\d+)\. (\S.*)$", row)
        if start:
            now = {"number": int(start.group(1)), "title": start.group(2), "with": []}
            lines.append(now)
            label = "title"
            continue
        if now is None or not row.startswith("     "):
            now = None
            continue
        begins = re.match(r" {5}(\w+) +(.*)$", row)
        if begins and begins.group(1) in LABELS and not row.startswith("      "):
            label = begins.group(1)
            if label == "with":
                now["with"].append(begins.group(2))
            else:
                now[label] = begins.group(2)
        elif label == "with":
            now["with"][-1] += " " + row.strip()
        else:
            now[label] += " " + row.strip()
    return lines


class Check:
    def __init__(self, program, source):
        self.program, self.source = program, source
        self.faults, self.lines, self.sheets, self.seen, self.card = [], 0, 0, set(), 0

    def run(self, *arguments):
        done = subprocess.run([self.program, "plan", "--no-settings", *arguments], cwd=self.source, capture_output=True,
                              encoding="utf-8", stdin=subprocess.DEVNULL, check=False)
        if done.returncode not in (0, 1, 3):
            raise RuntimeError(f"{arguments}: {done.stderr}")
        return done.stdout

    def sheet(self, label, *arguments):
        for units in ("us", "si"):
            sheet = self.run(*arguments, "--units", units, "--format", "calc")
            lines = lines_of(sheet)
            self.sheets += 1
            results = {line["number"]: line["result"].split("=", 1)[1].strip() for line in lines}
            for line in lines:
                try:
                    self.line(line, results)
                except (ValueError, KeyError, AttributeError, ZeroDivisionError, IndexError, OverflowError) as error:
                    self.faults.append(f"{label} ({units}): {line['number']}. {line['title']}: {error}\n  {line}")
            self.numbers_of_card(label, units, arguments, sheet)

    def line(self, line, results):
        self.lines += 1
        self.seen.add(re.search(r"\[([\w-]+)\]", line["title"]).group(1))
        known, moves = {}, {}
        for text in line["with"]:
            symbol, rest = text.split(" = ", 1)
            value, source = rest.split(": ", 1)
            known[symbol], moves[symbol] = figure(value)
            named = re.search(r"; line (\d+)$", source)
            if named:
                other = figure(results[int(named.group(1))])[0]
                if abs(other.size - known[symbol].size) > 1e-9 * abs(other.size):
                    raise ValueError(f"{symbol} is {value}, and the line named says {results[int(named.group(1))]}")
        result, last = figure(line["result"].split("=", 1)[1])
        mine = work_out(line["formula"], known)
        mine.same(result)
        room = last * 1.01 + 1e-9 * abs(result.size)
        for symbol, move in moves.items():
            moved_by = 0.0
            for way in (-move, move):
                try:
                    moved = work_out(line["formula"], {**known, symbol: Amount(known[symbol].size + way, known[symbol].powers)})
                except ValueError:
                    continue
                moved_by = max(moved_by, abs(moved.size - mine.size))
            room += moved_by
        if abs(mine.size - result.size) > room:
            raise ValueError(f"worked out {mine.size}, printed {result.size}, room {room}")
        same = work_out(line["figures"], {})
        if abs(same.size - mine.size) > 1e-9 * abs(mine.size) + 1e-12:
            raise ValueError(f"the figures give {same.size}, the formula {mine.size}")
        if "limit" in line:
            self.limit(line["limit"], result)

    @staticmethod
    def limit(text, result):
        which, value, rest = re.match(rf"at (least|most) ({NUMBER}(?: (?:{UNIT_PATTERN}))?)(?=;|,|$)(.*)", text).groups()
        limit, _ = figure(value)
        limit.same(result)
        printed = re.search(rf"utilization ({NUMBER})(, NOT MET)?", rest)
        if not printed:
            return
        share = limit.size / result.size if which == "least" else result.size / limit.size
        if abs(share - float(printed.group(1))) > 3e-4 * max(share, 1e-3):
            raise ValueError(f"utilization {share}, printed {printed.group(1)}")
        if (share > 1 + 2e-4) != bool(printed.group(2)) and abs(share - 1) > 2e-4:
            raise ValueError("met or not met, and the other is printed")

    def numbers_of_card(self, label, units, arguments, sheet):
        """Stop numbers, set-up and marks of the card, as values; a sixteenth or a step of the card's rounding apart."""
        card = self.run(*arguments, "--units", units)
        values = [amount for line in lines_of(sheet) for amount in amounts(line["result"] + "; " + line.get("limit", ""))]
        values += amounts(sheet[: sheet.find("CAUTIONS")])
        for part in ("STOP NUMBERS", "MARKS ON THE BAR"):
            begin = card.find(part)
            for row in card[begin:].split("\n\n")[0].splitlines()[1:] if begin >= 0 else []:
                if not re.match(r"  \S.*\.\. ", row):
                    break
                if "____" in row.split(".. ", 1)[1].split(" read ")[0]:
                    continue  # measured by the crew
                text = row.split(".. ", 1)[1].split(" read ")[0]
                for wanted in amounts(text):
                    self.card += 1
                    if not any(near(wanted, value) for value in values):
                        self.faults.append(f"{label} ({units}): the card's {row.strip()!r} is not on the sheet")


def amounts(text):
    """Every length and pressure in a text, fractions too."""
    found = []
    for match in re.finditer(r"(?<![\d./])(?:(?:(\d+)-)?(\d+)/(\d+)|(\d+(?:\.\d+)?)) (in|mm|psi|kPa|ft|m)\b", text):
        whole, top, bottom, decimal, unit = match.groups()
        number = float(decimal) if decimal else float(whole or 0) + float(top) / float(bottom)
        size, powers = UNITS[unit]
        step = 1 / 16 if unit == "in" and not decimal else 1.0 if unit in ("psi", "kPa", "mm") else 0.0625
        found.append((Amount(number * size, powers), step * size))
    return found


def near(wanted, value):
    return wanted[0].powers == value[0].powers and abs(wanted[0].size - value[0].size) <= 1.001 * wanted[1]


def main():
    program, source = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    check = Check(program, source)
    for folder in ("examples/jobs", "tests/calc/jobs"):
        for job in sorted((source / folder).glob("*.json")):
            rules = RULES.get(job.name)
            check.sheet(job.name, str(job), *(["--rules", str(source / rules)] if rules else []))
    for fault in check.faults[:20]:
        print(fault)
    print(f"{check.lines} lines of {check.sheets} sheets worked out again, {len(check.seen)} formulas; "
          f"{check.card} numbers of cards looked for; {len(check.faults)} faults")
    wanted = set(re.findall(r'^  X\(\w+, "([\w-]+)"', (source / "include/mainbore/formulas.hpp").read_text(), re.M))
    unseen = sorted(wanted - check.seen)
    if unseen:
        print("no sheet has: " + ", ".join(unseen))
    return 1 if check.faults or unseen else 0


if __name__ == "__main__":
    sys.exit(main())
