"""The luma of a decoded frame: its plane, how many bits its codes have, and their range."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from av.video.frame import VideoFrame


def is_full_range(frame: VideoFrame) -> bool:
    """Whether luma goes from 0 to the greatest code instead of 16 to 235 (of 8 bits)."""
    return (
        frame.format.name.startswith(("yuvj", "gray", "rgb", "bgr", "gbr"))
        or int(frame.color_range or 0) == 2
    )


_PLAIN = ("yuv420p", "yuvj420p", "yuv422p", "yuvj422p", "yuv444p", "yuvj444p", "nv12", "nv21", "gray")
_DEEP = {"p10le": (10, 0), "p12le": (12, 0), "p16le": (12, 4)}
"""Endings of deeper formats: the bits kept of a code, and by how many it is shifted down for that."""


def bits_of(frame: VideoFrame) -> int:
    """The bits of the luma codes that `luma_of` gives."""
    return _DEEP.get(frame.format.name[-5:], (8, 0))[0] if frame.format.name.startswith("yuv") else 8


def luma_of(frame: VideoFrame) -> NDArray[Any]:
    """The luma plane, [height, width], in codes of `bits_of`; no copy where the format has it as it is."""
    name = frame.format.name
    plane: Any = frame.planes[0]
    if name in _PLAIN:
        rows = np.frombuffer(plane, dtype=np.uint8).reshape(-1, plane.line_size)
        return np.asarray(rows[: frame.height, : frame.width])
    if bits_of(frame) > 8:
        wide = np.frombuffer(plane, dtype=np.uint16).reshape(-1, plane.line_size // 2)
        return np.asarray(wide[: frame.height, : frame.width] >> _DEEP[name[-5:]][1])
    return np.asarray(frame.to_ndarray(format="gray"), dtype=np.uint8)
