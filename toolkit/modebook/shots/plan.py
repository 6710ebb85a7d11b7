"""A plan: for each setup the choices taken and turned down with their figures; conflicts; what is unknown."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from modebook.documents.shots import Setup, ShotFault
from modebook.shots.verdicts import Verdict

Kind = Literal["smoothing", "modulation"]


@dataclass(frozen=True, slots=True)
class Candidate:
    """One choice for one group in one setup, whether it was taken or not."""

    choice: str
    label: str
    length_packets: float | None
    """At the link's rate; None where it is not known, or the setting is no smoothing."""
    verdicts: tuple[Verdict, ...]
    violations: int
    """Cues that it does not satisfy by itself."""
    late: int
    """Snaps and pixels among them."""
    difference_percent: float | None = None
    """Of a modulation frequency: the greatest difference between one frame and the next."""
    measured: bool = False
    """Whether its length is a measured one."""

    @property
    def worst_stepping_jnd(self) -> float | None:
        """Over its cues that are judged by stepping; None where there is none."""
        found = [
            one.figures.worst_stepping_jnd
            for one in self.verdicts
            if one.figures and one.judged and one.cue.intent in ("smooth", "unseen")
        ]
        return max(found, default=None)

    @property
    def snap_added_ms(self) -> float | None:
        """Over its cues that must not be late; None where there is none."""
        found = [
            1000 * one.figures.worst_added_s
            for one in self.verdicts
            if one.figures and one.judged and one.cue.intent in ("snap", "pixels")
        ]
        return max(found, default=None)


@dataclass(frozen=True, slots=True)
class Taken:
    """What a group of like units is set to in one setup."""

    group: str
    units: tuple[str, ...]
    fixture: str
    mode: str
    setting: str
    kind: Kind
    choice: str
    candidates: tuple[Candidate, ...]
    """All choices that can be had, in the record's order; the taken one among them."""
    unreached: tuple[str, ...]
    """Choices that no way reaches."""
    why: str
    assumed: tuple[str, ...] = ()

    @property
    def taken(self) -> Candidate:
        """The candidate that was taken."""
        return next(one for one in self.candidates if one.choice == self.choice)


@dataclass(frozen=True, slots=True)
class Unchosen:
    """One cue on units whose smoothing cannot be chosen: what it comes to all the same."""

    group: str
    units: tuple[str, ...]
    fixture: str
    mode: str
    verdict: Verdict
    known: bool
    """Whether their smoothing is known; where not, the verdict's figures range over the usual lengths."""


@dataclass(frozen=True, slots=True)
class Apart:
    """Units of a match that do not move together under the choices taken."""

    cue: str
    units: tuple[str, ...]
    apart_ms: float
    limit_ms: float
    known: bool


@dataclass(frozen=True, slots=True)
class Conflict:
    """What no choice gives a setup, and what would."""

    setup: str
    units: tuple[str, ...]
    why: str
    cures: tuple[str, ...]
    at_odds: bool = False
    """Whether a choice would do but for another cue; else the cue itself asks for more than any gives."""


@dataclass(frozen=True, slots=True)
class PlannedSetup:
    """One setup with its settings; a group that it does not use is left as it is and not told of."""

    setup: Setup
    settings: tuple[Taken, ...]
    unjudged: tuple[str, ...]
    """What the engine cannot judge, in sentences."""
    warnings: tuple[str, ...]
    """Of what is in it: strobes, lasers, ultraviolet light."""
    unchosen: tuple[Unchosen, ...] = ()
    """Its cues on units that offer no choice."""


@dataclass(frozen=True)
class Plan:
    """The whole plan, in shooting order."""

    rig: str
    path: str
    setups: tuple[PlannedSetup, ...]
    states: tuple[Mapping[tuple[str, str], str], ...]
    """For each setup what each planned unit (number) has each planned setting (key) at."""
    start: Mapping[tuple[str, str], str | None]
    """What they are at before the first setup, as far as known."""
    prepared: bool
    """Whether units are set in the shop before the first setup."""
    conflicts: tuple[Conflict, ...]
    faults: tuple[ShotFault, ...]
    notes: tuple[str, ...]
    gap: float
    """How far the choice is from proved, as a share; 0: proved."""
    asked: int
    """Distinct cases that the engine was asked for."""
