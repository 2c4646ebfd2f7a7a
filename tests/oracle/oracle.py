#!/usr/bin/env python3
"""An independent judge of the program: random jobs, judged from published tables and formulas of its own.

    oracle.py PROGRAM [--jobs N] [--seed N]

No code of the program is used or read. What it holds:
  go        no pipe that the words and readings of the job allow breaks a limit under a tap called go (judge.py)
  relations more pressure, a bigger tap, a thinner wall ... never betters a verdict; units and order never change it
  plans     printed numbers worked out again, steps that repeat the stop numbers, a way forward from each refusal (plans.py)
  readings  each bound of the stop numbers, entered as printed, leaves the verdict at least as good (readings.py)

MAINBORE_ORACLE_JOBS sets the number of jobs too: a million take a few minutes. Same seed, same jobs. On failure each kind
of fault is printed once, with its count and the job as a command. Exit status: 0 all held, 1 not, 2 wrong usage.
"""

import argparse
import collections
import json
import os
import random
import re
import subprocess
import sys

import jobs
import judge
import plans
import readings
import relations

CHUNK = 20000  # jobs a call
SHARE_OF_PLANS = 50  # of so many jobs one is looked at as a whole plan
SHOWN = 60


class Program:
    def __init__(self, path):
        self.path = path
        self.environment = {**os.environ, "XDG_CONFIG_HOME": "/nonexistent"}
        schema = json.loads(self.run(["schema", "job"], ""))
        self.known = set(self.paths(schema, ""))

    def run(self, arguments, text):
        done = subprocess.run([self.path, *arguments], input=text, capture_output=True, encoding="utf-8",
                              env=self.environment)
        if done.returncode != 0:
            sys.exit(f"{arguments} ended with {done.returncode}: {done.stderr[:2000]}")
        return done.stdout

    def paths(self, schema, above):
        for name, inner in schema.get("properties", {}).items():
            yield above + name
            yield from self.paths(inner, f"{above}{name}.")

    def batch(self, texts, *options):
        lines = self.run(["batch", "-", "--in", "ndjson", "--format", "ndjson", "--fail-on", "never", *options],
                         "\n".join(texts)).splitlines()
        if len(lines) != len(texts):
            sys.exit(f"{len(texts)} jobs in, {len(lines)} records out")
        return map(json.loads, lines)


class Report:
    def __init__(self):
        self.faults = collections.OrderedDict()
        self.held = collections.Counter()

    def fault(self, what, why, job):
        """Faults alike but for their numbers, up to the first semicolon, are one kind."""
        kind = f"{what}: " + re.sub(r"-?[0-9.]+", "#", why.partition(";")[0])
        if kind in self.faults:
            self.faults[kind][0] += 1
        else:
            self.faults[kind] = [1, f"{what}: {why}", jobs.command(job)]

    def tell(self):
        for count, why, command in sorted(self.faults.values(), key=lambda fault: -fault[0])[:SHOWN]:
            print(f"FAILED {count} times: {why}\n    {command}")
        if len(self.faults) > SHOWN:
            print(f"... and {len(self.faults) - SHOWN} more kinds")
        print(", ".join(f"{name} {count}" for name, count in sorted(self.held.items())))
        return 1 if self.faults else 0


def judge_verdicts(program, report, choose, count):
    """Base jobs, each with some changes behind it."""
    cases, changes, base = [], [], None
    while len(cases) < count:
        base = len(cases)
        original = jobs.make(choose, program.known)
        cases.append(original)
        changes.append(None)
        for _ in range(4):
            change = choose.choice(relations.NEVER_BETTER if choose.random() < 0.9 else relations.THE_SAME)
            changed = original.copy()
            if change(changed, choose):
                cases.append(changed)
                changes.append((change, base))
    records = list(program.batch([case.text() for case in cases]))
    for case, record, change in zip(cases, records, changes):
        report.held[f"verdict {record['verdict']}"] += 1
        if record["verdict"] == "unreadable":
            report.fault("unreadable", json.dumps(record["reasons"]), case.job)
        elif change:
            compare(report, case, record, change[0], records[change[1]], cases[change[1]])
        elif record["verdict"] == "go":
            report.held["go judged"] += 1
            for why in judge.wrong_go(case.figures, record["method"], record["tap"]["value"]):
                report.fault(f"wrong go, {record['method']}, {case.figures['material']}", why, case.job)


def compare(report, case, record, change, before, base):
    report.held["relation tried"] += 1
    if change in relations.THE_SAME:
        if (record["verdict"], record["holds"], record["stops"]) != (before["verdict"], before["holds"], before["stops"]):
            report.fault(f"changed by {change.__name__}", f"{before['verdict']} {before['holds']} to {record['verdict']} "
                         f"{record['holds']}; from {base.text()}", case.job)
    elif relations.betters(change, before["verdict"], record["verdict"]):
        report.fault(f"bettered by {change.__name__}",
                     f"{case.figures['material']}: {before['verdict']} {before['holds']}{before['stops']} to "
                     f"{record['verdict']}; from {base.text()}", case.job)


def judge_plans(program, report, choose, count):
    cases = [jobs.make(choose, program.known) for _ in range(count)]
    entered, origin = [], []
    for case, plan in zip(cases, program.batch([case.text() for case in cases], "--full")):
        if plan["verdict"] == "unreadable":
            continue
        report.held["plan read"] += 1
        for why in plans.faults(plan, case.figures):
            report.fault(f"plan of a {plan['method']['kind']} tap", why, case.job)
        if plan["verdict"] != "no-go":
            for what, job in readings.jobs_of(case.job, plan):
                entered.append(json.dumps(job))
                origin.append((case.job, what, plan["verdict"], {hold["code"] for hold in plan["holds"]}))
    for (job, what, verdict, holds), record in zip(origin, program.batch(entered)):
        report.held["reading entered"] += 1
        if record["verdict"] == "unreadable" or relations.betters(None, record["verdict"], verdict):
            why = record.get("stops", []) + [code for code in record.get("holds", []) if code not in holds]
            report.fault("a reading equal to its stop number", f"{what.split()[0]}: {verdict} to {record['verdict']} by {why} "
                         f"; entered: {what}", job)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--jobs", type=int, default=int(os.environ.get("MAINBORE_ORACLE_JOBS", 60000)))
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    program, report = Program(options.program), Report()
    choose = random.Random(options.seed)
    for done in range(0, options.jobs, CHUNK):
        count = min(CHUNK, options.jobs - done)
        judge_verdicts(program, report, choose, count)
        judge_plans(program, report, choose, max(1, count // SHARE_OF_PLANS))
    return report.tell()


if __name__ == "__main__":
    sys.exit(main())
