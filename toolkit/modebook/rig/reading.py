"""What a patch rule is shown: each row with its record, its mode and its slots, and each universe's load."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from modebook.checks.reading import FixtureReading, ModeReading
from modebook.documents.address import LAST_UNIVERSE, SLOTS_PER_UNIVERSE, Address
from modebook.documents.layout import BlockLayout
from modebook.documents.patch import Patch, Unit
from modebook.documents.policy import Override, Policy, house_policy
from modebook.documents.rig import Link, Reach, Rig, UnitNote
from modebook.rig.fixtures import FixtureNames, Fixtures
from modebook.rig.mode_names import modes_meant
from modebook.shelf.errors import ShelfError

if TYPE_CHECKING:
    from modebook.rig.overlaps import Meeting


@dataclass(slots=True)
class PatchedRow:
    """A row of the patch, and what the catalog makes of it."""

    unit: Unit
    known: UnitNote | None = None
    """What rig.json says of this unit."""
    identities: tuple[str, ...] = ()
    """The fixtures that its name may mean: one where it is known."""
    fixture: FixtureReading | None = None
    unreadable: str = ""
    """Why the fixture's record cannot be read."""
    modes: tuple[int, ...] = ()
    """The modes that its word may mean, by their place in the document: one where it is known."""
    mode: ModeReading | None = None
    block: BlockLayout | None = None
    """The slots behind this row's start address; None where the row's part is not known."""
    first: int = 0
    """The absolute address (see documents.address) of its first slot; 0 where it takes none."""
    last: int = 0
    """The absolute address of its last slot, cut off at 512 where its mode does not continue."""
    beyond: int = 0
    """How many of its slots lie past 512, where its mode does not continue, or past the last universe."""

    @property
    def identity(self) -> str | None:
        """The ``maker/model`` of its record; None where it is not known."""
        return self.identities[0] if len(self.identities) == 1 else None

    @property
    def reach(self) -> Reach | None:
        """How the unit is reached: as the patch says, else as rig.json does."""
        return self.unit.reach or (self.known.reach if self.known else None)

    @property
    def part(self) -> str:
        """The key of its part of the mode; empty for the mode's own slots."""
        return (self.block.key if self.block else None) or ""


@dataclass(slots=True)
class Universe:
    """What a patch puts into one universe."""

    number: int
    slots_used: int = 0
    """Slots that at least one unit takes."""
    highest_address: int = 0
    """The greatest address that must be sent."""
    highest_row: PatchedRow | None = None
    """The unit that takes it; of several, the first in the file."""


