"""unknown-fixture: a unit's fixture has no record that can be told apart and read."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.rig.reading import RigReading
from modebook.rig.rules._text import either, perhaps

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each row whose fixture is not known."""
    nearest = cache(reading.names.nearest)
    for row in reading.rows:
        told = row.unit.fixture
        if row.fixture is not None or not told:
            continue
        figure: dict[str, object] = {"fixture": told, "mode": row.unit.mode, "cost_slots": None}
        if row.unreadable:
            message = f"the record of {told} cannot be read: {row.unreadable}"
            remedy = "mend the record; `modebook check` tells all that is wrong with it"
        elif row.identities:
            message = f"{told!r} may be {either(row.identities)}"
            remedy = "write the maker's name before it"
            figure["nearest"] = list(row.identities)
        else:
            near = nearest(told)
            message = f"the catalog has no fixture {told!r}"
            remedy = perhaps(near) or "record it, or write it as maker and model"
            figure["nearest"] = near
        yield Fault("fixture", message, figure, remedy, unit=row.unit.number, row=row.unit.row)


RULE = Rule(
    name="unknown-fixture",
    severity="error",
    summary="A unit's fixture is not in the catalog.",
    checks=(
        "The patch's word is looked for among the catalog's fixtures as maker and model, as a model alone "
        "if only one maker has it, and as maker/model as in the path. Case, accents, spaces and "
        "punctuation do not count. Nothing is guessed: the nearest names are told."
    ),
    why="Without a record, neither its slots nor its smoothing nor its resolution can be judged.",
    bad=Example(
        "The catalog has a Par, and no Bar.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Bar,Wide,1/1\n"},
    ),
    good=Example(
        "Maker and model, in any case.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,INVENTED MAKER PAR,Wide,1/1\n"},
    ),
    references=("common practice, no source",),
    check=check,
)
