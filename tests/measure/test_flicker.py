"""Mains flicker is taken out where it is seen as such, and never where it looks like the light's own end."""

from __future__ import annotations

import numpy as np
import pytest

from measure.made import filmed, sent
from modebook.measure.events import recognise
from modebook.measure.flicker import without_flicker
from modebook.measure.trace import Trace

STEPS = [(0.5, 1.0), (1.5, 0.0), (2.5, 1.0), (3.5, 0.0)]


def lit(fps: float, depth: float, top: float | None = None) -> Trace:
    """Snaps, with other lamps that flicker at 100 Hz beside the light."""
    at_s, levels = sent(STEPS, 4.5)
    light = levels + depth * (1.0 + np.sin(2 * np.pi * 100.0 * at_s))
    return filmed(at_s, light, fps=fps, open_s=1e-3, noise=1e-3, top=top)


def test_flicker_of_other_lamps_is_taken_out():
    trace = lit(240.0, 0.05)
    scene = recognise(trace)
    cleaned, found = without_flicker(trace, scene.steady, scene.flat)
    assert found is not None
    assert found.frequency_hz == pytest.approx(100.0, abs=0.15)
    still = (trace.time_s > 0.7) & (trace.time_s < 1.4)
    assert np.std(cleaned.level[still]) < 0.2 * np.std(trace.level[still])


def test_a_flicker_that_the_camera_makes_slow_is_left_alone():
    """50 frames a second see 100 Hz standing still: what changes slowly is the light."""
    at_s, levels = sent(STEPS, 4.5)
    held = np.exp(-np.maximum(at_s - 0.5, 0.0) / 0.4)  # a slow light
    trace = filmed(at_s, levels - 0.3 * held * levels, fps=50.0, noise=1e-3)
    scene = recognise(trace)
    cleaned, found = without_flicker(trace, scene.steady, scene.flat)
    assert found is None
    assert cleaned is trace


def test_clipped_samples_stay_where_they_are():
    trace = lit(240.0, 0.05, top=0.9)
    scene = recognise(trace)
    cleaned, found = without_flicker(trace, scene.steady, scene.flat)
    assert found is not None
    assert trace.clipped is not None
    assert np.array_equal(cleaned.level[trace.clipped], trace.level[trace.clipped])
    assert float(cleaned.level.max()) < 1.1
