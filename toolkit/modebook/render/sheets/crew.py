"""A rig's units for the crew: one line each, by position in walking order and by universe."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from modebook.checks.finding import SEVERITIES, Finding
from modebook.documents.ways import REMOTE
from modebook.render.csv_guard import Cell
from modebook.render.sheets.universe_map import Stretch, clashes, free_runs, stretches, universe_svg
from modebook.render.verify_text import natural
from modebook.rig.gathered import units_once
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.remote import UnitRemote, remote

NO_POSITION = "no position written"


@dataclass(frozen=True, slots=True)
class Start:
    """One start address of a unit; universe and address are empty where it is not patched."""

    universe: int | None
    address: int | None
    slots: int | None
    """How many it takes there, as far as its universes reach."""
    part: str


@dataclass(frozen=True, slots=True)
class CrewLine:
    """One unit as the crew reads it; texts are as written, empty where nobody wrote any."""

    unit: str
    fixture: str
    mode: str
    """Name and personality number; as written where the record lacks it, with a question mark."""
    addresses: tuple[str, ...]
    """``2/101-116`` for each start address."""
    starts: tuple[Start, ...]
    """The same as numbers."""
    position: str
    purpose: str
    group: str
    reach: str
    smoothing: str
    """How it is changed: `slot`, `RDM`, `by hand: menu`, `none`, `unknown`."""
    set_to: str
    """The settings that rig.json plans."""
    note: str
    errors: int
    warnings: int

    @property
    def findings(self) -> str:
        """``2 errors, 1 warning``; empty where there are none."""
        told = [(self.errors, "error"), (self.warnings, "warning")]
        return ", ".join(f"{count} {word}{'s' * (count != 1)}" for count, word in told if count)


@dataclass(frozen=True, slots=True)
class Place:
    """A position and its units."""

    name: str
    lines: tuple[CrewLine, ...]


@dataclass(frozen=True, slots=True)
class UniverseSheet:
    """A universe: its map, its rows, what is free."""

    number: int
    svg: str
    used: int
    link: str
    rows: tuple[tuple[str, CrewLine], ...]
    """The stretch of slots, and whose it is."""
    bounds: tuple[tuple[int, int], ...]
    """The first and last slot of each of these rows."""
    free: str
    clashes: str


LINE_TITLES = (
    "Unit",
    "Fixture",
    "Mode",
    "Position",
    "Purpose",
    "Group",
    "Reach",
    "Smoothing changed by",
    "Set to",
    "Note",
    "Findings",
)


START_TITLES = ("Universe", "Address", "Slots", "Part")


def start_cells(line: CrewLine) -> list[tuple[Cell, ...]]:
    """A unit's start addresses below START_TITLES, a row each, as columns of numbers.

    A spreadsheet takes ``1/11`` and ``1-9`` for dates, so no cell of a CSV holds an address in that form.
    """
    return [(one.universe, one.address, one.slots, one.part) for one in line.starts]


def line_cells(line: CrewLine) -> tuple[Cell, ...]:
    """A unit's cells below LINE_TITLES."""
    return (
        line.unit,
        line.fixture,
        line.mode,
        line.position,
        line.purpose,
        line.group,
        line.reach,
        line.smoothing,
        line.set_to,
        line.note,
        line.findings,
    )


def crew_lines(reading: RigReading, findings: Sequence[Finding] = ()) -> dict[int, CrewLine]:
    """Each unit's line by the row of the file that it stands in (further rows of a unit lead to the same)."""
    counted: dict[int, list[str]] = defaultdict(list)
    for finding in findings:
        if finding.row is not None:
            counted[finding.row].append(finding.severity)
    ways = {one.row.unit.row: one for one in remote(reading).units}
    found: dict[int, CrewLine] = {}
    for row in units_once(reading):
        several = row.mode is not None and row.unit.number and len(row.mode.blocks) > 1
        rows = reading.by_unit[row.unit.number.casefold()] if several else [row]
        line = _line(
            row, rows, ways.get(row.unit.row), [word for each in rows for word in counted[each.unit.row]]
        )
        for each in rows:
            found.setdefault(each.unit.row, line)
    return found


def by_position(reading: RigReading, lines: dict[int, CrewLine]) -> list[Place]:
    """The positions in walking order (Truss 2 before Truss 10), each with its units by number."""
    places: dict[str, tuple[str, list[CrewLine]]] = {}
    for row in units_once(reading):
        name = " ".join(row.unit.position.split())
        places.setdefault(name.casefold(), (name or NO_POSITION, []))[1].append(lines[row.unit.row])
    ordered = sorted(places.values(), key=lambda pair: (pair[0] == NO_POSITION, natural(pair[0])))
    return [Place(name, tuple(sorted(some, key=lambda line: natural(line.unit)))) for name, some in ordered]


