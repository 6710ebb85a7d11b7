"""Which of a unit's modes are worth looking at: one that another equals or betters in every wish is not."""

from __future__ import annotations

from dataclasses import replace

from modebook.rig.repatch.problem import Option, Problem, Unit
from modebook.rig.repatch.rows import MAXIMIZED, worth


def fewer_choices(problem: Problem) -> Problem:
    """The problem without options that another one of the same unit beats or equals in every wish."""
    return replace(problem, units=tuple(_fewer(unit, problem.keep_footprints) for unit in problem.units))


def best_choices(problem: Problem, wish: str) -> Problem:
    """The problem with only those options of each unit that count best for a wish."""
    return replace(problem, units=tuple(replace(unit, options=_best(unit, wish)) for unit in problem.units))


def best_worth(wish: str, unit: Unit) -> int:
    """What the best option of a unit counts for a wish."""
    worths = [worth(wish, unit, option) for option in unit.options]
    return max(worths) if wish in MAXIMIZED else min(worths)


def _best(unit: Unit, wish: str) -> tuple[Option, ...]:
    best = best_worth(wish, unit)
    return tuple(option for option in unit.options if worth(wish, unit, option) == best)


def _fewer(unit: Unit, keep_footprints: bool) -> Unit:
    left: list[Option] = []
    for at, option in enumerate(unit.options):
        beaten = any(
            _beats(unit, other, option, keep_footprints)
            and (place < at or not _beats(unit, option, other, keep_footprints))
            for place, other in enumerate(unit.options)
            if place != at
        )
        if not beaten:
            left.append(option)
    return replace(unit, options=tuple(left))


def _beats(unit: Unit, one: Option, other: Option, keep_footprints: bool) -> bool:
    """Whether `one` is at least as good as `other` wherever `other` could be used."""
    sizes, others = dict(one.blocks), dict(other.blocks)
    if sizes.keys() != others.keys() or any(sizes[key] > others[key] for key in sizes):
        return False
    if one.universes is not None and (other.universes is None or not one.universes >= other.universes):
        return False
    wishes = ["demands", "modes"] + ["footprints"] * keep_footprints
    return all(
        worth(wish, unit, one) >= worth(wish, unit, other)
        if wish in MAXIMIZED
        else worth(wish, unit, one) <= worth(wish, unit, other)
        for wish in wishes
    )
