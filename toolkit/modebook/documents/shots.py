"""Shots: which cue moves which units, from where to where, in what time, and what it must look like."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from modebook.words.intents import Intent


@dataclass(frozen=True, slots=True)
class Cue:
    """One row of a shots file, as it is to be played; times in s, levels in percent of the parameter."""

    row: int
    """The line of the file (CSV) or the row of the sheet."""
    name: str
    units: tuple[str, ...]
    """Unit numbers as the patch writes them."""
    units_written: str
    parameter: str
    """A word of the vocabulary, or the key of a parameter."""
    from_percent: float
    to_percent: float
    start_s: float
    """From the start of the shot."""
    seconds_s: float
    intent: Intent
    fps: float | None = None
    shutter_deg: float | None = None
    note: str = ""

    @property
    def end_s(self) -> float:
        """When its last level is sent."""
        return self.start_s + self.seconds_s

    @property
    def is_snap(self) -> bool:
        """Whether it takes no time."""
        return self.seconds_s == 0.0


@dataclass(frozen=True, slots=True)
class Shot:
    """The cues of one shot, in the order of the file."""

    name: str
    cues: tuple[Cue, ...]


@dataclass(frozen=True, slots=True)
class Setup:
    """Shots for which the settings stay as they are; between setups there is time to change them."""

    name: str
    day: str
    scene: str
    shots: tuple[Shot, ...]

    @property
    def cues(self) -> Iterator[Cue]:
        """All its cues, shot by shot."""
        for shot in self.shots:
            yield from shot.cues


@dataclass(frozen=True, slots=True)
class ShotFault:
    """A row, or a cell of one, that could not be taken as it stands."""

    row: int
    cue: str
    column: str
    found: str
    why: str
    """What is wrong and what would be right, in one sentence."""


@dataclass(frozen=True, slots=True)
class Shots:
    """A whole shots file, in shooting order: what could be read, and what is wrong with the rest."""

    path: str
    setups: tuple[Setup, ...]
    faults: tuple[ShotFault, ...] = ()
    notes: tuple[str, ...] = field(default_factory=tuple)

    @property
    def cues(self) -> int:
        """How many cues were read."""
        return sum(1 for setup in self.setups for _ in setup.cues)
