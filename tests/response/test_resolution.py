"""Steps of angle, hue, chromaticity and color temperature, and the bits that would do."""

from __future__ import annotations

import math
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import color
from modebook.response import resolution as r
from modebook.response.errors import ResponseError

BITS = st.sampled_from([8, 16, 24, 32])


@given(st.floats(-1e4, 1e4), BITS)
def test_all_steps_together_make_the_span(span: float, bits: int) -> None:
    assert r.span_step(span, bits) * (2**bits - 1) == pytest.approx(abs(span))
    assert r.angle_step(span, bits) == r.hue_step(span, bits) == r.span_step(-span, bits)


@given(st.floats(1e-3, 1e4), st.floats(1e-4, 100))
def test_the_bits_needed_do_and_a_byte_less_does_not(span: float, threshold: float) -> None:
    bits = r.bits_needed(span, threshold)
    assert bits is not None
    assert r.span_step(span, bits) <= threshold * (1 + 1e-8)
    if bits > 8:
        assert r.span_step(span, bits - 8) > threshold


@given(st.floats(1e-3, 1e4), st.floats(1e-4, 100))
def test_the_least_bits_do_and_one_less_does_not(span: float, threshold: float) -> None:
    bits = r.least_bits(span, threshold)
    assert span / (2**bits - 1) <= threshold * (1 + 1e-8)
    if bits > 1:
        assert span / (2 ** (bits - 1) - 1) > threshold * (1 - 1e-8)


def test_a_step_that_is_just_the_threshold_is_within_it() -> None:
    """25.5 in 255 steps is 0.1 each and 7.65 is 0.03, whatever the last digit of the float."""
    assert 7.65 / 255 > 0.03
    assert r.bits_needed(7.65, 0.03) == 8
    assert r.bits_needed(25.5, 0.1) == 8
    assert r.bits_needed(25.6, 0.1) == 16


def test_no_bits_cure_what_is_too_fine_and_nonsense_is_refused() -> None:
    assert r.bits_needed(1e9, 1e-3) is None
    for threshold in (0.0, -1.0, math.nan):
        with pytest.raises(ResponseError):
            r.bits_needed(540, threshold)
        with pytest.raises(ResponseError):
            r.least_bits(540, threshold)
    for span in (math.nan, math.inf):
        with pytest.raises(ResponseError):
            r.span_step(span, 8)


def test_a_range_of_the_values_has_fewer_steps() -> None:
    """128 of 256 values: 127 steps; 16 bits of the same: 32767."""
    assert r.angle_step(127, 8, 0.5) == 1
    assert r.angle_step(32767, 16, 0.5) == 1
    assert r.bits_needed(540, 5, 1 / 256) == 16
    assert r.span_step(0, 8, 1 / 256) == 0
    with pytest.raises(ResponseError, match="at least two values"):
        r.span_step(90, 8, 1 / 256)


@given(st.floats(0, 180), st.floats(0, 100))
def test_the_chord_is_never_more_than_the_arc_or_the_diameter(step_deg: float, throw_m: float) -> None:
    moved_m = r.displacement_m(step_deg, throw_m)
    assert 0 <= moved_m <= min(math.radians(step_deg) * throw_m, 2 * throw_m) * (1 + 1e-12)


def test_displacement_closed_forms() -> None:
    """60 degrees have a chord of one radius, half a turn of two; past it no place is farther."""
    assert r.displacement_m(60, 5) == pytest.approx(5)
    assert r.displacement_m(-180, 5) == pytest.approx(10)
    assert r.displacement_m(270, 5) == pytest.approx(10)
    for step_deg, throw_m in ((1, -1), (1, math.nan), (math.nan, 1)):
        with pytest.raises(ResponseError):
            r.displacement_m(step_deg, throw_m)


@given(st.floats(0.1, 1), st.floats(0.1, 1), BITS, BITS, st.floats(2700, 6500))
def test_no_white_has_a_larger_step_than_the_one_given(
    span_x: float, span_y: float, bits_x: int, bits_y: int, cct_k: float
) -> None:
    found = r.chromaticity_step(span_x, span_y, bits_x, bits_y)
    x, y = color.cct_to_xy(cct_k)
    slack = 1 + 1e-5
    for sign in (1, -1):
        in_x = color.delta_uv_prime(x, y, x + sign * found.step_x, y)
        in_y = color.delta_uv_prime(x, y, x, y + sign * found.step_y)
        assert in_x <= found.x_delta_uv_prime * slack
        assert in_y <= found.y_delta_uv_prime * slack
        both = color.delta_uv_prime(x, y, x + found.step_x, y + sign * found.step_y)
        assert both <= found.both_delta_uv_prime * slack
    assert found.step_delta_uv_prime == max(found.x_delta_uv_prime, found.y_delta_uv_prime)
    assert found.step_delta_uv_prime <= found.both_delta_uv_prime
    assert found.steps == pytest.approx(found.step_delta_uv_prime / 0.0011)


