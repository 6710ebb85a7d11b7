"""A model of one unit: what its settings are after what was sent, set over RDM, done by hand, or cut off.

It knows nothing of how changes are planned: it reads the record and obeys, and so it can check a plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from modebook.documents.address import AddressError
from modebook.documents.modes import Condition, Parameter, Range, Span
from modebook.documents.settings import Choice, Setting, Way
from modebook.rig.reading import PatchedRow

Place = tuple[int, int]
"""Universe and address."""
Keeping = Literal["while sent", "until power off", "stored"]
A_MOMENT_S = 0.5
"""How long a value is taken to be sent where nobody holds it: more than any packet's time."""


@dataclass(frozen=True, slots=True)
class _Wired:
    """A parameter at its bytes, once for each cell."""

    parameter: Parameter
    part: str | None
    at: tuple[Place, ...]


@dataclass
class FixtureState:
    """One unit as it stands there: the slots that it hears, what it remembers, what acts now."""

    rows: Sequence[PatchedRow]
    stored: dict[str, str | None]
    """What each setting is stored at; None where that is not known."""
    unsaid: Keeping = "while sent"
    """How a range keeps what it sets, of which nobody has said."""
    unsaid_way: Keeping = "stored"
    """How a way over RDM or by hand keeps it, of which nobody has said."""
    heard: dict[Place, int] = field(default_factory=dict)
    until_off: dict[str, str] = field(default_factory=dict)
    hazards: list[str] = field(default_factory=list)
    """Of every hazardous range that was sent, its meaning, in order."""

    def __post_init__(self) -> None:
        assert self.rows[0].fixture is not None
        assert self.rows[0].mode is not None
        self.settings: dict[str, Setting] = {
            setting.key: setting for setting in self.rows[0].fixture.fixture.settings if not setting.none
        }
        wired = [one for row in self.rows for one in _wired(row)]
        needed = {
            condition.parameter
            for one in wired
            for condition in _conditions(one.parameter)
            if condition.parameter is not None
        }
        self._by_name: dict[str, list[_Wired]] = {}
        for one in wired:
            for name in {one.parameter.name, one.parameter.parameter} & needed:
                self._by_name.setdefault(name, []).append(one)
        self._acting = [
            one for one in wired if any(piece.sets or piece.hazard for piece in one.parameter.ranges)
        ]
        for one in wired:
            if one.parameter.default is not None:
                for place, byte in zip(one.at, _split(one.parameter.default, len(one.at)), strict=True):
                    self.heard.setdefault(place, byte)
        self.addresses = {place for one in wired for place in one.at}

    def send(self, values: Iterable[tuple[int, int, int]], hold_s: float) -> None:
        """Send values (universe, address, value) all at once, and hold them; others stay as they were."""
        changed = {(universe, at): value for universe, at, value in values}
        mine = {place: value for place, value in changed.items() if place in self.addresses}
        self.heard.update(mine)
        for one in self._acting:
            if not any(place in mine for place in one.at):
                continue
            for piece in self._active(one):
                if piece.hazard:
                    self.hazards.append(f"{piece.hazard}: {piece.meaning}")
                keeping = piece.kept or self.unsaid
                if keeping == "while sent" or (piece.hold_s or 0.0) > hold_s:
                    continue
                for setting, to in (piece.sets or {}).items():
                    choice = self._meant(setting, to, one, piece)
                    if choice is not None:
                        self._remember(setting, choice, keeping)

    def rdm(self, pid: str, data: str) -> bool:
        """Set a PID to parameter data (hex). False where no way of the record says what that is."""
        for setting, way in self._ways("rdm"):
            if way.pid != pid:
                continue
            for choice, value in (way.values or {}).items():
                if value == int(data, 16):
                    self._remember(setting.key, choice, way.kept or self.unsaid_way)
                    return True
        return False

    def by_hand(self, path: Sequence[str]) -> bool:
        """Follow a path to a choice, by its label. False where no such path is recorded."""
        for by in ("menu", "app", "page"):
            for setting, way in self._ways(by):
                steps = list(way.path or ())
                for choice in setting.choices:
                    told = [*steps, choice.label or choice.key]
                    if list(path)[-len(told) :] == told and _allowed(way, choice):
                        self._remember(setting.key, choice.key, way.kept or self.unsaid_way)
                        return True
        return False

    def power_off(self) -> None:
        """Off and on again; the desk sends on."""
        self.until_off.clear()

    def now(self, setting: str) -> str | None:
        """What a setting is at; None where that is not known."""
        for one in self._acting:
            for piece in self._active(one):
                to = (piece.sets or {}).get(setting)
                if to is not None and (piece.kept or self.unsaid) == "while sent":
                    return self._meant(setting, to, one, piece)
        return self.until_off.get(setting) or self.stored.get(setting)

    def _remember(self, setting: str, choice: str, keeping: Keeping) -> None:
        if keeping == "until power off":
            self.until_off[setting] = choice
        else:
            self.stored[setting] = choice
            self.until_off.pop(setting, None)

    def _ways(self, by: str) -> Iterator[tuple[Setting, Way]]:
        for setting in self.settings.values():
            for way in setting.ways:
                if way.by == by:
                    yield setting, way

    def _value(self, one: _Wired) -> int | None:
        value = 0
        for place in one.at:
            byte = self.heard.get(place)
            if byte is None:
                return None
            value = value * 256 + byte
        return value

    def _active(self, one: _Wired) -> Iterator[Range]:
        value = self._value(one)
        if value is None:
            return
        for piece in one.parameter.ranges:
            if piece.from_ <= value <= piece.to:
                conditions = [*(one.parameter.when or ()), *(piece.needs or ())]
                if all(self._holds(condition, one) for condition in conditions):
                    yield piece

    def _holds(self, condition: Condition, asking: _Wired) -> bool:
        if condition.setting is not None:
            # A choice that is remembered counts, not one that acts: else two could wait for each other.
            kept = self.until_off.get(condition.setting) or self.stored.get(condition.setting)
            return kept in (condition.choices or ())
        if condition.parameter is None:
            return True
        found = self._by_name.get(condition.parameter, [])
        mine = [one for one in found if one.part == asking.part] or found
        values = [self._value(one) for one in mine]
        return bool(values) and all(
            value is not None and any(low <= value <= high for low, high in condition.intervals)
            for value in values
        )

    def _meant(self, setting: str, to: str | Span, one: _Wired, piece: Range) -> str | None:
        """The choice that a range leads to at the value heard; of a continuous range the one that it hits."""
        if isinstance(to, str):
            return to
        value = self._value(one)
        if value is None or setting not in self.settings:
            return None
        share = (value - piece.from_) / max(1, piece.to - piece.from_)
        figure = to.from_ + share * (to.to - to.from_)
        step = abs(to.to - to.from_) / max(1, piece.to - piece.from_)
        for choice in self.settings[setting].choices:
            wanted = _figure(choice, to.unit)
            if wanted is not None and abs(wanted - figure) <= step / 2 * (1 + 1e-9):
                return choice.key
        return None


