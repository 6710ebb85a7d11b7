"""address-shared: units of one fixture, mode and address, which is how twins are patched."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.address import Address
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._text import about, unit_told

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each row that repeats an earlier one's fixture, mode, part and address."""
    seen: dict[tuple[object, ...], PatchedRow] = {}
    for row in reading.rows:
        if not row.first:
            continue
        other = seen.setdefault((row.first, row.identity, row.modes, row.part), row)
        if other is row or other.unit.number.casefold() == row.unit.number.casefold() != "":
            continue  # a unit number that stands twice is told by duplicate-unit
        at = Address.from_absolute(row.first)
        yield Fault(
            "address",
            f"it listens to the same slots as {unit_told(other)}, from {at} on, in the same mode",
            {
                **about(row),
                "other_unit": other.unit.number,
                "other_row": other.unit.row,
                "universe": at.universe,
                "first_address": at.address,
                "slots": row.last - row.first + 1,
                "cost_slots": 0,
            },
            "nothing, if the two are meant to do the same; else give one of them another address",
            unit=row.unit.number,
            row=row.unit.row,
        )


RULE = Rule(
    name="address-shared",
    severity="info",
    summary="Units of one fixture and mode share an address.",
    checks="Rows with the same fixture, mode, part and address; each later one names the first.",
    why="Twins on one address are normal, and a slip of the pen looks just the same.",
    bad=Example(
        "Units 1 and 2 share fixture, mode and address.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,Wide,1/1\n2,Par,Wide,1/1\n"},
    ),
    good=Example(
        "Each unit has an address of its own.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,Wide,1/1\n2,Par,Wide,1/9\n"},
    ),
    references=("common practice, no source",),
    check=check,
)
