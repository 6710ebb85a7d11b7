"""Which planned unit a row of an as-found list is about: by UID, number, or model, address and position."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass, field

from modebook.checks.reading import FixtureReading
from modebook.rig.found_reading import AsFound, FoundRow
from modebook.rig.reading import PatchedRow, RigReading

Key = tuple[Hashable, ...]


@dataclass(slots=True, eq=False)
class Planned:
    """A unit of the plan with its rows: several where its mode has several start addresses."""

    number: str
    rows: list[PatchedRow]
    uid: str = ""
    taken: int = 0
    """How many rows of the list are about it."""

    @property
    def first(self) -> PatchedRow:
        """Its first row."""
        return self.rows[0]

    @property
    def starts(self) -> int:
        """How many start addresses it may be listed with."""
        mode = self.first.mode
        return max(1, len(mode.blocks) if mode else 1, len(self.rows))

    @property
    def places(self) -> list[tuple[int, int]]:
        """Universe and address of each of its rows that has one."""
        return [(a.universe, a.address) for row in self.rows if (a := row.unit.address)]


@dataclass(frozen=True, slots=True)
class Match:
    """A row of the list with the unit that it is about."""

    planned: Planned
    found: FoundRow
    how: str
    """What they were matched by."""
    doubt: str = ""
    """Why it may be another; empty where it is sure."""


@dataclass(slots=True)
class Matching:
    """Which row is about which unit, and what is left on both sides."""

    matches: list[Match] = field(default_factory=list)
    missing: list[Planned] = field(default_factory=list)
    extra: list[FoundRow] = field(default_factory=list)


def planned_units(reading: RigReading) -> list[Planned]:
    """The units of a rig, in the order of the patch; rows that are parts of one unit together."""
    found: list[Planned] = []
    whole: dict[tuple[str, int], Planned] = {}
    numbered: set[str] = set()
    for row in reading.rows:
        folded = row.unit.number.casefold()
        if row.mode is not None and folded and len(row.mode.blocks) > 1:
            key = (folded, id(row.mode))
            if key in whole:
                whole[key].rows.append(row)
                continue
        # What rig.json knows by number holds for the first of two units that share it.
        known = row.known.uid if row.known and folded not in numbered else None
        unit = Planned(row.unit.number, [row], (row.unit.uid or known or "").upper())
        numbered.add(folded)
        if row.mode is not None and folded and len(row.mode.blocks) > 1:
            whole[folded, id(row.mode)] = unit
        found.append(unit)
    return found


class Identities:
    """Which fixture a row of a list says it is: by its RDM ids among the rig's records, else by its name."""

    def __init__(self, reading: RigReading) -> None:
        self.names = reading.names
        self.by_id: dict[tuple[int, int], str] = {}
        self.by_model: dict[int, set[str]] = {}
        self.records: dict[str, FixtureReading] = {}
        for row in reading.rows:
            if row.fixture is None or row.identity is None or row.identity in self.records:
                continue
            self.records[row.identity] = row.fixture
            rdm = row.fixture.fixture.rdm
            if rdm is not None and rdm.model is not None:
                maker, model = int(rdm.manufacturer, 16), int(rdm.model, 16)
                self.by_id[maker, model] = row.identity
                self.by_model.setdefault(model, set()).add(row.identity)

    def of(self, found: FoundRow) -> str | None:
        """The ``maker/model`` that a row is; None where it does not tell, or no record is known for it."""
        if found.model_id is not None:
            if found.manufacturer is not None:
                known = self.by_id.get((found.manufacturer, found.model_id))
            else:
                several = self.by_model.get(found.model_id, set())
                known = next(iter(several)) if len(several) == 1 else None
            if known is not None:
                return known
        meant = self.names.meant(found.fixture) if found.fixture else []
        return meant[0] if len(meant) == 1 else None


def match(reading: RigReading, as_found: AsFound, identities: Identities) -> Matching:
    """Match every row with a unit, the surest way first; see the module. Each unit is taken once."""
    planned = planned_units(reading)
    result = Matching()
    left = _by_uid(planned, as_found.rows, result)
    left = _by_number(planned, left, result)
    for tier in _TIERS:
        left = _by_key(tier, planned, left, identities, result)
    result.missing = [unit for unit in planned if not unit.taken]
    result.extra = left
    order = {id(row): place for place, row in enumerate(as_found.rows)}
    result.matches.sort(key=lambda one: order[id(one.found)])
    return result


def _take(result: Matching, unit: Planned, found: FoundRow, how: str, doubt: str = "") -> None:
    unit.taken += 1
    result.matches.append(Match(unit, found, how, doubt))


def _by_uid(planned: Iterable[Planned], rows: Iterable[FoundRow], result: Matching) -> list[FoundRow]:
    uids = {unit.uid: unit for unit in reversed(list(planned)) if unit.uid}
    left = []
    for found in rows:
        unit = uids.get(found.uid)
        if unit is None or unit.taken >= unit.starts:
            left.append(found)
        elif found.unit and found.unit.casefold() != unit.number.casefold():
            _take(result, unit, found, "UID", f"the list calls it {found.unit}")
        else:
            _take(result, unit, found, "UID")
    return left


