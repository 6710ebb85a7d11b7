"""A swapped spare: everything to set on it so that it answers like the unit that it stands in for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from modebook.documents.settings import Choice, Setting, Way
from modebook.documents.ways import slot_ways
from modebook.render.sheets.control_cards import Card, card_of
from modebook.render.sheets.crew import CrewLine, crew_lines
from modebook.rig.firmware import recorded
from modebook.rig.reading import PatchedRow, RigReading
from modebook.shelf.errors import ShelfError

DMX_PERSONALITY_PID = "0x00E0"
"""The PID that sets a mode by its number (ANSI E1.20, DMX_PERSONALITY; the number as in words.e120)."""


@dataclass(frozen=True, slots=True)
class SpareSetting:
    """One setting: what it should be at, why, and how to get there."""

    key: str
    choice_key: str | None
    name: str
    choice: str
    why: str
    ways: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Spare:
    """The sheet of one unit."""

    line: CrewLine
    footprint: int
    mode_over_rdm: str
    """How RDM sets the mode; empty where its number or the fixture's RDM is not known."""
    mode_note: str
    """The menu state that the mode depends on; empty where there is none."""
    menu: tuple[tuple[str, str], ...]
    """Menu states of this very unit that rig.json tells of."""
    firmware: str
    uid: str
    serial: str
    rdm_model: str
    settings: tuple[SpareSetting, ...]
    card: Card
    rdm_passes: str


def spare(reading: RigReading, number: str) -> Spare:
    """The sheet for a unit. Raises ShelfError for one that the patch lacks or whose mode is not known."""
    rows = reading.by_unit.get(number.strip().casefold())
    if not rows:
        some = ", ".join(list(dict.fromkeys(row.unit.number for row in reading.rows if row.unit.number))[:12])
        raise ShelfError(
            reading.patch.path, f"there is no unit {number!r}", remedy=f"name one of the patch: {some}, ..."
        )
    row = rows[0]
    if row.fixture is None or row.mode is None:
        raise ShelfError(
            reading.patch.path,
            f"unit {number} has no record or no mode that is known, so nothing can be said of its settings",
            place=f"row {row.unit.row}",
            remedy="see `modebook audit`",
        )
    fixture, known, unit = row.fixture.fixture, row.known, row.unit
    rdm = f"{fixture.rdm.manufacturer} {fixture.rdm.model}" if fixture.rdm else ""
    number_of = row.mode.mode.number
    address = unit.address
    settings = tuple(_settings(row))
    return Spare(
        crew_lines(reading)[unit.row],
        row.mode.mode.footprint,
        f"PID {DMX_PERSONALITY_PID}, value {number_of}" if rdm and number_of is not None else "",
        row.mode.mode.given or "",
        tuple((known.menu if known else {}).items()),
        unit.firmware or (known.firmware if known and known.firmware else "") or recorded(row),
        unit.uid or (known.uid if known and known.uid else ""),
        unit.serial or (known.serial if known and known.serial else ""),
        rdm,
        settings,
        card_of(rows, {one.key: one.choice_key for one in settings if one.choice_key}),
        reading.link(address.universe).rdm if address else "unknown",
    )


def _settings(row: PatchedRow) -> Sequence[SpareSetting]:
    assert row.fixture is not None
    assert row.mode is not None
    planned = row.known.settings if row.known else {}
    by_slot = {(way.setting, way.choice) for way in slot_ways(row.mode.mode)}
    found: list[SpareSetting] = []
    for setting in row.fixture.fixture.settings:
        if setting.none:
            continue
        choice, why = _wanted(setting, planned.get(setting.key))
        ways = []
        if choice is not None and ((setting.key, choice.key) in by_slot or (setting.key, None) in by_slot):
            ways.append("by a slot: see the control card below")
        ways += [_way(way, choice) for way in setting.ways if _reaches(way, choice)]
        name = setting.label or setting.key
        told = "not known" if choice is None else choice.label or choice.key
        found.append(
            SpareSetting(
                setting.key,
                choice.key if choice else None,
                name,
                told,
                why,
                tuple(ways) or ("no way is recorded",),
            )
        )
    return found


def _wanted(setting: Setting, planned: str | None) -> tuple[Choice | None, str]:
    choice = next((one for one in setting.choices if one.key == planned), None)
    if choice is not None:
        return choice, "as rig.json has the unit"
    if setting.factory is not None:
        return setting.factory, "the factory's choice; nothing else is planned"
    return None, "neither a plan nor the factory's choice is recorded: look at a like unit beside it"


def _reaches(way: Way, choice: Choice | None) -> bool:
    if choice is None:
        return way.by != "rdm"
    if way.by == "rdm":
        return choice.key in (way.values or {})
    return way.choices is None or choice.key in way.choices


def _way(way: Way, choice: Choice | None) -> str:
    lock = ""
    if way.locked:
        lock = f" (unlock first: {way.locked})" if isinstance(way.locked, str) else " (unlock first)"
    if way.by == "rdm":
        value = (way.values or {}).get(choice.key) if choice else None
        data = f", value {value}" if value is not None else ""
        size = f" in {way.size} byte{'s' * (way.size != 1)}" if way.size else ""
        return f"over RDM: PID {way.pid}{data}{size}{lock}"
    where = {"menu": "at the menu", "app": "in its app", "page": "on its own network page"}[way.by]
    path = f": {' > '.join(way.path)}" if way.path else ""
    end = f" > {choice.label or choice.key}" if choice and way.path else ""
    return f"{where}{path}{end}{lock}"
