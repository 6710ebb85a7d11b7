"""Where every byte sits: cells repeated, nested and interleaved, and parts with addresses of their own."""

from __future__ import annotations

from typing import Any

from hypothesis import given
from hypothesis import settings as calm

from modebook.documents.layout import all_parameters, blocks
from modebook.documents.modes import Mode
from support.documents import Json, mode, modes, parameter

CALM = calm(deadline=None, max_examples=60)
RGB = [parameter("red", 1), parameter("green", 2), parameter("blue", 3)]


def _bytes(told: Json) -> list[tuple[str, tuple[int, ...], tuple[int, ...]]]:
    """Each block's parameters as (word, slots, cell), from the plain document, one cell after another."""

    def visit(holder: Json, start: int, cell: tuple[int, ...]) -> None:
        for one in holder.get("parameters", ()):
            found.append((one["parameter"], tuple(start + slot - 1 for slot in one["slots"]), cell))
        for block in holder.get("cells", ()):
            at = start + block["first"] - 1
            for number in range(1, block["count"] + 1):
                visit(block, at, (*cell, number))
                at += block["stride"]

    found: list[tuple[str, tuple[int, ...], tuple[int, ...]]] = []
    visit(told, 1, ())
    return found


def _laid_out(told: Json) -> list[list[tuple[str, tuple[int, ...], tuple[int, ...]]]]:
    return [
        [(placed.parameter.parameter, placed.slots, placed.cell) for placed in block.placed]
        for block in blocks(Mode.model_validate(told))
    ]


def _at(document: Any, pointer: str) -> Any:
    for step in pointer.split("/")[1:]:
        document = document[int(step)] if isinstance(document, list) else document[step]
    return document


@CALM
@given(modes())
def test_any_mode_is_laid_out_as_by_hand(told: Json) -> None:
    """Cells and parts agree with a walk that steps from cell to cell."""
    own = [_bytes(told)]
    if told.get("parts") and not told["parameters"] and not told.get("cells"):
        own = []
    assert _laid_out(told) == own + [_bytes(part) for part in told.get("parts", ())]


@CALM
@given(modes())
def test_every_pointer_leads_to_the_parameter_that_is_placed(told: Json) -> None:
    """A finding about a byte can be shown in the file."""
    document = {"modes": [told]}
    found = Mode.model_validate(told)
    for block in blocks(found, "/modes/0"):
        assert _at(document, block.pointer)["footprint"] >= block.footprint
        for placed in block.placed:
            assert _at(document, placed.pointer)["parameter"] == placed.parameter.parameter
    pointers = [pointer for _, pointer in all_parameters(found, "/modes/0")]
    assert len(set(pointers)) == len(pointers)
    for one, pointer in all_parameters(found, "/modes/0"):
        assert _at(document, pointer)["slots"] == one.slots


@CALM
@given(modes())
def test_a_fitting_footprint_holds_every_byte(told: Json) -> None:
    """The strategies' modes do not overlap, and all their bytes lie within the footprint of their block."""
    for block in blocks(Mode.model_validate(told)):
        slots = [slot for placed in block.placed for slot in placed.slots]
        assert len(set(slots)) == len(slots)
        assert not slots or 1 <= min(slots) <= max(slots) <= block.footprint


def test_cells_one_after_another() -> None:
    """Two cells of three slots from slot 2."""
    told = mode(parameter(), cells=[{"count": 2, "first": 2, "stride": 3, "parameters": RGB}], footprint=7)
    assert _laid_out(told) == [
        [
            ("dimmer", (1,), ()),
            ("red", (2,), (1,)),
            ("green", (3,), (1,)),
            ("blue", (4,), (1,)),
            ("red", (5,), (2,)),
            ("green", (6,), (2,)),
            ("blue", (7,), (2,)),
        ]
    ]


def test_cells_interleave() -> None:
    """All reds first, then all greens: each cell's slots are `count` apart and its start moves by one."""
    pair = [parameter("red", 1), parameter("green", 4)]
    told = mode(cells=[{"count": 3, "first": 1, "stride": 1, "parameters": pair}], parameters=[], footprint=6)
    assert [slots for _, slots, _ in _laid_out(told)[0]] == [(1,), (4,), (2,), (5,), (3,), (6,)]


def test_cells_nest() -> None:
    """Two heads, each with a dimmer of two slots and two pixels."""
    head = {
        "count": 2,
        "first": 1,
        "stride": 8,
        "parameters": [parameter("dimmer", 1, 2)],
        "cells": [{"count": 2, "first": 3, "stride": 3, "parameters": RGB}],
    }
    [found] = _laid_out(mode(cells=[head], parameters=[], footprint=16))
    assert [(cell, slots) for word, slots, cell in found if word == "red"] == [
        ((1, 1), (3,)),
        ((1, 2), (6,)),
        ((2, 1), (11,)),
        ((2, 2), (14,)),
    ]
    assert [slots for word, slots, _ in found if word == "dimmer"] == [(1, 2), (9, 10)]


def test_parts_count_from_one_and_leave_the_mode_the_rest() -> None:
    """A mode of 10 slots of which a part takes 4 has 6 of its own; a mode of parts alone has none."""
    part = {"key": "head", "footprint": 4, "parameters": [parameter("pan", 1, 2), parameter("tilt", 3, 4)]}
    both = blocks(Mode.model_validate(mode(parts=[part], footprint=10)), "/modes/2")
    assert [(block.key, block.footprint, block.pointer) for block in both] == [
        (None, 6, "/modes/2"),
        ("head", 4, "/modes/2/parts/0"),
    ]
    alone = blocks(Mode.model_validate({"name": "Head", "footprint": 4, "parts": [part]}))
    assert [block.key for block in alone] == ["head"]
    assert alone[0].placed[0].slots == (1, 2)


def test_a_mode_of_nothing_is_one_empty_block() -> None:
    """A mode without slots still has a start address."""
    [block] = blocks(Mode.model_validate({"name": "None", "footprint": 0}))
    assert (block.key, block.footprint, block.placed) == (None, 0, [])
