"""Color fades: steps in u'v' of CIE x and y in 8 and 16 bits, by eye and by camera."""

import pytest

from modebook.response.camera import Camera
from modebook.response.color import delta_uv_prime
from modebook.response.color_fade import ColorFade, color_worst
from modebook.response.errors import ResponseError
from modebook.response.link import Link
from modebook.response.losses import LostNumbers
from modebook.response.smoothing import Smoothing

WHITE, WARM = (0.3127, 0.329), (0.4369, 0.4041)


def test_8_bits_of_cie_x_and_y_are_seen_and_16_are_not() -> None:
    """One value of 8 bits is more than a step of 0.0011 in u'v' near white; of 16 bits far less."""
    assert color_worst(ColorFade(WHITE, WARM, 10, Link(30.0), bits=8)).seen
    fine = color_worst(ColorFade(WHITE, WARM, 10, Link(30.0), bits=16))
    assert not fine.seen
    assert fine.stepping_uv_prime[0] < 1e-4


def test_the_step_of_a_fade_in_two_packets_by_hand() -> None:
    """A fade of one packet time is one step: the distance of its ends in u'v'."""
    worst = color_worst(ColorFade(WHITE, WARM, 1 / 30, Link(30.0), bits=32))
    assert worst.step_uv_prime[0] == pytest.approx(delta_uv_prime(*WHITE, *WARM), abs=1e-6)


def test_a_narrower_span_makes_finer_steps() -> None:
    """8 bits over half of x and y step half as far, and smoothing hides what is left."""
    whole, half, smoothed = (
        color_worst(
            ColorFade(WHITE, WARM, 20, Link(30.0), bits=8, x_span=span, y_span=span, smoothing=choice)
        ).stepping_uv_prime[0]
        for span, choice in (
            ((0.0, 1.0), Smoothing("none")),
            ((0.0, 0.5), Smoothing("none")),
            ((0.0, 0.5), Smoothing(packets=10)),
        )
    )
    assert half == pytest.approx(whole / 2, rel=0.35)
    assert smoothed < half / 3


def test_a_lost_packet_shows_in_color_by_eye_and_by_camera() -> None:
    """In fine values only the lost packet steps, and the worst phase is at least that of a given one."""
    lossy = Link(30.0, losses=LostNumbers((15,)))
    for camera in (None, Camera(24.0), Camera(24.0, phase=0.2)):
        clean, lost = (
            color_worst(
                ColorFade(WHITE, WARM, 1, link, bits=24, camera=camera, smoothing=Smoothing(packets=2))
            )
            for link in (Link(30.0), lossy)
        )
        assert lost.stepping_uv_prime[0] > 1.5 * clean.stepping_uv_prime[0]
        assert 0.4 < lost.stepping_at_s[0] < 0.75
    phase, worst = (
        color_worst(ColorFade(WHITE, WARM, 1, lossy, camera=camera)).stepping_uv_prime[0]
        for camera in (Camera(24.0, phase=0.2), Camera(24.0))
    )
    assert worst >= phase - 1e-12


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: ColorFade((0.7, 0.6), WARM, 1, Link(30.0)), "(0.7, 0.6) is no color in CIE xy: x, y and "),
        (lambda: ColorFade(WHITE, WARM, 0, Link(30.0)), "a color fade of 0 s cannot be: give more than 0"),
        (
            lambda: ColorFade(WHITE, WARM, 1, Link(30.0), x_span=(1.0, 0.0)),
            "a span from 1 to 0 is empty: give an end above its start",
        ),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(make, message: str) -> None:  # type: ignore[no-untyped-def]
    """Each bad figure says what it is and what would be right."""
    with pytest.raises(ResponseError) as refused:
        make()
    assert str(refused.value).startswith(message)
