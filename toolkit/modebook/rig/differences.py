"""What a row of an as-found list tells that is otherwise than planned, with what to do at the fixture."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Protocol

from modebook.documents.modes import Mode
from modebook.documents.patch import RowFault
from modebook.documents.policy import Severity
from modebook.rig.firmware import recorded, same_version
from modebook.rig.found_reading import SETTINGS, FoundRow
from modebook.rig.found_settings import choices_meant, setting_meant
from modebook.rig.grouping import unit_ranges
from modebook.rig.matching import Identities, Match, Planned
from modebook.rig.mode_names import modes_meant
from modebook.rig.reading import PatchedRow, RigReading


@dataclass(frozen=True, slots=True)
class Difference:
    """One thing that differs; see verify.Deviation, which adds where the unit hangs."""

    rule: str
    severity: Severity
    unit: str
    was: object
    now: object
    message: str
    task: str = ""
    planned: Planned | None = None
    row: FoundRow | None = None
    how: str = ""
    fixture: str = ""
    line: int | None = None
    column: str = ""
    by_rdm: bool = False
    """Whether RDM can set it right: address and personality by E1.20, a choice by a way of the record."""


class _Add(Protocol):
    """Adds a difference about the unit at hand."""

    def __call__(
        self,
        rule: str,
        severity: Severity,
        was: object,
        now: object,
        message: str,
        task: str,
        column: str = "",
        by_rdm: bool = False,
    ) -> None: ...


@dataclass(slots=True)
class Notes:
    """What could not be compared, by its reason."""

    units: dict[str, list[str]] = field(default_factory=dict)

    def add(self, why: str, unit: str) -> None:
        """Remember a unit for which something was not compared."""
        self.units.setdefault(why, []).append(unit)

    def told(self) -> list[str]:
        """One sentence a reason, with its units."""
        return [f"{why}: {unit_ranges(units)}" for why, units in self.units.items()]


def unread(fault: RowFault) -> Difference:
    """A cell of the list that could not be read."""
    return Difference(
        "bad-row",
        "error",
        fault.unit,
        None,
        fault.found,
        f"column {fault.column}: {fault.why}",
        line=fault.row,
        column=fault.column,
    )


def missing(unit: Planned) -> Difference:
    """A unit of which no row of the list is about."""
    row = unit.first
    address = row.unit.address
    was = {
        "fixture": row.identity or row.unit.fixture,
        "mode": row.mode.mode.name if row.mode else row.unit.mode,
        "address": {"universe": address.universe, "address": address.address} if address else None,
    }
    at = f" at {address}" if address else ""
    return Difference(
        "unit-missing",
        "error",
        unit.number,
        was,
        None,
        f"no row of the list is about {_fixture(row)}{at}",
        "look for it: power, data, address, label",
        unit,
        fixture=_fixture(row),
    )


def extra(reading: RigReading, found: FoundRow, identities: Identities) -> Difference:
    """A row that is about no planned unit; an error where it listens to slots that a planned one takes."""
    identity = identities.of(found)
    now = {
        "fixture": identity or found.fixture or None,
        "address": found.place_json(),
        "uid": found.uid or None,
    }
    name = _named(identity, identities) or found.fixture or "a fixture"
    meets = _takers(reading, found)
    said = f"{name} at {found.place} is not in the plan"
    if meets:
        said += f", and listens to slots of {unit_ranges(meets)}"
    task = "take it off the line, give it a free address, or write it into the patch"
    severity: Severity = "error" if meets else "warning"
    return Difference("unit-extra", severity, found.unit, None, now, said, task, row=found, fixture=name)


def differences(match: Match, identities: Identities, notes: Notes) -> list[Difference]:
    """All that one matched row tells otherwise than planned, the match's own doubt first."""
    unit, found = match.planned, match.found
    name = _fixture(unit.first)
    made: list[Difference] = []

    speaks_rdm = unit.first.fixture is not None and unit.first.fixture.fixture.rdm is not None

    def add(
        rule: str,
        severity: Severity,
        was: object,
        now: object,
        message: str,
        task: str,
        column: str = "",
        by_rdm: bool = False,
    ) -> None:
        told = Difference(
            rule,
            severity,
            unit.number,
            was,
            now,
            message,
            task,
            unit,
            found,
            match.how,
            name,
            column=column,
            by_rdm=by_rdm or (speaks_rdm and rule in ("wrong-mode", "wrong-address")),
        )
        made.append(told)

    if match.doubt:
        was = {"unit": unit.number, "uid": unit.uid or None, "fixture": unit.first.identity}
        now = {"unit": found.unit or None, "uid": found.uid or None, "address": found.place_json()}
        said = f"matched by {match.how} with row {found.row} of the list, and in doubt: {match.doubt}"
        add("match-doubtful", "warning", was, now, said, f"read its label: is it {unit.number}?")
    other = _other_fixture(unit.first, found, identities)
    if other is not None:
        add(
            "wrong-fixture",
            "error",
            unit.first.identity,
            other,
            f"{name} is planned, and the list says {_named(other, identities) or other}",
            f"it is {_named(other, identities) or other}: swap it, or change the patch",
        )
    elif unit.first.identity is None or unit.first.fixture is None:
        notes.add("the plan's fixture is not known, so only the address was compared", unit.number)
    else:
        _mode(unit, found, notes, add)
        _choices(unit, found, notes, add)
        _firmware(unit, found, add)
    _address(unit, found, notes, add)
    return made


