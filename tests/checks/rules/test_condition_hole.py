"""condition-hole against a brute force over values and choices, and its edges."""

from __future__ import annotations

from itertools import product
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.checks.examples import reading_of
from modebook.checks.rules.condition_hole import RULE

Json = dict[str, Any]
SETTING = {"key": "output", "setting": "output-mode", "choices": [{"key": key} for key in "abc"]}


def content(*whens: list[Json], slots: int = 1) -> Json:
    return {
        "settings": [SETTING],
        "modes": [
            {
                "parameters": [
                    {"parameter": "color-mode", "slots": [1]},
                    *({"parameter": "red", "slots": list(range(2, 2 + slots)), "when": w} for w in whens),
                ]
            }
        ],
    }


@st.composite
def conditions(draw: st.DrawFn) -> list[Json]:
    found: list[Json] = []
    kinds = draw(st.sampled_from((("value",), ("choice",), ("value", "choice"))))
    if "value" in kinds:
        pairs = draw(st.lists(st.tuples(st.integers(0, 255), st.integers(0, 255)), min_size=1, max_size=2))
        either = [{"from": min(pair), "to": max(pair)} for pair in pairs]
        found.append({"parameter": "color-mode", "any_of": either})
    if "choice" in kinds:
        chosen = draw(st.lists(st.sampled_from("abc"), min_size=1, max_size=3, unique=True))
        found.append({"setting": "output", "choices": chosen})
    return found


def holds(when: list[Json], value: int, choice: str) -> bool:
    return all(
        choice in one["choices"]
        if "setting" in one
        else any(r["from"] <= value <= r["to"] for r in one["any_of"])
        for one in when
    )


@settings(max_examples=200, deadline=None)
@given(st.lists(conditions(), min_size=2, max_size=4))
def test_a_hole_is_every_state_in_which_no_condition_holds(whens: list[list[Json]]) -> None:
    states = set(product(range(256), "abc"))
    expected = {state for state in states if not any(holds(when, *state) for when in whens)}
    told = set()
    for fault in RULE.check(reading_of(content(*whens))):
        for hole in fault.figure["holes"]:  # type: ignore[attr-defined]
            values = hole.get("color-mode", [[0, 255]])
            choices = hole.get("output", list("abc"))
            piece = {(v, c) for low, high in values for v in range(low, high + 1) for c in choices}
            assert not piece & told, "holes must not overlap"
            told |= piece
    assert told == expected


def test_a_single_conditional_parameter_is_left_alone() -> None:
    assert not list(RULE.check(reading_of(content([{"parameter": "color-mode", "from": 0, "to": 9}]))))


def test_bytes_shared_by_the_same_parameters_are_one_finding() -> None:
    low = [{"parameter": "color-mode", "from": 0, "to": 9}]
    high = [{"parameter": "color-mode", "from": 20, "to": 255}]
    (fault,) = RULE.check(reading_of(content(low, high, slots=2)))
    assert fault.message == "slots 2-3 have no meaning while color-mode is 10-19"
    assert fault.figure["slots"] == [2, 3]


def test_states_in_words_are_taken_to_be_all_there_are() -> None:
    assert not list(RULE.check(reading_of(content([{"given": "A"}], [{"given": "B"}]))))


def test_a_parameter_without_conditions_fills_every_hole() -> None:
    low = [{"parameter": "color-mode", "from": 0, "to": 9}]
    whole = content(low, low)
    whole["modes"][0]["parameters"].append({"parameter": "blue", "slots": [2]})
    assert not list(RULE.check(reading_of(whole)))


def test_a_hole_in_cells_is_told_once() -> None:
    cells = {
        "count": 3,
        "first": 2,
        "stride": 1,
        "parameters": [
            {
                "parameter": word,
                "slots": [1],
                "when": [{"parameter": "color-mode", "from": low, "to": low + 9}],
            }
            for word, low in (("red", 0), ("cyan", 20))
        ],
    }
    mode = {"parameters": [{"parameter": "color-mode", "slots": [1]}], "cells": [cells]}
    (fault,) = RULE.check(reading_of({"modes": [mode]}))
    assert fault.figure["holes"] == [{"color-mode": [[10, 19], [30, 255]]}]


def test_conditions_on_what_is_not_there_are_left_to_reference_missing() -> None:
    nowhere = [{"parameter": "macro", "from": 0, "to": 9}]
    assert not list(RULE.check(reading_of(content(nowhere, nowhere))))
