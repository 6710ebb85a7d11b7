"""Which modes of a fixture a unit may get, and which of the rig's demands each of them meets."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass
from functools import cached_property

from modebook.checks.reading import FixtureReading, ModeReading
from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.documents.ways import SmoothingBy, smoothing_by
from modebook.rig.in_use import rules_in_use

COARSE, REMOTE = "no-coarse", "remote-smoothing"
_VERSION = re.compile(r"[vV]?\s*(\d+(?:\.\d+)*)")


@dataclass(frozen=True, slots=True)
class Demand:
    """One thing that a mode should give."""

    rule: str
    """The coarse rule that must find nothing, or remote-smoothing."""
    parameter: str = ""
    """The parameter that the rule must find nothing about."""

    @property
    def key(self) -> str:
        """The demand in one word or two."""
        return f"{self.rule} {self.parameter}".strip()


class ModeFacts:
    """A mode as a repatch sees it, worked out once."""

    def __init__(self, reading: FixtureReading, place: int, demands: Collection[str]) -> None:
        self.reading = reading
        self.place = place
        self.demands = demands
        self.mode: ModeReading = reading.modes[place]

    @cached_property
    def parameters(self) -> Counter[str]:
        """How often it has each parameter on slots of its own, every cell counted."""
        found: Counter[str] = Counter()
        for block in self.mode.blocks:
            for placed in block.placed:
                if placed.slots:
                    words = {placed.parameter.parameter}
                    words |= {piece.parameter for piece in placed.parameter.ranges if piece.parameter}
                    found.update(words)
        return found

    @cached_property
    def blocks(self) -> tuple[tuple[str, int], ...]:
        """Its start addresses: part (empty for its own slots) and footprint."""
        return tuple((block.key or "", block.footprint) for block in self.mode.blocks)

    @cached_property
    def smoothing_by(self) -> tuple[SmoothingBy, ...]:
        """How smoothing can be changed in it."""
        return tuple(smoothing_by(self.reading.fixture, self.mode.mode))

    @cached_property
    def unmet(self) -> dict[Demand, str]:
        """The demands that it does not meet, with what is wrong; RDM is judged with the universe."""
        found: dict[Demand, str] = {}
        if COARSE in self.demands:
            for name, (_, judge) in rules_in_use().items():
                if name.startswith("coarse-"):
                    for fault in judge(self.reading, self.mode) or ():
                        word = str(fault.figure.get("parameter", ""))
                        found.setdefault(Demand(name, word), fault.message)
        if REMOTE in self.demands and not {"slot", "none"} & set(self.smoothing_by):
            found[Demand(REMOTE)] = _smoothing_told(self.smoothing_by)
        return found

    def lost_from(self, now: ModeFacts) -> list[str]:
        """The parameters that a unit would lose by it."""
        return sorted((now.parameters - self.parameters).elements())

    def why_not(self, now: ModeFacts, firmware: str) -> str:
        """Why a unit may not get it; empty if it may."""
        if self.place == now.place:
            return ""
        lost = self.lost_from(now)
        if lost:
            return f"lacks {_listed(lost)}, which the unit has now"
        if {key for key, _ in self.blocks} != {key for key, _ in now.blocks}:
            return "has other start addresses, so the patch needs other rows: write them by hand"
        if self.mode.mode.continues or any(not 0 < size <= SLOTS_PER_UNIVERSE for _, size in self.blocks):
            return "does not fit into one universe: place it by hand"
        wanted = self._firmware()
        if wanted and firmware and _newer(wanted, firmware):
            return f"was read from firmware {wanted}, and the unit runs {firmware}"
        return ""

    def _firmware(self) -> str:
        source = self.mode.mode.source
        return next(
            (one.firmware for one in self.reading.fixture.sources if one.key == source and one.firmware), ""
        )


def _smoothing_told(by: tuple[SmoothingBy, ...]) -> str:
    if "rdm" in by:
        return "its smoothing can be changed only over RDM"
    if "unknown" in by or not by:
        return "no source says how its smoothing can be changed"
    return f"its smoothing can be changed only by hand ({', '.join(by)})"


def _listed(words: list[str]) -> str:
    counted = Counter(words)
    return ", ".join(word if count == 1 else f"{count} {word}" for word, count in sorted(counted.items()))


def _newer(one: str, other: str) -> bool:
    """Whether a firmware is newer than another, where both are plain version numbers."""
    first, second = _VERSION.fullmatch(one.strip()), _VERSION.fullmatch(other.strip())
    if first is None or second is None:
        return False
    return [int(n) for n in first[1].split(".")] > [int(n) for n in second[1].split(".")]
