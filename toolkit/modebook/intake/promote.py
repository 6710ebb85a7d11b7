"""Raises a record's standing, with who and when; refuses what the record does not bear yet."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from modebook.intake.compare import compare
from modebook.intake.errors import PromotionRefusedError
from modebook.words.records import STANDINGS

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture

_ORDER = list(STANDINGS)


def promote(
    fixture: Fixture, to: str, by: str, date: str, readings: Sequence[Fixture] = (), note: str | None = None
) -> Fixture:
    """The document with its new standing and a record of who raised it and when (ISO 8601 day, month or
    year).

    readings: independent readings of the same source. Raises PromotionRefusedError, with every reason, while
    doubts are open; for `second-read` also without an independent reading or while one differs; and for a
    standing that is no rise.
    """
    reasons: list[str] = []
    if to not in _ORDER:
        raise PromotionRefusedError(fixture.id, [f"{to!r} is no standing; they are {', '.join(_ORDER)}"])
    if _ORDER.index(to) <= _ORDER.index(fixture.standing):
        reasons.append(f"it is {fixture.standing} already, and {to} is no rise")
    if not by.strip():
        reasons.append("nobody is named who vouches for it")
    if not re.fullmatch(r"[0-9]{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?", date):
        reasons.append(f"{date!r} is no date: write such as 2026-05-31, 2026-05 or 2026")
    for doubt in fixture.open_doubts:
        reasons.append(f"a doubt is open at {doubt.pointer or 'the document'}: {doubt.why}")
    if to == "second-read":
        reasons.extend(_against(fixture, readings))
    if to == "proved" and fixture.standing == "draft":
        reasons.append("it is a draft; have it transcribed first")
    if reasons:
        raise PromotionRefusedError(fixture.id, reasons)
    return _raised(fixture, to, by, date, note)


def _against(fixture: Fixture, readings: Sequence[Fixture]) -> list[str]:
    if not readings:
        maker_model = fixture.id
        return [f"no second reading is there; put one into readings/{maker_model}/"]
    found: list[str] = []
    for number, reading in enumerate(readings, start=1):
        differences = compare(fixture, reading)
        if differences:
            first = differences[0]
            found.append(
                f"reading {number} differs in {len(differences)} place{'s' if len(differences) > 1 else ''}, "
                f"first at "
                f"{first['pointer']}: {_short(first['a'])} here, {_short(first['b'])} there"
            )
        if reading.open_doubts:
            found.append(f"reading {number} has {len(reading.open_doubts)} open doubts")
    return found


def _short(value: object) -> str:
    text = "nothing" if value is None else str(value)
    return text if len(text) <= 60 else text[:57] + "..."


def _raised(fixture: Fixture, to: str, by: str, date: str, note: str | None) -> Fixture:
    from pydantic import ValidationError

    from modebook.documents.fixture import Fixture as Model
    from modebook.shelf.canonical import as_written

    document = as_written(fixture)
    document["standing"] = to
    entry = {"to": to, "by": by, "date": date, **({"note": note} if note else {})}
    document["promotions"] = [*document.get("promotions", []), entry]
    try:
        return Model.model_validate(document)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        raise PromotionRefusedError(fixture.id, [f"{first['loc'][-1]}: {first['msg']}"]) from error


def readings_of(catalog: Path, identity: str) -> list[Fixture]:
    """The independent readings of a fixture (``maker/model``) in a catalog's folder, by name of their files.

    Raises ShelfError where one cannot be read.
    """
    from modebook.shelf.reading import read_fixture

    folder = catalog / "readings" / identity
    return [read_fixture(file) for file in sorted(folder.glob("*.json"))] if folder.is_dir() else []
