"""What a clip can tell, decided beforehand: how far the best rival model stays from the truth.

For each rival (another method of any length, or another length) the noiseless record that it would have left
is brought as near to the truth's as the things allow that whoever measures does not know: when each group of
moves was sent (unless `sent` or a reference light shows it), the duration of a fade or a staircase (unless
they show it), how high each group goes where full light is clipped, and a processing time of the fixture of
SLOWEST_S at most where the sending is known. What is left, in standard deviations of the record's errors and
summed in squares over all groups, is the rival's distance.

A clip can tell the method if every other method stays SURE away, and the length if every rival whose length
differs by more than TOLERANCE packets does: counted with large errors (compression, quantizing, what is left
of the flicker). It cannot if a rival comes as near as UNSURE even with small errors (the pixels' noise
alone). Between is a gray zone, counted neither way. A length below TOLERANCE is no other than none.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from .light import METHODS, Light, respond
from .wire import Group, Wire

Floats = NDArray[np.float64]

TOLERANCE = 0.3  # packets
SURE, UNSURE = 12.0, 2.0  # standard deviations
FAR = 4 * SURE  # nobody asks how much farther a rival is
SLOWEST_S = 0.004
STRETCHES = (1.0, 0.9, 0.95, 0.98, 1.02, 1.05, 1.1)
GAINS = (1.0, 0.6, 0.75, 0.87, 1.15, 1.35, 1.7)
LENGTHS = (0.35, 0.6, 1.0, 1.4, 2.0, 2.6, 3.3, 4.2, 5.5, 7.0, 9.0, 12.0)  # packets


@dataclass(frozen=True)
class Record:
    """What is recorded, without its errors.

    starts_s, open_s: the exposures (s) of the first row, or of the meter's samples. light_delays_s,
    reference_delays_s: rows' delays of the light's patch and the reference's (None: no reference). sent: the
    time of sending is logged. code: linear light to what is written, in the steps that the errors count in.
    large, small: standard deviations of one record's error, as a pessimist and an optimist see it.
    """

    starts_s: Floats
    open_s: float
    light_delays_s: Floats
    reference_delays_s: Floats | None
    sent: bool
    code: Callable[[Floats, float], Floats]
    clipped: bool
    large: float
    small: float

    def seen(self, light: Light, starts_s: Floats, delays_s: Floats, gain: float) -> Floats:
        """Give what is written for a light, for exposures that begin at starts_s, any shape."""
        begin = starts_s[..., None] + delays_s
        return self.code(
            (light.integral(begin + self.open_s) - light.integral(begin)) / self.open_s, gain
        ).mean(-1)


@dataclass(frozen=True, slots=True)
class Told:
    """Distances of the nearest rival method and of the nearest rival length, with large and small errors."""

    method_large: float
    method_small: float
    length_large: float
    length_small: float
    nearest: str

    @property
    def method(self) -> bool | None:
        """Whether the method can be told; None in the gray zone."""
        return _verdict(self.method_large, self.method_small)

    @property
    def length(self) -> bool | None:
        """Whether the length can be told to TOLERANCE; None in the gray zone."""
        return _verdict(self.length_large, self.length_small)


def told(method: str, packets: float, wire: Wire, groups: Sequence[Group], record: Record) -> Told:
    """Decide what a record of groups of moves can tell about a light of that method and length."""
    problem = _Problem(method, packets, wire, groups, record)
    other_method, other_length, nearest = np.inf, np.inf, ""
    for rival in METHODS:
        for length in _lengths(rival, packets):
            if max(length, packets) <= TOLERANCE:
                continue
            off = abs(length - packets) >= TOLERANCE - 1e-9
            if rival == method and not off:
                continue
            apart = problem.distance(rival, length)
            if rival != method and apart < other_method:
                other_method, nearest = apart, f"{rival} over {length:g} packets"
            if off:
                other_length = min(other_length, apart)
    for rival in METHODS[1:]:
        if rival != method:  # close in on the nearest length of each other method
            length, apart = _closest(problem, rival, packets)
            if apart < other_method:
                other_method, nearest = apart, f"{rival} over {length:.3g} packets"
            if abs(length - packets) >= TOLERANCE:
                other_length = min(other_length, apart)
    return Told(
        other_method / record.large,
        other_method / record.small,
        other_length / record.large,
        other_length / record.small,
        nearest,
    )


def _verdict(large: float, small: float) -> bool | None:
    return True if large >= SURE else False if small <= UNSURE else None


def _lengths(method: str, packets: float) -> list[float]:
    if method == "none":
        return [0.0]
    least = 1.0 if method == "interpolate" else TOLERANCE
    near = [packets - TOLERANCE, packets, packets + TOLERANCE]
    return sorted({round(length, 6) for length in (*LENGTHS, *near) if length >= least})


def _closest(problem: _Problem, rival: str, packets: float) -> tuple[float, float]:
    lengths = [length for length in _lengths(rival, packets) if max(length, packets) > TOLERANCE]
    values = [problem.distance(rival, length) for length in lengths]
    best = int(np.argmin(values))
    low, high = lengths[max(best - 1, 0)], lengths[min(best + 1, len(lengths) - 1)]
    for _ in range(2):
        lengths = [float(length) for length in np.linspace(low, high, 7)]
        values = [problem.distance(rival, length) for length in lengths]
        best = int(np.argmin(values))
        low, high = lengths[max(best - 1, 0)], lengths[min(best + 1, 6)]
    return lengths[best], values[best]


class _Problem:
    """The truth's record, cut into groups, and the distance of rivals from it in steps of the code."""

    def __init__(self, method: str, packets: float, wire: Wire, groups: Sequence[Group], record: Record):
        self.wire, self.record, self.packets = wire, record, packets
        self.known: dict[tuple[str, float], float] = {}
        self.parts: list[_Part] = []
        tail_s = packets * wire.heard_period_s
        for group in groups:
            self.parts.append(_Part(method, packets, wire, group, record, tail_s))

    def distance(self, method: str, packets: float) -> float:
        """Give the least distance of a rival, in steps of the code; past FAR, only that it is past."""
        key = (method, round(packets, 9))
        if key not in self.known:
            gains: tuple[float, ...] = (1.0,)
            if self.record.clipped:  # a longer line to a higher level has the same slope
                gains = (*GAINS, packets / self.packets) if packets and self.packets else GAINS
            self.known[key] = self._at(method, packets, gains)
        return self.known[key]

    def _at(self, method: str, packets: float, gains: tuple[float, ...]) -> float:
        if self.record.sent:
            late = np.linspace(-0.25 * SLOWEST_S, SLOWEST_S, 6)
            parts = [
                np.min([part.squares(method, packets, gain, late) for gain in gains], axis=0)
                for part in self.parts
            ]
            return float(np.sqrt(np.sum(parts, axis=0).min()))
        total, far = 0.0, (FAR * self.record.large) ** 2
        for part in self.parts:
            total += min(part.nearest(method, packets, gain) for gain in gains)
            if total > far:
                break
        return float(np.sqrt(total))


