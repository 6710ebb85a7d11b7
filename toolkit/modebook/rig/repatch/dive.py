"""Dives for a good arrangement: takes the surest column of some universe for good, and prices the rest anew.

The bound says how good an arrangement could be; columns made for the bound alone seldom fit together whole.
"""

from __future__ import annotations

from math import inf
from time import monotonic

from modebook.rig.repatch.master import Choice, Master

ROUNDS = 12
"""How often the rest is priced after each column that is taken."""
SURE = 0.999


def dive(master: Master, until: float) -> Choice | None:
    """An arrangement found by diving under the present objective; None if there is none at the end of it."""
    allowed = master.short_allowed
    master.allow_short(True)
    taken: dict[int, int] = {}
    choice = None
    try:
        while len(taken) < len(master.universes) and monotonic() < until:
            if not _settle(master, taken):
                break
            _take(master, taken)
        else:
            choice = _whole(master) if len(taken) == len(master.universes) else None
    finally:
        for at in taken.values():
            master.lp.changeColBounds(master.base + at, 0.0, inf)
        master.allow_short(allowed)
    return choice


def _settle(master: Master, taken: dict[int, int]) -> bool:
    """Price the universes that are left; false if no arrangement is left at all."""
    for _ in range(ROUNDS):
        _, found, _ = master.price()
        if not master.solved():
            return False
        added = [master.add(column) for column in found if column.universe not in taken]
        if not any(added):
            break
    master.lp.run()
    return master.solved()


def _take(master: Master, taken: dict[int, int]) -> None:
    """Take every column that is sure, or else the surest."""
    values = master.lp.getSolution().col_value
    best: dict[int, tuple[float, int]] = {}
    for at, column in enumerate(master.columns):
        share = values[master.base + at]
        if column.universe not in taken and share > best.get(column.universe, (-1.0, 0))[0]:
            best[column.universe] = (share, at)
    surest = max(best, key=lambda place: best[place][0])
    for place, (share, at) in best.items():
        if share >= SURE or place == surest:
            taken[place] = at
            master.lp.changeColBounds(master.base + at, 1.0, 1.0)


def _whole(master: Master) -> Choice | None:
    master.lp.run()
    if not master.solved():
        return None
    values = master.lp.getSolution().col_value
    if any(abs(value - round(value)) > 1e-5 for value in values):
        return None
    columns = tuple(column for at, column in enumerate(master.columns) if values[master.base + at] > 0.5)
    choice = master.choice(columns, values[: master.base])
    return None if master.short(choice) else choice
