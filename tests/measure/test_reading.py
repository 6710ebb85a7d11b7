"""What clips and tables come as: 10 bits, uneven frames, a camera's own curve, a spreadsheet."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import openpyxl
import pytest

from measure.tiny import HZ, OPEN_S, answered_light, write_clip
from modebook.measure.answer import measure
from modebook.measure.clip import read_clip
from modebook.measure.files import read
from modebook.measure.grayscale import read_gray
from modebook.measure.setup import Box, Setup

PACKETS, LASTS_S = 5.0, 6.3
EVEN_S = np.arange(0.0, LASTS_S, 1 / 120)
PLACE = Box(10, 8, 12, 8)


def bt709(light: np.ndarray) -> np.ndarray:
    """ITU-R BT.709-6, item 1.2: the camera's curve."""
    return np.where(light < 0.018, 4.5 * light, 1.099 * np.maximum(light, 1e-9) ** 0.45 - 0.099)


def test_ten_bits_keep_what_eight_would_round(tmp_path: Path) -> None:
    """A dim light that spans 13 of 8-bit codes is told well from 10 bits: their codes are not cut down."""
    light = 0.02 * answered_light(PACKETS, EVEN_S)
    path = write_clip(tmp_path / "deep.mkv", 64 + 876 * bt709(light), EVEN_S, bits=10)
    setup = Setup(refresh_hz=HZ, shutter_s=OPEN_S, box=PLACE)
    trace = read_clip(path, setup)
    assert float(np.abs(trace.level - light).max()) < 4e-4
    found = measure(trace, setup).judgement
    assert (found.can_tell, found.method) == (True, "average")
    assert found.length_packets == pytest.approx(PACKETS, abs=0.3)


def test_uneven_frames_are_placed_by_their_time_stamps(tmp_path: Path) -> None:
    """A clip whose rate wanders between 80 and 160 frames a second and drops frames is measured right."""
    rng = np.random.default_rng(5)
    steps_s = (1.0 + 0.33 * np.sin(np.arange(700) / 40.0)) / 120
    starts_s = np.concatenate([[0.0], np.cumsum(steps_s)])
    starts_s = starts_s[(rng.random(len(starts_s)) > 0.03) & (starts_s < LASTS_S)]
    starts_s = np.round((starts_s - starts_s[0]) * 90_000) / 90_000
    light = 0.7 * answered_light(PACKETS, starts_s)
    path = write_clip(tmp_path / "uneven.mkv", 16 + 219 * bt709(light), starts_s)
    setup = Setup(refresh_hz=HZ, shutter_s=OPEN_S, box=PLACE)
    trace = read_clip(path, setup)
    assert trace.time_s == pytest.approx(starts_s, abs=1.1e-3)  # the container counts in ms
    assert any("uneven" in note for note in trace.notes)
    found = measure(trace, setup).judgement
    assert (found.can_tell, found.method) == (True, "average")
    assert found.length_packets == pytest.approx(PACKETS, abs=0.3)


def test_a_gray_scale_undoes_a_curve_that_no_standard_has(tmp_path: Path) -> None:
    """A camera with the curve light^(1/1.5): by a gray scale shot with it the light comes out right."""
    light = 0.02 + 0.7 * answered_light(PACKETS, EVEN_S)
    path = write_clip(tmp_path / "own.mkv", 255 * light ** (1 / 1.5), EVEN_S, full_range=True)
    table = tmp_path / "gray.csv"
    patches = (0.005, 0.02, 0.05, 0.1, 0.18, 0.3, 0.45, 0.6, 0.8, 1.0)
    table.write_text(
        "code,light\n" + "".join(f"{255 * patch ** (1 / 1.5):.2f},{100 * patch:g}\n" for patch in patches),
        encoding="utf-8",
    )
    gray = read_gray(table)
    with_it = Setup(refresh_hz=HZ, shutter_s=OPEN_S, box=PLACE, gray=gray)
    trace = read_clip(path, with_it)
    assert float(np.abs(trace.level - light).max()) < 0.01
    found = measure(trace, with_it).judgement
    assert (found.can_tell, found.method) == (True, "average")
    assert found.length_packets == pytest.approx(PACKETS, abs=0.3)


def test_a_trace_in_a_spreadsheet_is_the_same_as_in_text(tmp_path: Path) -> None:
    """XLSX with the same numbers gives the same samples."""
    at_s = np.round(np.arange(0.0, LASTS_S, 1 / 250), 6)
    level = np.round(3.0 + 40.0 * answered_light(PACKETS, at_s), 4)
    text, book = tmp_path / "log.csv", openpyxl.Workbook()
    text.write_text(
        "time_s,level\n" + "".join(f"{a},{b}\n" for a, b in zip(at_s, level, strict=True)), encoding="utf-8"
    )
    book.active.append(["time_s", "level"])
    for a, b in zip(at_s, level, strict=True):
        book.active.append([float(a), float(b)])
    book.save(tmp_path / "log.xlsx")
    one, other = read(text, Setup()), read(tmp_path / "log.xlsx", Setup())
    assert other.time_s == pytest.approx(one.time_s)
    assert other.level == pytest.approx(one.level)
    found = measure(other, Setup(refresh_hz=HZ)).judgement
    assert found.length_packets == pytest.approx(PACKETS, abs=0.3)
