"""What a parameter's value measures: a small closed list, each quantity with its natural unit."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Quantity = Literal[
    "level",
    "angle",
    "position",
    "distance",
    "chromaticity",
    "color-temperature",
    "tint",
    "hue",
    "saturation",
    "rate",
    "rotation",
    "speed",
    "velocity",
    "time",
    "illuminance",
    "luminance",
    "selector",
]

QUANTITIES: Mapping[str, str] = MappingProxyType(
    {
        "level": "A share of full output or full effect.",
        "angle": "A direction or an opening, in degrees.",
        "position": "A share of a mechanical travel, where the travel itself has no printed length.",
        "distance": "A length in space.",
        "chromaticity": "One coordinate of a CIE diagram; it has no dimension.",
        "color-temperature": "Correlated color temperature of a white.",
        "tint": "Distance of a white from neutral, toward green or magenta.",
        "hue": "Place on the color circle, in degrees.",
        "saturation": "Distance from white toward the pure color, as a share.",
        "rate": "How often something repeats: flashes, steps, a modulation.",
        "rotation": "How fast something turns without end; the sign is the direction.",
        "speed": "How fast a change is made, as a share of the fastest.",
        "velocity": "How fast something travels along a line.",
        "time": "How long a change or a flash takes.",
        "illuminance": "Light that falls on a surface.",
        "luminance": "Light that a surface gives toward the eye or the lens.",
        "selector": "A choice among named ranges: numbers between two choices mean nothing of their own.",
    }
)
