"""A fade as packets of a straight line: found again at any phase, though nobody has seen its packets."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.measure.answer import measure
from modebook.measure.sending import Sending, with_ramp
from modebook.measure.setup import Setup
from modebook.measure.trace import Trace
from modebook.response.camera import exposures
from modebook.response.smoothers import smooth
from modebook.response.smoothing import OFF, Smoothing

HZ = 30.0


def two_levels() -> Sending:
    """One step from 0 to 1 at 2 s."""
    return Sending(
        np.array([0]),
        np.zeros(1),
        np.array([2.0]),
        np.zeros(1),
        np.zeros(1, dtype=bool),
        np.array([[1.0, 0.0], [0.0, 1.0]]),
        np.array([0.0, 1.0]),
    )


@given(span_s=st.floats(0.3, 3.0), lead=st.floats(0.0, 1.0))
def test_the_packets_of_a_fade_lie_on_its_line(span_s: float, lead: float) -> None:
    """By the definition of a straight fade: at time t after its start it has gone t / span, at most all."""
    fade = with_ramp(two_levels(), 0, span_s, 1 / HZ, lead / HZ)
    steps_s = fade.steps_s(fade.start_s, fade.span_s)
    weights, values = fade.heights(fade.span_s, np.array([lead / HZ]))
    assert np.diff(steps_s) == pytest.approx(1 / HZ)
    begun_s = 2.0 - lead / HZ
    assert values[1:] == pytest.approx(np.minimum((steps_s - begun_s) / span_s, 1.0))
    assert values[-1] == 1.0
    assert weights.sum(axis=1) == pytest.approx(1.0)
    assert weights[:, 1] == pytest.approx(values)


@pytest.mark.parametrize(("method", "packets"), [("none", 0.0), ("average", 2.0), ("restart", 2.0)])
@pytest.mark.parametrize("phase", [0.1, 0.6])
def test_fades_tell_short_smoothing_that_stairs_do_not(method: str, packets: float, phase: float) -> None:
    """Snaps and two fades at 240 frames a second: made by the response engine, packet by packet."""
    at_s = np.arange(240) / HZ + phase / HZ
    levels = np.select(
        [at_s < 0.6, at_s < 1.2, at_s < 1.9], [0.0, 1.0, 0.0], np.clip((at_s - 1.913) / 0.7, 0.0, 1.0)
    )
    levels = np.where(at_s > 3.2, np.clip(1.0 - (at_s - 3.207) / 0.9, 0.0, 1.0), levels)
    choice = OFF if method == "none" else Smoothing(method, packets=packets)  # type: ignore[arg-type]
    light = smooth(choice, at_s, levels[None], 0.0, 1 / HZ)
    opens = np.arange(0.1, 4.9, 1 / 240)
    noise = 0.003 * np.random.default_rng(2).standard_normal(len(opens))
    seen = 0.05 + 0.8 * exposures(light, opens, 1 / 480)[0] + noise
    found = measure(Trace("made", "trace", opens, seen, 1 / 480, 240.0), Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.method) == (True, method)
    assert found.length_packets == pytest.approx(packets, abs=0.1)
