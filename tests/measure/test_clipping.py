"""A top that is clipped: how high it may be, and that a limit's length does not depend on where it is cut."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from measure.made import averaged, filmed, limited, sent
from modebook.measure.answer import measure
from modebook.measure.clipping import clipped_top, with_top
from modebook.measure.events import recognise
from modebook.measure.fit import Fit, Known
from modebook.measure.interval import covering
from modebook.measure.setup import Setup
from modebook.measure.staircases import lengths_held

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


def test_the_lengths_tried_under_an_open_top_are_all_as_steep_as_the_snaps():
    """Snaps tell how steep a line is: each top 4 to 70 % above where it is clipped has its length."""
    best = _fit(0.1, np.array([0.0, 1.2]))
    known = Known(1 / HZ, 0.01, 1 / 50, top=(1.2, 0.3))  # clipped at 1
    held = lengths_held("restart", known, best)
    steep = [one.top[0] / one.length_s for one in held if one.top and one.length_s]
    assert steep == pytest.approx([12.0] * 6)
    assert [held[0].top[0], held[-1].top[0]] == pytest.approx([1.04, 1.7])  # type: ignore[index]
    sure = lengths_held("restart", replace(known, top=(1.2, 0.03)), best)
    assert [one.length_s for one in sure] == [0.1]


def _fit(length_s: float, levels: np.ndarray) -> Fit:
    none = np.zeros(0)
    return Fit("restart", length_s, 0.0, None, none, none, none, levels, 100.0, 3, none, none)


def test_an_interval_holds_what_other_counts_of_steps_explain_as_well():
    """Of two other layouts the one that leaves far more light unexplained does not count."""
    best = replace(_fit(0.1, np.zeros(2)), others=((0.15, 150.0), (0.3, 900.0)))
    assert covering((3.9, 4.1), best, 200.0, 1 / HZ) == (3.9, pytest.approx(6.0))
    assert covering((3.9, 4.1), best, 120.0, 1 / HZ) == (3.9, 4.1)
