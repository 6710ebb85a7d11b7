"""What is changed between setups: one line for like units, what must stand, what to check, what it takes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from modebook.shots.route import Byte, Kept, RouteBy

BY: tuple[RouteBy, ...] = ("slot", "rdm", "hand")
"""In the order in which they are done: what needs no walk first."""


@dataclass(frozen=True, slots=True)
class Change:
    """One change on like units: what is sent or done for all of them."""

    step: int
    """Changes of a higher step wait for those before: one setting may need another first."""
    units: tuple[str, ...]
    fixture: str
    mode: str
    setting: str
    setting_label: str
    from_: str | None
    """None: not known what it was at."""
    from_label: str
    to: str
    to_label: str
    by: RouteBy
    kept: Kept
    seconds: float
    """By slot at once for all units; over RDM and by hand one after another."""
    needs: tuple[str, ...] = ()
    needs_bytes: tuple[Byte, ...] = ()
    bytes: tuple[Byte, ...] = ()
    hold_s: float | None = None
    then: str = ""
    then_bytes: tuple[Byte, ...] = ()
    pid: str | None = None
    data: str | None = None
    uids: tuple[str, ...] = ()
    """The units' UIDs, in their order; empty where one is not noted."""
    path: tuple[str, ...] = ()
    position: str = ""
    reach: str = ""
    warnings: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Standing:
    """Values that every cue of a setup must send."""

    units: tuple[str, ...]
    fixture: str
    setting: str
    setting_label: str
    choice: str
    choice_label: str
    bytes: tuple[Byte, ...]
    why: str
    """Acts only while sent; not known to stay; or the rest of a slot that would overrule."""
    returns: str
    """What the fixture goes back to when it stops."""


@dataclass(frozen=True, slots=True)
class Stage:
    """What is wanted in a setup: (unit, setting) to choice; what is missing stays as it is."""

    name: str
    day: str
    wanted: Mapping[tuple[str, str], str | None]


@dataclass(frozen=True, slots=True)
class SetupChanges:
    """What is done before one setup, and what must stand in it."""

    setup: str
    day: str
    changes: tuple[Change, ...]
    stands: tuple[Standing, ...]
    checks: tuple[Change, ...]
    """After a night: what nobody knows to have been kept, and how to set it again if it was not."""
    faults: tuple[str, ...]
    """What cannot be brought about, in sentences."""
    seconds_by_way: Mapping[RouteBy, float]


@dataclass(frozen=True, slots=True)
class PrepLine:
    """What like units are set to before they go out to the set."""

    units: tuple[str, ...]
    fixture: str
    mode: str
    setting: str
    setting_label: str
    choice: str
    choice_label: str
    road: str
    """How, in words."""
    by: RouteBy | None
    """None: only looked at, since it is known to be so, or since no road leaves it stored."""
    from_: str | None
    seconds: float
    doubts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PowerCut:
    """What a power cut during a setup leaves to do."""

    setup: str
    again: tuple[Change, ...]
    """Kept only until power off: to be sent or done again."""
    check: tuple[Change, ...]
    """Nobody has said whether it is kept: to be looked at, and set again if it is gone."""
    stands: tuple[Standing, ...]
    """Comes back by itself as long as the desk sends it."""
    stored: int
    """How many settings of units stay by themselves."""
    seconds_by_way: Mapping[RouteBy, float]


@dataclass(frozen=True, slots=True)
class ChangeList:
    """The whole list, setup by setup, in order."""

    setups: tuple[SetupChanges, ...]
    prep: tuple[PrepLine, ...]

    @property
    def total_seconds_by_way(self) -> dict[RouteBy, float]:
        """Over all setups."""
        return {by: sum(one.seconds_by_way.get(by, 0.0) for one in self.setups) for by in BY}

    @property
    def faults(self) -> list[str]:
        """What cannot be brought about, over all setups."""
        return [f"{one.setup}: {fault}" for one in self.setups for fault in one.faults]


def once(bytes_: Iterable[Byte]) -> tuple[Byte, ...]:
    """Bytes without repeats, in their order (twins listen to one address)."""
    return tuple(dict.fromkeys(bytes_))


def bytes_words(bytes_: Iterable[Byte]) -> str:
    """Values with where they go, those of one value together: ``1/9, 1/18 at 22; 2/4 at 0``."""
    by_value: dict[int, list[str]] = {}
    for byte in bytes_:
        by_value.setdefault(byte.value, []).append(f"{byte.universe}/{byte.address}")
    return "; ".join(f"{', '.join(at)} at {value}" for value, at in by_value.items())
