"""What counts as stepping: repeats and jumps, and not the fade itself, however fast, curved or smoothed."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.response.camera import Camera
from modebook.response.curves import INVERSE_SQUARE, LINEAR, SQUARE, Curve, S
from modebook.response.fade import Fade, answer
from modebook.response.link import Link
from modebook.response.losses import LostNumbers
from modebook.response.seen import Viewing, is_seen, is_undecided
from modebook.response.smoothing import METHODS, Smoothing
from modebook.response.visibility import jnd_index

FINE = 24  # bits: rounding to values is then out of sight
FILL = Viewing(100.0, 0.05)


def _choice(method: str, packets: float = 2, after_curve: bool = False) -> Smoothing:
    if method == "none":
        return Smoothing("none")
    return Smoothing(method, packets=packets, after_curve=after_curve)  # type: ignore[arg-type]


@pytest.mark.parametrize("curve", [LINEAR, SQUARE, S], ids=lambda curve: curve.name)
@pytest.mark.parametrize("method", ["none", "average", "interpolate", "restart"])
@pytest.mark.parametrize("seconds_s", [0.5, 3.0])
def test_by_eye_an_even_fade_does_not_step_however_fast(method: str, curve: Curve, seconds_s: float) -> None:
    """Fine values, every packet heard: the steps are large, and what an ideal ramp would not have is not."""
    result = answer(
        Fade(90, 20, seconds_s, Link(30.0), bits=FINE, smoothing=_choice(method), curve=curve, viewing=FILL)
    )
    assert result.worst_step_jnd > 2.0
    assert result.worst_stepping_jnd < 0.05 * result.worst_step_jnd
    assert not is_seen(result.worst_stepping_jnd)


def test_stairs_and_the_ideal_are_alike_midway_between_packets() -> None:
    """Without smoothing, in fine values, the stepping by eye is nothing but rounding."""
    result = answer(Fade(100, 0, 1, Link(30.0), bits=32))
    assert result.worst_stepping_percent < 1e-6


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("after_curve", [False, True])
def test_under_a_camera_a_dense_stream_of_fine_values_does_not_step(method: str, after_curve: bool) -> None:
    """With packets far denser than frames the light is the ideal's, through the curve too, delayed alike."""
    link = Link(1000.0, line="network", delay_s=0.02)
    choice = _choice(method, 60, after_curve)
    result = answer(
        Fade(
            80,
            30,
            2,
            link,
            bits=FINE,
            smoothing=choice,
            curve=SQUARE,
            camera=Camera(24.0, 180.0),
            viewing=FILL,
        )
    )
    assert result.worst_step_jnd > 1.0
    assert result.worst_stepping_jnd < 0.02 * result.worst_step_jnd


def test_repeats_count_with_what_they_withhold_and_jumps_with_what_is_too_much() -> None:
    """5 % in 10 s in 8 bits: each jump is one value, 0.39 %, less the 0.017 % of the ramp meanwhile."""
    result = answer(Fade(50, 45, 10, Link(30.0)))
    assert result.worst_step_percent == pytest.approx(100 / 255)
    assert result.worst_stepping_percent == pytest.approx(100 / 255 - 5 / 300)


def test_a_lost_packet_counts_with_one_step_too_much() -> None:
    """In 24 bits a lost packet makes one step of 0 and one of twice the ramp's: each is off by one step."""
    lossy = answer(Fade(100, 10, 1, Link(30.0, losses=LostNumbers((9,))), bits=FINE))
    assert lossy.worst_stepping_percent == pytest.approx(3.0, abs=1e-4)
    assert lossy.worst_step_percent == pytest.approx(6.0, abs=1e-4)


def test_the_step_in_jnd_is_that_of_its_luminances() -> None:
    """One stair from 50 to 40 % at 200 cd/m2 white with a tenth of other light: indexes of NEMA PS3.14."""
    result = answer(Fade(50, 40, 0, Link(30.0), bits=FINE, viewing=Viewing(200.0, 0.1)))
    luminances = [200 * (0.1 + 0.9 * level) for level in (0.5, 0.4)]
    expected = jnd_index(luminances)
    assert result.worst_step_jnd == pytest.approx(expected[0] - expected[1], abs=1e-3)
    assert result.worst_step_stops == pytest.approx(np.log2(luminances[0] / luminances[1]), abs=1e-5)


def test_black_is_where_the_function_ends() -> None:
    """Without other light a fall to black ends at 0.05 cd/m2: 11 stops below 100, not without end."""
    assert answer(Fade(100, 0, 0, Link(30.0))).worst_step_stops == pytest.approx(np.log2(100 / 0.05))


def test_other_light_hides_the_bottom_of_a_fade() -> None:
    """The same 8-bit fade to black steps less on a subject that another light keeps up."""
    alone, filled = (
        answer(Fade(20, 0, 5, Link(30.0), viewing=Viewing(100.0, fill))).worst_stepping_jnd
        for fill in (0.0, 0.1)
    )
    assert filled < alone / 5


