"""A repatch plan: who changes mode, who moves where, what stays unmet and why; and how far it is proved."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.documents.address import Address
from modebook.rig.repatch.problem import PassReport


@dataclass(frozen=True, slots=True)
class Change:
    """What the plan changes in one row of the patch."""

    unit: str
    row: int
    fixture: str
    """``maker/model`` of its record."""
    position: str
    part: str
    mode_from: str
    mode_to: str
    mode_place: int
    """The place of the new mode in its document."""
    address_from: Address | None
    address_to: Address | None
    slots_from: int
    slots_to: int
    note: str = ""
    """What else to see to, such as a menu state that the mode depends on."""

    @property
    def moves(self) -> bool:
        """Whether the address changes."""
        return self.address_from != self.address_to

    @property
    def changes_mode(self) -> bool:
        """Whether the mode changes."""
        return self.mode_from != self.mode_to

    def to_json(self) -> dict[str, object]:
        """The change for JSON; scripts rely on its keys."""
        told: dict[str, object] = {
            "unit": self.unit,
            "row": self.row,
            "fixture": self.fixture,
            "mode_from": self.mode_from,
            "mode_to": self.mode_to,
            "address_from": _address(self.address_from),
            "address_to": _address(self.address_to),
            "slots_from": self.slots_from,
            "slots_to": self.slots_to,
        }
        if self.position:
            told["position"] = self.position
        if self.part:
            told["part"] = self.part
        if self.note:
            told["note"] = self.note
        return told


@dataclass(frozen=True, slots=True)
class Unmet:
    """A demand that a unit does not meet after the plan."""

    unit: str
    row: int
    demand: str
    """The coarse rule that still finds something, or remote-smoothing."""
    parameter: str
    why: str
    """What is wrong, and the nearest mode that would do, with what speaks against it."""
    nearest: str = ""
    """The name of that mode."""

    def to_json(self) -> dict[str, object]:
        """The demand for JSON; scripts rely on its keys."""
        told: dict[str, object] = {"unit": self.unit, "row": self.row, "demand": self.demand, "why": self.why}
        if self.parameter:
            told["parameter"] = self.parameter
        if self.nearest:
            told["nearest"] = self.nearest
        return told


@dataclass(frozen=True, slots=True)
class Plan:
    """The whole plan."""

    rig: str
    patch: str
    changes: tuple[Change, ...]
    """In the order of the file."""
    unmet: tuple[Unmet, ...]
    aside: tuple[tuple[str, int, str], ...]
    """Unit, row and reason of what could not take part; its slots, as far as known, were left alone."""
    passes: tuple[PassReport, ...]
    proved: bool
    gap: float
    universes_before: int
    universes_after: int
    slots_before: int
    """The sum of the footprints of all units whose footprint is known."""
    slots_after: int
    moved: int
    """Units with a new address."""
    remoded: int
    """Units with a new mode."""

    def to_json(self) -> dict[str, object]:
        """The plan for JSON; scripts rely on its keys."""
        return {
            "rig": self.rig,
            "patch": self.patch,
            "changes": [change.to_json() for change in self.changes],
            "unmet": [one.to_json() for one in self.unmet],
            "aside": [{"unit": unit, "row": row, "why": why} for unit, row, why in self.aside],
            "proved": self.proved,
            "gap": self.gap,
            "universes_before": self.universes_before,
            "universes_after": self.universes_after,
            "slots_before": self.slots_before,
            "slots_after": self.slots_after,
            "units_moved": self.moved,
            "units_with_new_mode": self.remoded,
            "passes": [
                {
                    "wish": one.wish,
                    "value": one.value,
                    "bound": one.bound,
                    "proved": one.proved,
                    "gap": one.gap,
                    "seconds": round(one.seconds, 3),
                }
                for one in self.passes
            ],
        }


def _address(address: Address | None) -> dict[str, int] | None:
    return None if address is None else {"universe": address.universe, "address": address.address}
