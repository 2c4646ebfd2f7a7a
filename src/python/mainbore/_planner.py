"""The planner: rules, tables, settings and approved list read once, and any number of jobs planned under them."""
from __future__ import annotations

import ctypes
import functools
import itertools
import json
import os
import pathlib
import weakref
from typing import Any, Iterable, Iterator, List, Mapping, Optional, Sequence, Tuple, Union, cast

from . import _library as c
from ._ahead import Call, in_turn
from ._jobs import Job, NamedText, Source, folder, job_bytes, job_lines, source, sources
from ._results import Plan, Record

_AHEAD = 64  # of chunks of so many orders and more the next is taken while one is planned
_PARSED = 64  # records parsed at once


class Planner:
    """Plans jobs under a utility's rules.

    rules     files laid over the default rules, in order: a path, a mapping, or a list of these
    data      a folder of tables in place of those built in
    settings  a settings file, as a path or a mapping; rules and an approved list that it names are seen from its folder
    approved  the utility's approved fittings, a path (JSON or CSV) or a mapping; else those of the settings

    Raises UnreadableError with every fault of them. May be shared by threads and pickled: what was read goes with it.
    """

    def __init__(self, rules: Union[None, Source, Iterable[Source]] = None, *, data: Union[None, str, "os.PathLike[str]"] = None,
                 settings: Optional[Source] = None, approved: Optional[Source] = None) -> None:
        laid = sources(rules, "rules")
        own = None if settings is None else source(settings, "settings")
        fittings = None if approved is None else source(approved, "approved list")
        if own is not None:
            named = _Named(own, isinstance(settings, Mapping))
            laid = named.rules() + laid
            fittings = named.approved() if fittings is None else named.apart(fittings)
        self._make((laid, [] if data is None else folder(data), own, fittings))

    def _make(self, texts: Tuple[List[NamedText], List[NamedText], Optional[NamedText], Optional[NamedText]]) -> None:
        self._texts = texts
        laid, data, own, fittings = texts
        made, result = ctypes.c_void_p(), ctypes.c_void_p()
        inputs = c.Inputs(ctypes.sizeof(c.Inputs), _texts(laid), len(laid), _texts(data), len(data),
                          None if own is None else _texts([own]), None if fittings is None else _texts([fittings]))
        status = c.library.mainbore_planner_from(ctypes.byref(inputs), ctypes.byref(made), ctypes.byref(result))
        told = c.taken(result)
        if status != c.GO:
            raise c.error(status, told)
        self._made = made
        weakref.finalize(self, c.library.mainbore_planner_free, made)

    def __getstate__(self) -> Any:
        return self._texts

    def __setstate__(self, texts: Any) -> None:
        self._make(texts)

    def plan(self, job: Job, *, units: Optional[str] = None, language: Optional[str] = None) -> Plan:
        """The plan of one job. Raises UnreadableError with every fault of the job.

        units     "us" or "si"; else those of the settings, else us
        language  "en" or "es", of what is for people to read: card and sheet
        """
        text = job_bytes(job)
        told = self._text(text, "plan", units, language, c.ONE_LINE)
        return Plan(json.loads(told), self, text, units, language)

    def plan_json(self, job: Job, *, units: Optional[str] = None) -> str:
        """The plan as `mainbore plan --format json` prints it."""
        return self._text(job_bytes(job), "plan", units, None).decode()

    def verdict(self, job: Job, *, units: Optional[str] = None) -> Record:
        """The verdict alone: several times as fast as the plan. Raises as plan() does."""
        return cast(Record, json.loads(self._text(job_bytes(job), "verdict", units, None)))

    def card(self, job: Job, *, full: bool = False, units: Optional[str] = None, language: Optional[str] = None) -> str:
        """The card as `mainbore plan` prints it, or with `full` as `mainbore plan --full` does."""
        return self._text(job_bytes(job), "card full" if full else "card", units, language).decode()

    def sheet(self, job: Job, *, units: Optional[str] = None, language: Optional[str] = None) -> str:
        """The field sheet, a page of HTML."""
        return self._text(job_bytes(job), "sheet", units, language).decode()

    def batch(self, orders: Iterable[Job], *, what: str = "verdict", units: Optional[str] = None, rows: bool = True, jobs: int = 1,
              chunk: int = 512) -> Iterator[Record]:
        """A record for each order, in order, while they come. An order that cannot be read is a record that says why.

        orders  mappings, or JSON as text or bytes, which is faster: a file opened for reading gives its lines
        what    "verdict"; "decisions" or "plan" for the paths of a plan
        rows    whether records carry their row and line
        jobs    threads that plan, beside the one that asks
        chunk   orders taken at once; the first few come sooner. Of 64 or more, the next are taken while some are planned
        """
        loads = json.loads
        for records in self.batch_bytes(orders, what=what, units=units, rows=rows, jobs=jobs, chunk=chunk):
            lines = records.split(b"\n")
            lines.pop()
            # Some at a time: a list is parsed faster than its members one by one, and a long one slower than short ones.
            for first in range(0, len(lines), _PARSED):
                yield from loads(b"[" + b",".join(lines[first:first + _PARSED]) + b"]")

    def batch_bytes(self, orders: Iterable[Job], *, what: str = "verdict", units: Optional[str] = None, rows: bool = True,
                    jobs: int = 1, chunk: int = 512) -> Iterator[bytes]:
        """The same as lines of JSON, some at a time: what `mainbore batch --format ndjson` writes."""
        if what not in ("verdict", "decisions", "plan"):
            raise ValueError(f'what is "verdict", "decisions" or "plan", not {what!r}')
        if chunk < 1:
            raise ValueError("chunk is 1 or more")
        asked = _what(what, units, None) | (0 if rows else c.NO_ROWS)
        coming, done = iter(orders), 0
        for size in _first_sizes(chunk):
            taken = list(itertools.islice(coming, size))
            if not taken:
                return
            yield self._records(job_lines(taken), c.BatchOptions(c.NDJSON, asked, jobs, done, done))
            done += len(taken)
        yield from in_turn(self._calls(coming, done, chunk, asked), max(jobs, 1))

    def _calls(self, coming: Iterator[Job], done: int, chunk: int, asked: int) -> Iterator[Call]:
        while taken := list(itertools.islice(coming, chunk)):
            yield functools.partial(self._records, job_lines(taken), c.BatchOptions(c.NDJSON, asked, 1, done, done))
            done += len(taken)

    def _records(self, text: bytes, options: c.BatchOptions) -> bytes:
        records, result = ctypes.c_void_p(), ctypes.c_void_p()
        status = c.library.mainbore_batch_text(self._made, text, len(text), ctypes.byref(options), None, ctypes.byref(records),
                                               ctypes.byref(result))
        told, lines = c.taken(result), c.taken(records)
        # A fault of the library in one order is a record that says so.
        if lines is None:
            raise c.error(status, told)
        return lines

    def _text(self, job: bytes, what: str, units: Optional[str], language: Optional[str], flags: int = 0) -> bytes:
        result = ctypes.c_void_p()
        status = c.library.mainbore_plan(self._made, job, len(job), _what(what, units, language) | flags, ctypes.byref(result))
        told = c.taken(result)
        if status not in c.VERDICTS or told is None:
            raise c.error(status, told)
        return told


