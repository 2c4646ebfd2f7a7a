"""What is raised. Every fault of a text is in it, not the first alone."""
from __future__ import annotations

from typing import List, TypedDict


class Fault(TypedDict, total=False):
    """One fault of a text, where it stands and what is allowed. What is not known is left out."""

    code: str  # stable; `mainbore explain CODE` says more
    file: str
    line: int
    column: int
    path: str  # JSON Pointer, "/main/material"
    message: str
    help: str
    excerpt: str
    text: str  # as the command prints it


class Error(Exception):
    """Any error of this package. `faults` lists what was found."""

    def __init__(self, faults: List[Fault]) -> None:
        self.faults = faults
        super().__init__("\n".join(str(fault.get("text", fault.get("message", ""))).rstrip() for fault in faults))

    def __reduce__(self):  # type: ignore[no-untyped-def]
        return type(self), (self.faults,)


class UnreadableError(Error, ValueError):
    """A job, rules, settings, tables or an approved list that cannot be read. Nothing was planned."""


class UsageError(Error, ValueError):
    """A call that makes no sense."""


class InternalError(Error, RuntimeError):
    """A fault of the library: report it with the job, and have an engineer plan the tap."""
