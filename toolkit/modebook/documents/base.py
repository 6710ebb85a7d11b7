"""The ground all documents stand on: strict, closed, unchanging models and the types they share."""

from __future__ import annotations

import re
import unicodedata
from typing import Annotated, Any

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
        use_attribute_docstrings=True,
        allow_inf_nan=False,
    )


def _one_of(words: list[str]) -> GetPydanticSchema:
    """A string out of a closed list that is data, not code (a Literal cannot be made from data)."""

    def schema(_source: Any, _handler: Any) -> CoreSchema:
        return core_schema.literal_schema(words)

    return GetPydanticSchema(schema)


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

_DROP = re.compile(r"[^a-z0-9]+")


def slug(name: str) -> str:
    """The form a maker's or model's name takes in a path: ``Île Nº 2`` becomes ``ile-no-2``.

    Letters outside a-z are decomposed (NFKD) and lose their marks; what is left over becomes one hyphen.
    """
    flat = unicodedata.normalize("NFKD", name.casefold())
    return _DROP.sub("-", flat.encode("ascii", "ignore").decode()).strip("-")