class _Part:
    """One group of moves: its packets, the exposures around it, and what the truth leaves in them."""

    def __init__(self, method: str, packets: float, wire: Wire, group: Group, record: Record, tail_s: float):
        self.wire, self.group, self.record = wire, group, record
        self.from_s = group.start_s - 2 * wire.heard_period_s
        self.to_s = group.start_s + group.moves_s + 3 * wire.heard_period_s
        until_s = self.to_s + max(6 * tail_s if method == "lag" else 2 * tail_s, 0.1)
        inside = (record.starts_s > self.from_s - 0.1) & (record.starts_s < until_s)
        self.starts_s = record.starts_s[inside]
        self.truth = self._light(method, packets, 1.0)
        self.seen = record.seen(self.truth, self.starts_s, record.light_delays_s, 1.0)
        self.reference = self._light("none", 0.0, 1.0)
        if record.reference_delays_s is not None:
            self.seen_reference = record.seen(self.reference, self.starts_s, record.reference_delays_s, 1.0)

    def nearest(self, method: str, packets: float, gain: float) -> float:
        """Give the least sum of squares over the unknown time of sending and stretch."""
        steps = any(step.seconds or step.at_s for step in self.group.steps)
        stretches = STRETCHES if steps and self.record.reference_delays_s is None else (1.0,)
        return min(self._stretched(method, packets, gain, stretch) for stretch in stretches)

    def _stretched(self, method: str, packets: float, gain: float, stretch: float) -> float:
        period_s = self.wire.heard_period_s
        light = self._light(method, packets, stretch)
        if self.record.reference_delays_s is None:
            middle_s = self._centroid_s(self.truth) - self._centroid_s(light)
            late = middle_s + np.linspace(-2.0, 2.0, 17) * period_s
        else:
            late = np.linspace(-1.5, 1.5, 25) * period_s
        width_s = float(late[1] - late[0])
        least, far = np.inf, 4 * (FAR * self.record.large) ** 2
        for _ in range(6):
            squares = self.squares(method, packets, gain, late, light)
            least = min(float(squares.min()), least)
            if least > far or least < (0.1 * self.record.small) ** 2:
                break
            late = late[int(np.argmin(squares))] + np.linspace(-width_s, width_s, 9)
            width_s /= 4
        return least

    def squares(
        self, method: str, packets: float, gain: float, late_s: Floats, light: Light | None = None
    ) -> Floats:
        """Give the sum of squared differences from the truth for each time late_s of sending."""
        light = light or self._light(method, packets, 1.0)
        starts = self.starts_s - late_s[:, None]
        apart = ((self.record.seen(light, starts, self.record.light_delays_s, gain) - self.seen) ** 2).sum(-1)
        if self.record.reference_delays_s is not None:
            again = self.record.seen(self.reference, starts, self.record.reference_delays_s, 1.0)
            apart = apart + ((again - self.seen_reference) ** 2).sum(-1)
        return np.asarray(apart)

    def _light(self, method: str, packets: float, stretch: float) -> Light:
        steps = tuple(
            replace(step, at_s=step.at_s * stretch, seconds=step.seconds * stretch)
            for step in self.group.steps
        )
        times_s, levels = self.wire.packets(replace(self.group, steps=steps), self.from_s, self.to_s + 0.2)
        return respond(method, packets * self.wire.heard_period_s, times_s, levels, float(levels[0]))

    def _centroid_s(self, light: Light) -> float:
        """When a light that went straight from first to last at once would have the same integral."""
        ends = np.array([self.from_s - 5.0, self.to_s + 15.0])
        area = float(np.diff(light.integral(ends))[0])
        rise = self.group.last - self.group.first
        return float(ends[1] - (area - self.group.first * (ends[1] - ends[0])) / rise)
