"""The order of cues: what goes backwards, overlaps on one parameter, or is of a shot that stands twice."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.documents.shots import Cue, ShotFault

Place = tuple[str, str, str, str]
"""Day, scene, setup, shot."""
Placed = tuple[Place, Cue]
TOUCH_S = 1e-6


def ordered(found: Sequence[Placed]) -> tuple[list[Placed], list[ShotFault]]:
    """The cues with what is wrong in their order; those that cannot stand as they are are left out."""
    faults: list[ShotFault] = []
    kept = _once(found, faults)
    kept = _forward(kept, faults)
    return _apart(kept, faults), faults


def _once(found: Sequence[Placed], faults: list[ShotFault]) -> list[Placed]:
    """Without shots that come back after another one, or stand in two setups: it is told where first."""
    first_row: dict[tuple[str, str, str], tuple[int, str]] = {}
    closed: set[Place] = set()
    kept: list[Placed] = []
    told: set[Place] = set()
    last: Place | None = None
    for place, cue in found:
        if last is not None and place != last:
            closed.add(last)
        day, scene, setup, shot = place
        key = (day, scene, shot)
        before = first_row.get(key)
        named = shot not in ("all cues",)
        if place in closed or (named and before is not None and before[1] != setup):
            if place not in told:
                row = before[0] if before else cue.row
                faults.append(
                    ShotFault(
                        cue.row,
                        cue.name,
                        "shot",
                        shot,
                        f"shot {shot!r} stands twice (first in row {row}): give one of them another name; "
                        "these cues are left out",
                    )
                )
                told.add(place)
            last = place if place in closed else last
            continue
        first_row.setdefault(key, (cue.row, setup))
        kept.append((place, cue))
        last = place
    return kept


def _forward(found: Sequence[Placed], faults: list[ShotFault]) -> list[Placed]:
    """Cues of a shot whose times go backwards are told, and taken in the order of their times."""
    latest: dict[Place, float] = {}
    for place, cue in found:
        if cue.start_s < latest.get(place, 0.0) - TOUCH_S:
            why = (
                f"starts at {cue.start_s:g} s, before the cue above it ({latest[place]:g} s): "
                "taken in the order of the times"
            )
            faults.append(ShotFault(cue.row, cue.name, "time", f"{cue.start_s:g}", why))
        latest[place] = max(latest.get(place, 0.0), cue.start_s)
    order: dict[Place, list[Placed]] = {}
    for placed in found:
        order.setdefault(placed[0], []).append(placed)
    return [placed for some in order.values() for placed in sorted(some, key=lambda one: one[1].start_s)]


def _apart(found: Sequence[Placed], faults: list[ShotFault]) -> list[Placed]:
    """Two cues that move one parameter of one unit at once: the later one is told and left out."""
    busy: dict[tuple[Place, str, str], tuple[float, Cue]] = {}
    kept: list[Placed] = []
    for place, cue in found:
        clash = next(
            (
                (unit, before)
                for unit in cue.units
                for until, before in [busy.get((place, unit, cue.parameter), (0.0, cue))]
                if before is not cue and cue.start_s < until - TOUCH_S
            ),
            None,
        )
        if clash is not None:
            unit, before = clash
            why = (
                f"unit {unit} is still moving its {cue.parameter} in cue {before.name} (row {before.row}, "
                f"until {before.end_s:g} s): start it later, or shorten that one; this cue is left out"
            )
            faults.append(ShotFault(cue.row, cue.name, "time", f"{cue.start_s:g}", why))
            continue
        for unit in cue.units:
            until = max(cue.end_s, busy.get((place, unit, cue.parameter), (0.0, cue))[0])
            busy[place, unit, cue.parameter] = (until, cue)
        kept.append((place, cue))
    return kept
