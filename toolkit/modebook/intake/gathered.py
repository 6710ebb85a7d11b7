"""What the walk over a source gathers: charts with their rows, tables of values, prose."""

from __future__ import annotations

from dataclasses import dataclass, field

from modebook.intake.chart_rows import ChartRow
from modebook.intake.grid import Line, Place
from modebook.intake.headings import Footnote, ModeHead


@dataclass(slots=True)
class Chart:
    """The rows of one table (over all its pages), and the modes whose slots it holds."""

    heads: list[ModeHead | None]
    titles: list[str]
    rows: list[ChartRow] = field(default_factory=list)
    notes: list[Footnote] = field(default_factory=list)
    place: Place = field(default_factory=Place)
    why: list[str] = field(default_factory=list)
    block: bool = False
    """A heading and a small table a slot."""
    loose: bool = False
    stray: list[tuple[str, Place]] = field(default_factory=list)
    """Text inside the chart that is no row of it."""
    told: list[Line] = field(default_factory=list)
    """Sentences below it that tell when slots work."""

    @property
    def last(self) -> int:
        """The highest slot of its first mode so far; of any, if that has none."""
        first = [max(r.slots[0].slots) for r in self.rows if 0 in r.slots and r.slots[0].kind == "slots"]
        return max(
            first,
            default=max(
                (max(c.slots) for r in self.rows for c in r.slots.values() if c.kind == "slots"), default=0
            ),
        )


@dataclass(slots=True)
class Gathered:
    """Everything found in a source."""

    charts: list[Chart] = field(default_factory=list)
    shared: list[tuple[str, list[ChartRow]]] = field(default_factory=list)
    """Tables of values that name a function instead of a slot."""
    prose: list[Line] = field(default_factory=list)
    footnotes: list[Footnote] = field(default_factory=list)
    lines: list[Line] = field(default_factory=list)
    """All lines, whatever became of them."""
    unread: int = 0
    """Tables of values of which nothing says whose they are."""
    lost: list[ModeHead] = field(default_factory=list)
    """Titles of modes below which stood nothing but such tables."""
    _seen: int = 0

    def left_behind(self, head: ModeHead | None) -> None:
        """Take note of the title that waits for a chart as the walk comes to the next, or to the end."""
        if head is not None and head.strong and self.unread > self._seen:
            self.lost.append(head)
        self._seen = self.unread
