"""condition-hole: parameters share bytes by their conditions, and for some values none of them holds."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._conditions import Box, TooManyError, Values, Variable, existence, holes
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import slots_told, together
from modebook.checks.rules._values import listed, told
from modebook.documents.bits import full_scale
from modebook.documents.layout import BlockLayout, Placed

_MOST_TOLD = 6
"""Holes that the message spells out; the figure has them all."""


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The groups of parameters of a mode that share bytes and leave them without a meaning at times."""
    if len(mode.survey.conditional) < 2:
        return ()
    found: list[Fault] = []
    told_: set[tuple[str, ...]] = set()
    for block in mode.blocks:
        for users, slots in _sharing(block):
            pointers = tuple(user.pointer for user in users)
            if pointers not in told_:  # cells repeat a group; it is told once
                told_.add(pointers)
                found += _faults(reading, mode, users, slots)
    return found


def _sharing(block: BlockLayout) -> list[tuple[list[Placed], list[int]]]:
    """The groups of two or more parameters, all of them conditional, with the bytes that they share."""
    at: dict[int, list[Placed]] = {}
    for placed in block.placed:
        for slot in placed.slots:
            at.setdefault(slot, []).append(placed)
    groups: dict[tuple[int, ...], tuple[list[Placed], list[int]]] = {}
    for slot, users in sorted(at.items()):
        if all(user.parameter.when for user in users):
            groups.setdefault(tuple(map(id, users)), (users, []))[1].append(slot)
    return list(groups.values())


def _faults(
    reading: FixtureReading, mode: ModeReading, users: list[Placed], slots: list[int]
) -> Sequence[Fault]:
    boxes = [existence(user.parameter, mode.by_name) for user in users]
    domain = _domain(reading, mode, boxes)
    if domain is None:
        return ()
    where = f"{users[0].pointer}/when"
    names = together([user.parameter.name for user in users])
    try:
        left = holes(domain, boxes)
    except TooManyError as error:
        said = f"the conditions of {names} fall into {error}, too many to say whether they leave a hole"
        return [Fault(where, said, {"slots": slots}, "write fewer, wider conditions", "info")]
    if not left:
        return ()
    parts = [_hole_told(hole, domain) for hole in left]
    verb = "has" if len(slots) == 1 else "have"
    said = f"{slots_told(slots)} {verb} no meaning while {' or while '.join(parts[:_MOST_TOLD])}"
    if len(parts) > _MOST_TOLD:
        said += f", and in {len(parts) - _MOST_TOLD} more cases"
    figure: dict[str, object] = {
        "slots": slots,
        "parameters": [user.pointer for user in users],
        "holes": [
            {
                _key(variable): _ready(values)
                for variable, values in hole.items()
                if values != domain[variable]
            }
            for hole in left
        ],
    }
    help_ = (
        f"extend the conditions of {names}, or record what the source says of these values "
        "(`reserved`, where that is nothing)"
    )
    return [Fault(where, said, figure, help_)]


def _domain(reading: FixtureReading, mode: ModeReading, boxes: list[Box]) -> Box | None:
    """All that the deciding parameters and settings can be; None where one of them is not known."""
    domain: Box = {}
    for variable in {variable: None for box in boxes for variable in box}:
        kind, name = variable
        if kind == "parameter":
            named = mode.by_name.get(name, [])
            if not named or not named[0].slots:
                return None  # reference-missing tells of the first; the second decides nothing
            domain[variable] = ((0, full_scale(named[0])),)
        elif kind == "setting":
            if name not in reading.choices:
                return None
            domain[variable] = reading.choices[name]
        else:
            # States in words are taken to be all that there are.
            domain[variable] = frozenset().union(*(_words(box, variable) for box in boxes))
    return domain


def _words(box: Box, variable: Variable) -> frozenset[str]:
    values = box.get(variable, frozenset())
    return values if isinstance(values, frozenset) else frozenset()


def _key(variable: Variable) -> str:
    return variable[1] or variable[0]


def _ready(values: Values) -> object:
    return sorted(values) if isinstance(values, frozenset) else listed(values)


def _hole_told(hole: Box, domain: Box) -> str:
    parts = []
    for variable, values in hole.items():
        if values != domain[variable]:
            text = " or ".join(sorted(values)) if isinstance(values, frozenset) else told(values)
            parts.append(f"{variable[1] or 'the state'} is {text}")
    return " and ".join(parts) or "anything holds"


def _example(last: int) -> dict[str, object]:
    return {
        "modes": [
            {
                "parameters": [
                    {
                        "parameter": "color-mode",
                        "slots": [1],
                        "ranges": [
                            {"from": 0, "to": 99, "meaning": "Emitters"},
                            {"from": 100, "to": 255, "meaning": "Filters"},
                        ],
                    },
                    {
                        "parameter": "red",
                        "slots": [2],
                        "when": [{"parameter": "color-mode", "from": 0, "to": last}],
                    },
                    {
                        "parameter": "cyan",
                        "slots": [2],
                        "when": [{"parameter": "color-mode", "from": 100, "to": 255}],
                    },
                ]
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="condition-hole",
    severity="error",
    summary="Parameters share bytes by their conditions, and for some values none of them holds.",
    checks=(
        "Bytes that two or more parameters share, all of them with `when`: the values of the deciding "
        "parameters (0 to full scale), the choices of the deciding settings, and their combinations, for "
        "which none of the conditions holds. States in words are taken to be all that there are. A byte "
        "with a single conditional parameter is left alone: without its condition it simply does nothing."
    ),
    why=(
        "The chart says what a slot does in each of its meanings. In the hole nobody knows, and a desk "
        "guesses."
    ),
    bad=Example("With the color mode at 90 to 99 slot 2 is neither red nor cyan.", _example(89)),
    good=Example("Red ends where cyan begins.", _example(99)),
    references=("common practice, no source",),
    check=in_every_mode(faults_in_mode, about=["conditional"]),
)
