"""A first arrangement by hand: keep what can stay, put the rest where it first fits, widest first.

It proves nothing and may take more moves than needed, but it is there at once. Where the linear program's
columns do not fit together whole (pins, groups and spares make that likely on small rigs) the passes then
begin from it instead of from nothing.
"""

from __future__ import annotations

from collections import defaultdict
from math import inf

from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.repatch.master import Choice, Column, Master
from modebook.rig.repatch.problem import Option, Unit
from modebook.rig.repatch.rows import Rows

CHOOSE_SECONDS = 5.0
"""More than enough to fill in the variables beside columns that are given."""


def greedy(master: Master) -> Choice | None:
    """An arrangement of all units in the program's own terms; None where first fit leaves one out."""
    for homes in _homes(master.rows):
        filled = _Filling(master.rows, homes).run()
        if filled is not None:
            return _as_choice(master, filled)
    return None


def _homes(rows: Rows) -> list[dict[str, int]]:
    """For each group the universe that it is to be in: where most of it is, then the others in turn."""
    problem = rows.problem
    slots: dict[str, dict[int, int]] = defaultdict(lambda: defaultdict(int))
    for unit in problem.units:
        if unit.group:
            for key, address in unit.at.items():
                size = max((s for option in unit.options for k, s in option.blocks if k == key), default=0)
                slots[unit.group][rows.number[address.universe]] += size
    groups = sorted({unit.group for unit in problem.units if unit.group})
    tries = []
    for turn in range(len(problem.universes)):
        homes = {}
        for group in groups:
            order = sorted(range(len(problem.universes)), key=lambda place: (-slots[group][place], place))
            homes[group] = order[turn % len(order)]
        tries.append(homes)
    return tries or [{}]


class _Filling:
    """The universes while they are filled."""

    def __init__(self, rows: Rows, homes: dict[str, int]) -> None:
        self.rows = rows
        self.homes = homes
        self.taken = [bytearray(SLOTS_PER_UNIVERSE) for _ in rows.problem.universes]
        for place, stretches in enumerate(rows.occupied):
            for first, end in stretches:
                self.taken[place][first:end] = b"\1" * (end - first)
        self.filled: list[list[tuple[int, int]]] = [[] for _ in rows.problem.universes]
        self.label = {(item.unit, item.option, item.key): label for label, item in enumerate(rows.items)}
        self.slot = {
            (slot.family, slot.footprint): len(rows.items) + at for at, slot in enumerate(rows.places)
        }

    def run(self) -> list[list[tuple[int, int]]] | None:
        """What each universe is filled with: first slot from 0, label; None where a block has no place."""
        units = self.rows.problem.units
        rest: list[tuple[int, int, str, int]] = []
        pinned_first = sorted(range(len(units)), key=lambda at: (not units[at].pinned, self._slots(at), at))
        for at in pinned_first:
            unit = units[at]
            chosen = next((i for i, option in enumerate(unit.options) if self._keep(at, i, option)), None)
            if chosen is None:
                if unit.pinned:
                    return None
                best = min(range(len(unit.options)), key=lambda i: unit.options[i].slots)
                rest += [(at, best, key, footprint) for key, footprint in unit.options[best].blocks]
        rest.sort(key=lambda one: (-one[3], one[0]))
        return self.filled if all(self._place(*one) for one in rest) else None

    def _slots(self, at: int) -> int:
        return min(option.slots for option in self.rows.problem.units[at].options)

    def _may(self, unit: Unit, option: Option, place: int) -> bool:
        number = self.rows.problem.universes[place].number
        if option.universes is not None and number not in option.universes:
            return False
        return not unit.group or self.homes[unit.group] == place

    def _keep(self, at: int, index: int, option: Option) -> bool:
        """Leave a unit where it is in this mode, if all its blocks fit there."""
        unit = self.rows.problem.units[at]
        wanted: list[tuple[int, int, int, int]] = []
        for key, footprint in option.blocks:
            address = unit.at.get(key)
            if address is None:
                return False
            place, first = self.rows.number[address.universe], address.address - 1
            if first + footprint > SLOTS_PER_UNIVERSE or not self._may(unit, option, place):
                return False
            wanted.append((place, first, footprint, self.label[at, index, key]))
        done: list[tuple[int, int, int, int]] = []
        for place, first, size, label in wanted:
            # Looked at one by one: a unit's own blocks may have been typed onto each other.
            if any(self.taken[place][first : first + size]):
                break
            self._fill(place, first, size, label)
            done.append((place, first, size, label))
        if len(done) == len(wanted) and all(self._room_for_spare(place) for place, *_ in done):
            return True
        for one in done:
            self._empty(*one)
        return False

    def _place(self, at: int, index: int, key: str, footprint: int) -> bool:
        """Put a block where it first fits: in its own universe, then in those in use, then in a new one."""
        unit = self.rows.problem.units[at]
        option = unit.options[index]
        own = {self.rows.number[address.universe] for address in unit.at.values()}
        label = self.slot[(unit.group, option.universes), footprint]
        order = sorted(
            range(len(self.taken)), key=lambda place: (place not in own, not any(self.taken[place]), place)
        )
        for place in order:
            if self.rows.problem.universes[place].reserved or not self._may(unit, option, place):
                continue
            first = self.taken[place].find(bytes(footprint))
            while first >= 0:
                self._fill(place, first, footprint, label)
                if self._room_for_spare(place):
                    return True
                self._empty(place, first, footprint, label)
                first = self.taken[place].find(bytes(footprint), first + 1)
        return False

    def _fill(self, place: int, first: int, size: int, label: int) -> None:
        self.taken[place][first : first + size] = b"\1" * size
        self.filled[place].append((first, label))

    def _empty(self, place: int, first: int, size: int, label: int) -> None:
        self.taken[place][first : first + size] = bytes(size)
        self.filled[place].remove((first, label))

    def _room_for_spare(self, place: int) -> bool:
        hole = self.rows.hole(place)
        return not hole or self.taken[place].find(bytes(hole)) >= 0


def _as_choice(master: Master, filled: list[list[tuple[int, int]]]) -> Choice | None:
    """The arrangement as columns, with the variables that go with them."""
    chosen: list[Column] = []
    for place, blocks in enumerate(filled):
        column = Column(place, tuple(sorted(blocks)), bool(blocks or master.rows.occupied[place]))
        master.add(column)
        chosen.append(column)
    at = [master.base + master.columns.index(column) for column in chosen]
    for index in at:
        master.lp.changeColBounds(index, 1.0, 1.0)
    try:
        found = master.choose(CHOOSE_SECONDS, None)
    finally:
        for index in at:
            master.lp.changeColBounds(index, 0.0, inf)
    return None if found is None or master.short(found) else found
