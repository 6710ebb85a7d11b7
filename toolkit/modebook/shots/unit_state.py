"""What is known of one unit while a plan is walked through: what it is at, what keeps it so, what stands."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass, field

from modebook.documents.settings import Setting
from modebook.rig.reading import PatchedRow
from modebook.shots.located import Places, places
from modebook.shots.route import Byte, Kept, Route
from modebook.shots.routes import Roads
from modebook.shots.slot_routes import Overruled, overruled


@dataclass(frozen=True, slots=True)
class Now:
    """What one setting is at, and by what."""

    choice: str | None
    kept: Kept
    route: Route | None = None
    """The road by which it was set during the day."""


@dataclass
class UnitState:
    """One unit: its record, its roads, and what each setting is at."""

    number: str
    rows: Sequence[PatchedRow]
    roads: Roads
    now: dict[str, Now] = field(default_factory=dict)
    below: dict[str, str | None] = field(default_factory=dict)
    """What is stored under a choice that is kept only until power off, or acts only while sent."""
    standing: dict[str, tuple[Byte, ...]] = field(default_factory=dict)
    """What is sent for each setting in every cue; a setting that no slot overrules may have nothing."""
    rests: dict[str, tuple[Byte, ...]] = field(default_factory=dict)
    """The part of it that is a slot at rest, which gives way to what stands there for another setting."""
    _over: dict[str, Overruled] = field(default_factory=dict)
    _places: Places | None = None

    @classmethod
    def of(
        cls,
        number: str,
        rows: Sequence[PatchedRow],
        roads: Roads,
        start: Mapping[tuple[str, str], str | None],
        told: Container[tuple[str, str]],
    ) -> UnitState:
        """A unit as it starts: what is known is taken as stored, but of what was `told` nobody knows that."""
        made = cls(number, rows, roads)
        for setting in roads:
            choice, unsure = start.get((number, setting)), (number, setting) in told
            made.now[setting] = Now(choice, "unknown" if unsure else "stored")
            made.below[setting] = None if unsure else choice
        return made

    @property
    def fixture(self) -> str:
        """Its maker and model."""
        reading = self.rows[0].fixture
        assert reading is not None
        return f"{reading.fixture.maker} {reading.fixture.model}"

    @property
    def settings(self) -> dict[str, Setting]:
        """The settings of its record."""
        fixture = self.rows[0].fixture
        assert fixture is not None
        return {setting.key: setting for setting in fixture.fixture.settings}

    def is_at(self, setting: str, choice: str) -> bool:
        """Whether it is known to be at a choice, and to stay so: what must stand for that stands."""
        now = self.now.get(setting)
        if now is None or now.choice != choice:
            return False
        if setting in self.standing:
            return True
        over = self.over(setting)
        return not (over.always or over.stand or over.doubts)

    def over(self, setting: str) -> Overruled:
        """What slots of its mode do to a setting that is set otherwise."""
        if setting not in self._over:
            self._over[setting] = overruled(self.rows, self.settings[setting])
        return self._over[setting]

    def held(self, setting: str, choice: str, cost: float, seconds: float) -> Route | None:
        """The road to a choice that it has already: the slots that would overrule it are sent their rests.

        None where it is not known to have the choice, or where such a slot rests.
        """
        now, over = self.now.get(setting), self.over(setting)
        if now is None or now.choice != choice or over.always or over.doubts or not over.stand:
            return None
        fixed = self.fixed(setting)
        return Route(
            by="slot",
            setting=setting,
            choice=choice,
            cost=cost,
            seconds=seconds,
            kept=now.kept,
            bytes=tuple(byte for byte in over.stand if (byte.universe, byte.address) not in fixed),
            then="keep sending it: at another value this slot would overrule the choice",
            stand=over.stand,
            rests=over.stand,
            position=self.rows[0].unit.position,
            reach=self.rows[0].reach or "",
        )

    def fixed(self, besides: str) -> dict[tuple[int, int], int]:
        """What stands for other settings and gives way to nothing: by universe and address."""
        return {
            (byte.universe, byte.address): byte.value
            for setting, bytes_ in self.standing.items()
            if setting != besides
            for byte in bytes_
            if byte not in self.rests.get(setting, ())
        }

    def stands(self) -> dict[str, tuple[Byte, ...]]:
        """What every cue sends for each setting: no rest where something stands for another setting."""
        found: dict[str, tuple[Byte, ...]] = {}
        for setting, bytes_ in self.standing.items():
            rests, fixed = self.rests.get(setting, ()), self.fixed(setting)
            found[setting] = tuple(
                byte for byte in bytes_ if byte not in rests or (byte.universe, byte.address) not in fixed
            )
        return found

    def take(self, route: Route) -> None:
        """Go a road."""
        setting = route.setting
        self.now[setting] = Now(route.choice, route.kept, route)
        self.standing[setting] = route.stand
        self.rests[setting] = route.rests
        if route.kept == "stored":
            self.below[setting] = route.choice
        elif route.kept == "unknown" and route.by != "slot":
            self.below[setting] = None

    def power_off(self) -> list[str]:
        """Switch it off and on: what is gone is forgotten; returns the settings of which nobody knows."""
        unknown: list[str] = []
        for setting, now in self.now.items():
            if now.choice is None or now.kept in ("stored", "while sent"):
                continue
            if now.kept == "until power off":
                self.now[setting] = Now(self.below.get(setting), "stored")
            elif not (now.route and now.route.by == "slot" and self.standing.get(setting)):
                unknown.append(setting)
        return unknown

    def blocked(self, route: Route) -> str:
        """Why a road cannot be gone as things stand; empty where it can."""
        for setting, choices in route.needs_settings:
            now = self.now.get(setting)
            if now is None or now.choice not in choices:
                return f"it needs {setting} set to {' or '.join(choices)} first"
        before = self.now.get(route.setting)
        if before and before.route and before.kept in ("while sent", "unknown"):
            left = {(byte.universe, byte.address) for byte in before.route.bytes}
            left -= {(byte.universe, byte.address) for byte in (*route.stand, *route.bytes)}
            if left:
                return "where the slot rests that now rules is not known"
        for other, bytes_ in self.standing.items():
            if other != route.setting and not self._together(route, other, bytes_):
                return f"its slot must stand at another value for {other}"
        return ""

    def _together(self, route: Route, other: str, bytes_: Sequence[Byte]) -> bool:
        """Whether what a road must send in every cue goes with what stands for another setting.

        Where two values differ and one of them is a slot at rest, the other one rules, if it is known to
        leave the setting alone for which the slot rests.
        """
        at = {(byte.universe, byte.address): byte.value for byte in bytes_}
        differing = [
            byte for byte in route.stand if at.get((byte.universe, byte.address), byte.value) != byte.value
        ]
        if not differing:
            return True
        if self._places is None:
            self._places = places(self.rows)
        theirs = {byte for byte in bytes_ if byte in self.rests.get(other, ())}
        if all(byte in route.rests for byte in differing):
            return self._places.leave_alone(route.setting, at)
        if all(Byte(one.universe, one.address, at[one.universe, one.address]) in theirs for one in differing):
            mine = {(byte.universe, byte.address): byte.value for byte in route.stand}
            return self._places.leave_alone(other, mine)
        return False

    def resting(self, route: Route) -> tuple[Byte, ...]:
        """What is sent after a road's value: its own rest, or what stands there for another setting."""
        fixed = self.fixed(route.setting)
        return tuple(
            Byte(one.universe, one.address, fixed.get((one.universe, one.address), one.value))
            for one in route.then_bytes
        )
