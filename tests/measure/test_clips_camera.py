"""The generator's camera against closed forms, published curves, and what comes back out of the files."""

from __future__ import annotations

import csv
import dataclasses
from pathlib import Path

import numpy as np
import pytest

from measure.clips.camera import Camera, Flicker, encoded, exposures
from measure.clips.case import Case
from measure.clips.cases import cases
from measure.clips.light import Straight
from measure.clips.picture import Dark, Filmed, Picture, frames, luma
from measure.clips.video import CODINGS, decoded_luma, encode

RAMP = Straight(np.array([0.0, 1.0]), np.array([0.0, 1.0]))  # one a second, from 0 at 0 s
SILENT = Camera(100.0, 180.0, read_noise=0.0, shot_noise=0.0, gain=0.7, black=0.0)


def test_an_exposure_of_a_linear_ramp_is_its_level_at_mid_exposure() -> None:
    """Closed form: the mean of a straight line over an interval is its value in the middle."""
    starts_s = np.linspace(0.1, 0.8, 29)
    assert exposures(RAMP, starts_s, 0.05) == pytest.approx(starts_s + 0.025, abs=1e-12)


def test_an_exposure_across_the_ramps_start_is_the_triangle_that_it_caught() -> None:
    """Closed form: open from -a to b, the ramp gives b squared / 2 (a + b)."""
    assert exposures(RAMP, np.array([-0.02]), 0.05) == pytest.approx(0.03**2 / (2 * 0.05), abs=1e-12)


def test_flicker_vanishes_over_whole_mains_cycles_and_follows_the_sine_elsewhere() -> None:
    """Closed form: 1 + d sin has mean 1 over a whole period, and 1 + d 2 / pi over its first quarter."""
    flicker = Flicker(hz=100.0, other=0.1, other_depth=0.5)
    whole = exposures(Dark(), np.linspace(0, 0.02, 9), 0.01, flicker)
    assert whole == pytest.approx(0.1, abs=1e-9)
    quarter = exposures(Dark(), np.array([0.0]), 0.0025, flicker)
    assert quarter == pytest.approx(0.1 * (1 + 0.5 * 2 / np.pi), rel=1e-9)


def test_the_lamps_own_flicker_is_on_the_light_and_not_on_the_dark() -> None:
    """A lamp at half level with 10 % ripple swings between 0.45 and 0.55; when dark it stays dark."""
    half = Straight(np.array([0.0]), np.array([0.5]))
    flicker = Flicker(hz=100.0, lamp_depth=0.1)
    swing = exposures(half, np.linspace(0, 0.01, 400), 1e-5, flicker)
    assert (swing.min(), swing.max()) == (pytest.approx(0.45, abs=1e-4), pytest.approx(0.55, abs=1e-4))
    assert exposures(Dark(), np.linspace(0, 0.01, 9), 1e-3, flicker) == pytest.approx(0.0)


@pytest.mark.parametrize(("transfer", "name"), [("srgb", "sRGB"), ("bt709", "ITU-R BT.709")])
def test_transfer_functions_are_the_published_ones(transfer: str, name: str) -> None:
    """Against colour-science's curves of IEC 61966-2-1 and ITU-R BT.709."""
    import colour

    linear = np.linspace(0, 1, 257)
    published = colour.cctf_encoding(linear, function=name)
    assert encoded(linear, transfer) == pytest.approx(published, abs=2e-4)


def test_luma_has_the_published_black_and_white() -> None:
    """ITU-R BT.709-6, item 4.6: black 16 and peak 235 in 8 bits; 0 and 255 in full range."""
    assert luma(np.array([0.0, 1.0]), full_range=False).tolist() == [16, 235]
    assert luma(np.array([0.0, 1.0]), full_range=True).tolist() == [0, 255]


