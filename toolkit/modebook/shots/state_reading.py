"""What units are at now, as a person wrote it down: a table of units, setting and choice."""

from __future__ import annotations

from pathlib import Path

from modebook.rig.reading import RigReading
from modebook.shelf.errors import ShelfError
from modebook.shelf.table import fold_title
from modebook.shelf.tables import read_table
from modebook.shots.notation import UnitNames
from modebook.shots.patched import patched_units

TITLES = {
    "units": ("units", "unit", "fixtures", "lights", "number", "unit number"),
    "setting": ("setting", "settings", "what"),
    "choice": ("choice", "is at", "state", "set to", "at", "value", "to"),
}
KNOWN = frozenset(title for titles in TITLES.values() for title in titles)


def read_state(path: Path, reading: RigReading) -> tuple[dict[tuple[str, str], str | None], list[str]]:
    """(unit number, setting key) to choice key out of a CSV, XLSX or ODS file, and one line for each bad row.

    A choice is told by its key or its label; `unknown` or nothing means that nobody knows. Raises ShelfError
    where the file cannot be read, or lacks a column.
    """
    table = read_table(path, KNOWN, such_as="units, setting, choice")
    folded = [fold_title(title) for title in table.titles]
    at: dict[str, int] = {}
    for column, names in TITLES.items():
        place = next((folded.index(name) for name in names if name in folded), None)
        if place is None:
            raise ShelfError(
                path,
                f"no column is titled {column!r}",
                place=f"row {table.title_row}",
                remedy="give units, setting and choice",
            )
        at[column] = place
    by_name, patched = UnitNames(reading), patched_units(reading)
    found: dict[tuple[str, str], str | None] = {}
    faults: list[str] = []
    for row in table.rows:
        if row.blank:
            continue
        units, setting, choice = (row.cells[at[column]].strip() for column in TITLES)
        try:
            meant = by_name.meant(units)
        except ValueError as error:
            faults.append(f"{path}: row {row.number}: {error}")
            continue
        for unit in meant:
            told = _one(patched[unit].fixture, setting, choice) if unit in patched else patched.why(unit)
            if isinstance(told, str):
                faults.append(f"{path}: row {row.number}: unit {unit}: {told}")
            else:
                found[unit, told[0]] = told[1]
    return found, list(dict.fromkeys(faults))


def _one(fixture: object, setting: str, choice: str) -> tuple[str, str | None] | str:
    """The keys that two words mean, or what is wrong with them."""
    from modebook.checks.reading import FixtureReading

    assert isinstance(fixture, FixtureReading)
    settings = [one for one in fixture.fixture.settings if not one.none]
    wanted = setting.casefold()
    one = next((s for s in settings if wanted in (s.key, (s.label or "").casefold())), None)
    if one is None:
        known = ", ".join(s.key for s in settings) or "none"
        return f"it has no setting {setting!r}; there are {known}"
    if choice.casefold() in ("", "unknown", "?", "-"):
        return one.key, None
    told = choice.casefold()
    picked = next((c for c in one.choices if told in (c.key, (c.label or "").casefold())), None)
    if picked is None:
        return f"{one.key} has no choice {choice!r}; there are {', '.join(c.key for c in one.choices)}"
    return one.key, picked.key
