"""What the vocabulary records about one parameter, and the short form that the family files write it in."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.words.e120 import ST_PRIMARY
from modebook.words.families import Family
from modebook.words.quantities import Quantity
from modebook.words.units import NATURAL_UNITS, UnitSymbol


@dataclass(frozen=True, slots=True)
class Parameter:
    """What one or more slots of a fixture control.

    `slot_label` is the E1.20 slot label id, 0xFFFF (SD_UNDEFINED) where the standard has none. `unit` is the
    natural unit; a span may use another one of the same quantity. `continuous` is false where numbers
    between two choices mean nothing of their own. `slot_type` is the E1.20 type of its first byte:
    a secondary type for what accompanies another parameter, such as the speed of pan.
    """

    key: str
    name: str
    family: Family
    slot_label: int
    quantity: Quantity
    unit: UnitSymbol
    continuous: bool
    about: str
    slot_type: int = ST_PRIMARY


@dataclass(frozen=True, slots=True)
class InFamily:
    """Makes the parameters of one family, so that its file says of each only what is its own."""

    family: Family

    def scale(
        self,
        key: str,
        name: str,
        slot_label: int,
        quantity: Quantity,
        about: str,
        *,
        unit: UnitSymbol | None = None,
        slot_type: int = ST_PRIMARY,
    ) -> Parameter:
        """A continuous parameter, in its quantity's natural unit unless `unit` says otherwise."""
        natural = unit or NATURAL_UNITS[quantity]
        return Parameter(key, name, self.family, slot_label, quantity, natural, True, about, slot_type)

    def selector(
        self, key: str, name: str, slot_label: int, about: str, *, slot_type: int = ST_PRIMARY
    ) -> Parameter:
        """A parameter whose values choose among named ranges."""
        unit = NATURAL_UNITS["selector"]
        return Parameter(key, name, self.family, slot_label, "selector", unit, False, about, slot_type)
