"""A modulated light under a shutter: closed forms, refusals, extremes that are reached and not passed."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import modulation as m
from modebook.response.errors import ResponseError
from modebook.response.modulation import Modulation

LIGHTS = st.builds(
    Modulation,
    st.sampled_from(["pwm", "sine"]),
    st.floats(20, 5000),
    st.floats(0.01, 1),
    st.floats(0, 1),
)
FPS = st.sampled_from([23.976, 24.0, 25.0, 29.97, 50.0])
SHUTTERS = st.floats(1, 360)
PHASES = st.floats(0, 1)


@given(LIGHTS, FPS, SHUTTERS, PHASES, PHASES)
def test_no_two_frames_differ_by_more_than_is_said(
    light: Modulation, fps: float, shutter_deg: float, a: float, b: float
) -> None:
    found = m.frame_difference(light, fps, shutter_deg)
    mean = light.mean * found.exposure_s
    one, other = (m.exposure(light, found.exposure_s, phase) for phase in (a, b))
    assert abs(one - other) <= found.long * mean + 1e-7 * mean
    following = m.exposure(light, found.exposure_s, a + light.frequency_hz / fps)
    assert abs(one - following) <= found.successive * mean + 1e-7 * mean
    assert found.successive <= found.long * (1 + 1e-7) + 1e-9


@given(LIGHTS, FPS, SHUTTERS)
def test_some_two_frames_differ_by_as_much_as_is_said(
    light: Modulation, fps: float, shutter_deg: float
) -> None:
    """A fine sweep of the phase comes within its own grain of both figures."""
    found = m.frame_difference(light, fps, shutter_deg)
    mean = light.mean * found.exposure_s
    grain = 1 / 400
    phases = np.arange(0, 1, grain)
    at = np.array([m.exposure(light, found.exposure_s, phase) for phase in phases])
    following = np.array([m.exposure(light, found.exposure_s, p + light.frequency_hz / fps) for p in phases])
    # The exposure's slope by the grain, and the last digits of a float.
    slack = 2 * math.pi * grain * light.depth / light.frequency_hz + 1e-12 * mean
    assert np.ptp(at) >= found.long * mean - 2 * slack
    assert np.abs(following - at).max() >= found.successive * mean - 2 * slack


@given(LIGHTS, FPS, SHUTTERS, st.floats(0.05, 1), PHASES)
def test_no_two_rows_differ_by_more_than_is_said(
    light: Modulation, fps: float, shutter_deg: float, share: float, phase: float
) -> None:
    readout_s = share / fps
    found = m.bands(light, fps, shutter_deg, readout_s)
    open_s = m.exposure_s(fps, shutter_deg)
    rows = [m.exposure(light, open_s, phase + found.count * row / 99) for row in range(100)]
    assert np.ptp(rows) <= (found.difference + 1e-7) * light.mean * open_s
    assert found.count == pytest.approx(light.frequency_hz * readout_s)
    assert found.height == pytest.approx(1 / found.count)


def test_a_few_rows_of_a_slow_light_differ_by_their_share_of_the_flank() -> None:
    """Closed form: PWM of half duty, open for a quarter period, read out in an eighth: half the swing."""
    light = Modulation("pwm", 25.0)
    found = m.bands(light, 50, 180, 0.125 / 25)
    assert found.difference == pytest.approx(0.125 / (0.5 * 0.25))
    sine = m.bands(Modulation("sine", 25.0), 50, 180, 0.125 / 25)
    swing = 2 * math.sin(math.pi / 4) / math.pi
    assert sine.difference == pytest.approx(swing * math.sin(math.pi / 8) / 0.25)


def test_a_light_in_step_with_the_camera_is_alike_in_all_frames_and_bands_stand_still() -> None:
    for waveform in ("pwm", "sine"):
        light = Modulation(waveform, 240.0, 0.3)
        found = m.frame_difference(light, 24, 100)
        assert found.successive == pytest.approx(0, abs=1e-9)
        assert found.long > 0.01
        assert m.bands(light, 24, 100, 0.02).drift_per_frame == 0


def test_bands_drift_the_short_way_around() -> None:
    """243 Hz at 24 fps are 10.125 periods a frame, 237 Hz 9.875."""
    assert m.bands(Modulation("sine", 243.0), 24, 180, 0.02).drift_per_frame == pytest.approx(0.125)
    assert m.bands(Modulation("sine", 237.0), 24, 180, 0.02).drift_per_frame == pytest.approx(-0.125)


@given(st.floats(30, 2000), FPS, st.sampled_from(["pwm", "sine"]), st.floats(0.05, 0.95))
def test_a_shutter_open_for_whole_periods_sees_no_flicker(
    frequency_hz: float, fps: float, waveform: m.Waveform, duty: float
) -> None:
    light = Modulation(waveform, frequency_hz, duty)
    angles = m.shutter_without_flicker_deg(frequency_hz, fps)
    assert len(angles) == math.floor(frequency_hz / fps * (1 + 1e-9))
    for angle in angles[:20]:
        assert m.frame_difference(light, fps, min(angle, 360)).long < 1e-6


def test_a_frame_that_may_fall_into_the_dark_is_infinitely_many_stops_down() -> None:
    """Closed form: open for half a period of a half-duty square wave, a frame gets all or nothing."""
    found = m.frame_difference(Modulation("pwm", 24.0), 24, 180)
    assert found.long == pytest.approx(2)
    assert found.long_stops == math.inf


def test_stops_are_the_ratio_of_the_brightest_to_the_darkest() -> None:
    """Closed form: 1.5 periods at half duty hold 0.5 to 1 period of light: one stop."""
    found = m.frame_difference(Modulation("pwm", 72.0), 24, 180)
    assert found.long_stops == pytest.approx(1)


@given(FPS, SHUTTERS)
def test_a_light_that_is_not_modulated_never_differs(fps: float, shutter_deg: float) -> None:
    for light in (
        Modulation("pwm", 100.0, 1.0),
        Modulation("pwm", 100.0, depth=0),
        Modulation("sine", 100.0, depth=0),
    ):
        found = m.frame_difference(light, fps, shutter_deg)
        assert (found.successive, found.long, found.long_stops) == pytest.approx((0, 0, 0), abs=1e-9)


def test_impossible_figures_are_refused() -> None:
    light = Modulation("pwm", 100.0)
    for shutter_deg in (0, -1, 361, math.nan):
        with pytest.raises(ResponseError, match="shutter"):
            m.frame_difference(light, 24, shutter_deg)
    for fps in (0, -24, math.nan, math.inf):
        with pytest.raises(ResponseError, match="frame rate"):
            m.frame_difference(light, fps, 180)
    for readout_s in (0, -1, math.nan):
        with pytest.raises(ResponseError, match="readout"):
            m.bands(light, 24, 180, readout_s)
    with pytest.raises(ResponseError, match="longer than the frame"):
        m.bands(light, 24, 180, 0.05)
    for bad in (
        {"frequency_hz": 0},
        {"duty": 0},
        {"duty": 1.1},
        {"depth": -0.1},
        {"depth": math.nan},
        {"waveform": "saw"},
    ):
        with pytest.raises(ResponseError):
            Modulation(**({"waveform": "pwm", "frequency_hz": 100.0} | bad))  # type: ignore[arg-type]
