"""What is not as usual: units that a setup wants at another choice than most setups that use them."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from modebook.shots.plan import Plan


@dataclass(frozen=True, slots=True)
class Unusual:
    """Units in one setup that are not at their usual choice."""

    setup: str
    units: tuple[str, ...]
    setting: str
    choice: str
    usual: str


def unusual(plan: Plan, first: int = 0) -> list[Unusual]:
    """The exceptions from setup `first` (from 0) on, in shooting order; the usual choice is of all setups.

    Of two choices that are as frequent, the one that comes first is the usual one.
    """
    counts: dict[tuple[tuple[str, ...], str], Counter[str]] = {}
    for one in plan.setups:
        for taken in one.settings:
            counts.setdefault((taken.units, taken.setting), Counter())[taken.taken.label] += 1
    found: list[Unusual] = []
    for one in plan.setups[first:]:
        alike: dict[tuple[str, str, str], list[str]] = {}
        for taken in one.settings:
            usual = counts[taken.units, taken.setting].most_common(1)[0][0]
            if taken.taken.label != usual:
                alike.setdefault((taken.setting, taken.taken.label, usual), []).extend(taken.units)
        found += [Unusual(one.setup.name, tuple(units), *key) for key, units in alike.items()]
    return found
