"""Small lossless clips of one even light, for tests of reading: any bits, times and curve."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

HZ = 30.0
OPEN_S = 1 / 240


def answered_light(packets: float, starts_s: NDArray[np.float64]) -> NDArray[np.float64]:
    """The mean light (0 to 1) over exposures of OPEN_S of an average: full snaps, half snaps, stairs.

    Worked out by the average's definition: the mean of what was sent over the last packets / HZ seconds.
    """
    at_s, sent = [0.0], [0.0]
    now = 0.5
    for held, level in (
        (0.6, 1.0), (0.6, 0.0), (0.6, 0.5), (0.6, 1.0), (0.6, 0.5), (0.6, 0.0),
        (2 / HZ, 0.25), (2 / HZ, 0.5), (2 / HZ, 0.75), (0.8, 1.0),
        (2 / HZ, 0.75), (2 / HZ, 0.5), (2 / HZ, 0.25), (0.8, 0.0),
    ):  # fmt: skip
        at_s.append(now)
        sent.append(level)
        now += held
    fine_s = np.arange(-0.5, starts_s[-1] + 0.5, 1e-4)
    stairs = np.array(sent)[np.maximum(np.searchsorted(at_s, fine_s, side="right") - 1, 0)]
    sums = np.concatenate([[0.0], np.cumsum(stairs)]) * 1e-4
    wide = round(packets / HZ / 1e-4)
    light = (sums[wide:] - sums[:-wide]) / (packets / HZ)
    area = np.concatenate([[0.0], np.cumsum(light)]) * 1e-4
    ends_s = np.concatenate([[fine_s[wide - 1]], fine_s[wide - 1 :]])[: len(area)]
    return (np.interp(starts_s + OPEN_S, ends_s, area) - np.interp(starts_s, ends_s, area)) / OPEN_S


def write_clip(
    path: Path,
    codes: NDArray[np.float64],
    starts_s: NDArray[np.float64],
    *,
    bits: int = 8,
    full_range: bool = False,
) -> Path:
    """Write frames of 32 by 24 with a light of 16 by 12 in the middle; codes: [frames], of so many bits."""
    import av

    form = "yuv420p" if bits == 8 else f"yuv420p{bits}le"
    kind = np.uint8 if bits == 8 else np.uint16
    rng = np.random.default_rng(3)
    with av.open(str(path), "w") as container:
        stream = container.add_stream("ffv1", rate=240)
        stream.width, stream.height, stream.pix_fmt = 32, 24, form
        base = Fraction(1, 90_000)
        stream.time_base = stream.codec_context.time_base = base
        stream.codec_context.color_range = 2 if full_range else 1
        for code, at_s in zip(codes, starts_s, strict=True):
            picture = np.full((24, 32), (0 if full_range else 16) * 2 ** (bits - 8), dtype=np.float64)
            picture[6:18, 8:24] = code
            picture += rng.normal(0.0, 0.6, picture.shape)
            luma = np.clip(np.round(picture), 0, 2**bits - 1).astype(kind)
            gray = np.full((12, 32), 2 ** (bits - 1), dtype=kind)
            frame = av.VideoFrame.from_ndarray(np.vstack((luma, gray)), format=form)
            frame.color_range = 2 if full_range else 1
            frame.time_base, frame.pts = base, round(at_s / float(base))
            container.mux(stream.encode(frame))
        container.mux(stream.encode(None))
    return path
