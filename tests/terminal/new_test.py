#!/usr/bin/env python3
"""mainbore new on a terminal, driven by keys.

Usage: new_test.py CASE PROGRAM. Exit 77: there is no tmux.
"""
import json
import os
import pathlib
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True  # the source tree stays as it is
from terminal import Terminal, flat, have_tmux

PROGRAM = ""


def new(folder, scratch, *more):
    return Terminal([PROGRAM, "new", "job.json", *more], folder, scratch)


def plan(folder, *more):
    return subprocess.run([PROGRAM, "plan", "job.json", *more], cwd=folder, capture_output=True, text=True, check=False)


def files(folder):
    return sorted(path.name for path in pathlib.Path(folder).iterdir())


def full_job(folder, scratch):
    """A whole job is told, and plans as what it is."""
    answers = {
        "Work order number?": "AV-1041",
        "Where is the tap wanted?": "Ashby Vale Water District, 12 Millrace Lane",
        "What day is it": "2026-05-04",
        "Which crew": "Crew 2",
        "What is the main made of?": "DI",
        "nominal size of the main?": "8 in",
        "class or dimension ratio": "PC 350",
        "was it laid?": "1994",
        "highest pressure": "72 psi",
        "How far does the pressure rise": "20 psi",
        "proved to carry": "water",
        "top of the main below": "4 ft 6 in",
        "Is the pipe dug up": "yes",
        "bare pipe look": "sound",
        "tape read around": "28.4 in",
        "How thick is the wall": "0.28 in",
        "wrapped in polyethylene": "no",
        "nominal size of the service?": "3/4 in",
        "How is the tap to be made?": "direct",
        "What inlet thread": "AWWA taper",
        "marked on the corporation stop?": "100 psi",
        "Has somebody looked": "yes",
        "What is there?": "bell",
        "How far along the main": ["7 ft", "-5 ft"],
        "What else is there?": ["tap", "nothing more"],
        "Where around the pipe is it?": "3:00",
        "What is its nominal size?": "3/4 in",
        "maker's figures": "yes",
        "call the machine": "Crew 2's hand machine",
        "What is the smallest tap": "1/2 in",
        "And the largest?": "1 in",
        "fed by hand?": "100 psi",
        "body and gaskets": "150 psi",
        "diameter of the boring bar": "1.25 in",
        "How far does the bar travel": "9 in",
        "how far is it from the top of the pipe to the point": "4.5 in",
        "smallest outside diameter": "4.5 in",
        "And the largest outside": "14 in",
        "How long is the base chain": "48 in",
        "each chain extension": "24 in",
        "on the truck?": ["1", ""],
        "How thick is the chain": "0.5 in",
        "How far to the side": "3.5 in",
        "above the top of the pipe?": "1.5 in",
        "ring of the gasket": "2.5 in",
        "diameter of the studs": "0.75 in",
        "How many of those studs": "2",
        "Write it to job.json?": "yes",
    }
    with new(folder, scratch) as terminal:
        assert terminal.converse(answers, "") == 0
        shown = terminal.shown()
    assert "\x1b" not in shown, "a dumb terminal knows no escape sequences"
    assert "next: mainbore plan job.json" in shown
    assert files(folder) == ["job.json"]
    job = json.loads((folder / "job.json").read_text())
    assert job["main"]["cover"] == "4 ft 6 in" and job["main"]["material"] == "ductile iron"
    assert job["nearby"][1] == {"what": "tap", "along": "-5 ft", "clock": "3:00", "size": "3/4 in"}
    planned = plan(folder)
    assert planned.returncode == 0, planned.stdout + planned.stderr


def unknown(folder, scratch):
    """Don't know to everything: a file, what must be found out, and never a go."""
    with new(folder, scratch) as terminal:
        assert terminal.converse({}, "don't know") == 0
        shown = flat(terminal.shown())
    assert "4 facts are still to be found out" in shown
    assert json.loads((folder / "job.json").read_text()) == {"main": {"carries": "unknown"}}
    assert plan(folder).returncode == 2
    found = ["--set", "main.material=ductile iron", "--set", "main.size=8 in", "--set", "main.pressure=72 psi",
             "--set", "service.size=1 in"]
    assert plan(folder, *found).returncode == 1, "nobody knows what the pipe carries"
    assert plan(folder, *found, "--set", "main.carries=water").returncode == 3