def _by_number(planned: Iterable[Planned], rows: Iterable[FoundRow], result: Matching) -> list[FoundRow]:
    numbers: dict[str, list[Planned]] = {}
    for unit in planned:
        if unit.number:
            numbers.setdefault(unit.number.casefold(), []).append(unit)
    left = []
    for found in rows:
        # One that has answered already, by its UID, has rows left only for further start addresses.
        free = [unit for unit in numbers.get(_number(found.unit), []) if unit.taken < unit.starts]
        if not free:
            left.append(found)
            continue
        unit = next((one for one in free if _at(found, one)), free[0])
        doubt = ""
        if unit.uid and found.uid and unit.uid != found.uid:
            doubt = f"its UID is {found.uid}, and {unit.uid} was planned: it was swapped, or relabeled"
        _take(result, unit, found, "unit number", doubt)
    return left


def _number(told: str) -> str:
    folded = told.casefold().strip()
    return folded.removeprefix("unit").strip(" #:.") if folded.startswith("unit") else folded


def _at(found: FoundRow, unit: Planned) -> bool:
    return any(
        found.address == address and found.universe in (None, universe) for universe, address in unit.places
    )


def _folded(words: str) -> str:
    return " ".join(words.casefold().split())


def _position(unit: Planned) -> str:
    return _folded(unit.first.unit.position)


@dataclass(frozen=True, slots=True)
class _Tier:
    """One way of telling which unit a row is about, where neither UID nor number does."""

    how: str
    doubt: str
    """Why it may be wrong even where only one unit fits; empty where it is sure then."""
    of_unit: Callable[[Planned], list[Key]]
    of_found: Callable[[FoundRow, str | None], Key | None]
    alone: bool = False
    """Whether it holds only where one unit and one row fit."""


_TIERS = (
    _Tier(
        "model, universe and address",
        "",
        lambda unit: [(unit.first.identity, *place) for place in unit.places if unit.first.identity],
        lambda found, identity: (
            (identity, found.universe, found.address)
            if identity and found.universe and found.address
            else None
        ),
    ),
    _Tier(
        "model, address and position",
        "",
        lambda unit: [(unit.first.identity, place[1], _position(unit)) for place in unit.places],
        lambda found, identity: (
            (identity, found.address, _folded(found.position))
            if identity and found.address and not found.universe and found.position
            else None
        ),
    ),
    _Tier(
        "model and address",
        "the list tells no universe",
        lambda unit: [(unit.first.identity, place[1]) for place in unit.places],
        lambda found, identity: (
            (identity, found.address) if identity and found.address and not found.universe else None
        ),
    ),
    _Tier(
        "model and position",
        "its address is another than planned",
        lambda unit: [(unit.first.identity, _position(unit))] if _position(unit) else [],
        lambda found, identity: (identity, _folded(found.position)) if identity and found.position else None,
    ),
    _Tier(
        "universe and address",
        "its model is another than planned, or not told",
        lambda unit: [tuple(place) for place in unit.places],
        lambda found, identity: (found.universe, found.address) if found.universe and found.address else None,
    ),
    _Tier(
        "model alone",
        "it is the only one left of its model",
        lambda unit: [(unit.first.identity,)] if unit.first.identity else [],
        lambda found, identity: (identity,) if identity else None,
        alone=True,
    ),
)


def _by_key(
    tier: _Tier, planned: list[Planned], rows: list[FoundRow], identities: Identities, result: Matching
) -> list[FoundRow]:
    units: dict[Key, list[Planned]] = {}
    for unit in planned:
        if not unit.taken:
            for key in dict.fromkeys(tier.of_unit(unit)):
                units.setdefault(key, []).append(unit)
    keys = [tier.of_found(found, identities.of(found)) for found in rows]
    count: dict[Key, int] = {}
    for one in keys:
        if one is not None:
            count[one] = count.get(one, 0) + 1
    left = []
    for found, one in zip(rows, keys, strict=True):
        fitting = units.get(one, []) if one is not None else []
        free = [unit for unit in fitting if not unit.taken]
        if one is None or not free or (tier.alone and (len(fitting) > 1 or count[one] > 1)):
            left.append(found)
            continue
        unit = next((two for two in free if _position(two) == _folded(found.position)), free[0])
        doubt = tier.doubt
        if len(fitting) > 1 and not _twins(fitting):
            doubt = f"{len(fitting)} units fit{'; ' + doubt if doubt else ''}"
        _take(result, unit, found, tier.how, doubt)
    return left


def _twins(units: list[Planned]) -> bool:
    """Whether units are patched alike, so that it makes no difference which of them a row is about."""
    first = units[0]
    return all((one.places, one.first.modes) == (first.places, first.first.modes) for one in units)
