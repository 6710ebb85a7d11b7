"""Fixture documents as wholes: the documented example, identity, doubts, and keys that stand once."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import settings as calm
from pydantic import ValidationError

from modebook.documents.bits import bits
from modebook.documents.fixture import Fixture, WheelColor
from modebook.documents.layout import blocks
from modebook.documents.modes import Span
from modebook.documents.ways import smoothing_by
from support.documents import Json, fixture, fixtures, setting

CALM = calm(deadline=None, max_examples=40)

EXAMPLE = """
{
  "$schema": "../../../schema/fixture.schema.json",
  "maker": "Invented Maker",
  "model": "Invented 200",
  "category": "moving yoke",
  "standing": "transcribed",
  "rdm": {"manufacturer": "0x7FF1", "model": "0x0102"},
  "sources": [{"key": "guide-c", "title": "Invented 200 user guide", "revision": "C", "date": "2026-03",
    "firmware": "2.4", "pages": "31-34"}],
  "settings": [
    {"key": "smoothing", "setting": "smoothing", "acts_on": ["intensity"],
     "choices": [
       {"key": "off", "label": "Fast", "length": {"packets": 0}, "source": "guide-c"},
       {"key": "short", "label": "Smooth", "length": {"packets": 2}, "method": "average",
        "source": "guide-c"},
       {"key": "long", "label": "Cine", "source": "guide-c", "factory": true}],
     "ways": [
       {"by": "menu", "path": ["Setup", "Response"]},
       {"by": "rdm", "pid": "0x0345", "size": 1, "values": {"off": 1, "short": 2, "long": 3}}]}],
  "modes": [
    {"name": "Extended", "number": 3, "footprint": 6, "source": "guide-c",
     "parameters": [
       {"parameter": "dimmer", "label": "Intensity", "slots": [1, 2],
        "span": {"from": 0, "to": 100, "unit": "%"}},
       {"parameter": "pan", "slots": [3, 5], "default": 32768,
        "span": {"from": -270, "to": 270, "unit": "deg"}},
       {"parameter": "strobe", "slots": [4], "ranges": [
         {"from": 0, "to": 9, "meaning": "Open"},
         {"from": 10, "to": 255, "meaning": "Slow to fast", "span": {"from": 1, "to": 25, "unit": "Hz"}}]},
       {"parameter": "control", "slots": [6], "default": 0, "ranges": [
         {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"},
         {"from": 10, "to": 14, "meaning": "Response: Fast", "sets": {"smoothing": "off"}, "hold_s": 3,
          "kept": "until power off"},
         {"from": 15, "to": 19, "meaning": "Response: Smooth", "sets": {"smoothing": "short"}, "hold_s": 3,
          "needs": [{"parameter": "dimmer", "from": 0, "to": 0}]},
         {"from": 20, "to": 249, "meaning": "No function", "does": "nothing"},
         {"from": 250, "to": 255, "meaning": "Reset", "hold_s": 5, "hazard": "reset"}]}]}]
}
"""
"""The example that the design of the documents gives."""


def test_the_documented_example_is_a_fixture() -> None:
    """What the example says is what comes out: identity, bytes, spans, ways, the unknown length."""
    found = Fixture.model_validate_json(EXAMPLE, by_alias=True, by_name=False)
    assert found.id == "invented-maker/invented-200"
    [mode] = found.modes
    assert [placed.slots for placed in blocks(mode)[0].placed] == [(1, 2), (3, 5), (4,), (6,)]
    pan = mode.parameters[1]
    assert (bits(pan), pan.default) == (16, 32768)
    assert isinstance(pan.span, Span)
    assert pan.span.width == 540
    [smoothing] = found.settings
    assert smoothing.factory is not None
    assert (smoothing.factory.key, smoothing.factory.length) == ("long", None)
    assert smoothing_by(found, mode) == ["slot", "rdm", "menu"]
    needs = mode.parameters[3].ranges[2].needs
    assert needs is not None
    assert needs[0].intervals == ((0, 0),)


def test_the_documented_example_is_written_back_with_the_same_meaning() -> None:
    """Nothing is added and nothing lost."""
    found = Fixture.model_validate_json(EXAMPLE, by_alias=True, by_name=False)
    assert found.model_dump(mode="json", by_alias=True, exclude_unset=True) == json.loads(EXAMPLE)


@pytest.mark.parametrize("word", ["from_", "for_", "schema_"])
def test_names_of_the_program_are_no_keys_of_a_document(word: str) -> None:
    """A document writes `from`, `for` and `$schema`, never what the program calls them inside."""
    content = (
        EXAMPLE.replace('"from"', f'"{word}"') if word == "from_" else json.dumps(fixture(**{word: "x"}))
    )
    with pytest.raises(ValidationError):
        Fixture.model_validate_json(content, by_alias=True, by_name=False)


@CALM
@given(fixtures())
def test_every_fixture_that_strategies_make_is_taken_and_comes_back(told: Json) -> None:
    """A document of any features survives reading and writing with its meaning."""
    found = Fixture.model_validate_json(json.dumps(told), by_alias=True, by_name=False)
    assert found.model_dump(mode="json", by_alias=True, exclude_unset=True) == told
    assert [doubt.why for doubt in found.open_doubts] == [
        one["why"] for one in told.get("doubts", ()) if "settled" not in one
    ]


@pytest.mark.parametrize("key", ["maker", "model", "category", "standing", "modes"])
def test_what_a_fixture_must_have(key: str) -> None:
    """The smallest document is taken, and none smaller."""
    least = fixture()
    Fixture.model_validate(least)
    del least[key]
    with pytest.raises(ValidationError):
        Fixture.model_validate(least)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"sources": [{"key": "a", "title": "x"}] * 2}, "two sources have the key 'a'"),
        ({"settings": [setting(), setting()]}, "two settings have the key 'smoothing'"),
        ({"wheels": [{"key": "w", "positions": []}] * 2}, "two wheels have the key 'w'"),
        ({"emitters": [{"key": "red"}] * 2}, "two emitters have the key 'red'"),
        ({"wheels": [{"key": "w", "positions": [{"key": "o"}] * 2}]}, "two positions have the key 'o'"),
    ],
)
def test_what_others_refer_to_stands_once(changes: dict[str, Any], message: str) -> None:
    """A reference must lead to one thing."""
    with pytest.raises(ValidationError, match=message):
        Fixture.model_validate(fixture(**changes))


def test_a_color_has_both_coordinates_or_a_name() -> None:
    """Half a chromaticity is none."""
    WheelColor(x=0.3, y=0.3)
    WheelColor(filter="Pale straw")
    for told in ({"x": 0.3}, {"y": 0.3, "filter": "Pale straw"}, {}, {"x": 0.3, "y": 1.2}):
        with pytest.raises(ValidationError):
            WheelColor.model_validate(told)
