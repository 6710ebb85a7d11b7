"""Cures: each is tried with the engine, and what is said to work does."""

from dataclasses import replace

import pytest

from modebook.response.camera import Camera
from modebook.response.cures import Cure, cures, stepping_of
from modebook.response.fade import Fade, answer
from modebook.response.link import Link
from modebook.response.losses import LostAtRandom
from modebook.response.seen import THRESHOLD_JND, Viewing
from modebook.response.smoothing import Smoothing

SLOW = Fade(20, 10, 10, Link(30.0), viewing=Viewing(100.0, 0.0))
QUICK = Fade(
    100, 10, 3, Link(30.0, losses=LostAtRandom(0.03, 5)), camera=Camera(24.0), viewing=Viewing(100.0, 0.05)
)


def _with(fade: Fade, cure: Cure) -> Fade:
    if cure.bits is not None:
        fade = replace(fade, bits=cure.bits)
    if cure.packets is not None:
        fade = replace(fade, smoothing=Smoothing("average", packets=cure.packets))
    if cure.seconds_s is not None:
        fade = replace(fade, seconds_s=cure.seconds_s)
    if cure.refresh_hz is not None:
        fade = replace(fade, link=replace(fade.link, refresh_hz=cure.refresh_hz))
    return fade


@pytest.mark.parametrize("fade", [SLOW, QUICK], ids=["slow", "quick"])
def test_a_cure_that_works_brings_the_answer_below_the_threshold(fade: Fade) -> None:
    """Put into the question, each cure gives the stepping that it promised; those that fail say so."""
    assert answer(fade).seen
    found = cures(fade)
    assert any(cure.works for cure in found)
    for cure in found:
        got = answer(_with(fade, cure)).worst_stepping_jnd
        assert got == pytest.approx(cure.worst_stepping_jnd)
        assert cure.works == (got <= THRESHOLD_JND)


def test_the_slow_8_bit_fade_is_cured_by_bits_and_not_by_going_slower() -> None:
    """16 bits cure repeats of 8 bits, a slower fade only repeats more; the shortest average is given."""
    by_kind = {cure.kind: cure for cure in cures(SLOW)}
    assert by_kind["bits"].works
    assert by_kind["bits"].bits == 16
    assert not by_kind["slower"].works
    smoothing = by_kind["smoothing"]
    assert smoothing.works
    assert smoothing.packets is not None
    shorter = replace(SLOW, smoothing=Smoothing(packets=smoothing.packets - 1))
    assert stepping_of(shorter) > THRESHOLD_JND
    assert smoothing.adds_s == pytest.approx(smoothing.packets / 30, abs=1e-6)


def test_a_quick_fade_is_cured_by_going_just_slow_enough() -> None:
    """In 16 bits with fill a slower fade works, and one a twentieth quicker than the one found is seen."""
    fade = Fade(100, 10, 1, Link(30.0), bits=16, camera=Camera(24.0), viewing=Viewing(100.0, 0.2))
    slower = {cure.kind: cure for cure in cures(fade)}["slower"]
    assert slower.works
    assert slower.seconds_s is not None
    assert stepping_of(replace(fade, seconds_s=slower.seconds_s)) <= THRESHOLD_JND
    assert stepping_of(replace(fade, seconds_s=slower.seconds_s * 0.95)) > THRESHOLD_JND


def test_nothing_to_cure() -> None:
    """A fade that is not seen, and a snap, have no cures."""
    assert cures(replace(SLOW, bits=16)) == ()
    assert cures(replace(SLOW, seconds_s=0.0)) == ()


def test_a_rate_beyond_the_line_is_not_offered() -> None:
    """On DMX512 with 512 slots no rate above 44.1 Hz; on a network more."""
    for line, most in (("dmx", 44.1), ("network", 1000.0)):
        fade = replace(SLOW, link=Link(30.0, line=line))  # type: ignore[arg-type]
        rates = [cure.refresh_hz for cure in cures(fade) if cure.kind == "rate"]
        assert rates
        assert all(rate is not None and 30.0 < rate <= most for rate in rates)
