"""Levels to values, values to slots, and back."""

from __future__ import annotations

import math
import struct

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import quantize as q
from modebook.response.errors import ResponseError

BITS = st.sampled_from([8, 16, 24, 32])
LEVELS = st.floats(0, 1)


@given(LEVELS, BITS)
def test_the_value_is_the_nearest_one(level: float, bits: int) -> None:
    value = q.value_of(level, bits)
    assert 0 <= value <= 2**bits - 1
    assert abs(value / (2**bits - 1) - level) <= 0.5 / (2**bits - 1) * (1 + 1e-6)


@given(st.lists(LEVELS, min_size=1, max_size=20), BITS)
def test_arrays_and_single_levels_agree(levels: list[float], bits: int) -> None:
    values = q.quantize(levels, bits)
    assert values.shape == (len(levels),)
    assert values.tolist() == [q.value_of(level, bits) for level in levels]


@given(BITS, st.data())
def test_every_value_comes_back_from_its_level(bits: int, data: st.DataObject) -> None:
    value = data.draw(st.integers(0, 2**bits - 1))
    assert int(q.quantize(q.dequantize(value, bits), bits)) == value


@pytest.mark.parametrize(("bits", "half"), [(8, 128), (16, 32768), (24, 8388608), (32, 2147483648)])
def test_half_is_a_tie_and_goes_up(bits: int, half: int) -> None:
    """The last value is odd, so 50 % lies midway between two values."""
    assert q.value_of(0.5, bits) == half == int(q.quantize(0.5, bits))


def test_levels_outside_are_clipped_and_shapes_kept() -> None:
    values = q.quantize([[-1.0, 2.0], [0.0, 1.0]], 8)
    assert values.tolist() == [[0, 255], [0, 255]]
    assert q.dequantize(255, 8).shape == ()


def test_what_is_not_a_number_is_refused() -> None:
    for call in (lambda: q.value_of(math.nan, 8), lambda: q.quantize([0.5, math.nan], 8)):
        with pytest.raises(ResponseError, match="not a number"):
            call()


@pytest.mark.parametrize("bits", [0, 7, 12, 40])
def test_bits_that_are_not_whole_slots_are_refused(bits: int) -> None:
    with pytest.raises(ResponseError, match="8, 16, 24 or 32"):
        q.last_value(bits)


@given(st.integers(0, 2**32 - 1))
def test_four_slots_pack_as_a_big_endian_word(value: int) -> None:
    """Against struct's '>I'."""
    assert q.pack(value, 4) == struct.pack(">I", value)


@given(st.integers(1, 4), st.data())
def test_packing_comes_back(n_bytes: int, data: st.DataObject) -> None:
    value = data.draw(st.integers(0, 256**n_bytes - 1))
    slots = q.pack(value, n_bytes)
    assert len(slots) == n_bytes
    assert q.unpack(slots) == value


def test_packing_refuses_what_does_not_fit() -> None:
    for value, n_bytes in ((256, 1), (-1, 1), (0, 0), (0, 5)):
        with pytest.raises(ResponseError):
            q.pack(value, n_bytes)
    for slots in (b"", bytes(5)):
        with pytest.raises(ResponseError):
            q.unpack(slots)


def test_below_the_lowest_stable_output_the_light_goes_out_or_stays() -> None:
    light = [0.0, 0.01, 0.02, 0.5]
    assert q.above_lowest(light, 0.02).tolist() == [0.0, 0.0, 0.02, 0.5]
    assert q.above_lowest(light, 0.02, on_below=True).tolist() == [0.02, 0.02, 0.02, 0.5]
    with pytest.raises(ResponseError):
        q.above_lowest(light, 1.5)


def test_a_part_of_the_values_has_fewer_intervals() -> None:
    """100 of 256 values have 99 intervals; the same part of 65536 values is 25600 values."""
    assert q.intervals(8) == 255
    assert q.intervals(8, 100 / 256) == 99
    assert q.intervals(16, 100 / 256) == 25599
    for share in (0.0, 1.1, math.nan):
        with pytest.raises(ResponseError):
            q.intervals(8, share)
