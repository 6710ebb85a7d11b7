"""The closed forms of the models against the response engine, which works packet by packet."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.measure.models import METHODS, Method, answered, unit_answer
from modebook.response.camera import exposures
from modebook.response.smoothers import smooth
from modebook.response.smoothing import OFF, Smoothing

PERIOD_S = 1 / 44


def by_packets(
    method: str, packets: float, levels: np.ndarray, at_s: np.ndarray, open_s: float
) -> np.ndarray:
    """What the engine makes of one packet a period, the first at 0."""
    times_s = np.arange(len(levels)) * PERIOD_S
    choice = OFF if method == "none" else Smoothing(method, packets=packets)  # type: ignore[arg-type]
    light = smooth(choice, times_s, levels[None], float(levels[0]), PERIOD_S)
    return exposures(light, at_s, open_s)[0] if open_s else light.at(at_s)[0]


@settings(max_examples=60, deadline=None)
@given(
    method=st.sampled_from(METHODS),
    packets=st.floats(0.2, 12.0),
    steps=st.lists(st.tuples(st.integers(1, 6), st.floats(0.0, 1.0)), min_size=1, max_size=6),
    open_s=st.sampled_from([0.0, 0.002, 0.02]),
)
def test_steps_give_the_light_that_packets_give(
    method: Method, packets: float, steps: list[tuple[int, float]], open_s: float
) -> None:
    """Every model's exposures of a few steps are those of the engine's light, packet by packet."""
    levels, at_packet, values = [0.0] * 3, [], [0.0]
    for wait, value in steps:
        levels += [levels[-1]] * (wait - 1) + [value]
        if value != values[-1]:
            at_packet.append(len(levels) - 1)
            values.append(value)
    if not at_packet:
        return
    levels += [levels[-1]] * 40
    # A little beside the packets: at a jump itself the value is a matter of rounding.
    at_s = np.linspace(0.01, (len(levels) - 1) * PERIOD_S, 300) + 1.7e-5
    made = answered(
        method,
        at_s,
        open_s,
        0.0,
        np.array(at_packet) * PERIOD_S,
        np.array(values)[:, None],
        packets * PERIOD_S,
        PERIOD_S,
    )[:, 0]
    expected = by_packets(method, packets, np.array(levels), at_s, open_s)
    assert np.abs(made - expected).max() < 2e-6


@settings(max_examples=60, deadline=None)
@given(
    method=st.sampled_from(["none", "average", "interpolate", "lag"]),
    length_s=st.floats(0.0, 0.4),
    waits_s=st.lists(st.floats(0.0, 0.3), min_size=1, max_size=12),
    seed=st.integers(0, 99),
    open_s=st.sampled_from([0.0, 0.0004, 0.02]),
)
def test_answers_to_steps_add_up(
    method: Method, length_s: float, waits_s: list[float], seed: int, open_s: float
) -> None:
    """Of methods that add up, the light after steps at any times is the sum of what each step alone makes."""
    steps_s = np.cumsum(waits_s)
    values = np.random.default_rng(seed).uniform(0.0, 1.0, (len(steps_s) + 1, 2))
    at_s = np.linspace(-0.1, steps_s[-1] + 0.6, 400) + 1.7e-6
    made = answered(method, at_s, open_s, 0.0, steps_s, values, length_s, PERIOD_S)
    shape_s, late_s = length_s, 0.0
    if method == "interpolate":
        shape_s, late_s = min(length_s, PERIOD_S), max(length_s - PERIOD_S, 0.0)
    since = at_s[:, None] - steps_s[None, :] - late_s
    alone = unit_answer(method, since, open_s, shape_s)
    assert made == pytest.approx(values[0] + alone @ np.diff(values, axis=0), abs=1e-8)


def test_rows_that_open_later_see_a_later_light() -> None:
    """A patch of rows that open over 10 ms sees a straight line as its middle row does."""
    at_s = np.linspace(0.05, 0.15, 20)
    one = np.array([[0.0], [1.0]])
    wide = answered("average", at_s, 0.002, 0.010, np.array([0.0]), one, 1.0, PERIOD_S)
    middle = answered("average", at_s + 0.005, 0.002, 0.0, np.array([0.0]), one, 1.0, PERIOD_S)
    assert wide == pytest.approx(middle, abs=1e-12)


def test_one_full_snap_cannot_tell_three_of_the_models_apart() -> None:
    """An average, a limit and a restarted line of one length are one light after a full snap."""
    at_s = np.linspace(-0.1, 0.5, 200)
    lights = [
        answered(method, at_s, 0.004, 0.0, np.array([0.0]), np.array([[0.0], [1.0]]), 0.15, PERIOD_S)
        for method in ("average", "limit", "restart")
    ]
    assert lights[0] == pytest.approx(lights[1], abs=1e-12)
    assert lights[0] == pytest.approx(lights[2], abs=1e-12)