def by_universe(reading: RigReading, lines: dict[int, CrewLine]) -> list[UniverseSheet]:
    """The universes in use, in order, each with its map."""
    twins = frozenset(row.unit.row for one in reading.meetings if one.twins for row in (one.later, one.other))
    used = {universe.number: universe.slots_used for universe in reading.universes}
    return [
        UniverseSheet(
            number,
            universe_svg(number, taken, twins),
            used[number],
            _link(reading, number),
            tuple((f"{one.first}-{one.last}", lines[one.row.unit.row]) for one in taken),
            tuple((one.first, one.last) for one in taken),
            _runs(free_runs(taken)),
            _runs(clashes(taken, twins)),
        )
        for number, taken in stretches(reading).items()
    ]


def taken_by(reading: RigReading) -> dict[int, list[Stretch]]:
    """Who sits where, by universe."""
    return stretches(reading)


def _runs(runs: list[tuple[int, int]]) -> str:
    return ", ".join(f"{first}-{last}" if first != last else str(first) for first, last in runs)


def _link(reading: RigReading, number: int) -> str:
    link = reading.link(number)
    told = [f"{link.gateway_hz:g} packets a second out of the gateway"] if link.gateway_hz else []
    told.append(
        {"yes": "RDM passes", "no": "RDM does not pass", "unknown": "whether RDM passes is not known"}[
            link.rdm
        ]
    )
    if link.about:
        told.append(link.about)
    return "; ".join(told)


def _line(
    row: PatchedRow, rows: Sequence[PatchedRow], way: UnitRemote | None, severities: Sequence[str]
) -> CrewLine:
    unit = row.unit
    settings = row.known.settings if row.known else {}
    return CrewLine(
        unit=unit.number or f"row {unit.row}",
        fixture=_fixture(row),
        mode=mode_words(row),
        addresses=tuple(address_words(each) for each in rows),
        starts=tuple(_start(each) for each in rows),
        position=unit.position,
        purpose=unit.purpose,
        group=unit.group,
        reach=row.reach or "",
        smoothing=_smoothing(way),
        set_to=", ".join(f"{key}: {choice}" for key, choice in settings.items()),
        note=unit.note or (row.known.note if row.known and row.known.note else ""),
        errors=severities.count(SEVERITIES[0]),
        warnings=severities.count(SEVERITIES[1]),
    )


def _start(row: PatchedRow) -> Start:
    address = row.unit.address
    if address is None:
        return Start(None, None, None, row.part)
    return Start(address.universe, address.address, row.last - row.first + 1 if row.first else None, row.part)


def _fixture(row: PatchedRow) -> str:
    if row.fixture is None:
        return f"{row.unit.fixture} (no record)" if row.unit.fixture else "no fixture written"
    return f"{row.fixture.fixture.maker} {row.fixture.fixture.model}"


def mode_words(row: PatchedRow) -> str:
    """``Extended (3)``; as written, with what is wrong, where the record has no such mode."""
    if row.mode is None:
        return f"{row.unit.mode or 'none written'} (not in the record)" if row.fixture else row.unit.mode
    mode = row.mode.mode
    return mode.name if mode.number is None else f"{mode.name} ({mode.number})"


def address_words(row: PatchedRow) -> str:
    """``2/101-116``, with the part's name where the mode has several start addresses."""
    address = row.unit.address
    if address is None:
        return "not patched"
    told = str(address)
    if row.first and row.last > row.first:
        end = (row.last - 1) % 512 + 1
        over = (row.last - 1) // 512 + 1
        told += f"-{end}" if over == address.universe else f" to {over}/{end}"
    return f"{told} ({row.part})" if row.part else told


def _smoothing(way: UnitRemote | None) -> str:
    if way is None or way.answer == "unknown":
        return "unknown"
    if way.answer == "none":
        return "has none"
    told = []
    if "slot" in way.by:
        told.append("slot")
    if "rdm" in way.by:
        told.append(
            {"yes": "RDM", "no": "RDM (does not pass here)", "unknown": "RDM (if it passes)"}[way.rdm_reaches]
        )
    hand = [by for by in way.by if by not in REMOTE]
    if hand:
        told.append(f"by hand: {', '.join(hand)}")
    return ", ".join(told)
