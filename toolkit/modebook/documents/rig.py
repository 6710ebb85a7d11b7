"""A rig: the units of one job, its universes' links, its camera, and its own word on thresholds."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, WithJsonSchema, field_validator

from modebook.documents.base import TOLD_APART, Key, Part, Text
from modebook.documents.policy import Override

YesNoUnknown = Literal["yes", "no", "unknown"]
Reach = Literal["floor", "ladder", "lift", "not at all"]

UniverseKey = Annotated[str, Field(pattern=r"^([1-9][0-9]{0,3}|[1-5][0-9]{4}|6[0-3][0-9]{3}|other)$")]
"""A universe's number, 1 to 63999 (ANSI E1.31), or `other` for all that are not named."""


_OVERRIDES = {
    "type": "object",
    "propertyNames": {"pattern": r"^[a-z0-9]+(-[a-z0-9]+)*$", "maxLength": 80},
    "additionalProperties": {
        "anyOf": [
            {"type": "number"},
            {
                "type": "object",
                "properties": {
                    "value": {"type": ["number", "null"]},
                    "severity": {"enum": ["error", "warning", "info", None]},
                    "source": {"type": ["string", "null"], "minLength": 1, "maxLength": 20_000},
                },
                "additionalProperties": False,
            },
        ]
    },
}


_RDM = {"enum": ["yes", "no", "unknown", True, False, None], "default": "unknown"}


class Camera(Part):
    """The camera of the job."""

    fps: Annotated[float, Field(gt=0, le=100_000)]
    """Frames a second."""
    shutter_deg: Annotated[float, Field(gt=0, le=360)] = 180.0
    """The shutter angle, in degrees."""


class Loss(Part):
    """Packets that do not arrive."""

    rate: Annotated[float, Field(ge=0, lt=1)]
    """The share of packets lost."""
    burst_packets: Annotated[float, Field(ge=1)] | None = None
    """The mean number of packets lost in a row, where they are lost in bursts."""
    kind: Literal["missing", "repeated"] = "missing"
    """Whether a lost packet is missing, or the link repeats the last one in its place."""


class Link(Part):
    """The road from desk to fixture in one universe."""

    gateway_hz: Annotated[float, Field(gt=0)] | None = None
    """Output rate of the gateway or radio, where it is not the desk's."""
    delay_s: Annotated[float, Field(ge=0)] = 0.0
    """How much later it arrives, in seconds."""
    loss: Annotated[Annotated[float, Field(ge=0, lt=1)] | Loss | None, TOLD_APART] = None
    """Expected losses: a share, or a share with its bursts."""
    rdm: Annotated[
        YesNoUnknown,
        WithJsonSchema({"enum": ["yes", "no", "unknown", True, False, None], "default": "unknown"}),
    ] = "unknown"
    """Whether RDM passes. `true` and `false` are read as yes and no."""
    about: Text | None = None
    """What it is and where."""

    @field_validator("rdm", mode="before")
    @classmethod
    def _yes_or_no(cls, value: Any) -> Any:
        if value is True:
            return "yes"
        if value is False:
            return "no"
        return "unknown" if value is None else value


class UnitNote(Part):
    """What is known of one unit beyond its row in the patch."""

    menu: dict[Text, Text] = Field(default_factory=dict)
    """Menu states of this very unit."""
    serial: Text | None = None
    """Its serial number."""
    uid: Annotated[str, Field(pattern=r"^[0-9A-Fa-f]{4}:[0-9A-Fa-f]{8}$")] | None = None
    """RDM UID as printed by E1.20: 7FF1:00000A01."""
    firmware: Text | None = None
    """The firmware that it runs."""
    reach: Reach | None = None
    """How a person gets to it."""
    settings: dict[Key, Key] = Field(default_factory=dict)
    """Choices that this unit is known to be set to, by setting."""
    note: Text | None = None


RepatchDemand = Literal["no-coarse", "remote-smoothing", "footprint-kept"]


class Repatch(Part):
    """What a new patch for this job must do, and what it must leave alone."""

    demands: list[RepatchDemand] = ["no-coarse", "remote-smoothing", "footprint-kept"]
    """What every unit's mode should give: no coarse findings, smoothing without a hand on the fixture, the
    footprint that it has now."""
    pinned: list[Text] = Field(default_factory=list)
    """Unit numbers that keep their addresses; their mode may change."""
    reserved_universes: list[Annotated[int, Field(ge=1, le=63_999)]] = Field(default_factory=list)
    """Universes into which nothing may be moved; what is there may stay."""
    more_universes: Annotated[int, Field(ge=0, le=64)] = 0
    """How many universes may be opened beside those in use."""
    spare_slots: Annotated[int, Field(ge=0, le=512)] = 0
    """Free slots in a row to be left in every universe in use, for a spare."""
    together: list[Text] = Field(default_factory=list)
    """Groups of the patch that must each be in one universe."""


class Planted(Part):
    """A fault put into a demonstration rig on purpose."""

    rule: Key
    """The rule that must find it."""
    unit: Text
    """The unit number, as written in the patch."""
    about: Text
    """What was planted."""


class Rig(Part):
    """rig.json: what holds for the whole job; the units stand in patch.csv beside it."""

    schema_: Annotated[str | None, Field(alias="$schema")] = None
    """The schema that an editor checks this file with."""
    name: Text
    """The name of the job."""
    about: Text | None = None
    """What a reader should know about it first."""
    refresh_hz: Annotated[float, Field(gt=0, le=100_000)] = 30.0
    """Packets a second from the desk."""
    camera: Camera | None = None
    """The camera that sees it."""
    links: dict[UniverseKey, Link] = Field(default_factory=dict)
    """The road from desk to fixtures, by universe."""
    policy: Annotated[dict[Key, Override], WithJsonSchema(_OVERRIDES)] = {}
    """Thresholds that this job sees otherwise, by key."""
    units: dict[Text, UnitNote] = Field(default_factory=dict)
    """More about single units, by unit number as written in the patch."""
    repatch: Repatch | None = None
    """What a new patch must do and leave alone, where it is not the house's own: see Repatch."""
    planted: list[Planted] = Field(default_factory=list)
    """For a demonstration: the faults put in on purpose."""

    @field_validator("policy", mode="before")
    @classmethod
    def _bare_figure(cls, value: Any) -> Any:
        """A bare number stands for the value alone."""
        if isinstance(value, dict):
            return {
                key: {"value": item} if isinstance(item, int | float) and not isinstance(item, bool) else item
                for key, item in value.items()
            }
        return value

    def link(self, universe: int) -> Link:
        """The link of a universe: its own, else `other`, else one of which nothing is known."""
        return self.links.get(str(universe)) or self.links.get("other") or Link()
