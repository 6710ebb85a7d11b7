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
        level = read_name(row.name or next(iter(row.matrix.values()), "")).level
        if row.has_slot and not has_own and not level:
            for name in names:
                if name in tables:
                    found.extend(replace(r, slots={}, why=list(r.why)) for r in tables[name])
                    break
    return found


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
