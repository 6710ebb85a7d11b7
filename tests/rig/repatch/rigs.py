"""Small invented rigs for the tests of a repatch: two fixtures, a patch as CSV, wishes as in rig.json."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from modebook.rig.examples import rig_of
from modebook.rig.reading import RigReading

PAN = {"from": -270, "to": 270, "unit": "deg"}


def pan(*slots: int) -> dict[str, object]:
    """A pan over 540 degrees: in one slot it moves in steps of 2.1 degrees."""
    return {"parameter": "pan", "slots": list(slots), "span": PAN}


def dimmer(*slots: int) -> dict[str, object]:
    """A dimmer."""
    return {"parameter": "dimmer", "slots": list(slots)}


RESPONSE = {
    "key": "smoothing",
    "setting": "smoothing",
    "choices": [{"key": "off", "length": {"packets": 0}}, {"key": "on", "length": {"packets": 4}}],
}
CONTROL = {
    "parameter": "control",
    "slots": [5],
    "ranges": [
        {"from": 0, "to": 127, "meaning": "Response: fast", "sets": {"smoothing": "off"}},
        {"from": 128, "to": 255, "meaning": "Response: smooth", "sets": {"smoothing": "on"}},
    ],
}

YOKE: dict[str, object] = {
    "model": "Yoke",
    "modes": [
        {"name": "Basic", "number": 1, "parameters": [pan(1), dimmer(2, 3)]},
        {"name": "Fine", "number": 2, "parameters": [pan(1, 2), dimmer(3, 4)]},
        {"name": "Bare", "number": 3, "parameters": [pan(1, 2)]},
    ],
}
"""Basic, 3 slots, has a coarse pan; Fine, 4 slots, has not; Bare has no dimmer."""

WASH: dict[str, object] = {
    "model": "Wash",
    "settings": [RESPONSE | {"ways": [{"by": "menu", "path": ["Response"]}]}],
    "modes": [
        {"name": "Short", "number": 1, "parameters": [dimmer(1, 2)]},
        {
            "name": "Long",
            "number": 2,
            "parameters": [dimmer(1, 2), {"parameter": "red", "slots": [3, 4]}, CONTROL],
        },
    ],
}
"""Short, 2 slots, lets its smoothing be changed at the menu only; Long, 5 slots, by a slot."""


def rig(
    patch: str, *fixtures: Mapping[str, Any], repatch: Mapping[str, Any] | None = None, **more: Any
) -> RigReading:
    """A rig read from the text of its patch."""
    told: dict[str, Any] = dict(more)
    if repatch is not None:
        told["repatch"] = dict(repatch)
    return rig_of({"fixtures": list(fixtures or (YOKE, WASH)), "patch": patch, "rig": told})
