"""The generator's lights against closed forms and against a simulation on a fine time grid."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.clips.light import METHODS, Light, respond
from measure.clips.wire import Group, Step, Wire

T = 1 / 30
LEVELS = st.lists(st.integers(0, 255).map(lambda value: value / 255), min_size=2, max_size=12)


def _snap(method: str, packets: float, to: float = 1.0) -> Light:
    return respond(method, packets * T, np.arange(40) * T, np.full(40, to), 0.0)


def _crossing_s(light: Light, level: float) -> float:
    times_s = np.linspace(-0.1, 2.0, 420_001)
    return float(times_s[np.argmax(light.at(times_s) >= level)])


def test_a_lags_10_to_90_percent_time_is_2_197_time_constants() -> None:
    """Closed form: ln 9 = 2.1972 time constants (any textbook of control or electronics)."""
    light = _snap("lag", 3.0)
    assert _crossing_s(light, 0.9) - _crossing_s(light, 0.1) == pytest.approx(np.log(9) * 3 * T, abs=1e-5)


@pytest.mark.parametrize("method", ["average", "limit", "restart"])
def test_one_full_snap_makes_the_same_straight_line_of_n_packets(method: str) -> None:
    """Closed form: an average over N, a limit of full scale in N, a restarted ramp of N all give t / NT."""
    times_s = np.linspace(-0.1, 0.5, 601)
    assert _snap(method, 5.0).at(times_s) == pytest.approx(np.clip(times_s / (5 * T), 0, 1), abs=1e-12)


def test_half_a_snap_takes_a_limit_half_the_time_and_the_others_all_of_it() -> None:
    """Closed form: what tells a limit from an average or a restarted ramp."""
    for method, packets in (("limit", 2.5), ("average", 5.0), ("restart", 5.0)):
        assert _crossing_s(_snap(method, 5.0, 0.5), 0.5 - 1e-9) == pytest.approx(packets * T, abs=1e-5)


def test_interpolating_5_behind_at_30_hz_starts_at_133_ms_and_is_done_at_167() -> None:
    """Closed form: the line from the packet before to the snap's packet, drawn five packets late."""
    light = _snap("interpolate", 5.0)
    assert _crossing_s(light, 1e-9) == pytest.approx(4 * T, abs=1e-5)
    assert _crossing_s(light, 1 - 1e-9) == pytest.approx(5 * T, abs=1e-5)


def test_a_step_within_the_length_tells_a_restarted_ramp_from_an_average() -> None:
    """Closed form: half way through its first line, a ramp of 4 packets that restarts is at 1/4 and reaches
    1 after 6 packets along one line; an average ends then too, but rises at twice the rate between."""
    levels = np.concatenate((np.full(2, 0.5), np.full(20, 1.0)))
    times_s = np.arange(22) * T
    at = np.array([2.0, 3.0, 6.0]) * T
    assert respond("restart", 4 * T, times_s, levels, 0.0).at(at) == pytest.approx([0.25, 0.4375, 1.0])
    assert respond("average", 4 * T, times_s, levels, 0.0).at(at) == pytest.approx([0.25, 0.5, 1.0])


@given(st.sampled_from(METHODS), st.sampled_from([1.0, 1.7, 3.0, 4.5]), LEVELS)
def test_lights_agree_with_a_simulation_on_a_fine_time_grid(
    method: str, packets: float, levels: list[float]
) -> None:
    """The definitions carried out sample by sample, 1000 a packet, give the same light and its integral."""
    per, sent = 1000, np.concatenate((levels, np.full(12, levels[-1])))
    dt, length = T / per, round(packets * per)
    stairs = np.repeat(sent, per)
    before = np.zeros(length + per)
    count = stairs.size
    if method == "none":
        light = stairs
    elif method == "average":
        sums = np.cumsum(np.concatenate((np.zeros(length + 1), stairs)))
        light = ((sums[length:] - sums[:-length]) / length)[:count]
    elif method == "interpolate":
        lines = np.interp(np.arange(-per, count), np.arange(-1, sent.size) * per, np.append(0.0, sent))
        light = np.concatenate((before, lines))[2 * per : 2 * per + count]
    else:
        light = _stepped(method, length, per, stairs)
    model = respond(method, packets * T, np.arange(sent.size) * T, sent, 0.0)
    times_s = (np.arange(count) + 0.5) * dt
    close = np.abs(model.at(times_s) - light) < 2.5e-3  # one grid step's worth, but at a jump
    assert close.mean() > 0.995
    assert np.diff(model.integral(times_s[[0, -1]]))[0] == pytest.approx(light[:-1].sum() * dt, abs=3e-4)


def _stepped(method: str, length: int, per: int, stairs: np.ndarray) -> np.ndarray:
    level, heard, slope, left = 0.0, 0.0, 0.0, 0
    light = np.empty(stairs.size)
    for index, target in enumerate(stairs):
        if method == "lag":
            level += (target - level) / length
        elif method == "limit":
            level += float(np.clip(target - level, -1 / length, 1 / length))
        else:
            if target != heard:
                heard, slope, left = target, (target - level) / length, length
            level += slope if left > 0 else 0.0
            left -= 1
        light[index] = level
    return light


@given(st.sampled_from([30.0, 40.0, 44.0]), st.sampled_from([None, 30.0, 44.0]), st.floats(0, 0.02))
def test_a_snap_is_heard_within_one_packet_of_desk_and_gateway(
    desk_hz: float, gateway_hz: float | None, phase_s: float
) -> None:
    """The cue waits for the desk's next packet, and that for the gateway's."""
    wire = Wire(desk_hz, phase_s, gateway_hz, 0.004)
    heard_s, levels = wire.packets(Group("snap", 0.5, 0.0, (Step(0.0, 1.0),)), 0.0, 1.5)
    first_s = heard_s[np.argmax(levels > 0)]
    assert 0.5 <= first_s <= 0.5 + 1 / desk_hz + (1 / gateway_hz if gateway_hz else 0.0) + 1e-9
    assert np.diff(heard_s) == pytest.approx(1 / (gateway_hz or desk_hz))
    assert set(levels.tolist()) == {0.0, 1.0}
