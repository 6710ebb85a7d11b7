"""When a snap starts, is half done and done, against closed forms of each smoothing (textbook arithmetic)."""

import itertools
import math

import numpy as np
import pytest

from modebook.response.camera import Camera, partly_exposed
from modebook.response.curves import SQUARE
from modebook.response.fade import Fade, answer
from modebook.response.ideal import Ramp
from modebook.response.late import lateness
from modebook.response.link import Link
from modebook.response.losses import LostAtRandom, LostInBursts, burst_not_exceeded, lost_mask
from modebook.response.smoothing import Smoothing, lag
from modebook.response.transfer import Transfer

SNAP = Ramp(1.0, 0.0, 0.0)
AT_30 = Link(30.0)


@pytest.mark.parametrize(
    ("choice", "starts_s", "half_s", "settles_s"),
    [
        (Smoothing("none"), 0.0, 0.0, 0.0),
        (Smoothing("average", packets=2), 0.0, 1 / 30, 2 / 30),  # 33 and 67 ms
        (Smoothing("average", packets=5), 0.0, 2.5 / 30, 5 / 30),  # 83 and 167 ms
        (Smoothing("average", length_s=0.11), 0.0, 0.055, 0.11),
        (Smoothing("interpolate", packets=5), 4 / 30, 4.5 / 30, 5 / 30),  # starts 133, done 167 ms
        (Smoothing("interpolate", packets=1), 0.0, 0.5 / 30, 1 / 30),
        (Smoothing("limit", length_s=0.2), 0.0, 0.1, 0.2),
        (Smoothing("restart", length_s=0.2), 0.0, 0.1, 0.2),
        (lag(time_constant_s=0.05), 0.0, 0.05 * math.log(2), 0.05 * math.log(100)),
    ],
)
def test_a_snap_takes_what_its_closed_form_says(
    choice: Smoothing, starts_s: float, half_s: float, settles_s: float
) -> None:
    """Counted from the packet that carries the snap; a lag is done at 99 %."""
    late = lateness(SNAP, choice, Transfer(), AT_30)
    # A change of a billionth counts as started or not yet done, which moves a time by as much of its length.
    assert late.packet_starts_s == pytest.approx(starts_s, abs=1e-9)
    assert late.packet_half_s == pytest.approx(half_s, abs=1e-9)
    assert late.packet_settles_s == pytest.approx(settles_s, abs=1e-9)
    assert late.added_s == pytest.approx(settles_s, abs=1e-9)


def test_a_lag_by_its_10_to_90_time_takes_that_long() -> None:
    """10 to 90 % of a first-order step takes ln 9 = 2.197 time constants (textbook)."""
    assert lag(ten_ninety_s=0.2197224577).lengths_s(1 / 30)[0] == pytest.approx(0.1, abs=1e-9)


def test_half_of_the_light_comes_where_the_curve_puts_it() -> None:
    """Averaged, then through a square curve, half the light is 29 % of the way down (1 - 1/sqrt 2)."""
    late = lateness(SNAP, Smoothing("average", packets=3), Transfer(SQUARE), AT_30)
    assert late.packet_half_s == pytest.approx(0.1 * (1 - 1 / math.sqrt(2)), abs=1e-9)
    after = lateness(SNAP, Smoothing("average", packets=3, after_curve=True), Transfer(SQUARE), AT_30)
    assert after.packet_half_s == pytest.approx(0.05, abs=1e-9)


def test_the_cue_waits_for_its_packet_and_for_the_gateway() -> None:
    """Worst phase adds one packet time of the desk and one of a gateway with its own clock; best none."""
    link = Link(30.0, gateway_hz=40.0, delay_s=0.01)
    late = lateness(SNAP, Smoothing("average", packets=2), Transfer(), link)
    assert late.settles.best_s == pytest.approx(0.01 + 2 / 40, abs=1e-9)
    assert late.settles.worst_s == pytest.approx(0.01 + 2 / 40 + 1 / 30 + 1 / 40, abs=1e-9)


