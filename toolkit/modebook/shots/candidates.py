"""For one setup: every group's choices with their verdicts, what must move together, what is not judged."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from modebook.documents.settings import Choice
from modebook.documents.shots import Cue, Setup
from modebook.response.fade import Fade
from modebook.rig.grouping import unit_ranges
from modebook.shots.axes import Axis, Group
from modebook.shots.judging import Case, Figures, Judge, difference_percent
from modebook.shots.patched import Patched
from modebook.shots.plan import Candidate
from modebook.shots.ties import Spans, Tie
from modebook.shots.verdicts import as_smooth_as_can_be, verdict


@dataclass(frozen=True)
class Candidates:
    """An axis in a setup."""

    candidates: tuple[Candidate, ...]
    assumed: tuple[str, ...]


@dataclass(frozen=True)
class Asked:
    """A cue on a group."""

    cue: Cue
    case: Case
    units: tuple[str, ...]


def candidates_of(
    judge: Judge, patched: Patched, groups: Sequence[Group], axes: Sequence[Axis], setup: Setup
) -> tuple[list[Candidates | None], list[Tie], list[str]]:
    """For each axis its candidates (None where the setup does not use it); the ties; what is not judged."""
    asked = {group.key: asked_of(judge, patched, group, setup) for group in groups}
    found: list[Candidates | None] = []
    delays: dict[tuple[int, int], Spans] = {}
    by_group: dict[int, list[int]] = {}
    unjudged = _unjudged(groups, asked)
    for place, axis in enumerate(axes):
        some = asked[axis.group.key]
        if axis.setting.setting == "modulation-frequency":
            found.append(_modulation(judge, axis, some))
            continue
        first = [one for one in axes if one.group is axis.group and one.smooths]
        mine = [one for one in some if acting(first, one, axis, patched)]
        by_group.setdefault(axis.group.key, []).append(place)
        found.append(_smoothing(judge, axis, mine) if mine else None)
        for one in mine:
            if one.cue.intent == "match" and one.case.fade is not None:
                spans = [_delay(judge, one.case, choice) for choice in axis.choices]
                delays[place, one.cue.row] = np.array(spans)
    return found, _ties(judge, groups, axes, asked, delays, setup, unjudged), unjudged


def questions_of(
    judge: Judge, patched: Patched, groups: Sequence[Group], axes: Sequence[Axis], setup: Setup
) -> list[Fade]:
    """What candidates_of would ask the engine about a setup."""
    found: list[Fade] = []
    for group in groups:
        mine = [one for one in axes if one.group is group and one.smooths]
        for asked in asked_of(judge, patched, group, setup):
            if asked.case.fade is None or asked.cue.intent == "any":
                continue
            axis = next((one for one in mine if acting(mine, asked, one, patched)), None)
            choices: Sequence[Choice | None] = axis.choices if axis else (None,)
            stepping = asked.cue.intent in ("smooth", "unseen")
            for choice in choices if axis or asked.cue.intent == "match" else ():
                found += judge.questions(asked.case, choice, stepping)
    return found


def asked_of(judge: Judge, patched: Patched, group: Group, setup: Setup) -> list[Asked]:
    """A setup's cues on a group, those whose parameter the group has."""
    mine = {unit.casefold() for unit in group.units}
    found: list[Asked] = []
    for cue in setup.cues:
        units = tuple(unit for unit in cue.units if unit.casefold() in mine)
        if not units:
            continue
        parameter = patched.parameter(units[0], cue.parameter)
        if parameter is not None:
            found.append(Asked(cue, judge.case(group.row, parameter, cue), units))
    return found


def acting(axes: Sequence[Axis], asked: Asked, axis: Axis, patched: Patched) -> bool:
    """Whether an axis is the one that acts on a cue: of several, the first in the record that does."""
    parameter = patched.parameter(asked.units[0], asked.cue.parameter)
    assert parameter is not None
    return next((one for one in axes if one.acts_on(parameter.parameter)), None) is axis


def _smoothing(judge: Judge, axis: Axis, asked: Sequence[Asked]) -> Candidates:
    from modebook.documents.responding import smoothing_of

    figures = [[_needed(judge, one, choice) for one in asked] for choice in axis.choices]
    lengths = [_length(judge, axis, choice) for choice in axis.choices]
    judged = [
        [
            verdict(judge.policy, one.cue, one.case, told, judge.camera(one.cue).frame_s)
            for one, told in zip(asked, some, strict=True)
        ]
        for some in figures
    ]
    longest = max((length for length in lengths if length is not None), default=None)
    made: list[Candidate] = []
    for choice, found, length in zip(axis.choices, judged, lengths, strict=True):
        verdicts = tuple(
            as_smooth_as_can_be(judge.policy, one) if length == longest else one for one in found
        )
        made.append(
            Candidate(
                choice.key,
                choice.label or choice.key,
                length,
                verdicts,
                sum(not one.ok for one in verdicts),
                sum(not one.ok for one in verdicts if one.cue.intent in ("snap", "pixels")),
                measured=choice.measured is not None,
            )
        )
    assumed = dict.fromkeys(said for one in asked for said in one.case.assumed)
    assumed |= dict.fromkeys(said for choice in axis.choices for said in smoothing_of(choice).assumed)
    return Candidates(tuple(made), tuple(assumed))


