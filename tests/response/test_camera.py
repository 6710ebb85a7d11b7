"""A camera's frames: rates and shutters that can be, when frames open, and what they gather of a ramp."""

import numpy as np
import pytest

from modebook.response.camera import Camera, exposures
from modebook.response.errors import ResponseError
from modebook.response.signal import polygon


def test_shutter_by_angle_or_time() -> None:
    """180 degrees at 24 fps are 1/48 s, which is also what nothing said means."""
    assert Camera(24.0).open_s == Camera(24.0, 180.0).open_s == pytest.approx(1 / 48)
    assert Camera(24.0, shutter_s=1 / 50).open_s == 1 / 50
    assert Camera(24.0, 360.0).open_s == pytest.approx(1 / 24)


def test_frames_open_at_their_phase_and_cover_what_is_asked_about() -> None:
    """Openings are one frame apart, at the phase; the first closes before, the last opens after."""
    camera = Camera(25.0, 90.0, phase=0.25)
    opens_s = camera.openings_s(0.1, 0.5)
    assert np.diff(opens_s) == pytest.approx(0.04)
    assert (opens_s[0] / 0.04) % 1 == pytest.approx(0.25)
    assert opens_s[0] + camera.open_s < 0.1
    assert opens_s[-1] > 0.5


def test_a_later_row_opens_later() -> None:
    """The last row of a rolling readout opens readout_s after the first."""
    camera = Camera(25.0, phase=0.0, readout_s=0.02)
    assert camera.openings_s(0, 1, row=1.0)[0] - camera.openings_s(0, 1)[0] == pytest.approx(0.02)


def test_the_exposure_of_a_ramp_is_its_middle() -> None:
    """Straight light gathers what it is at the middle of the open shutter."""
    ramp = polygon([0.0, 10.0], [0.0, 1.0])
    opens_s = np.array([0.5, 3.3, 8.0])
    assert exposures(ramp, opens_s, 0.02)[0] == pytest.approx((opens_s + 0.01) / 10)


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Camera(0.0), "a camera of 0 fps cannot be: give a rate above 0"),
        (lambda: Camera(24.0, 361.0), "a shutter of 361 degrees cannot be: give above 0 to 360"),
        (lambda: Camera(24.0, 0.0), "a shutter of 0 degrees cannot be: give above 0 to 360"),
        (
            lambda: Camera(24.0, shutter_s=0.05),
            "a shutter of 0.05 s cannot be at 24 fps: give above 0 to the frame's 0.0416667 s",
        ),
        (lambda: Camera(24.0, 180.0, 0.02), "a shutter is given by its angle or by its time, not both"),
        (lambda: Camera(24.0, phase=1.0), "a camera phase of 1 cannot be: give 0 to below 1"),
        (
            lambda: Camera(24.0, readout_s=-0.01),
            "a readout of -0.01 s cannot be: give 0 to the frame's 0.0416667 s",
        ),
        (
            lambda: Camera(24.0).openings_s(0, 1),
            "a camera without a phase has no frame times: give its phase",
        ),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(make, message: str) -> None:  # type: ignore[no-untyped-def]
    """Each bad figure says what it is and what would be right."""
    with pytest.raises(ResponseError) as refused:
        make()
    assert str(refused.value) == message
