"""Exposure of modulated light against scipy.integrate.quad over the waveform itself."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from scipy.integrate import quad

from modebook.response import modulation as m


def light_at(light: m.Modulation, periods: float) -> float:
    """Give the light by the waveform's own definition."""
    if light.waveform == "sine":
        return 1 + light.depth * math.sin(2 * math.pi * periods)
    return 1.0 if periods % 1 < light.duty else 1 - light.depth


@pytest.mark.parametrize("waveform", ["pwm", "sine"])
@pytest.mark.parametrize(
    ("frequency_hz", "open_s"), [(10.0, 0.02), (100.0, 0.0208), (312.5, 1 / 96), (25.0, 0.04)]
)
@pytest.mark.parametrize(("duty", "depth"), [(0.1, 1.0), (0.5, 0.4), (0.93, 1.0)])
@pytest.mark.parametrize("phase", [0.0, 0.31, 0.77, -1.4])
def test_exposure_is_the_integral_of_the_light(
    waveform: m.Waveform, frequency_hz: float, open_s: float, duty: float, depth: float, phase: float
) -> None:
    """scipy.integrate.quad, told where PWM switches."""
    light = m.Modulation(waveform, frequency_hz, duty, depth)
    end = phase + frequency_hz * open_s
    first, last = math.floor(phase), math.ceil(end)
    cuts = sorted(
        {phase, end} | {at for n in range(first, last + 1) for at in (float(n), n + duty) if phase < at < end}
    )
    parts = (quad(lambda t: light_at(light, t), a, b, epsabs=1e-13)[0] for a, b in pairwise(cuts))
    assert m.exposure(light, open_s, phase) == pytest.approx(sum(parts) / frequency_hz, rel=1e-9)


def test_the_greatest_difference_of_a_sine_is_the_sinc_of_its_periods() -> None:
    """Closed form: 2 depth |sin(pi w)| / (pi w) of the mean, w periods in the shutter; e.g. w = 2.5."""
    found = m.frame_difference(m.Modulation("sine", 120.0, depth=0.6), 24, 180)
    assert found.long == pytest.approx(2 * 0.6 / (math.pi * 2.5), rel=1e-12)
    # 120 Hz makes five whole periods in a frame of 24 fps: the next frame is alike.
    assert found.successive == pytest.approx(0, abs=1e-12)


def test_mains_light_of_50_hz_at_24_fps() -> None:
    """Common practice, no source: 100 Hz light at 24 fps wants a shutter of 172.8 degrees (1/50 s)."""
    assert any(abs(a - 172.8) < 1e-9 for a in m.shutter_without_flicker_deg(100, 24))
    light = m.Modulation("sine", 100.0)
    assert m.frame_difference(light, 24, 172.8).long < 1e-9 < 0.01 < m.frame_difference(light, 24, 180).long
