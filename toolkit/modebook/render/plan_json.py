"""A plan as one JSON object: settings with figures, changes with bytes; scripts rely on the keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from modebook.shots.change import Change, PowerCut, PrepLine, Standing
from modebook.shots.day import Day
from modebook.shots.differing import Differing
from modebook.shots.plan import Candidate, Conflict, Taken
from modebook.shots.route import Byte


def plan_json(day: Day, differing: Sequence[Differing] | None = None) -> dict[str, Any]:
    """The plan and its change list; `changed`: what is otherwise than under the rig's own desk and camera."""
    plan, first = day.plan, day.first
    told: dict[str, Any] = {
        "rig": plan.rig,
        "shots": plan.path,
        "setups": [
            {
                "setup": one.setup.name,
                "day": one.setup.day,
                "scene": one.setup.scene,
                "shots": [shot.name for shot in one.setup.shots],
                "settings": [setting_json(taken) for taken in one.settings],
                "changes": [change_json(change) for change in changes.changes],
                "stands": [standing_json(stand) for stand in changes.stands],
                "check_after_the_night": [change_json(change) for change in changes.checks],
                "seconds_by_way": dict(changes.seconds_by_way),
                "warnings": list(one.warnings),
                "not_judged": list(one.unjudged),
                "faults": list(changes.faults),
            }
            for one, changes in list(zip(plan.setups, day.changes.setups, strict=True))[first:]
        ],
        "conflicts": [conflict_json(one) for one in conflicts_from(day)],
        "prep": [prep_json(one) for one in day.changes.prep],
        "total_seconds_by_way": dict(day.total_seconds_by_way),
        "faults": [
            {"row": one.row, "cue": one.cue, "column": one.column, "found": one.found, "why": one.why}
            for one in plan.faults
        ],
        "notes": list(plan.notes),
        "gap": plan.gap,
        "disagreements": list(day.disagreements),
    }
    if differing is not None:
        told["changed"] = [
            {
                "setup": one.setup,
                "units": list(one.units),
                "setting": one.setting,
                "from": one.before,
                "to": one.after,
            }
            for one in differing
        ]
    return told


def conflicts_from(day: Day) -> list[Conflict]:
    """The conflicts of the setups that are told of."""
    names = {one.setup.name for one in day.plan.setups[day.first :]}
    return [one for one in day.plan.conflicts if one.setup in names]


def setting_json(taken: Taken) -> dict[str, Any]:
    """What a group is set to, and why."""
    one = taken.taken
    return {
        "units": list(taken.units),
        "setting": taken.setting,
        "choice": taken.choice,
        **_figures(one),
        "why": taken.why,
        "group": taken.group,
        "fixture": taken.fixture,
        "mode": taken.mode,
        "turned_down": [
            {"choice": other.choice, **_figures(other), "fails": other.violations}
            for other in taken.candidates
            if other is not one
        ],
        "unreached": list(taken.unreached),
        "assumed": list(taken.assumed),
    }


def _figures(one: Candidate) -> dict[str, Any]:
    told: dict[str, Any] = {
        "length_packets": one.length_packets,
        "worst_stepping_jnd": one.worst_stepping_jnd,
        "snap_added_ms": one.snap_added_ms,
    }
    if one.difference_percent is not None:
        told["difference_percent"] = one.difference_percent
    return told


def change_json(one: Change) -> dict[str, Any]:
    """One change. What is needed is sent first; what is in doubt is tried before anyone relies on it."""
    return {
        "units": list(one.units),
        "setting": one.setting,
        "from": one.from_,
        "to": one.to,
        "by": one.by,
        "step": one.step,
        "needs": list(one.needs),
        "needs_bytes": _bytes(one.needs_bytes),
        "bytes": _bytes(one.bytes),
        "hold_s": one.hold_s,
        "then": one.then,
        "then_bytes": _bytes(one.then_bytes),
        "pid": one.pid,
        "data": one.data,
        "uids": list(one.uids),
        "path": list(one.path),
        "position": one.position,
        "reach": one.reach,
        "kept": one.kept,
        "seconds": one.seconds,
        "warnings": list(one.warnings),
        "doubts": list(one.doubts),
    }


def standing_json(one: Standing) -> dict[str, Any]:
    """What every cue of a setup must send."""
    return {
        "units": list(one.units),
        "setting": one.setting,
        "choice": one.choice,
        "bytes": _bytes(one.bytes),
        "why": one.why,
        "returns": one.returns,
    }


def prep_json(one: PrepLine) -> dict[str, Any]:
    """What like units are set to before they go out."""
    return {
        "units": list(one.units),
        "setting": one.setting,
        "from": one.from_,
        "to": one.choice,
        "by": one.by,
        "road": one.road,
        "seconds": one.seconds,
        "doubts": list(one.doubts),
    }


def conflict_json(one: Conflict) -> dict[str, Any]:
    """What no choice gives a setup."""
    return {"setup": one.setup, "units": list(one.units), "why": one.why, "cures": list(one.cures)}


def cut_json(cut: PowerCut) -> dict[str, Any]:
    """What a power cut leaves to do."""
    return {
        "setup": cut.setup,
        "again": [change_json(one) for one in cut.again],
        "check": [change_json(one) for one in cut.check],
        "stands": [standing_json(one) for one in cut.stands],
        "stored": cut.stored,
        "seconds_by_way": dict(cut.seconds_by_way),
    }


def _bytes(bytes_: Sequence[Byte]) -> list[dict[str, int]]:
    return [{"universe": one.universe, "address": one.address, "value": one.value} for one in bytes_]