def _figures(judge: Judge, case: Case, choice: Choice | None, stepping: bool = False) -> Figures | None:
    """What the engine finds; without `stepping` losses are left aside, which delays do not depend on."""
    if case.fade is None:
        return None
    return judge.figures(case, choice, stepping)


def _needed(judge: Judge, asked: Asked, choice: Choice) -> Figures | None:
    """The figures that the cue's intent asks for; None where any look will do."""
    if asked.cue.intent == "any":
        return None
    return _figures(judge, asked.case, choice, asked.cue.intent in ("smooth", "unseen"))


def _length(judge: Judge, axis: Axis, choice: Choice) -> float | None:
    """The longer of its rising and falling length in packets of this link; None where it is not known."""
    from modebook.documents.responding import smoothing_of

    told = smoothing_of(choice)
    if not told.known:
        return None
    rate_hz = judge.link(axis.group.row).line_hz
    return max(told.smoothing.lengths_s(1.0 / rate_hz)) * rate_hz


def _delay(judge: Judge, case: Case, choice: Choice | None) -> tuple[float, float]:
    figures = _figures(judge, case, choice)
    return figures.delay_s if figures else (0.0, 0.0)


def _modulation(judge: Judge, axis: Axis, asked: Sequence[Asked]) -> Candidates | None:
    if not asked:
        return None
    cameras = {judge.camera(one.cue) for one in asked}
    made = []
    for choice in axis.choices:
        worst = None
        if choice.frequency_hz is not None:
            worst = max(
                difference_percent(choice.frequency_hz, one.fps, 360.0 * one.open_s * one.fps)
                for one in cameras
            )
        made.append(
            Candidate(choice.key, choice.label or choice.key, None, (), 0, 0, difference_percent=worst)
        )
    return Candidates(tuple(made), ("light switched for half of the time: no record tells its duty",))


def _ties(
    judge: Judge,
    groups: Sequence[Group],
    axes: Sequence[Axis],
    asked: dict[int, list[Asked]],
    delays: dict[tuple[int, int], Spans],
    setup: Setup,
    unjudged: list[str],
) -> list[Tie]:
    """The cues of intent match, those at one time of one shot as one: all their units move together."""
    found: list[Tie] = []
    for shot in setup.shots:
        together: dict[float, list[Cue]] = {}
        for cue in shot.cues:
            if cue.intent == "match":
                together.setdefault(cue.start_s, []).append(cue)
        for cues in together.values():
            rows = {cue.row for cue in cues}
            members: dict[int, Spans] = {}
            fixed: list[tuple[float, float]] = []
            known = True
            for group in groups:
                for one in asked[group.key]:
                    if one.cue.row not in rows:
                        continue
                    places = [
                        place for place, row in delays if row == one.cue.row and axes[place].group is group
                    ]
                    if places:
                        members[places[0]] = delays[places[0], one.cue.row]
                    elif one.case.fade is not None:
                        span, sure = _fixed(judge, group, one.case)
                        fixed.append(span)
                        known = known and sure
            limit_s = judge.policy["shot-match-apart"].value * judge.camera(cues[0]).frame_s
            if not known:
                told = unit_ranges(unit for cue in cues for unit in cue.units)
                unjudged.append(f"match of {told}: the smoothing of some of them is not known")
            if len(members) + bool(fixed) > 1 or (members and len(cues) > 1):
                found.append(_tie(cues, members, fixed, limit_s, known))
    return found


def _fixed(judge: Judge, group: Group, case: Case) -> tuple[tuple[float, float], bool]:
    """The delay of units without a smoothing that could be chosen, and whether it is known."""
    row = group.row
    assert row.fixture is not None
    settings = [one for one in row.fixture.fixture.settings if one.setting == "smoothing"]
    has = [one for one in settings if not one.none]
    if settings and not has:
        return _delay(judge, case, None), True
    only = has[0].choices[0] if has and len(has[0].choices) == 1 else None
    if only is not None:
        figures = _figures(judge, case, only)
        return (figures.delay_s if figures else (0.0, 0.0)), bool(figures and figures.known)
    return _delay(judge, case, None), False


def _tie(
    cues: Sequence[Cue],
    members: dict[int, Spans],
    fixed: Sequence[tuple[float, float]],
    limit_s: float,
    known: bool,
) -> Tie:
    places = tuple(sorted(members))
    spans = [members[place] for place in places]
    if fixed and spans:
        # Units that cannot be chosen stand on the first axis: they bound every choice of it.
        low, high = min(one[0] for one in fixed), max(one[1] for one in fixed)
        first = spans[0]
        spans[0] = np.stack([np.minimum(first[:, 0], low), np.maximum(first[:, 1], high)], axis=1)
    cue = cues[0]
    units = tuple(dict.fromkeys(unit for one in cues for unit in one.units))
    return Tie(cue, units, places, tuple(spans), limit_s, known)


def _unjudged(groups: Sequence[Group], asked: dict[int, list[Asked]]) -> list[str]:
    found: dict[str, list[str]] = {}
    for group in groups:
        for one in asked[group.key]:
            if one.case.fade is None:
                found.setdefault(f"cue {one.cue.name!r}: {one.case.why}", []).extend(one.units)
    return [f"{why} (unit {unit_ranges(units)})" for why, units in found.items()]
