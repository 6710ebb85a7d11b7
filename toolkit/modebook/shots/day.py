"""A plan with all that follows from it: the change list, the prep sheet, and whether a model agrees."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass, replace

from modebook.rig.reading import PatchedRow, RigReading
from modebook.shots.change import ChangeList, PowerCut, Stage
from modebook.shots.changes import change_list, power_cut
from modebook.shots.patched import patched_units
from modebook.shots.plan import Plan
from modebook.shots.replay import models, replay


@dataclass(frozen=True)
class Day:
    """A plan and its change list."""

    plan: Plan
    changes: ChangeList
    stages: tuple[Stage, ...]
    disagreements: tuple[str, ...]
    """Where a model of the fixtures, on which the list was done in order, does not end as planned."""
    first: int = 0
    """The setup (from 0) from which on it is told of."""

    @property
    def total_seconds_by_way(self) -> dict[str, float]:
        """Over the setups that are told of."""
        told = replace(self.changes, setups=self.changes.setups[self.first :])
        return {str(by): seconds for by, seconds in told.total_seconds_by_way.items()}


def day_of(reading: RigReading, plan: Plan, told: Container[tuple[str, str]] = (), first: int = 0) -> Day:
    """A plan's change list, done on a model of each unit before it is handed out.

    told: what a person said that units are at (unit, setting). first: the setup from which on to tell.
    """
    rows, stages = _rows(reading), _stages(plan)
    changes = change_list(reading, rows, stages, plan.start, plan.prepared, told)
    units = {unit for stage in stages for unit, _ in stage.wanted}
    used = {number: some for number, some in rows.items() if number in units}
    wrong = replay(changes, stages, models(used, plan.start))
    return Day(plan, changes, tuple(stages), tuple(wrong), first)


def cut_of(reading: RigReading, plan: Plan, after: int, told: Container[tuple[str, str]] = ()) -> PowerCut:
    """What a power cut during a setup (from 0) leaves to do."""
    return power_cut(reading, _rows(reading), _stages(plan), plan.start, plan.prepared, after, told)


def _rows(reading: RigReading) -> Mapping[str, Sequence[PatchedRow]]:
    return {some[0].unit.number: some for some in patched_units(reading).rows.values()}


def _stages(plan: Plan) -> list[Stage]:
    return [
        Stage(one.setup.name, one.setup.day, state)
        for one, state in zip(plan.setups, plan.states, strict=True)
    ]
