"""Peaks of figures known at samples: parabolas to rounding, other curves to the bound that is given."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from modebook.response.losses import has_run
from modebook.response.peaks import most_of_parabolas, peaks, searched, with_middles

FINE = np.linspace(0.0, 1.0, 20_001)


@given(st.floats(-2, 2), st.floats(-2, 2), st.floats(-2, 2), st.integers(2, 6))
def test_a_parabola_peaks_at_an_end_or_its_vertex(a: float, b: float, c: float, ends: int) -> None:
    """However the parabola lies and is cut into intervals, its largest size is that of 20,001 places."""
    tried = with_middles(np.linspace(0.0, 1.0, ends))
    found = most_of_parabolas((a + b * tried + c * tried**2)[None])[0]
    assert abs(found - np.abs(a + b * FINE + c * FINE**2).max()) < 1e-7


@given(st.floats(0.5, 20), st.floats(0, 6), st.floats(0, 1), st.floats(-3, 3))
def test_no_place_exceeds_the_peak_by_more_than_its_bound(
    waves: float, phase: float, kink: float, height: float
) -> None:
    """A wave with a kink, sampled at 21 ends and their middles."""

    def of(at: np.ndarray) -> np.ndarray:
        return np.sin(waves * at + phase) + height * np.abs(at - kink)

    tried = with_middles(np.linspace(0.0, 1.0, 21))
    largest, at, bound = searched(lambda times: of(times), peaks(of(tried)[None], tried, 4))
    assert np.abs(of(FINE)).max() <= largest[0] + bound[0] + 1e-9
    assert abs(abs(of(at)[0]) - largest[0]) < 1e-12


@given(st.lists(st.booleans(), min_size=1, max_size=40), st.integers(1, 12))
def test_a_run_is_found_where_there_is_one(lost: list[bool], length: int) -> None:
    """The doubling search agrees with counting."""
    longest = max(len(run) for run in "".join("x" if each else " " for each in lost).split(" "))
    assert has_run(np.array([lost]), length) == (longest >= length)
