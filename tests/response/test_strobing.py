"""Which strobe rates packets give evenly, and which stay even under a camera."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from modebook.response import strobing as s
from modebook.response.errors import ResponseError


@given(st.floats(20, 200), st.floats(0.5, 10))
def test_packets_space_flashes_as_a_walk_through_them_does(refresh_hz: float, strobe_hz: float) -> None:
    """Each flash waits for the first packet at or after its time; the gaps are counted."""
    found = s.strobe_by_packets(strobe_hz, refresh_hz)
    ratio = refresh_hz / strobe_hz
    heard = [math.ceil(n * ratio - 1e-3) for n in range(60)]
    gaps = {b - a for a, b in pairwise(heard)}
    assert found.shortest_packets <= min(gaps)
    assert max(gaps) <= found.longest_packets
    assert found.longest_packets - found.shortest_packets == (0 if found.even else 1)
    assert found.shortest_s * refresh_hz == pytest.approx(found.shortest_packets)
    assert found.longest_s * refresh_hz == pytest.approx(found.longest_packets)


def test_ten_hz_is_even_at_30_and_40_packets_a_second_and_not_at_44() -> None:
    assert s.strobe_by_packets(10, 30).even
    assert s.strobe_by_packets(10, 40).even
    uneven = s.strobe_by_packets(10, 44)
    assert (uneven.even, uneven.shortest_packets, uneven.longest_packets) == (False, 4, 5)


def test_even_rates_are_whole_parts_of_the_packet_rate() -> None:
    rates = s.even_strobe_rates_hz(44, 5)
    assert rates == pytest.approx([22, 44 / 3, 11, 8.8, 44 / 6, 44 / 7, 5.5])
    assert all(s.strobe_by_packets(rate, 44).even for rate in rates)


def test_under_24_frames_44_packets_leave_4_2_and_1_hz() -> None:
    """44/n = 24/m has n/m = 11/6: n = 11, 22, 33, 44 (arithmetic)."""
    assert s.even_on_camera_hz(44, 24) == pytest.approx([4, 2, 4 / 3, 1])


def test_under_a_camera() -> None:
    assert s.strobe_under_camera(24, 24) == s.CameraStrobe(True, 1, 1, 1, 1)
    assert s.strobe_under_camera(48, 24) == s.CameraStrobe(True, 2, 2, 1, 1)
    assert s.strobe_under_camera(8, 24) == s.CameraStrobe(True, 0, 1, 3, 3)
    assert s.strobe_under_camera(10, 24) == s.CameraStrobe(False, 0, 1, 2, 3)
    assert s.strobe_under_camera(60, 24) == s.CameraStrobe(False, 2, 3, 1, 1)
    assert s.strobe_under_camera(24, 24000 / 1001).even is False


@given(st.floats(0.5, 100), st.sampled_from([23.976, 24.0, 25.0, 50.0]))
def test_a_walk_through_the_frames_counts_no_more_and_no_fewer(strobe_hz: float, fps: float) -> None:
    """Flashes at even times, sorted into frames."""
    found = s.strobe_under_camera(strobe_hz, fps)
    # A flash on the edge of a frame belongs to either.
    for ratio in (fps / strobe_hz, strobe_hz / fps):
        assume(abs(ratio - round(ratio)) >= 1e-3)
    frames = [math.floor((n + 0.37) * fps / strobe_hz) for n in range(200)]
    counts = [frames.count(frame) for frame in range(frames[0] + 1, frames[-1])]
    gaps = {b - a for a, b in pairwise(frames) if b > a}
    assert found.fewest_per_frame <= min(counts)
    assert max(counts) <= found.most_per_frame
    assert found.shortest_frames <= min(gaps)
    assert max(gaps) <= found.longest_frames


def test_impossible_rates_are_refused() -> None:
    with pytest.raises(ResponseError, match="at most 22 times"):
        s.strobe_by_packets(23, 44)
    for bad in (0, -1, math.nan, math.inf):
        for call in (s.strobe_by_packets, s.strobe_under_camera):
            with pytest.raises(ResponseError, match="above 0"):
                call(bad, 24)
            with pytest.raises(ResponseError, match="above 0"):
                call(5, bad)
