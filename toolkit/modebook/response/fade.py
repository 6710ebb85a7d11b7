"""One fade or snap answered: what is sent, what the light makes of it, what is seen, and how late it is."""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass, field, replace
from functools import lru_cache
from typing import Any

import numpy as np

from .camera import Camera
from .cue_light import CueLight, cue_light, end_s, largest_step, middles_s, packets_s
from .curves import LINEAR, Curve
from .errors import ResponseError
from .ideal import Ramp, ideal_light
from .late import lateness
from .link import Link, ticks
from .losses import LostAtRandom, LostInBursts
from .phases import at_worst_phase
from .quantize import last_value
from .seen import THRESHOLD_JND, Viewing, is_seen, is_undecided
from .signal import Array
from .smoothing import OFF, Smoothing
from .stepping import Worst, at_phase, by_eye, joined
from .transfer import Light, Transfer

PERCENTILES = (50, 95, 99)
SEEN_PERCENTILE = 95  # of many trials: what happens in one cue out of twenty counts as happening
# Lengths that a fixture whose maker says nothing may have: common practice, no source.
PLAUSIBLE_PACKETS = (0.0, 1.0, 2.0, 3.0, 5.0, 8.0)


@dataclass(frozen=True, slots=True)
class Fade:
    """The question: one parameter from one level to another, over a link, before a camera or an eye.

    from_percent, to_percent: 0 to 100 of the level asked for. seconds_s: 0 for a snap. bits: of the
    parameter. lowest, on_below: see quantize.above_lowest. trials: how many times losses are drawn.
    Raises ResponseError.
    """

    from_percent: float
    to_percent: float
    seconds_s: float
    link: Link
    bits: int = 8
    curve: Curve = LINEAR
    smoothing: Smoothing = OFF
    camera: Camera | None = None
    viewing: Viewing = field(default_factory=Viewing)
    lowest: float = 0.0
    on_below: bool = False
    trials: int = 1

    def __post_init__(self) -> None:
        for percent in (self.from_percent, self.to_percent):
            if not 0.0 <= percent <= 100.0:
                raise ResponseError(f"a level of {percent:g} % cannot be: give 0 to 100")
        if not (math.isfinite(self.seconds_s) and 0.0 <= self.seconds_s <= 3600.0):
            raise ResponseError(f"a fade of {self.seconds_s:g} s cannot be: give 0 (a snap) to 3600")
        last_value(self.bits)
        if self.trials < 1:
            raise ResponseError(f"{self.trials} trials show nothing: give 1 or more")
        if self.trials > 1 and not isinstance(self.link.losses, LostAtRandom | LostInBursts):
            raise ResponseError("trials repeat losses that are drawn: give a lost share, or one trial")

    @property
    def ramp(self) -> Ramp:
        """The levels asked for, over time."""
        return Ramp(self.from_percent / 100.0, self.to_percent / 100.0, self.seconds_s)

    @property
    def transfer(self) -> Transfer:
        """The curve and the lowest output."""
        return Transfer(self.curve, self.lowest, self.on_below)


@dataclass(frozen=True, slots=True)
class FadeAnswer:
    """The answer; times in s after the cue, at the worst phase of cue against packets where said.

    packets_sent: packets on the line from the one that carries the first level to the one that carries
    the last, both counted. distinct_values, repeated_packets: among them, the second the packets whose
    value is that of the packet before. ideal_step_percent: of the level asked for, from packet to
    packet. largest_step_percent: of the light, from one packet to the next, losses included.
    longest_fade_without_repeats_s: over full scale, at these bits and rates. starts_s, half_s,
    settles_s: worst phase, without losses. added_s: the setting's part in settles_s. losses_add_s: how
    much later the last level is heard for the losses, with trials the 95th percentile. worst_*: see
    stepping.Worst; with trials those of the worst trial. seen: the estimate, by worst_stepping_jnd
    against threshold_jnd, with trials by the 95th percentile; undecided: too near the threshold.
    """

    packets_sent: int
    distinct_values: int
    repeated_packets: int
    packets_lost: int
    ideal_step_percent: float
    largest_step_percent: float
    longest_fade_without_repeats_s: float
    starts_s: float
    half_s: float
    settles_s: float
    starts_best_s: float
    half_best_s: float
    settles_best_s: float
    added_s: float
    losses_add_s: float
    frames_partly_exposed_most: int | None
    worst_step_percent: float
    worst_step_stops: float
    worst_step_jnd: float
    worst_step_at_s: float
    worst_stepping_percent: float
    worst_stepping_jnd: float
    worst_stepping_at_s: float
    worst_bound_jnd: float
    worst_stepping_jnd_percentiles: dict[str, float] | None
    threshold_jnd: float
    seen: bool
    undecided: bool
    signal_lost: bool
    assumptions: tuple[str, ...]

    def to_dict(self) -> dict[str, Any]:
        """Give the answer as JSON holds it."""
        answer = asdict(self)
        answer["assumptions"] = list(self.assumptions)
        return answer


