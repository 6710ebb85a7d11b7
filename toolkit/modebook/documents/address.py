"""Universes and addresses: the arithmetic of where a unit's slots sit, within E1.31's and E1.11's limits."""

from __future__ import annotations

from dataclasses import dataclass

SLOTS_PER_UNIVERSE = 512
"""Data slots of a DMX512 packet (ANSI E1.11)."""
LAST_UNIVERSE = 63_999
"""The highest universe of ANSI E1.31, which numbers them from 1."""


class AddressError(ValueError):
    """An address or universe outside what the standards allow."""


@dataclass(frozen=True, slots=True, order=True)
class Address:
    """A slot of a universe: universes 1 to 63999, addresses 1 to 512."""

    universe: int
    address: int

    def __post_init__(self) -> None:
        if not 1 <= self.universe <= LAST_UNIVERSE:
            raise AddressError(f"universe {self.universe} is not within 1 to {LAST_UNIVERSE}")
        if not 1 <= self.address <= SLOTS_PER_UNIVERSE:
            raise AddressError(f"address {self.address} is not within 1 to {SLOTS_PER_UNIVERSE}")

    @classmethod
    def from_absolute(cls, absolute: int) -> Address:
        """The address counted on over all universes from 1: 513 is universe 2, address 1."""
        if absolute < 1:
            raise AddressError(f"an absolute address counts from 1, not {absolute}")
        universe, slot = divmod(absolute - 1, SLOTS_PER_UNIVERSE)
        return cls(universe + 1, slot + 1)

    @property
    def absolute(self) -> int:
        """The address counted on over all universes from 1."""
        return (self.universe - 1) * SLOTS_PER_UNIVERSE + self.address

    def slot(self, number: int) -> Address:
        """Where a mode's slot `number` (from 1) sits with slot 1 here; past 512 comes the next universe."""
        return Address.from_absolute(self.absolute + number - 1)

    def __str__(self) -> str:
        return f"{self.universe}/{self.address}"
