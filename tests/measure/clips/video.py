"""Frames encoded with PyAV: the codecs and containers that phones, cameras and converters write."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

TIME_BASE = Fraction(1, 90_000)
TRANSFER_TAGS = {"bt709": 1, "srgb": 13, "linear": 8}  # ITU-T H.273, table 3


@dataclass(frozen=True, slots=True)
class Coding:
    """A codec, the file ending of a container that carries it, and the encoder's options.

    error: what it adds to the mean of an even patch, a standard deviation in steps of 8-bit luma
    (measured in the generator's tests).
    """

    codec: str
    ending: str
    options: dict[str, str] = field(default_factory=dict)
    error: float = 0.3


CODINGS = {
    "h264": Coding("libx264", ".mp4", {"crf": "18", "preset": "superfast"}),
    "h264-coarse": Coding("libx264", ".mov", {"crf": "24", "preset": "superfast"}, error=0.6),
    "hevc": Coding(
        "libx265", ".mp4", {"crf": "20", "preset": "ultrafast", "x265-params": "log-level=none"}, error=0.5
    ),
    "vp9": Coding(
        "libvpx-vp9", ".webm", {"crf": "20", "b": "0", "cpu-used": "8", "deadline": "realtime"}, error=0.5
    ),
    "mjpeg": Coding("mjpeg", ".avi", {"qmin": "2", "qmax": "4"}),
    "ffv1": Coding("ffv1", ".mkv", {}, error=0.05),
}


def encode(
    path: Path,
    pictures: Iterable[NDArray[np.uint8]],
    times_s: NDArray[np.float64],
    coding: Coding,
    fps: float,
    *,
    full_range: bool = False,
    transfer: str = "bt709",
) -> None:
    """Write a clip of luma pictures shown at times_s (s, rising); color is neutral everywhere."""
    import av

    even = bool(np.allclose(np.diff(times_s), 1.0 / fps, rtol=0, atol=1e-6))
    base = 1 / Fraction(fps).limit_denominator(1001) if even else TIME_BASE
    with av.open(str(path), "w") as container:
        stream = container.add_stream(coding.codec, rate=Fraction(fps).limit_denominator(1001))
        stream.options = dict(coding.options)
        stream.thread_count = 1  # one thread: the same bytes on every machine
        stream.time_base = base
        stream.codec_context.time_base = base
        stream.codec_context.color_range = 2 if full_range else 1
        stream.codec_context.color_trc = TRANSFER_TAGS[transfer]
        stream.codec_context.color_primaries = 1
        stream.codec_context.colorspace = 1
        for number, luma in enumerate(pictures):
            height, width = luma.shape
            if number == 0:
                stream.width, stream.height = width, height
                stream.pix_fmt = "yuvj420p" if coding.codec == "mjpeg" else "yuv420p"
                gray = np.full((height // 2, width), 128, dtype=np.uint8)
            frame = av.VideoFrame.from_ndarray(np.vstack((luma, gray)), format=stream.pix_fmt)
            frame.color_range = 2 if full_range else 1
            frame.time_base = base
            frame.pts = number if even else round((times_s[number] - times_s[0]) / base)
            container.mux(stream.encode(frame))
        container.mux(stream.encode(None))


def decoded_luma(path: Path) -> tuple[NDArray[np.float64], list[NDArray[np.uint8]]]:
    """Give the times (s) and luma planes of a clip as PyAV decodes it: for the generator's own tests."""
    import av

    times, planes = [], []
    with av.open(str(path)) as container:
        for frame in container.decode(video=0):
            times.append(float(frame.pts * frame.time_base))
            planes.append(frame.to_ndarray()[: frame.height, : frame.width].copy())
    return np.array(times), planes
