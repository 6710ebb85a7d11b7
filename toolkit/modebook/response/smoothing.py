"""Smoothing choices: which method a fixture fills in with, over what length, and what it makes of packets.

With T the packet time on the line, N the length in packets and L the length in seconds (L = N T), the
light that answers packets heard at t0, t1, ... is

- none: stairs. A lost packet is a stair twice as long and the next twice as high; a repeat, the same.
- average: the mean of the held stairs over the last L seconds. For N packets each stretch between
  packets is a straight line whose slope is the difference of the packets N apart, over N T. It sees
  time, not packets: a lost and a repeated packet come to the same, a line of slope (N - 1) / N that is
  made up for one packet later.
- interpolate: straight lines from packet to packet, drawn N packets (L) after they were heard. A missing
  packet is healed where the next one comes in time: the line goes from the packet before to the one
  after. If it does not come within L, the light waits at the last packet's value and then takes L to
  reach the next. A repeated packet is a packet: the line lies flat for one packet time and is twice as
  steep in the next. This is the one method for which the two kinds of loss differ.
- lag: first order, dy/dt = (x - y) / L, with L the time constant; 10 to 90 % takes L ln 9. It sees held
  stairs, so that lost and repeated packets come to the same.
- limit: follows the held stairs no faster than full scale in L. Lost and repeated packets come to the
  same; the light waits only once it has caught up.
- restart: each packet that changes the value starts a new straight line, from where the light stands to
  the new value, L long. A packet with the value of the last one, and one that is missing, start nothing:
  the line that runs goes on and then holds.

Rise and fall. lag: the longer or shorter constant holds while the light is below (rise) or above (fall)
what it goes to. limit: the two rates hold for rising and falling light. restart: the length is chosen
for each line by its direction. average and interpolate have one length by nature; a fixture whose
record gives two is answered for cues that go one way, with the length of that way (`toward`).

`after_curve`: False, the fixture smooths the levels it hears and applies its dimmer curve after; True,
it smooths the light that the curve makes of them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias, get_args

from .errors import ResponseError

Method: TypeAlias = Literal["none", "average", "interpolate", "lag", "limit", "restart"]
METHODS: tuple[str, ...] = get_args(Method)

LN_9 = math.log(9.0)  # a first-order lag's 10-90 % time, in time constants (closed form)
LENGTH_MAX_S = 60.0  # nothing that a fixture calls smoothing is longer: a larger figure is a wrong unit
PACKETS_MAX = 1000.0


@dataclass(frozen=True, slots=True)
class Smoothing:
    """A smoothing choice; see the module.

    The length is `packets` or `length_s` (s), of at least 0; neither, for any method but none: unknown.
    fall_packets or fall_length_s: the length for falling light where it differs. Raises ResponseError.
    """

    method: Method = "average"
    packets: float | None = None
    length_s: float | None = None
    fall_packets: float | None = None
    fall_length_s: float | None = None
    after_curve: bool = False

    def __post_init__(self) -> None:
        if self.method not in METHODS:
            raise ResponseError(f"smoothing method {self.method!r} is unknown: give {', '.join(METHODS)}")
        if self.packets is not None and self.length_s is not None:
            raise ResponseError("a smoothing length is in packets or in seconds, not both")
        if self.fall_packets is not None and self.fall_length_s is not None:
            raise ResponseError("a smoothing length for falling light is in packets or in seconds, not both")
        for length, most, unit in (
            (self.packets, PACKETS_MAX, "packets"),
            (self.fall_packets, PACKETS_MAX, "packets"),
            (self.length_s, LENGTH_MAX_S, "s"),
            (self.fall_length_s, LENGTH_MAX_S, "s"),
        ):
            if length is not None and not 0.0 <= length <= most:
                raise ResponseError(f"a smoothing of {length:g} {unit} cannot be: give 0 to {most:g} {unit}")
        falls = self.fall_packets is not None or self.fall_length_s is not None
        if falls and (self.unknown or self.method == "none"):
            raise ResponseError("a length for falling light needs a method and a length for rising light")

    @property
    def unknown(self) -> bool:
        """Whether the length is not known."""
        return self.method != "none" and self.packets is None and self.length_s is None

    @property
    def two_ways(self) -> bool:
        """Whether rise and fall have lengths of their own."""
        return self.fall_packets is not None or self.fall_length_s is not None

    def lengths_s(self, period_s: float) -> tuple[float, float]:
        """Give the lengths in s for rising and falling light, with packets period_s apart.

        Raises ResponseError where the length is unknown.
        """
        if self.method == "none":
            return 0.0, 0.0
        if self.unknown:
            raise ResponseError(
                "the smoothing's length is unknown: give it in packets or seconds, or a range"
            )
        rise = self.length_s if self.length_s is not None else (self.packets or 0.0) * period_s
        if self.fall_length_s is not None:
            return rise, self.fall_length_s
        return rise, rise if self.fall_packets is None else self.fall_packets * period_s

    def toward(self, rising: bool) -> Smoothing:
        """Give the choice with the one length that it has for light going that way."""
        if not self.two_ways:
            return self
        if rising:
            return replace(self, fall_packets=None, fall_length_s=None)
        return replace(
            self,
            packets=self.fall_packets,
            length_s=self.fall_length_s,
            fall_packets=None,
            fall_length_s=None,
        )


OFF = Smoothing("none")


def lag(*, time_constant_s: float | None = None, ten_ninety_s: float | None = None) -> Smoothing:
    """Give a first-order lag by its time constant or its 10-90 % time (ln 9 time constants), in s."""
    if (time_constant_s is None) == (ten_ninety_s is None):
        raise ResponseError("a lag is given by its time constant or by its 10-90 % time, one of them")
    if time_constant_s is not None:
        return Smoothing("lag", length_s=time_constant_s)
    assert ten_ninety_s is not None
    return Smoothing("lag", length_s=ten_ninety_s / LN_9)
