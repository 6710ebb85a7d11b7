"""Smoothing methods: what each makes of packets, lost ones and repeats, and what holds for any levels."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.response.errors import ResponseError
from modebook.response.signal import Signal, held, largest_change
from modebook.response.smoothers import average, average_even, smooth
from modebook.response.smoothing import METHODS, Smoothing, lag

PERIOD_S = 1 / 30
LEVELS = st.lists(st.integers(0, 255).map(lambda value: value / 255), min_size=1, max_size=25)
LENGTHS = st.sampled_from([0.3, 1.0, 2.0, 2.5, 5.0, 7.0])
SMOOTHING = [method for method in METHODS if method != "none"]


def _light(
    method: str, packets: float, levels: list[float], first: float = 0.5, start_s: float = 0.0
) -> Signal:
    times_s = start_s + np.arange(len(levels)) * PERIOD_S
    return smooth(Smoothing(method, packets=packets), times_s, np.array([levels]), first, PERIOD_S)  # type: ignore[arg-type]


def _probes(levels: list[float], packets: float, start_s: float = 0.0) -> np.ndarray:
    return start_s + np.linspace(-0.1, (len(levels) + packets + 2) * PERIOD_S, 577)


@given(st.sampled_from(SMOOTHING), LENGTHS, LEVELS)
def test_without_loss_smoothing_makes_no_larger_change_in_one_packet_time(
    method: str, packets: float, levels: list[float]
) -> None:
    """The largest change within any one packet time is at most the largest stair of what was sent."""
    stairs = held(np.arange(len(levels)) * PERIOD_S, [levels], 0.5)
    smoothed = largest_change(_light(method, packets, levels), PERIOD_S)[0]
    assert smoothed <= largest_change(stairs, PERIOD_S)[0] + 1e-9


@given(st.sampled_from(SMOOTHING), LENGTHS, LEVELS)
def test_no_method_overshoots(method: str, packets: float, levels: list[float]) -> None:
    """The light stays between the least and the greatest level that was sent or held before."""
    lit = _light(method, packets, levels).at(_probes(levels, packets))
    assert lit.min() >= min([0.5, *levels]) - 1e-9
    assert lit.max() <= max([0.5, *levels]) + 1e-9


@given(st.sampled_from(SMOOTHING), LENGTHS, LEVELS, st.booleans())
def test_monotone_in_monotone_out(method: str, packets: float, levels: list[float], rising: bool) -> None:
    """Levels that only rise (or only fall) make light that only rises (or falls)."""
    ordered = sorted(levels, reverse=not rising)
    first = 0.0 if rising else 1.0
    steps = np.diff(_light(method, packets, ordered, first).at(_probes(levels, packets))[0])
    assert (steps >= -1e-9).all() if rising else (steps <= 1e-9).all()


@given(st.sampled_from(SMOOTHING), LENGTHS, LEVELS, st.floats(-100, 100))
def test_shifting_the_packets_in_time_shifts_the_light_and_nothing_else(
    method: str, packets: float, levels: list[float], shift_s: float
) -> None:
    """The same levels later make the same light as much later."""
    now = _light(method, packets, levels).at(_probes(levels, packets))
    later = _light(method, packets, levels, start_s=shift_s).at(_probes(levels, packets, shift_s))
    assert later == pytest.approx(now, abs=1e-7)


@given(st.sampled_from(SMOOTHING), LENGTHS, LEVELS)
def test_the_light_arrives_at_the_last_level(method: str, packets: float, levels: list[float]) -> None:
    """Long after the last packet the light is at its level."""
    lit = _light(method, packets, levels).at([len(levels) * PERIOD_S + 60.0])
    assert lit[0, 0] == pytest.approx(levels[-1], abs=1e-9)


@given(LEVELS, st.integers(1, 9))
def test_the_fast_average_is_the_average(levels: list[float], packets: int) -> None:
    """The shortcut for even packets and whole lengths gives what the general average gives."""
    times_s = 0.4 + np.arange(len(levels)) * PERIOD_S
    fast = average_even(times_s, np.array([levels]), 0.5, PERIOD_S, packets)
    general = average(held(times_s, [levels], 0.5), packets * PERIOD_S)
    probes = _probes(levels, packets, 0.4)
    assert fast.at(probes) == pytest.approx(general.at(probes), abs=1e-9)
    assert np.diff(fast.area(probes)) == pytest.approx(np.diff(general.area(probes)), abs=1e-9)


@settings(max_examples=40)
@given(st.sampled_from(METHODS), LENGTHS, st.lists(LEVELS, min_size=2, max_size=4))
def test_many_signals_at_once_are_the_same_as_one_by_one(
    method: str, packets: float, several: list[list[float]]
) -> None:
    """The batch axis changes nothing."""
    count = min(map(len, several))
    levels = np.array([each[:count] for each in several])
    times_s = np.arange(count) * PERIOD_S
    choice = Smoothing(method, packets=None if method == "none" else packets)  # type: ignore[arg-type]
    heard = np.random.default_rng(count).random(levels.shape) > 0.3
    whole = smooth(choice, times_s, levels, 0.5, PERIOD_S, heard)
    probes = _probes(several[0][:count], packets)
    for row in range(len(levels)):
        alone = smooth(choice, times_s, levels[row : row + 1], 0.5, PERIOD_S, heard[row : row + 1])
        assert whole.at(probes)[row] == pytest.approx(alone.at(probes)[0], abs=1e-12)


def test_the_slope_of_an_average_is_that_between_packets_n_apart() -> None:
    """In each packet time the light runs straight, by the difference of packets N apart over their time."""
    levels = [0.5, 0.1, 0.9, 0.3, 0.3, 0.7]
    light = _light("average", 3, levels)
    for k in range(3, 6):
        slope = (light.at([(k + 0.9) * PERIOD_S]) - light.at([(k + 0.1) * PERIOD_S]))[0, 0] / (0.8 * PERIOD_S)
        assert slope == pytest.approx((levels[k] - levels[k - 3]) / (3 * PERIOD_S))


RAMP = np.arange(1, 11) / 10


def _with_loss(choice: Smoothing, *, missing: bool) -> Signal:
    """Give the light of an even ramp whose packet 4 is missing, or a repeat of packet 3."""
    values = RAMP.copy()
    values[4] = values[3]
    heard = np.ones((1, len(values)), dtype=bool)
    heard[0, 4] = not missing
    return smooth(choice, np.arange(10) * PERIOD_S, values[None], 0.0, PERIOD_S, heard)


@pytest.mark.parametrize("method", ["none", "average", "lag", "limit", "restart"])
def test_most_methods_make_the_same_of_a_missing_and_a_repeated_packet(method: str) -> None:
    """They see what is held, or values that change: both kinds of loss come to the same."""
    choice = Smoothing(method, packets=None if method == "none" else 2)  # type: ignore[arg-type]
    probes = np.linspace(0, 0.5, 301)
    missing, repeated = (_with_loss(choice, missing=each).at(probes) for each in (True, False))
    assert missing == pytest.approx(repeated)


def test_interpolation_heals_a_missing_packet_that_is_followed_in_time() -> None:
    """2 behind, an even ramp with one packet missing is the even ramp; a repeat leaves a flat packet time."""
    choice = Smoothing("interpolate", packets=2)
    probes = np.linspace(0.1, 0.36, 301)
    even = smooth(choice, np.arange(10) * PERIOD_S, RAMP[None], 0.0, PERIOD_S)
    assert _with_loss(choice, missing=True).at(probes) == pytest.approx(even.at(probes))
    flat = _with_loss(choice, missing=False).at(np.array([5.1, 5.9]) * PERIOD_S)
    assert flat[0] == pytest.approx([RAMP[3], RAMP[3]])


def test_interpolation_waits_where_the_next_packet_is_late() -> None:
    """1 behind with two packets missing: the line waits for the packet and then takes one packet time."""
    values = np.array([[0.0, 0.1, 0.1, 0.1, 0.4, 0.5]])
    heard = np.array([[True, True, False, False, True, True]])
    light = smooth(Smoothing("interpolate", packets=1), np.arange(6) * PERIOD_S, values, 0.0, PERIOD_S, heard)
    got = light.at(np.array([2.0, 3.0, 4.0, 4.5, 5.0, 6.0]) * PERIOD_S)[0]
    assert got == pytest.approx([0.1, 0.1, 0.1, 0.25, 0.4, 0.5])


def test_restart_starts_a_new_line_where_the_light_stands() -> None:
    """Turned back after 2 of 4 packet times, light goes from half to 0 in 4 more; repeats change nothing."""
    light = _light("restart", 4, [1.0, 1.0, 0.0, 0.0, 0.0], first=0.0)
    at = np.array([1, 2, 4, 6, 9]) * PERIOD_S
    assert light.at(at)[0] == pytest.approx([0.25, 0.5, 0.25, 0.0, 0.0])


def test_limit_follows_no_faster_than_its_rate() -> None:
    """Full scale in 4 packet times: a half is reached after 2 and turned back at once."""
    light = _light("limit", 4, [0.5, 0.5, 0.5, 0.0, 0.0], first=0.0)
    assert light.at(np.array([1, 2, 3, 4, 5]) * PERIOD_S)[0] == pytest.approx([0.25, 0.5, 0.5, 0.25, 0.0])


@pytest.mark.parametrize("method", ["lag", "limit", "restart"])
def test_rise_and_fall_may_differ(method: str) -> None:
    """Up with one length, down with the other: each way is that of a smoothing with that one length."""
    both = Smoothing(method, packets=2, fall_packets=6)  # type: ignore[arg-type]
    for levels, first, packets in (([1.0] * 9, 0.0, 2), ([0.0] * 9, 1.0, 6)):
        probes = _probes(levels, packets)
        two = smooth(both, np.arange(9) * PERIOD_S, np.array([levels]), first, PERIOD_S)
        assert two.at(probes) == pytest.approx(_light(method, packets, levels, first).at(probes), abs=1e-12)


@pytest.mark.parametrize("method", ["average", "interpolate"])
def test_methods_with_one_length_ask_for_the_cues_direction(method: str) -> None:
    """Two lengths are answered for a cue that goes one way only."""
    both = Smoothing(method, packets=2, fall_length_s=0.5)  # type: ignore[arg-type]
    with pytest.raises(ResponseError, match="has one length: ask for one direction of the cue"):
        smooth(both, np.array([0.0]), np.array([[1.0]]), 0.0, PERIOD_S)
    assert both.toward(rising=True) == Smoothing(method, packets=2)  # type: ignore[arg-type]
    assert both.toward(rising=False) == Smoothing(method, length_s=0.5)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Smoothing("ease"), "smoothing method 'ease' is unknown: give none, average, "),  # type: ignore[arg-type]
        (lambda: Smoothing(packets=-1), "a smoothing of -1 packets cannot be: give 0 to 1000 packets"),
        (lambda: Smoothing(length_s=100.0), "a smoothing of 100 s cannot be: give 0 to 60 s"),
        (
            lambda: Smoothing(packets=2, length_s=1),
            "a smoothing length is in packets or in seconds, not both",
        ),
        (lambda: Smoothing(fall_packets=2), "a length for falling light needs a method and a length for"),
        (lambda: Smoothing().lengths_s(0.03), "the smoothing's length is unknown: give it in packets or"),
        (lambda: lag(), "a lag is given by its time constant or by its 10-90 % time, one of them"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(make, message: str) -> None:  # type: ignore[no-untyped-def]
    """Each bad figure says what it is and what would be right."""
    with pytest.raises(ResponseError) as refused:
        make()
    assert str(refused.value).startswith(message)


def test_a_length_that_nobody_gave_is_unknown() -> None:
    """No length means unknown, never zero; off is known."""
    assert Smoothing("average").unknown
    assert not Smoothing("none").unknown
    assert not Smoothing("average", packets=0).unknown