def answer(fade: Fade) -> FadeAnswer:
    """Answer one fade. Raises ResponseError where the smoothing's length is unknown (see answers_over)."""
    choice = fade.smoothing.toward(fade.ramp.rising)
    cue = cue_light(fade.ramp, choice, fade.transfer, fade.link, fade.bits, fade.trials)
    worst, largest = worst_of(fade, cue)
    late = lateness(fade.ramp, choice, fade.transfer, fade.link, fade.bits, fade.camera)
    values = sent_values(fade, cue)
    repeated = int((np.diff(values) == 0).sum())
    stepping = worst.stepping_jnd
    judged, percentiles = float(stepping.max()), None
    if fade.trials > 1:
        at = np.percentile(stepping, PERCENTILES)
        percentiles = {str(p): float(value) for p, value in zip(PERCENTILES, at, strict=True)}
        judged = percentiles[str(SEEN_PERCENTILE)]
    top, off = int(worst.step_jnd.argmax()), int(stepping.argmax())
    rate_hz = min(fade.link.refresh_hz, fade.link.line_hz)
    change = abs(fade.to_percent - fade.from_percent)
    lost = cue.received.lost
    frames = late.frames_partly_exposed
    return FadeAnswer(
        packets_sent=len(values),
        distinct_values=len(np.unique(values)),
        repeated_packets=repeated,
        packets_lost=0 if lost is None else int(lost[:, : len(values)].sum(axis=1).max()),
        ideal_step_percent=change / max(fade.seconds_s * rate_hz, 1.0),
        largest_step_percent=100.0 * float(largest.max()),
        longest_fade_without_repeats_s=last_value(fade.bits) / rate_hz,
        starts_s=late.starts.worst_s,
        half_s=late.half.worst_s,
        settles_s=late.settles.worst_s,
        starts_best_s=late.starts.best_s,
        half_best_s=late.half.best_s,
        settles_best_s=late.settles.best_s,
        added_s=late.added_s,
        losses_add_s=float(np.percentile(losses_add_s(cue, len(values)), SEEN_PERCENTILE)),
        frames_partly_exposed_most=None if frames is None else frames[1],
        worst_step_percent=float(worst.step_percent.max()),
        worst_step_stops=float(worst.step_stops.max()),
        worst_step_jnd=float(worst.step_jnd[top]),
        worst_step_at_s=float(worst.step_at_s[top]),
        worst_stepping_percent=float(worst.stepping_percent.max()),
        worst_stepping_jnd=float(stepping[off]),
        worst_stepping_at_s=float(worst.stepping_at_s[off]),
        worst_bound_jnd=float(worst.bound_jnd.max()),
        worst_stepping_jnd_percentiles=percentiles,
        threshold_jnd=THRESHOLD_JND,
        seen=is_seen(judged),
        undecided=is_undecided(judged),
        signal_lost=cue.received.signal_lost,
        assumptions=assumptions(fade),
    )


def answers_over(fade: Fade, packets: tuple[float, ...] = PLAUSIBLE_PACKETS) -> dict[float, FadeAnswer]:
    """Answer a fade whose smoothing's length is unknown for each plausible length, by packets.

    A method that is not known either is taken as the one that the smoothing names. The true answer is
    not known to lie among these: they are what the usual lengths would give.
    """
    return {
        n: answer(replace(fade, smoothing=replace(fade.smoothing, packets=n, length_s=None))) for n in packets
    }


