"""Steps of a staircase come with packets: whole packets apart, and no two models alike for free times."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.made import filmed, sent
from modebook.measure.answer import measure
from modebook.measure.packet_grid import on_grid
from modebook.measure.sending import Sending
from modebook.measure.setup import Setup

PERIOD_S = 1 / 30


def _stairs(times_s: np.ndarray, values: np.ndarray) -> Sending:
    count = len(times_s)
    weights = np.stack([1.0 - values, values], axis=1)
    none = np.zeros(count)
    return Sending(np.arange(count), none, times_s, none, np.zeros(count, dtype=bool), weights, values)


@settings(max_examples=80, deadline=None)
@given(
    ticks=st.lists(st.integers(1, 6), min_size=1, max_size=5),
    from_s=st.floats(0.0, 1.0),
    off=st.floats(-0.15, 0.15),
)
def test_steps_near_packets_are_put_on_them(ticks: list[int], from_s: float, off: float) -> None:
    """Steps that are off by up to a seventh of a packet are one event whose steps are whole packets apart."""
    on = np.concatenate([[0], np.cumsum(ticks)]).astype(float)
    times_s = from_s + on * PERIOD_S
    times_s[1::2] += off * PERIOD_S
    values = np.linspace(0.0, 1.0, len(times_s) + 1)
    made = on_grid(_stairs(times_s, values), times_s, PERIOD_S)
    assert made is not None
    assert made.event.tolist() == [0] * len(times_s)
    again_s = made.steps_s(made.start_s, made.span_s)
    assert np.diff(again_s) / PERIOD_S == pytest.approx(np.diff(on), abs=1e-6)
    assert np.abs(again_s - times_s).max() < 0.3 * PERIOD_S
    assert not made.free_span.any()


def test_changes_that_turn_or_stand_apart_stay_alone():
    """Up and down are two events, and so are steps with a second between them."""
    times_s = np.array([0.5, 1.6, 2.0])
    sending = _stairs(times_s, np.array([0.0, 0.5, 1.0, 0.0]))
    assert on_grid(sending, times_s, PERIOD_S) is None


def _restarted(at_s: np.ndarray, levels: np.ndarray, length_s: float) -> np.ndarray:
    """From each new value a straight line of that length, from where the light stands."""
    light, now, begin, start, goal = np.empty_like(levels), levels[0], -9.0, levels[0], levels[0]
    for n, (time, value) in enumerate(zip(at_s, levels, strict=True)):
        if value != goal:
            begin, start, goal = time, now, value
        now = start + (goal - start) * min((time - begin) / length_s, 1.0)
        light[n] = now
    return light


def test_few_frames_tell_a_restart_by_stairs_of_whole_packets():
    """At 50 frames a second and free times an average makes the same of these stairs, but not by packets."""
    stairs = [0.0, 3.0, 5.0, 8.0]
    moves = [(0.5, 1.0), (1.1, 0.0)]
    for turn in range(2):
        up, down = 1.7 + 1.8 * turn, 2.6 + 1.8 * turn
        moves += [(up + tick * PERIOD_S, (n + 1) / 4) for n, tick in enumerate(stairs)]
        moves += [(down + tick * PERIOD_S, (3 - n) / 4) for n, tick in enumerate(stairs)]
    at_s, levels = sent(moves, 5.4)
    trace = filmed(at_s, _restarted(at_s, levels, 4 * PERIOD_S), fps=50.0, open_s=0.01, noise=0.002)
    answer = measure(trace, Setup(refresh_hz=30.0, shutter_deg=180.0))
    assert answer.judgement.method == "restart"
    assert answer.judgement.length_packets == pytest.approx(4.0, abs=0.15)
    # Two snaps and four staircases, each of them one event by now.
    assert len(answer.fits["restart"].start_s) == 6
    steps_s = answer.fits["restart"].start_s[2] + np.array(stairs) * PERIOD_S
    assert steps_s == pytest.approx(1.7 + np.array(stairs) * PERIOD_S, abs=0.004)
