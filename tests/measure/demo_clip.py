"""Makes the README's demo clip: the invented Brumlet 19 with its choice 'smooth', of no printed length.

    python tests/measure/demo_clip.py --write

Filmed at 120 frames a second beside a light without smoothing, while a desk at 30 packets a second sends
snaps of full and half height, staircases and fades.
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np

from measure.clips.camera import Camera, Flicker
from measure.clips.case import Case
from measure.clips.cases import events
from measure.clips.picture import Picture
from measure.clips.video import Coding
from measure.clips.wire import Wire

CLIP = Path(__file__).resolve().parents[2] / "catalog" / "clips" / "brumlet-19-smooth.mp4"
FIXTURE, CHOICE = "pelluwick/brumlet-19", "smooth"
PACKETS, REFRESH_HZ = 4.0, 30.0
LARGEST_BYTES = 150_000


def demo_case() -> Case:
    """Give the clip's case: its truth is an average over PACKETS."""
    groups, seconds = events(np.random.default_rng(19), "recipe", PACKETS / REFRESH_HZ)
    once = groups[:10]  # each move of the recipe, one time
    return Case(
        CLIP.stem,
        19,
        "average",
        PACKETS,
        Wire(REFRESH_HZ, 0.0117),
        once,
        min(seconds, once[-1].start_s + once[-1].moves_s + 0.6),
        ("--refresh", "30", "--box", "18,18,24,30", "--reference", "66,18,18,30", "--shutter", "180"),
        latency_s=0.004,
        picture=Picture(96, 72, (10, 12, 40, 44), (60, 12, 30, 44), "disc"),
        camera=Camera(
            120.0,
            180.0,
            0.004,
            read_noise=0.0012,
            shot_noise=0.006,
            flicker=Flicker(100.0, 0.8, other=0.03, other_depth=0.3),
        ),
        coding=Coding("libx264", ".mp4", {"crf": "25", "preset": "medium"}, error=0.6),
    )


def main() -> int:
    """Write the clip, or say whether it is there."""
    if "--write" not in sys.argv[1:]:
        print(f"{CLIP} {'is there' if CLIP.exists() else 'is missing'}; --write makes it")  # noqa: T201
        return int(not CLIP.exists())
    CLIP.parent.mkdir(parents=True, exist_ok=True)
    demo_case().write(CLIP.parent)
    return 0


if __name__ == "__main__":
    sys.exit(main())
