"""bad-row: a row of the patch, or a cell of it, cannot be read."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.rig.reading import RigReading
from modebook.rig.rules._text import about, either, fixture_told

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}


def check(reading: RigReading) -> Iterable[Fault]:
    """The patch's own faults, then parts that the mode lacks or that the patch leaves out."""
    for fault in reading.patch.faults:
        yield Fault(
            fault.column,
            f"column {fault.column}: {fault.why}",
            {"column": fault.column, "found": fault.found, "cost_slots": None},
            unit=fault.unit,
            row=fault.row,
        )
    yield from _unknown_parts(reading)
    yield from _missing_parts(reading)


def _unknown_parts(reading: RigReading) -> Iterable[Fault]:
    for row in reading.rows:
        if row.mode is None or row.block is not None:
            continue
        keys = [block.key or "main" for block in row.mode.blocks]
        remedy = (
            f"write {either(keys)}" if len(keys) > 1 else "leave the part out: the mode has one start address"
        )
        yield Fault(
            "part",
            f"the mode {row.mode.mode.name} of {fixture_told(row)} has no part {row.unit.part!r}",
            {**about(row), "column": "part", "found": row.unit.part, "parts": keys, "cost_slots": 0},
            remedy,
            unit=row.unit.number,
            row=row.unit.row,
        )


def _missing_parts(reading: RigReading) -> Iterable[Fault]:
    for rows in reading.by_unit.values():
        first = rows[0]
        if first.mode is None or len(first.mode.blocks) < 2 or not any(row.unit.address for row in rows):
            continue
        present = {row.part for row in rows if row.block is not None}
        missing = [block.key or "main" for block in first.mode.blocks if (block.key or "") not in present]
        if missing:
            yield Fault(
                "part",
                f"the mode {first.mode.mode.name} has {len(first.mode.blocks)} start addresses, "
                f"and the patch has none for {' and '.join(missing)}",
                {**about(first), "column": "part", "found": "", "missing_parts": missing, "cost_slots": 0},
                "add a row with the same unit number for each",
                severity="warning",
                unit=first.unit.number,
                row=first.unit.row,
            )


RULE = Rule(
    name="bad-row",
    severity="error",
    summary="A row of the patch cannot be read.",
    checks=(
        "Every row is read on its own: a name that is missing, an address that is no number, lies outside "
        "universes 1 to 63999 and addresses 1 to 512, or can be read in two ways (2.1 may have been 2.10 "
        "or 2.100), a date where an address was, a part that the mode lacks. The other rows are read all "
        "the same."
    ),
    why=(
        "What cannot be read cannot be checked, and what a spreadsheet changed will not be noticed on the "
        "day."
    ),
    bad=Example(
        "There is no address 513 in a universe.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,universe,address\n1,Par,Wide,1,513\n"},
    ),
    good=Example(
        "A row, a blank row and a total.",
        {
            "fixtures": [_PAR],
            "patch": "unit,fixture,mode,universe,address\n1,Par,Wide,1,1\n,,,,\nTotal,1,,,\n",
        },
    ),
    references=("ANSI E1.11: addresses 1 to 512", "ANSI E1.31: universes 1 to 63999"),
    check=check,
)
