"""Draws cases: lights, desks, events, cameras and meters as they come, the same ones for the same seed."""

from __future__ import annotations

from typing import TypeVar

import numpy as np

from .camera import Camera, Flicker
from .case import Case
from .meter import Meter
from .picture import Box, Picture
from .video import CODINGS
from .wire import Group, Step, Wire

Key = TypeVar("Key")

METHODS = {"none": 0.14, "average": 0.28, "interpolate": 0.15, "lag": 0.16, "limit": 0.13, "restart": 0.14}
REFRESH_HZ = (30.0, 40.0, 44.0)
FPS = {24.0: 0.06, 25.0: 0.04, 30000 / 1001: 0.05, 50.0: 0.1, 60.0: 0.15, 120.0: 0.3, 240.0: 0.3}
SHUTTERS_DEG = (45.0, 90.0, 144.0, 172.8, 180.0, 270.0, 360.0)
PROGRAMS = {"one": 0.08, "full": 0.14, "heights": 0.18, "staircase": 0.18, "recipe": 0.42}
SIZES = ((96, 72), (160, 120), (128, 72), (72, 128))
LONGEST_S = 11.0


def cases(n: int, seed: int) -> list[Case]:
    """Give n cases; case k of a seed is always the same, whatever n is."""
    return [one_case(seed, number) for number in range(n)]


def one_case(seed: int, number: int) -> Case:
    """Give case `number` of a seed."""
    rng = np.random.default_rng((seed, number))
    method = _pick(rng, METHODS)
    packets = _length(rng, method)
    desk_hz = float(rng.choice(REFRESH_HZ))
    gateway_hz = (
        float(rng.choice([hz for hz in REFRESH_HZ if hz != desk_hz])) if rng.random() < 0.15 else None
    )
    # no clock is exact
    wire = Wire(
        desk_hz * float(1 + rng.normal(0, 3e-4)),
        float(rng.uniform(0, 1 / desk_hz)),
        gateway_hz,
        float(rng.uniform(0, 0.05)),
        bits=8 if rng.random() < 0.7 else 16,
    )
    tail_s = packets * wire.heard_period_s * (5.0 if method == "lag" else 1.0)
    program = _pick(rng, PROGRAMS)
    groups, seconds = events(rng, program, tail_s)
    said = ["--refresh", f"{desk_hz:g}", *(["--gateway-hz", f"{gateway_hz:g}"] if gateway_hz else [])]
    flicker = _flicker(rng)
    name = f"case-{seed}-{number:04d}"
    if rng.random() < 0.15:
        meter = _meter(rng, flicker)
        latency_s = float(rng.uniform(0, 0.003))
        return Case(name, number, method, packets, wire, groups, seconds, tuple(said), latency_s, meter=meter)
    coding = CODINGS[str(rng.choice(list(CODINGS), p=[0.4, 0.15, 0.1, 0.15, 0.1, 0.1]))]
    camera = _camera(rng, flicker)
    picture, places = _picture(rng, coding.codec == "mjpeg" or rng.random() < 0.1)
    said += [*places, *_told_of_camera(rng, camera, picture.full_range)]
    latency_s = float(rng.uniform(0, 0.015))
    return Case(
        name, number, method, packets, wire, groups, seconds, tuple(said), latency_s, picture, camera, coding
    )


def events(rng: np.random.Generator, program: str, tail_s: float) -> tuple[tuple[Group, ...], float]:
    """Give groups of moves and the record's length in s, the light settled between them.

    one: a full snap up. full: full snaps up and down. heights: also half ones. staircase: full snaps and
    staircases quicker than most smoothing. recipe: all of them and fades.
    """
    stride_s = float(rng.uniform(0.055, 0.12))
    up = tuple(Step(step * stride_s, (step + 1) / 4) for step in range(4))
    down = tuple(Step(step * stride_s, (3 - step) / 4) for step in range(4))
    fade_s = float(rng.choice([0.6, 0.8, 1.0]))
    full = [("snap", (Step(0.0, 1.0),)), ("snap", (Step(0.0, 0.0),))]
    half = [
        ("snap", (Step(0.0, 0.5),)),
        ("snap", (Step(0.0, 1.0),)),
        ("snap", (Step(0.0, 0.5),)),
        ("snap", (Step(0.0, 0.0),)),
    ]
    stairs = [("staircase", up), ("staircase", down)]
    fades = [("fade", (Step(0.0, 1.0, fade_s),)), ("fade", (Step(0.0, 0.0, fade_s),))]
    moves = {
        "one": full[:1],
        "full": full,
        "heights": full + half,
        "staircase": full + stairs,
        "recipe": full + half + stairs + fades,
    }[program]
    repeats = 1 if program == "one" else int(rng.integers(1, 3))
    groups: list[Group] = []
    now_s, level = float(rng.uniform(0.4, 0.9)), 0.0
    for turn in range(repeats):
        for kind, steps in moves:
            group = Group(kind, now_s, level, steps)
            groups.append(group)
            now_s += group.moves_s + tail_s + float(rng.uniform(0.22, 0.36))
            level = group.last
        if now_s + (now_s / (turn + 1)) > LONGEST_S:
            break
    return tuple(groups), now_s + 0.3


