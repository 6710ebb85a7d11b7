"""Tells where a chart ends: at tables of another kind, at numbered headings, at words atop the next page."""

from __future__ import annotations

import re

from modebook.intake.grid import Grid, Line
from modebook.intake.lexicon import SURE
from modebook.intake.loose_rows import loose_rows
from modebook.intake.names import read_name
from modebook.intake.titles import title_roles

_SECTION = re.compile(r"^(?P<n>\d{1,2})\.\s+(?P<name>[^\W\d][^\d]*[^\W\d.])$")
_SUBSECTION = re.compile(r"^\d{1,2}(?:\.\d{1,2}){1,3}\.?\s+[^\W\d_]{2,}")


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


def page_tail(lines: list[Line], turned_at: int) -> int:
    """How many lines from the end stand on a new page and go on with nothing: words alone, which begin anew.

    turned_at: the index of the first line of that page, 0 where no page was turned.
    """
    tail = lines[turned_at:]
    if not turned_at or not tail or any(letter.isdigit() for line in tail for letter in line.text):
        return 0
    begun = lines[turned_at - 1].text[-1:] in ",-–(/" or not tail[0].text[:1].isupper()
    return 0 if begun else len(tail)
