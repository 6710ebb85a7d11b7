"""`modebook measure`: a clip to a record, the recipe, and one clear line for each bad input."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import numpy as np
import pytest

from support.program import CATALOG, Program

CLIP = CATALOG / "clips" / "brumlet-19-smooth.mp4"
PLACES = ("--refresh", "30", "--box", "18,18,24,30", "--reference", "66,18,18,30", "--shutter", "180")
BY = ("--by", "R. Quill", "--date", "2026-05-31")
KEYS = [
    "can_tell",
    "method",
    "length_packets",
    "length_ms",
    "interval_packets",
    "delay_ms",
    "refresh_hz",
    "camera_fps",
    "events",
    "why",
]


@pytest.fixture
def catalog(tmp_path: Path) -> Path:
    """A catalog of the Brumlet 19 alone."""
    folder = tmp_path / "fixtures" / "pelluwick"
    folder.mkdir(parents=True)
    shutil.copy(CATALOG / "fixtures" / "pelluwick" / "brumlet-19.json", folder)
    return tmp_path


def test_a_clip_becomes_a_measured_length_in_the_record(modebook: Program, catalog: Path) -> None:
    """The keys are as promised; the maker's words stay as they were, and the fade then uses the length."""
    path = catalog / "fixtures" / "pelluwick" / "brumlet-19.json"
    before = json.loads(path.read_text(encoding="utf-8"))
    into = (
        "--into",
        "pelluwick/brumlet-19",
        "--choice",
        "smooth",
        "--by",
        "R. Quill",
        "--date",
        "2026-05-31",
    )
    run = modebook("measure", CLIP, *PLACES, *into, "--json", catalog=catalog)
    assert run.status == 0, run.err
    assert list(run.json) == KEYS
    assert (run.json["can_tell"], run.json["method"]) == (True, "average")
    assert run.json["length_packets"] == pytest.approx(4.0, abs=0.3)
    after = json.loads(path.read_text(encoding="utf-8"))
    (choice,) = (c for s in after["settings"] for c in s["choices"] if c["key"] == "smooth")
    measured = choice.pop("measured")
    (old,) = (c for s in before["settings"] for c in s["choices"] if c["key"] == "smooth")
    assert choice == old
    assert (measured["by"], measured["date"], measured["method"]) == ("R. Quill", "2026-05-31", "average")
    fade = modebook(
        "fade", "--fixture", "pelluwick/brumlet-19", "--mode", "Wash 16", "--choice", "smooth", "--json",
        catalog=catalog,
    )  # fmt: skip
    assert any("measured on 2026-05-31 by R. Quill" in line for line in fade.json["assumptions"]), fade.json


def test_the_recipe_has_cautions_and_the_values_of_each_choice(modebook: Program) -> None:
    """What may hurt comes first."""
    run = modebook("measure", "--how", "pelluwick/brumlet-19", "--mode", "Wash 16", "--json")
    assert run.status == 0, run.err
    assert run.json["cautions"]
    assert "smooth" in [one["choice"] for one in run.json["choices"]]
    told = modebook("measure", "--how", "pelluwick/brumlet-19", "--mode", "Wash 16")
    assert told.out.index("photosensitive") < told.out.index("Send")


def test_what_tells_no_length_writes_nothing(modebook: Program, catalog: Path, tmp_path: Path) -> None:
    """Noise is no measurement: the record stays as it was."""
    path = catalog / "fixtures" / "pelluwick" / "brumlet-19.json"
    before = path.read_bytes()
    trace = tmp_path / "still.csv"
    trace.write_text("time_s,level\n" + "".join(f"{n / 100},{n % 7}\n" for n in range(400)), encoding="utf-8")
    into = ("--into", "pelluwick/brumlet-19", "--choice", "smooth", "--by", "R. Quill")
    run = modebook("measure", trace, "--refresh", "44", *into, catalog=catalog)
    assert run.status == 2
    assert "no event" in run.err
    assert path.read_bytes() == before


def sound(path: Path) -> Path:
    """A file with sound only."""
    import av

    with av.open(str(path), "w") as container:
        stream = container.add_stream("pcm_s16le", rate=8000, layout="mono")
        frame = av.AudioFrame.from_ndarray(np.zeros((1, 8000), dtype=np.int16), format="s16", layout="mono")
        frame.sample_rate = 8000
        container.mux(stream.encode(frame))
        container.mux(stream.encode(None))
    return path


def test_bad_input_is_told_in_one_line(modebook: Program, tmp_path: Path) -> None:
    """A folder, no file, an empty one, sound only, no clip, a cut clip, a box with no light or outside."""
    empty, junk, cut = tmp_path / "empty.mp4", tmp_path / "junk.mp4", tmp_path / "cut.mp4"
    empty.touch()
    junk.write_bytes(b"\0nothing" * 500)
    cut.write_bytes(CLIP.read_bytes()[:9000])
    short, back = tmp_path / "short.csv", tmp_path / "back.csv"
    short.write_text("time_s,level\n0,1\n1,2\n", encoding="utf-8")
    back.write_text("time_s,level\n" + "".join(f"{n % 30},{n}\n" for n in range(60)), encoding="utf-8")
    wordy = tmp_path / "wordy.csv"
    wordy.write_text("time_s,level\n" + "0,one\n" * 30, encoding="utf-8")
    for arguments, told in (
        ((tmp_path,), "is a folder"),
        ((tmp_path / "none.mp4",), "no such file"),
        ((empty,), "the file is empty"),
        ((junk,), "is no clip that can be read"),
        ((cut,), "is no clip that can be read"),
        ((sound(tmp_path / "sound.wav"),), "only sound is in it"),
        ((CLIP, "--box", "0,0,6,6"), "no event: the light does not change"),
        ((CLIP, "--box", "90,60,40,40"), "does not lie in the picture"),
        ((short,), "2 samples are too few"),
        ((back,), "time goes from 29 s to 0 s"),
        ((wordy,), "'one' is not a number"),
        ((short, "--box", "1,1,8,8"), "has no box"),
    ):
        run = modebook("measure", *arguments, "--refresh", "30")
        assert run.status == 2, (arguments, run.out)
        assert told in run.err, (arguments, run.err)
        assert run.err.count("\n") == 1, run.err


def test_a_clip_that_breaks_off_is_measured_as_far_as_it_goes(modebook: Program, tmp_path: Path) -> None:
    """A stream that can be read from its start: what was there before the break counts."""
    import av

    whole = tmp_path / "whole.ts"
    with av.open(str(CLIP)) as source, av.open(str(whole), "w") as made:
        stream = made.add_stream_from_template(source.streams.video[0])
        for packet in source.demux(source.streams.video[0]):
            if packet.dts is not None:
                packet.stream = stream
                made.mux(packet)
    cut = tmp_path / "cut.ts"
    content = whole.read_bytes()
    cut.write_bytes(content[: len(content) * 2 // 3])
    run = modebook("measure", cut, *PLACES, "--json")
    assert run.status == 0, run.err
    assert 0 < run.json["events"] < 10
