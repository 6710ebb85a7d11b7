"""Whether two writings are one firmware version."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.rig.firmware import same_version


@pytest.mark.parametrize(
    ("found", "known", "is_number", "same"),
    [
        ("2.0", "2.0", False, True),
        ("v2.0", "2.0", False, True),
        ("Version 2.0", "2", False, True),
        ("2.0.0", "2.0", False, True),
        ("2.1", "2.10", False, False),
        ("2.1", "2.10", True, True),
        ("2", "2.0", True, True),
        ("2.1", "2.01", True, False),
        ("2.1b", "2.1B", False, True),
        ("2.1b", "2.1", False, False),
        ("r17", "17", False, False),
    ],
)
def test_versions_are_compared_piece_by_piece(found, known, is_number, same):
    """A number of a sheet has lost its last zeros: then 2.1 may be 2.10, and nothing is made of it."""
    assert same_version(found, known, is_number) is same


@given(st.lists(st.integers(0, 99), min_size=1, max_size=4), st.integers(0, 3))
def test_zeros_at_the_end_make_no_other_version(pieces, zeros):
    """2.1 is 2.1.0; 2.1 is not 2.2."""
    one = ".".join(map(str, pieces))
    assert same_version(one, one + ".0" * zeros)
    assert not same_version(one, ".".join(map(str, [*pieces[:-1], pieces[-1] + 1])))
