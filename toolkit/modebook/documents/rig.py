"""A rig: the units of one job, its universes' links, its camera, and its own word on thresholds."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, WithJsonSchema, field_validator

from modebook.documents.base import Key, Part, Text
from modebook.documents.policy import Override

YesNoUnknown = Literal["yes", "no", "unknown"]
Reach = Literal["floor", "ladder", "lift", "not at all"]

UniverseKey = Annotated[str, Field(pattern=r"^([1-9][0-9]{0,4}|other)$")]
"""A universe's number, or `other` for all that are not named."""


_OVERRIDES = {
    "type": "object",
    "additionalProperties": {
        "anyOf": [
            {"type": "number"},
            {
                "type": "object",
                "properties": {
                    "value": {"type": "number"},
                    "severity": {"enum": ["error", "warning", "info"]},
                    "source": {"type": "string"},
                },
                "additionalProperties": False,
            },
        ]
    },
}


class Camera(Part):
    """The camera of the job."""

    fps: Annotated[float, Field(gt=0, le=100_000)]
    shutter_deg: Annotated[float, Field(gt=0, le=360)] = 180.0


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
    loss: Annotated[float, Field(ge=0, lt=1)] | Loss | None = None
    """Expected losses: a share, or a share with its bursts."""
    rdm: Annotated[
        YesNoUnknown, WithJsonSchema({"enum": ["yes", "no", "unknown", True, False, None], "default": "unknown"})
    ] = "unknown"
    """Whether RDM passes. `true` and `false` are read as yes and no."""
    about: Text | None = None

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

    menu: dict[Text, Text] = {}
    """Menu states of this very unit."""
    serial: Text | None = None
    uid: Annotated[str, Field(pattern=r"^[0-9A-Fa-f]{4}:[0-9A-Fa-f]{8}$")] | None = None
    """RDM UID as printed by E1.20: 7FF1:00000A01."""
    firmware: Text | None = None
    reach: Reach | None = None
    settings: dict[Key, Key] = {}
    """Choices that this unit is known to be set to, by setting."""
    note: Text | None = None


class Planted(Part):
    """A fault put into a demonstration rig on purpose."""

    rule: Key
    unit: Text
    about: Text


class Rig(Part):
    """rig.json: what holds for the whole job; the units stand in patch.csv beside it."""

    schema_: Annotated[str | None, Field(alias="$schema")] = None
    name: Text
    about: Text | None = None
    refresh_hz: Annotated[float, Field(gt=0, le=100_000)] = 30.0
    """Packets a second from the desk."""
    camera: Camera | None = None
    links: dict[UniverseKey, Link] = {}
    policy: Annotated[dict[Key, Override], WithJsonSchema(_OVERRIDES)] = {}
    """Thresholds that this job sees otherwise, by key."""
    units: dict[Text, UnitNote] = {}
    """More about single units, by unit number as written in the patch."""
    planted: list[Planted] = []
    """For a demonstration: the faults put in on purpose."""

    @field_validator("policy", mode="before")
    @classmethod
    def _bare_figure(cls, value: Any) -> Any:
        """A bare number stands for the value alone."""
        if isinstance(value, dict):
            return {
                key: {"value": float(item)}
                if isinstance(item, int | float) and not isinstance(item, bool)
                else item
                for key, item in value.items()
            }
        return value

    def link(self, universe: int) -> Link:
        """The link of a universe: its own, else `other`, else one of which nothing is known."""
        return self.links.get(str(universe)) or self.links.get("other") or Link()
