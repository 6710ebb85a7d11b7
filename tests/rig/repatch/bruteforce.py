"""Every arrangement of a small rig, tried one after the other: what the solver's values are compared with.

Footprints, addresses, holes and fixed blocks are multiples of 64 slots. Then nothing is lost by trying only
addresses on that grid: pushing every block down to the grid keeps the order and lets none meet. A beginning
that cannot come to anything better than what was found already is not gone on with: every figure is at least
what it is so far, and what the units left could still save at the very best.
"""

from __future__ import annotations

from collections.abc import Iterator

from modebook.documents.address import Address
from modebook.rig.repatch.problem import Option, Problem, Unit

CELL = 64
CELLS = 512 // CELL

Values = tuple[int, ...]


def best_values(problem: Problem) -> Values | None:
    """Demands, moves, universes, footprints kept, slots, modes changed and effort of the best arrangement.

    None where there is no arrangement. Footprints count only where the problem wants them kept.
    """
    taken = {universe.number: 0 for universe in problem.universes}
    for block in problem.fixed:
        taken[block.first.universe] |= _mask(block.first.address, block.slots)
    best: list[Values] = []
    for found in _arranged(problem, 0, taken, {}, (0, 0, 0, 0, 0, 0), best):
        best[:] = [min([found, *best])]
    if not best:
        return None
    demands, moves, universes, footprints, slots, modes, effort = best[0]
    return -demands, moves, universes, -footprints, slots, modes, effort


def _least(problem: Problem, at: int, taken: dict[int, int], so_far: tuple[int, ...]) -> Values:
    """What the values come to at the least, with each unit from `at` on as good as it can be."""
    demands, moves, footprints, slots, modes, effort = so_far
    left = problem.units[at:]
    demands -= sum(unit.weight * max(len(option.demands) for option in unit.options) for unit in left)
    footprints -= sum(unit.weight for unit in left)
    slots += sum(
        unit.weight * min(sum(size for _, size in option.blocks) for option in unit.options) for unit in left
    )
    universes = sum(1 for used in taken.values() if used)
    return demands, moves, universes, footprints, slots, modes, effort


def _arranged(
    problem: Problem,
    at: int,
    taken: dict[int, int],
    groups: dict[str, int],
    so_far: tuple[int, ...],
    best: list[Values],
) -> Iterator[Values]:
    if best and _least(problem, at, taken, so_far) >= best[0]:
        return
    if at == len(problem.units):
        for universe in problem.universes:
            used = taken[universe.number]
            if used and universe.spare_slots and not universe.reserved:
                hole = (1 << (universe.spare_slots // CELL)) - 1
                if not any(used & (hole << i) == 0 for i in range(CELLS - universe.spare_slots // CELL + 1)):
                    return
        demands, moves, footprints, slots, modes, effort = so_far
        universes = sum(1 for used in taken.values() if used)
        yield demands, moves, universes, footprints, slots, modes, effort
        return
    unit = problem.units[at]
    for option in sorted(unit.options, key=lambda one: -len(one.demands)):
        places_first = sorted(
            _places(problem, unit, option, list(option.blocks), taken),
            key=lambda places: any(unit.at.get(key) != address for key, address in places.items()),
        )
        for places in places_first:
            moved = any(unit.at.get(key) != address for key, address in places.items())
            if unit.pinned and moved:
                continue
            here = {address.universe for address in places.values()}
            if unit.group and (len(here) > 1 or groups.get(unit.group, min(here)) != min(here)):
                continue
            now = dict(taken)
            for key, footprint in option.blocks:
                now[places[key].universe] |= _mask(places[key].address, footprint)
            kept = dict(option.blocks) == dict(unit.now.blocks) and problem.keep_footprints
            added = (
                -len(option.demands),
                int(moved),
                -int(kept),
                sum(footprint for _, footprint in option.blocks),
                int(option.key != unit.now.key),
                unit.effort * moved,
            )
            total = tuple(one + unit.weight * two for one, two in zip(so_far, added, strict=True))
            then = {**groups, unit.group: min(here)} if unit.group else groups
            yield from _arranged(problem, at + 1, now, then, total, best)


def _places(
    problem: Problem, unit: Unit, option: Option, blocks: list[tuple[str, int]], taken: dict[int, int]
) -> Iterator[dict[str, Address]]:
    if not blocks:
        yield {}
        return
    (key, footprint), *others = blocks
    for universe in problem.universes:
        if option.universes is not None and universe.number not in option.universes:
            continue
        for cell in range(CELLS - footprint // CELL + 1):
            address = Address(universe.number, cell * CELL + 1)
            mask = _mask(address.address, footprint)
            if taken[universe.number] & mask or (universe.reserved and unit.at.get(key) != address):
                continue
            now = {**taken, universe.number: taken[universe.number] | mask}
            for rest in _places(problem, unit, option, others, now):
                yield {key: address, **rest}


def _mask(address: int, slots: int) -> int:
    return ((1 << (slots // CELL)) - 1) << ((address - 1) // CELL)
