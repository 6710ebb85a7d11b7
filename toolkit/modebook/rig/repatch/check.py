"""Looks at a finished arrangement with fresh eyes: no slot twice, none past 512, what must stay stays."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping

from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.repatch.errors import UnsolvedError
from modebook.rig.repatch.problem import Placing, Problem


def refuse_faulty(problem: Problem, placings: Mapping[str, Placing]) -> None:
    """Raises UnsolvedError for an arrangement that is not sound, which would be a fault of the program."""
    for fault in faults(problem, placings):
        raise UnsolvedError(
            f"the plan is not sound ({fault}): this is a fault of the program, please report it"
        )


def faults(problem: Problem, placings: Mapping[str, Placing]) -> Iterator[str]:
    """What is wrong with an arrangement, in words; nothing if it is sound."""
    taken: dict[int, list[str]] = {u.number: [""] * SLOTS_PER_UNIVERSE for u in problem.universes}
    for fixed in problem.fixed:
        start = fixed.first.address - 1
        for slot in range(start, min(start + fixed.slots, SLOTS_PER_UNIVERSE)):
            taken[fixed.first.universe][slot] = "what is fixed"
    by_number = {universe.number: universe for universe in problem.universes}
    groups: dict[str, set[int]] = defaultdict(set)
    for unit in problem.units:
        placing = placings[unit.id]
        option = placing.option
        if set(placing.at) != {key for key, _ in option.blocks}:
            yield f"unit {unit.id} lacks an address"
        if unit.pinned and placing.moved(unit):
            yield f"unit {unit.id} is pinned and moved"
        for key, footprint in option.blocks:
            address = placing.at[key]
            slots = taken[address.universe]
            end = address.address - 1 + footprint
            if end > SLOTS_PER_UNIVERSE:
                yield f"unit {unit.id} runs past 512"
            for slot in range(address.address - 1, min(end, SLOTS_PER_UNIVERSE)):
                if slots[slot]:
                    yield f"unit {unit.id} meets {slots[slot]} at {address.universe}/{slot + 1}"
                slots[slot] = f"unit {unit.id}"
            if option.universes is not None and address.universe not in option.universes:
                yield f"unit {unit.id} does not meet its demands in universe {address.universe}"
            if by_number[address.universe].reserved and unit.at.get(key) != address:
                yield f"unit {unit.id} is moved into universe {address.universe}, which is reserved"
            if unit.group:
                groups[unit.group].add(address.universe)
    for group, numbers in groups.items():
        if len(numbers) > 1:
            yield f"the group {group} is in {len(numbers)} universes"
    for universe in problem.universes:
        slots = taken[universe.number]
        if universe.reserved or not universe.spare_slots or not any(slots):
            continue
        if widest_hole(slots) < universe.spare_slots:
            yield f"universe {universe.number} has no {universe.spare_slots} free slots in a row"


def widest_hole(slots: list[str]) -> int:
    """The most free slots in a row."""
    most = run = 0
    for taker in slots:
        run = 0 if taker else run + 1
        most = max(most, run)
    return most
