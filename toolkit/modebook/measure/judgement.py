"""What a measurement can tell and what not: the models that are left, the length's width, what would help."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from modebook.measure.models import METHODS, Method

WORSE = 10.0  # a model whose deviance is this much above the best one's is out (odds of 150 to 1)
LATE_WORSE = 300.0  # the same beside a line of one packet that begins late, which is interpolation
ONE_PACKET = 0.08  # packets: how near to one a line must be that may be interpolation
OFF_WITHIN = 0.35  # packets: what cannot be longer is none (the length told to 0.3, and the clocks' doubt)
ONE_LIGHT = 1.3  # packets: at one packet most methods make the same light
SAME_LENGTH = 0.3  # packets
WIDEST = 0.5  # packets, to either side; or
WIDEST_SHARE = 0.06  # of the length
POOR = 8.0  # deviance per sample, and
POOR_SHARE = 0.012  # of the light's range, left over by the best model: beyond both no model of ours fits


@dataclass(frozen=True, slots=True)
class Candidate:
    """One model's outcome: its length and interval in packets, its deviance above the best, its delay."""

    method: Method
    worse: float
    length_packets: float
    interval_packets: tuple[float, float] | None = None
    delay_packets: float | None = None


@dataclass(frozen=True, slots=True)
class Judgement:
    """method and length are None where the data do not hold them; why says it, help says what would do."""

    can_tell: bool
    method: Method | None
    length_packets: float | None
    interval_packets: tuple[float, float] | None
    why: str
    help: tuple[str, ...] = ()
    left: tuple[Method, ...] = ()


STAIRS = "send a staircase of steps one or two packets apart, or a fade shorter than a second"
HALF = "send snaps of half height beside those of full height"
DARKER = "expose darker, so that full is not clipped, or send snaps of half height as well"
TIMED = (
    "film a lamp without smoothing on the same universe in the same picture (--reference), "
    "or log the level on the wire (sent)"
)


def out_at(misfit: float) -> float:
    """How much worse a model must be to be out: more where even the best leaves more than noise.

    What is then left over is of the camera's making, and may speak for a model as well as against it.
    """
    return WORSE * math.sqrt(max(misfit, 1.0))


def judge(
    candidates: Mapping[Method, Candidate],
    *,
    timed: bool,
    misfit: float,
    left_over: float,
    fps: float | None,
    refresh_hz: float,
    clipped: bool = False,
) -> Judgement:
    """Say what the candidates leave. misfit: the best model's deviance per degree of freedom; left_over:
    the root mean square of what it leaves, as a share of the light's range.

    timed: whether the time of sending is known. fps: samples a second. clipped: whether the top is clipped
    and nothing tells how high it is.
    """
    out = out_at(misfit)
    left = [method for method in METHODS if method in candidates and candidates[method].worse < out]
    if timed and _waits_a_packet(min(candidates.values(), key=lambda one: one.worse)):
        like = candidates.get("interpolate")
        if like is not None and out <= like.worse < LATE_WORSE and like.interval_packets is not None:
            left.append("interpolate")
    if not timed and "interpolate" in candidates and "interpolate" not in left:
        straight = [
            candidates[method].interval_packets for method in left if method in ("average", "restart")
        ]
        # A line of about one packet is what interpolation makes, however many packets behind.
        reaches = [reach for reach in straight if reach is not None]
        if any(low - ONE_PACKET <= 1.0 <= high + ONE_PACKET for low, high in reaches):
            left.append("interpolate")
    spread = _widest([candidates[method] for method in left])
    # What explains it as well as no smoothing does counts where no smoothing is to be told.
    off = max(out, candidates["none"].worse) if "none" in candidates else out
    as_good = [method for method in METHODS if method in candidates and candidates[method].worse <= off]
    reach = _reach(as_good, candidates)
    if misfit > POOR and left_over > POOR_SHARE:
        return Judgement(
            False,
            None,
            None,
            None,
            f"no model explains the light: {100 * left_over:.1f} % of its range is left over",
            ("check --refresh, --shutter and the transfer curve, and that only one light is in the box",),
        )
    if "none" in left or reach <= OFF_WITHIN:
        if reach <= OFF_WITHIN:
            return Judgement(
                True, "none", 0.0, (0.0, reach), f"any smoothing is shorter than {reach:.2f} packets"
            )
        return Judgement(
            False,
            None,
            None,
            None,
            f"no smoothing explains it, and so does one of up to {reach:.1f} packets",
            (_faster(fps, refresh_hz, reach),),
            tuple(left),
        )
    chosen = _chosen(left, candidates, timed)
    if chosen is None:
        return _several(left, candidates, timed, fps, refresh_hz)
    one = candidates[chosen]
    assert one.interval_packets is not None
    low, high = one.interval_packets
    if 0.5 * (high - low) > max(WIDEST, WIDEST_SHARE * one.length_packets):
        return Judgement(
            False,
            chosen if low > ONE_LIGHT else None,
            None,
            one.interval_packets,
            f"the length may be {low:.1f} to {high:.1f} packets: "
            + ("the top is clipped" if clipped else "the samples are too few or too noisy"),
            (DARKER if clipped else _faster(fps, refresh_hz, 0.5 * (high - low)),),
            tuple(left),
        )
    others = [candidates[method] for method in candidates if method not in left]
    runner = min(others, key=lambda other: other.worse, default=None)
    why = f"{chosen} explains it"
    if runner is not None:
        why += f"; next is {runner.method}, worse by {runner.worse:.0f} ({out:.0f} would do)"
    if chosen == "interpolate" and len(left) > 1:
        late = ", ".join(m for m in left if m != chosen)
        why += f"; {late} would have to wait for packets as well before they begin"
    elif spread and len(left) > 1:
        why += f"; with {', '.join(m for m in left if m != chosen)} at one packet it is the same light"
    return Judgement(True, chosen, one.length_packets, one.interval_packets, why, (), tuple(left))


