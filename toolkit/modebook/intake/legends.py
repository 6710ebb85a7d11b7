"""Tables of values that name functions in place of slots, a chart's legend: whose slots each is of."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from modebook.intake.chart_rows import ChartRow, read_slot_cell
from modebook.intake.folding import fold
from modebook.intake.gathered import Chart
from modebook.intake.grid import Grid
from modebook.intake.headers import find_header
from modebook.intake.loose_rows import values_of
from modebook.intake.names import read_name
from modebook.intake.titles import is_title_row, title_roles
from modebook.intake.values import read_values

Legends = Sequence[tuple[str, list[ChartRow]]]
_SEVERAL = re.compile(r"\s*(?:,|;|/|\n|\band\b|\bund\b|\bet\b|\by\b|\be\b|&)\s*")
_OF_SLOT = re.compile(
    r"^(?P<name>[^\W\d].*?)\s*[(\[,:–-]\s*(?:dmx[\s-]*)?(?:channel|ch|slot|kanal|canal|canale|voie)\.?\s*(?P<slot>\d{1,3})\s*[)\]]?$",
    re.IGNORECASE,
)
_REFERS = re.compile(r"^\W*(?:see|refer to|siehe|s\.|voir|v[eé]ase|ver|vedi)\s+\S", re.IGNORECASE)
"""`See gel list below`: what the values of a slot mean stands elsewhere."""
LEAST = 0.6  # of a legend's names must be a chart's


def rows_of_mode(chart: Chart, column: int) -> list[ChartRow]:
    """The rows of a chart with the names and slots of one of its modes alone."""
    if not any(row.matrix for row in chart.rows):
        return chart.rows
    return [
        replace(
            row,
            slots={column: row.slots[column]} if column in row.slots else {},
            matrix={column: row.matrix[column]} if column in row.matrix else {},
            why=list(row.why),
        )
        for row in chart.rows
    ]


def with_legends(rows: list[ChartRow], legends: Legends) -> list[ChartRow]:
    """The rows of a chart, with the values that a legend gives for a function by its name."""
    tables: dict[str, list[ChartRow]] = {}
    for name, told in legends:
        for each in names_in(name):
            tables.setdefault(fold(read_name(each).label or each), []).extend(told)
    found: list[ChartRow] = []
    for index, row in enumerate(rows):
        found.append(row)
        names = {fold(read_name(text).label) for text in (row.name, *row.matrix.values()) if text}
        below = rows[index + 1] if index + 1 < len(rows) else None
        has_own = bool(values_of(row)) or (below is not None and not below.has_slot and below.has_value)
        refers = has_own and _refers(row) and not (below is not None and not below.has_slot)
        level = read_name(row.name or next(iter(row.matrix.values()), "")).level
        if row.has_slot and (not has_own or refers) and not level:
            for name in names:
                if name in tables:
                    if refers:
                        found[-1] = replace(row, value="", meaning="", why=list(row.why))
                    found.extend(replace(r, slots={}, why=list(r.why)) for r in tables[name])
                    break
    return found


def _refers(row: ChartRow) -> bool:
    """Whether a row gives all of its values to a text that sends the reader to another table."""
    values = values_of(row)
    whole = len(values) == 1 and values[0].start == 0 and values[0].end in (255, 65535)
    return whole and _REFERS.match(row.meaning) is not None


def name_of_slot(heading: str, charts: Sequence[Chart]) -> str:
    """The name in a chart of the slot that a heading over a table of values gives: `Gels (channel 3)`."""
    found = _OF_SLOT.match(heading)
    for chart in reversed(charts) if found else ():
        for row in chart.rows:
            if found and any(cell.slots == (int(found["slot"]),) for cell in row.slots.values()):
                return row.name
    return ""


def continues(rows: Sequence[ChartRow], above: Sequence[ChartRow]) -> bool:
    """Whether values begin where those of a table before them ended, short of the top: its second half."""
    first = values_of(rows[0]) if rows else ()
    last = values_of(above[-1]) if above else ()
    return bool(first and last) and first[0].start == last[-1].end + 1


def names_in(text: str) -> list[str]:
    """The names that a legend's row is of: `Red, Green, Blue` are three, `Pan/Tilt speed` is one."""
    whole = read_name(text)
    if whole.sure and not whole.rest:
        return [text]
    parts = [part for part in _SEVERAL.split(text) if part]
    return parts if len(parts) > 1 and all(read_name(part).sure for part in parts) else [text]


def is_legend_of(rows: Sequence[ChartRow], charts: Sequence[Chart]) -> bool:
    """Whether rows of values name, for the most part, functions that charts before them have."""
    known = {
        fold(read_name(text).label)
        for chart in charts
        for row in chart.rows
        for text in (row.name, *row.matrix.values())
        if text
    }
    names = [fold(read_name(each).label) for row in rows if row.name for each in names_in(row.name)]
    return bool(names) and sum(name in known for name in names) >= LEAST * len(names)


def without_legend(grid: Grid) -> tuple[Grid, Grid | None]:
    """A matrix of slots and names without the legend that stands right below it, and that legend."""
    header = find_header(grid)
    if header is None:
        return grid, None
    slots = [c for c, cell in enumerate(grid.rows[header[0]]) if title_roles(cell.flat)[:1] == ("slot",)]
    if len(slots) != 1:
        return grid, None
    first = sum(header)
    for index in range(first, len(grid.rows)):
        texts = [cell.flat for cell in grid.rows[index]]
        named = texts[slots[0]]
        others = [text for c, text in enumerate(texts) if c != slots[0] and text]
        roles = {role for text in texts for role in title_roles(text)[:1]}
        if index > first + 1 and is_title_row(texts) and "value" in roles and "slot" not in roles:
            above = Grid(grid.rows[:index], grid.place, grid.ruled)
            return above, Grid(grid.rows[index:], grid.place, grid.ruled)
        is_name = bool(named) and read_slot_cell(named).kind == "text"
        if is_name and others and read_values(others[0]):
            known = all(read_name(each).sure for each in names_in(named))
            if not known or index < first + 2:
                return grid, None
            above = Grid(grid.rows[:index], grid.place, grid.ruled)
            return above, Grid(grid.rows[index:], grid.place, grid.ruled)
        if any(read_values(text) for text in others):
            return grid, None
    return grid, None