def _wired(row: PatchedRow) -> Iterator[_Wired]:
    if row.block is None or row.unit.address is None:
        return
    for placed in row.block.placed:
        try:
            at = tuple(row.unit.address.slot(slot) for slot in placed.slots)
        except AddressError:
            continue
        if at:
            yield _Wired(placed.parameter, row.block.key, tuple((one.universe, one.address) for one in at))


def _conditions(parameter: Parameter) -> Iterator[Condition]:
    yield from parameter.when or ()
    for piece in parameter.ranges:
        yield from piece.needs or ()


def _split(value: int, count: int) -> list[int]:
    return [value // 256 ** (count - 1 - place) % 256 for place in range(count)]


def _allowed(way: Way, choice: Choice) -> bool:
    return way.choices is None or choice.key in way.choices


def _figure(choice: Choice, unit: str) -> float | None:
    if unit in ("Hz", "kHz"):
        hertz = choice.frequency_hz
        return None if hertz is None else hertz / (1000.0 if unit == "kHz" else 1.0)
    if choice.length is None:
        return None
    if unit == "packets":
        return choice.length.packets
    per: Mapping[str, float] = {"s": 1.0, "ms": 0.001, "min": 60.0}
    seconds = choice.length.seconds
    return None if seconds is None or unit not in per else seconds / per[unit]
