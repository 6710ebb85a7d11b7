"""mode-mixed: one fixture stands in several modes within a group."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.rig.gathered import Gathered, gathered
from modebook.rig.grouping import unit_ranges
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._costs import cost_of, cost_told
from modebook.rig.rules._text import about, fixture_told

_PAR = {
    "model": "Par",
    "modes": [
        {"name": "Basic", "number": 1, "footprint": 4, "parameters": []},
        {"name": "Extended", "number": 2, "footprint": 8, "parameters": []},
    ],
}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each fixture of a group that stands there in several modes."""
    for group in gathered(reading, "group"):
        by_fixture: dict[str, dict[int, list[PatchedRow]]] = {}
        for row in group.rows:
            if row.identity and row.mode is not None:
                by_fixture.setdefault(row.identity, {}).setdefault(row.modes[0], []).append(row)
        for modes in by_fixture.values():
            if len(modes) > 1:
                yield _fault(group, list(modes.values()))


def _fault(group: Gathered, modes: list[list[PatchedRow]]) -> Fault:
    # The most units come first; of as many, those that stand first in the file.
    most, *fewer = sorted(modes, key=lambda rows: -len(rows))
    first = min((row for rows in fewer for row in rows), key=lambda row: row.unit.row)
    wanted = most[0].mode
    assert wanted is not None  # only rows with a mode were gathered
    cost = sum(cost_of(row.mode.mode, wanted.mode) for rows in fewer for row in rows if row.mode)
    said = (
        f"group {group.name} has {fixture_told(first)} in {len(modes)} modes: "
        f"{'; '.join(_told(rows) for rows in (most, *fewer))}"
    )
    figure: dict[str, object] = {
        **about(first),
        "cause": f"group {group.name}",
        "group": group.name,
        "modes": [
            {
                "mode": rows[0].mode.mode.name if rows[0].mode else "",
                "footprint": rows[0].mode.mode.footprint if rows[0].mode else 0,
                "units": [row.unit.number for row in rows],
            }
            for rows in (most, *fewer)
        ],
        "cost_slots": cost,
    }
    fewer_units = unit_ranges(row.unit.number for rows in fewer for row in rows)
    help_ = (
        f"nothing, if it is meant so; {fewer_units} in {wanted.mode.name} as well: {cost_told(cost)} in all"
    )
    return Fault("mode", said, figure, help_, unit=first.unit.number, row=first.unit.row)


def _told(rows: list[PatchedRow]) -> str:
    mode = rows[0].mode
    name = mode.mode.name if mode else ""
    return f"{name} on {unit_ranges(row.unit.number for row in rows)}"


_PATCH = "unit,fixture,mode,address,group\n1,Par,Extended,1/1,key\n2,Par,{},1/9,key\n"

RULE = Rule(
    name="mode-mixed",
    severity="info",
    summary="One fixture stands in several modes within a group.",
    checks=(
        "The modes of each fixture within each group of the patch. The finding stands on the first unit "
        "that is not in the mode of the most; the cure's cost is what the others' footprints would add. "
        "Units whose mode is not known are left out."
    ),
    why=(
        "Units of a group are run as one: in two modes their slots lie differently, steps and speeds "
        "differ, and what was set up for one does not hold for the other. Often it is meant so, and as "
        "often it is a swap that nobody looked at."
    ),
    bad=Example("Unit 2 is in the short mode.", {"fixtures": [_PAR], "patch": _PATCH.format("Basic")}),
    good=Example("Both are in one mode.", {"fixtures": [_PAR], "patch": _PATCH.format("Extended")}),
    references=("common practice, no source",),
    check=check,
)
