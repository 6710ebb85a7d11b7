"""Which parameters and product categories are a hazard in themselves, whatever a document says of ranges."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from modebook.words.ranges import Hazard

PARAMETER_HAZARDS: Mapping[str, Hazard] = MappingProxyType(
    {
        "laser-output": "laser",
        "laser-pattern": "laser",
        "uv": "uv",
        "uv-filter": "uv",
        "flame": "flame",
        "pyrotechnics": "flame",
        "hoist-position": "hoist",
        "hoist-speed": "hoist",
        # What a motor of no stated purpose carries is unknown, so it counts as a load until someone says.
        "motor-position": "hoist",
        "motor-speed": "hoist",
        "track-position": "movement",
        "track-speed": "movement",
        "reset": "reset",
    }
)
"""By parameter key. Pan, tilt and lenses move too, as a fixture's daily work: its manual's cautions hold."""

CATEGORY_HAZARDS: Mapping[str, Hazard] = MappingProxyType(
    {
        "pyrotechnic": "flame",
        "scenic drive": "hoist",
    }
)

NOT_FOR_DMX: frozenset[Hazard] = frozenset({"flame", "hoist"})
"""Hazards that ANSI E1.11 says DMX512 is not to control: pyrotechnics, flames, hoists, motors."""
