"""The column titles of a list read off the fixtures, and which of them are meant."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Literal

from modebook.rig.titles import TITLES
from modebook.shelf.table import fold_title

FoundColumn = Literal[
    "unit",
    "uid",
    "maker",
    "manufacturer id",
    "fixture",
    "model id",
    "mode",
    "personality",
    "footprint",
    "universe",
    "address",
    "response",
    "curve",
    "modulation",
    "firmware",
    "position",
    "part",
    "serial",
]

FOUND_TITLES: Mapping[FoundColumn, tuple[str, ...]] = MappingProxyType(
    {
        "unit": (*TITLES["unit"], "device label", "label", "fixture label"),
        "uid": ("uid", "rdm uid", "device uid", "rdm id"),
        "maker": ("maker", "manufacturer", "manufacturer label", "made by"),
        "manufacturer id": ("manufacturer id", "maker id", "rdm manufacturer id"),
        "fixture": (*TITLES["fixture"], "device model", "model description", "device model description"),
        "model id": ("model id", "device model id", "rdm model id", "rdm model"),
        "mode": (
            "mode",
            "mode name",
            "dmx mode",
            "fixture mode",
            "personality name",
            "personality description",
        ),
        "personality": (
            "personality",
            "personality number",
            "personality no",
            "dmx personality",
            "current personality",
            "mode number",
            "mode no",
        ),
        "footprint": ("footprint", "dmx footprint", "dmx512 footprint", "slots", "slot count"),
        "universe": TITLES["universe"],
        "address": (*TITLES["address"], "dmx512 start address", "current address"),
        "response": (
            "response",
            "response time",
            "output response time",
            "response setting",
            "smoothing",
            "dimming response",
        ),
        "curve": ("curve", "dimmer curve", "dimming curve", "curve setting"),
        "modulation": ("modulation frequency", "modulation", "pwm frequency", "pwm"),
        "firmware": (
            "firmware",
            "firmware version",
            "software version",
            "software version label",
            "software",
            "version",
        ),
        "position": TITLES["position"],
        "part": TITLES["part"],
        "serial": TITLES["serial"],
    }
)
"""For each column the titles that mean it, folded, the plainest first. RDM's own words are E1.20's."""

FOUND_KNOWN: frozenset[str] = frozenset(title for titles in FOUND_TITLES.values() for title in titles)

FOUND_SUCH_AS = "unit or UID, model id, personality, universe, start address, firmware"


def found_columns(titles: Sequence[str]) -> dict[FoundColumn, int]:
    """Which title means which column; of several for one, the plainest is taken."""
    folded = [fold_title(title) for title in titles]
    at: dict[FoundColumn, int] = {}
    for column, names in FOUND_TITLES.items():
        place = next((folded.index(name) for name in names if name in folded), None)
        if place is not None:
            at[column] = place
    return at
