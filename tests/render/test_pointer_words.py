"""Pointers in words: what a person reads in place of /modes/1/parameters/7/ranges/2."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.render.pointer_words import in_words
from modebook.shelf.reading import read_fixture

FIXTURES = Path(__file__).parents[2] / "catalog" / "fixtures"
TORVANE = read_fixture(FIXTURES / "pelluwick" / "torvane-40.json")
STRIMBLE = read_fixture(FIXTURES / "hoddlefen" / "strimble-16.json")


@pytest.mark.parametrize(
    ("pointer", "words"),
    [
        ("", "the document"),
        ("/modes/0", "Basic"),
        ("/modes/0/footprint", "Basic, footprint"),
        ("/modes/0/parameters/0/span", "Basic, slot 1, pan, span"),
        ("/modes/0/parameters/3/ranges/0", "Basic, slot 4, shutter, 0-19"),
        ("/modes/0/parameters/8", "Basic, slot 9, rotating-gobo-wheel gobo-1"),
        ("/modes/1/parameters/0", "Standard, slots 1, 2, pan"),
        ("/settings/0", "setting smoothing"),
        ("/settings/0/choices/1/length", "setting smoothing, choice short, length"),
        ("/category", "category"),
        ("/modes/99/footprint", "mode 100 footprint"),
    ],
)
def test_a_pointer_in_words(pointer: str, words: str) -> None:
    """As the Torvane 40 document has it (read by eye)."""
    assert in_words(TORVANE, pointer) == words


def test_slots_in_cells_are_told_as_such() -> None:
    """The slot counts within the cell."""
    assert (
        in_words(STRIMBLE, "/modes/1/cells/0/parameters/0") == "16 pixels, cells Pixel, slot 1 of a cell, red"
    )


@given(st.lists(st.sampled_from(("modes", "0", "1", "77", "parameters", "ranges", "cells", "x~1y"))))
def test_any_pointer_gives_words(steps: list[str]) -> None:
    """One that leads to nothing too."""
    assert in_words(TORVANE, "".join(f"/{step}" for step in steps))
