"""The ground all documents stand on: strict, closed, unchanging models and the types they share."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from types import NoneType
from typing import Annotated, Any, get_args, get_origin

from pydantic import BaseModel, ConfigDict, Field, GetPydanticSchema
from pydantic_core import CoreSchema, core_schema

from modebook.words.parameters import PARAMETERS
from modebook.words.units import UNITS


class Part(BaseModel):
    """A piece of a document: no unknown keys, no silent conversion, no change after reading."""

    model_config = ConfigDict(
        extra="forbid",
        strict=True,
        frozen=True,
        populate_by_name=True,
        allow_inf_nan=False,
    )


def _one_of(words: list[str]) -> GetPydanticSchema:
    """A string out of a closed list that is data, not code (a Literal cannot be made from data)."""

    def schema(_source: Any, _handler: Any) -> CoreSchema:
        return core_schema.literal_schema(words)

    return GetPydanticSchema(schema)


def _kind_of(value: Any) -> str:
    """What JSON calls a value, in words; a piece already read counts as the object that it was."""
    if isinstance(value, bool):
        return "true or false"
    if isinstance(value, int | float):
        return "a number"
    if isinstance(value, str):
        return "text in quotes"
    return "a list" if isinstance(value, list) else "an object"


def _kind_of_type(source: Any) -> str:
    plain = get_args(source)[0] if get_origin(source) is Annotated else source
    words = {bool: "true or false", int: "a number", float: "a number", str: "text in quotes"}
    return words.get(plain, "an object")


def _told_apart(source: Any, handler: Any) -> CoreSchema:
    kinds = [kind for kind in get_args(source) if kind is not NoneType]
    branches = {_kind_of_type(kind): handler.generate_schema(kind) for kind in kinds}
    union = core_schema.tagged_union_schema(
        branches,
        discriminator=_kind_of,
        custom_error_type="wrong_kind",
        custom_error_message=f"Give {', or '.join(branches)}",
    )
    return core_schema.nullable_schema(union) if NoneType in get_args(source) else union


TOLD_APART = GetPydanticSchema(_told_apart)
"""For a union of kinds that JSON itself tells apart: an error is then about the kind that stands there."""

ParameterWord = Annotated[str, _one_of(list(PARAMETERS))]
UnitWord = Annotated[str, _one_of(list(UNITS))]

Key = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
"""A name that other places of the document refer to: small letters, digits, hyphens."""

Text = Annotated[str, Field(min_length=1, max_length=20_000)]
"""Words for people, as printed or as written by a recorder."""

Hex16 = Annotated[str, Field(pattern=r"^0x[0-9A-F]{4}$")]
"""A 16-bit number as RDM documents print it: 0x7FF1."""

Pointer = Annotated[str, Field(pattern=r"^(/([^~/]|~[01])*)*$", max_length=500)]
"""A JSON pointer (RFC 6901) into the same document."""

Date = Annotated[str, Field(pattern=r"^[0-9]{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?$")]
"""A year, a month or a day: 2026, 2026-03, 2026-03-14."""

SlotNumber = Annotated[int, Field(ge=1, le=65_536)]
Value = Annotated[int, Field(ge=0, le=2**32 - 1)]
"""A value in a parameter's full resolution, 0 to 256^n - 1."""


def each_once(what: str, keys: Iterable[str]) -> None:
    """Raises ValueError where a key stands twice; `what` names them in the plural: ``wheels``."""
    seen: set[str] = set()
    for key in keys:
        if key in seen:
            raise ValueError(f"two {what} have the key {key!r}: give each its own")
        seen.add(key)


Share = Annotated[float, Field(ge=0, le=1)]
"""A share, 0 to 1."""

_DROP = re.compile(r"[^a-z0-9]+")

_PLAIN = str.maketrans(
    {"ø": "o", "đ": "d", "ð": "d", "ł": "l", "ħ": "h", "ı": "i", "ŧ": "t", "æ": "ae", "œ": "oe", "þ": "th"}
)
"""Latin letters that Unicode does not decompose, as they are commonly written without their marks."""


def slug(name: str) -> str:
    """The form a maker's or model's name takes in a path: ``Île Nº 2`` becomes ``ile-no-2``.

    Letters outside a-z are decomposed (NFKD) and lose their marks; what is left over becomes one hyphen. A
    name of which nothing would be left is spelled by its characters' numbers: ``灯`` becomes ``u706f``.
    """
    # Twice: a capital may appear only when a sign is decomposed (№), a mark only when a letter is folded (İ).
    flat = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", name).casefold()).translate(_PLAIN)
    bare = "".join(sign for sign in flat if not unicodedata.combining(sign))
    return _DROP.sub("-", bare).strip("-") or "-".join(f"u{ord(sign):x}" for sign in name)