def range_over(answers: dict[float, FadeAnswer]) -> dict[str, Any]:
    """Give figures as ranges, {"key": {"least": x, "most": y}}; seen is True, False or None (open)."""
    rows = [each.to_dict() for each in answers.values()]
    ranges: dict[str, Any] = {"unknown_length": True, "lengths_packets": list(answers)}
    for key, first in rows[0].items():
        column = [row[key] for row in rows]
        if isinstance(first, bool):
            ranges[key] = first if all(value == first for value in column) else None
        elif isinstance(first, int | float):
            ranges[key] = {"least": min(column), "most": max(column)}
    spread = f"{min(answers):g} to {max(answers):g} packets"
    ranges["assumptions"] = [
        f"the smoothing's length is unknown: figures range over {spread} (common practice, no source)",
        *rows[0]["assumptions"],
    ]
    return ranges


def worst_of(fade: Fade, cue: CueLight, only_stepping: bool = False) -> tuple[Worst, Array]:
    """Give the worst of each trial of a cue, and its largest step from packet to packet, [B], in 0 to 1.

    only_stepping: for a camera at its worst phase, nothing but the stepping in JND (see at_worst_phase).
    """
    ideal = ideal_of(fade)
    arrivals_s = packets_s(cue.received, cue.moves_until_s)
    samples_s = middles_s(cue.received, cue.moves_until_s)
    parts, largest = [], []
    for rows in cue.blocks():
        light = cue.light(rows)
        like = light if ideal is None else ideal
        largest.append(largest_step(light, arrivals_s))
        if fade.camera is None:
            parts.append(by_eye(light, like, fade.viewing, samples_s))
        else:
            asked = (light, like, fade.viewing, fade.camera, 0.0, cue.moves_until_s)
            searched = fade.camera.phase is None
            parts.append(
                at_worst_phase(*asked, only_stepping=only_stepping) if searched else at_phase(*asked)
            )
    return joined(parts), np.concatenate(largest)


def losses_add_s(cue: CueLight, packets_sent: int) -> Array:
    """Give how long, [B] in s, the fixture waits for the last level after the packet that brings it."""
    lost = cue.received.lost
    if lost is None:
        return np.zeros(1)
    return np.asarray(lost[:, packets_sent - 1 :].argmin(axis=1) * cue.received.period_s)


@lru_cache(maxsize=8)
def ideal_of(fade: Fade) -> Light | None:
    """Give the ideal ramp that a fade is compared with; None for a snap, which is meant to jump."""
    if fade.seconds_s == 0.0 or fade.from_percent == fade.to_percent:
        return None
    return ideal_light(fade.ramp, fade.smoothing.toward(fade.ramp.rising), fade.transfer, fade.link)


def sent_values(fade: Fade, cue: CueLight) -> np.ndarray[Any, np.dtype[np.int64]]:
    """Give the values of the packets on the line, from the first level's packet to the last level's, [P]."""
    last = round(end_s(fade.ramp, fade.link) * fade.link.refresh_hz)
    until_s = (last + 1) / fade.link.refresh_hz + fade.link.period_s
    _, index = ticks(fade.link.lossless(), until_s)
    return cue.values[index[: int(np.searchsorted(index, last)) + 1]]


def assumptions(fade: Fade) -> tuple[str, ...]:
    """Say what the answer takes for granted."""
    said = [
        "whether it is seen is an estimate: NEMA PS3.14 was made for still gratings, "
        "so a figure within a factor of two of the threshold is undecided",
        f"white is {fade.viewing.white_cd_m2:g} cd/m2, {fade.viewing.fill:.0%} of it from other lights; "
        "luminance below 0.05 cd/m2 is taken as 0.05",
        "times count from the cue at the worst phase of cue against packets; the time that a packet takes "
        "on the line (up to 22.7 ms for 512 slots) is not in them",
        "the fixture holds the last value; what its fail mode does after about a second (1.25 s) "
        "without packets is not computed",
    ]
    if fade.camera is None:
        said.append("seen by eye, from packet to packet: even stairs at the packet rate are taken as fused")
    elif fade.camera.phase is None:
        said.append("the camera's phase against the packets is the worst there is")
    else:
        said.append(f"the camera stands at phase {fade.camera.phase:g} of its frame at packet 0")
    if fade.curve.name != "linear" and fade.smoothing.method != "none":
        where = "after" if fade.smoothing.after_curve else "before"
        said.append(f"smoothing acts {where} the dimmer curve")
    if fade.link.losses is not None:
        kind = "not heard at all" if fade.link.loss == "missing" else "replaced by a repeat of the last"
        said.append(f"a lost packet is {kind}")
    if fade.trials > 1:
        said.append(f"seen goes by the {SEEN_PERCENTILE}th percentile of {fade.trials} trials")
    return tuple(said)
