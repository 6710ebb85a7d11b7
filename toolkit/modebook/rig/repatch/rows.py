"""The repatch as rows of a linear program: what each step of a universe's graph does to them, and the wishes.

Variables beside the steps: for each unit which option it takes, and whether it moves; for each group and
universe whether it is there. Moved blocks of one family (same group, same allowed universes) are counted by
size alone: of each size and above, as many must be placed as are moved, so a place may hold a smaller block.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from math import inf

from modebook.rig.repatch.errors import ImpossibleError
from modebook.rig.repatch.graph import Graph, Keep, Place, graph_of
from modebook.rig.repatch.problem import Option, Problem, Unit

WISHES = ("demands", "moves", "universes", "footprints", "slots", "modes", "effort")
"""In the order in which they are granted; `footprints` only where the rig wants them kept."""
BY_OPTION = frozenset({"demands", "footprints", "slots", "modes"})
"""Wishes that look at each unit's mode alone."""
MAXIMIZED = frozenset({"demands", "footprints"})

Family = tuple[str, frozenset[int] | None]
"""The group of a block (empty for none), and the universes that its option allows."""
Entries = list[tuple[int, float]]
"""Rows with coefficients."""


@dataclass(frozen=True, slots=True)
class Item:
    """A block of an option of a unit; its label is its place in Rows.items."""

    unit: int
    option: int
    key: str
    footprint: int
    family: Family


@dataclass(frozen=True, slots=True)
class Slot:
    """A size of moved block of a family; its label follows those of the items."""

    family: Family
    footprint: int


def worth(wish: str, unit: Unit, option: Option) -> int:
    """What an option counts for a wish that looks at options alone."""
    now = unit.now
    if wish == "demands":
        return unit.weight * len(option.demands)
    if wish == "footprints":
        return unit.weight * (dict(option.blocks) == dict(now.blocks))
    if wish == "slots":
        return unit.weight * option.slots
    if wish == "modes":
        return unit.weight * (option.key != now.key)
    return 0


