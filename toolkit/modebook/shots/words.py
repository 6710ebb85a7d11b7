"""Reasons in words: why a choice was taken, what the others would have done, what a setup warns of."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.documents.layout import all_parameters
from modebook.documents.modes import Mode
from modebook.documents.policy import Policy
from modebook.documents.shots import Setup
from modebook.rig.grouping import unit_ranges
from modebook.shots.patched import Patched
from modebook.shots.plan import Candidate, Unchosen
from modebook.shots.weighing import ranked, target_packets
from modebook.words.ranges import HAZARDS

_FLASHING = ("strobe", "strobe-rate", "shutter")


def why_taken(candidates: Sequence[Candidate], taken: Candidate, policy: Policy, tied: bool = False) -> str:
    """Why a choice was taken, with its figures, and what another would do. tied: units move with them."""
    if taken.difference_percent is not None:
        least = min(one.difference_percent for one in candidates if one.difference_percent is not None)
        told = f"at most {taken.difference_percent:.2g} % between one frame and the next"
        if taken.difference_percent <= least * 1.01 + 1e-9:
            return f"{told}; no other choice has less" if len(candidates) > 1 else told
        return f"{told}; {least:.2g} % could be had, at a greater cost of changing"
    if not taken.verdicts:
        return "no cue asks for anything"
    failed = [one for one in taken.verdicts if not one.ok]
    if failed:
        told = "; ".join(f"cue {one.cue.name!r} {one.why}" for one in failed[:3])
        return f"the best there is, and not enough: {told}"
    told = "; ".join(dict.fromkeys(one.why for one in taken.verdicts if one.judged)) or "nothing to be judged"
    first = candidates[ranked(candidates, policy)[0]]
    if first is not taken and tied:
        return f"{told}; {first.label} would be preferred, but for the units that must move with it"
    if first is not taken:
        return f"{told}; {first.label} would be preferred, and changing costs more"
    return f"{told}; {_preferred(candidates, taken, policy)}"


def _preferred(candidates: Sequence[Candidate], taken: Candidate, policy: Policy) -> str:
    failing = [one for one in candidates if one.violations > taken.violations]
    target = target_packets(candidates, policy)
    wish = {
        None: "the longest that nothing forbids",
        0.0: "the shortest is best for snaps and pixels",
    }.get(target, f"nearest to the {target:g} packets that the house prefers" if target else "")
    if not failing:
        return wish
    one = failing[0]
    why = next(verdict for verdict in one.verdicts if not verdict.ok)
    return f"{wish}; {one.label} fails: cue {why.cue.name!r} {why.why}"


def turned_down(candidate: Candidate) -> str:
    """What a choice would have done, in a line."""
    if candidate.difference_percent is not None:
        return f"{candidate.difference_percent:.2g} % between one frame and the next"
    told = [f"cue {one.cue.name!r} {one.why}" for one in candidate.verdicts if not one.ok]
    return "; ".join(told) if told else "gives every cue what it asks for"


def not_known(bare: Sequence[Unchosen]) -> list[str]:
    """What is not known of units that offer no choice, and what their cues come to over the usual lengths."""
    return [
        f"cue {one.verdict.cue.name!r} on {unit_ranges(one.units)}: how much they smooth is not known; "
        f"over the usual lengths it {one.verdict.why}"
        for one in bare
        if not one.known
    ]


def setup_warnings(setup: Setup, patched: Patched) -> tuple[str, ...]:
    """The cautions that belong to a setup: strobes, movement, and hazards of the fixtures' kinds."""
    found: dict[str, None] = {}
    hazards_of: dict[int, tuple[str, ...]] = {}
    for cue in setup.cues:
        rows = [patched[unit] for unit in cue.units if unit in patched]
        named = any(_strobes(f"{row.unit.purpose} {row.unit.group}") for row in rows)
        flashes = cue.parameter in _FLASHING or named
        if flashes:
            found[
                "Flashing light: warn the floor first, it can harm people with photosensitive epilepsy."
            ] = None
        if cue.parameter in ("pan", "tilt", "track-position"):
            found["Fixtures move: keep people, hands and cables clear of their travel."] = None
        for row in rows:
            assert row.mode is not None
            hazards = hazards_of.get(id(row.mode))
            if hazards is None:
                hazards = hazards_of[id(row.mode)] = _hazards(row.mode.mode)
            found.update(dict.fromkeys(hazards))
    return tuple(found)


def _strobes(text: str) -> bool:
    return any(word in text.casefold() for word in ("lightning", "strobe"))


def _hazards(mode: Mode) -> tuple[str, ...]:
    """The cautions for the hazards that any range of a mode carries, of those that outlast a change."""
    carried = {piece.hazard for parameter, _ in all_parameters(mode) for piece in parameter.ranges}
    return tuple(HAZARDS[hazard] for hazard in ("laser", "uv", "flame", "hoist") if hazard in carried)
