"""Settles a doubt of a draft: taken as read, or put right as a person types it, with who and when."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING, Any

from modebook.intake.pointed import Json, Pointed, at, pointed, take_out
from modebook.intake.sheet_layout import BLOCKS, PARAMETER_KEYS, RANGE_KEYS, read

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture

GONE = "gone"
"""What a person types where nothing is right: the thing at the doubt's place is taken out."""

_CHART = {column.title: column for column in BLOCKS["chart"]}
_MODE = {column.title: column for column in BLOCKS["mode"]}
_FORMS = {column.key: column.form for column in (*_CHART.values(), *_MODE.values())} | {
    "coarse_default": "int",
    "travel": "number",
}
_VALUES = re.compile(r"(\d{1,10})\s*(?:-|–|\.\.|to)\s*(\d{1,10})(?:\s+(.+))?")
_ONE_VALUE = re.compile(r"(\d{1,10})(?:\s+(.+))?")
_NUMBERED = re.compile(r"(\d{1,4})\s*:\s*(.+)")


class AnswerError(Exception):
    """An answer that cannot be taken: what is wrong with it, and what would be right, in one line."""


def accepted(document: Fixture, number: int, by: str, date: str) -> Fixture:
    """The document with a doubt (by its place in the list, from 0) settled as it was read."""
    return _settled(_plain(document), number, by, date, "as read")


def corrected(document: Fixture, number: int, typed: str, by: str, date: str) -> Fixture:
    """The document with what a doubt is about put right as typed, and the doubt settled.

    typed: one change, or several with semicolons between: a value where the doubt is about one key; ``0-14
    Open`` for a range; ``2: 10-14`` for the parameter's second range; ``slots 3, 4`` and the like, with the
    titles of the chart sheet; ``gone`` where nothing is right. Raises AnswerError.
    """
    made = _plain(document)
    entry = made["doubts"][number]
    told = " ".join(typed.split())
    if not told:
        raise AnswerError("nothing was typed")
    place = pointed(entry["pointer"])
    for change in _changes(told, place):
        _change(made, place, change)
    return _settled(made, number, by, date, f"right is: {told}")


def titles(place: Pointed) -> list[str]:
    """The words that may stand before a value at a place."""
    keys = RANGE_KEYS if place.range is not None else PARAMETER_KEYS
    columns = _CHART if place.parameter is not None else _MODE if place.mode is not None else {}
    return [t for t, column in columns.items() if place.parameter is None or column.key in keys]


def _plain(document: Fixture) -> Json:
    from modebook.shelf.canonical import as_written

    made: Json = as_written(document)
    return made


def _settled(made: Json, number: int, by: str, date: str, decision: str) -> Fixture:
    from pydantic import ValidationError

    from modebook.documents.fixture import Fixture as Model

    made["doubts"][number]["settled"] = {"by": by, "date": date, "decision": decision}
    try:
        return Model.model_validate_json(json.dumps(made), by_alias=True, by_name=False)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        steps = [str(step) for step in first["loc"] if step not in ("one", "several", "[key]")]
        raise AnswerError(f"{' '.join(steps[-2:])}: {first['msg']}") from error


def _changes(told: str, place: Pointed) -> list[str]:
    """The changes that a line holds; a semicolon inside a value (two conditions) parts nothing."""
    words = "|".join(re.escape(title) for title in sorted(titles(place), key=len, reverse=True))
    begins = rf";\s*(?=\d{{1,4}}\s*:|{GONE}\b" + (rf"|(?:{words})\b" if words else "") + ")"
    return [part.strip() for part in re.split(begins, told) if part.strip()]


def _change(document: Json, place: Pointed, change: str) -> None:
    numbered = _NUMBERED.fullmatch(change) if place.parameter is not None else None
    if numbered:
        ranges = at(document, str(place.parameter)).get("ranges", [])
        number = int(numbered[1])
        if not 1 <= number <= len(ranges):
            raise AnswerError(f"there is no range {number}; the ranges are 1 to {len(ranges)}")
        place = pointed(f"{place.parameter}/ranges/{number - 1}")
        change = numbered[2]
    if change.casefold() == GONE:
        _take_out(document, place)
        return
    try:
        owner = at(document, place.owner)
    except LookupError:
        raise AnswerError("what it is about is gone: leave it, or take it as read") from None
    told = _titled(change, place)
    if told is not None:
        _set(owner, *told)
    elif place.rest in _FORMS:
        _set(owner, place.rest, change)
    elif place.range is not None and not place.rest:
        _set_range(owner, change)
    elif place.parameter is not None and not place.rest:
        _set_parameter(owner, change)
    else:
        raise AnswerError(_help(place))


def _take_out(document: Json, place: Pointed) -> None:
    if not place.owner or re.fullmatch(r"/modes/\d+", place.pointer):
        raise AnswerError("a mode is not taken out here: take it out of the file itself")
    try:
        take_out(document, place.pointer)
    except LookupError:
        raise AnswerError("nothing stands there that could be taken out") from None


def _titled(change: str, place: Pointed) -> tuple[str, str] | None:
    """The key and value of such as ``slots 3, 4`` or ``hold s: 3``; None where no title begins it."""
    columns = _CHART if place.parameter is not None else _MODE
    for title in sorted(titles(place), key=len, reverse=True):
        found = re.fullmatch(rf"{re.escape(title)}(?:\s*[:=]\s*|\s+)(.+)", change, re.IGNORECASE)
        if found:
            return columns[title].key, found[1].strip()
    return None


def _set(owner: Json, key: str, value: str) -> None:
    if value.casefold() == GONE:
        if owner.pop(key, None) is None:
            raise AnswerError(f"there is no {key} that could be taken out")
        return
    try:
        owner[key] = _word(value) if key == "parameter" else read(value, _FORMS[key])
    except ValueError as error:
        raise AnswerError(str(error)) from error


def _set_range(owner: Json, change: str) -> None:
    found = _VALUES.fullmatch(change)
    if found:
        first, last, meaning = int(found[1]), int(found[2]), found[3]
    elif one := _ONE_VALUE.fullmatch(change):
        first, last, meaning = int(one[1]), int(one[1]), one[2]
    else:
        raise AnswerError(f"{change!r} is no range: write such as 10-14 Open, or 2: 10-14 for the second")
    owner["from"], owner["to"] = first, last
    if meaning:
        owner["meaning"] = meaning


def _set_parameter(owner: Json, change: str) -> None:
    if re.fullmatch(r"\d+(?:\s*[,+/ ]\s*\d+)*", change):
        _set(owner, "slots", change)
        return
    owner["parameter"] = _word(change)


def _word(told: str) -> str:
    """A word of the vocabulary, as such or by a synonym that is sure."""
    from modebook.words.parameters import PARAMETERS

    word = told.strip().casefold().replace(" ", "-")
    if word in PARAMETERS:
        return word
    from modebook.intake.names import read_name

    name = read_name(told)
    if name.word and name.sure:
        return name.word
    from rapidfuzz import fuzz, process

    near: list[Any] = process.extract(word, list(PARAMETERS), scorer=fuzz.WRatio, limit=3, score_cutoff=60)
    meant = f"; is {' or '.join(one for one, _, _ in near)} meant?" if near else ""
    raise AnswerError(f"{told!r} is no parameter of the vocabulary{meant}")


def _help(place: Pointed) -> str:
    known = titles(place)
    if not known:
        return "this is put right in the file itself; then take it as read"
    return f"begin with what is to be set: {', '.join(known)}; or put it right in the file itself"
