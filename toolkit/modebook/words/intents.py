"""What a cue must look like: the intents that a shot can name."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Intent = Literal["smooth", "unseen", "snap", "pixels", "match", "any"]

INTENTS: Mapping[str, str] = MappingProxyType(
    {
        "smooth": "The change is seen, and must run without steps.",
        "unseen": "The change must not be noticed on camera at all.",
        "snap": "The change is at once, with no ramp after it.",
        "pixels": "Cells follow a picture or a chase sharply, each packet as it comes.",
        "match": "Units of different fixtures must change together and stay alike on the way.",
        "any": "It does not matter how the change looks.",
    }
)
