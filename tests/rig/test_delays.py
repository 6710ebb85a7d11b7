"""The closed forms of a snap's half-way point against the response engine, which computes light itself."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.response.errors import ResponseError
from modebook.response.fade import Fade
from modebook.response.ideal import Ramp
from modebook.response.judge import judge
from modebook.response.late import lateness
from modebook.response.link import Link
from modebook.response.smoothing import OFF, Smoothing
from modebook.response.transfer import Transfer
from modebook.rig.delays import half_way_delays_s


def of_engine(smoothing: Smoothing, hz: float, rising: bool) -> float:
    ramp = Ramp(0.0, 1.0, 0.0) if rising else Ramp(1.0, 0.0, 0.0)
    return lateness(ramp, smoothing.toward(rising), Transfer(), Link(hz)).added_half_s


@pytest.mark.parametrize("method", ["average", "interpolate", "lag", "limit", "restart"])
@given(packets=st.sampled_from([0.0, 0.4, 1.0, 2.0, 3.5, 5.0, 8.0]), hz=st.sampled_from([25.0, 30.0, 44.0]))
@settings(max_examples=21)
def test_every_method_comes_to_what_the_engine_computes(method, packets, hz):
    """A snap over the whole scale, up and down, in 16 bits on a linear curve; within a tenth of a ms."""
    smoothing = Smoothing(method, packets=packets)
    rise_s, fall_s = half_way_delays_s(smoothing, hz)
    assert rise_s == pytest.approx(of_engine(smoothing, hz, True), abs=1e-4)
    assert fall_s == pytest.approx(of_engine(smoothing, hz, False), abs=1e-4)


def test_rise_and_fall_have_lengths_of_their_own():
    """A lag of 0.12 s up and 10 packets down, as a filament does: ln 2 of each."""
    smoothing = Smoothing("lag", length_s=0.12, fall_packets=10)
    rise_s, fall_s = half_way_delays_s(smoothing, 40.0)
    assert rise_s == pytest.approx(0.12 * math.log(2))
    assert fall_s == pytest.approx(0.25 * math.log(2))
    assert rise_s == pytest.approx(of_engine(smoothing, 40.0, True), abs=1e-4)
    assert fall_s == pytest.approx(of_engine(smoothing, 40.0, False), abs=1e-4)


def test_it_is_what_a_cues_match_goes_by():
    """judge()'s delay of a snap, less the link's own."""
    smoothing = Smoothing("average", packets=8)
    fade = Fade(0, 100, 0, Link(30, delay_s=0.01), smoothing=smoothing)
    assert judge(fade).delay_s - 0.01 == pytest.approx(half_way_delays_s(smoothing, 30.0)[0], abs=1e-4)


def test_off_is_no_delay_and_an_unknown_length_is_refused():
    """Nothing is guessed."""
    assert half_way_delays_s(OFF, 30.0) == (0.0, 0.0)
    with pytest.raises(ResponseError):
        half_way_delays_s(Smoothing("average"), 30.0)
