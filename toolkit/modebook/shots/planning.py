"""Plans the settings of every setup: judges each choice, weighs it, takes the cheapest path over all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from modebook.documents.shots import Cue, Setup, Shots
from modebook.rig.in_effect import in_effect
from modebook.rig.reading import RigReading
from modebook.shots.asking import Engine, Told
from modebook.shots.axes import Axis, Group, State, axes_of, groups_of
from modebook.shots.candidates import Candidates, candidates_of, questions_of
from modebook.shots.conflicts import conflicts_of, unchosen_conflicts
from modebook.shots.flow import flow
from modebook.shots.judging import Judge
from modebook.shots.patched import Patched, patched_units
from modebook.shots.path import Chain, Path, cheapest
from modebook.shots.plan import Apart, Plan, PlannedSetup, Taken
from modebook.shots.ties import Tie
from modebook.shots.unchosen import unchosen_of, unchosen_questions
from modebook.shots.weighing import weighed
from modebook.shots.words import not_known, setup_warnings, why_taken


@dataclass
class Work:
    """What is worked out on the way, for the plan and for its explanations."""

    reading: RigReading
    shots: Shots
    patched: Patched
    groups: list[Group]
    axes: list[Axis]
    judge: Judge
    start: dict[tuple[str, str], str | None]
    found: list[list[Candidates | None]] = field(default_factory=list)
    """For each setup and axis its candidates; None where the setup does not use the axis."""
    ties: list[list[Tie]] = field(default_factory=list)
    """For each setup what must move together."""
    unjudged: list[list[str]] = field(default_factory=list)


def known_state(reading: RigReading, patched: Patched) -> dict[tuple[str, str], str | None]:
    """What each unit has each setting at, as far as rig.json, its slots or the factory say."""
    found: dict[tuple[str, str], str | None] = {}
    for rows in patched.rows.values():
        row = rows[0]
        assert row.fixture is not None
        known = row.known.settings if row.known else {}
        for setting in row.fixture.fixture.settings:
            factory = setting.factory.key if setting.factory else None
            told = known.get(setting.key, factory)
            there = told is None or any(choice.key == told for choice in setting.choices)
            found[row.unit.number, setting.key] = told if there else None
        for one in in_effect(row):
            found[row.unit.number, one.setting.key] = one.choice.key if one.choice else None
    return found


def plan(
    reading: RigReading,
    shots: Shots,
    *,
    state: State | None = None,
    from_setup: int = 0,
    told: Told | None = None,
    keep: bool = True,
) -> Plan:
    """The plan for a list of shots in its order.

    state: what units are at now, over what the rig's records say; with it, or with a later from_setup
    (counted from 0), nothing is prepared in the shop: every change takes a road that the day leaves open.
    keep: look among the engine's former answers, and keep the new ones. Raises ResponseError where the
    rig's own rates cannot be.
    """
    work = worked_out(reading, shots, state, from_setup, told, keep)
    paths, gap = _choose(work)
    made = _assembled(work, paths, gap, prepared=state is None and from_setup == 0)
    work.judge.engine.save()
    return made


def worked_out(
    reading: RigReading,
    shots: Shots,
    state: State | None = None,
    from_setup: int = 0,
    told: Told | None = None,
    keep: bool = True,
) -> Work:
    """Everything that is judged before anything is chosen."""
    patched = patched_units(reading)
    notes = (*shots.notes, *(f"{told}: left out" for told in reading.misnamed))
    kept = Shots(shots.path, shots.setups[from_setup:], shots.faults, notes)
    start = known_state(reading, patched)
    for (unit, setting), choice in (state or {}).items():
        start[patched[unit].unit.number if unit in patched else unit, setting] = choice
    groups = groups_of(reading, kept, patched)
    axes = axes_of(reading, groups, patched, start, state is None and from_setup == 0)
    work = Work(reading, kept, patched, groups, axes, Judge(reading, Engine(keep)), start)
    questions = [
        one
        for setup in kept.setups
        for ask in (questions_of, unchosen_questions)
        for one in ask(work.judge, patched, groups, axes, setup)
    ]
    work.judge.engine.ask_all(questions, told)
    for setup in kept.setups:
        found, ties, unjudged = candidates_of(work.judge, patched, groups, axes, setup)
        work.found.append(found)
        work.ties.append(ties)
        work.unjudged.append(unjudged)
    return work


def _choose(work: Work) -> tuple[list[list[int]], float]:
    """For each setup the choice of each axis, and the worst gap of any part."""
    stages = len(work.shots.setups)
    chosen = [[0] * len(work.axes) for _ in range(stages)]
    gap = 0.0
    if not stages:
        return chosen, gap
    for part in _parts(work):
        path = _solved(work, part)
        gap = max(gap, path.gap)
        for stage, now in enumerate(path.choices):
            for axis, choice in zip(part, now, strict=True):
                chosen[stage][axis] = choice
    return chosen, gap


def _parts(work: Work) -> list[list[int]]:
    """The axes that ties bind to each other, each part by rising places."""
    leader = list(range(len(work.axes)))

    def find(one: int) -> int:
        while leader[one] != one:
            leader[one] = leader[leader[one]]
            one = leader[one]
        return one

    for ties in work.ties:
        for tie in ties:
            for other in tie.axes[1:]:
                leader[find(other)] = find(tie.axes[0])
    parts: dict[int, list[int]] = {}
    for axis in range(len(work.axes)):
        parts.setdefault(find(axis), []).append(axis)
    return list(parts.values())


def _solved(work: Work, part: Sequence[int]) -> Path:
    policy = work.reading.policy
    place = {axis: index for index, axis in enumerate(part)}
    first = [np.array(work.axes[axis].first_cost) for axis in part]
    change = [np.array(work.axes[axis].change_cost) for axis in part]
    failing = _failing(work, part)
    stages, ties, apart = [], [], []
    for found, some in zip(work.found, work.ties, strict=True):
        costs = []
        for axis in part:
            told = found[axis]
            units = len(work.axes[axis].group.units)
            size = len(work.axes[axis].choices)
            costs.append(np.zeros(size) if told is None else weighed(told.candidates, units, policy, failing))
        stages.append(costs)
        mine = [tie for tie in some if tie.axes[0] in place]
        table: dict[tuple[int, ...], NDArray[np.float64]] = {}
        for tie in mine:
            key = tuple(place[axis] for axis in tie.axes)
            table[key] = table.get(key, np.zeros(1)) + failing * tie.table().astype(float)
        ties.append(table)
        apart.append([{(place[a], place[b]): pairs for (a, b), pairs in tie.pairs().items()} for tie in mine])
    chain = Chain(first, change, stages, ties)
    return cheapest(chain) if chain.is_small else flow(chain, apart, failing)


def _failing(work: Work, part: Sequence[int]) -> float:
    """A cost above all changes and preferences of a part together, so that a failed cue outweighs them."""
    most = 1.0
    for axis in part:
        one = work.axes[axis]
        finite = [cost for row in (one.first_cost, *one.change_cost) for cost in row if np.isfinite(cost)]
        leaving = len(one.group.units) * (work.reading.policy["shot-not-preferred"].value + len(one.choices))
        most += (max(finite, default=0.0) + leaving) * len(work.shots.setups)
    return most


def _assembled(work: Work, chosen: Sequence[Sequence[int]], gap: float, *, prepared: bool) -> Plan:
    setups, states, conflicts = [], [], []
    for stage, setup in enumerate(work.shots.setups):
        taken = []
        state: dict[tuple[str, str], str] = {}
        for axis, (one, choice) in enumerate(zip(work.axes, chosen[stage], strict=True)):
            state.update({(unit, one.setting.key): one.choices[choice].key for unit in one.group.units})
            told = work.found[stage][axis]
            if told is not None:
                tied = any(axis in tie.axes for tie in work.ties[stage])
                taken.append(_taken(work, one, told, choice, tied))
        bare = unchosen_of(work.judge, work.patched, work.groups, work.axes, setup)
        unjudged = (*work.unjudged[stage], *not_known(bare))
        cautions = setup_warnings(setup, work.patched)
        setups.append(PlannedSetup(setup, tuple(taken), unjudged, cautions, tuple(bare)))
        states.append(state)
        loose = _apart(work, stage, chosen[stage])
        conflicts += conflicts_of(work.judge, work.patched, setup, taken, loose)
        conflicts += unchosen_conflicts(work.judge, work.patched, setup, bare)
    return Plan(
        work.reading.name,
        work.shots.path,
        tuple(setups),
        tuple(states),
        work.start,
        prepared,
        tuple(conflicts),
        work.shots.faults,
        work.shots.notes,
        gap,
        work.judge.engine.asked,
    )


def _taken(work: Work, axis: Axis, told: Candidates, choice: int, tied: bool) -> Taken:
    row = axis.group.row
    assert row.fixture is not None
    assert row.mode is not None
    fixture = row.fixture.fixture
    taken = told.candidates[choice]
    return Taken(
        axis.group.name,
        axis.group.units,
        f"{fixture.maker} {fixture.model}",
        row.mode.mode.name,
        axis.setting.key,
        "modulation" if axis.setting.setting == "modulation-frequency" else "smoothing",
        taken.choice,
        told.candidates,
        axis.unreached,
        why_taken(told.candidates, taken, work.reading.policy, tied),
        told.assumed,
    )


def _apart(work: Work, stage: int, now: Sequence[int]) -> list[Apart]:
    """The ties that the choices taken do not hold."""
    found = []
    for tie in work.ties[stage]:
        apart_s = tie.apart_s([now[axis] for axis in tie.axes])
        if apart_s > tie.limit_s * (1 + 1e-9):
            cue: Cue = tie.cue
            found.append(Apart(cue.name, tie.units, 1000 * apart_s, 1000 * tie.limit_s, tie.known))
    return found


def setup_named(shots: Shots, told: str) -> int:
    """The place of a setup by its name, or its number in the order (from 1); -1 where there is none."""
    names = [setup.name.casefold() for setup in shots.setups]
    wanted = " ".join(told.split()).casefold()
    if wanted in names:
        return names.index(wanted)
    starts = [place for place, name in enumerate(names) if name.split()[:1] == [wanted]]
    if len(starts) == 1:
        return starts[0]
    if wanted.isascii() and wanted.isdigit() and 1 <= int(wanted) <= len(names):
        return int(wanted) - 1
    return -1


def in_order(shots: Shots, names: Sequence[str]) -> tuple[tuple[Setup, ...], list[str]]:
    """The setups in another order: those named, then the others as they stand; and the names not known."""
    places: list[int] = []
    unknown: list[str] = []
    for name in names:
        place = setup_named(shots, name)
        if place < 0:
            unknown.append(name)
        elif place not in places:
            places.append(place)
    rest = [place for place in range(len(shots.setups)) if place not in places]
    return tuple(shots.setups[place] for place in (*places, *rest)), unknown
