"""Modes: spans, conditions, ranges, and cells that stay within bounds."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import settings as calm
from hypothesis import strategies as st
from pydantic import ValidationError

from modebook.documents.modes import (
    MOST_SLOTS,
    Cells,
    Condition,
    Mode,
    Parameter,
    Range,
    Span,
    ValueRange,
    spans_of,
)
from support.documents import Json, cells, conditions, mode, modes, parameter, ranges, spans

CALM = calm(deadline=None, max_examples=60)
DEG = {"from": -270, "to": 270, "unit": "deg", "given": "Pan 540"}
LESS = {"from": 315, "to": -315, "unit": "deg", "given": "Pan 630"}


@CALM
@given(spans())
def test_a_span_may_be_inverted_and_its_width_is_never_negative(told: Json) -> None:
    """The width is the distance between the ends."""
    span = Span.model_validate(told)
    assert span.width == abs(told["to"] - told["from"])


def test_one_span_or_several() -> None:
    """One span stands as it is; a list holds two or more, one for each menu state."""
    one = Parameter.model_validate(parameter("pan", 1, span=DEG))
    two = Parameter.model_validate(parameter("pan", 1, span=[DEG, LESS]))
    assert isinstance(one.span, Span)
    assert [span.given for span in spans_of(one.span)] == ["Pan 540"]
    assert [span.width for span in spans_of(two.span)] == [540, 630]
    assert spans_of(Parameter.model_validate(parameter("pan", 1)).span) == ()
    for bad in ([DEG], [], "540 deg", [DEG, 3]):
        with pytest.raises(ValidationError):
            Parameter.model_validate(parameter("pan", 1, span=bad))


@CALM
@given(conditions())
def test_intervals_are_those_written(told: Json) -> None:
    """From and to give one interval, any_of several, other conditions none."""
    written = told.get("any_of", [told] if "from" in told else [])
    assert Condition.model_validate(told).intervals == tuple((one["from"], one["to"]) for one in written)


@pytest.mark.parametrize(
    "told",
    [
        {},
        {"parameter": "dimmer"},
        {"parameter": "dimmer", "from": 0},
        {"parameter": "dimmer", "to": 0},
        {"parameter": "dimmer", "from": 9, "to": 3},
        {"parameter": "dimmer", "from": 0, "to": 3, "any_of": [{"from": 0, "to": 3}]},
        {"parameter": "dimmer", "any_of": []},
        {"parameter": "dimmer", "any_of": [{"from": 9, "to": 3}]},
        {"parameter": "dimmer", "from": 0, "to": 3, "setting": "fan", "choices": ["on"]},
        {"setting": "fan"},
        {"setting": "fan", "choices": []},
        {"setting": "fan", "choices": ["on"], "from": 0, "to": 3},
        {"from": 0, "to": 3},
        {"choices": ["on"]},
        {"given": "Lid open", "choices": ["on"]},
        {"given": "Lid open", "from": 0, "to": 3},
        {"given": "Lid open", "any_of": [{"from": 0, "to": 3}]},
    ],
)
def test_conditions_that_say_too_little_or_too_much(told: Json) -> None:
    """A condition is about a parameter's values, a setting's choices, or a state in words."""
    with pytest.raises(ValidationError):
        Condition.model_validate(told)


@pytest.mark.parametrize("model", [Range, ValueRange])
def test_ranges_run_upward(model: type[Range | ValueRange]) -> None:
    """One value alone is a range; from above to is none."""
    more = {"meaning": "x"} if model is Range else {}
    model.model_validate({"from": 7, "to": 7, **more})
    for ends in (
        {"from": 8, "to": 7},
        {"from": -1, "to": 7},
        {"from": 0, "to": 2**32},
        {"from": 0.0, "to": 7},
    ):
        with pytest.raises(ValidationError):
            model.model_validate({**ends, **more})


@CALM
@given(st.integers(0, 2**32 - 1).flatmap(ranges))
def test_a_range_sets_choices_or_runs_over_a_span(told: list[Json]) -> None:
    """What `sets` leads to comes back as the choice's key or as a span."""
    for one in told:
        sets = Range.model_validate(one).sets or {}
        for key, to in one.get("sets", {}).items():
            found = sets[key]
            assert found == to if isinstance(to, str) else isinstance(found, Span)
            assert isinstance(to, str) or (isinstance(found, Span) and found.from_ == to["from"])


@pytest.mark.parametrize("slots", [[1, 1], [0], [65_537], [1, 2, 3, 4, 5], [1.0], ["1"], [True]])
def test_slots_that_are_none(slots: list[Any]) -> None:
    """One to four different bytes, counted from 1."""
    with pytest.raises(ValidationError):
        Parameter.model_validate({"parameter": "pan", "slots": slots})


def test_bytes_need_not_be_neighbors_or_in_order_and_may_be_absent() -> None:
    """Coarse at 3, fine at 5; the less significant byte first on the chart; no slot at all."""
    for slots in ([3, 5], [2, 1], [], [9, 3, 7, 1]):
        assert Parameter.model_validate({"parameter": "pan", "slots": slots}).slots == slots
    with pytest.raises(ValidationError):
        Parameter.model_validate({"parameter": "pan"})


def test_a_parameter_is_called_by_its_key_or_its_word() -> None:
    """Conditions refer to `blade-1` where it has that key, else to the word."""
    assert Parameter.model_validate(parameter("pan")).name == "pan"
    assert Parameter.model_validate(parameter("blade-position", key="blade-1")).name == "blade-1"


def _count(block: Json) -> int:
    """Bytes of a block by laying out every cell, one by one."""
    placed = 0
    for _ in range(block["count"]):
        for one in block.get("parameters", ()):
            placed += max(1, len(one["slots"]))
        for inner in block.get("cells", ()):
            placed += _count(inner)
    return placed


@CALM
@given(cells())
def test_bytes_placed_are_those_of_every_cell(told: Json) -> None:
    """The product counts what laying out one by one counts."""
    assert Cells.model_validate(told).bytes_placed == _count(told)


def test_cells_stay_within_the_memory() -> None:
    """A slip of the pen in a count, in nested counts or in many blocks is refused before it is laid out."""
    block: Json = {"count": MOST_SLOTS, "first": 1, "stride": 1, "parameters": [parameter()]}
    Cells.model_validate(block)
    for bad in (
        {**block, "count": MOST_SLOTS + 1},
        {**block, "parameters": [parameter("pan", 1, 2)]},
        {"count": 2, "first": 1, "stride": 9, "cells": [block]},
    ):
        with pytest.raises(ValidationError):
            Cells.model_validate(bad)
    with pytest.raises(ValidationError, match="more than 65536 slots"):
        Mode.model_validate(mode(cells=[block]))
    with pytest.raises(ValidationError, match="more than 65536 slots"):
        Mode.model_validate(mode(cells=[{**block, "count": 300}] * 300))
    part = {"key": "head", "footprint": 512, "cells": [block]}
    with pytest.raises(ValidationError, match="more than 65536 slots"):
        Mode.model_validate(mode(parts=[part]))


def test_parts_have_keys_of_their_own() -> None:
    """A patch names a part by its key."""
    part = {"key": "head", "footprint": 1}
    with pytest.raises(ValidationError, match="two parts have the key 'head'"):
        Mode.model_validate(mode(parts=[part, part]))


@CALM
@given(modes())
def test_modes_are_taken(told: Json) -> None:
    """Whatever the strategies make of the models' fields is a mode, and is written back as it came."""
    found = Mode.model_validate(told)
    assert found.model_dump(mode="json", by_alias=True, exclude_unset=True) == told
