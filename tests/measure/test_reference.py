"""When a reference lamp's step came: exact where a frame saw part of it, else bracketed by frames."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.made import averaged, filmed, sent
from modebook.measure.answer import measure
from modebook.measure.reference import Step, merged, time_of
from modebook.measure.setup import Setup
from modebook.measure.trace import Trace

FRAME_S = 0.04


@settings(max_examples=150, deadline=None)
@given(
    at_s=st.floats(0.2, 0.6),
    share=st.floats(0.05, 1.0),
    over=st.one_of(st.none(), st.floats(1.0, 1.6)),
    readout=st.sampled_from([0.0, 0.05, 0.2]),
    rising=st.booleans(),
    halved=st.booleans(),
)
def test_the_step_lies_where_its_frames_say(
    at_s: float, share: float, over: float | None, readout: float, rising: bool, halved: bool
) -> None:
    """A step at any time, seen by any exposure and readout, clipped at any level up to 1.6 times below: the
    time found is off by no more than its slack and a fiftieth of exposure and readout.
    """
    open_s = share * FRAME_S
    opens = np.arange(0.0, 1.0, FRAME_S)
    spread_s = readout * FRAME_S
    rows_s = np.linspace(0.0, spread_s, 41)
    new = np.clip((opens[:, None] + rows_s + open_s - at_s) / open_s, 0.0, 1.0).mean(axis=1)
    level = new if rising else 1.0 - new
    clip = 1.0 if over is None else 1.0 / over
    seen = np.minimum(level, clip)
    changed = np.flatnonzero((new > 0.0) & (new < 1.0))
    first = int(changed[0]) if len(changed) else int(np.flatnonzero(new == 0.0)[-1]) + 1
    around = (first, first + len(changed))
    between = (0.0, 1.2 * clip) if rising else (1.2 * clip, 0.0)
    top = (clip, 1.0, 1.03) if halved and over else (clip, clip, 1.7 * clip)
    if over is None:
        between, top = ((0.0, 1.0) if rising else (1.0, 0.0)), None  # type: ignore[assignment]
    found_s, doubt_s, slack_s = time_of(seen, opens, around, between, top, (open_s, spread_s), 0.0)
    assert abs(found_s - at_s) <= slack_s + 0.021 * (open_s + spread_s) + 1e-9
    assert doubt_s > 0.0
    # Never less sharp than the dark between two exposures and one whole exposure.
    assert slack_s <= 0.5 * (FRAME_S + spread_s) + 1e-9


def test_two_steps_closer_than_packets_are_one():
    steps = merged([Step(1.0, 0.5, 0.001), Step(1.004, 1.0, 0.002, 0.003)], 0.0, 0.01)
    assert steps == [Step(1.002, 1.0, 0.002, 0.003)]


@pytest.mark.parametrize("smoothed", [False, True])
def test_few_clipped_frames_beside_a_reference_tell_off_from_two_packets(smoothed: bool):
    """30 frames a second, open for half, clipped: both lights jump between the same frames."""
    late_s = np.random.default_rng(1).uniform(0.0, 0.04, 6)
    moves = [(0.5 + 0.61 * n + float(late_s[n]), float(n % 2 == 0)) for n in range(6)]
    at_s, levels = sent(moves, 4.6)

    def film(length_s: float, **more: object) -> Trace:
        light = averaged(at_s, levels, length_s)
        return filmed(at_s, light, fps=30.0, open_s=1 / 60, noise=0.003, top=0.8, **more)

    lamp = film(0.0)
    length_s = 2 / 30 if smoothed else 0.0
    answer = measure(
        film(length_s, reference=lamp.level, reference_clipped=lamp.clipped),
        Setup(refresh_hz=30.0, shutter_deg=180.0),
    )
    if not smoothed:
        assert answer.judgement.method == "none"
        assert answer.judgement.interval_packets is not None
        assert answer.judgement.interval_packets[1] < 0.2
        return
    assert answer.judgement.method != "none"
    assert answer.fits["none"].deviance > answer.fits["average"].deviance + 100
    assert answer.fits["average"].length_s == pytest.approx(length_s, abs=0.3 / 30)


@pytest.mark.parametrize("rising", [True, False])
def test_an_exposure_that_saw_part_of_it_tells_the_time(rising: bool):
    """Half an exposure lit is a step in its middle."""
    level = np.array([0.0, 0.5, 1.0]) if rising else np.array([1.0, 0.5, 0.0])
    between = (0.0, 1.0) if rising else (1.0, 0.0)
    at_s, _, slack_s = time_of(level, np.array([0.0, 0.04, 0.08]), (1, 2), between, None, (0.02, 0.0), 0.001)
    assert at_s == pytest.approx(0.05)
    assert slack_s == 0.0
