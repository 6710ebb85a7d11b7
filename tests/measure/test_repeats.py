"""Repeats combined, the drawing and the page to keep, and stopping a long clip."""

from __future__ import annotations

import re
import shutil
import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from measure.tiny import HZ, answered_light
from modebook.measure.answer import Answer, measure
from modebook.measure.combine import combine
from modebook.measure.setup import Setup
from modebook.measure.trace import Trace
from support.program import CATALOG, Program

CLIP = CATALOG / "clips" / "brumlet-19-smooth.mp4"
PLACES = ("--refresh", "30", "--box", "18,18,24,30", "--reference", "66,18,18,30", "--shutter", "180")


def logged(packets: float, seed: int) -> Answer:
    """A repeat with noise of its own."""
    at_s = np.arange(0.0, 6.3, 1 / 240)
    noise = 0.004 * np.random.default_rng(seed).standard_normal(len(at_s))
    level = 0.1 + 0.8 * answered_light(packets, at_s) + noise
    return measure(Trace(f"repeat {seed}", "trace", at_s, level, 1 / 240), Setup(refresh_hz=HZ))


@pytest.fixture(scope="module")
def repeats() -> list[Answer]:
    """Three of the same choice."""
    return [logged(4.0, seed) for seed in (1, 2, 3)]


def test_repeats_narrow_the_length(repeats: list[Answer]) -> None:
    """Together they tell the length no worse than each alone, and the interval holds the truth."""
    together = combine(repeats)
    assert (together.can_tell, together.method) == (True, "average")
    assert together.length_packets == pytest.approx(4.0, abs=0.1)
    assert together.interval_packets is not None
    assert together.interval_packets[0] <= 4.0 <= together.interval_packets[1]
    widths = [float(np.ptp(one.judgement.interval_packets or ())) for one in repeats]
    assert float(np.ptp(together.interval_packets)) < min(widths)


def test_repeats_of_different_choices_tell_nothing(repeats: list[Answer]) -> None:
    """Four packets and six are not one choice: no mean is made of them."""
    together = combine([*repeats[:1], logged(6.0, 4)])
    assert (together.can_tell, together.length_packets) == (False, None)
    assert "differ by more than they can" in together.why


def test_repeats_that_contradict_each_other_tell_nothing(repeats: list[Answer]) -> None:
    """One says average, another limit."""
    other = replace(repeats[1], judgement=replace(repeats[1].judgement, method="limit"))
    together = combine([repeats[0], other])
    assert (together.can_tell, together.method) == (False, None)
    assert together.why == "the repeats contradict each other: average and limit"


def test_a_drawing_and_a_page_hold_the_answer(modebook: Program, tmp_path: Path) -> None:
    """Both say the length that JSON says; the page needs nothing from elsewhere; twice the same bytes."""
    drawn, page = tmp_path / "fit.svg", tmp_path / "page.html"
    run = modebook("measure", CLIP, *PLACES, "--json", "--plot", drawn, "--report", page)
    assert run.status == 0, run.err
    told = f"{run.json['length_packets']:.2f} packets"
    ET.fromstring(drawn.read_text(encoding="utf-8"))
    text = page.read_text(encoding="utf-8")
    assert told in text
    assert "95 %" in text
    assert run.json["why"].split(";")[0] in text
    assert re.search(r"\b[0-9a-f]{64}\b", text), "the file's hash"
    assert not re.search(r"""(?:src|href)=["']?https?:""", text)
    first = drawn.read_bytes(), page.read_bytes()
    modebook("measure", CLIP, *PLACES, "--plot", drawn, "--report", page)
    assert (drawn.read_bytes(), page.read_bytes()) == first


def long_clip(path: Path, seconds: float) -> Path:
    """The demo clip's packets over and over."""
    import av

    with av.open(str(path), "w") as made:
        stream, late = None, 0
        while stream is None or late * float(stream.time_base) < seconds:
            with av.open(str(CLIP)) as kept:
                source = kept.streams.video[0]
                stream = stream or made.add_stream_from_template(source)
                last = 0
                for packet in kept.demux(source):
                    if packet.dts is None:
                        continue
                    last = max(last, packet.pts + (packet.duration or 0))
                    packet.pts, packet.dts = packet.pts + late, packet.dts + late
                    packet.stream = stream
                    made.mux(packet)
                late += last
    return path


def test_a_clip_of_20_minutes_can_be_stopped(
    modebook: Program, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Frames are read as they come, so that it stops at once: one line, and nothing is written."""
    from modebook.measure import clip

    path, seen = long_clip(tmp_path / "long.mp4", 1200.0), 0
    folder = tmp_path / "fixtures" / "pelluwick"
    folder.mkdir(parents=True)
    shutil.copy(CATALOG / "fixtures" / "pelluwick" / "brumlet-19.json", folder)
    before = (folder / "brumlet-19.json").read_bytes()
    keep = clip._keep

    def stops(*words: object) -> None:
        nonlocal seen
        seen += 1
        if seen == 600:
            raise KeyboardInterrupt
        keep(*words)  # type: ignore[arg-type]

    monkeypatch.setattr(clip, "_keep", stops)
    into = ("--into", "pelluwick/brumlet-19", "--choice", "smooth", "--by", "R. Quill")
    out = ("--plot", tmp_path / "fit.svg", "--report", tmp_path / "page.html")
    run = modebook("measure", path, *PLACES, *into, *out, catalog=tmp_path)
    assert (run.status, run.out) == (2, "")
    assert run.err.count("\n") == 1
    assert "long.mp4: stopped after 2.5 s of it: nothing is measured or written" in run.err
    assert seen == 600  # of two boxes: 300 frames, 2.5 s at 120 a second
    assert not (tmp_path / "fit.svg").exists()
    assert not (tmp_path / "page.html").exists()
    assert (folder / "brumlet-19.json").read_bytes() == before
