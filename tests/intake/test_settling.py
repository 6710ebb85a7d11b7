"""Doubts settled: taken as read, or put right as a person types it; nothing else of the document changes."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.intake.pointed import at, take_out
from modebook.intake.settling import AnswerError, accepted, corrected
from modebook.shelf.canonical import as_written

DATA: dict[str, Any] = {
    "maker": "Invented",
    "model": "One",
    "category": "fixed",
    "standing": "draft",
    "modes": [
        {
            "name": "Basic",
            "footprint": 4,
            "parameters": [
                {"parameter": "dimmer", "slots": [1]},
                {
                    "parameter": "pan",
                    "slots": [3, 2],
                    "default": 128,
                    "span": {"from": 0, "to": 540, "unit": "deg"},
                },
                {
                    "parameter": "control",
                    "slots": [4],
                    "ranges": [
                        {"from": 0, "to": 9, "meaning": "Idle"},
                        {"from": 10, "to": 19, "meaning": "Slow; quiet"},
                        {"from": 15, "to": 29, "meaning": "Reset"},
                    ],
                },
            ],
        }
    ],
}


def doubted(*pointers: str) -> Fixture:
    """The document with a doubt at each pointer."""
    data = copy.deepcopy(DATA)
    data["doubts"] = [{"pointer": pointer, "why": "smudged"} for pointer in pointers]
    return Fixture.model_validate(data)


def test_accepting_changes_nothing_but_the_doubt() -> None:
    """Who, when and what was decided stand at it."""
    before = doubted("/modes/0/parameters/1/span")
    after = accepted(before, 0, "R. Quill", "2026-05-01")
    assert as_written(after)["modes"] == as_written(before)["modes"]
    settled = after.doubts[0].settled
    assert settled is not None
    assert (settled.by, settled.date, settled.decision) == ("R. Quill", "2026-05-01", "as read")
    assert after.open_doubts == []


@pytest.mark.parametrize(
    ("pointer", "typed", "where", "wanted"),
    [
        ("/span", "-270 to 270 deg", "/span", {"from": -270, "to": 270, "unit": "deg"}),
        ("/span", "-270° to 270°", "/span", {"from": -270, "to": 270, "unit": "deg"}),
        ("/span", "gone", "/span", None),
        ("/slots", "2, 3", "/slots", [2, 3]),
        ("/default", "32768", "/default", 32768),
        ("", "tilt", "/parameter", "tilt"),
        ("", "Farbrad", "/parameter", "color-wheel"),
        ("", "2,3", "/slots", [2, 3]),
        ("", "slots 2, 3", "/slots", [2, 3]),
        ("", "slots: 2, 3", "/slots", [2, 3]),
        ("", "default gone", "/default", None),
        ("/span", "slots 2, 3; span 0 to 630 deg", "/slots", [2, 3]),
    ],
)
def test_what_is_typed_goes_where_the_doubt_is(pointer: str, typed: str, where: str, wanted: Any) -> None:
    """A bare value for the key that the doubt is about, a title before it for any other."""
    after = corrected(doubted(f"/modes/0/parameters/1{pointer}"), 0, typed, "A", "2026")
    parameter = as_written(after)["modes"][0]["parameters"][1]
    assert parameter.get(where.lstrip("/")) == wanted
    assert after.open_doubts == []
    assert f"right is: {typed}" == after.doubts[0].settled.decision  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("20-29", [(0, 9, "Idle"), (10, 19, "Slow; quiet"), (20, 29, "Reset")]),
        ("20-29 Full reset", [(0, 9, "Idle"), (10, 19, "Slow; quiet"), (20, 29, "Full reset")]),
        ("2: 10-14", [(0, 9, "Idle"), (10, 14, "Slow; quiet"), (15, 29, "Reset")]),
        ("2: 10-14; 3: 15-30", [(0, 9, "Idle"), (10, 14, "Slow; quiet"), (15, 30, "Reset")]),
        ("gone", [(0, 9, "Idle"), (10, 19, "Slow; quiet")]),
        ("1: gone", [(10, 19, "Slow; quiet"), (15, 29, "Reset")]),
        ("30", [(0, 9, "Idle"), (10, 19, "Slow; quiet"), (30, 30, "Reset")]),
        ("meaning Home; then rest", [(0, 9, "Idle"), (10, 19, "Slow; quiet"), (15, 29, "Home; then rest")]),
    ],
)
def test_ranges_are_put_right_by_value_or_number(typed: str, wanted: list[tuple[int, int, str]]) -> None:
    """The doubt is about the third range; a number before a colon is another one."""
    after = corrected(doubted("/modes/0/parameters/2/ranges/2"), 0, typed, "A", "2026")
    ranges = after.modes[0].parameters[2].ranges
    assert [(entry.from_, entry.to, entry.meaning) for entry in ranges] == wanted


@pytest.mark.parametrize(
    ("pointer", "typed", "told"),
    [
        ("/modes/0/parameters/1/span", "about 540", "is no span"),
        ("/modes/0/parameters/1", "hyperflux", "vocabulary"),
        ("/modes/0/parameters/1", "slots x", "whole number"),
        ("/modes/0/parameters/2/ranges/2", "29-15", "from 29 is above to 15"),
        ("/modes/0/parameters/2/ranges/2", "Reset", "10-14 Open"),
        ("/modes/0/parameters/2/ranges/2", "7: 1-2", "there is no range 7"),
        ("/modes/0", "gone", "not taken out here"),
        ("/modes/0", "what", "name"),
        ("/modes/0/parameters/1/span", "  ", "nothing was typed"),
        ("", "x", "the file itself"),
    ],
)
def test_an_answer_that_cannot_be_taken_says_what_would_be_right(pointer: str, typed: str, told: str) -> None:
    """One line; the document is as it was."""
    before = doubted(pointer)
    written = as_written(before)
    with pytest.raises(AnswerError) as caught:
        corrected(before, 0, typed, "A", "2026")
    assert told in str(caught.value)
    assert "\n" not in str(caught.value)
    assert as_written(before) == written


def test_a_mode_may_be_renamed_and_numbered() -> None:
    """The titles of the sheet's mode block serve there."""
    after = corrected(doubted("/modes/0/name"), 0, "name Short; number 2; footprint 5", "A", "2026")
    assert (after.modes[0].name, after.modes[0].number, after.modes[0].footprint) == ("Short", 2, 5)


