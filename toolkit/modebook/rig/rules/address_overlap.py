"""address-overlap: two units take the same slots, and are not twins."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.address import Address
from modebook.rig.reading import RigReading
from modebook.rig.rules._text import about, fixture_told, stretch_told, unit_told

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each later row and each earlier one that it meets."""
    for meeting in reading.meetings:
        if meeting.twins:
            continue
        row, other = meeting.later, meeting.other
        start = Address.from_absolute(meeting.first)
        slots = meeting.last - meeting.first + 1
        yield Fault(
            "address",
            f"{stretch_told(row.first, row.last)} meets {unit_told(other)}, {fixture_told(other)}, "
            f"at {stretch_told(meeting.first, meeting.last)}",
            {
                **about(row),
                "other_unit": other.unit.number,
                "other_row": other.unit.row,
                "universe": start.universe,
                "first_address": start.address,
                "last_address": Address.from_absolute(meeting.last).address,
                "slots": slots,
                "cost_slots": 0,
            },
            f"give one of the two another address: this one takes {row.last - row.first + 1} slots, and "
            "a move costs no more",
            unit=row.unit.number,
            row=row.unit.row,
        )


RULE = Rule(
    name="address-overlap",
    severity="error",
    summary="Two units take the same slots.",
    checks=(
        "Every unit takes the slots from its address on, as many as its mode's footprint has, into the "
        "next universe where the mode continues there. Slots are compared one by one. The finding stands "
        "on the row further down the file and names the other. Units of one fixture, mode and address are "
        "no overlap but address-shared. For one unit at most eight others are named."
    ),
    why="Each of the two does what was meant for the other: a dimmer becomes a pan, a color becomes a reset.",
    bad=Example(
        "Unit 2 begins on the last slot of unit 1.",
        {
            "fixtures": [_PAR],
            "patch": "unit,fixture,mode,address\n1,Par,Wide,1/1\n2,Par,Wide,1/8\n",
        },
    ),
    good=Example(
        "Unit 2 begins after the last slot of unit 1; unit 3 is a twin of unit 2.",
        {
            "fixtures": [_PAR],
            "patch": "unit,fixture,mode,address\n1,Par,Wide,1/1\n2,Par,Wide,1/9\n3,Par,Wide,1/9\n",
        },
    ),
    references=("ANSI E1.11: a slot's place in the packet is its address",),
    check=check,
)
