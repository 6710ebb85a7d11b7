"""A page of lists: sections with a title, notes and rows, for answers that come as a table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from modebook.render.csv_guard import Cell
from modebook.render.sheets.page import page


@dataclass(frozen=True, slots=True)
class Section:
    """A list on a page; `tick` puts an empty box before each row, `numbers` are columns that stand right."""

    title: str
    titles: Sequence[str] = ()
    rows: Sequence[Sequence[Cell]] = ()
    small: str = ""
    notes: Sequence[str] = field(default_factory=tuple)
    tick: bool = False
    numbers: frozenset[int] = frozenset()
    svg: str = ""
    """A picture of our own making, its texts escaped already."""


def listing(
    title: str,
    subtitle: str,
    sections: Sequence[Section],
    notes: Sequence[str] = (),
    caution: str = "",
    pages: Sequence[tuple[str, str]] = (),
) -> str:
    """The page, as HTML that needs nothing beside it; `pages` are the sheets beside it that it leads to."""
    return page(
        "list.html", title, subtitle=subtitle, sections=sections, notes=notes, words=caution, pages=pages
    )
