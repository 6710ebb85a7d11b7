"""A top that is clipped: how high it may be, and that a limit's length does not depend on where it is cut."""

from __future__ import annotations

import numpy as np
import pytest

from measure.made import averaged, filmed, limited, sent
from modebook.measure.answer import measure
from modebook.measure.clipping import clipped_top, with_top
from modebook.measure.events import recognise
from modebook.measure.setup import Setup

HZ = 40.0
HALVES = [(0.5, 1.0), (1.1, 0.0), (1.7, 0.5), (2.3, 1.0), (2.9, 0.5), (3.5, 0.0)]
STAIRS = [(4.1, 0.25), (4.2, 0.5), (4.3, 0.75), (4.4, 1.0), (5.0, 0.75), (5.1, 0.5), (5.2, 0.25), (5.3, 0.0)]


@pytest.mark.parametrize("top", [0.7, 0.85])
def test_a_middle_level_is_taken_as_half_of_the_clipped_top(top: float):
    at_s, levels = sent(HALVES, 4.2)
    trace = filmed(at_s, averaged(at_s, levels, 4 / HZ), top=top)
    found = clipped_top(trace, recognise(trace))
    assert found is not None
    assert found.level == pytest.approx(1.0, abs=0.02)
    assert found.halved


def test_without_a_middle_level_the_top_is_only_about_known():
    """Nobody clips by many times: some fifth above, give or take a third."""
    at_s, levels = sent(HALVES[:2], 1.8)
    trace = filmed(at_s, averaged(at_s, levels, 4 / HZ), top=0.8)
    found = clipped_top(trace, recognise(trace))
    assert found is not None
    assert not found.halved
    assert found.level - found.doubt < 1.0 < found.level + found.doubt


def test_what_is_not_clipped_has_no_such_top():
    at_s, levels = sent(HALVES, 4.2)
    trace = filmed(at_s, levels)
    assert clipped_top(trace, recognise(trace)) is None


def test_half_way_is_counted_to_the_real_top():
    """Without smoothing every change is half done when it is sent, clipped or not."""
    at_s, levels = sent(HALVES, 4.2)
    trace = filmed(at_s, averaged(at_s, levels, 8 / HZ), top=0.8)
    scene = with_top(recognise(trace), trace, 1.0)
    halves = np.array([change.half_s for change in scene.changes])
    assert halves == pytest.approx([at + 4 / HZ for at, _ in HALVES], abs=0.012)


def test_a_limit_under_a_clipped_top_keeps_its_length():
    """Full scale is twice the middle level, not where the camera clips."""
    at_s, levels = sent(HALVES, 4.2)
    trace = filmed(at_s, limited(at_s, levels, 6 / HZ), top=0.75)
    answer = measure(trace, Setup(refresh_hz=HZ))
    assert answer.judgement.method == "limit"
    assert answer.judgement.length_packets == pytest.approx(6.0, abs=0.2)
    assert any("taken as half" in note for note in answer.notes)


def test_stairs_to_a_clipped_top_are_still_told_apart():
    at_s, levels = sent([*HALVES, *STAIRS], 6.0)
    trace = filmed(at_s, averaged(at_s, levels, 5 / HZ), top=0.8)
    found = measure(trace, Setup(refresh_hz=HZ)).judgement
    assert (found.can_tell, found.method) == (True, "average")
    assert found.length_packets == pytest.approx(5.0, abs=0.2)
