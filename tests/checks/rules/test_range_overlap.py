"""range-overlap: its edges; the brute force over values stands with range-gap's."""

from __future__ import annotations

from modebook.checks.examples import reading_of
from modebook.checks.rules.range_overlap import RULE


def test_a_range_within_another_is_told_once_with_what_both_have() -> None:
    pieces = [
        {"from": 0, "to": 255, "meaning": "Speed"},
        {"from": 128, "to": 128, "meaning": "Stop"},
    ]
    parameter = {"parameter": "gobo-rotation", "slots": [1], "ranges": pieces}
    (fault,) = RULE.check(reading_of({"modes": [{"parameters": [parameter]}]}))
    assert fault.pointer == "/modes/0/parameters/0/ranges/1"
    assert fault.message == "value 128 of gobo-rotation lies in 'Speed' (0-255) and in 'Stop' (128-128)"


def test_ranges_that_only_touch_pass() -> None:
    pieces = [{"from": 128, "to": 255, "meaning": "b"}, {"from": 0, "to": 127, "meaning": "a"}]
    parameter = {"parameter": "strobe", "slots": [1], "ranges": pieces}
    assert not list(RULE.check(reading_of({"modes": [{"parameters": [parameter]}]})))
