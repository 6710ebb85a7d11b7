"""What programmers know of resolution: common practice, no source, and the arithmetic behind it."""

from __future__ import annotations

import pytest

from modebook.response import resolution


def test_pan_tilt_and_hue_want_16_bits() -> None:
    """Common practice, no source: 360 degrees are more than 8 bits hold, at 1 or 0.1 degree."""
    assert resolution.hue_step(360, 8) > 1
    assert resolution.bits_needed(360, 1) == 16
    assert resolution.bits_needed(540, 0.1) == 16
    assert resolution.bits_needed(270, 0.1) == 16


def test_540_degrees_in_8_bits_move_the_beam_30_cm_at_8_m() -> None:
    """A step of 2.12 degrees, at most 0.30 m at 8 m throw (arithmetic)."""
    step_deg = resolution.angle_step(540, 8)
    assert step_deg == pytest.approx(2.12, abs=0.005)
    assert resolution.displacement_m(step_deg, 8) == pytest.approx(0.30, abs=0.005)


def test_x_and_y_are_set_to_four_decimals() -> None:
    """Common practice, no source: 8000 values each for 0 to 0.8, which 13 bits hold, so two slots."""
    assert 2**12 < 8000 + 1 <= 2**13
    assert resolution.least_bits(0.8, 0.0001) == 13
    assert resolution.bits_needed(0.8, 0.0001) == 16
    assert resolution.chromaticity_step(0.8, 0.8, 16, 16).step_x < 0.0001 < 0.8 / 255


def test_a_full_fade_of_8_bits_holds_out_eight_and_a_half_seconds() -> None:
    """Common practice, no source: 0 to 255 at 30 packets a second repeats no value for about 8.5 s."""
    assert resolution.longest_fade_without_repeats_s(8, 30) == pytest.approx(8.5, abs=0.05)


def test_8_bits_of_x_and_y_show_near_white_and_16_do_not() -> None:
    """Common practice, no source: x and y want 16 bits; the step is that of CIE TN 001:2014, 0.0011."""
    assert resolution.chromaticity_step(0.8, 0.8, 8, 8).steps > 1
    assert resolution.chromaticity_step(0.8, 0.8, 16, 16).steps < 1


def test_8_bits_of_dimmer_step_at_the_bottom_and_16_do_not() -> None:
    """Common practice, no source: more than 3 JND on 8 bits, linear, at 1 % of 100 cd/m2."""
    assert resolution.dimmer_step(8).step_jnd > 3
    assert resolution.dimmer_step(16).step_jnd < 3
