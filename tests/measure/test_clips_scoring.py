"""The benchmark's judgement: what is right, what is wrong, and what is not counted."""

from __future__ import annotations

import dataclasses

from measure.clips.case import Truth
from measure.clips.scoring import kind_of, score, tally

SURE = Truth("average", 4.0, 100.0, 0.0, 40.0, 240.0, 8, True, True, "")
NEVER = dataclasses.replace(SURE, can_tell_method=False)
TOLD = {"can_tell": True, "method": "average", "length_packets": 4.2, "interval_packets": [3.9, 4.4]}
SILENT = {"can_tell": False, "method": None, "length_packets": None, "interval_packets": None}


def test_a_case_that_can_tell_wants_the_method_and_the_length_within_0_3_packets() -> None:
    """Each way to miss is named."""
    assert score("a", SURE, TOLD).right
    assert score("a", SURE, {**TOLD, "length_packets": 4.31}).fault == "wrong length"
    assert score("a", SURE, {**TOLD, "method": "lag"}).fault == "wrong method"
    assert "cannot tell" in score("a", SURE, {**SILENT, "why": ""}).fault
    assert score("a", SURE, {"error": "no light"}).fault == "error: no light"


def test_a_case_that_cannot_wants_no_claim_and_no_wrong_figure() -> None:
    """A right length may stand beside 'cannot tell' where only the method is open."""
    assert score("a", NEVER, SILENT).right
    assert score("a", NEVER, {**SILENT, "length_packets": 4.1}).right
    assert not score("a", NEVER, {**SILENT, "length_packets": 5.0}).right
    assert not score("a", NEVER, {**SILENT, "method": "limit"}).right
    assert not score("a", NEVER, TOLD).right


def test_the_gray_zone_is_counted_neither_way() -> None:
    """None in the truth: neither sure that it can nor that it cannot."""
    gray = dataclasses.replace(SURE, can_tell_length=None)
    assert kind_of(gray) == "gray"
    lines = tally([score("a", gray, SILENT), score("b", SURE, TOLD), score("c", NEVER, SILENT)])
    assert lines[0] == "3 cases: 1 can tell, 1 cannot, 1 between (not counted)"


def test_intervals_are_judged_only_for_smoothings_that_can_be_told() -> None:
    """Off always lies in an interval that begins at 0: it would flatter the figure."""
    off = dataclasses.replace(SURE, method="none", length_packets=0.0)
    assert score("a", off, {**TOLD, "method": "none", "interval_packets": [0.0, 0.2]}).inside is None
    assert score("a", SURE, TOLD).inside is True
    assert score("a", SURE, {**TOLD, "interval_packets": [4.1, 4.4]}).inside is False
