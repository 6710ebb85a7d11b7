"""One road to one choice of a setting on one unit: what is sent or done, how long it takes, and the risks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

RouteBy = Literal["slot", "rdm", "hand"]
Kept = Literal["while sent", "until power off", "stored", "unknown"]


@dataclass(frozen=True, slots=True)
class Byte:
    """One slot's value on the wire."""

    universe: int
    address: int
    value: int


@dataclass(frozen=True, slots=True)
class Route:
    """How one unit is brought to one choice; only by roads that its mode, link and place leave open.

    cost: by the policy's figures (by slot, over RDM, by hand by how the unit is reached). seconds: what
    the change takes, holds included. kept: how long the choice lasts once set.
    """

    by: RouteBy
    setting: str
    choice: str
    cost: float
    seconds: float
    kept: Kept
    bytes: tuple[Byte, ...] = ()
    """By slot: what is sent, in zero time, from the middle of its range and away from any hazard."""
    hold_s: float | None = None
    """By slot: how long it is held; None where nothing is printed."""
    needs: tuple[str, ...] = ()
    """What must be so first, in words (`dimmer at 0`)."""
    needs_bytes: tuple[Byte, ...] = ()
    """What must be sent first for that, where a value decides it."""
    then: str = ""
    """What to send afterwards, in words: the printed default, the idle range, or the question to settle."""
    then_bytes: tuple[Byte, ...] = ()
    stand: tuple[Byte, ...] = ()
    """What every cue must send as long as the choice is wanted: a value that acts only while sent, or the
    rest of a slot that would overrule what was set otherwise."""
    rests: tuple[Byte, ...] = ()
    """Of `stand` what is a slot at rest: another value that leaves the setting alone does as well."""
    needs_settings: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """Settings that must be at one of these choices first."""
    pid: str | None = None
    data: str | None = None
    """Over RDM: the parameter data in hex, most significant byte first."""
    uid: str | None = None
    path: tuple[str, ...] = ()
    """By hand: the menu path, or app and page."""
    position: str = ""
    reach: str = ""
    warnings: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    """What is not known and should be tried on the fixture (`no hold is printed`)."""
