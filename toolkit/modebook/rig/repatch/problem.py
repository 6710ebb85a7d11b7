"""The repatch as a plain problem: units with their choices, universes, and blocks that stay; no documents."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from modebook.documents.address import SLOTS_PER_UNIVERSE, Address
from modebook.rig.repatch.errors import ImpossibleError


@dataclass(frozen=True, slots=True)
class Option:
    """A mode that a unit may be set to."""

    key: int
    """Which one it is, for the caller: the mode's place in its document."""
    blocks: tuple[tuple[str, int], ...]
    """Each start address with the part's key (empty for the mode's own slots) and its footprint in slots."""
    demands: frozenset[str] = frozenset()
    """The demands that it meets."""
    universes: frozenset[int] | None = None
    """The universes in which it meets them; None where that does not depend on the universe."""

    @property
    def slots(self) -> int:
        """All its slots."""
        return sum(footprint for _, footprint in self.blocks)


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit that takes part: what it is now, and what it may become."""

    id: str
    options: tuple[Option, ...]
    now: Option
    """The mode that it is in; it need not be among the options."""
    at: Mapping[str, Address] = field(default_factory=dict)
    """Where each part starts now; empty for a unit that must still be given an address."""
    pinned: bool = False
    """Its addresses must stay; its mode may change."""
    group: str = ""
    """Units with the same word here end in one universe; empty for none."""
    weight: int = 1
    """How many units listen to these very addresses: twins move together, and each of them counts."""
    effort: int = 0
    """How hard it is to get to, for a choice between equal plans: 0 from the floor or where not known."""


@dataclass(frozen=True, slots=True)
class Universe:
    """A universe that units may sit in."""

    number: int
    reserved: bool = False
    """Nothing may be moved into it; what is there may stay."""
    spare_slots: int = 0
    """The free slots in a row that must be left if it is used."""


@dataclass(frozen=True, slots=True)
class Fixed:
    """Slots that are taken by what does not take part."""

    first: Address
    slots: int


@dataclass(frozen=True, slots=True)
class Problem:
    """All that the solver knows."""

    units: tuple[Unit, ...]
    universes: tuple[Universe, ...]
    """Those in use, and those that may be opened."""
    fixed: tuple[Fixed, ...] = ()
    keep_footprints: bool = True
    """Whether a mode of another footprint is wanted only where demands, moves or universes ask for it."""

    def __post_init__(self) -> None:
        numbers = [universe.number for universe in self.universes]
        if len(set(numbers)) != len(numbers):
            raise ImpossibleError("a universe stands twice in the problem: name each once")
        ids = [unit.id for unit in self.units]
        if len(set(ids)) != len(ids):
            raise ImpossibleError("two units of the problem have one id: name each once")
        known = set(numbers)
        for unit in self.units:
            if not unit.options:
                raise ImpossibleError(f"unit {unit.id} has no mode to choose: give it the one that it is in")
            for address in unit.at.values():
                if address.universe not in known:
                    raise ImpossibleError(
                        f"unit {unit.id} sits in universe {address.universe}, which is not among those given"
                    )
            for option in unit.options:
                if any(not 0 < footprint <= SLOTS_PER_UNIVERSE for _, footprint in option.blocks):
                    raise ImpossibleError(
                        f"unit {unit.id} has a block that is not within 1 to {SLOTS_PER_UNIVERSE} slots"
                    )


@dataclass(frozen=True, slots=True)
class Placing:
    """What becomes of one unit."""

    option: Option
    """The mode that it gets."""
    at: Mapping[str, Address]
    """Where each of its parts starts."""

    def moved(self, unit: Unit) -> bool:
        """Whether one of its start addresses is another than before."""
        return any(unit.at.get(key) != address for key, address in self.at.items())


@dataclass(frozen=True, slots=True)
class PassReport:
    """How far one wish was brought."""

    wish: str
    value: float
    """What the plan reaches: demands met, units moved, universes, slots."""
    bound: float
    """What no plan can better, given the wishes before it."""
    proved: bool
    seconds: float

    @property
    def gap(self) -> float:
        """How far the value may be from the best, as a share of the value: 0 if proved."""
        if self.proved or self.value == self.bound:
            return 0.0
        return abs(self.value - self.bound) / max(abs(self.value), 1.0)


@dataclass(frozen=True, slots=True)
class Solution:
    """Every unit placed, with a report for each wish in the order of the wishes."""

    placings: Mapping[str, Placing]
    passes: tuple[PassReport, ...]

    @property
    def proved(self) -> bool:
        """Whether every wish is proved."""
        return all(one.proved for one in self.passes)

    @property
    def gap(self) -> float:
        """The widest gap of any wish."""
        return max((one.gap for one in self.passes), default=0.0)