class Rows:
    """The rows and variables of a problem."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.lower: list[float] = []
        self.upper: list[float] = []
        self.columns: list[Entries] = []
        self.bounds: list[tuple[float, float]] = []
        self.items: list[Item] = []
        self.places: list[Slot] = []
        self.option_of: dict[tuple[int, int], int] = {}
        self.moved_of: list[int] = []
        self.short: list[int] = []
        """Variables that count blocks without a place; at 0 in every arrangement."""
        self._on_label: dict[tuple[int, int], Entries] = defaultdict(list)
        self._on_any: dict[int, Entries] = defaultdict(list)
        self.wish_row = {wish: self.row(-inf, inf) for wish in WISHES}
        self.units()
        self.supply()
        self.groups()
        self.number = {universe.number: i for i, universe in enumerate(problem.universes)}
        self.occupied = self._occupied()

    def row(self, lower: float, upper: float) -> int:
        """A new row."""
        self.lower.append(lower)
        self.upper.append(upper)
        return len(self.lower) - 1

    def variable(self, entries: Entries, upper: float = 1.0) -> int:
        """A new variable from 0 to `upper`."""
        self.columns.append(entries)
        self.bounds.append((0.0, upper))
        return len(self.columns) - 1

    def effect(self, universe: int, label: int) -> Entries:
        """What a step with this label does to the rows, in the universe at this place."""
        return self._on_any.get(label, []) + self._on_label.get((universe, label), [])

    def units(self) -> None:
        """Each unit takes one option, keeps blocks of that one only, and moves with any block not kept."""
        for index, unit in enumerate(self.problem.units):
            if unit.pinned and not unit.at:
                raise ImpossibleError(f"unit {unit.id} is pinned but has no address: give it one")
            one = self.row(1, 1)
            kept: dict[tuple[int, str], int] = {}
            moves = [self.row(0, inf) for _ in range(max(len(option.blocks) for option in unit.options))]
            for place, option in enumerate(unit.options):
                entries: Entries = [(one, 1.0)]
                entries += [(self.wish_row[w], worth(w, unit, option)) for w in WISHES]
                for at, (key, footprint) in enumerate(option.blocks):
                    entries.append((moves[at], -1.0))
                    label = len(self.items)
                    self.items.append(Item(index, place, key, footprint, (unit.group, option.universes)))
                    if key in unit.at:
                        kept[place, key] = self.row(0, inf)
                        entries.append((kept[place, key], 1.0))
                        self._on_any[label] += [(kept[place, key], -1.0), (moves[at], 1.0)]
                self.option_of[index, place] = self.variable([entry for entry in entries if entry[1]])
            moved: Entries = [(row, 1.0) for row in moves]
            moved.append((self.wish_row["moves"], float(unit.weight)))
            if unit.effort:
                moved.append((self.wish_row["effort"], float(unit.weight * unit.effort)))
            self.moved_of.append(self.variable(moved, 0.0 if unit.pinned else 1.0))

    def supply(self) -> None:
        """Of each size and above, as many places as moved blocks, in each family."""
        sizes: dict[Family, set[int]] = defaultdict(set)
        for item in self.items:
            if not self.problem.units[item.unit].pinned:
                sizes[item.family].add(item.footprint)
        rows: dict[Family, list[tuple[int, int]]] = {}
        for family in sorted(sizes, key=_order):
            rows[family] = [(size, self.row(0, inf)) for size in sorted(sizes[family])]
            for size, row in rows[family]:
                self.places.append(Slot(family, size))
                label = len(self.items) + len(self.places) - 1
                self._on_any[label] += [(r, 1.0) for s, r in rows[family] if s <= size]
                self.short.append(self.variable([(row, 1.0)], inf))
        for label, item in enumerate(self.items):
            if self.problem.units[item.unit].pinned:
                continue
            need = [row for size, row in rows[item.family] if size <= item.footprint]
            self.columns[self.option_of[item.unit, item.option]] += [(row, -1.0) for row in need]
            if label in self._on_any:
                self._on_any[label] += [(row, 1.0) for row in need]

    def groups(self) -> None:
        """A group is in one universe, with all that it keeps and all that is placed for it."""
        members: dict[str, int] = defaultdict(int)
        for unit in self.problem.units:
            if unit.group:
                members[unit.group] += max(len(option.blocks) for option in unit.options)
        for group in sorted(members):
            one = self.row(1, 1)
            for place in range(len(self.problem.universes)):
                here: Entries = [(one, 1.0)]
                all_placed = self.row(0, inf)
                here.append((all_placed, float(members[group])))
                number = self.problem.universes[place].number
                for label, item in enumerate(self.items):
                    unit = self.problem.units[item.unit]
                    if unit.group == group and item.key in unit.at and unit.at[item.key].universe == number:
                        row = self.row(0, inf)
                        here.append((row, 1.0))
                        self._on_label[place, label].append((row, -1.0))
                for at, slot in enumerate(self.places):
                    if slot.family[0] == group:
                        self._on_label[place, len(self.items) + at].append((all_placed, -1.0))
                self.variable(here)

    def keeps(self, place: int) -> list[Keep]:
        """What may stay in the universe at a place."""
        number = self.problem.universes[place].number
        found = []
        for label, item in enumerate(self.items):
            address = self.problem.units[item.unit].at.get(item.key)
            allowed = item.family[1]
            if address is not None and address.universe == number and (allowed is None or number in allowed):
                found.append(Keep(label, address.address - 1, item.footprint))
        return found

    def placeable(self, place: int) -> list[Place]:
        """What may be moved into the universe at a place."""
        universe = self.problem.universes[place]
        return [
            Place(len(self.items) + at, slot.footprint)
            for at, slot in enumerate(self.places)
            if not universe.reserved and (slot.family[1] is None or universe.number in slot.family[1])
        ]

    def hole(self, place: int) -> int:
        """The slots to leave in a row in the universe at a place."""
        universe = self.problem.universes[place]
        return 0 if universe.reserved else universe.spare_slots

    def graph(self, place: int) -> Graph:
        """All steps of the universe at a place."""
        return graph_of(self.keeps(place), self.placeable(place), self.occupied[place], self.hole(place))

    def _occupied(self) -> list[list[tuple[int, int]]]:
        found: list[list[tuple[int, int]]] = [[] for _ in self.problem.universes]
        for block in self.problem.fixed:
            place = self.number.get(block.first.universe)
            if place is None:
                raise ImpossibleError(
                    f"slots are taken in universe {block.first.universe}, which is not given"
                )
            start = block.first.address - 1
            found[place].append((start, min(512, start + block.slots)))
        return found


def _order(family: Family) -> tuple[str, tuple[int, ...]]:
    return family[0], tuple(sorted(family[1] or ()))
