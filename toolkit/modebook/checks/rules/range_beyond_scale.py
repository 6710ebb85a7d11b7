"""range-beyond-scale: a range, condition or raw span holds values that cannot be sent."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._text import number
from modebook.documents.bits import bits, full_scale
from modebook.documents.modes import Condition, Parameter, spans_of


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The values of a mode's ranges, conditions and raw spans that cannot be sent."""
    survey = mode.survey
    if not (survey.ranges_to_judge or survey.conditioned or survey.raw):
        return ()
    found: list[Fault] = []
    for index in survey.ranges_to_judge:
        found += _ranges(*mode.at(index))
    for index in survey.conditioned:
        found += _conditions(mode, *mode.at(index))
    for index in survey.raw:
        found += _raw(*mode.at(index))
    return found


def _ranges(parameter: Parameter, pointer: str) -> Iterator[Fault]:
    if not parameter.slots:
        return
    top = full_scale(parameter)
    for index, piece in enumerate(parameter.ranges):
        if piece.to > top:
            yield Fault(
                f"{pointer}/ranges/{index}",
                f"{piece.meaning!r} reaches to {piece.to}, beyond the {bits(parameter)} bits of "
                f"{parameter.name}",
                {"from": piece.from_, "to": piece.to, "full_scale": top},
                f"ranges count in the full resolution of their parameter, 0 to {top}",
            )


def _conditions(mode: ModeReading, parameter: Parameter, pointer: str) -> Iterator[Fault]:
    told: list[tuple[str, Condition]] = [
        (f"{pointer}/when/{index}", condition) for index, condition in enumerate(parameter.when or ())
    ]
    for at, piece in enumerate(parameter.ranges):
        told += [(f"{pointer}/ranges/{at}/needs/{i}", one) for i, one in enumerate(piece.needs or ())]
    for place, condition in told:
        named = mode.by_name.get(condition.parameter or "", [])
        tops = [full_scale(one) for one in named if one.slots]
        highest = max((high for _, high in condition.intervals), default=0)
        if tops and highest > max(tops):
            yield Fault(
                place,
                f"the condition on {condition.parameter} reaches to {highest}, beyond its full scale of "
                f"{max(tops)}",
                {"to": highest, "full_scale": max(tops)},
                f"conditions count in the full resolution of the parameter they name, 0 to {max(tops)}",
            )


def _raw(parameter: Parameter, pointer: str) -> Iterator[Fault]:
    if not parameter.slots:
        return
    top = full_scale(parameter)
    for span in spans_of(parameter.span):
        furthest = max(span.from_, span.to)
        if span.raw and furthest > top:
            yield Fault(
                f"{pointer}/span",
                f"{parameter.name} is said to be sent as {span.unit} up to {number(furthest)}, which "
                f"{bits(parameter)} bits cannot hold",
                {"to": furthest, "full_scale": top, "unit": span.unit},
                f"a raw span ends at {top} at most; without `raw` its ends are those of the byte range",
            )


RULE: Rule[FixtureReading] = Rule(
    name="range-beyond-scale",
    severity="error",
    summary="A range, a condition or a raw span holds values that cannot be sent.",
    checks=(
        "The ends of ranges against their parameter's full scale, the values of conditions against that of "
        "the parameter they name, and the ends of raw spans, where the number sent is the unit itself."
    ),
    why=(
        "Ranges count in the full resolution: 0 to 255 for one slot, 0 to 65535 for two. A number beyond "
        "it is a slip, or was meant for another parameter."
    ),
    bad=Example(
        "A range of one slot ends at 65535.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "shutter",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 127, "meaning": "Closed", "does": "closed"},
                                {"from": 128, "to": 65535, "meaning": "Open", "does": "open"},
                            ],
                        }
                    ]
                }
            ]
        },
    ),
    good=Example(
        "The range ends with the byte.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "shutter",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 127, "meaning": "Closed", "does": "closed"},
                                {"from": 128, "to": 255, "meaning": "Open", "does": "open"},
                            ],
                        }
                    ]
                }
            ]
        },
    ),
    references=("ANSI E1.11: a slot holds 0 to 255",),
    check=in_every_mode(faults_in_mode, about=["ranges_to_judge", "conditioned", "raw"]),
)
