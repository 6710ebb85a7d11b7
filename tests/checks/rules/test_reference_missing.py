"""reference-missing: every kind of name that may lead nowhere."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from modebook.checks.finding import Fault

Json = dict[str, Any]
Run = Callable[[str, Mapping[str, object]], list[Fault]]
SETTING = {"key": "curve", "setting": "dimmer-curve", "choices": [{"key": "linear"}, {"key": "square"}]}
WHEEL = {"key": "gobos", "positions": [{"key": "open"}, {"key": "dots"}]}


def content(parameter: Json | None = None, **piece: Any) -> Json:
    one: Json = {"parameter": "strobe", "slots": [1]} | (parameter or {})
    if piece:
        one["ranges"] = [{"from": 0, "to": 255, "meaning": "a", **piece}]
    return {
        "settings": [SETTING],
        "wheels": [WHEEL],
        "modes": [{"parameters": [one, {"parameter": "gobo-wheel", "key": "gobo-2", "slots": [2]}]}],
    }


VALUES = {"from": 0, "to": 9}


@pytest.mark.parametrize(
    ("right", "wrong", "place"),
    [
        ({"sets": {"curve": "linear"}}, {"sets": {"kurve": "linear"}}, "/ranges/0/sets"),
        ({"sets": {"curve": "square"}}, {"sets": {"curve": "cubic"}}, "/ranges/0/sets/curve"),
        ({"position": "dots"}, {"position": "stars"}, "/ranges/0/position"),
        ({"for": ["gobo-2"]}, {"for": ["gobo-2", "pan"]}, "/ranges/0/for/1"),
        (
            {"needs": [{"parameter": "gobo-2", **VALUES}]},
            {"needs": [{"parameter": "gobo-1", **VALUES}]},
            "/ranges/0/needs/0/parameter",
        ),
        (
            {"needs": [{"setting": "curve", "choices": ["square"]}]},
            {"needs": [{"setting": "curve", "choices": ["square", "s"]}]},
            "/ranges/0/needs/0/choices/1",
        ),
        (
            {"needs": [{"setting": "curve", "choices": ["square"]}]},
            {"needs": [{"setting": "fan", "choices": ["square"]}]},
            "/ranges/0/needs/0/setting",
        ),
    ],
)
def test_names_on_a_range(run: Run, right: Json, wrong: Json, place: str) -> None:
    assert run("reference-missing", content(**right)) == []
    (fault,) = run("reference-missing", content(**wrong))
    assert fault.pointer == f"/modes/0/parameters/0{place}"
    assert fault.help


def test_names_on_a_parameter(run: Run) -> None:
    assert run("reference-missing", content({"for": ["gobo-2"]})) == []
    assert run("reference-missing", content({"for": ["gobo-wheel"]})) == [], "a word will do"
    (fault,) = run("reference-missing", content({"for": ["gobo-3"]}))
    assert fault.pointer == "/modes/0/parameters/0/for/0"
    assert fault.help == "did you mean gobo-2 or gobo-wheel?"
    (fault,) = run("reference-missing", content({"when": [{"parameter": "pan", **VALUES}]}))
    assert fault.pointer == "/modes/0/parameters/0/when/0/parameter"


def test_for_may_name_what_a_range_controls_and_cells_and_parts(run: Run) -> None:
    speed = {"parameter": "effect-speed", "slots": [1], "for": ["dimmer", "ring", "tail", "wobble"]}
    pieces = [{"from": 0, "to": 255, "meaning": "a", "parameter": "dimmer", "key": "wobble"}]
    mode = {
        "parameters": [speed, {"parameter": "strobe", "slots": [2], "ranges": pieces}],
        "cells": [{"key": "ring", "count": 2, "first": 3, "stride": 1, "parameters": []}],
        "parts": [{"key": "tail", "footprint": 1}],
    }
    assert run("reference-missing", {"modes": [mode]}) == []


def test_a_name_of_another_mode_does_not_count(run: Run) -> None:
    speed = {"parameter": "movement-speed", "slots": [1], "for": ["pan"]}
    pan = {"parameter": "pan", "slots": [1, 2]}
    assert run("reference-missing", {"modes": [{"parameters": [speed]}, {"parameters": [pan]}]})


def test_choices_of_ways(run: Run) -> None:
    def ways(*ways: Json) -> Json:
        return {"settings": [SETTING | {"ways": list(ways)}]}

    assert run("reference-missing", ways({"by": "rdm", "values": {"linear": 1}})) == []
    (fault,) = run("reference-missing", ways({"by": "rdm", "values": {"linear": 1, "cubic": 2}}))
    assert fault.pointer == "/settings/0/ways/0/values/cubic"
    (fault,) = run("reference-missing", ways({"by": "menu", "choices": ["cubic"]}))
    assert fault.pointer == "/settings/0/ways/0/choices/0"


def test_neighbors_of_a_split_position(run: Run) -> None:
    positions = [{"key": "open"}, {"key": "red"}, {"key": "split", "between": ["open", "reed"]}]
    (fault,) = run("reference-missing", {"wheels": [{"key": "colors", "positions": positions}]})
    assert fault.pointer == "/wheels/0/positions/2/between/1"


def test_the_place_of_an_open_doubt(run: Run) -> None:
    def doubt(pointer: str, **more: Any) -> Json:
        return {"doubts": [{"pointer": pointer, "why": "Smudged.", **more}]}

    assert run("reference-missing", doubt("/modes/0/parameters/0/slots/1")) == []
    (fault,) = run("reference-missing", doubt("/modes/0/parameters/7"))
    assert fault.pointer == "/doubts/0/pointer"
    settled = {"by": "A. Recorder", "date": "2026", "decision": "Taken out."}
    assert run("reference-missing", doubt("/modes/0/parameters/7", settled=settled)) == []
