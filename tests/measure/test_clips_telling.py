"""What a clip can tell: the known cases, and that cases come out the same for the same seed."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import numpy as np
import pytest

from measure.clips.camera import Camera
from measure.clips.case import Case
from measure.clips.cases import cases, events
from measure.clips.picture import Picture
from measure.clips.video import CODINGS
from measure.clips.wire import Wire

ALONE = Picture(96, 72, (8, 10, 40, 40))
BESIDE = dataclasses.replace(ALONE, reference=(56, 10, 30, 40))


def _case(method: str, packets: float, program: str, picture: Picture = ALONE, fps: float = 240.0) -> Case:
    groups, seconds = events(np.random.default_rng(4), program, packets / 30)
    return Case(
        "case", 1, method, packets, Wire(30.0, 0.013), groups, seconds, (), 0.0, picture, Camera(fps, 180.0),
        CODINGS["h264"],
    )  # fmt: skip


@pytest.mark.parametrize("method", ["average", "limit", "restart"])
def test_one_full_snap_tells_their_length_and_not_their_method(method: str) -> None:
    """The three make the same straight line of it, with a reference light or without."""
    for picture in (ALONE, BESIDE):
        truth = _case(method, 5.0, "one", picture).truth
        assert (truth.can_tell_method, truth.can_tell_length) == (False, True)


@pytest.mark.parametrize(
    ("method", "packets"), [("average", 4.0), ("limit", 4.0), ("restart", 4.0), ("lag", 2.0)]
)
def test_snaps_of_two_heights_a_staircase_and_fades_tell_both(method: str, packets: float) -> None:
    """The recipe, without a reference light."""
    truth = _case(method, packets, "recipe").truth
    assert (truth.can_tell_method, truth.can_tell_length) == (True, True)


def test_half_snaps_tell_a_limit_but_leave_average_and_restart_alike() -> None:
    """A limit takes half the time; a restarted ramp and an average take all of it, alike."""
    assert _case("limit", 4.0, "heights").truth.can_tell_method is True
    for method in ("average", "restart"):
        assert _case(method, 4.0, "heights").truth.can_tell_method is False


def test_interpolating_is_told_only_against_the_time_of_sending() -> None:
    """Without a reference light any N makes the same line, later."""
    assert _case("interpolate", 3.0, "recipe").truth.can_tell_length is False
    truth = _case("interpolate", 3.0, "recipe", BESIDE).truth
    assert (truth.can_tell_method, truth.can_tell_length) == (True, True)


def test_interpolating_1_behind_is_an_average_over_1() -> None:
    """Closed form: the mean of the stairs over one packet's time is the line from packet to packet."""
    truth = _case("interpolate", 1.0, "recipe", BESIDE).truth
    assert (truth.can_tell_method, truth.can_tell_length) == (False, True)


def test_a_slow_camera_cannot_tell_off_from_a_short_smoothing() -> None:
    """24 frames a second, no reference light: a jump within a frame and a short line are alike."""
    assert _case("none", 0.0, "full", fps=24.0).truth.can_tell_length is False
    assert _case("none", 0.0, "full", fps=240.0).truth.can_tell_length is True


def test_a_length_of_0_3_packets_and_off_are_the_same() -> None:
    """Off has no rival at or below the tolerance: the nearest is longer."""
    nearest = _case("none", 0.0, "one", fps=120.0).told.nearest
    assert float(nearest.split(" over ")[1].split()[0]) > 0.3


def test_light_clipped_at_half_its_height_hides_the_length() -> None:
    """Only the lower half of one snap's line is seen, and how high the light goes is unknown."""
    case = _case("average", 5.0, "one")
    assert case.camera is not None
    bright = dataclasses.replace(case, camera=dataclasses.replace(case.camera, gain=2.0))
    assert bright.truth.can_tell_length is False


def test_the_same_seed_gives_the_same_cases_and_files(tmp_path: Path) -> None:
    """Byte for byte, however many cases are asked for."""
    one, other = cases(4, 9), cases(3, 9)
    assert one[:3] == other
    short = min(one[:3], key=lambda case: case.seconds)
    again = next(case for case in other if case.name == short.name)
    (tmp_path / "a").mkdir()
    (tmp_path / "b").mkdir()
    assert short.write(tmp_path / "a").read_bytes() == again.write(tmp_path / "b").read_bytes()


def test_draws_hold_every_method_event_and_way_of_recording() -> None:
    """Nothing that the benchmark is about is missing from 300 cases."""
    drawn = cases(300, 1)
    assert {case.method for case in drawn} == {"none", "average", "interpolate", "lag", "limit", "restart"}
    assert {group.kind for case in drawn for group in case.groups} == {"snap", "staircase", "fade"}
    assert {case.coding.codec for case in drawn if case.coding} == {
        coding.codec for coding in CODINGS.values()
    }
    films = [case.camera for case in drawn if case.camera]
    assert {round(camera.fps) for camera in films} == {24, 25, 30, 50, 60, 120, 240}
    assert {camera.shutter_deg for camera in films} >= {45.0, 180.0, 360.0}
    assert any(camera.gain > 1 for camera in films)
    assert any(camera.readout_s > 0.01 for camera in films)
    assert any(camera.drop for camera in films)
    assert {camera.flicker.hz for camera in films if camera.flicker.other_depth} == {100.0, 120.0}
    assert any(case.wire.gateway_hz for case in drawn)
    assert any(case.picture.reference for case in drawn)
    assert any(case.meter and case.meter.sent_full for case in drawn)
