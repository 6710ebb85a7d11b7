"""Refuses, before any solving, what no arrangement can grant, and names what stands in the way."""

from __future__ import annotations

from collections import defaultdict

from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.repatch.errors import ImpossibleError
from modebook.rig.repatch.problem import Problem


def refuse_hopeless(problem: Problem) -> None:
    """Raises ImpossibleError where pinned units meet or part a group, or spares or slots cannot fit."""
    _pinned(problem)
    _spares(problem)
    open_to_all = [universe for universe in problem.universes if not universe.reserved]
    wanted = sum(min(option.slots for option in unit.options) for unit in problem.units)
    if wanted > SLOTS_PER_UNIVERSE * len(problem.universes):
        raise ImpossibleError(
            f"{wanted} slots are wanted at least, and {len(problem.universes)} universes have "
            f"{SLOTS_PER_UNIVERSE * len(problem.universes)}: let more universes be opened "
            "(repatch.more_universes in rig.json)"
        )
    if not open_to_all and any(not unit.at for unit in problem.units):
        raise ImpossibleError(
            "every universe is reserved, so nothing can be given an address: open another one"
        )


def _pinned(problem: Problem) -> None:
    taken: dict[tuple[int, int], str] = {}
    for fixed in problem.fixed:
        start = fixed.first.address
        for slot in range(start, min(start + fixed.slots, SLOTS_PER_UNIVERSE + 1)):
            taken[fixed.first.universe, slot] = "slots that stay as they are"
    groups: dict[str, tuple[int, str]] = {}
    for unit in problem.units:
        if not unit.pinned:
            continue
        if not unit.at:
            raise ImpossibleError(
                f"unit {unit.id} is pinned but has no address: give it one, or do not pin it"
            )
        for key, address in unit.at.items():
            sizes = [dict(option.blocks).get(key, SLOTS_PER_UNIVERSE) for option in unit.options]
            for slot in range(address.address, address.address + min(sizes)):
                if slot > SLOTS_PER_UNIVERSE:
                    raise ImpossibleError(f"unit {unit.id} is pinned where it runs past 512: do not pin it")
                other = taken.setdefault((address.universe, slot), f"unit {unit.id}")
                if other != f"unit {unit.id}":
                    raise ImpossibleError(
                        f"unit {unit.id} is pinned where it meets {other} at {address.universe}/{slot}: "
                        "pin only one of them"
                    )
            if unit.group:
                number, first = groups.setdefault(unit.group, (address.universe, unit.id))
                if number != address.universe:
                    raise ImpossibleError(
                        f"the group {unit.group} is to be kept together, but unit {first} is pinned in "
                        f"universe {number} and unit {unit.id} in universe {address.universe}: "
                        "pin only one of them"
                    )


def _spares(problem: Problem) -> None:
    taken: dict[int, list[bool]] = defaultdict(lambda: [False] * SLOTS_PER_UNIVERSE)
    for fixed in problem.fixed:
        start = fixed.first.address - 1
        for slot in range(start, min(start + fixed.slots, SLOTS_PER_UNIVERSE)):
            taken[fixed.first.universe][slot] = True
    for universe in problem.universes:
        if universe.reserved or not universe.spare_slots or universe.number not in taken:
            continue
        most = run = 0
        for used in taken[universe.number]:
            run = 0 if used else run + 1
            most = max(most, run)
        if most < universe.spare_slots:
            raise ImpossibleError(
                f"universe {universe.number} cannot leave {universe.spare_slots} free slots in a row: what "
                f"stays in it leaves {most} at most; reserve the universe, or ask for fewer spare slots"
            )
