"""unknown-mode: a unit's mode is none of its fixture's, or may be several."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.modes import Mode
from modebook.rig.mode_names import nearest_modes
from modebook.rig.reading import RigReading
from modebook.rig.rules._text import either, fixture_told, perhaps

_PAR = {
    "model": "Par",
    "modes": [
        {"name": "Basic", "number": 1, "footprint": 4, "parameters": []},
        {"name": "Extended 16 bit", "number": 2, "footprint": 8, "parameters": []},
    ],
}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each row whose mode is not known."""

    @cache
    def nearest(identity: str, told: str) -> list[str]:
        fixture = next(row.fixture for row in reading.rows if row.fixture and row.identity == identity)
        return nearest_modes(told, fixture.fixture.modes)

    for row in reading.rows:
        if row.fixture is None or row.mode is not None or not row.unit.mode:
            continue
        told, modes = row.unit.mode, row.fixture.fixture.modes
        figure: dict[str, object] = {"fixture": row.identity, "mode": told, "cost_slots": None}
        if row.modes:
            names = [_told(modes[index]) for index in row.modes]
            message = f"{told!r} may be the mode {either(names)} of {fixture_told(row)}"
            remedy = "write the name of the one that is meant"
        else:
            names = nearest(row.identity or "", told)
            message = f"{fixture_told(row)} has no mode {told!r}"
            remedy = perhaps(names)
        figure["nearest"] = names
        yield Fault("mode", message, figure, remedy, unit=row.unit.number, row=row.unit.row)


def _told(mode: Mode) -> str:
    number = "" if mode.number is None else f", number {mode.number}"
    given = f", given {mode.given}" if mode.given else ""
    return f"{mode.name!r} ({mode.footprint} slots{number}{given})"


RULE = Rule(
    name="unknown-mode",
    severity="error",
    summary="A unit's mode is not one of its fixture's.",
    checks=(
        "The patch's word is compared with the names of the fixture's modes, where case, spaces and "
        "punctuation do not count, and with their personality numbers. A word that fits several is not "
        "decided. Nothing is guessed: the nearest names are told."
    ),
    why="The mode says how many slots the unit takes and what they do; in a wrong one, all are wrong.",
    bad=Example(
        "The fixture has no mode called Full.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,Full,1/1\n"},
    ),
    good=Example(
        "By name in another writing, and by number.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,EXTENDED 16-bit,1/1\n2,Par,2,1/9\n"},
    ),
    references=("ANSI E1.20: personalities are numbered from 1",),
    check=check,
)
