"""What no choice gives a setup, and cures that were computed: slower, another mode, apart, a change."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from modebook.documents.bits import bits
from modebook.documents.layout import all_parameters
from modebook.documents.responding import smoothing_of
from modebook.documents.shots import Cue, Setup, Shot
from modebook.response.fade import Fade
from modebook.rig.grouping import unit_ranges
from modebook.rig.reading import PatchedRow
from modebook.shots.judging import NEAR, Judge
from modebook.shots.patched import Patched
from modebook.shots.plan import Apart, Conflict, Taken, Unchosen
from modebook.shots.routes import routes
from modebook.shots.verdicts import Verdict

SLOWEST = 8.0
"""Times as long as a cue, beyond which a slower one is another cue."""
SLOWEST_S = 60.0
"""Seconds that a cue may be slowed to, and twice its own length at any rate."""
TRIALS = 6
CLOSE = 0.03
"""How near the least length is looked for, as a share."""


def conflicts_of(
    judge: Judge, patched: Patched, setup: Setup, taken: Sequence[Taken], loose: Sequence[Apart]
) -> list[Conflict]:
    """The conflicts of one setup: cues that the choice taken does not satisfy, matches that do not hold."""
    found: list[Conflict] = []
    for one in taken:
        failed = [verdict for verdict in one.taken.verdicts if not verdict.ok]
        if not failed:
            continue
        told = [_cures(judge, patched, setup, one, verdict) for verdict in failed]
        cures = dict.fromkeys(cure for some in told for cure in some)
        others = [verdict for verdict in one.taken.verdicts if verdict.ok and verdict.cue.intent != "any"]
        said = "; ".join(f"cue {verdict.cue.name!r} {verdict.why}" for verdict in failed)
        against, at_odds = _against(one, failed)
        why = f"{one.setting} at {one.taken.label}: {said}" + (f"; {against}" if against and others else "")
        found.append(Conflict(setup.name, one.units, why, tuple(cures), at_odds))
    for tie in loose:
        sure = "" if tie.known else " (the smoothing of some is not known)"
        why = (
            f"cue {tie.cue!r}: units that must move together run {tie.apart_ms:.0f} ms apart under the "
            f"choices taken; {tie.limit_ms:.1f} ms is the most{sure}"
        )
        found.append(Conflict(setup.name, tie.units, why, _tie_cures(tie), True))
    return found


def unchosen_conflicts(
    judge: Judge, patched: Patched, setup: Setup, bare: Sequence[Unchosen]
) -> list[Conflict]:
    """Cues that fail on units without a choice of smoothing; those of unknown smoothing are left aside."""
    found: list[Conflict] = []
    for one in bare:
        cue = one.verdict.cue
        if one.verdict.ok or not one.known:
            continue
        cures: list[str] = []
        row = patched[one.units[0]]
        parameter = patched.parameter(row.unit.number, cue.parameter)
        limit = _limit(judge, cue)
        if parameter is not None and limit is not None:
            fade = judge.case(row, parameter, cue).fade
            if fade is not None:
                cures += _slower_told(judge, cue, fade, limit)
                cures += _other_modes(judge, row, cue, fade, limit)
        why = f"cue {cue.name!r} {one.verdict.why}; these units offer no choice of smoothing"
        found.append(Conflict(setup.name, one.units, why, tuple(cures), False))
    return found


def _against(one: Taken, failed: Sequence[Verdict]) -> tuple[str, bool]:
    """Which other cue keeps a choice from being taken that would satisfy the failed ones, and if any does."""
    wanted = {verdict.cue.row for verdict in failed}
    for other in one.candidates:
        if all(verdict.ok for verdict in other.verdicts if verdict.cue.row in wanted):
            broken = next((verdict for verdict in other.verdicts if not verdict.ok), None)
            if broken is not None:
                return f"{other.label} would do for that, but then cue {broken.cue.name!r} {broken.why}", True
    return "no choice that can be had would do", False


def _cures(judge: Judge, patched: Patched, setup: Setup, one: Taken, verdict: Verdict) -> Iterator[str]:
    cue, row = verdict.cue, patched[one.units[0]]
    fade = _fade(judge, patched, row, cue, one.setting, one.choice)
    limit = _limit(judge, cue)
    if fade is not None and limit is not None:
        yield from _slower_told(judge, cue, fade, limit)
        yield from _other_modes(judge, row, cue, fade, limit)
    yield from _apart(one, cue, verdict)
    yield from _between(judge, patched, setup, one, cue)


def _limit(judge: Judge, cue: Cue) -> float | None:
    if cue.intent not in ("smooth", "unseen"):
        return None
    return judge.policy["shot-stepping-unseen" if cue.intent == "unseen" else "shot-stepping-smooth"].value


def _fade(
    judge: Judge, patched: Patched, row: PatchedRow, cue: Cue, setting: str, choice: str
) -> Fade | None:
    parameter = patched.parameter(row.unit.number, cue.parameter)
    assert row.fixture is not None
    if parameter is None:
        return None
    case = judge.case(row, parameter, cue)
    if case.fade is None or not case.judges_stepping:
        return None
    for one in row.fixture.fixture.settings:
        if one.key == setting:
            told = smoothing_of(next(each for each in one.choices if each.key == choice))
            return replace(case.fade, smoothing=told.smoothing) if told.known else None
    return None


def _slower_told(judge: Judge, cue: Cue, fade: Fade, limit: float) -> Iterator[str]:
    slower = _slower(judge, fade, limit)
    if slower is not None:
        yield f"cue {cue.name!r} {slower - cue.seconds_s:.1f} s slower, in {slower:.1f} s"


def _slower(judge: Judge, fade: Fade, limit: float) -> float | None:
    """A slower cue that holds the limit, near the least one; None where none within SLOWEST was found.

    The stepping shrinks about as the cue grows, so each trial is where the two before it point to.
    """

    def excess(seconds_s: float) -> float:
        """How far above the limit the cue steps, as the logarithm of a share; at most 0 where it holds."""
        stepping = judge.engine.ask(replace(fade, seconds_s=seconds_s)).worst_stepping_jnd
        return math.log(max(stepping, 1e-9) / (limit * NEAR))

    most_s = min(SLOWEST * fade.seconds_s, max(SLOWEST_S, 2.0 * fade.seconds_s))
    now = excess(fade.seconds_s)
    if not 0.0 < now < math.log(2.0 * most_s / fade.seconds_s):
        return None  # it holds already, or none within reach would
    fails, holds = (math.log(fade.seconds_s), now), (math.inf, 0.0)
    tried = fails[0] + now
    for _ in range(TRIALS):
        at = min(tried, math.log(most_s))
        found = excess(math.exp(at))
        if found <= 0.0:
            holds = (at, found)
        elif at < holds[0]:
            fails = (at, found)
        if math.isinf(holds[0]):
            if at >= math.log(most_s):
                return None
            tried = at + max(1.2 * found, 0.05)
        elif holds[0] - fails[0] < CLOSE:
            break
        else:
            share = fails[1] / max(fails[1] - holds[1], 1e-9)
            tried = fails[0] + min(max(share, 0.25), 0.9) * (holds[0] - fails[0])
    return None if math.isinf(holds[0]) else math.exp(holds[0])


def _other_modes(judge: Judge, row: PatchedRow, cue: Cue, fade: Fade, limit: float) -> Iterator[str]:
    assert row.fixture is not None
    assert row.mode is not None
    for mode in row.fixture.fixture.modes:
        if mode is row.mode.mode:
            continue
        finer = [
            bits(parameter)
            for parameter, _ in all_parameters(mode)
            if cue.parameter in (parameter.parameter, parameter.key) and bits(parameter) > fade.bits
        ]
        if not finer:
            continue
        if judge.engine.ask(replace(fade, bits=max(finer))).worst_stepping_jnd <= limit * NEAR:
            yield f"mode {mode.name!r}: {max(finer)} bits in place of {fade.bits} ({mode.footprint} slots)"
            return


def _apart(one: Taken, cue: Cue, verdict: Verdict) -> Iterator[str]:
    """Where the cues at odds are on different units of the group, these need not be alike."""
    mine = {unit for unit in cue.units if unit in one.units}
    for other in one.candidates:
        fits = next((each for each in other.verdicts if each.cue is cue), None)
        if fits is None or not fits.ok or other.choice == one.choice:
            continue
        broken = [each.cue for each in other.verdicts if not each.ok]
        rest = {unit for each in broken for unit in each.units if unit in one.units}
        if mine and rest and not mine & rest:
            names = unit_ranges(sorted(mine))
            yield f"split the group: {names} at {other.label}, the others as they are"
            return
        if mine and len(one.units) > 1 and not rest:
            return
    del verdict


def _between(judge: Judge, patched: Patched, setup: Setup, one: Taken, cue: Cue) -> Iterator[str]:
    """A change within the shot, if the road to a choice that suits takes less than the time there is.

    It is made before the cue, after what came last on these units; or the cue begins under the choice that
    suits it, and the change to the one taken comes after it.
    """
    shot = next(each for each in setup.shots if any(other is cue for other in each.cues))
    before, after = _gap_before(shot, one, cue), _gap_after(shot, one, cue)
    for other in one.candidates:
        fits = next((each for each in other.verdicts if each.cue is cue), None)
        if fits is None or not fits.ok or other.choice == one.choice:
            continue
        for gap, to, first in (
            (before, other.choice, ""),
            (after, one.choice, f"{other.label} first, then "),
        ):
            takes_s = _takes_s(judge, patched, one, to) if gap is not None else None
            if gap is None or takes_s is None or takes_s >= gap[0]:
                continue
            label = next(each.label for each in one.candidates if each.choice == to)
            yield (
                f"{first}a change to {label} between {gap[1]!r} and {gap[2]!r}: it takes {takes_s:.0f} s of "
                f"the {gap[0]:.0f} s between them (off camera if it can be, and rehearsed)"
            )
            return


def _takes_s(judge: Judge, patched: Patched, one: Taken, choice: str) -> float | None:
    """How long a change takes on all units, by slot (at once) or RDM (one by one); None by hand only."""
    by_slot, by_rdm = 0.0, 0.0
    for unit in one.units:
        some = routes(judge.reading, patched.rows[unit.casefold()])[one.setting][choice]
        slot = min((road.seconds for road in some if road.by == "slot"), default=math.inf)
        rdm = min((road.seconds for road in some if road.by == "rdm"), default=math.inf)
        by_slot, by_rdm = max(by_slot, slot), by_rdm + rdm
    quickest = min(by_slot, by_rdm)
    return quickest if math.isfinite(quickest) else None


Gap = tuple[float, str, str]
"""Seconds in which none of a group's units moves, and the cues before and after."""


def _gap_before(shot: Shot, one: Taken, cue: Cue) -> Gap | None:
    ended = [other for other in _others(shot, one, cue) if other.end_s <= cue.start_s + 1e-9]
    if not ended:
        return None
    last = max(ended, key=lambda other: other.end_s)
    return cue.start_s - last.end_s, last.name, cue.name


def _gap_after(shot: Shot, one: Taken, cue: Cue) -> Gap | None:
    """Only where nothing came before the cue: the shot can begin under the choice that suits it."""
    others = _others(shot, one, cue)
    later = [other for other in others if other.start_s >= cue.end_s - 1e-9]
    if not later or len(later) < len(others):
        return None
    following = min(later, key=lambda other: other.start_s)
    return following.start_s - cue.end_s, cue.name, following.name


def _others(shot: Shot, one: Taken, cue: Cue) -> list[Cue]:
    mine = set(one.units)
    return [other for other in shot.cues if other is not cue and mine & set(other.units)]


def _tie_cures(tie: Apart) -> tuple[str, ...]:
    return (
        f"give the quicker ones their cue {tie.apart_ms:.0f} ms later at the desk",
        "set all of them to off, and let the desk's own fade carry the look",
    )
