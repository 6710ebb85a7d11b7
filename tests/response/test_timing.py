"""Packet timing: limits, checks of a rate, and when a cue's change can reach the fixture."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import timing
from modebook.response.errors import ResponseError

SLOTS = st.integers(min_value=0, max_value=512)


@given(SLOTS, st.floats(92, 1000), st.floats(12, 1000))
def test_rate_and_packet_time_are_reciprocal_and_never_under_the_floor(
    slots: int, break_us: float, mark_us: float
) -> None:
    packet_s = timing.packet_s(slots, break_us, mark_us)
    assert packet_s >= 1204e-6 * (1 - 1e-12)
    assert timing.max_refresh_hz(slots, break_us, mark_us) * packet_s == pytest.approx(1)


@given(st.integers(min_value=0, max_value=511))
def test_one_more_slot_never_makes_a_packet_shorter(slots: int) -> None:
    assert timing.packet_s(slots + 1) >= timing.packet_s(slots)


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf])
@pytest.mark.parametrize("line", ["dmx", "network"])
def test_a_rate_that_is_no_rate_is_refused_on_any_line(bad: float, line: timing.Line) -> None:
    with pytest.raises(ResponseError, match="sends no packets"):
        timing.check_rate(bad, 512, line)


def test_the_line_refuses_what_it_cannot_carry_and_the_network_takes_it() -> None:
    with pytest.raises(ResponseError, match="more than a DMX512 line takes"):
        timing.check_rate(50, 512)
    assert timing.check_rate(50, 100) == 50
    assert timing.check_rate(120, 512, "network") == 120


def test_the_trades_rounding_of_the_full_rate_is_taken() -> None:
    """44.1 is how 44.0995 is written; 44.2 is too much."""
    assert timing.check_rate(44.1) == 44.1
    with pytest.raises(ResponseError):
        timing.check_rate(44.2)


def test_an_unknown_line_is_refused() -> None:
    with pytest.raises(ResponseError, match="'dmx' or 'network'"):
        timing.check_rate(30, 512, "cable")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("slots", "break_us", "mark_us"),
    [(-1, 92, 12), (513, 92, 12), (512, 91, 12), (512, 92, 11), (9, math.nan, 12)],
)
def test_figures_outside_the_standard_are_refused(slots: int, break_us: float, mark_us: float) -> None:
    with pytest.raises(ResponseError):
        timing.packet_s(slots, break_us, mark_us)


def test_the_last_slot_arrives_when_the_packet_ends() -> None:
    assert timing.slot_arrival_s(512) == pytest.approx(timing.packet_s(512))


def test_a_cue_waits_up_to_one_packet_then_for_its_slot() -> None:
    """At 40 Hz, address 1: break, mark and two slots at best; 25 ms more at worst (arithmetic)."""
    reach = timing.cue_reach_s(40, 1)
    assert reach.best_s == pytest.approx((92 + 12 + 2 * 44) * 1e-6)
    assert reach.worst_s - reach.best_s == pytest.approx(0.025)


def test_a_gateway_adds_its_own_wait_and_the_delay_is_fixed() -> None:
    plain = timing.cue_reach_s(30, 7, line="network")
    assert (plain.best_s, plain.worst_s) == pytest.approx((0, 1 / 30))
    through = timing.cue_reach_s(30, 7, line="network", gateway_hz=40, delay_s=0.004)
    assert through.best_s == pytest.approx(0.004 + (92 + 12 + 8 * 44) * 1e-6)
    assert through.worst_s - through.best_s == pytest.approx(1 / 30 + 1 / 40)


def test_a_cue_cannot_reach_an_address_that_is_not_sent() -> None:
    with pytest.raises(ResponseError, match="not among the 24 slots"):
        timing.cue_reach_s(30, 25, slots=24)
    with pytest.raises(ResponseError):
        timing.slot_arrival_s(0)
    with pytest.raises(ResponseError):
        timing.cue_reach_s(30, 1, delay_s=-1)
    with pytest.raises(ResponseError):
        timing.cue_reach_s(30, 1, gateway_hz=60)
