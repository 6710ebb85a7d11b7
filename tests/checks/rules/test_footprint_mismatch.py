"""footprint-mismatch: slots, parts and universes."""

from __future__ import annotations

from typing import Any

import pytest

from modebook.checks.examples import reading_of
from modebook.checks.rules.footprint_mismatch import RULE

RED = {"parameter": "red", "slots": [1]}


def pixels(count: int) -> list[dict[str, Any]]:
    return [{"count": count, "first": 1, "stride": 1, "parameters": [RED]}]


def messages(**mode: Any) -> list[str]:
    return [fault.message for fault in RULE.check(reading_of({"modes": [mode]}))]


@pytest.mark.parametrize(("count", "continues", "fits"), [(512, False, True), (513, False, False)])
def test_a_universe_has_512_slots(count: int, continues: bool, fits: bool) -> None:
    assert (not messages(cells=pixels(count), continues=continues)) is fits


def test_past_512_slots_continues_must_be_said_and_below_it_must_not() -> None:
    assert not messages(cells=pixels(513), continues=True)
    assert messages(cells=pixels(512), continues=True) == [
        "the mode is said to run past 512 slots, but takes 512"
    ]


def test_two_parts_of_400_slots_need_not_continue() -> None:
    parts = [{"key": key, "footprint": 400, "cells": pixels(400)} for key in "ab"]
    assert not messages(parts=parts)


def test_a_slot_beyond_the_footprint_of_a_part() -> None:
    part = {"key": "a", "footprint": 1, "parameters": [{"parameter": "red", "slots": [2]}]}
    assert messages(parts=[part]) == ["slot 2 lies beyond the footprint of 1 slot"]


@pytest.mark.parametrize("footprint", [3, 5])
def test_a_mode_of_parts_alone_takes_what_its_parts_take(footprint: int) -> None:
    part = {"key": "a", "footprint": 4, "cells": pixels(4)}
    assert messages(parts=[part], footprint=footprint) == [
        f"the mode has a footprint of {footprint} slots, but its parts come to 4"
    ]
    assert not messages(parts=[part], footprint=4)


def test_a_mode_with_parts_may_have_slots_of_its_own() -> None:
    part = {"key": "a", "footprint": 4, "cells": pixels(4)}
    assert not messages(parts=[part], parameters=[RED], footprint=5)
    assert messages(parts=[part], parameters=[RED, {"parameter": "blue", "slots": [2]}], footprint=5) == [
        "slot 2 lies beyond the footprint of 1 slot"
    ]


def test_a_gap_is_no_mismatch() -> None:
    assert not messages(parameters=[RED], footprint=5)
