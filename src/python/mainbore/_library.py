"""The shared library: mainbore.h, as ctypes has it."""
from __future__ import annotations

import ctypes
import json
import os
import pathlib
from typing import Optional

from ._errors import Error, InternalError, UnreadableError, UsageError

GO, NO_GO, UNREADABLE, HOLD, USAGE, INTERNAL = 0, 1, 2, 3, 64, 70
VERDICTS = (GO, NO_GO, HOLD)
WHAT = {"verdict": 0, "plan": 1, "decisions": 2, "card": 3, "card full": 4, "sheet": 5}
UNITS = {"us": 0x100, "si": 0x200}
LANGUAGES = {"en": 0x400, "es": 0x800}
ONE_LINE, NO_ROWS = 0x1000, 0x2000
NDJSON = 1


class Text(ctypes.Structure):
    _fields_ = [("name", ctypes.c_char_p), ("bytes", ctypes.c_char_p), ("size", ctypes.c_size_t)]


class Inputs(ctypes.Structure):
    _fields_ = [("size", ctypes.c_size_t), ("rules", ctypes.POINTER(Text)), ("rules_count", ctypes.c_size_t),
                ("data", ctypes.POINTER(Text)), ("data_count", ctypes.c_size_t), ("settings", ctypes.POINTER(Text)),
                ("approved", ctypes.POINTER(Text))]


class BatchOptions(ctypes.Structure):
    _fields_ = [("in_", ctypes.c_int), ("what", ctypes.c_uint), ("jobs", ctypes.c_int), ("rows_before", ctypes.c_ulong),
                ("lines_before", ctypes.c_ulong)]



def _load() -> ctypes.CDLL:
    beside = pathlib.Path(__file__).with_name("libmainbore.so.0")
    name = os.environ.get("MAINBORE_LIBRARY") or (str(beside) if beside.exists() else "libmainbore.so.0")
    library = ctypes.CDLL(name)
    result = ctypes.POINTER(ctypes.c_void_p)
    library.mainbore_version.restype = ctypes.c_char_p
    library.mainbore_free.argtypes = [ctypes.c_void_p]
    library.mainbore_free.restype = None
    library.mainbore_planner_free.argtypes = [ctypes.c_void_p]
    library.mainbore_planner_free.restype = None
    library.mainbore_planner_from.argtypes = [ctypes.POINTER(Inputs), result, result]
    library.mainbore_plan.argtypes = [ctypes.c_void_p, ctypes.c_char_p, ctypes.c_size_t, ctypes.c_uint, result]
    library.mainbore_batch_text.argtypes = [ctypes.c_void_p, ctypes.c_char_p, ctypes.c_size_t, ctypes.POINTER(BatchOptions),
                                            ctypes.c_void_p, result, result]
    return library


library = _load()


def version() -> str:
    """The version of the library that is running."""
    return library.mainbore_version().decode()


def taken(result: ctypes.c_void_p) -> Optional[bytes]:
    """The text of a result, which is freed."""
    if not result.value:
        return None
    try:
        return ctypes.string_at(result.value)
    finally:
        library.mainbore_free(result)


def error(status: int, told: Optional[bytes]) -> Error:
    """What a status that is no verdict raises."""
    if told is None:
        raise MemoryError("mainbore: no memory")
    faults = json.loads(told)["faults"]
    return {UNREADABLE: UnreadableError, USAGE: UsageError}.get(status, InternalError)(faults)
