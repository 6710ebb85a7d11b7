"""What is decided: for each group of like units each setting that matters, and what changes cost."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from modebook.documents.settings import Choice, Setting
from modebook.documents.shots import Shots
from modebook.documents.ways import is_smoothing
from modebook.rig.reading import PatchedRow, RigReading
from modebook.shots.patched import Patched
from modebook.shots.route import Route
from modebook.shots.routes import in_the_shop, routes
from modebook.words.parameters import PARAMETERS

State = Mapping[tuple[str, str], str | None]
"""What each unit (number) has each setting (key) at; None or missing: not known."""


@dataclass(frozen=True)
class Group:
    """Units that are alike and stay alike: one fixture, one mode, one kind of link, one group."""

    key: int
    name: str
    units: tuple[str, ...]
    row: PatchedRow
    """One of them, for what they have in common."""


@dataclass(frozen=True)
class Axis:
    """One setting of one group: what is decided for each setup."""

    group: Group
    setting: Setting
    choices: tuple[Choice, ...]
    """Those that can be had: reached before the day or during it, or what the units have already."""
    unreached: tuple[str, ...]
    """Choices that no way reaches, by key."""
    roads: Mapping[tuple[str, str], Route]
    """The cheapest road for a unit (number) to a choice (key) during the day; missing where there is none."""
    first_cost: tuple[float, ...]
    """What it costs to have each choice in the first setup; infinite where it cannot be had."""
    change_cost: tuple[tuple[float, ...], ...]
    """What it costs to go from each choice to each; infinite where no road leads there."""

    @property
    def families(self) -> frozenset[str]:
        """The families of parameters that it acts on; empty where the record does not say: all."""
        return frozenset(self.setting.acts_on)

    @property
    def smooths(self) -> bool:
        """Whether it decides how much its units smooth; else it is a modulation frequency."""
        return is_smoothing(self.setting)

    def acts_on(self, word: str) -> bool:
        """Whether it acts on a parameter of this word."""
        return not self.families or PARAMETERS[word].family in self.families

    def index(self, choice: str) -> int:
        """The place of a choice among `choices`."""
        return [one.key for one in self.choices].index(choice)


def groups_of(reading: RigReading, shots: Shots, patched: Patched) -> list[Group]:
    """The groups of like units among those that any cue moves, in the order of the patch."""
    used = {unit.casefold() for setup in shots.setups for cue in setup.cues for unit in cue.units}
    found: dict[tuple[object, ...], list[PatchedRow]] = {}
    for rows in patched.rows.values():
        row = rows[0]
        if row.unit.number.casefold() not in used:
            continue
        together = row.unit.group or row.unit.position
        universe = row.unit.address.universe if row.unit.address else 0
        link = reading.link(universe).model_dump_json(exclude={"about"})
        curve = (row.known.settings if row.known else {}).get("curve")
        # A unit that nobody gets to must not keep its neighbors from what a hand can change.
        away = row.reach == "not at all"
        key = (row.identity, row.modes, link, " ".join(together.casefold().split()), curve, away)
        found.setdefault(key, []).append(row)
    return [
        Group(
            place,
            rows[0].unit.group or rows[0].unit.position or "-",
            tuple(r.unit.number for r in rows),
            rows[0],
        )
        for place, rows in enumerate(found.values())
    ]


def axes_of(
    reading: RigReading, groups: Sequence[Group], patched: Patched, start: State, prepared: bool
) -> list[Axis]:
    """The axes of all groups.

    prepared: the units can be set in the shop before the first setup, at the floor's cost; otherwise they
    are as `start` says and every change takes a road that the day leaves open.
    """
    found: list[Axis] = []
    for group in groups:
        assert group.row.fixture is not None
        roads = {unit: routes(reading, patched.rows[unit.casefold()]) for unit in group.units}
        for setting in group.row.fixture.fixture.settings:
            if not setting.none and len(setting.choices) > 1 and _matters(setting):
                found.append(_axis(reading, group, setting, patched, roads, start, prepared))
    return found


def _matters(setting: Setting) -> bool:
    if setting.setting == "modulation-frequency":
        return sum(choice.frequency_hz is not None for choice in setting.choices) > 1
    return is_smoothing(setting) and setting.setting == "smoothing"


def _axis(
    reading: RigReading,
    group: Group,
    setting: Setting,
    patched: Patched,
    roads: Mapping[str, Mapping[str, Mapping[str, tuple[Route, ...]]]],
    start: State,
    prepared: bool,
) -> Axis:
    best: dict[tuple[str, str], Route] = {}
    costs: dict[str, float] = {}
    firsts: dict[str, float] = {}
    for choice in setting.choices:
        cost = first = 0.0
        for unit in group.units:
            some = roads[unit][setting.key][choice.key]
            if some:
                best[unit, choice.key] = some[0]
            cost += some[0].cost if some else math.inf
            first += _first(
                reading, patched[unit], setting, choice, some, start.get((unit, setting.key)), prepared
            )
        costs[choice.key], firsts[choice.key] = cost, first
    can = tuple(one for one in setting.choices if min(costs[one.key], firsts[one.key]) < math.inf)
    return Axis(
        group,
        setting,
        can,
        tuple(one.key for one in setting.choices if one not in can),
        best,
        tuple(firsts[one.key] for one in can),
        tuple(tuple(0.0 if one is other else costs[other.key] for other in can) for one in can),
    )


def _first(
    reading: RigReading,
    row: PatchedRow,
    setting: Setting,
    choice: Choice,
    some: Sequence[Route],
    has: str | None,
    prepared: bool,
) -> float:
    """What one unit's choice costs before the first setup."""
    if has == choice.key:
        return 0.0
    least = some[0].cost if some else math.inf
    if prepared:
        shop = in_the_shop(reading, row, setting, choice)
        least = min(least, shop.cost if shop else math.inf)
    return least
