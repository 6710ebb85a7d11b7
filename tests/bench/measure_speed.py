"""Times the measuring of a 10 s clip of 1080p at 240 frames a second beside its decoding, and of a trace."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from measure.clips.camera import Camera
from measure.clips.case import Case
from measure.clips.cases import events
from measure.clips.meter import Meter
from measure.clips.picture import Filmed, Picture, frames
from measure.clips.video import CODINGS, encode
from measure.clips.wire import Wire

SCALE, SECONDS_S = 8, 10.0
CLIP_MOST_S, MEMORY_MOST_MB, TRACE_MOST_S = 30.0, 500.0, 2.0
SMALL = Picture(240, 136, (60, 40, 60, 60))  # eight times this is 1920 by 1088, as 1080p is coded
DECODE = """
import sys, av
with av.open(sys.argv[1]) as clip:
    clip.streams.video[0].thread_type = "AUTO"
    print(sum(1 for frame in clip.decode(video=0)))
"""
MEMORY = """
import sys
sys.argv = ["modebook", *sys.argv[1:]]
from modebook.cli.app import main
try:
    main()
finally:
    peak = [line for line in open("/proc/self/status") if line.startswith("VmHWM")]
    print(peak[0] if peak else "VmHWM: 0 kB", file=sys.stderr)
"""


def large_clip(folder: Path) -> tuple[Path, Case]:
    """Write the clip: small pictures enlarged, with grain of full fineness on top."""
    groups, _ = events(np.random.default_rng(1), "recipe", 0.12)
    case = Case("large", 1, "average", 4.0, Wire(40.0, 0.004), groups, SECONDS_S, (), picture=SMALL)
    case = replace(case, camera=Camera(240.0, 180.0, 0.003), coding=CODINGS["h264-coarse"])
    path = folder / "large.mov"
    assert case.camera is not None and case.coding is not None  # noqa: PT018
    if not path.exists():
        starts_s = case.camera.starts_s(SECONDS_S, 1)
        lit = (Filmed(SMALL.box, case.lights()[0]),)
        small = frames(SMALL, case.camera, lit, starts_s, 1)
        encode(path, _enlarged(small), starts_s, case.coding, 240.0)
    return path, case


def _enlarged(small: Iterator[NDArray[np.uint8]]) -> Iterator[NDArray[np.uint8]]:
    rng = np.random.default_rng(7)
    shape = (SMALL.height * SCALE, SMALL.width * SCALE)
    grain = [rng.integers(0, 4, shape, dtype=np.uint8) for _ in range(5)]
    for number, frame in enumerate(small):
        large = frame.repeat(SCALE, axis=0).repeat(SCALE, axis=1)
        yield np.minimum(large, 230) + grain[number % len(grain)]


def speed(folder: Path) -> None:
    """Print times, memory and ratios with their targets."""
    path, case = large_clip(folder)
    floor_s, floor_cpu_s, _ = _run(DECODE, str(path))
    x, y, w, h = (SCALE * number for number in SMALL.box)
    box = f"{x + w // 4},{y + h // 4},{w // 2},{h // 2}"
    print(
        f"\n10 s of 1080p at 240 frames a second ({path.stat().st_size / 1e6:.0f} MB), {os.cpu_count()} cores"
    )
    print(f"  decoding alone        {floor_s:6.1f} s, {floor_cpu_s:6.1f} s of processor")
    for title, more in (("box given", ["--box", box]), ("light found", [])):
        took_s, cpu_s, memory_mb = _run(MEMORY, "measure", str(path), "--refresh", "40", "--json", *more)
        print(
            f"  measure, {title:<12} {took_s:6.1f} s, {cpu_s:6.1f} s of processor (target {CLIP_MOST_S:g} "
            f"s), {took_s / floor_s:.2f} times decoding; peak {memory_mb:.0f} MB (target {MEMORY_MOST_MB:g})"
        )
    meter = Meter(100_000 / case.seconds, sent_full=255.0)
    trace = replace(case, name="long", camera=None, coding=None, meter=meter).write(folder)
    took_s, cpu_s, memory_mb = _run(MEMORY, "measure", str(trace), "--refresh", "40", "--json")
    print(
        f"trace of 100,000 samples {took_s:6.2f} s, {cpu_s:6.2f} s of processor (target {TRACE_MOST_S:g} s); "
        f"peak {memory_mb:.0f} MB"
    )


def _run(code: str, *words: str) -> tuple[float, float, float]:
    """Run Python code in a process of its own: wall time, processor time (s), its peak memory in MB."""
    before, start_s = os.times(), time.perf_counter()
    done = subprocess.run([sys.executable, "-c", code, *words], check=False, capture_output=True, text=True)
    took_s, after = time.perf_counter() - start_s, os.times()
    cpu_s = after.children_user + after.children_system - before.children_user - before.children_system
    if done.returncode not in (0, 1):
        raise RuntimeError(f"the measured command failed: {done.stderr.strip()[-500:]}")
    peaks = [line.split()[1] for line in done.stderr.splitlines() if line.startswith("VmHWM")]
    return took_s, cpu_s, float(peaks[0]) / 1024 if peaks else 0.0