def _first_sizes(chunk: int) -> Iterator[int]:
    """Orders taken at once before any are taken ahead: whoever waits for the first record need not wait for many."""
    size = min(8, chunk)
    while size < chunk or chunk < _AHEAD:
        yield size
        size = min(2 * size, chunk)


def _what(what: str, units: Optional[str], language: Optional[str]) -> int:
    asked = c.WHAT[what]
    if units is not None:
        if units not in c.UNITS:
            raise ValueError(f'units are "us" or "si", not {units!r}')
        asked |= c.UNITS[units]
    if language is not None:
        if language not in c.LANGUAGES:
            raise ValueError(f'a language is "en" or "es", not {language!r}')
        asked |= c.LANGUAGES[language]
    return asked


def _texts(named: Sequence[NamedText]) -> Any:
    """Keeps the bytes that it points to."""
    return (c.Text * len(named))(*[c.Text(os.fsencode(name), text, len(text)) for name, text in named])


class _Named:
    """The files that settings name, each under the name that it has there."""

    def __init__(self, settings: NamedText, is_mapping: bool) -> None:
        name, text = settings
        self._top = pathlib.Path() if is_mapping else pathlib.Path(name).parent
        try:
            members = json.loads(text)
        except ValueError:
            members = None
        # What is no file name is for the reader of the settings to refuse.
        self._members = members if isinstance(members, dict) else {}

    def rules(self) -> List[NamedText]:
        named = self._members.get("rules")
        return [self._read(one) for one in named if isinstance(one, str)] if isinstance(named, list) else []

    def approved(self) -> Optional[NamedText]:
        named = self._members.get("approved")
        return self._read(named) if isinstance(named, str) and named else None

    def apart(self, given: NamedText) -> NamedText:
        """A list that is given in place of theirs, which may have the same name in another folder."""
        name, text = given
        return (os.path.abspath(name) if name == self._members.get("approved") else name), text

    def _read(self, name: str) -> NamedText:
        return name, (self._top / name).read_bytes()
