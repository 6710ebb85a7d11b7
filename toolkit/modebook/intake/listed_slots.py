"""Rows that give several slots and as many names (`5-8 | Red, Green, Blue, White`): a row for each."""

from __future__ import annotations

import re

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Cell, Grid
from modebook.intake.names import read_name
from modebook.intake.values import read_values

_SIGNS = re.compile(r"\s*(?:,|;|/|\+|\||\n|·|•)\s*")
_RUN = re.compile(
    r"^\D{0,12}(?P<first>\d{1,3})\s*(?:-|–|—|…|\.\.+|to|bis|à|a|al)\s*(?P<last>\d{1,3})\s*$", re.IGNORECASE
)
_NAMED_RUN = re.compile(
    r"(?P<stem>[^\W\d][^\d(]*?)\s*(?P<first>\d{1,3})\s*(?:-|–|—|…|\.\.+|to|bis|à|a|al)\s*"
    r"(?:(?P<again>[^\W\d][^\d(]*?)\s*)?(?P<last>\d{1,3})",
    re.IGNORECASE,
)
"""Names that differ by their numbers alone, the first and the last of them: `Lamp 1 - Lamp 8`."""
_NUMBER = re.compile(r"(?P<n>\d{1,3})\s*$")
MOST = 12
LEAST = 3


def with_listed_slots(grid: Grid) -> Grid:
    """Give the grid with each such row as a row for every slot; the same grid where there is none.

    Only where a run of slots and a list of known names are of one length. The number at the end of another
    cell (`Cell 2`) is that of the group, and goes behind each name where there are several groups.
    """
    found: list[list[Cell]] = []
    groups = [_listed(row) for row in grid.rows]
    several = sum(group is not None for group in groups) > 1
    if not any(groups):
        return grid
    for row, group in zip(grid.rows, groups, strict=True):
        if group is None:
            found.append(row)
            continue
        slots, names = group
        run = _RUN.match(row[slots].flat)
        assert run is not None
        number = next(
            (m["n"] for c, cell in enumerate(row) if c not in (slots, names) and (m := _grouped(cell.flat))),
            "",
        )
        listed = of_one_cell(_SIGNS.split(row[names].text.strip()))
        for index, name in enumerate(listed):
            label = f"{name} {number}" if several and number else name
            texts = {slots: str(int(run["first"]) + index), names: label}
            found.append([_with(cell, texts.get(c, cell.text)) for c, cell in enumerate(row)])
    return Grid(found, grid.place, grid.ruled)


def _listed(row: list[Cell]) -> tuple[int, int] | None:
    """The columns of a run of slots and of a list of as many known names."""
    for c, cell in enumerate(row):
        run = _RUN.match(cell.flat)
        if not run or read_slot_cell(cell.flat).kind != "slots":
            continue
        count = int(run["last"]) - int(run["first"]) + 1
        if not LEAST <= count <= MOST:
            continue
        for other, named in enumerate(row):
            names = _SIGNS.split(named.text.strip()) if other != c else []
            if len(names) == count and all(read_name(name).sure for name in names):
                return c, other
    return None


def names_of_run(text: str, count: int) -> list[str]:
    """The names in a run of numbers (`Lamp 1 - Lamp 8`, `Lamp 1-8`), if there are just as many as slots."""
    run = _NAMED_RUN.fullmatch(" ".join(text.split()))
    if run is None or count < LEAST or (run["again"] and run["again"].casefold() != run["stem"].casefold()):
        return []
    first, last = int(run["first"]), int(run["last"])
    return [f"{run['stem']} {n}" for n in range(first, last + 1)] if last - first + 1 == count else []


def of_one_cell(names: list[str]) -> list[str]:
    """Names of which the first alone says whose all of them are, each with that: `Pixel 1 red, green`."""
    whose = re.fullmatch(r"(?P<cell>.*\d\W*)\s+\S+", names[0])
    if whose is None or any(any(letter.isdigit() for letter in name) for name in names[1:]):
        return names
    return [names[0], *(f"{whose['cell']} {name}" for name in names[1:])]


def _grouped(text: str) -> re.Match[str] | None:
    """The number of a group in a cell of its own words: `Cell 3`, `Half 2`; values are none."""
    if read_values(text) or not any(letter.isalpha() for letter in text) or len(text.split()) > 3:
        return None
    return _NUMBER.search(text)


def _with(cell: Cell, text: str) -> Cell:
    return Cell(text, cell.place, cell.row, cell.column, cell.span, cell.wraps)