def test_a_rolling_readout_puts_a_jump_later_into_the_upper_rows() -> None:
    """Rows are read from top to bottom: while the light comes on, lower rows have seen more of it."""
    camera = dataclasses.replace(SILENT, readout_s=0.008)
    picture = Picture(96, 72, (8, 4, 30, 60))
    jump = Straight(np.array([0.0103, 0.0103]), np.array([0.0, 1.0]))
    frame = list(frames(picture, camera, (Filmed(picture.box, jump),), np.array([0.0, 0.008]), 1))[1]
    column = frame[4:64, 20].astype(int)
    assert (np.diff(column) >= 0).all()
    assert column[0] < column[-1]


def test_light_past_the_top_is_clipped() -> None:
    """Half again too bright: the patch is white, and no brighter."""
    camera = dataclasses.replace(SILENT, gain=1.5)
    picture = Picture(96, 72, (8, 4, 30, 60))
    lit = Straight(np.array([0.0]), np.array([1.0]))
    frame = next(frames(picture, camera, (Filmed(picture.box, lit),), np.array([0.0]), 1))
    assert (frame[10:60, 10:36] == 235).all()
    assert (frame[:, 60:] == 16).all()


@pytest.mark.parametrize("name", sorted(CODINGS))
def test_what_was_encoded_comes_back_within_the_compressions_error(name: str, tmp_path: Path) -> None:
    """Decoded with PyAV, an even patch's mean is off by no more than twice the error the coding names (root
    mean square), every frame is there, and each time is the frame's own."""
    coding = CODINGS[name]
    picture = Picture(96, 72, (10, 10, 40, 40), full_range=name == "mjpeg")
    camera = Camera(120.0, 180.0, gain=0.7)
    light = Straight(np.array([0.2, 0.5, 0.7, 0.7]), np.array([0.0, 1.0, 1.0, 0.3]))
    starts_s = camera.starts_s(1.0, 1)
    made = list(frames(picture, camera, (Filmed(picture.box, light),), starts_s, 1))
    path = tmp_path / f"clip{coding.ending}"
    encode(path, made, starts_s, coding, camera.fps, full_range=picture.full_range)
    times_s, back = decoded_luma(path)
    assert len(back) == len(made) == 120
    assert times_s - times_s[0] == pytest.approx(starts_s - starts_s[0], abs=1e-3)
    means = np.array([[plane[14:46, 14:46].mean() for plane in planes] for planes in (made, back)])
    assert np.sqrt(np.mean((means[0] - means[1]) ** 2)) <= 2 * coding.error


def test_uneven_frames_keep_their_own_times(tmp_path: Path) -> None:
    """Lost and late frames: the file's time stamps are the times of exposure, to 0.1 ms."""
    camera = Camera(60.0, 180.0, drop=0.1, jitter=0.05)
    starts_s = camera.starts_s(2.0, 5)
    assert starts_s.size < 120
    dark = [np.full((48, 64), 16, dtype=np.uint8)] * starts_s.size
    encode(tmp_path / "clip.mp4", dark, starts_s, CODINGS["h264"], 60.0)
    times_s, _ = decoded_luma(tmp_path / "clip.mp4")
    assert times_s - times_s[0] == pytest.approx(starts_s - starts_s[0], abs=1e-4)


def _first(which: str) -> Case:
    return next(
        case for case in cases(200, 3) if case.meter and bool(case.meter.sent_full) == (which == "sent")
    )


@pytest.mark.parametrize("which", ["sent", "light only"])
def test_a_trace_is_a_table_of_times_levels_and_what_was_sent(which: str, tmp_path: Path) -> None:
    """Rising times, the titles of the format, and the wire's levels only where the wire was logged."""
    case = _first(which)
    with case.write(tmp_path).open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert list(rows[0]) == (["time_s", "level", "sent"] if which == "sent" else ["time_s", "level"])
    times_s = np.array([float(row["time_s"]) for row in rows])
    assert (np.diff(times_s) > 0).all()
    assert case.meter is not None
    assert times_s.size == int(case.seconds * case.meter.rate_hz)
    if which == "sent":
        assert max(float(row["sent"]) for row in rows) == pytest.approx(case.meter.sent_full)