def _length(rng: np.random.Generator, method: str) -> float:
    whole = rng.random() < 0.6
    if method == "none":
        return 0.0
    if method == "average":
        return float(rng.choice([1, 2, 2, 3, 4, 5, 8])) if whole else round(float(rng.uniform(0.8, 8)), 2)
    if method == "interpolate":
        return float(rng.integers(1, 6))
    if method == "lag":
        return round(float(rng.uniform(0.6, 5)), 2)
    return float(rng.integers(1, 9)) if whole else round(float(rng.uniform(1, 9)), 2)


def _flicker(rng: np.random.Generator) -> Flicker:
    kind = rng.random()
    hz, phase = float(rng.choice([100.0, 120.0])), float(rng.uniform(0, 2 * np.pi))
    other = float(rng.uniform(0.01, 0.1)) if kind < 0.4 else 0.0
    depth = float(rng.uniform(0.1, 0.5)) if kind < 0.25 else 0.0
    lamp = float(rng.uniform(0.01, 0.05)) if 0.2 < kind < 0.3 else 0.0
    return Flicker(hz, phase, other, depth, lamp)


def _camera(rng: np.random.Generator, flicker: Flicker) -> Camera:
    fps = _pick(rng, FPS)
    readout = float(rng.uniform(0.1, 0.85)) / fps if rng.random() < 0.6 else 0.0
    gain = float(rng.uniform(1.08, 1.5)) if rng.random() < 0.12 else float(rng.uniform(0.35, 0.85))
    uneven = rng.random() < 0.1
    return Camera(
        fps,
        float(rng.choice(SHUTTERS_DEG)),
        min(readout, 0.018),
        gain,
        black=float(rng.uniform(0.0, 0.01)),
        read_noise=float(rng.uniform(0.001, 0.006)),
        shot_noise=float(rng.uniform(0.005, 0.03)),
        transfer=str(rng.choice(["srgb", "bt709"])),
        drop=0.01 if uneven else 0.0,
        jitter=0.05 if uneven else 0.0,
        flicker=flicker,
    )


def _told_of_camera(rng: np.random.Generator, camera: Camera, full_range: bool) -> list[str]:
    """What a user knows of the camera: mostly the shutter, the curve where it matters, seldom the readout."""
    said = ["--shutter", f"{camera.shutter_deg:g}"] if rng.random() < 0.7 or camera.fps < 48 else []
    if camera.transfer != ("srgb" if full_range else "bt709") or rng.random() < 0.3:
        said += ["--transfer", camera.transfer]
    if camera.readout_s and rng.random() < 0.5:
        said += ["--readout-s", f"{camera.readout_s:.4g}"]
    return said


def _picture(rng: np.random.Generator, full_range: bool) -> tuple[Picture, list[str]]:
    """A light of a third to half of the picture, perhaps with a reference light beside it."""
    width, height = SIZES[int(rng.integers(len(SIZES)))]
    reference = None
    w, h = int(width * rng.uniform(0.3, 0.42)), int(height * rng.uniform(0.3, 0.5))
    x, y = int(rng.uniform(3, width * 0.5 - w)), int(rng.uniform(3, height - h - 3))
    said = []
    if rng.random() < 0.5:
        reference = (int(width * 0.58), y + int(h * 0.1), int(width * 0.3), int(h * 0.8))
        said = ["--reference", _inner(reference)]
    shape = "panel" if rng.random() < 0.5 else "disc"
    box = (x, y, w, h)
    if reference is not None or rng.random() < 0.7:
        said += ["--box", _inner(box) if rng.random() < 0.7 else _text(box)]
    return Picture(width, height, box, reference, shape, full_range), said


def _inner(box: Box) -> str:
    """The middle of a box as a person would mark it, well inside the light."""
    x, y, w, h = box
    return _text((x + w // 4, y + h // 4, w // 2, h // 2))


def _text(box: Box) -> str:
    return ",".join(str(number) for number in box)


def _meter(rng: np.random.Generator, flicker: Flicker) -> Meter:
    return Meter(
        rate_hz=float(rng.choice([500, 1000, 2000, 5000])),
        full=float(rng.choice([1.0, 3.1, 100.0, 870.0])),
        offset=float(rng.uniform(0, 0.2)),
        noise=float(rng.choice([0.001, 0.005, 0.02])),
        rail=0.8 if rng.random() < 0.1 else np.inf,
        sent_full=float(rng.choice([1.0, 100.0, 255.0])) if rng.random() < 0.6 else None,
        flicker=flicker,
    )


def _pick(rng: np.random.Generator, shares: dict[Key, float]) -> Key:
    weights = np.array(list(shares.values()))
    return list(shares)[int(rng.choice(len(weights), p=weights / weights.sum()))]
