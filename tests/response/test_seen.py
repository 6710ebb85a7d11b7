"""Luminance, JNDs and what cannot be looked at: the fast index against the polynomial of NEMA PS3.14."""

import numpy as np
import pytest

from modebook.response.errors import ResponseError
from modebook.response.seen import Viewing, jnd_of
from modebook.response.visibility import jnd_index


def test_the_fast_index_is_within_a_ten_thousandth_of_the_polynomial() -> None:
    """Over the whole range, evenly in the logarithm and at both ends."""
    luminances = np.append(np.geomspace(0.05, 3993.0, 200_001), [0.05, 3993.0])
    assert np.abs(jnd_of(luminances) - jnd_index(luminances)).max() < 1e-4


def test_other_light_adds_and_white_stays_white() -> None:
    """L = white * (fill + (1 - fill) * light), clamped at 0.05 cd/m2."""
    assert Viewing(200.0, 0.25).luminance_cd_m2([0.0, 0.5, 1.0]) == pytest.approx([50.0, 125.0, 200.0])
    assert Viewing(100.0).luminance_cd_m2([0.0])[0] == 0.05


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Viewing(0.01), "a white of 0.01 cd/m2 is outside what the JND function holds for: give"),
        (lambda: Viewing(5000.0), "a white of 5000 cd/m2 is outside what the JND function holds for: give"),
        (lambda: Viewing(100.0, 1.0), "a share of other light of 1 cannot be: give 0 to below 1"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(make, message: str) -> None:  # type: ignore[no-untyped-def]
    """Each bad figure says what it is and what would be right."""
    with pytest.raises(ResponseError) as refused:
        make()
    assert str(refused.value).startswith(message)
