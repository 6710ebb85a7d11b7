"""default-out-of-range: defaults against full scale and ranges."""

from __future__ import annotations

from typing import Any

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.rules.default_out_of_range import RULE

PIECES = [{"from": 0, "to": 9, "meaning": "a"}, {"from": 20, "to": 255, "meaning": "b"}]


def pointers(**parameter: Any) -> list[str]:
    content = {"modes": [{"parameters": [{"parameter": "strobe", **parameter}]}]}
    return [fault.pointer.rpartition("/")[2] for fault in RULE.check(reading_of(content))]


@pytest.mark.parametrize(("slots", "top"), [([1], 255), ([1, 2], 65535), ([1, 2, 3], 2**24 - 1)])
def test_full_scale_is_the_last_default(slots: list[int], top: int) -> None:
    assert pointers(slots=slots, default=top) == []
    assert pointers(slots=slots, default=top + 1) == ["default"]


def test_a_default_must_lie_in_a_range_once_there_are_some() -> None:
    assert pointers(slots=[1], ranges=PIECES, default=9) == []
    assert pointers(slots=[1], ranges=PIECES, default=15) == ["default"]
    assert pointers(slots=[1], ranges=PIECES, default=300) == ["default"]


def test_a_coarse_default_lies_in_a_range_for_some_fine_byte() -> None:
    pieces = [{"from": 0, "to": 255, "meaning": "a"}, {"from": 600, "to": 65535, "meaning": "b"}]
    assert pointers(slots=[1, 2], ranges=pieces, coarse_default=0) == []
    assert pointers(slots=[1, 2], ranges=pieces, coarse_default=1) == ["coarse_default"]
    assert pointers(slots=[1, 2], ranges=pieces, coarse_default=2) == []


def test_without_a_slot_there_is_no_scale() -> None:
    assert pointers(slots=[], default=5) == []
