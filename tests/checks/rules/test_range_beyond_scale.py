"""range-beyond-scale: ranges, conditions and raw spans."""

from __future__ import annotations

from typing import Any

from modebook.checks.examples import reading_of
from modebook.checks.rules.range_beyond_scale import RULE


def pointers(*parameters: dict[str, Any]) -> list[str]:
    return [fault.pointer for fault in RULE.check(reading_of({"modes": [{"parameters": list(parameters)}]}))]


def test_a_range_may_end_with_the_scale() -> None:
    pieces = [{"from": 0, "to": 255, "meaning": "a"}]
    assert pointers({"parameter": "strobe", "slots": [1], "ranges": pieces}) == []
    pieces = [{"from": 0, "to": 256, "meaning": "a"}]
    assert pointers({"parameter": "strobe", "slots": [1], "ranges": pieces}) == [
        "/modes/0/parameters/0/ranges/0"
    ]


def test_a_condition_counts_in_the_values_of_what_it_names() -> None:
    decider = {"parameter": "macro", "slots": [1]}
    when = [{"parameter": "macro", "from": 0, "to": 300}]
    assert pointers(decider, {"parameter": "red", "slots": [2], "when": when}) == [
        "/modes/0/parameters/1/when/0"
    ]
    pieces = [{"from": 0, "to": 255, "meaning": "a", "needs": when}]
    assert pointers(decider, {"parameter": "red", "slots": [2], "ranges": pieces}) == [
        "/modes/0/parameters/1/ranges/0/needs/0"
    ]
    decider["slots"] = [1, 3]
    assert pointers(decider, {"parameter": "red", "slots": [2], "when": when}) == []


def test_kelvins_sent_as_numbers_need_two_bytes() -> None:
    span = {"from": 2000, "to": 10000, "unit": "K", "raw": True}
    assert pointers({"parameter": "color-temperature", "slots": [1], "span": span})
    assert not pointers({"parameter": "color-temperature", "slots": [1, 2], "span": span})
    other = {"from": 2000, "to": 6500, "unit": "K", "given": "B"}
    two = [span | {"given": "A"}, other]
    assert pointers({"parameter": "color-temperature", "slots": [1], "span": two})
