"""A chart on a page: bytes with addresses, bars to scale, cells and parts."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.address import Address
from modebook.documents.fixture import Fixture
from modebook.render.pages.fixture_chart import BAR, address_words, mode_chart


def fixture(mode: dict[str, Any]) -> Fixture:
    """A document of one mode."""
    told = {"maker": "Invented", "model": "One", "category": "fixed", "standing": "transcribed"}
    return Fixture.model_validate(told | {"modes": [{"name": "Only", **mode}]}, by_alias=True, by_name=False)


@given(st.integers(1, 512), st.integers(1, 512))
def test_a_slot_becomes_an_address_as_a_patch_counts(address: int, slot: int) -> None:
    """The same as the arithmetic of universes, told in words past 512."""
    at = Address(1, address).slot(slot)
    told = address_words(address, slot)
    assert told == (str(at.address) if at.universe == 1 else f"next universe, {at.address}")


def test_the_example_of_the_trade() -> None:
    """Slot 1 sits at the start address: with 101, slot 12 is at 112."""
    assert address_words(101, 1) == "101"
    assert address_words(101, 12) == "112"
    assert address_words(None, 12) == ""


def test_bytes_stand_most_significant_first_with_their_names() -> None:
    """Coarse at 3, fine at 5, as the document lists them; a single byte has no name."""
    chart = mode_chart(
        fixture(
            {
                "footprint": 5,
                "parameters": [
                    {"parameter": "pan", "slots": [3, 5]},
                    {"parameter": "dimmer", "slots": [1]},
                ],
            }
        ),
        0,
        101,
    )
    pan, dimmer = chart.rows
    assert [(b.slot, b.byte, b.address) for b in pan.slots] == [(3, "coarse", "103"), (5, "fine", "105")]
    assert [(b.slot, b.byte) for b in dimmer.slots] == [(1, "")]
    assert (pan.bits, pan.top, dimmer.bits, dimmer.top) == (16, 65535, 8, 255)


@given(st.lists(st.integers(1, 254), unique=True, max_size=12), st.sampled_from([1, 2]))
def test_ranges_without_gaps_fill_the_bar_end_to_end(cuts: list[int], count: int) -> None:
    """Each begins where the one before ends, and the last ends where the bar does: to scale."""
    unit = 256 ** (count - 1)
    edges = [0, *(cut * unit for cut in sorted(cuts)), 256 * unit]
    ranges = [{"from": a, "to": b - 1, "meaning": f"no {a}"} for a, b in pairwise(edges)]
    parameter = {"parameter": "gobo-wheel", "slots": list(range(1, count + 1)), "ranges": ranges}
    (row,) = mode_chart(fixture({"footprint": count, "parameters": [parameter]}), 0).rows
    end = 0.0
    for one in row.ranges:
        assert one.x == pytest.approx(end, abs=0.02)
        assert one.width == pytest.approx(BAR * (one.to_value - one.from_value + 1) / (256**count), abs=0.02)
        end = one.x + one.width
    assert end == pytest.approx(BAR, abs=0.05)


def test_one_value_of_a_fine_parameter_stays_visible() -> None:
    """A single value of 65,536 is drawn wider than it is, not lost."""
    ranges = [{"from": 0, "to": 0, "meaning": "Off"}, {"from": 1, "to": 65535, "meaning": "On"}]
    parameter = {"parameter": "dimmer", "slots": [1, 2], "ranges": ranges}
    (row,) = mode_chart(fixture({"footprint": 2, "parameters": [parameter]}), 0).rows
    assert row.ranges[0].width >= 0.5


def test_a_cells_slots_are_those_of_its_first_cell() -> None:
    """Eight cells from slot 2, three apart: red of the first at 2, and how the others follow."""
    chart = mode_chart(
        fixture(
            {
                "footprint": 25,
                "parameters": [{"parameter": "dimmer", "slots": [1]}],
                "cells": [
                    {
                        "count": 8,
                        "first": 2,
                        "stride": 3,
                        "parameters": [{"parameter": "green", "slots": [2]}],
                    }
                ],
            }
        ),
        0,
        10,
    )
    dimmer, head, green = chart.rows
    assert head.kind == "block"
    assert [(b.slot, b.address) for b in green.slots] == [(3, "12")]
    assert green.cells == "first of 8 cells; the next is 3 further"
    assert dimmer.cells == ""


def test_a_part_has_an_address_of_its_own() -> None:
    """The start address of the mode is not told of its slots."""
    chart = mode_chart(
        fixture(
            {
                "footprint": 3,
                "parameters": [{"parameter": "dimmer", "slots": [1]}],
                "parts": [
                    {"key": "lamp", "footprint": 2, "parameters": [{"parameter": "red", "slots": [1]}]}
                ],
            }
        ),
        0,
        101,
    )
    part = chart.rows[-1]
    assert [(b.slot, b.address, b.part) for b in part.slots] == [(1, "", "/parts/0")]


def test_a_start_address_past_which_it_does_not_fit_is_said() -> None:
    """Three slots fit from 510, and not from 511; a mode that continues may run on."""
    mode: dict[str, Any] = {"footprint": 3, "parameters": [{"parameter": "dimmer", "slots": [1]}]}
    assert mode_chart(fixture(mode), 0, 510).past == ""
    assert "at 510 at most" in mode_chart(fixture(mode), 0, 511).past
    assert mode_chart(fixture(mode | {"continues": True}), 0, 511).past == ""


def test_a_range_with_a_hazard_brings_a_caution() -> None:
    """On the chart and on the range."""
    ranges = [{"from": 0, "to": 255, "meaning": "Reset", "hazard": "reset"}]
    chart = mode_chart(
        fixture({"footprint": 1, "parameters": [{"parameter": "control", "slots": [1], "ranges": ranges}]}), 0
    )
    assert "CAUTION" in chart.caution
    assert chart.rows[0].ranges[0].hazard == "reset"