def test_other_doubts_follow_what_moves_up() -> None:
    """What is taken out of a list moves the rest; pointers still lead to the same things."""
    before = doubted(
        "/modes/0/parameters/1", "/modes/0/parameters/2/ranges/1", "/modes/0/parameters/1/span", "/modes/0"
    )
    after = corrected(before, 0, "gone", "A", "2026")
    assert [doubt.pointer for doubt in after.doubts] == [
        "/modes/0",
        "/modes/0/parameters/1/ranges/1",
        "/modes/0",
        "/modes/0",
    ]
    assert len(after.open_doubts) == 3


@given(st.integers(0, 2), st.integers(0, 2))
def test_taking_out_keeps_every_other_pointer_on_its_thing(gone: int, other: int) -> None:
    """For any two parameters of three: a pointer to the one leads to it after the other has gone."""
    data = copy.deepcopy(DATA)
    pointer = f"/modes/0/parameters/{other}"
    wanted = at(data, pointer)
    data["doubts"] = [{"pointer": pointer, "why": "smudged"}]
    take_out(data, f"/modes/0/parameters/{gone}")
    found = data["doubts"][0]["pointer"]
    assert found == "/modes/0" if gone == other else at(data, found) is wanted


def test_taking_out_what_is_not_there_is_told() -> None:
    """A pointer may lead past the end."""
    with pytest.raises(LookupError):
        take_out(copy.deepcopy(DATA), "/modes/0/parameters/9")
