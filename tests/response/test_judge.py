"""A cue judged for planning: the burst stands where it hurts most, and the same question is computed once."""

from dataclasses import replace

import pytest

from modebook.response.camera import Camera
from modebook.response.fade import Fade, answer
from modebook.response.judge import judge, judge_lateness, judge_stepping
from modebook.response.link import Link
from modebook.response.losses import LostAtRandom, LostInBursts, LostNumbers
from modebook.response.seen import Viewing
from modebook.response.smoothing import OFF, Smoothing, lag

VIEWING = Viewing(100.0, 0.03)
LOSSY = Link(30.0, losses=LostAtRandom(0.05))


@pytest.mark.parametrize(
    "choice",
    [Smoothing("none"), Smoothing(packets=2), Smoothing("interpolate", packets=1), lag(time_constant_s=0.05)],
    ids=lambda choice: choice.method,
)
@pytest.mark.parametrize("camera", [None, Camera(24.0)], ids=["eye", "camera"])
def test_no_place_of_the_burst_hurts_more(choice: Smoothing, camera: Camera | None) -> None:
    """Every start of the burst tried by hand, at the worst phase: none is worse than what was judged."""
    fade = Fade(100, 5, 1.5, LOSSY, smoothing=choice, camera=camera, viewing=VIEWING)
    judged = judge(fade)
    worst = 0.0
    for start in range(46):
        lost = LostNumbers(tuple(range(start, start + judged.burst_packets)))
        one = answer(replace(fade, link=replace(LOSSY, losses=lost)))
        worst = max(worst, one.worst_stepping_jnd)
    assert judged.burst_packets == 2
    assert judged.worst_stepping_jnd == pytest.approx(worst, rel=0.01)


def test_without_losses_it_is_the_answer() -> None:
    """No burst: the figures of the plain answer at the worst phase, and the setting's part of a snap."""
    fade = Fade(100, 0, 2, Link(44.0), smoothing=Smoothing(packets=3), camera=Camera(24.0), viewing=VIEWING)
    judged, plain = judge(fade), answer(fade)
    assert judged.burst_packets == 0
    assert judged.worst_stepping_jnd == plain.worst_stepping_jnd
    assert judged.added_s == plain.added_s


def test_a_snap_is_late_by_its_setting_and_by_the_burst() -> None:
    """A snap does not step; with a likely loss it settles later by the packets lost."""
    snap = Fade(100, 0, 0, Link(30.0, losses=LostAtRandom(0.2)), smoothing=Smoothing(packets=2))
    judged = judge(snap)
    assert judged.worst_stepping_jnd == 0.0
    assert judged.added_s == pytest.approx(2 / 30)
    assert judged.settles_lossy_s - judged.settles_s == pytest.approx(judged.burst_packets / 30)
    assert judged.burst_packets == 1


def test_the_delay_is_what_match_compares() -> None:
    """An average runs half its length behind, interpolation N - 1/2 packets; the link adds its delay."""
    for choice, behind_s in ((Smoothing(packets=4), 2 / 30), (Smoothing("interpolate", packets=4), 3.5 / 30)):
        snap = Fade(0, 100, 0, Link(30.0, delay_s=0.02), smoothing=choice)
        assert judge(snap).delay_s == pytest.approx(0.02 + behind_s)


def test_the_same_question_is_computed_once() -> None:
    """A second call with an equal question comes from the cache."""
    fade = Fade(70, 20, 1, Link(30.0), smoothing=Smoothing(packets=1), camera=Camera(24.0))
    first = judge(fade)
    hits = judge.cache_info().hits
    assert judge(replace(fade)) is first
    assert judge.cache_info().hits == hits + 1


@pytest.mark.parametrize("losses", [None, LostInBursts(0.02, 2.0)])
@pytest.mark.parametrize("smoothing", [OFF, Smoothing(packets=2), Smoothing("lag", length_s=0.1)])
@pytest.mark.parametrize("seconds_s", [0.0, 1.5])
def test_asked_for_alone_the_figures_are_those_of_the_whole(losses, smoothing, seconds_s):
    """The stepping alone and the lateness alone, against the judgement that holds both."""
    link = Link(30.0, gateway_hz=44.0, delay_s=0.004, losses=losses, slots=1)
    fade = Fade(10.0, 45.0, seconds_s, link, bits=16, smoothing=smoothing, camera=Camera(24.0))
    whole, late, stepping = judge(fade), judge_lateness(fade), judge_stepping(fade)
    assert stepping.worst_stepping_jnd == whole.worst_stepping_jnd
    assert stepping.burst_packets == whole.burst_packets
    for name in ("added_s", "settles_s", "settles_lossy_s", "delay_s", "frames_partly_exposed"):
        assert getattr(late, name) == getattr(whole, name)
