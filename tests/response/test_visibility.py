"""Just-noticeable differences: clamping, round trips, shapes."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import visibility as v
from modebook.response.errors import ResponseError


@given(st.floats(0.05, 3993))
def test_index_and_luminance_are_inverse_within_the_standards_fit(cd_m2: float) -> None:
    """The two polynomials were fitted apart: they agree within 0.11 of an index."""
    jnd = v.jnd_index(cd_m2)
    assert abs(v.jnd_index(v.luminance(jnd)) - jnd) < 0.11


@given(st.floats(0, 1e5))
def test_single_luminance_and_arrays_agree(cd_m2: float) -> None:
    assert v.jnd_index_at(cd_m2) == pytest.approx(float(v.jnd_index(cd_m2)), abs=1e-9)


@given(st.floats(0.05, 3990), st.floats(1.0001, 10))
def test_more_luminance_has_a_higher_index(cd_m2: float, ratio: float) -> None:
    assert v.jnd_index_at(cd_m2) < v.jnd_index_at(cd_m2 * ratio)


def test_outside_its_range_the_function_is_clamped() -> None:
    assert v.jnd_index_at(0) == v.jnd_index_at(-1) == v.jnd_index_at(0.05)
    assert v.jnd_index_at(1e9) == v.jnd_index_at(3993)
    assert v.jnd_index([0, 1e9]).tolist() == v.jnd_index([0.05, 3993]).tolist()
    assert v.luminance([-5, 2000]).tolist() == v.luminance([1, 1023]).tolist()


def test_shapes_are_kept_and_nan_is_not_hidden() -> None:
    assert v.jnd_index(np.ones((2, 3))).shape == (2, 3)
    assert v.luminance(np.ones((2, 3))).shape == (2, 3)
    assert v.jnd_index(1.0).shape == v.luminance(1.0).shape == ()
    assert np.isnan(v.jnd_index(math.nan))
    assert np.isnan(v.luminance(math.nan))
    with pytest.raises(ResponseError, match="not a number"):
        v.jnd_index_at(math.nan)
