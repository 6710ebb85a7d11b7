"""From a read rig to the problem: which rows make a unit, what each may become, and what stays as it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from modebook.documents.address import LAST_UNIVERSE, SLOTS_PER_UNIVERSE, Address
from modebook.documents.rig import Reach, Repatch
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.repatch.errors import ImpossibleError
from modebook.rig.repatch.modes import REMOTE, Demand, ModeFacts
from modebook.rig.repatch.problem import Fixed, Option, Problem, Unit, Universe
from modebook.rig.titles import columns_of

EFFORT: Mapping[Reach, int] = MappingProxyType({"floor": 0, "ladder": 1, "lift": 2, "not at all": 4})
"""What moving a unit counts by how it is reached, between plans that are otherwise equal (common practice, no
source)."""


@dataclass(slots=True)
class Member:
    """One unit: its rows by part, and the modes of its fixture."""

    number: str
    rows: dict[str, PatchedRow]
    """By the part's key, empty for the mode's own slots."""
    modes: list[ModeFacts]
    now: ModeFacts
    firmware: str = ""

    @property
    def row(self) -> PatchedRow:
        """Its first row."""
        return next(iter(self.rows.values()))

    @property
    def at(self) -> dict[str, Address]:
        """Where its parts start."""
        return {key: row.unit.address for key, row in self.rows.items() if row.unit.address is not None}

    def allowed(self) -> list[ModeFacts]:
        """The modes that it may get; the one that it has is always among them."""
        return [mode for mode in self.modes if not mode.why_not(self.now, self.firmware)]

    def wanted(self) -> set[Demand]:
        """The demands that some mode of it fails, and that therefore count."""
        return {demand for mode in self.allowed() for demand in mode.unmet}

    def rdm(self, mode: ModeFacts) -> bool:
        """Whether only RDM stands between a mode and remote smoothing."""
        return Demand(REMOTE) in mode.unmet and "rdm" in mode.smoothing_by

    def blocks(self, mode: ModeFacts) -> tuple[tuple[str, int], ...]:
        """The blocks of a mode that its rows patch."""
        return tuple((key, size) for key, size in mode.blocks if key in self.rows)


@dataclass(slots=True)
class Gathered:
    """A rig as the repatch sees it."""

    problem: Problem
    units: dict[str, list[Member]] = field(default_factory=dict)
    """The units behind each one of the problem: several where they are twins."""
    still: list[Member] = field(default_factory=list)
    """Units that keep address and mode: not patched, or across two universes."""
    aside: list[tuple[PatchedRow, str]] = field(default_factory=list)
    """Rows of which too little is known, with the reason."""


def gather(reading: RigReading) -> Gathered:
    """The problem of a rig. Raises ImpossibleError for wishes about units or groups that there are not."""
    wishes = reading.rig.repatch or Repatch()
    gathered = Gathered(Problem((), ()))
    members: list[Member] = []
    fixed: list[Fixed] = []
    facts: dict[int, list[ModeFacts]] = {}
    misread = _misread(reading)
    for rows in _units(reading):
        member = _member(reading, rows, wishes, facts, misread)
        if isinstance(member, str):
            gathered.aside += [(row, member) for row in rows]
            fixed += [block for row in rows for block in _unknown_slots(reading, row)]
        elif not member.at or _crosses(member):
            gathered.still.append(member)
            fixed += [block for row in rows for block in _blocks(row)]
        else:
            members.append(member)
    _refuse_strangers(reading, wishes, [*members, *gathered.still])
    numbers = {row.unit.address.universe for row in reading.rows if row.unit.address is not None}
    numbers |= {block.first.universe for block in fixed}
    universes = [
        Universe(number, number in wishes.reserved_universes, wishes.spare_slots)
        for number in [*sorted(numbers), *_more(reading, wishes, numbers)]
    ]
    passing = frozenset(u.number for u in universes if reading.rig.link(u.number).rdm == "yes")
    pinned = {number.casefold() for number in wishes.pinned}
    together = {group.casefold() for group in wishes.together}
    units: list[Unit] = []
    for twins in _twins(members):
        unit = _unit(twins, passing, pinned, together, {unit.id for unit in units})
        units.append(unit)
        gathered.units[unit.id] = twins
    gathered.problem = Problem(
        tuple(units), tuple(universes), tuple(fixed), "footprint-kept" in wishes.demands
    )
    return gathered


def _units(reading: RigReading) -> Iterator[list[PatchedRow]]:
    """The rows of each unit, in the order of the file: one, or one for each part of its mode."""
    open_: dict[tuple[str, int], dict[str, PatchedRow]] = {}
    found: list[dict[str, PatchedRow]] = []
    for row in reading.rows:
        if row.mode is None or len(row.mode.blocks) < 2 or not row.unit.number:
            found.append({row.part: row})
            continue
        key = (row.unit.number.casefold(), id(row.mode))
        if key not in open_ or row.part in open_[key]:
            open_[key] = {}
            found.append(open_[key])
        open_[key][row.part] = row
    for rows in found:
        yield list(rows.values())


def _member(
    reading: RigReading,
    rows: list[PatchedRow],
    wishes: Repatch,
    facts: dict[int, list[ModeFacts]],
    misread: frozenset[int],
) -> Member | str:
    row = rows[0]
    if any(one.unit.row in misread and one.unit.address is None for one in rows):
        return "its address was not understood, so where it sits is not known"
    if row.fixture is None:
        return "its fixture's record is not known, so its slots are not"
    if row.mode is None:
        return "its mode is not known, so its slots are not"
    if any(one.block is None for one in rows):
        return "its part of the mode is not known, so its slots are not"
    if any(one.block is not None and one.block.footprint < 1 for one in rows):
        return "its mode takes no slots"
    if any((one.unit.address is None) != (row.unit.address is None) for one in rows):
        return "only some of its parts have an address"
    if id(row.fixture) not in facts:
        count = len(row.fixture.modes)
        facts[id(row.fixture)] = [ModeFacts(row.fixture, place, wishes.demands) for place in range(count)]
    modes = facts[id(row.fixture)]
    known = reading.rig.units.get(row.unit.number)
    firmware = row.unit.firmware or (known.firmware if known else None) or ""
    return Member(row.unit.number, {one.part: one for one in rows}, modes, modes[row.modes[0]], firmware)


def _misread(reading: RigReading) -> frozenset[int]:
    """The rows of the file whose address or universe was not understood."""
    at = columns_of(reading.patch.columns).at
    titles = {reading.patch.columns[at[column]] for column in ("address", "universe") if column in at}
    return frozenset(fault.row for fault in reading.patch.faults if fault.column in titles)


def _crosses(member: Member) -> bool:
    """Whether it runs past 512 into the next universe, as its mode allows."""
    return member.now.mode.mode.continues or any(size > SLOTS_PER_UNIVERSE for _, size in member.now.blocks)


def _blocks(row: PatchedRow) -> Iterator[Fixed]:
    """The slots of a row, universe by universe."""
    first = row.first
    while row.first and first <= row.last:
        start = Address.from_absolute(first)
        slots = min(row.last - first + 1, SLOTS_PER_UNIVERSE - start.address + 1)
        yield Fixed(start, slots)
        first += slots


def _unknown_slots(reading: RigReading, row: PatchedRow) -> Iterator[Fixed]:
    """What a row of unknown footprint may take: up to its widest mode, or to where the next unit begins."""
    address = row.unit.address
    if address is None:
        return
    widest = max((mode.mode.footprint for mode in row.fixture.modes), default=1) if row.fixture else 1
    end = min(address.address + max(widest, 1), SLOTS_PER_UNIVERSE + 1)
    for other in reading.rows:
        place = other.unit.address
        if place is not None and place.universe == address.universe and place.address > address.address:
            end = min(end, place.address)
    yield Fixed(address, end - address.address)


def _twins(members: list[Member]) -> list[list[Member]]:
    """Units of one fixture, mode and address together; they listen to the same slots and stay together."""
    found: dict[tuple[object, ...], list[Member]] = {}
    for member in members:
        found.setdefault((id(member.now), *sorted(member.at.items())), []).append(member)
    return list(found.values())


def _unit(
    twins: list[Member], passing: frozenset[int], pinned: set[str], together: set[str], ids: set[str]
) -> Unit:
    first = twins[0]
    options: list[Option] = []
    now = None
    wanted = first.wanted()
    allowed = [m for m in first.allowed() if all(not m.why_not(t.now, t.firmware) for t in twins)]
    for mode in allowed:
        met = {demand.key for demand in wanted if demand not in mode.unmet}
        plain = Option(mode.place, first.blocks(mode), frozenset(met))
        # RDM counts where it passes now: a repatch does not move a unit for the sake of a link.
        if first.rdm(mode) and all(address.universe in passing for address in first.at.values()):
            options.append(Option(mode.place, plain.blocks, frozenset({*met, Demand(REMOTE).key}), passing))
        options.append(plain)
        if mode is first.now:
            now = plain
    assert now is not None
    groups = sorted({one.row.unit.group for one in twins if one.row.unit.group.casefold() in together})
    if len({group.casefold() for group in groups}) > 1:
        raise ImpossibleError(
            f"unit {first.number} shares its address with a unit of another group, and "
            f"{' and '.join(groups)} are each to be kept together: name only one in repatch.together"
        )
    name = first.number or f"row {first.row.unit.row}"
    return Unit(
        id=name if name not in ids else f"{name} (row {first.row.unit.row})",
        options=tuple(options),
        now=now,
        at=first.at,
        pinned=any(one.number.casefold() in pinned for one in twins),
        group=groups[0].casefold() if groups else "",
        weight=len(twins),
        effort=max(EFFORT[one.row.reach] if one.row.reach else 0 for one in twins),
    )


def _more(reading: RigReading, wishes: Repatch, numbers: set[int]) -> list[int]:
    """The universes that may be opened: those with a link of their own first, then on from the highest."""
    taken = numbers | set(wishes.reserved_universes)
    linked = sorted(int(key) for key in reading.rig.links if key != "other" and int(key) not in taken)
    found = linked[: wishes.more_universes]
    following = max([*numbers, *linked, *wishes.reserved_universes], default=0) + 1
    while len(found) < wishes.more_universes and following <= LAST_UNIVERSE:
        found.append(following)
        following += 1
    return found


def _refuse_strangers(reading: RigReading, wishes: Repatch, members: list[Member]) -> None:
    units = {row.unit.number.casefold() for row in reading.rows}
    for number in wishes.pinned:
        if number.casefold() not in units:
            raise ImpossibleError(
                f"rig.json, /repatch/pinned: unit {number!r} is not in the patch; write its number as there"
            )
    groups = {row.unit.group.casefold() for row in reading.rows}
    for group in wishes.together:
        if group.casefold() not in groups:
            raise ImpossibleError(
                f"rig.json, /repatch/together: no unit is in a group {group!r}; write it as in the patch"
            )
