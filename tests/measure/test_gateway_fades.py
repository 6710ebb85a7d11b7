"""A gateway at a rate of its own repeats the newest packet that it has: fades are taken for just that."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.made import averaged, filmed, sent
from measure.test_fades import two_levels
from modebook.measure.answer import measure
from modebook.measure.sending import with_ramp
from modebook.measure.setup import Setup

DESK_HZ, GATEWAY_HZ = 40.0, 30.0


def passed_on(desk_phase_s: float, fade_s: float) -> list[tuple[float, float]]:
    """(time, level) of a gateway's packets: two snaps, then a fade up and one down, by its definition."""

    def desk(at_s: float) -> float:
        if at_s < 1.7:
            return float(0.5 <= at_s < 1.1)
        up, down = (at_s - 1.713) / fade_s, (at_s - 3.519) / fade_s
        return float(np.clip(up, 0, 1) - np.clip(down, 0, 1))

    made = []
    for at_s in np.arange(0.0, 5.4, 1 / GATEWAY_HZ):
        number = np.floor((at_s - desk_phase_s) * DESK_HZ + 1e-9)
        made.append((float(at_s), desk(desk_phase_s + number / DESK_HZ)))
    return made


@given(phase_s=st.floats(0.0, 1 / DESK_HZ), span_s=st.floats(0.4, 2.0))
def test_each_packet_is_the_newest_of_the_desk(phase_s: float, span_s: float):
    """By definition: the line's height at the desk's last packet, no later than the gateway's own."""
    fade = with_ramp(two_levels(), 0, span_s, 1 / GATEWAY_HZ, 0.0, 1 / DESK_HZ, phase_s)
    _, values = fade.heights(fade.span_s, np.zeros(1))
    ticks = np.arange(len(values) - 1) / GATEWAY_HZ
    newest = phase_s + np.floor((ticks - phase_s) * DESK_HZ) / DESK_HZ
    # Where the two clocks meet to a rounding error, either packet is the newest.
    sure = np.abs((ticks - phase_s) * DESK_HZ - np.round((ticks - phase_s) * DESK_HZ)) > 1e-6
    expected = np.clip(newest / span_s, 0.0, 1.0)
    assert values[1:-1][sure[:-1]] == pytest.approx(expected[:-1][sure[:-1]])


@pytest.mark.parametrize(("packets", "method"), [(0.0, "none"), (2.0, "average")])
def test_an_uneven_fade_still_tells_the_method(packets: float, method: str):
    steps = passed_on(0.007, 0.9)
    at_s, levels = sent(steps, 5.4)
    light = averaged(at_s, levels, packets / GATEWAY_HZ) if packets else levels
    answer = measure(filmed(at_s, light), Setup(refresh_hz=DESK_HZ, gateway_hz=GATEWAY_HZ))
    found = answer.judgement
    assert (found.can_tell, found.method) == (True, method)
    assert found.length_packets == pytest.approx(packets, abs=0.2)
    assert answer.scale < 2.0