def test_small_steps_have_the_slope_of_the_transform() -> None:
    """Closed form, D = 3 - 2x + 12y: one of x moves (4(3+12y), 18y)/D^2, one of y (-48x, 9(3-2x))/D^2."""
    found = r.chromaticity_step(0.8, 0.8, 24, 24)
    x, y = color.cct_to_xy(found.at_k)
    under = (3 - 2 * x + 12 * y) ** 2
    assert found.x_delta_uv_prime == pytest.approx(
        math.hypot(4 * (3 + 12 * y), 18 * y) / under * found.step_x, rel=1e-5
    )
    assert found.y_delta_uv_prime == pytest.approx(
        math.hypot(48 * x, 9 * (3 - 2 * x)) / under * found.step_y, rel=1e-5
    )


def test_x_and_y_may_differ_and_a_span_beyond_the_diagram_is_refused() -> None:
    mixed = r.chromaticity_step(0.8, 0.8, 16, 8)
    assert mixed.step_delta_uv_prime == mixed.y_delta_uv_prime > mixed.x_delta_uv_prime
    assert r.chromaticity_step(-0.8, 0.8, 8, 8) == r.chromaticity_step(0.8, 0.8, 8, 8)
    for span in (1.5, math.nan, math.inf):
        with pytest.raises(ResponseError, match="within 0 to 1"):
            r.chromaticity_step(span, 0.8, 8, 8)
    with pytest.raises(ResponseError, match="more bits"):
        r.chromaticity_step(0.8, 0.8, 8, 8, 4 / 256, 1)


@given(st.floats(1500, 6500), st.floats(500, 10_000), st.sampled_from([8, 16]), st.floats(0, 1))
def test_no_place_in_the_overlap_has_a_larger_color_temperature_step(
    low_k: float, width_k: float, bits: int, at: float
) -> None:
    high_k = low_k + width_k
    found = r.color_temperature_step(low_k, high_k, bits)
    assert found == r.color_temperature_step(high_k, low_k, bits)
    if high_k < 2700:
        assert found is None
        return
    assert found is not None
    first_k, last_k = max(low_k, 2700), min(high_k, 6500)
    start_k = first_k + at * max(last_k - first_k - found.step_k, 0)
    u_a, v_a = color.cct_to_uv_prime(start_k)
    u_b, v_b = color.cct_to_uv_prime(start_k + found.step_k)
    assert math.hypot(u_b - u_a, v_b - v_a) <= found.step_delta_uv_prime * (1 + 1e-5) + 1e-12
    assert found.step_mired == pytest.approx(1e6 / found.at_k - 1e6 / (found.at_k + found.step_k))


def test_outside_the_whites_there_is_no_color_temperature_step() -> None:
    assert r.color_temperature_step(7000, 10_000, 8) is None
    assert r.color_temperature_step(1800, 2600, 8) is None
    for span in ((-1, 5000), (2700, math.nan), (2700, math.inf)):
        with pytest.raises(ResponseError):
            r.color_temperature_step(*span, 8)


def test_a_number_that_is_the_kelvin_itself_has_a_step_of_one() -> None:
    found = r.color_temperature_step(2000, 10_000, 16, raw=True)
    assert found is not None
    assert found.step_k == 1


def test_bits_for_a_computed_step() -> None:
    """The least bits whose color temperature step is within one of CIE TN 001:2014."""

    def steps(bits: int) -> float:
        found = r.color_temperature_step(2000, 10_000, bits)
        assert found is not None
        return found.steps

    assert steps(8) > 1 >= steps(16)
    assert r.bits_for(steps, 1) == 16


def test_longest_fade_refuses_a_rate_of_nothing() -> None:
    assert r.longest_fade_without_repeats_s(16, 30) == pytest.approx(65535 / 30)
    for refresh_hz in (0, -30, math.nan, math.inf):
        with pytest.raises(ResponseError):
            r.longest_fade_without_repeats_s(8, refresh_hz)


def test_the_arithmetic_loads_no_numpy() -> None:
    """A linter that only asks for steps pays for no numpy."""
    code = (
        "import sys; from modebook.response import resolution as r;"
        "r.dimmer_step(16); r.chromaticity_step(.8, .8, 8, 8); r.color_temperature_step(2700, 6500, 8);"
        "sys.exit('numpy' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
