"""The demo clip that is checked in: small, what its script makes, and able to tell what the README says."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from measure.clips.scoring import kind_of
from measure.clips.video import decoded_luma
from measure.demo_clip import CLIP, LARGEST_BYTES, PACKETS, demo_case


def test_the_clip_is_small() -> None:
    """It is cloned with the project."""
    assert CLIP.stat().st_size < LARGEST_BYTES


def test_the_script_makes_an_equivalent_clip(tmp_path: Path) -> None:
    """Frame by frame the same light within one step of luma, whichever encoder made it."""
    case = demo_case()
    x, y, w, h = case.picture.box
    made, kept = decoded_luma(case.write(tmp_path)), decoded_luma(CLIP)
    assert np.abs(made[0] - kept[0]).max() < 1e-4
    means = [np.array([plane[y : y + h, x : x + w].mean() for plane in planes]) for _, planes in (made, kept)]
    assert np.abs(means[0] - means[1]).max() < 1.0
    assert np.ptp(means[1]) > 60


def test_the_clip_can_tell_method_and_length() -> None:
    """By the generator's own judgement, that no fitting has part in."""
    truth = demo_case().truth
    assert kind_of(truth) == "can tell"
    assert (truth.method, truth.length_packets) == ("average", PACKETS)