def _fixture(row: PatchedRow) -> str:
    if row.fixture is None:
        return row.unit.fixture
    return f"{row.fixture.fixture.maker} {row.fixture.fixture.model}"


def _named(identity: str | None, identities: Identities) -> str:
    record = identities.records.get(identity or "")
    return f"{record.fixture.maker} {record.fixture.model}" if record else identity or ""


def _other_fixture(row: PatchedRow, found: FoundRow, identities: Identities) -> str | None:
    """The fixture that the row says it is, where that is another than planned; else None."""
    if row.identity is None or row.fixture is None:
        return None
    identity = identities.of(found)
    if identity is not None:
        return identity if identity != row.identity else None
    rdm = row.fixture.fixture.rdm
    if found.model_id is not None and rdm is not None:
        same_maker = found.manufacturer in (None, int(rdm.manufacturer, 16))
        if not same_maker or found.model_id != int(rdm.model, 16):
            return found.fixture or f"model id 0x{found.model_id:04X}"
        return None
    if found.fixture and not identities.names.meant(found.fixture):
        return found.fixture
    return None


def _mode(unit: Planned, found: FoundRow, notes: Notes, add: _Add) -> None:
    row = unit.first
    assert row.fixture is not None  # the caller looked
    if not (found.mode or found.personality is not None or found.footprint is not None):
        return
    if row.mode is None:
        notes.add("the plan's mode is not known, so the mode was not compared", unit.number)
        return
    modes = row.fixture.fixture.modes
    planned = row.mode.mode
    named = found.personality is not None or bool(found.mode)
    meant = _modes_found(found, modes) if named else []
    if not named or row.modes[0] in meant:
        # Parts have start addresses of their own, and a list may tell the slots behind one of them.
        if found.footprint not in (None, planned.footprint) and len(row.mode.blocks) == 1:
            slots = f"{found.footprint} slots"
            why = ": another firmware, or another menu state" if named else ""
            add(
                "wrong-mode",
                "error",
                planned.name,
                slots,
                f"{_mode_told(planned)} takes {planned.footprint} slots, and the list says {slots}{why}",
                f"set mode {_mode_told(planned)}, {planned.footprint} slots; it has {slots}",
            )
        return
    told = " or ".join(_mode_told(modes[place]) for place in meant) or _as_written(found)
    unknown = "" if meant else ", which the record lacks"
    add(
        "wrong-mode",
        "error",
        planned.name,
        modes[meant[0]].name if len(meant) == 1 else told,
        f"mode {_mode_told(planned)} is planned, and the list says {told}{unknown}",
        f"set mode {_mode_told(planned)}; it has {told}",
    )


def _modes_found(found: FoundRow, modes: list[Mode]) -> list[int]:
    """The modes that a row may mean: by the personality's number, else the name; the footprint decides."""
    if found.personality is not None and any(mode.number is not None for mode in modes):
        meant = [place for place, mode in enumerate(modes) if mode.number == found.personality]
        named = [place for place in modes_meant(found.mode, modes) if place in meant] if found.mode else []
        meant = named or meant
    elif found.mode:
        meant = modes_meant(found.mode, modes)
    else:
        return list(range(len(modes)))  # a number, and a record without numbers: nothing to compare
    fitting = [place for place in meant if modes[place].footprint == found.footprint]
    return fitting or meant


