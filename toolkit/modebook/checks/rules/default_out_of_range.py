"""default-out-of-range: a default beyond full scale, or in none of the parameter's ranges."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._ranges import covered
from modebook.checks.rules._values import shared
from modebook.documents.bits import bits, full_scale
from modebook.documents.modes import Parameter


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The defaults of a mode that cannot be."""
    if not mode.survey.defaults_to_judge:
        return ()
    found: list[Fault] = []
    for index in mode.survey.defaults_to_judge:
        parameter, pointer = mode.at(index)
        if not parameter.slots:
            continue
        if parameter.default is not None:
            found += _default(parameter, pointer, parameter.default)
        elif parameter.coarse_default is not None:
            found += _coarse(parameter, pointer, parameter.coarse_default)
    return found


def _default(parameter: Parameter, pointer: str, default: int) -> list[Fault]:
    top = full_scale(parameter)
    if default > top:
        return [
            Fault(
                f"{pointer}/default",
                f"the default {default} of {parameter.name} is beyond its {bits(parameter)} bits",
                {"default": default, "full_scale": top},
                f"give 0 to {top}",
            )
        ]
    if parameter.ranges and not shared(covered(parameter), ((default, default),)):
        return [
            Fault(
                f"{pointer}/default",
                f"the default {default} of {parameter.name} is in none of its ranges",
                {"default": default, "full_scale": top},
                f"defaults and ranges count in the full resolution, 0 to {top}: correct the one or the "
                "others",
            )
        ]
    return []


def _coarse(parameter: Parameter, pointer: str, coarse: int) -> list[Fault]:
    size = 256 ** (len(parameter.slots) - 1)
    possible = ((coarse * size, coarse * size + size - 1),)
    if not parameter.ranges or shared(covered(parameter), possible):
        return []
    return [
        Fault(
            f"{pointer}/coarse_default",
            f"the coarse default {coarse} of {parameter.name} is in none of its ranges, whatever the fine "
            "byte",
            {"coarse_default": coarse, "full_scale": full_scale(parameter)},
            "correct the default or the ranges",
        )
    ]


RULE: Rule[FixtureReading] = Rule(
    name="default-out-of-range",
    severity="error",
    summary="A default is beyond full scale, or in none of the parameter's ranges.",
    checks=(
        "The default of every parameter with a slot of its own against its full scale (255 for one slot, "
        "65535 for two), and against its ranges where it has some. Of a default printed for the coarse "
        "byte alone, that some value of the fine byte lies in a range."
    ),
    why=(
        "A desk sends the default when nothing else is asked for. One that cannot be is cut off or wraps "
        "around, and the fixture does something else."
    ),
    bad=Example(
        "32768 is the middle of two bytes, not of one.",
        {"modes": [{"parameters": [{"parameter": "red", "slots": [1], "default": 32768}]}]},
    ),
    good=Example(
        "The middle of two bytes.",
        {"modes": [{"parameters": [{"parameter": "red", "slots": [1, 2], "default": 32768}]}]},
    ),
    references=("ANSI E1.11: a slot holds 0 to 255",),
    check=in_every_mode(faults_in_mode, about=["defaults_to_judge"]),
)
