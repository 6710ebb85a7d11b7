"""hazard-on-dmx: flame, hoist, motor or pyrotechnics on DMX512, which is not for them."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._text import slots_told
from modebook.documents.modes import Parameter
from modebook.words.inherent import CATEGORY_HAZARDS, NOT_FOR_DMX, PARAMETER_HAZARDS
from modebook.words.parameters import PARAMETERS
from modebook.words.ranges import HAZARDS, Hazard

_HELP = (
    "run it by the means that local codes require, in the hands of qualified people; if DMX512 only asks "
    "and a safe system of its own decides, accept this finding with that reason"
)


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The hazards of a document that E1.11 keeps off DMX512."""
    found: list[Fault] = []
    category = reading.fixture.category
    hazard = CATEGORY_HAZARDS.get(category)
    if hazard in NOT_FOR_DMX:
        found.append(_fault("/category", f"the product is of the category {category}", hazard))
    for mode in reading.modes:
        if mode.survey.hazardous:
            found += faults_in_mode(reading, mode)
    return found


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The hazards of one mode, a parameter's before its ranges'."""
    found: list[Fault] = []
    for index in mode.survey.hazardous:
        parameter, pointer = mode.at(index)
        hazard = PARAMETER_HAZARDS.get(parameter.parameter)
        if hazard in NOT_FOR_DMX:
            found.append(_fault(pointer, _where(parameter), hazard))
            continue
        for at, piece in enumerate(parameter.ranges):
            hazard = piece.hazard if piece.hazard in NOT_FOR_DMX else None
            hazard = hazard or PARAMETER_HAZARDS.get(piece.parameter or "")
            if hazard in NOT_FOR_DMX:
                said = f"{piece.meaning!r} ({piece.from_}-{piece.to}) of {parameter.name}"
                found.append(_fault(f"{pointer}/ranges/{at}", said, hazard))
    return found


def _where(parameter: Parameter) -> str:
    name = PARAMETERS[parameter.parameter].name.lower()
    called = name if parameter.label is None else f"{name} ({parameter.label})"
    return f"{called} is on {slots_told(parameter.slots)}" if parameter.slots else called


def _fault(pointer: str, said: str, hazard: Hazard | None) -> Fault:
    assert hazard is not None  # callers ask NOT_FOR_DMX first
    return Fault(pointer, f"{said}: {HAZARDS[hazard]}", {"hazard": hazard}, _HELP)


RULE: Rule[FixtureReading] = Rule(
    name="hazard-on-dmx",
    severity="error",
    summary="Flame, hoist, motor or pyrotechnics hang on DMX512, which is not for them.",
    checks=(
        "The product's category, the parameters (flame, pyrotechnics, hoist and motor positions and "
        "speeds) and the ranges with such a hazard. A motor of no stated purpose counts as one that "
        "carries a load."
    ),
    why=(
        "DMX512 has no checksum and no acknowledgment: a fault on the line is obeyed like a cue, and "
        "people can be burned or crushed. E1.11 says that it is not for such uses. Local codes and "
        "qualified people decide how these effects are run."
    ),
    bad=Example(
        "A flame effect with its level on a slot.",
        {"modes": [{"parameters": [{"parameter": "flame", "slots": [1]}]}]},
    ),
    good=Example(
        "A fan.",
        {"modes": [{"parameters": [{"parameter": "fan", "slots": [1]}]}]},
    ),
    references=("ANSI E1.11: DMX512 is not intended for hazardous applications",),
    check=check,
)