def _mode_told(mode: Mode) -> str:
    return mode.name if mode.number is None else f"{mode.name} ({mode.number})"


def _as_written(found: FoundRow) -> str:
    return " ".join(filter(None, (found.mode, None if found.personality is None else str(found.personality))))


def _address(unit: Planned, found: FoundRow, notes: Notes, add: _Add) -> None:
    if not found.tells_address:
        return
    row = next((one for one in unit.rows if found.part and one.part == found.part.casefold()), None)
    rows = [row] if row else unit.rows
    places = [at for one in rows if (at := one.unit.address)]
    if not places:
        notes.add("the plan has no address, so the address was not compared", unit.number)
        return
    if any(at.address == found.address and found.universe in (None, at.universe) for at in places):
        return
    at = places[0]
    planned: dict[str, int] = {"universe": at.universe, "address": at.address}
    add(
        "wrong-address",
        "error",
        planned,
        found.place_json(),
        f"{at} is planned, and the list says {found.place}",
        f"set address {at}; it has {found.place}",
    )


def _choices(unit: Planned, found: FoundRow, notes: Notes, add: _Add) -> None:
    row = unit.first
    assert row.fixture is not None  # the caller looked
    known = row.known.settings if row.known else {}
    for column in SETTINGS:
        told = found.settings.get(column)
        if not told:
            continue
        setting = setting_meant(row.fixture, column)
        if setting is None or not setting.choices:
            notes.add(f"the record has no setting for the {column} that the list tells", unit.number)
            continue
        wanted = next((one for one in setting.choices if one.key == known.get(setting.key)), None)
        by_rig = wanted is not None
        wanted = wanted or setting.factory
        meant = choices_meant(setting, told)
        if wanted is None:
            notes.add(f"neither rig.json nor the record says what the {column} should be", unit.number)
            continue
        if wanted in meant:
            if len(meant) > 1:
                keys = " or ".join(one.key for one in meant)
                notes.add(f"{told!r} may be {setting.key} {keys}: taken as planned", unit.number)
            continue
        said = " or ".join(one.key for one in meant) or told
        plan = (
            f"{setting.key} {wanted.key} is planned"
            if by_rig
            else f"no choice of {setting.key} is planned, and the factory's is {wanted.key}"
        )
        ways = [f"{' > '.join(way.path)}" for way in setting.ways if way.by == "menu" and way.path]
        where = f" ({ways[0]})" if ways else ""
        add(
            "wrong-choice",
            "error" if by_rig else "warning",
            wanted.key,
            meant[0].key if len(meant) == 1 else said,
            f"{plan}; the list says {said}" + ("" if meant else ", which is none of its choices"),
            f"set {setting.key} to {wanted.key}{where}; it has {said}",
            setting.key,
            any(way.by == "rdm" and wanted.key in (way.values or {}) for way in setting.ways),
        )


def _firmware(unit: Planned, found: FoundRow, add: _Add) -> None:
    if not found.firmware:
        return
    row = unit.first
    noted = row.unit.firmware or (row.known.firmware if row.known else None) or ""
    record = recorded(row)
    same = {
        version: same_version(found.firmware, version, found.firmware_is_number)
        for version in (noted, record)
        if version
    }
    if noted and not same[noted]:
        add(
            "other-firmware",
            "warning",
            noted,
            found.firmware,
            f"firmware {noted} was noted, and the list says {found.firmware}",
            "",
        )
    elif record and not same[record]:
        add(
            "other-firmware",
            "info" if noted else "warning",
            record,
            found.firmware,
            f"the record of its mode is of firmware {record}, and the list says {found.firmware}: "
            "slots and choices may differ",
            "",
        )


def _takers(reading: RigReading, found: FoundRow) -> list[str]:
    """The planned units whose slots a stranger's first slots are, as far as its footprint is told."""
    if found.universe is None or found.address is None:
        return []
    first = (found.universe - 1) * 512 + found.address
    last = first + max(found.footprint or 1, 1) - 1
    return [row.unit.number for row in reading.rows if row.first and row.first <= last and first <= row.last]
