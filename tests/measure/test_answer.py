"""Known smoothing found again in traces made by the response engine; what cannot be told is not told."""

from __future__ import annotations

import numpy as np
import pytest

from modebook.measure.answer import measure
from modebook.measure.errors import MeasureError
from modebook.measure.setup import Setup
from modebook.measure.trace import Trace
from modebook.response.camera import exposures
from modebook.response.smoothers import smooth
from modebook.response.smoothing import OFF, Smoothing

HZ = 44.0
FULL = [(1.0, 0.0), (0.8, 1.0), (0.8, 0.0), (0.8, 1.0), (0.8, 0.0)]
HEIGHTS = [*FULL[:3], (0.8, 0.5), (0.8, 1.0), (0.8, 0.5), (0.8, 0.0)]
STAIRS = [*HEIGHTS, (2 / HZ, 0.25), (2 / HZ, 0.5), (2 / HZ, 0.75), (0.8, 1.0), (0.8, 0.0)]


def recorded(
    method: str,
    packets: float,
    program: list[tuple[float, float]],
    *,
    fps: float = 240.0,
    shutter: float = 180.0,
    reference: bool = False,
    noise: float = 0.004,
    clip: float | None = None,
    seed: int = 1,
) -> Trace:
    """A trace of a program of (seconds, level), its packets and frames at phases that the seed gives."""
    rng = np.random.default_rng(seed)
    levels = np.concatenate([[level] * max(1, round(held_s * HZ)) for held_s, level in program])
    times_s = (np.arange(len(levels)) + rng.uniform()) / HZ
    opens = np.arange(0.2, times_s[-1] - 0.05, 1 / fps)
    open_s = shutter / 360 / fps

    def seen(choice: Smoothing, dark: float, gain: float) -> np.ndarray:
        light = smooth(choice, times_s, levels[None], float(levels[0]), 1 / HZ)
        return dark + gain * exposures(light, opens, open_s)[0] + noise * rng.standard_normal(len(opens))

    own = seen(OFF if method == "none" else Smoothing(method, packets=packets), 0.05, 0.8)  # type: ignore[arg-type]
    other = seen(OFF, 0.1, 0.7) if reference else None
    clipped = None
    if clip is not None:
        clipped = own >= clip
        own = np.minimum(own, clip)
    return Trace("made", "trace", opens, own, open_s, fps, clipped=clipped, reference=other)


@pytest.mark.parametrize(
    ("method", "packets"), [("average", 4.0), ("lag", 3.0), ("limit", 5.0), ("restart", 6.0)]
)
@pytest.mark.parametrize("reference", [False, True])
def test_a_recipe_with_stairs_tells_method_and_length(method: str, packets: float, reference: bool) -> None:
    """Snaps of two heights and a quick staircase tell every model but interpolation, without a reference."""
    found = measure(recorded(method, packets, STAIRS, reference=reference), Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.method) == (True, method)
    assert found.length_packets == pytest.approx(packets, abs=0.1)
    assert found.interval_packets is not None
    assert found.interval_packets[0] <= packets <= found.interval_packets[1]


def test_full_snaps_alone_tell_the_length_but_not_the_method() -> None:
    """What three models make of a full snap is the same: the length is told, no method is."""
    found = measure(recorded("average", 4.0, FULL), Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.method) == (False, None)
    assert found.left == ("average", "limit", "restart")
    assert found.length_packets == pytest.approx(4.0, abs=0.1)
    assert any("staircase" in line for line in found.help)


def test_interpolation_is_told_only_against_the_time_of_sending() -> None:
    """Without a reference nothing is told of interpolation; with one, how many packets behind it is."""
    alone = measure(recorded("interpolate", 3.0, HEIGHTS), Setup(refresh_hz=HZ)).judgement
    assert (alone.can_tell, alone.length_packets) == (False, None)
    assert any("--reference" in line for line in alone.help)
    timed = measure(recorded("interpolate", 3.0, HEIGHTS, reference=True), Setup(refresh_hz=HZ)).judgement
    assert (timed.can_tell, timed.method) == (True, "interpolate")
    assert timed.length_packets == pytest.approx(3.0, abs=0.1)


@pytest.mark.parametrize("fps", [120.0, 240.0])
def test_off_is_recognized_as_off(fps: float) -> None:
    """A light that follows at once is told to be off."""
    found = measure(recorded("none", 0.0, HEIGHTS, fps=fps), Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.method, found.length_packets) == (True, "none", 0.0)


def test_a_slow_camera_cannot_tell_a_short_smoothing() -> None:
    """One snap at 24 frames a second with a short shutter says nothing about less than a packet."""
    slow = recorded("none", 0.0, [(1.0, 0.0), (1.0, 1.0)], fps=24.0, shutter=45.0)
    found = measure(slow, Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.length_packets) == (False, None)
    assert any("frames a second" in line for line in found.help)


def test_a_clipped_top_does_not_shorten_the_length() -> None:
    """Clipped samples are lower bounds: snaps of half height below the top keep the length right."""
    found = measure(recorded("average", 6.0, STAIRS, clip=0.7), Setup(refresh_hz=HZ)).judgement
    assert found.length_packets == pytest.approx(6.0, abs=0.3)


def test_without_the_rate_no_packets_are_counted() -> None:
    """Milliseconds are told, packets are not."""
    answer = measure(recorded("lag", 3.0, FULL), Setup())
    assert (answer.judgement.can_tell, answer.judgement.length_packets) == (False, None)
    assert answer.length_s == pytest.approx(3.0 / HZ, rel=0.02)
    assert "--refresh" in answer.judgement.help[0]


def test_a_light_that_does_nothing_is_no_event() -> None:
    """Noise alone is told in one line."""
    rng = np.random.default_rng(0)
    still = Trace("still", "trace", np.arange(500) / 240, 0.5 + 0.01 * rng.standard_normal(500), 0.002, 240.0)
    with pytest.raises(MeasureError, match=r"^still: no event: .*noise"):
        measure(still, Setup(refresh_hz=HZ))
