"""The worst phase of a camera, against trying very many phases one by one."""

import numpy as np
import pytest

from modebook.response.camera import Camera, exposures
from modebook.response.cue_light import cue_light
from modebook.response.curves import INVERSE_SQUARE, LINEAR, SQUARE, Curve
from modebook.response.fade import Fade, ideal_of
from modebook.response.ideal import Ramp, ideal_light
from modebook.response.link import Link
from modebook.response.losses import LostAtRandom
from modebook.response.phases import at_worst_phase
from modebook.response.seen import Viewing
from modebook.response.smoothing import METHODS, Smoothing
from modebook.response.transfer import Transfer

VIEWING = Viewing(100.0, 0.02)
RAMP = Ramp(1.0, 0.0, 0.6)


@pytest.mark.parametrize("shutter_deg", [45.0, 180.0, 360.0])
@pytest.mark.parametrize("method", METHODS)
def test_no_phase_is_worse_than_the_worst(method: str, shutter_deg: float) -> None:
    """Of 20,000 phases none is worse: in percent not at all, in JND by no more than the bound given."""
    choice = Smoothing(method, packets=None if method == "none" else 1.7)  # type: ignore[arg-type]
    link = Link(30.0, losses=LostAtRandom(0.15, seed=4))
    camera = Camera(24.0, shutter_deg)
    cue = cue_light(RAMP, choice, Transfer(), link, 8, trials=3)
    light, ideal = cue.light(), ideal_light(RAMP, choice, Transfer(), link)
    worst = at_worst_phase(light, ideal, VIEWING, camera, 0.0, cue.moves_until_s)
    opens_s = np.linspace(-camera.frame_s - camera.open_s, cue.moves_until_s, 20_000)
    lit = [exposures(light, at, camera.open_s) for at in (opens_s, opens_s + camera.frame_s)]
    even = [exposures(ideal, at, camera.open_s) for at in (opens_s, opens_s + camera.frame_s)]
    percent = 100 * np.abs(lit[1] - lit[0]).max(axis=1)
    # A lag's exposures are no parabolas: there the search goes to a thousandth.
    assert (percent <= worst.step_percent * (1 + (1e-3 if method == "lag" else 1e-9))).all()
    assert percent == pytest.approx(worst.step_percent, rel=1e-2)
    jnd = VIEWING.jnd(lit[1]) - VIEWING.jnd(lit[0])
    assert (np.abs(jnd).max(axis=1) <= worst.step_jnd + worst.bound_jnd + 1e-9).all()
    assert np.abs(jnd).max(axis=1) == pytest.approx(worst.step_jnd, rel=1e-2)
    off = np.abs(jnd - (VIEWING.jnd(even[1]) - VIEWING.jnd(even[0]))).max(axis=1)
    assert (off <= worst.stepping_jnd + worst.bound_jnd + 1e-9).all()
    assert off == pytest.approx(worst.stepping_jnd, rel=1e-2)
    assert (worst.bound_jnd <= 0.05 + 0.01 * worst.step_jnd).all()


@pytest.mark.parametrize("curve", [SQUARE, INVERSE_SQUARE], ids=lambda curve: curve.name)
@pytest.mark.parametrize("lowest", [0.0, 0.03])
def test_no_phase_is_worse_through_a_curve(curve: Curve, lowest: float) -> None:
    """Through a curve and a lowest output the parabolas are near, not exact: within 1 % of 20,000 phases."""
    fade = Fade(
        100,
        0,
        0.6,
        Link(30.0),
        curve=curve,
        smoothing=Smoothing(packets=2),
        camera=Camera(24.0),
        lowest=lowest,
    )
    cue = cue_light(fade.ramp, fade.smoothing, fade.transfer, fade.link, fade.bits)
    light, ideal = cue.light(), ideal_of(fade)
    assert ideal is not None
    worst = at_worst_phase(light, ideal, VIEWING, Camera(24.0), 0.0, cue.moves_until_s)
    opens_s = np.linspace(-0.1, cue.moves_until_s, 20_000)
    lit = [exposures(light, at, 1 / 48) for at in (opens_s, opens_s + 1 / 24)]
    assert worst.step_percent[0] == pytest.approx(100 * np.abs(lit[1] - lit[0]).max(), rel=1e-2)
    jnd = np.abs(VIEWING.jnd(lit[1]) - VIEWING.jnd(lit[0])).max()
    assert worst.step_jnd[0] == pytest.approx(jnd, rel=1e-2, abs=worst.bound_jnd[0])


def test_the_worst_step_of_stairs_by_hand() -> None:
    """One stair under a shutter as long as the frame: the worst phase sees all of it between two frames."""
    light = cue_light(Ramp(0.4, 0.0, 0.0), Smoothing("none"), Transfer(LINEAR), Link(30.0), 8).light()
    worst = at_worst_phase(light, light, VIEWING, Camera(25.0, 360.0), 0.0, 0.2)
    assert worst.step_percent[0] == pytest.approx(40.0)
    assert worst.stepping_jnd[0] == 0.0


def test_windows_of_their_own_give_what_is_worst_within_them() -> None:
    """Each signal asked about its own stretch gives the worst of that stretch."""
    choice = Smoothing("average", packets=2)
    link = Link(30.0, losses=LostAtRandom(0.2, seed=8))
    cue = cue_light(Ramp(1.0, 0.0, 2.0), choice, Transfer(), link, 8, trials=4)
    light, ideal = cue.light(), ideal_light(Ramp(1.0, 0.0, 2.0), choice, Transfer(), link)
    from_s, to_s = np.array([0.2, 0.5, 0.9, 1.4]), np.array([0.5, 0.6, 1.5, 1.45])
    own = at_worst_phase(light, ideal, VIEWING, Camera(24.0), from_s, to_s)
    for row in range(4):
        alone = light.rows(slice(row, row + 1))
        one = at_worst_phase(alone, ideal, VIEWING, Camera(24.0), float(from_s[row]), float(to_s[row]))
        assert own.step_percent[row] == pytest.approx(one.step_percent[0], abs=1e-9)
        assert own.stepping_jnd[row] == pytest.approx(one.stepping_jnd[0], abs=0.01)
