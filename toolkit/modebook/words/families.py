"""The six families of parameters, as ANSI E1.20 groups its slot labels."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Family = Literal["intensity", "movement", "color", "image", "beam", "control"]

FAMILIES: tuple[Family, ...] = ("intensity", "movement", "color", "image", "beam", "control")
"""In the order of the standard's label ids: the high byte 0x00 is intensity, 0x05 control."""

FAMILY_MEANINGS: Mapping[str, str] = MappingProxyType(
    {
        "intensity": "How much light: dimmers and masters.",
        "movement": "Where the light points, and where a motor carries it.",
        "color": "What color the light has: emitters, filters, wheels, hue, chromaticity, color temperature.",
        "image": "What the beam carries: gobos, prisms, animation wheels, pictures.",
        "beam": "The beam's shape and edge: zoom, focus, iris, frost, strobe, framing, barn doors.",
        "control": "The fixture itself: modes, macros, speeds, lamp, power, fans, atmosphere.",
    }
)