def _waits_a_packet(best: Candidate) -> bool:
    """Whether it is a straight line of one packet that begins late: only interpolation does that."""
    return (
        best.method in ("average", "restart")
        and abs(best.length_packets - 1.0) < ONE_PACKET
        and (best.delay_packets or 0.0) > 0.5
    )


def _reach(left: Sequence[Method], candidates: Mapping[Method, Candidate]) -> float:
    """How many packets any smoothing may be long at most, by every model that is left."""
    smooth = [candidates[method] for method in left if method not in ("none", "interpolate")]
    if not smooth:
        smooth = [candidates["average"]] if "none" in left else []
    known = [one.interval_packets[1] for one in smooth if one.interval_packets is not None]
    return max(known, default=float("inf"))


def _chosen(left: Sequence[Method], candidates: Mapping[Method, Candidate], timed: bool) -> Method | None:
    if not timed and "interpolate" in left:
        return None
    if len(left) == 1:
        return left[0]
    late = [
        method
        for method in left
        if method != "interpolate" and (candidates[method].delay_packets or 0.0) > 0.5
    ]
    # A straight line of one packet that waits for packets first is what interpolation does.
    if timed and "interpolate" in left and len(late) == len(left) - 1:
        return "interpolate"
    return None


def _several(
    left: Sequence[Method],
    candidates: Mapping[Method, Candidate],
    timed: bool,
    fps: float | None,
    refresh_hz: float,
) -> Judgement:
    help_: list[str] = []
    if "interpolate" in left and not timed:
        help_.append(TIMED)
    if "limit" in left and len(left) > 1:
        help_.append(HALF)
    if "restart" in left and len(left) > 1:
        help_.append(STAIRS)
    if "lag" in left and len(left) > 1:
        help_.append(_faster(fps, refresh_hz, 1.0))
    names = ", ".join(left[:-1]) + " and " + left[-1] if len(left) > 1 else left[0]
    length = _one_length([candidates[method] for method in left])
    if "interpolate" in left and not timed:
        length = None
        why = (
            f"{names} make the same of this event"
            if len(left) > 1
            else "interpolation a packet or more behind: how far shows only against the time of sending"
        )
        return Judgement(False, None, None, None, why, tuple(dict.fromkeys(help_)), tuple(left))
    why = f"{names} make the same of these events"
    if length is not None:
        why += ", all with this length"
        return Judgement(False, None, length[0], length[1], why, tuple(dict.fromkeys(help_)), tuple(left))
    return Judgement(False, None, None, None, why, tuple(dict.fromkeys(help_)), tuple(left))


def _one_length(
    left: Sequence[Candidate],
) -> tuple[float, tuple[float, float]] | None:
    """The length on which all that are left agree, and an interval that holds all theirs."""
    lengths = [candidate.length_packets for candidate in left]
    known = [c.interval_packets for c in left if c.interval_packets is not None]
    if not known or max(lengths) - min(lengths) > SAME_LENGTH:
        return None
    low, high = min(pair[0] for pair in known), max(pair[1] for pair in known)
    if 0.5 * (high - low) > WIDEST:
        return None
    best = min(left, key=lambda candidate: candidate.worse)
    return best.length_packets, (low, high)


def _widest(left: Sequence[Candidate]) -> float:
    lengths = [candidate.length_packets for candidate in left]
    return max(lengths, default=0.0) - min(lengths, default=0.0)


def _faster(fps: float | None, refresh_hz: float, doubt_packets: float) -> str:
    """What would narrow the length: a rate at which a packet lasts some frames, or more repeats."""
    wanted = 4.0 * refresh_hz
    if fps is not None and fps >= wanted:
        times = max(2, round((doubt_packets / 0.3) ** 2))
        return f"repeat each event about {times} times as often, with more light against the noise"
    rate = next((rate for rate in (60, 100, 120, 240, 480, 1000) if rate >= wanted), 1000)
    return f"film at {rate} frames a second or more, or log with a light meter"
