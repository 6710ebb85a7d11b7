"""What is wrong with a document's form, for people: the parser's errors as pointer, message and remedy."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, get_args

from modebook.documents.base import Part
from modebook.shelf.errors import printable

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

_KINDS = {
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "finite_number": "a number",
    "string_type": "text in quotes",
    "bool_type": "true or false",
    "list_type": "a list in [ ]",
    "dict_type": "an object in { }",
    "model_type": "an object in { }",
}
"""What belongs where the parser found another kind of thing."""

_EXAMPLES = (
    ("gobo-wheel-2", "small letters, digits and single hyphens, such as gobo-wheel-2"),
    ("0x7FF1", "a number such as 0x7FF1"),
    ("2026-03", "2026, 2026-03 or 2026-03-14"),
    ("/modes/0", "a JSON pointer such as /modes/0"),
    ("7FF1:00000A01", "a UID such as 7FF1:00000A01"),
    ("other", "a universe from 1 to 63999, or other"),
)
"""What a pattern asks for, told by an example that matches it; in this order, since some match two."""


def syntax_fault(detail: ErrorDetails, content: bytes) -> tuple[str, str]:
    """Message and remedy for bytes that are no JSON text."""
    try:
        content.decode()
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        return f"byte {error.start} (line {line}) is not UTF-8", "save the file in UTF-8 and try again"
    why = str(detail.get("ctx", {}).get("error", detail["msg"]))
    if content.startswith(b"\xef\xbb\xbf"):
        return "a byte order mark stands before the first bracket", "save it without one"
    if "recursion" in why:
        return "brackets are nested too deeply", "no document needs more than a few levels"
    if not content.strip():
        return "the file is empty", "start from one of the catalog's documents"
    return f"not JSON: {why}", "look there for a comma, quote or bracket"


def form_faults(details: list[ErrorDetails], data: Any, model: type[Part]) -> Iterator[tuple[str, str, str]]:
    """Pointer, message and remedy of each error; `data` is the whole document as plain data."""
    for detail in details:
        place = _place(detail, data)
        pointer = "".join("/" + step.replace("~", "~0").replace("/", "~1") for step in place)
        yield pointer, *_told(detail, place, model)


def _place(detail: ErrorDetails, data: Any) -> list[str]:
    """The steps that lead through the document: the parser also names branches of its own, left out here."""
    place: list[str] = []
    for step in detail["loc"]:
        try:
            data = data[step]
        except (LookupError, TypeError):
            continue
        place.append(str(step))
    if detail["type"] == "missing":
        place.append(str(detail["loc"][-1]))
    return place


def _told(detail: ErrorDetails, place: list[str], model: type[Part]) -> tuple[str, str]:
    kind, message, found = detail["type"], detail["msg"], detail["input"]
    name = place[-1] if place else ""
    if kind == "extra_forbidden":
        return f"the key {name!r} is unknown here", _nearest(name, _keys_at(model, place[:-1]))
    if kind == "missing":
        return f"the key {name!r} is missing", f"add {name!r}"
    if kind == "value_error":
        text = message.removeprefix("Value error, ")
        what, _, right = text.partition(": ")
        return (what, right) if right else (f"this does not hold together: {text}", "")
    shown = printable(json.dumps(found, default=str, ensure_ascii=False))
    shown = shown if len(shown) <= 60 else shown[:57] + "..."
    if kind == "literal_error":
        return f"{shown} is not a word that is known here", _word(found, detail["ctx"]["expected"])
    if kind in _KINDS:
        return f"{shown} stands where {_KINDS[kind]} belongs", f"write {_KINDS[kind]}"
    if kind == "string_pattern_mismatch":
        return f"{shown} is not written as it must be here", _example(detail["ctx"]["pattern"])
    if kind == "wrong_kind":
        return f"{shown} does not fit here", message[:1].lower() + message[1:]
    return f"{shown} does not fit here", message.replace("Input should", "it should", 1)


def _example(pattern: str) -> str:
    import re

    for example, words in _EXAMPLES:
        if re.search(pattern, example):
            return f"write {words}"
    return f"it must match {pattern}"


def _nearest(name: str, known: list[str]) -> str:
    from rapidfuzz import fuzz, process

    near = process.extractOne(name, known, scorer=fuzz.ratio, score_cutoff=60)
    return f"is {near[0]!r} meant?" if near else f"take it out; known here are {', '.join(known)}"


def _word(found: object, expected: str) -> str:
    from rapidfuzz import fuzz, process

    words = [word.strip("'") for word in expected.replace("' or '", "', '").split(", ")]
    near = process.extract(str(found), words, scorer=fuzz.ratio, limit=3, score_cutoff=50)
    if near:
        return "is " + " or ".join(repr(word) for word, _, _ in near) + " meant?"
    return f"one of {expected}" if len(expected) < 200 else "see the schema for the words that are"


def _keys_at(model: type[Part], place: list[str]) -> list[str]:
    """The keys that an object at a place may have, in the model's order."""
    models = [model]
    for step in place:
        below = [
            part
            for one in models
            for name, field in one.model_fields.items()
            if (field.alias or name) == step
            for part in _parts_in(field.annotation)
        ]
        # A number in a list and a name of a map lead to no other model.
        models = below or models
    return list(
        dict.fromkeys(field.alias or name for one in models for name, field in one.model_fields.items())
    )


def _parts_in(annotation: Any) -> Iterator[type[Part]]:
    if isinstance(annotation, type) and issubclass(annotation, Part):
        yield annotation
    for argument in get_args(annotation):
        yield from _parts_in(argument)