def typing_error(folder, scratch):
    """A wrong word, a number without a unit, a key taken back."""
    with new(folder, scratch) as terminal:
        while "What is the main made of?" not in flat(terminal.next_question()):
            terminal.answer("")
        terminal.answer("ductile irn")
        assert 'did you mean "ductile iron"?' in flat(terminal.next_question())
        terminal.type("ductile irx")
        terminal.keys("BSpace")
        terminal.keys("BSpace")
        terminal.answer("ron")
        assert "nominal size of the main?" in flat(terminal.next_question())
        terminal.answer("8")
        assert 'write "8 in"' in flat(terminal.next_question())
        terminal.answer("8 in")
        terminal.next_question()
        terminal.keys("Up")  # an arrow is no answer
        terminal.answer("")
        assert "!" in terminal.next_question()
        terminal.answer("")
        assert terminal.converse({}, "") == 0
    job = json.loads((folder / "job.json").read_text())
    assert job["main"] == {"material": "ductile iron", "size": "8 in"}


def interrupt(folder, scratch):
    """Ctrl-C in the middle: nothing is written."""
    with new(folder, scratch) as terminal:
        terminal.answer_each(6, "don't know")
        terminal.type("half an ans")
        terminal.keys("C-c")
        terminal.until(lambda: "status 130" in terminal.shown(), "the end")
    assert files(folder) == []


def late_interrupt(folder, scratch):
    """Ctrl-C at the last question: nothing is written."""
    with new(folder, scratch) as terminal:
        while "Write it to job.json?" not in terminal.next_question():
            terminal.answer("")
        terminal.keys("C-c")
        terminal.until(lambda: "status 130" in terminal.shown(), "the end")
    assert files(folder) == []


def is_running(process):
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def killed_terminal(folder, scratch):
    """The window is closed: the program ends, nothing is written."""
    with new(folder, scratch) as terminal:
        terminal.answer_each(6, "")
        program = terminal.program()
        assert is_running(program)
        terminal.close()
        terminal.until(lambda: not is_running(program), "the end of the program")
    assert files(folder) == []


def end_of_input(folder, scratch):
    """Ctrl-D, and the word stop: nothing is written."""
    with new(folder, scratch) as terminal:
        terminal.next_question()
        terminal.keys("C-d")
        end = terminal.next_question()
        assert "stopped; nothing is written" in end and "status 130" in end
    with new(folder, scratch) as terminal:
        terminal.next_question()
        terminal.answer("stop")
        assert "status 130" in terminal.next_question()
    assert files(folder) == []


def kept_file(folder, scratch):
    """A file that is there stays, unless the user says otherwise."""
    (folder / "job.json").write_text("yesterday's")
    with new(folder, scratch) as terminal:
        end = terminal.next_question()
        assert "is there already" in end and "status 74" in end
    assert (folder / "job.json").read_text() == "yesterday's"
    with new(folder, scratch, "--replace") as terminal:
        assert terminal.converse({"Work order number?": "AV-7"}, "") == 0
    assert json.loads((folder / "job.json").read_text()) == {"id": "AV-7"}
    assert files(folder) == ["job.json"]


def not_a_terminal(folder, scratch):
    """Nothing is asked where nobody can answer."""
    ran = subprocess.run([PROGRAM, "new", "job.json"], cwd=folder, input="AV-1\n" * 100, capture_output=True, text=True,
                         check=False, timeout=60)
    assert ran.returncode == 64, ran.returncode
    assert ran.stdout == "" and "?" not in ran.stderr
    with new(folder, scratch, "2> " + str(scratch / "errors")) as terminal:
        assert "status 64" in terminal.next_question()
    assert files(folder) == []


CASES = [full_job, unknown, typing_error, interrupt, late_interrupt, killed_terminal, end_of_input, kept_file,
         not_a_terminal]


def main():
    global PROGRAM
    case, PROGRAM = sys.argv[1], str(pathlib.Path(sys.argv[2]).resolve())
    if not have_tmux():
        return 77
    with tempfile.TemporaryDirectory() as one:
        folder, scratch = pathlib.Path(one) / "jobs", pathlib.Path(one) / "scratch"
        folder.mkdir()
        scratch.mkdir()
        next(known for known in CASES if known.__name__ == case)(folder, scratch)
    return 0


if __name__ == "__main__":
    sys.exit(main())