def test_a_fixture_that_goes_out_early_jumps() -> None:
    """With a lowest output of 4 % the last of a fine fade is a jump of 4 %, by eye and by camera."""
    for camera in (None, Camera(24.0)):
        result = answer(Fade(50, 0, 5, Link(44.0), bits=16, lowest=0.04, camera=camera))
        assert result.worst_stepping_percent == pytest.approx(4.0, abs=0.5)


@settings(max_examples=25, deadline=None)
@given(
    st.sampled_from(METHODS),
    st.floats(0, 100),
    st.floats(0, 100),
    st.floats(0.1, 3),
    st.floats(0.0, 0.3),
    st.sampled_from([None, Camera(24.0), Camera(24.0, phase=0.3)]),
)
def test_a_delay_changes_when_and_nothing_else(
    method: str,
    from_percent: float,
    to_percent: float,
    seconds_s: float,
    delay_s: float,
    camera: Camera | None,
) -> None:
    """Shifting a fade in time (a longer link, whole frames for a camera with a phase) shifts its answer."""
    delay_s = round(delay_s * 24) / 24 if camera is not None and camera.phase is not None else delay_s
    now, later = (
        answer(
            Fade(
                from_percent, to_percent, seconds_s, Link(30.0, delay_s=delay),
                smoothing=_choice(method), camera=camera, viewing=FILL,
            )
        )
        for delay in (0.0, delay_s)
    )  # fmt: skip
    assert later.starts_s - now.starts_s == pytest.approx(delay_s, abs=1e-6)
    assert later.settles_s - now.settles_s == pytest.approx(delay_s, abs=1e-6)
    assert later.worst_step_percent == pytest.approx(now.worst_step_percent, abs=1e-3)
    margin = 1e-3 * now.worst_step_jnd + now.worst_bound_jnd + later.worst_bound_jnd + 1e-6
    assert later.worst_step_jnd == pytest.approx(now.worst_step_jnd, abs=margin)
    assert later.worst_stepping_jnd == pytest.approx(now.worst_stepping_jnd, abs=margin)


def test_the_curve_matters_where_it_is_steep() -> None:
    """The inverse-square curve is steep at the bottom: 8 bits step more there than through a square curve."""
    steep, flat = (
        answer(Fade(20, 0, 5, Link(30.0), curve=curve, viewing=FILL)).worst_stepping_jnd
        for curve in (INVERSE_SQUARE, SQUARE)
    )
    assert steep > 5 * flat


def test_a_rolling_readout_shows_at_least_what_its_first_row_shows() -> None:
    """More rows can only find a worse step than the first row alone."""
    one, rolling = (
        answer(Fade(100, 0, 1, Link(30.0), camera=Camera(24.0, phase=0.1, readout_s=readout_s)))
        for readout_s in (0.0, 0.02)
    )
    assert rolling.worst_step_jnd >= one.worst_step_jnd
    worst = answer(Fade(100, 0, 1, Link(30.0), camera=Camera(24.0)))
    assert worst.worst_step_percent >= rolling.worst_step_percent - 1e-9


def test_an_estimate_near_the_threshold_is_undecided() -> None:
    """Seen above 1 JND; undecided within a factor of two of it."""
    assert [is_seen(jnd) for jnd in (0.9, 1.1)] == [False, True]
    assert [is_undecided(jnd) for jnd in (0.4, 0.6, 1.9, 2.1)] == [False, True, True, False]


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("length_s", [0.02, 0.3, 2.0])
def test_under_a_camera_only_the_packets_unevenness_is_left(method: str, length_s: float) -> None:
    """At any length, also far beyond the fade's own, the stepping is at most what off leaves."""
    off, smoothed = (
        answer(
            Fade(100, 0, 0.5, Link(30.0), bits=FINE, smoothing=choice, camera=Camera(24.0), viewing=FILL)
        ).worst_stepping_percent
        for choice in (
            Smoothing("none"),
            Smoothing("none") if method == "none" else Smoothing(method, length_s=length_s),  # type: ignore[arg-type]
        )
    )
    assert smoothed <= off * (1 + 1e-9)
    if length_s == 2.0 and method != "none":
        assert smoothed < off / 10


def test_a_lowest_output_at_which_light_stays_does_not_jump() -> None:
    """A fixture that stays at 4 % flattens the bottom of a fade, which is no stepping; going out is."""
    stays, goes_out = (
        answer(
            Fade(
                50, 0, 5, Link(44.0), bits=16, lowest=0.04, on_below=on_below, smoothing=Smoothing(packets=2)
            )
        ).worst_stepping_percent
        for on_below in (True, False)
    )
    assert stays < 0.05 < 3.0 < goes_out


def test_a_gateways_wait_is_in_the_ideal_too() -> None:
    """A gateway at the desk's own rate, half a packet behind, only delays: no more steps than without it."""
    plain, behind = (
        answer(Fade(100, 10, 1, link, bits=FINE, camera=Camera(24.0), viewing=FILL)).worst_stepping_jnd
        for link in (Link(30.0), Link(30.0, gateway_hz=30.0, gateway_phase=0.5, delay_s=0.01))
    )
    assert behind == pytest.approx(plain, rel=0.01)
