"""Methods that make one light of what was sent are told as one, whatever noise prefers."""

from __future__ import annotations

import pytest

from measure.made import averaged, filmed, limited, sent
from modebook.measure.answer import measure
from modebook.measure.setup import Setup

HZ = 40.0
FULL = [(0.5, 1.0), (1.1, 0.0), (1.7, 1.0), (2.3, 0.0)]
HALVES = [(0.5, 1.0), (1.1, 0.0), (1.7, 0.5), (2.3, 1.0), (2.9, 0.5), (3.5, 0.0)]


def test_full_snaps_alone_tell_the_length_and_no_method_of_straight_lines():
    """An average, a limit and a restarted line rise alike in one full snap."""
    at_s, levels = sent(FULL, 3.0)
    found = measure(filmed(at_s, averaged(at_s, levels, 4 / HZ)), Setup(refresh_hz=HZ)).judgement
    assert not found.can_tell
    assert {"average", "limit", "restart"} <= set(found.left)
    assert found.length_packets == pytest.approx(4.0, abs=0.15)


def test_half_snaps_tell_a_limit_from_lines_of_one_length():
    """A limit takes half as long for half the way; an average takes as long for any."""
    at_s, levels = sent(HALVES, 4.2)
    found = measure(filmed(at_s, limited(at_s, levels, 4 / HZ)), Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.method) == (True, "limit")
    assert found.length_packets == pytest.approx(4.0, abs=0.15)
    other = measure(filmed(at_s, averaged(at_s, levels, 4 / HZ)), Setup(refresh_hz=HZ)).judgement
    assert not other.can_tell
    assert set(other.left) == {"average", "restart"}
