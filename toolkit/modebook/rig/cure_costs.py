"""What the cures of a mode's own faults cost in slots, where the cure is another mode of the fixture."""

from __future__ import annotations

from dataclasses import replace

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rules._better import better_mode
from modebook.documents.modes import Mode
from modebook.rig.rules._costs import cost_of, cost_told


def with_cost(rule: str, fault: Fault, fixture: FixtureReading, mode: ModeReading) -> Fault:
    """A fault with `cost_slots` in its figure, and the cost in its help where another mode is named there.

    0 where the cure changes no footprint; None where no mode of the fixture is a cure.
    """
    other: Mode | None = None
    cost: int | None = 0
    if rule.startswith("coarse-"):
        other = _finer(fault, fixture, mode)
        cost = None if other is None else cost_of(mode.mode, other)
    elif rule == "smoothing-by-hand-only":
        other = _with_slot(fixture)
        cost = 0 if other is None else cost_of(mode.mode, other)
    figure = {**fault.figure, "cost_slots": cost}
    if other is None or cost is None:
        return replace(fault, figure=figure)
    figure["cure_mode"] = other.name
    # The help ends with the limit and its source: the cost belongs before it, beside the mode.
    mode_part, limit, rest = fault.help.partition("; the limit is")
    return replace(fault, figure=figure, help=f"{mode_part}, {cost_told(cost)}{limit}{rest}")


def _finer(fault: Fault, fixture: FixtureReading, mode: ModeReading) -> Mode | None:
    """The mode that the fault's help names: found by the same search."""
    words = fault.figure.get("parameters") or [fault.figure.get("parameter")]
    needed = fault.figure.get("bits_needed")
    if not isinstance(words, list) or not isinstance(needed, int):
        return None
    written = next((one for one in fixture.modes if one.pointer == mode.pointer), mode)
    better = better_mode(fixture, written, tuple(str(word) for word in words), needed)
    return better[0] if better else None


def _with_slot(fixture: FixtureReading) -> Mode | None:
    """The smallest mode that changes smoothing by a slot, as smoothing-by-hand-only names it."""
    keys = {setting.key for setting, _ in fixture.smoothings}
    found = [one.mode for one in fixture.modes if not keys.isdisjoint(one.survey.sets)]
    return min(found, key=lambda one: one.footprint, default=None)