@dataclass
class RigReading:
    """A rig with its patch, read against the catalog."""

    name: str
    rig: Rig
    patch: Patch
    fixtures: Fixtures
    policy: Policy = field(default_factory=house_policy)
    """The thresholds of this rig, its own word among them (see policy_of)."""

    @cached_property
    def names(self) -> FixtureNames:
        """The catalog's fixtures by name."""
        return FixtureNames(self.fixtures.identities)

    @cached_property
    def rows(self) -> list[PatchedRow]:
        """Every unit's row with its record, in the order of the file."""
        rows = [self._row(unit) for unit in self.patch.units]
        self._give_parts(rows)
        for row in rows:
            _take_slots(row)
        return rows

    @cached_property
    def by_unit(self) -> dict[str, list[PatchedRow]]:
        """The rows of each unit number (case does not count), in the order of the file."""
        found: dict[str, list[PatchedRow]] = defaultdict(list)
        for row in self.rows:
            if row.unit.number:
                found[row.unit.number.casefold()].append(row)
        return dict(found)

    @cached_property
    def universes(self) -> list[Universe]:
        """The universes in use, in order."""
        taken: dict[int, bytearray] = {}
        found: dict[int, Universe] = {}
        for row in self.rows:
            at = row.first
            while at and at <= row.last:
                number, slot = divmod(at - 1, SLOTS_PER_UNIVERSE)
                end = min(slot + row.last - at + 1, SLOTS_PER_UNIVERSE)
                if number not in taken:
                    taken[number] = bytearray(SLOTS_PER_UNIVERSE)
                    found[number] = Universe(number + 1)
                taken[number][slot:end] = b"\1" * (end - slot)
                if end > found[number].highest_address:
                    found[number].highest_address = end
                    found[number].highest_row = row
                at += end - slot
        for number, slots in taken.items():
            found[number].slots_used = slots.count(1)
        return [found[number] for number in sorted(found)]

    def link(self, universe: int) -> Link:
        """The link of a universe, as rig.json says, else one of which nothing is known."""
        found = self._links.get(universe)
        if found is None:
            found = self._links[universe] = self.rig.link(universe)
        return found

    @cached_property
    def _links(self) -> dict[int, Link]:
        return {}

    @cached_property
    def meetings(self) -> list[Meeting]:
        """Which rows take the same slots (see overlaps.meetings)."""
        from modebook.rig.overlaps import meetings

        return list(meetings(self.rows))

    @cached_property
    def _known(self) -> dict[str, UnitNote]:
        return {number.casefold(): note for number, note in self.rig.units.items()}

    @cached_property
    def strangers(self) -> list[str]:
        """The units that rig.json speaks of and the patch lacks."""
        return [number for number in self.rig.units if number.casefold() not in self.by_unit]

    @cached_property
    def misnamed(self) -> list[str]:
        """What rig.json says of units' settings that their records do not have, a sentence each."""
        found: dict[str, list[str]] = {}
        for row in self.rows:
            if row.fixture is None or row.known is None:
                continue
            settings = {one.key: one for one in row.fixture.fixture.settings if not one.none}
            for key, choice in row.known.settings.items():
                if key not in settings:
                    told = f"no setting {key!r}; there are {', '.join(settings) or 'none'}"
                elif all(one.key != choice for one in settings[key].choices):
                    keys = ", ".join(one.key for one in settings[key].choices) or "none"
                    told = f"no choice {choice!r} of its {key}; there are {keys}"
                else:
                    continue
                units = found.setdefault(f"{row.identity} has {told}", [])
                if row.unit.number not in units:
                    units.append(row.unit.number)
        return [f"rig.json, unit {', '.join(units)}: {told}" for told, units in found.items()]

    @cached_property
    def _read(self) -> dict[str, FixtureReading | str]:
        """The records read so far; a text says why one cannot be."""
        return {}

    @cached_property
    def _meant(self) -> dict[str, tuple[str, ...]]:
        return {}

    @cached_property
    def _modes_meant(self) -> dict[tuple[str, str], tuple[int, ...]]:
        return {}

    def _row(self, unit: Unit) -> PatchedRow:
        row = PatchedRow(unit, self._known.get(unit.number.casefold()))
        if not unit.fixture:
            return row
        if unit.fixture not in self._meant:
            self._meant[unit.fixture] = tuple(self.names.meant(unit.fixture))
        row.identities = self._meant[unit.fixture]
        if row.identity is None:
            return row
        reading = self._record(row.identity)
        if isinstance(reading, str):
            row.unreadable = reading
            return row
        row.fixture = reading
        told = (row.identity, unit.mode)
        if told not in self._modes_meant:
            self._modes_meant[told] = tuple(modes_meant(unit.mode, reading.fixture.modes))
        row.modes = self._modes_meant[told]
        if len(row.modes) == 1:
            row.mode = reading.modes[row.modes[0]]
        return row

    def _record(self, identity: str) -> FixtureReading | str:
        if identity not in self._read:
            try:
                fixture = self.fixtures.read(identity)
            except ShelfError as error:
                self._read[identity] = str(error)
            else:
                self._read[identity] = FixtureReading(
                    fixture, self.fixtures.file(identity), identity, self.policy
                )
        return self._read[identity]

    def _give_parts(self, rows: list[PatchedRow]) -> None:
        """Tell each row which start address of its mode it patches.

        A row that names a part has that one. Rows of one unit that name none have the mode's parts in turn.
        """
        turn: dict[tuple[str, int], int] = {}
        for row in rows:
            if row.mode is None:
                continue
            blocks = row.mode.blocks
            if len(blocks) == 1:
                row.block = blocks[0] if not row.unit.part or row.unit.part == blocks[0].key else None
                continue
            if row.unit.part:
                told = row.unit.part.casefold().strip()
                row.block = next((b for b in blocks if told in (b.key, (b.key or "main"))), None)
                continue
            key = (row.unit.number.casefold() or f"row {row.unit.row}", id(row.mode))
            place = turn.get(key, 0)
            turn[key] = place + 1
            row.block = blocks[place % len(blocks)]


def policy_of(rig: Rig) -> Policy:
    """The thresholds of a rig: the house's, its own word on them, and its own packets a second.

    Raises KeyError for a threshold that the house's policy lacks.
    """
    own = dict(rig.policy)
    if "assumed-refresh" not in own:
        own["assumed-refresh"] = Override(value=rig.refresh_hz, source="the rig's own refresh rate")
    return house_policy().overridden(own)


def _take_slots(row: PatchedRow) -> None:
    address: Address | None = row.unit.address
    if address is None or row.block is None or row.mode is None or row.block.footprint < 1:
        return
    row.first = address.absolute
    row.last = row.first + row.block.footprint - 1
    end = (LAST_UNIVERSE if row.mode.mode.continues else address.universe) * SLOTS_PER_UNIVERSE
    if row.last > end:
        row.beyond = row.last - end
        row.last = end
