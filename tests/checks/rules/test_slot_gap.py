"""slot-gap: its edges; the brute force over bytes stands with slot-overlap's."""

from __future__ import annotations

from modebook.checks.examples import reading_of
from modebook.checks.rules.slot_gap import RULE

RED = {"parameter": "red", "slots": [1]}


def test_a_mode_without_slots_has_no_gap() -> None:
    assert not list(RULE.check(reading_of({"modes": [{"footprint": 0}]})))


def test_gaps_are_told_in_one_finding_with_their_count() -> None:
    faults = list(RULE.check(reading_of({"modes": [{"footprint": 9, "parameters": [RED]}]})))
    assert [fault.pointer for fault in faults] == ["/modes/0/footprint"]
    assert faults[0].figure == {"slots": [[2, 9]], "unused": 8, "footprint": 9}
    assert faults[0].message == "slots 2-9 are used by no parameter, of a footprint of 9 slots"


def test_a_gap_in_a_part_is_told_at_the_part() -> None:
    part = {"key": "tail", "footprint": 2, "parameters": [RED]}
    faults = list(RULE.check(reading_of({"modes": [{"parts": [part]}]})))
    assert [fault.pointer for fault in faults] == ["/modes/0/parts/0/footprint"]


def test_a_stride_wider_than_its_cell_leaves_gaps() -> None:
    block = {"count": 2, "first": 1, "stride": 3, "parameters": [RED]}
    faults = list(RULE.check(reading_of({"modes": [{"cells": [block]}]})))
    assert faults[0].figure["slots"] == [[2, 3]]
