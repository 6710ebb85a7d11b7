"""The answer about one fade: its counts, its times, its trials, its ranges, and what it refuses."""

import json

import pytest

from modebook.response.camera import Camera
from modebook.response.curves import SQUARE
from modebook.response.errors import ResponseError
from modebook.response.fade import Fade, answer, answers_over, range_over
from modebook.response.link import Link
from modebook.response.losses import LostAtRandom, LostNumbers
from modebook.response.smoothing import Smoothing

AT_30 = Link(30.0)


def test_the_answer_has_the_keys_that_people_script_against() -> None:
    """Every key of the command's JSON is there, and the whole of it is plain JSON."""
    got = json.loads(json.dumps(answer(Fade(100, 0, 1, AT_30)).to_dict()))
    keys = (
        "packets_sent distinct_values repeated_packets ideal_step_percent largest_step_percent "
        "longest_fade_without_repeats_s starts_s half_s settles_s added_s worst_step_jnd worst_step_stops "
        "worst_step_at_s worst_stepping_jnd seen assumptions"
    )
    assert set(keys.split()) <= set(got)
    assert isinstance(got["seen"], bool)
    assert isinstance(got["assumptions"], list)


def test_counts_of_a_short_fade_by_hand() -> None:
    """10 to 8 % in 0.2 s at 30 Hz in 8 bits: packets 0 to 6 carry 26 25 24 23 22 21 20."""
    got = answer(Fade(10, 8, 0.2, AT_30))
    assert (got.packets_sent, got.distinct_values, got.repeated_packets) == (7, 7, 0)
    slower = answer(Fade(10, 8, 0.4, AT_30))
    assert (slower.packets_sent, slower.distinct_values, slower.repeated_packets) == (13, 7, 6)


def test_a_fade_that_ends_between_packets_ends_with_the_next() -> None:
    """0.25 s at 30 Hz are 7.5 packet times: packets 0 to 8."""
    assert answer(Fade(100, 0, 0.25, AT_30)).packets_sent == 9


def test_a_snap_is_one_packet_and_does_not_step() -> None:
    """Its step is the snap itself, which is meant; the setting only makes it late."""
    got = answer(Fade(100, 0, 0, AT_30, smoothing=Smoothing(packets=5), camera=Camera(24.0)))
    assert (got.packets_sent, got.distinct_values, got.repeated_packets) == (1, 1, 0)
    assert got.worst_stepping_jnd == 0.0
    assert not got.seen
    assert got.added_s == pytest.approx(5 / 30)
    assert got.settles_s == pytest.approx(6 / 30)
    assert got.frames_partly_exposed_most == 5


def test_a_snap_with_many_trials_does_not_step_either() -> None:
    """Lost packets make it late in some trials, and it is still a snap, at any phase or one."""
    link = Link(30.0, losses=LostAtRandom(0.3, 2))
    for camera in (None, Camera(24.0), Camera(24.0, phase=0.5)):
        got = answer(Fade(100, 0, 0, link, smoothing=Smoothing(packets=2), camera=camera, trials=300))
        assert got.worst_stepping_jnd == 0.0
        assert got.losses_add_s >= 1 / 30


def test_light_that_runs_far_behind_is_followed_to_its_end() -> None:
    """Drawn 2 s behind, a 0.5 s fade moves after its last packet: its steps are found there."""
    choice = Smoothing("interpolate", length_s=2.0)
    for camera in (None, Camera(24.0), Camera(24.0, phase=0.0)):
        got = answer(Fade(100, 0, 0.5, AT_30, smoothing=choice, camera=camera, bits=16))
        assert got.largest_step_percent == pytest.approx(100 / 15, abs=0.01)
        assert 2.0 < got.worst_step_at_s < 2.6


def test_lost_packets_make_a_snap_late() -> None:
    """The snap's packet and the next lost: two packet times later."""
    got = answer(Fade(100, 0, 0, Link(30.0, losses=LostNumbers((0, 1)))))
    assert got.losses_add_s == pytest.approx(2 / 30)


