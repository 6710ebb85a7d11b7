"""Benchmark of the response engine: ratios against a plain numpy floor measured in the same run.

    python tests/bench/bench_response.py

The floor makes the random losses, the held values and one cumulative sum over the same packets of
1,000 trials of a 10 s fade at 44 Hz, and nothing else. Times are processor times of this process, the
least of several runs, the floor's and the engine's taken in turn.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace

import numpy as np

from modebook.response.camera import Camera, exposures
from modebook.response.cue_light import cue_light
from modebook.response.fade import Fade, answer
from modebook.response.judge import judge
from modebook.response.link import Link
from modebook.response.losses import LostAtRandom
from modebook.response.quantize import dequantize
from modebook.response.smoothers import smooth
from modebook.response.smoothing import METHODS, OFF, Smoothing

RUNS = 15
TRIALS, SECONDS_S, REFRESH_HZ, LOSS = 1000, 10.0, 44.0, 0.02
ONE_PHASE_MOST, WORST_PHASE_MOST, MEMORY_MOST_MB, IMPORT_MOST_S = 4.0, 20.0, 500.0, 0.2
KEPT = ("modebook.response",)  # the rest of an import is numpy's own time

LOSSY = Link(REFRESH_HZ, losses=LostAtRandom(LOSS, 1))
ONE_PHASE = Fade(
    100.0,
    0.0,
    SECONDS_S,
    LOSSY,
    smoothing=Smoothing(packets=5),
    camera=Camera(24.0, phase=0.0),
    trials=TRIALS,
)
WORST_PHASE = replace(ONE_PHASE, camera=Camera(24.0))


def _floor(packets: int, levels: np.ndarray) -> np.ndarray:
    lost = np.random.default_rng(1).random((TRIALS, packets)) < LOSS
    last = np.maximum.accumulate(np.where(lost, 0, np.arange(packets)), axis=1)
    return np.cumsum(levels[last], axis=1)


def _took_s(work: Callable[[], object]) -> float:
    start_s = time.process_time()
    work()
    return time.process_time() - start_s


def _import_s(module: str) -> float:
    code = f"import time; s = time.perf_counter(); import {module}; print(time.perf_counter() - s)"
    runs = (
        subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
        for _ in range(5)
    )
    return min(float(run.stdout) for run in runs)


def _slots() -> None:
    """Smooth and expose 512 slots for 60 s in one call each."""
    packets = round(60 * REFRESH_HZ)
    values = np.random.default_rng(2).integers(0, 256, (512, packets))
    times_s = np.arange(packets) / REFRESH_HZ
    light = smooth(Smoothing(packets=5), times_s, dequantize(values, 8), 0.0, 1 / REFRESH_HZ)
    exposures(light, np.arange(60 * 24) / 24.0, 1 / 48)


def _say(what: str, took_s: float, ratio: float, of: str, most: float) -> None:
    print(f"{what}: {took_s * 1e3:.1f} ms = {ratio:.2f} x {of} (at most {most:g})")


def _memory_mb() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


def main() -> int:
    """Print each figure beside what it may be; the exit status says whether all are kept."""
    cue = cue_light(WORST_PHASE.ramp, WORST_PHASE.smoothing, WORST_PHASE.transfer, LOSSY, 8, TRIALS)
    packets = len(cue.received.times_s)
    levels = dequantize(cue.values[:packets], 8)
    works: dict[str, Callable[[], object]] = {
        "floor": lambda: _floor(packets, levels),
        "one phase": lambda: answer(ONE_PHASE),
        "worst phase": lambda: answer(WORST_PHASE),
    }
    took_s = {name: min(_took_s(work) for _ in range(2)) for name, work in works.items()}
    for _ in range(RUNS):
        for name in ("floor", "one phase"):
            took_s[name] = min(took_s[name], _took_s(works[name]))
    for _ in range(3):
        took_s["worst phase"] = min(took_s["worst phase"], _took_s(works["worst phase"]))
    slots_s = min(_took_s(_slots) for _ in range(3))
    memory_mb = _memory_mb()
    one, worst = took_s["one phase"] / took_s["floor"], took_s["worst phase"] / took_s["one phase"]
    imports_s = {
        module: _import_s(module) for module in ("modebook.response", "numpy", "modebook.response.fade")
    }
    print(f"{TRIALS} trials of {packets} packets, floor: {took_s['floor'] * 1e3:.1f} ms")
    _say("one phase, all measures", took_s["one phase"], one, "floor", ONE_PHASE_MOST)
    _say("worst phase, all measures", took_s["worst phase"], worst, "one phase", WORST_PHASE_MOST)
    print(f"512 slots by 60 s, smoothed and exposed: {slots_s * 1e3:.0f} ms")
    print(f"memory at most: {memory_mb:.0f} MB (at most {MEMORY_MOST_MB:g})")
    for module, import_s in imports_s.items():
        print(
            f"import {module}: {import_s:.3f} s" + (f" (at most {IMPORT_MOST_S:g})" if module in KEPT else "")
        )
    for method in METHODS:
        choice = OFF if method == "none" else Smoothing(method, packets=2)  # type: ignore[arg-type]
        fade = replace(WORST_PHASE, smoothing=choice, trials=1)
        judged_s = min(_took_s(lambda fade=fade, n=n: judge(fade, 0.95 + n * 1e-6)) for n in range(4))  # type: ignore[misc]
        print(f"one cue judged for planning, {method}: {judged_s * 1e3:.0f} ms")
    kept = (
        one <= ONE_PHASE_MOST
        and worst <= WORST_PHASE_MOST
        and memory_mb <= MEMORY_MOST_MB
        and imports_s["modebook.response"] <= IMPORT_MOST_S
    )
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
