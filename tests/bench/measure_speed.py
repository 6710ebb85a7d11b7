"""Times the measuring of a 10 s clip of 1080p at 240 frames a second beside its decoding, and of a trace."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from measure.clips.camera import Camera
from measure.clips.case import Case
from measure.clips.cases import events
from measure.clips.meter import Meter
from measure.clips.picture import Filmed, Picture, frames
from measure.clips.video import CODINGS, encode
from measure.clips.wire import Group, Step, Wire

SCALE, SECONDS_S, TURN_S, REFRESH_HZ = 8, 10.0, 2.0, 40.0
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


def large_clip(folder: Path) -> Path:
    """Write the clip: small pictures enlarged, with grain of full fineness on top.

    TURN_S of it are encoded and their packets written several times: encoding all would take longer than
    everything that is measured.
    """
    path, part, whole = folder / "large.mov", folder / "large-part.mov", folder / "large-whole.mov"
    if path.exists():
        return path
    moves = ((0.2, 0.0, 1.0), (0.65, 1.0, 0.5), (1.1, 0.5, 1.0), (1.55, 1.0, 0.0))
    groups = tuple(Group("snap", at_s, first, (Step(0.0, level),)) for at_s, first, level in moves)
    wire = Wire(REFRESH_HZ, 0.004)
    case = Case("large", 1, "average", 4.0, wire, groups, TURN_S, (), picture=SMALL)
    camera = Camera(240.0, 180.0, 0.003)
    starts_s = camera.starts_s(TURN_S, 1)
    small = frames(SMALL, camera, (Filmed(SMALL.box, case.lights()[0]),), starts_s, 1)
    encode(part, _enlarged(small), starts_s, CODINGS["h264-coarse"], camera.fps)
    _repeat(part, whole, round(SECONDS_S / TURN_S))
    whole.rename(path)
    return path


def _repeat(part: Path, whole: Path, turns: int) -> None:
    import av

    with av.open(str(whole), "w") as made:
        stream = None
        for turn in range(turns):
            with av.open(str(part)) as kept:
                source = kept.streams.video[0]
                stream = stream or made.add_stream_from_template(source)
                late = turn * round(TURN_S / source.time_base)
                for packet in kept.demux(source):
                    if packet.dts is None:
                        continue
                    packet.pts, packet.dts = packet.pts + late, packet.dts + late
                    packet.stream = stream
                    made.mux(packet)


def _enlarged(small: Iterator[NDArray[np.uint8]]) -> Iterator[NDArray[np.uint8]]:
    rng = np.random.default_rng(7)
    shape = (SMALL.height * SCALE, SMALL.width * SCALE)
    grain = [rng.integers(0, 4, shape, dtype=np.uint8) for _ in range(5)]
    for number, frame in enumerate(small):
        large = frame.repeat(SCALE, axis=0).repeat(SCALE, axis=1)
        yield np.minimum(large, 230) + grain[number % len(grain)]


def speed(folder: Path) -> None:
    """Print times, memory and ratios with their targets."""
    path = large_clip(folder)
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
    groups, _ = events(np.random.default_rng(1), "recipe", 0.12)
    meter = Meter(100_000 / SECONDS_S, sent_full=255.0)
    wire = Wire(REFRESH_HZ, 0.004)
    trace = Case("long", 1, "average", 4.0, wire, groups, SECONDS_S, (), meter=meter).write(folder)
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
