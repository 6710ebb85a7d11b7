"""All parameters of the vocabulary, by key; each family has a file of its own."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from modebook.words.beam import BEAM
from modebook.words.color import COLOR
from modebook.words.control import CONTROL
from modebook.words.image import IMAGE
from modebook.words.intensity import INTENSITY
from modebook.words.movement import MOVEMENT
from modebook.words.parameter import Parameter

__all__ = ["PARAMETERS", "Parameter"]

PARAMETERS: Mapping[str, Parameter] = MappingProxyType(
    {
        parameter.key: parameter
        for family in (INTENSITY, MOVEMENT, COLOR, IMAGE, BEAM, CONTROL)
        for parameter in family
    }
)
"""Every parameter, by key, family by family in E1.20's order."""
