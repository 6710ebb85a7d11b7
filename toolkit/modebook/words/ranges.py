"""Words about a range of values: what it does, what it endangers, and how long what it sets is kept."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Does = Literal[
    "nothing",
    "open",
    "closed",
    "stop",
    "index",
    "rotate",
    "bounce",
    "random",
    "runs",
    "as-menu",
    "unchanged",
]

DOES: Mapping[str, str] = MappingProxyType(
    {
        "nothing": "No function, or reserved by the maker.",
        "open": "Full, unobstructed light: an open shutter, no gobo, no color.",
        "closed": "No light passes.",
        "stop": "A movement stands still.",
        "index": "A wheel or blade goes to a set angle and stays there.",
        "rotate": "Something turns in one direction without end.",
        "bounce": "Something swings to and fro between two ends.",
        "random": "Values, times or choices vary without a pattern that a desk could follow.",
        "runs": "An effect that moves by itself: what it looks like at a given moment cannot be planned.",
        "as-menu": "The choice made in the fixture's menu rules.",
        "unchanged": "The last choice stays as it was.",
    }
)

Hazard = Literal[
    "reset",
    "lamp off",
    "lamp on",
    "calibration",
    "address change",
    "movement",
    "blackout",
    "laser",
    "uv",
    "flame",
    "hoist",
]

HAZARDS: Mapping[str, str] = MappingProxyType(
    {
        "reset": (
            "The fixture drives all motors to their ends and its light may go out: keep people and cables "
            "clear of its travel, and never send this during a take."
        ),
        "lamp off": "The lamp goes out, and a discharge lamp may take minutes before it strikes again.",
        "lamp on": (
            "The lamp strikes and the fixture gets bright and hot: nobody may be looking into it, "
            "touching it or working inside it."
        ),
        "calibration": (
            "The fixture moves to find its ends or measures its own light, and what it stores may change "
            "how it behaves afterward: keep people clear and write down the state before."
        ),
        "address change": (
            "The fixture then listens at another start address or in another mode, and may be out of "
            "reach until someone sets it by hand: work at height belongs to qualified people."
        ),
        "movement": (
            "The fixture or a part of it moves, perhaps fast and without warning: keep people, hands and "
            "cables clear of its travel."
        ),
        "blackout": (
            "The light goes out at once: make sure that nobody depends on it to see where they step."
        ),
        "laser": (
            "Laser light can blind at once: only qualified people run it, within local codes and the "
            "maker's safety measures, with a stop that does not depend on DMX512."
        ),
        "uv": (
            "Ultraviolet light can harm eyes and skin without looking bright: keep to the maker's "
            "distances and exposure times, and to local codes."
        ),
        "flame": (
            "Flames, sparks and pyrotechnics can burn and kill: E1.11 says that DMX512 is not to control "
            "them, and only qualified people with permits run them, by the means that local codes "
            "require."
        ),
        "hoist": (
            "A moving load can crush and fall: E1.11 says that DMX512 is not to control hoists or motors "
            "that carry one, and rigging belongs to qualified people and local codes."
        ),
    }
)
"""One caution a hazard, in a sentence that output may print as it stands."""

Kept = Literal["while sent", "until power off", "stored"]

KEPT: Mapping[str, str] = MappingProxyType(
    {
        "while sent": "The choice holds only as long as the slot has a value of this range.",
        "until power off": "The choice stays after the slot has changed, until the fixture is switched off.",
        "stored": "The choice stays, also after the fixture has been switched off and on.",
    }
)
