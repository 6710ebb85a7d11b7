"""Duplicate keys: in any spelling, at any depth, none passes unnoticed."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import settings as calm
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.shelf import reading
from modebook.shelf.reading import DocumentError, DocumentFault, duplicate_keys, parse
from support.documents import Json, fixture, fixtures, mode

CALM = calm(deadline=None, max_examples=60)
GOOD = json.dumps(fixture()).encode()


def _faults(content: bytes) -> list[DocumentFault]:
    with pytest.raises(DocumentError) as caught:
        parse(content, Fixture, "shelf/lumo.json")
    return caught.value.faults


SPACE = st.sampled_from(("", " ", "\n", "\t", "\r\n", "  "))
TRICKY = st.sampled_from(('":', '"a":', "\\", '\\":', ":", ' : "', "{", '"', "\u00e9", "a")) | st.text(
    max_size=4
)
KEYS = st.sampled_from(("a", "b", '":', "\\", "é", "")) | TRICKY


@st.composite
def _spelled(draw: st.DrawFn, text: str) -> str:
    """A JSON string, each sign of it perhaps spelled by its number."""
    if draw(st.booleans()):
        return json.dumps(text, ensure_ascii=draw(st.booleans()))
    units = text.encode("utf-16-be", "surrogatepass")
    return '"' + "".join(f"\\u{units[i : i + 2].hex()}" for i in range(0, len(units), 2)) + '"'


@st.composite
def _texts(draw: st.DrawFn, depth: int = 3) -> str:
    """A JSON text, with keys that may stand twice and white space anywhere that it may be."""
    kind = draw(st.integers(0, 4 if depth else 1))
    if kind == 0:
        return draw(st.sampled_from(("1", "null", "true", "-0.5e3")))
    if kind == 1:
        return draw(_spelled(draw(TRICKY)))

    def gap() -> str:
        return draw(SPACE)

    if kind == 2:
        items = [gap() + draw(_texts(depth - 1)) + gap() for _ in range(draw(st.integers(0, 2)))]
        return "[" + ",".join(items) + "]"
    pairs = [
        gap() + draw(_spelled(draw(KEYS))) + gap() + ":" + gap() + draw(_texts(depth - 1)) + gap()
        for _ in range(draw(st.integers(0, 3)))
    ]
    return "{" + ",".join(pairs) + "}"


def _has_double(text: str) -> bool:
    """The naive way: look at the pairs of every object."""
    found = []

    def look(pairs: list[tuple[str, Any]]) -> None:
        found.append(len(pairs) != len({key for key, _ in pairs}))

    json.loads(text, object_pairs_hook=look)
    return any(found)


@calm(deadline=None, max_examples=400)
@given(_texts())
@example('{"a" :1,"a":"\\":"}')
@example('{"a":1,"a":"\\u0022"}')
@example('{"a":"x","\\u0061":"\\u0022\\u0022"}')
def test_the_quick_look_and_the_slow_one_see_every_double(text: str) -> None:
    """The count of quotation marks never passes a text with a double; the slow look tells just those."""
    content = text.encode()
    double = _has_double(text)
    assert bool(duplicate_keys(content)) == double
    if double:
        assert not reading._surely_no_duplicates(content)


@st.composite
def _doubled(draw: st.DrawFn) -> tuple[str, str]:
    """A fixture's text with one pair of some object written again, and the key that stands twice."""
    document = draw(fixtures())
    holders: list[dict[str, Any]] = []

    def visit(value: Any) -> None:
        if isinstance(value, dict):
            if value:
                holders.append(value)
            for item in value.values():
                visit(item)
        elif isinstance(value, list):
            for item in value:
                visit(item)

    visit(document)
    holder = holders[draw(st.integers(0, len(holders) - 1))]
    key = draw(st.sampled_from(list(holder)))
    mark = "again-and-again"
    holder[mark] = holder[key]
    text = json.dumps(document, ensure_ascii=False, indent=draw(st.sampled_from((None, 1))))
    spelled, gap = draw(_spelled(key)), draw(SPACE)
    return text.replace(f'"{mark}":', f"{spelled}{gap}:"), key


@CALM
@given(_doubled())
def test_a_double_in_a_document_is_always_told(told: tuple[str, str]) -> None:
    """A key written again with the same value, in any spelling, at any depth, is refused and named."""
    text, key = told
    faults = _faults(text.encode())
    assert any(fault.message.startswith(f"the key {key!r} stands twice") for fault in faults)


@CALM
@given(fixtures(), st.sampled_from((None, 1)), st.booleans())
def test_a_document_without_doubles_passes(document: Json, indent: int | None, ascii_only: bool) -> None:
    """Colons, quotation marks and escapes in its strings raise no alarm."""
    text = json.dumps(document, indent=indent, ensure_ascii=ascii_only)
    assert duplicate_keys(text.encode()) == []
    parse(text.encode(), Fixture, "a.json")


def test_the_quick_look_suffices_for_usual_documents() -> None:
    """Documents as the program writes them are not read a second time."""
    document = fixture(about='He said: "12 : 3" {x}', modes=[mode(name="É")])
    assert reading._surely_no_duplicates(json.dumps(document, ensure_ascii=False).encode())
    assert not reading._surely_no_duplicates(b'{"a": 1, "a": 2}')


def test_a_double_is_told_with_its_place_and_lines() -> None:
    """Where it stands, and in which two lines, so that it can be found in an editor."""
    content = GOOD.replace(b'"modes": [{', b'"modes": [{\n"footprint": 9,\n', 1)
    [fault] = _faults(content)
    assert fault == DocumentFault(
        "/modes/0/footprint",
        "the key 'footprint' stands twice in one object, in lines 2 and 3",
        "keep one of the two",
    )


def test_a_double_is_told_beside_other_faults() -> None:
    """The later of the two is often the one that is wrong."""
    faults = _faults(b'{"maker": "Ardenfell", ' + GOOD[1:-1] + b', "maker": 7}')
    assert [fault.pointer for fault in faults] == ["/maker", "/maker", "/maker"]
    assert faults[0].message == "7 stands where text in quotes belongs"
    assert faults[1].message == "the key 'maker' stands twice in one object, in line 1"
