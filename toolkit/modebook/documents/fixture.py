"""A fixture document: one model of light, its modes, settings, sources and doubts."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from modebook.documents.base import Date, Hex16, Key, Part, Share, Text, each_once, slug
from modebook.documents.doubts import Acceptance, Doubt
from modebook.documents.modes import Mode
from modebook.documents.settings import Setting
from modebook.words.e120 import Category
from modebook.words.records import Standing

Chromaticity = Share


class RdmId(Part):
    """How the fixture names itself over RDM."""

    manufacturer: Hex16
    """The ESTA manufacturer id, such as 0x7FF1."""
    model: Hex16
    """The maker's number for this model."""


class Source(Part):
    """Where facts come from: a manual, a page, a letter, a measurement."""

    key: Key
    """The name that every `source` in this document refers to."""
    title: Text
    """As printed on it."""
    revision: Text | None = None
    """Its revision or edition, as printed."""
    date: Date | None = None
    """When it was published."""
    firmware: Text | None = None
    """The firmware that it describes."""
    pages: Text | None = None
    """The pages that were read."""
    language: Text | None = None
    """The language that it is written in."""
    note: Text | None = None


class WheelColor(Part):
    """A color: by chromaticity, by filter name, or both."""

    x: Chromaticity | None = None
    """CIE 1931 x."""
    y: Chromaticity | None = None
    """CIE 1931 y."""
    filter: Text | None = None
    """The name of the filter."""

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
    """The name that ranges and `between` refer to; no other position of the wheel has it."""
    label: Text | None = None
    color: WheelColor | None = None
    """The color that the light takes."""
    between: Annotated[list[Key], Field(min_length=2, max_length=2)] | None = None
    """The keys of the two positions that share the beam."""


class Wheel(Part):
    """A wheel and its positions in order."""

    key: Key
    """A name of its own."""
    label: Text | None = None
    positions: list[WheelPosition]
    """Its positions, in order."""
    source: Key | None = None
    """The key of the source that says so."""

    @model_validator(mode="after")
    def _keys_once(self) -> Self:
        each_once("positions", (position.key for position in self.positions))
        return self


class Emitter(Part):
    """A color source inside the fixture."""

    key: Key
    """A name of its own."""
    label: Text | None = None
    x: Chromaticity | None = None
    """CIE 1931 x."""
    y: Chromaticity | None = None
    """CIE 1931 y."""
    peak_nm: Annotated[float, Field(gt=0, lt=5000)] | None = None
    """The wavelength at which it is strongest, in nanometers."""
    source: Key | None = None
    """The key of the source that says so."""


class Promotion(Part):
    """A rise in standing: who vouches for it, and when."""

    to: Standing
    """The standing that it was given."""
    by: Text
    """Who vouches for it."""
    date: Date
    note: Text | None = None


class Fixture(Part):
    """A fixture document. Its path, fixtures/<maker>/<model>.json, is its identity."""

    schema_: Annotated[str | None, Field(alias="$schema")] = None
    """The schema that an editor checks this file with."""
    maker: Text
    """As the maker writes it; the folder is named after it."""
    model: Text
    """As the maker writes it; the file is named after it."""
    category: Category
    """The E1.20 product category, in words."""
    standing: Standing
    """How far the record can be trusted."""
    rdm: RdmId | None = None
    """How it names itself over RDM."""
    about: Text | None = None
    """What a reader should know about it first."""
    sources: list[Source] = Field(default_factory=list)
    """Where the facts come from."""
    settings: list[Setting] = Field(default_factory=list)
    """What it remembers about itself."""
    wheels: list[Wheel] = Field(default_factory=list)
    """Its wheels, with what they carry."""
    emitters: list[Emitter] = Field(default_factory=list)
    """Its color sources."""
    modes: Annotated[list[Mode], Field(min_length=1)]
    """Its slot layouts."""
    doubts: list[Doubt] = Field(default_factory=list)
    """What may be read wrong."""
    accepted: list[Acceptance] = Field(default_factory=list)
    """Findings that someone decided to live with."""
    promotions: list[Promotion] = Field(default_factory=list)
    """How it came to its standing."""

    @model_validator(mode="after")
    def _keys_once(self) -> Self:
        self.each_key_once()
        return self

    def each_key_once(self) -> None:
        """Raises ValueError where two of a kind have one key."""
        each_once("sources", (source.key for source in self.sources))
        each_once("settings", (setting.key for setting in self.settings))
        each_once("wheels", (wheel.key for wheel in self.wheels))
        each_once("emitters", (emitter.key for emitter in self.emitters))

    @property
    def id(self) -> str:
        """Its identity: the path below fixtures/ without its ending, such as ``arden/lumo-40``."""
        return f"{slug(self.maker)}/{slug(self.model)}"

    @property
    def open_doubts(self) -> list[Doubt]:
        """The doubts that nobody has settled."""
        return [doubt for doubt in self.doubts if doubt.settled is None]
