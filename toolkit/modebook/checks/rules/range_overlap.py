"""range-overlap: a value lies in two ranges of one parameter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from heapq import heappop, heappush

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._conditions import box, can_meet
from modebook.checks.rules._every_mode import in_every_mode
from modebook.checks.rules._values import told
from modebook.documents.modes import Parameter, Range


def faults_in_mode(reading: FixtureReading, mode: ModeReading) -> Sequence[Fault]:
    """The ranges of a mode that take values from another one of their parameter."""
    if not mode.survey.ranges_to_judge:
        return ()
    found: list[Fault] = []
    for index in mode.survey.ranges_to_judge:
        parameter, pointer = mode.at(index)
        found += [_fault(parameter, pointer, *pair) for pair in overlaps(parameter.ranges)]
    return found


def overlaps(ranges: Sequence[Range]) -> Iterator[tuple[int, int]]:
    """Index of a range with that of the first other one below it that shares a value, each range once.

    Ranges whose needs never hold at once may share values.
    """
    order = sorted(range(len(ranges)), key=lambda i: (ranges[i].from_, ranges[i].to, i))
    open_: list[tuple[int, int]] = []  # (last value, index) of the ranges that are not over yet
    for i in order:
        while open_ and open_[0][0] < ranges[i].from_:
            heappop(open_)
        for _, j in sorted(open_, key=lambda entry: entry[1]):
            if _together(ranges[i], ranges[j]):
                yield i, j
                break
        heappush(open_, (ranges[i].to, i))


def _together(a: Range, b: Range) -> bool:
    return not (a.needs and b.needs) or can_meet(box(a.needs), box(b.needs))


def _fault(parameter: Parameter, pointer: str, index: int, other: int) -> Fault:
    piece, first = parameter.ranges[index], parameter.ranges[other]
    low, high = max(piece.from_, first.from_), min(piece.to, first.to)
    noun, verb = ("value", "lies") if low == high else ("values", "lie")
    return Fault(
        f"{pointer}/ranges/{index}",
        f"{noun} {told(((low, high),))} of {parameter.name} {verb} in {first.meaning!r} "
        f"({first.from_}-{first.to}) and in {piece.meaning!r} ({piece.from_}-{piece.to})",
        {"from": low, "to": high, "values": high - low + 1, "other": f"{pointer}/ranges/{other}"},
        "correct the ends of one of them; ranges whose `needs` never hold at once may share values",
    )


RULE: Rule[FixtureReading] = Rule(
    name="range-overlap",
    severity="error",
    summary="A value lies in two ranges of one parameter.",
    checks=(
        "The ranges of every parameter, in whatever order they stand: each range is reported with one that "
        "shares values with it, both ends included. Ranges whose `needs` never hold at once may share values."
    ),
    why=(
        "A value that means two things is a slip of the chart or of its reading. On a control slot the wrong "
        "one of the two may be a reset."
    ),
    bad=Example(
        "Value 10 is both closed and open.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "shutter",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 10, "meaning": "Closed", "does": "closed"},
                                {"from": 10, "to": 255, "meaning": "Open", "does": "open"},
                            ],
                        }
                    ]
                }
            ]
        },
    ),
    good=Example(
        "Each value has one meaning.",
        {
            "modes": [
                {
                    "parameters": [
                        {
                            "parameter": "shutter",
                            "slots": [1],
                            "ranges": [
                                {"from": 0, "to": 9, "meaning": "Closed", "does": "closed"},
                                {"from": 10, "to": 255, "meaning": "Open", "does": "open"},
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