@pytest.mark.parametrize(
    ("moving_s", "camera", "frames"),
    [
        (0.0, Camera(24.0, 180.0), (0, 1)),  # a stair falls into an open shutter or does not
        (0.0, Camera(24.0, 360.0), (0, 1)),
        (2 / 30, Camera(24.0, 180.0), (2, 3)),  # 0.0667 + 0.0208 s are 2.1 frames
        (5 / 30, Camera(24.0, 180.0), (4, 5)),  # 4.5 frames
        (1 / 24, Camera(24.0, 180.0), (1, 2)),  # 1.5 frames
        (1 / 24, Camera(24.0, 180.0, readout_s=1 / 24), (2, 3)),  # 2.5 frames, over all rows
    ],
)
def test_frames_partly_exposed_by_a_snap(moving_s: float, camera: Camera, frames: tuple[int, int]) -> None:
    """Openings one frame apart within a stretch of the change plus the shutter: counted by hand."""
    assert partly_exposed(moving_s, camera) == frames


@pytest.mark.parametrize(
    ("moving_s", "shutter_deg"), [(0.0, 90.0), (0.0667, 180.0), (0.19, 172.8), (1.0, 360.0)]
)
def test_frames_partly_exposed_agree_with_counting(moving_s: float, shutter_deg: float) -> None:
    """Counting frames at many phases never finds more or fewer than the bounds, and reaches both."""
    camera = Camera(24.0, shutter_deg)
    counts = set()
    for phase in np.linspace(0, 1, 997, endpoint=False):
        opens_s = (np.arange(-5, 60) + phase) / 24
        counts.add(int(((opens_s < moving_s) & (opens_s + camera.open_s > 0)).sum()))
    assert (min(counts), max(counts)) == partly_exposed(moving_s, camera)


def test_a_burst_not_exceeded_agrees_with_the_enumeration_of_all_losses() -> None:
    """For 10 packets the probability of the longest run is summed over all 1024 patterns."""
    share = 0.3
    longest = np.zeros(11)
    for pattern in range(1024):
        bits = [(pattern >> n) & 1 for n in range(10)]
        run = best = 0
        for bit in bits:
            run = run + 1 if bit else 0
            best = max(best, run)
        longest[best] += share ** sum(bits) * (1 - share) ** (10 - sum(bits))
    below = np.cumsum(longest)
    for confidence in (0.05, 0.5, 0.8, 0.95, 0.999):
        expected = int(np.searchsorted(below, confidence))
        assert burst_not_exceeded(LostAtRandom(share), 10, confidence) == expected


def test_bursts_not_exceeded_agree_with_the_enumeration_of_all_states() -> None:
    """The two-state chain's probability of each of 512 patterns of 9 packets, by its definition."""
    share, mean_length = 0.2, 2.5
    good_again = 1 / mean_length
    going_bad = share * good_again / (1 - share)  # so that the steady state has the share
    longest = np.zeros(10)
    for pattern in range(512):
        bits = [(pattern >> n) & 1 for n in range(9)]
        chance = share if bits[0] else 1 - share
        run = best = bits[0]
        for before, bit in itertools.pairwise(bits):
            turns = good_again if before else going_bad
            chance *= turns if bit != before else 1 - turns
            run = run + 1 if bit else 0
            best = max(best, run)
        longest[best] += chance
    below = np.cumsum(longest)
    assert below[-1] == pytest.approx(1.0)
    for confidence in (0.05, 0.5, 0.8, 0.95, 0.99, 0.999):
        expected = int(np.searchsorted(below, confidence))
        assert burst_not_exceeded(LostInBursts(share, mean_length), 9, confidence) == expected


def test_bursts_have_the_share_and_the_length_they_were_asked_for() -> None:
    """Over 2 million packets: the share lost, and the mean run (geometric), within 1 %."""
    mask = lost_mask(LostInBursts(0.05, 4.0, seed=3), 1000, 2000)
    starts = (mask[:, 1:] & ~mask[:, :-1]).sum()
    assert mask.mean() == pytest.approx(0.05, rel=0.02)
    assert mask[:, 1:].sum() / starts == pytest.approx(4.0, rel=0.02)


def test_rates_that_differ_repeat_packets_unevenly() -> None:
    """30 packets a second through 44 ticks a second: 44 packets on the line in the second carry 30 values."""
    result = answer(Fade(100, 0, 1, Link(30.0, gateway_hz=44.0), bits=16))
    assert result.packets_sent == 45
    assert result.distinct_values == 31
    assert result.repeated_packets == 14
