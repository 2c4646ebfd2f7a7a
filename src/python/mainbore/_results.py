"""What comes out. The paths are those of docs/plan.md and docs/batch.md, and only grow."""
from __future__ import annotations

import html
from typing import TYPE_CHECKING, Any, Dict, List, Literal, TypedDict

if TYPE_CHECKING:
    from ._planner import Planner

Verdict = Literal["go", "hold", "no-go", "unreadable"]


class Quantity(TypedDict):
    value: float
    unit: str


class Reason(TypedDict, total=False):
    """Why an order cannot be read, or what was left out of it."""

    code: str
    path: str
    line: int
    column: int
    message: str
    help: str


class Record(TypedDict, total=False):
    """What a batch says of one order. What is not known is left out."""

    row: int
    line: int
    id: str
    verdict: Verdict
    waits_for: Literal["office", "site"]
    method: str
    count: int
    tap: Quantity
    limit: Quantity
    reduce_to: Quantity
    holds: List[str]
    stops: List[str]
    rejected: List[str]
    reasons: List[Reason]
    remarks: List[Reason]


class Plan(Dict[str, Any]):
    """A plan, by the paths of docs/plan.md. In a notebook it shows as its field sheet."""

    def __init__(self, members: Dict[str, Any], planner: "Planner", job: bytes, units: str | None, language: str | None) -> None:
        super().__init__(members)
        self._of = (planner, job, units, language)

    @property
    def verdict(self) -> Verdict:
        """"go", "hold" or "no-go"."""
        return self["verdict"]  # type: ignore[no-any-return]

    @property
    def holds(self) -> List[Dict[str, Any]]:
        """What must be cleared before the cut."""
        return self["holds"]  # type: ignore[no-any-return]

    @property
    def findings(self) -> List[Dict[str, Any]]:
        return self["findings"]  # type: ignore[no-any-return]

    def card(self, full: bool = False) -> str:
        """The card as plain text: with `full`, reasons, load list and order of work too."""
        planner, job, units, language = self._of
        return planner.card(job, full=full, units=units, language=language)

    def sheet(self) -> str:
        """The field sheet, a page of HTML."""
        planner, job, units, language = self._of
        return planner.sheet(job, units=units, language=language)

    def __reduce__(self):  # type: ignore[no-untyped-def]
        return type(self), (dict(self), *self._of)

    def _repr_html_(self) -> str:
        # A page of its own: its style must not reach the notebook, nor the notebook's the sheet.
        page = html.escape(self.sheet())
        return f'<iframe srcdoc="{page}" style="width:100%;height:60em;border:0" title="field sheet"></iframe>'
