"""A fixture document: one model of light, its modes, settings, sources and doubts."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from modebook.documents.base import Date, Hex16, Key, Part, Text, slug
from modebook.documents.doubts import Acceptance, Doubt
from modebook.documents.modes import Mode
from modebook.documents.settings import Setting
from modebook.words.e120 import Category
from modebook.words.records import Standing

Chromaticity = Annotated[float, Field(ge=0, le=1)]


class RdmId(Part):
    """How the fixture names itself over RDM."""

    manufacturer: Hex16
    model: Hex16


class Source(Part):
    """Where facts come from: a manual, a page, a letter, a measurement."""

    key: Key
    title: Text
    revision: Text | None = None
    date: Date | None = None
    firmware: Text | None = None
    """The firmware that it describes."""
    pages: Text | None = None
    language: Text | None = None
    note: Text | None = None


class WheelColor(Part):
    """A color: by chromaticity, by filter name, or both."""

    x: Chromaticity | None = None
    y: Chromaticity | None = None
    filter: Text | None = None

    @model_validator(mode="after")
    def _x_with_y(self) -> Self:
        if (self.x is None) != (self.y is None):
            raise ValueError("x and y go together")
        if self.x is None and self.filter is None:
            raise ValueError("give x and y, or filter")
        return self


class WheelPosition(Part):
    """One place of a wheel, or a place between two."""

    key: Key
    label: Text | None = None
    color: WheelColor | None = None
    between: Annotated[list[Key], Field(min_length=2, max_length=2)] | None = None
    """The keys of the two positions that share the beam."""


class Wheel(Part):
    """A wheel and its positions in order."""

    key: Key
    label: Text | None = None
    positions: list[WheelPosition]
    source: Key | None = None


class Emitter(Part):
    """A color source inside the fixture."""

    key: Key
    label: Text | None = None
    x: Chromaticity | None = None
    y: Chromaticity | None = None
    peak_nm: Annotated[float, Field(gt=0, lt=5000)] | None = None
    source: Key | None = None


class Promotion(Part):
    """A rise in standing: who vouches for it, and when."""

    to: Standing
    by: Text
    date: Date
    note: Text | None = None


class Fixture(Part):
    """A fixture document. Its path, fixtures/<maker>/<model>.json, is its identity."""

    schema_: Annotated[str | None, Field(alias="$schema")] = None
    maker: Text
    model: Text
    category: Category
    """The E1.20 product category, in words."""
    standing: Standing
    """How far the record can be trusted."""
    rdm: RdmId | None = None
    about: Text | None = None
    sources: list[Source] = []
    settings: list[Setting] = []
    wheels: list[Wheel] = []
    emitters: list[Emitter] = []
    modes: Annotated[list[Mode], Field(min_length=1)]
    doubts: list[Doubt] = []
    accepted: list[Acceptance] = []
    promotions: list[Promotion] = []

    @property
    def id(self) -> str:
        """Its identity: the path below fixtures/ without its ending, such as ``arden/lumo-40``."""
        return f"{slug(self.maker)}/{slug(self.model)}"

    @property
    def open_doubts(self) -> list[Doubt]:
        """The doubts that nobody has settled."""
        return [doubt for doubt in self.doubts if doubt.settled is None]
