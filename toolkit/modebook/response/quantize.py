"""Levels to the values that slots can hold, values back to levels, and values to bytes and back."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from .errors import ResponseError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray

ALLOWED_BITS = (8, 16, 24, 32)  # a parameter has one to four slots of 8 bits each
BYTES_MAX = 4


def last_value(bits: int) -> int:
    """Give the greatest value of `bits` (8, 16, 24 or 32): 2**bits - 1. Raises ResponseError."""
    if bits not in ALLOWED_BITS:
        raise ResponseError(f"{bits} bits are not whole slots: give 8, 16, 24 or 32")
    return (1 << bits) - 1


def intervals(bits: int, share: float = 1.0) -> float:
    """Give how many steps lie between the ends of a span: share * 2**bits - 1 (share 0 to 1, above 0)."""
    if not 0.0 < share <= 1.0:
        raise ResponseError(f"a share of {share:g} of a parameter's values cannot be: give above 0, to 1")
    return share * (last_value(bits) + 1) - 1.0


def value_of(level: float, bits: int) -> int:
    """Give the value nearest to one level (0 to 1, clipped); a tie goes up. NaN raises ResponseError."""
    last = last_value(bits)
    if math.isnan(level):
        raise ResponseError("a level is not a number: give 0 to 1")
    return math.floor(min(max(level, 0.0), 1.0) * last + 0.5)


def quantize(level: ArrayLike, bits: int) -> NDArray[np.int64]:
    """Give the values (int64, same shape) nearest to levels of 0 to 1; a tie goes up.

    Levels outside 0 to 1 are clipped. NaN raises ResponseError.
    """
    import numpy as np

    last = last_value(bits)
    levels = np.clip(np.asarray(level, dtype=np.float64), 0.0, 1.0)
    if np.isnan(levels).any():
        raise ResponseError("a level is not a number: give 0 to 1")
    return np.floor(levels * last + 0.5).astype(np.int64)


def dequantize(value: ArrayLike, bits: int) -> NDArray[np.float64]:
    """Give the levels (0 to 1, same shape) of values of 0 to 2**bits - 1."""
    import numpy as np

    return np.asarray(value, dtype=np.float64) / last_value(bits)


def above_lowest(light: ArrayLike, lowest: float, *, on_below: bool = False) -> NDArray[np.float64]:
    """Give the light (0 to 1, same shape) of a fixture whose lowest stable output is `lowest`.

    Light asked for below `lowest` goes out, or with `on_below` stays at `lowest`, also for 0. The two
    behaviors are those of MINIMUM_LEVEL in ANSI E1.37-1 ('on below minimum', from memory).
    Raises ResponseError unless lowest is 0 to 1.
    """
    import numpy as np

    if not 0.0 <= lowest <= 1.0:
        raise ResponseError(f"a lowest stable output of {lowest:g} cannot be: give 0 to 1 of full")
    lit = np.asarray(light, dtype=np.float64)
    return np.where(lit < lowest, lowest if on_below else 0.0, lit)


def pack(value: int, n_bytes: int) -> bytes:
    """Give `value` as `n_bytes` (1 to 4) slots, most significant first. Raises ResponseError if too great."""
    if not 1 <= n_bytes <= BYTES_MAX:
        raise ResponseError(f"{n_bytes} slots for one parameter: give 1 to {BYTES_MAX}")
    if not 0 <= value < 1 << 8 * n_bytes:
        raise ResponseError(f"value {value} does not fit {n_bytes} slots: give 0 to {(1 << 8 * n_bytes) - 1}")
    return int(value).to_bytes(n_bytes, "big")


def unpack(slots: bytes) -> int:
    """Give the value that one to four slots hold, most significant first. Raises ResponseError."""
    if not 1 <= len(slots) <= BYTES_MAX:
        raise ResponseError(f"{len(slots)} slots for one parameter: give 1 to {BYTES_MAX}")
    return int.from_bytes(slots, "big")
