"""Who in a rig lets its smoothing be changed without a hand on it: by a slot of its mode, or over RDM."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from typing import Literal

from modebook.documents.rig import YesNoUnknown
from modebook.documents.ways import SmoothingBy, smoothing_by
from modebook.rig.reading import PatchedRow, RigReading

Answer = Literal["slot", "rdm", "hand", "none", "unknown"]

ANSWERS: tuple[Answer, ...] = ("slot", "rdm", "hand", "none", "unknown")


@dataclass(frozen=True, slots=True)
class UnitRemote:
    """How one unit's smoothing can be changed."""

    row: PatchedRow
    answer: Answer
    """The best way there is: by a slot of the mode it is patched in, only over RDM, only by hand (menu, app
    or the fixture's own page), not at all since it has none, or unknown."""
    by: tuple[SmoothingBy, ...]
    """All ways."""
    rdm_reaches: YesNoUnknown
    """Whether RDM passes in its universe, as the rig says."""

    def to_json(self) -> dict[str, object]:
        """The unit for JSON."""
        unit = self.row.unit
        address = unit.address
        told: dict[str, object] = {
            "unit": unit.number,
            "row": unit.row,
            "fixture": self.row.identity or unit.fixture,
            "mode": self.row.mode.mode.name if self.row.mode else unit.mode,
            "position": unit.position,
            "universe": address.universe if address else None,
            "address": address.address if address else None,
            "smoothing_by": list(self.by),
        }
        if self.answer == "rdm":
            told["rdm_reaches"] = self.rdm_reaches
        return told


@dataclass(slots=True)
class RigRemote:
    """The answer for a rig."""

    rig: str
    units: list[UnitRemote] = field(default_factory=list)

    def of(self, answer: Answer) -> list[UnitRemote]:
        """The units with one answer, in the order of the patch."""
        return [unit for unit in self.units if unit.answer == answer]

    @property
    def rdm_reaches(self) -> dict[YesNoUnknown, int]:
        """Of the units that only RDM can change: how many it reaches, does not, or is not known to."""
        counts = Counter(unit.rdm_reaches for unit in self.of("rdm"))
        return {"yes": counts["yes"], "no": counts["no"], "unknown": counts["unknown"]}

    def to_json(self) -> dict[str, object]:
        """The answer for JSON; scripts rely on its keys."""
        return {
            "rig": self.rig,
            "units": len(self.units),
            "by_slot": len(self.of("slot")),
            "by_rdm": len(self.of("rdm")),
            "by_hand_only": len(self.of("hand")),
            "none": len(self.of("none")),
            "unknown": len(self.of("unknown")),
            "rdm_reaches": dict(self.rdm_reaches),
            "which": {
                name: [unit.to_json() for unit in self.of(answer)]
                for name, answer in zip(
                    ("by_slot", "by_rdm", "by_hand_only", "none", "unknown"), ANSWERS, strict=True
                )
            },
        }


def remote(reading: RigReading) -> RigRemote:
    """How each unit of a rig lets its smoothing be changed. A unit over several rows counts once."""
    found = RigRemote(reading.name)
    known: dict[int, tuple[SmoothingBy, ...]] = {}
    seen: set[tuple[str, int]] = set()
    for row in reading.rows:
        if row.mode is not None and row.unit.number and len(row.mode.blocks) > 1:
            key = (row.unit.number.casefold(), id(row.mode))
            if key in seen:
                continue
            seen.add(key)
        by: tuple[SmoothingBy, ...] = ("unknown",)
        if row.fixture is not None and row.mode is not None:
            if id(row.mode) not in known:
                known[id(row.mode)] = tuple(smoothing_by(row.fixture.fixture, row.mode.mode))
            by = known[id(row.mode)]
        found.units.append(UnitRemote(row, _best(by), by, _rdm(reading, row)))
    return found


def _best(by: tuple[SmoothingBy, ...]) -> Answer:
    if "slot" in by:
        return "slot"
    if "rdm" in by:
        return "rdm"
    if "none" in by:
        return "none"
    return "unknown" if "unknown" in by or not by else "hand"


def _rdm(reading: RigReading, row: PatchedRow) -> YesNoUnknown:
    address = row.unit.address
    return reading.link(address.universe).rdm if address else "unknown"
