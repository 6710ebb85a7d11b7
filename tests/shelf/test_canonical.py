"""The one written form: the same meaning, the models' order, and the same bytes when written again."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import settings as calm
from hypothesis import strategies as st
from pydantic import BaseModel

from modebook.documents.base import Part
from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy
from modebook.documents.rig import Rig
from modebook.shelf.canonical import WIDTH, as_written, canonical, canonical_bytes, form, is_canonical
from modebook.shelf.reading import parse
from support.documents import Json, fixture, fixtures, mode, policies, rigs

CALM = calm(deadline=None, max_examples=40)
KINDS: list[tuple[type[Part], st.SearchStrategy[Json]]] = [
    (Fixture, fixtures()),
    (Rig, rigs()),
    (Policy, policies()),
]


def _read(told: Json) -> Fixture:
    return parse(json.dumps(told).encode(), Fixture, "a.json")


@pytest.mark.parametrize(("model", "documents"), KINDS)
def test_what_was_written_is_written_the_same_again(
    model: type[Part], documents: st.SearchStrategy[Json]
) -> None:
    """Reading the written form gives the same document, whose written form is the same bytes."""

    @CALM
    @given(documents)
    def check(told: Json) -> None:
        document = parse(json.dumps(told).encode(), model, "a.json")
        once = canonical(document)
        again = parse(once, model, "a.json")
        assert again == document
        assert canonical(again) == once
        assert is_canonical(once, again)
        assert canonical_bytes(json.dumps(told, indent=7).encode(), model, "a.json") == once

    check()


@CALM
@given(fixtures())
def test_the_meaning_is_that_of_the_text(told: Json) -> None:
    """Python's own reader gets from the written form what stood in the text: nothing added, nothing lost."""
    assert json.loads(canonical(_read(told))) == told


def _keys_in_order(part: BaseModel, written: Any) -> None:
    """The keys of every object are in the order of its model's fields."""
    order = [field.alias or name for name, field in type(part).model_fields.items()]
    assert list(written) == [key for key in order if key in written]
    for name, field in type(part).model_fields.items():
        value, plain = getattr(part, name), written.get(field.alias or name)
        if plain is None:
            continue
        pairs = (
            zip(value, plain, strict=True)
            if isinstance(value, list)
            else zip(value.values(), plain.values(), strict=True)
            if isinstance(value, dict)
            else [(value, plain)]
        )
        for inner, one in pairs:
            if isinstance(inner, BaseModel):
                _keys_in_order(inner, one)


@CALM
@given(fixtures())
def test_keys_stand_in_the_models_order(told: Json) -> None:
    """However a person orders them, they come out in the order that the models document."""
    document = _read(dict(reversed(told.items())))
    _keys_in_order(document, json.loads(canonical(document)))


@CALM
@given(fixtures())
def test_lines_are_short_or_cannot_be_shorter(told: Json) -> None:
    """A line past the width holds one string or number alone; no tabs, no spaces at the end of a line."""
    for line in canonical(_read(told)).decode().splitlines():
        assert line == line.rstrip(" ")
        if len(line) > WIDTH + 1:
            value = line.strip().rstrip(",").partition('": ')[2] or line.strip().rstrip(",")
            assert value[0] not in "[{" or len(value) < 3


def test_the_form_by_hand() -> None:
    """Two spaces a level, a piece that fits on one line, a line break at the end, whole numbers whole."""
    told = mode(name="Île", footprint=1)
    told["parameters"][0] |= {"span": {"unit": "%", "to": 100.0, "from": 0.5}}
    text = canonical(_read(fixture(modes=[told]))).decode()
    assert text == (
        "{\n"
        '  "maker": "Ardenfell",\n'
        '  "model": "Lumo 40",\n'
        '  "category": "fixed",\n'
        '  "standing": "draft",\n'
        '  "modes": [{"name": "Île", "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1], '
        '"span": {"from": 0.5, "to": 100, "unit": "%"}}]}]\n'
        "}\n"
    )


def test_defaults_are_not_added_and_those_written_stay() -> None:
    """A document says no more than its author did, and no less."""
    told = fixture(about=None, sources=[])
    assert as_written(_read(told)) == told


def test_other_spellings_are_not_canonical() -> None:
    """Another order, other white space or a point in a whole number is seen."""
    document = _read(fixture())
    written = canonical(document)
    assert is_canonical(written, document)
    for other in (written[:-1], written + b"\n", written.replace(b"  ", b"\t"), b" " + written):
        assert not is_canonical(other, document)


PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=9), inner, max_size=4),
    max_leaves=12,
)


@CALM
@given(PLAIN, st.integers(1, 100))
def test_any_plain_data_in_any_width_keeps_its_meaning(value: Any, width: int) -> None:
    """The shape never touches what is said."""
    assert json.loads(form(value, width)) == value


def test_a_piece_breaks_when_it_is_one_sign_too_long() -> None:
    """Exactly at the width it stands on one line."""
    assert form([1, 2], 6) == "[1, 2]"
    assert form([1, 2], 5) == "[\n  1,\n  2\n]"
