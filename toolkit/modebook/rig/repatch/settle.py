"""Brings moved units home: into free slots of the universe that they came from, where no wish loses by it.

Which of several equal arrangements the solver gives is chance, and another universe is another cable.
"""

from __future__ import annotations

from collections.abc import Mapping

from modebook.documents.address import SLOTS_PER_UNIVERSE, Address
from modebook.rig.repatch.check import widest_hole
from modebook.rig.repatch.problem import Placing, Problem, Unit

Slots = dict[int, list[str]]


def settled(problem: Problem, placings: Mapping[str, Placing]) -> dict[str, Placing]:
    """The same arrangement with units brought home: nothing else moves, and no universe is opened for it.

    The widest go first, each to the first place that it fits; until no more can.
    """
    found = dict(placings)
    slots = _taken(problem, found)
    again = True
    while again:
        again = False
        away = [unit for unit in problem.units if _is_away(unit, found[unit.id])]
        for unit in sorted(away, key=lambda one: -found[one.id].option.slots):
            home = _home(problem, unit, found[unit.id], slots)
            if home is not None:
                _put(slots, found[unit.id], "")
                found[unit.id] = home
                _put(slots, home, unit.id)
                again = True
    return found


def _is_away(unit: Unit, placing: Placing) -> bool:
    return (
        not unit.group
        and len(unit.at) == len(placing.at) == 1
        and unit.at.keys() == placing.at.keys()
        and all(unit.at[key].universe != address.universe for key, address in placing.at.items())
    )


def _home(problem: Problem, unit: Unit, placing: Placing, slots: Slots) -> Placing | None:
    (key, before), size = next(iter(unit.at.items())), placing.option.slots
    universe = next(one for one in problem.universes if one.number == before.universe)
    here = slots[universe.number]
    allowed = placing.option.universes
    if universe.reserved or not any(here) or (allowed is not None and universe.number not in allowed):
        return None
    for first in range(SLOTS_PER_UNIVERSE - size + 1):
        if any(here[first : first + size]):
            continue
        tried = [*here[:first], *[unit.id] * size, *here[first + size :]]
        if widest_hole(tried) >= universe.spare_slots:
            return Placing(placing.option, {key: Address(universe.number, first + 1)})
    return None


def _taken(problem: Problem, placings: Mapping[str, Placing]) -> Slots:
    slots: Slots = {universe.number: [""] * SLOTS_PER_UNIVERSE for universe in problem.universes}
    for block in problem.fixed:
        first = block.first.address - 1
        for slot in range(first, min(first + block.slots, SLOTS_PER_UNIVERSE)):
            slots[block.first.universe][slot] = "fixed"
    for name, placing in placings.items():
        _put(slots, placing, name)
    return slots


def _put(slots: Slots, placing: Placing, name: str) -> None:
    for key, size in placing.option.blocks:
        first = placing.at[key].address - 1
        slots[placing.at[key].universe][first : first + size] = [name] * size
