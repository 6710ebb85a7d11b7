"""hazard-neighbor: where two units overlap, one's dangerous slot lies on a slot of the other that moves."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.modes import Parameter
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._text import about, address_figure, fixture_told, unit_told
from modebook.words.inherent import PARAMETER_HAZARDS
from modebook.words.parameters import PARAMETERS

_KEPT_STILL = frozenset({"reserved", "other", "reset", "lamp-control", "power", "arming", "display"})
"""Slots that no cue moves: two of these on each other lie still as long as nobody touches either."""

By = dict[int, list[Parameter]]
"""The parameters at each slot of a block."""


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each unit that another one's moves can set off, at most one for each pair and direction."""
    known: dict[int, By] = {}
    for meeting in reading.meetings:
        if meeting.twins:
            continue
        for row, other in ((meeting.later, meeting.other), (meeting.other, meeting.later)):
            mine, theirs = _by_slot(row, known), _by_slot(other, known)
            met: list[tuple[int, Parameter, tuple[str, ...], Parameter]] = []
            for at in range(meeting.first, meeting.last + 1):
                for parameter in mine.get(at - row.first + 1, ()):
                    hazards = _hazards(parameter)
                    moving = next((one for one in theirs.get(at - other.first + 1, ()) if _moves(one)), None)
                    if hazards and moving is not None:
                        met.append((at, parameter, hazards, moving))
            if met:
                yield _fault(row, other, met)


def _by_slot(row: PatchedRow, known: dict[int, By]) -> By:
    if row.block is None:
        return {}
    if id(row.block) not in known:
        found: By = {}
        for placed in row.block.placed:
            for slot in placed.slots:
                found.setdefault(slot, []).append(placed.parameter)
        known[id(row.block)] = found
    return known[id(row.block)]


def _hazards(parameter: Parameter) -> tuple[str, ...]:
    """What a slot of this parameter can set off."""
    words = (parameter.parameter, *(piece.parameter for piece in parameter.ranges))
    inherent = [PARAMETER_HAZARDS[word] for word in words if word and word in PARAMETER_HAZARDS]
    return tuple(dict.fromkeys([*inherent, *(p.hazard for p in parameter.ranges if p.hazard)]))


def _moves(parameter: Parameter) -> bool:
    """Whether cues send this parameter other values: all do but controls that are left alone."""
    word = parameter.parameter
    return word not in _KEPT_STILL and (word != "control") and word in PARAMETERS


def _fault(
    row: PatchedRow, other: PatchedRow, met: list[tuple[int, Parameter, tuple[str, ...], Parameter]]
) -> Fault:
    at, parameter, _, moving = met[0]
    hazards = list(dict.fromkeys(hazard for _, _, some, _ in met for hazard in some))
    figure: dict[str, object] = {
        **about(row),
        "other_unit": other.unit.number,
        "other_row": other.unit.row,
        "hazards": hazards,
        "parameter": parameter.name,
        "other_parameter": moving.name,
        "slots": [address_figure(one[0]) for one in met],
        "cost_slots": 0,
    }
    place = address_figure(at)
    said = (
        f"its {parameter.name} ({', '.join(hazards)}) lies at {place['universe']}/{place['address']} on "
        f"{moving.name} of {unit_told(other)}, {fixture_told(other)}: what moves that one sets this one off"
    )
    help_ = (
        "before anything is sent, give one of the two another address (no more slots), and keep people clear "
        "of both units until it is done"
    )
    return Fault("address", said, figure, help_, unit=row.unit.number, row=row.unit.row)


_MOVER = {
    "model": "Mover",
    "modes": [
        {
            "name": "Basic",
            "parameters": [
                {"parameter": "dimmer", "slots": [1, 2]},
                {
                    "parameter": "control",
                    "slots": [3],
                    "ranges": [
                        {"from": 0, "to": 199, "meaning": "No function", "does": "nothing"},
                        {"from": 200, "to": 255, "meaning": "Reset", "hazard": "reset"},
                    ],
                },
            ],
        }
    ],
}

RULE = Rule(
    name="hazard-neighbor",
    severity="error",
    summary="Where two units overlap, a slot that can hurt someone is moved by the other unit's cues.",
    checks=(
        "Every slot that two units share and that are no twins: whether one of them has there a range with a "
        "hazard (reset, lamp, calibration and so on) or a flame, hoist, motor, laser, UV or track parameter, "
        "and the other a parameter that cues move, which is any but control, lamp and reserved slots. The "
        "finding stands on the unit that is set off. What a range needs before it acts (a hold, another "
        "slot) is not counted on."
    ),
    why=(
        "A dimmer of one lamp that runs through the reset range of its neighbor throws a head about, or "
        "fires a flame, in the middle of a take."
    ),
    bad=Example(
        "The dimmer of unit 2 lies on the control slot of unit 1.",
        {"fixtures": [_MOVER], "patch": "unit,fixture,mode,address\n1,Mover,Basic,1/1\n2,Mover,Basic,1/3\n"},
    ),
    good=Example(
        "Unit 2 begins after the control slot.",
        {"fixtures": [_MOVER], "patch": "unit,fixture,mode,address\n1,Mover,Basic,1/1\n2,Mover,Basic,1/4\n"},
    ),
    references=("ANSI E1.11: a slot's place in the packet is its address; not for hazardous applications",),
    check=check,
)
