"""Cues on units whose smoothing cannot be chosen (none, one choice, or unknown), judged all the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.documents.settings import Choice, Setting
from modebook.documents.shots import Setup
from modebook.documents.ways import is_smoothing
from modebook.response.fade import Fade
from modebook.shots.axes import Axis, Group
from modebook.shots.candidates import Asked, acting, asked_of
from modebook.shots.judging import Judge
from modebook.shots.patched import Patched
from modebook.shots.plan import Unchosen
from modebook.shots.verdicts import verdict

_UNKNOWN = Choice(key="unknown")
JUDGED = ("smooth", "unseen", "snap", "pixels")


def unchosen_of(
    judge: Judge, patched: Patched, groups: Sequence[Group], axes: Sequence[Axis], setup: Setup
) -> list[Unchosen]:
    """What cues come to on units without a choice of smoothing; over the usual lengths if it is unknown."""
    found: list[Unchosen] = []
    for group, asked in _bare(judge, patched, groups, axes, setup):
        has, known = _smoothing(group)
        figures = judge.figures(asked.case, has, asked.cue.intent in ("smooth", "unseen"))
        one = verdict(judge.policy, asked.cue, asked.case, figures, judge.camera(asked.cue).frame_s)
        assert group.row.fixture is not None
        assert group.row.mode is not None
        fixture = group.row.fixture.fixture
        name = f"{fixture.maker} {fixture.model}"
        found.append(Unchosen(group.name, asked.units, name, group.row.mode.mode.name, one, known))
    return found


def unchosen_questions(
    judge: Judge, patched: Patched, groups: Sequence[Group], axes: Sequence[Axis], setup: Setup
) -> list[Fade]:
    """What unchosen_of would ask the engine about a setup."""
    return [
        question
        for group, asked in _bare(judge, patched, groups, axes, setup)
        for question in judge.questions(
            asked.case, _smoothing(group)[0], asked.cue.intent in ("smooth", "unseen")
        )
    ]


def _bare(
    judge: Judge, patched: Patched, groups: Sequence[Group], axes: Sequence[Axis], setup: Setup
) -> Iterator[tuple[Group, Asked]]:
    for group in groups:
        mine = [one for one in axes if one.group is group and one.smooths]
        for asked in asked_of(judge, patched, group, setup):
            if asked.case.fade is None or asked.cue.intent not in JUDGED:
                continue
            if not any(acting(mine, asked, one, patched) for one in mine):
                yield group, asked


def _smoothing(group: Group) -> tuple[Choice | None, bool]:
    """The choice that units have where there is but one (None: no smoothing), and whether that is known."""
    assert group.row.fixture is not None
    settings = [one for one in group.row.fixture.fixture.settings if is_smoothing(one)]
    has = [one for one in settings if not one.none]
    if settings and not has:
        return None, True
    if len(has) == 1 and len(has[0].choices) == 1:
        only = has[0].choices[0]
        return only, only.length is not None or only.measured is not None
    now = _curve_now(group, has)
    return (_UNKNOWN, False) if now is None else (now if now.length or now.measured else None, True)


def _curve_now(group: Group, has: Sequence[Setting]) -> Choice | None:
    """The choice in effect where the one thing that smooths is a curve, which a plan leaves as it is."""
    if len(has) != 1 or has[0].setting == "smoothing":
        return None
    known = (group.row.known.settings if group.row.known else {}).get(has[0].key)
    return next((one for one in has[0].choices if one.key == known), has[0].factory)