def test_the_last_packet_lost_is_made_good_by_the_next() -> None:
    """The last level is heard one packet later, and the light arrives."""
    got = answer(Fade(100, 0, 1, Link(30.0, losses=LostNumbers((30,))), bits=16))
    assert got.losses_add_s == pytest.approx(1 / 30)
    assert got.largest_step_percent == pytest.approx(100 / 30, abs=0.01)


def test_trials_give_percentiles_and_the_same_seed_the_same() -> None:
    """The 50th, 95th and 99th percentile rise; the seed fixes them; the answer says what seen goes by."""
    fade = Fade(
        100, 10, 3, Link(44.0, losses=LostAtRandom(0.05, 7)), smoothing=Smoothing(packets=2),
        camera=Camera(24.0, phase=0.0), trials=200, bits=16,
    )  # fmt: skip
    one, two = answer(fade), answer(fade)
    assert one == two
    shares = one.worst_stepping_jnd_percentiles
    assert shares is not None
    assert shares["50"] <= shares["95"] <= shares["99"] <= one.worst_stepping_jnd
    assert "seen goes by the 95th percentile of 200 trials" in one.assumptions


def test_rise_and_fall_are_answered_by_the_direction_of_the_cue() -> None:
    """A fixture that smooths only falling light is quick up and slow down."""
    choice = Smoothing("average", packets=0, fall_packets=5)
    up, down = (answer(Fade(*ends, 0, AT_30, smoothing=choice)).added_s for ends in ((0, 100), (100, 0)))
    assert up == 0.0
    assert down == pytest.approx(5 / 30)


def test_an_unknown_length_gives_a_range_that_says_so() -> None:
    """No length is assumed: one answer is refused, the range names its lengths and leaves `seen` open."""
    fade = Fade(100, 10, 3, AT_30, smoothing=Smoothing("average"), camera=Camera(24.0))
    with pytest.raises(ResponseError, match="length is unknown"):
        answer(fade)
    ranges = range_over(answers_over(fade))
    assert ranges["unknown_length"] is True
    assert ranges["added_s"]["least"] == 0.0
    assert ranges["added_s"]["most"] == pytest.approx(8 / 30)
    assert ranges["assumptions"][0].startswith("the smoothing's length is unknown")
    assert ranges["seen"] is None


def test_the_answer_says_what_it_assumes() -> None:
    """Luminance, phase, order of smoothing and curve, what a loss is, and the fail mode are all said."""
    said = " | ".join(
        answer(
            Fade(
                100, 10, 1, Link(30.0, losses=LostNumbers((3,)), loss="repeat"), curve=SQUARE,
                smoothing=Smoothing(packets=2), camera=Camera(24.0),
            )
        ).assumptions
    )  # fmt: skip
    for words in (
        "estimate", "100 cd/m2", "phase against the packets is the worst",
        "smoothing acts before the dimmer curve", "replaced by a repeat of the last", "fail mode",
    ):  # fmt: skip
        assert words in said


def test_a_gap_of_more_than_a_second_is_said() -> None:
    """40 packets in a row lost at 30 Hz: the fixture takes the signal as lost."""
    link = Link(30.0, losses=LostNumbers(tuple(range(10, 50))))
    assert answer(Fade(100, 0, 3, link)).signal_lost
    assert not answer(Fade(100, 0, 3, AT_30)).signal_lost


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Fade(101, 0, 1, AT_30), "a level of 101 % cannot be: give 0 to 100"),
        (lambda: Fade(100, 0, -1, AT_30), "a fade of -1 s cannot be: give 0 (a snap) to 3600"),
        (lambda: Fade(100, 0, 1, AT_30, bits=12), "12 bits are not whole slots: give 8, 16, 24 or 32"),
        (lambda: Fade(100, 0, 1, AT_30, trials=0), "0 trials show nothing: give 1 or more"),
        (
            lambda: Fade(100, 0, 1, AT_30, trials=9),
            "trials repeat losses that are drawn: give a lost share, or one trial",
        ),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(make, message: str) -> None:  # type: ignore[no-untyped-def]
    """Each bad figure says what it is and what would be right."""
    with pytest.raises(ResponseError) as refused:
        make()
    assert str(refused.value) == message
