"""What a fixture remembers about itself: settings, their choices, and the ways to change them."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from modebook.documents.base import TOLD_APART, Date, Hex16, Key, Part, Share, Text, each_once
from modebook.words.families import Family
from modebook.words.settings import Method, SettingKind


class Duration(Part):
    """How far smoothing looks back: in packets or in seconds, never both."""

    packets: Annotated[float, Field(ge=0, le=100_000)] | None = None
    """DMX512 packets; 0 is off."""
    seconds: Annotated[float, Field(ge=0, le=86_400)] | None = None
    """Seconds; 0 is off."""

    @model_validator(mode="after")
    def _one_unit(self) -> Self:
        if (self.packets is None) == (self.seconds is None):
            raise ValueError("give either packets or seconds")
        return self


class Length(Part):
    """A smoothing length: one for both directions, or one for rising and one for falling light."""

    packets: Annotated[float, Field(ge=0, le=100_000)] | None = None
    """DMX512 packets; 0 is off."""
    seconds: Annotated[float, Field(ge=0, le=86_400)] | None = None
    """Seconds; 0 is off. For the method `lag` see `measures`."""
    rise: Duration | None = None
    """The length while the level rises, where it differs."""
    fall: Duration | None = None
    """The length while the level falls, where it differs."""
    measures: Literal["whole", "time constant", "10-90"] | None = None
    """What the figure counts: the whole change, a lag's time constant, or its 10 to 90 % time."""

    @model_validator(mode="after")
    def _one_way_of_saying_it(self) -> Self:
        plain = (self.packets is not None) + (self.seconds is not None)
        split = (self.rise is not None, self.fall is not None)
        if plain > 1 or (plain and any(split)) or (not plain and split != (True, True)):
            raise ValueError("give packets, or seconds, or both rise and fall")
        return self

    @property
    def durations(self) -> tuple[Duration, ...]:
        """The length as one duration, or as rise and fall."""
        if self.rise is not None and self.fall is not None:
            return (self.rise, self.fall)
        return (Duration(packets=self.packets, seconds=self.seconds),)

    def longest_packets(self, refresh_hz: float) -> float:
        """The longer of its directions in packets; seconds are counted at `refresh_hz` packets a second."""
        return max(
            d.packets if d.packets is not None else (d.seconds or 0.0) * refresh_hz for d in self.durations
        )

    @property
    def is_off(self) -> bool:
        """Whether it fills in nothing at all."""
        return all(not d.packets and not d.seconds for d in self.durations)


class Measured(Part):
    """A length found by measuring a real fixture; it stands beside the maker's words, never over them."""

    length: Length
    """The fitted length."""
    method: Method | None = None
    """The way of filling in that fits best."""
    interval_packets: Annotated[list[float], Field(min_length=2, max_length=2)] | None = None
    """The 95 % interval of the length, in packets."""
    delay_s: float | None = None
    """What the fixture waits before it begins to respond, in seconds."""
    refresh_hz: Annotated[float, Field(gt=0)] | None = None
    """Packets a second during the measurement."""
    camera_fps: Annotated[float, Field(gt=0)] | None = None
    """Frames a second of the camera, where one was used."""
    date: Date
    by: Text
    how: Text | None = None
    """The set-up: what was sent, what was recorded."""
    file_sha256: Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")] | None = None
    """The hash of the clip or trace that the figure comes from."""


class Choice(Part):
    """One of the states that a setting can have."""

    key: Key
    """The name that ways, ranges and rigs refer to."""
    label: Text | None = None
    """As printed by the maker."""
    length: Length | None = None
    """How long it smooths. Absent means that nobody has said: unknown, never zero."""
    method: Method | None = None
    """How it fills in, where known."""
    rate_percent_per_s: Annotated[float, Field(gt=0)] | None = None
    """For the method `limit`: the greatest change a second, in percent of full."""
    curve: Literal["linear", "square", "s", "inverse-square"] | None = None
    """For a dimmer curve: its shape."""
    points: list[Annotated[list[Share], Field(min_length=2, max_length=2)]] | None = None
    """For a dimmer curve given as a table: pairs of level and light, both 0 to 1."""
    frequency_hz: Annotated[float, Field(gt=0)] | None = None
    """For a modulation frequency: cycles a second."""
    factory: bool = False
    """Whether the fixture leaves its maker with this choice. The manual must say so."""
    given: Text | None = None
    """A menu state that this choice depends on."""
    source: Key | None = None
    """The key of the source that says so."""
    measured: Measured | None = None
    """What a real fixture did, beside what the maker prints."""
    note: Text | None = None


class Way(Part):
    """A road to a setting other than a slot; ways by slot are derived from `sets` in the modes' ranges."""

    by: Literal["rdm", "menu", "app", "page"]
    """Over RDM, at the fixture's menu, by an app, or on the fixture's own network page."""
    pid: Hex16 | None = None
    """RDM: the PID that sets it."""
    size: Annotated[int, Field(ge=1, le=231)] | None = None
    """RDM: how many bytes of parameter data."""
    values: dict[Key, Annotated[int, Field(ge=0)]] | None = None
    """RDM: the number to send for each choice; a choice that is not listed cannot be reached this way."""
    locked: Annotated[bool | Text | None, TOLD_APART] = None
    """Whether a lock must be opened first, or how it is opened."""
    path: list[Text] | None = None
    """Menu, app or page: the entries to follow, in order."""
    choices: list[Key] | None = None
    """Menu, app or page: the choices that it reaches, where not all."""
    firmware: Text | None = None
    """The firmware from which this way exists."""
    kept: Literal["until power off", "stored"] | None = None
    """How long the fixture remembers what was set this way."""
    source: Key | None = None
    """The key of the source that says so."""
    note: Text | None = None

    @model_validator(mode="after")
    def _fits_its_kind(self) -> Self:
        if self.by == "rdm":
            if self.path is not None or self.choices is not None:
                raise ValueError("a way over RDM has pid, size and values, no path or choices")
        elif self.pid is not None or self.size is not None or self.values is not None:
            raise ValueError(f"a way by {self.by} has a path, no pid, size or values")
        return self


class Setting(Part):
    """A setting of the fixture; `none` says, with a source, that the fixture has no such thing."""

    key: Key
    """The name that `sets`, `when` and `needs` refer to."""
    setting: SettingKind
    """What kind of setting it is."""
    label: Text | None = None
    acts_on: list[Family] = Field(default_factory=list)
    """The families of parameters that it acts on; empty means that the source does not say."""
    none: bool = False
    """True: the source says that the fixture has nothing of the kind."""
    choices: list[Choice] = Field(default_factory=list)
    """The states it can have, in the order of the manual."""
    ways: list[Way] = Field(default_factory=list)
    """How it is changed, other than by a slot."""
    source: Key | None = None
    """The key of the source that says so."""
    note: Text | None = None

    @model_validator(mode="after")
    def _none_has_nothing(self) -> Self:
        if self.none and (self.choices or self.ways):
            raise ValueError("a setting that the fixture does not have (none) has no choices or ways")
        each_once("choices", (choice.key for choice in self.choices))
        return self

    @property
    def factory(self) -> Choice | None:
        """The choice a new fixture has, where the maker says so."""
        return next((choice for choice in self.choices if choice.factory), None)
