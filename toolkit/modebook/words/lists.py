"""Every list of words under a title, so that a page of words can be printed from one place."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from modebook.words.e120 import CATEGORIES
from modebook.words.families import FAMILY_MEANINGS
from modebook.words.intents import INTENTS
from modebook.words.quantities import QUANTITIES
from modebook.words.ranges import DOES, HAZARDS, KEPT
from modebook.words.records import STANDINGS
from modebook.words.settings import METHODS, SETTING_KINDS, WAYS
from modebook.words.units import UNITS

WORD_LISTS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "Standings of a record": STANDINGS,
        "Product categories": CATEGORIES,
        "Families of parameters": FAMILY_MEANINGS,
        "Quantities": QUANTITIES,
        "Units": MappingProxyType({symbol: unit.name for symbol, unit in UNITS.items()}),
        "What a range does": DOES,
        "Hazards and their cautions": HAZARDS,
        "How long a choice is kept": KEPT,
        "Kinds of settings": SETTING_KINDS,
        "Methods of smoothing": METHODS,
        "Ways to change a setting": WAYS,
        "Intents of a cue": INTENTS,
    }
)
"""Title, then word and one-line meaning. Parameters are not here: PARAMETERS says more of each."""
