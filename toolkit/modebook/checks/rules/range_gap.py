"""range-gap: values of a parameter that none of its ranges covers."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._ranges import uncovered
from modebook.checks.rules._values import Intervals, count, listed, told
from modebook.documents.bits import full_scale
from modebook.documents.modes import Parameter


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The parameters of a mode with values that none of their ranges covers."""
    if not mode.survey.ranges_to_judge:
        return ()
    found: list[Fault] = []
    for index in mode.survey.ranges_to_judge:
        parameter, pointer = mode.at(index)
        gaps = uncovered(parameter)
        if gaps:
            found.append(_fault(parameter, pointer, gaps))
    return found


def _fault(parameter: Parameter, pointer: str, gaps: Intervals) -> Fault:
    number, top = count(gaps), full_scale(parameter)
    said = (
        f"value {told(gaps)} of {parameter.name} is in none of its ranges"
        if number == 1
        else f"values {told(gaps)} of {parameter.name} are in none of its ranges"
    )
    help_ = "read them in the source again; a stretch without a function is a range too, with does: nothing"
    if len(parameter.slots) > 1 and max(piece.to for piece in parameter.ranges) <= 255:
        shift = 256 ** (len(parameter.slots) - 1)
        help_ = (
            f"ranges count in the full resolution, 0 to {top}: if these are printed for the coarse byte "
            f"alone, value n there is {shift} n to {shift} n + {shift - 1} here"
        )
    return Fault(
        f"{pointer}/ranges", said, {"gaps": listed(gaps), "values": number, "full_scale": top}, help_
    )


RULE: Rule[FixtureReading] = Rule(
    name="range-gap",
    severity="error",
    summary="Values of a parameter are in none of its ranges.",
    checks=(
        "The values from 0 to full scale of every parameter that has ranges and a slot of its own, in "
        "whatever order the ranges stand. A range covers its values whatever it needs first."
    ),
    why=(
        "Nobody can tell what these values do, and a fade over them passes through them. Mostly a line of "
        "the chart is missing, or a number has a slip."
    ),
    bad=Example(
        "Values 10 to 14 are missing.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "shutter",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 9, "meaning": "Closed", "does": "closed"},
                                {"from": 15, "to": 255, "meaning": "Open", "does": "open"},
                            ],
                        }
                    ]
                }
            ]
        },
    ),
    good=Example(
        "The stretch without a function is a range as well.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "shutter",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 9, "meaning": "Closed", "does": "closed"},
                                {"from": 10, "to": 14, "meaning": "No function", "does": "nothing"},
                                {"from": 15, "to": 255, "meaning": "Open", "does": "open"},
                            ],
                        }
                    ]
                }
            ]
        },
    ),
    references=("common practice, no source",),
    check=in_every_mode(faults_in_mode, about=["ranges_to_judge"]),
)
