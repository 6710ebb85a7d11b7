"""duplicate-unit: one unit number stands on several rows that are not parts of one unit."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._text import about, fixture_told

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}
_TWO = {
    "model": "Wand",
    "modes": [
        {
            "name": "Two starts",
            "footprint": 8,
            "parameters": [],
            "parts": [{"key": "yoke", "footprint": 4}, {"key": "head", "footprint": 4}],
        }
    ],
}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each row whose unit number, and part, an earlier row has."""
    for rows in reading.by_unit.values():
        if len(rows) < 2:
            continue
        seen: dict[str, PatchedRow] = {}
        for row in rows:
            part = row.part or row.unit.part.casefold()
            other = seen.setdefault(part, row)
            if other is row:
                other = rows[0]
                if (row.identity, row.modes) == (other.identity, other.modes) and row.unit.fixture:
                    continue  # another start address of the same unit
            yield Fault(
                "unit",
                f"the number {row.unit.number} stands on row {other.unit.row} too, for {fixture_told(other)}"
                + (f", part {part}" if part and part == other.part else ""),
                {**about(row), "other_unit": other.unit.number, "other_row": other.unit.row, "cost_slots": 0},
                "give one of the two another number; one unit may have a row for each part of its mode",
                unit=row.unit.number,
                row=row.unit.row,
            )


RULE = Rule(
    name="duplicate-unit",
    severity="error",
    summary="Two units have one number.",
    checks=(
        "Unit numbers, where case does not count. Rows of one number are one unit if they are the same "
        "fixture in the same mode, and each is another part of that mode (a mode with several start "
        "addresses)."
    ),
    why="A cue or a work order for that number goes to whichever of the two comes first.",
    bad=Example(
        "Two units 12A.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n12A,Par,Wide,1/1\n12a,Par,Wide,1/9\n"},
    ),
    good=Example(
        "One unit over two rows, for the two start addresses of its mode.",
        {
            "fixtures": [_TWO],
            "patch": "unit,fixture,mode,part,address\n"
            "7,Wand,Two starts,yoke,1/1\n7,Wand,Two starts,head,2/1\n",
        },
    ),
    references=("common practice, no source",),
    check=check,
)
