"""What programmers know of fades and packets. Source of every figure: common practice, no source."""

import pytest

from modebook.response.camera import Camera
from modebook.response.fade import Fade, answer
from modebook.response.link import Link
from modebook.response.losses import LostNumbers
from modebook.response.seen import Viewing
from modebook.response.smoothing import Smoothing
from modebook.response.timing import max_refresh_hz

AT_30 = Link(30.0)


def test_a_one_second_fade_steps_three_percent() -> None:
    """100 to 10 % in 1 s at 30 packets a second: 3 % a packet, within one value of 8 bits."""
    result = answer(Fade(100, 10, 1, AT_30))
    assert result.ideal_step_percent == pytest.approx(3.0)
    assert result.largest_step_percent == pytest.approx(3.0, abs=100 / 255)


def test_one_lost_packet_makes_it_six() -> None:
    """The packet after a lost one makes both steps: 6 %, in 16 bits to the rounding."""
    link = Link(30.0, losses=LostNumbers((7,)))
    assert answer(Fade(100, 10, 1, link, bits=16)).largest_step_percent == pytest.approx(6.0, abs=0.01)
    assert answer(Fade(100, 10, 1, link)).largest_step_percent == pytest.approx(6.0, abs=100 / 255)


def test_a_full_8_bit_fade_holds_out_eight_and_a_half_seconds() -> None:
    """About 8.5 s at 30 Hz before values repeat: none just below, some above."""
    assert answer(Fade(100, 0, 1, AT_30)).longest_fade_without_repeats_s == pytest.approx(8.5)
    assert answer(Fade(100, 0, 8.5, AT_30)).repeated_packets == 0
    assert answer(Fade(100, 0, 9.5, AT_30)).repeated_packets > 0


def test_ten_points_over_ten_seconds_are_mostly_repeats_in_8_bits_and_none_in_16() -> None:
    """300 packets share 26 values of 8 bits; in 16 bits each has its own."""
    coarse, fine = (answer(Fade(50, 40, 10, AT_30, bits=bits)) for bits in (8, 16))
    assert coarse.repeated_packets > coarse.packets_sent / 2
    assert fine.repeated_packets == 0


def test_30_hz_is_68_percent_of_44() -> None:
    """As the trade compares rates, with the full line's 44 Hz."""
    assert 30.0 / max_refresh_hz(512) == pytest.approx(0.68, abs=0.005)


def test_off_suits_kills_and_a_long_smoothing_only_the_slow_fade() -> None:
    """A kill with smoothing off adds nothing; two packets add under a tenth of a second; five much more."""
    added_s = [
        answer(Fade(100, 0, 0, AT_30, smoothing=Smoothing(packets=n), camera=Camera(24.0))).added_s
        for n in (0, 2, 5)
    ]
    assert added_s[0] == 0.0
    assert 0.0 < added_s[1] < 0.1 < added_s[2]


def test_about_two_packets_of_smoothing_take_most_of_the_stepping_away() -> None:
    """Under a 24 fps camera at 30 Hz, with fill: two packets leave less than a third of what off leaves."""
    viewing = Viewing(100.0, fill=0.05)
    off, two = (
        answer(
            Fade(
                100,
                10,
                3,
                AT_30,
                bits=16,
                smoothing=Smoothing(packets=n),
                camera=Camera(24.0),
                viewing=viewing,
            )
        ).worst_stepping_jnd
        for n in (0, 2)
    )
    assert two < off / 3
