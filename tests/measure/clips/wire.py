"""What a desk sends: cues of snaps, staircases and fades, sampled into packets and carried by a gateway."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Step:
    """One move of the desk's level: it starts at_s after the group's start and takes `seconds` (0: snap)."""

    at_s: float
    level: float
    seconds: float = 0.0


@dataclass(frozen=True, slots=True)
class Group:
    """Moves that belong together (a snap, a staircase, a fade), the light settled before and after.

    start_s is when the operator presses go; first is the level before.
    """

    kind: str
    start_s: float
    first: float
    steps: tuple[Step, ...]

    @property
    def last(self) -> float:
        """The level that the group ends at."""
        return self.steps[-1].level

    @property
    def moves_s(self) -> float:
        """How long the desk moves, in s, from the group's start."""
        return max(step.at_s + step.seconds for step in self.steps)

    def levels(self, times_s: Floats) -> Floats:
        """Give the desk's own level, 0 to 1, at times_s (s on the clip's clock)."""
        since = times_s - self.start_s
        level = np.full(times_s.shape, self.first)
        before = self.first
        for step in self.steps:
            share = (since - step.at_s) / step.seconds if step.seconds > 0 else np.ones_like(since)
            moved = before + (step.level - before) * np.clip(share, 0.0, 1.0)
            level = np.where(since >= step.at_s, moved, level)
            before = step.level
        return level


@dataclass(frozen=True, slots=True)
class Wire:
    """The road of the packets: the desk's rate and phase, perhaps a gateway's, a level's bits."""

    desk_hz: float
    desk_phase_s: float
    gateway_hz: float | None = None
    gateway_phase_s: float = 0.0
    bits: int = 8

    @property
    def heard_hz(self) -> float:
        """Packets a second at the fixture."""
        return self.gateway_hz or self.desk_hz

    @property
    def heard_period_s(self) -> float:
        """Time between packets at the fixture, in s."""
        return 1.0 / self.heard_hz

    def packets(self, group: Group, from_s: float, to_s: float) -> tuple[Floats, Floats]:
        """Give the times (s) and levels (0 to 1, quantized) of the packets heard from from_s to to_s."""
        heard_s = _ticks(
            self.heard_hz, self.gateway_phase_s if self.gateway_hz else self.desk_phase_s, from_s, to_s
        )
        made_s = heard_s
        if self.gateway_hz:  # the gateway repeats the newest packet that it has
            number = np.floor((heard_s - self.desk_phase_s) * self.desk_hz + 1e-9)
            made_s = self.desk_phase_s + number / self.desk_hz
        most = float(2**self.bits - 1)
        return heard_s, np.round(group.levels(made_s) * most) / most


def _ticks(rate_hz: float, phase_s: float, from_s: float, to_s: float) -> Floats:
    first = np.ceil((from_s - phase_s) * rate_hz - 1e-9)
    last = np.floor((to_s - phase_s) * rate_hz + 1e-9)
    return phase_s + np.arange(first, last + 1) / rate_hz
