"""path-mismatch: the document's place does not agree with its maker and model."""

from __future__ import annotations

import re
from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Example, Rule

_AS_A_SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*/[a-z0-9]+(-[a-z0-9]+)*").fullmatch


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The fault of a document whose place below fixtures/ is not its maker and model."""
    place = reading.identity
    if place is None:
        return ()
    fixture = reading.fixture
    plain = f"{fixture.maker}/{fixture.model}".lower().replace(" ", "-")
    if place == plain and _AS_A_SLUG(plain):
        return ()  # mostly so, and much faster told than by the slug itself
    wanted = fixture.id
    if place == wanted:
        return ()
    maker, _, model = wanted.partition("/")
    if not maker or not model:
        which, name = ("maker", fixture.maker) if not maker else ("model", fixture.model)
        return [
            Fault(
                f"/{which}",
                f"the {which} {name!r} has no letter or digit that a path can hold",
                {"path": place},
                "write it in Latin letters or digits",
            )
        ]
    pointer = "/model" if place.partition("/")[0] == maker else "/maker"
    return [
        Fault(
            pointer,
            f"the document stands at fixtures/{place}.json, but {fixture.maker} {fixture.model} belongs at "
            f"fixtures/{wanted}.json",
            {"path": place, "path_wanted": wanted},
            "move the file, or correct maker and model",
        )
    ]


RULE: Rule[FixtureReading] = Rule(
    name="path-mismatch",
    severity="error",
    summary="The document's place does not agree with its maker and model.",
    checks=(
        "The path below fixtures/ against maker and model in small letters, each run of other signs one "
        "hyphen. A document outside any catalog has no place to compare."
    ),
    why="The path is the fixture's identity: rigs and links find it there, and two files for one model show.",
    bad=Example(
        "The file has kept the name of another model.",
        {"path": "invented-maker/invented-2", "maker": "Invented Maker", "model": "Invented 1"},
    ),
    good=Example(
        "Maker and model in small letters and hyphens.",
        {"path": "invented-maker/invented-1", "maker": "Invented Maker", "model": "Invented 1"},
    ),
    references=("common practice, no source",),
    check=check,
)
