"""Tells where a chart ends: at tables of another kind, at numbered headings, at words atop the next page."""

from __future__ import annotations

import re

from modebook.intake.gathered import Chart
from modebook.intake.grid import Grid, Line
from modebook.intake.lexicon import SURE
from modebook.intake.loose_rows import loose_rows, values_of
from modebook.intake.names import read_name
from modebook.intake.titles import title_roles

_SECTION = re.compile(r"^(?P<n>\d{1,2})\.\s+(?P<name>[^\W\d][^\d]*[^\W\d.])$")
_SUBSECTION = re.compile(r"^\d{1,2}(?:\.\d{1,2}){1,3}\.?\s+[^\W\d_]{2,}")


_HEADING = re.compile(r"^(?P<n>\d{1,2})(?P<point>\.?)\s+(?P<name>[^\W\d].*[^\W.])$")


def is_other(grid: Grid) -> bool:
    """Whether the titles of a grid are those of another kind of table: of units, messages, distances."""
    said = [title_roles(cell.flat) for cell in grid.rows[0] if cell.flat]
    return len(said) > 1 and all(said) and any(roles[:1] == ("foreign",) for roles in said)


def is_section(text: str, above: list[Line]) -> bool:
    """Whether a line is a numbered heading of the manual, `6. Technical data`, below rows of a chart: its
    number is a slot's that was there before, and its words are no parameter's name. `6.3 Error codes` can be
    nothing else.
    """
    if _SUBSECTION.match(text) and above and not re.search(r"\d\s*[-–—.…]+\s*\d", text[6:]):
        return True
    found = _SECTION.match(text)
    if not found or not above or read_name(found["name"]).score >= SURE:
        return False
    rows, _ = loose_rows(above)
    last = max((max(c.slots) for r in rows for c in r.slots.values() if c.kind == "slots"), default=0)
    return 0 < int(found["n"]) <= last


class Sections:
    """The numbered headings of a manual: after the one above the chart, the next one ends it."""

    def __init__(self) -> None:
        self.number: int | None = None
        self.pointed = True
        """Whether the headings are numbered with a point behind (`7. DMX`), and not without (`7 DMX`)."""

    def end(self, text: str, chart: Chart | None, lines: list[Line], *, heading: bool = False) -> bool:
        """Whether a line is the heading of another section. `lines`: those since the chart's last row.
        heading: the file says that it is one; below values that reached the top it ends the last slot.
        """
        if is_section(text, lines):
            return True
        if heading and not read_name(text).sure and _is_full(chart, lines):
            return True
        found = _HEADING.match(text)
        if not found or len(found["name"]) > 60:
            return False
        number, pointed = int(found["n"]), bool(found["point"])
        if not pointed and re.search(r"\d", found["name"]):
            return False  # a row of a chart: its number has no point either
        rows, _ = loose_rows(lines)
        read = [max(c.slots) for row in rows for c in row.slots.values() if c.kind == "slots"]
        named = read_name(found["name"]).score >= SURE
        if chart is None and not read and (pointed or not named):
            self.number, self.pointed = number, pointed
        last = max([*read, chart.last if chart is not None else 0])
        # Where slots stand in a table, or one of this number was there, the line is no slot's.
        apart = number <= last or (chart is not None and not chart.loose and not rows)
        next_one = self.number is not None and number == self.number + 1 and pointed == self.pointed
        return next_one and apart and not named


def _is_full(chart: Chart | None, lines: list[Line]) -> bool:
    """Whether the last row so far has values that end at the top of a slot."""
    rows, _ = loose_rows(lines)
    all_rows = reversed([*(chart.rows if chart else ()), *rows])
    last = next((row for row in all_rows if row.has_value or row.has_slot), None)
    return last is not None and any(value.end in (255, 65535) for value in values_of(last)[-1:])


def page_tail(lines: list[Line], turned_at: int) -> int:
    """How many lines from the end stand on a new page and go on with nothing: words alone, which begin anew.

    turned_at: the index of the first line of that page, 0 where no page was turned.
    """
    tail = lines[turned_at:]
    if not turned_at or not tail or any(letter.isdigit() for line in tail for letter in line.text):
        return 0
    begun = lines[turned_at - 1].text[-1:] in ",-–(/" or not tail[0].text[:1].isupper()
    return 0 if begun else len(tail)
