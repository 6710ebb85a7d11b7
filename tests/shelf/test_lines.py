"""From pointers to lines, against a method of its own: mark one value and look where the mark comes out."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import settings as calm
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.shelf.canonical import canonical
from modebook.shelf.lines import lines_of, repeated_keys
from modebook.shelf.reading import parse
from support.documents import Json, fixtures

CALM = calm(deadline=None, max_examples=40)


def _places(value: Any, at: str = "") -> Iterator[tuple[str, Any, Any]]:
    """Every pointer below a value with the holder and the key or index in it."""
    for key, item in value.items() if isinstance(value, dict) else enumerate(value):
        pointer = f"{at}/{str(key).replace('~', '~0').replace('/', '~1')}"
        yield pointer, value, key
        if isinstance(item, dict | list):
            yield from _places(item, pointer)


def _renamed(holder: dict[str, Any], key: str, name: str) -> None:
    """Rename a key where it stands, in order."""
    items = [(name if one == key else one, item) for one, item in holder.items()]
    holder.clear()
    holder.update(items)


PLAIN = st.recursive(
    st.none() | st.integers(0, 9) | st.text('ab":,{}[]\\/~é', max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text('ab":{]\\/~', max_size=3), inner, max_size=3)
    ),
    max_leaves=10,
)


@CALM
@given(st.dictionaries(st.text('ab"/~', max_size=3), PLAIN, max_size=3) | st.lists(PLAIN, max_size=3))
@example({"": {"": [1]}})
@example({"a/b": {"~": 1}, "a": {"b": 2}})
def test_every_pointer_gets_the_line_of_its_key_or_value(document: Any) -> None:
    """With one key renamed, or one list item in front of which a mark is put, the mark's line is the line."""
    text = json.dumps(document, indent=1, ensure_ascii=False)
    places = list(_places(document))
    found = lines_of(text.encode(), [pointer for pointer, _, _ in places])
    for index, (pointer, _, key) in enumerate(places):
        changed = copy.deepcopy(document)
        _, holder, _ = list(_places(changed))[index]
        if isinstance(holder, dict):
            _renamed(holder, key, "the mark")
        else:
            holder[key] = "the mark"
        lines = json.dumps(changed, indent=1, ensure_ascii=False).split("\n")
        [expected] = [number for number, line in enumerate(lines, 1) if '"the mark"' in line]
        assert found[pointer] == expected


@CALM
@given(fixtures())
def test_in_a_written_document_the_line_holds_the_key(told: Json) -> None:
    """In canonical form, where pieces share lines, the pointer's key is found on its line."""
    content = canonical(parse(json.dumps(told).encode(), Fixture, "a.json"))
    lines = content.decode().split("\n")
    places = list(_places(json.loads(content)))
    found = lines_of(content, [pointer for pointer, _, _ in places])
    for pointer, holder, key in places:
        line = lines[found[pointer] - 1]
        assert json.dumps(key if isinstance(holder, dict) else holder[key], ensure_ascii=False)[:1] in line
        if isinstance(holder, dict):
            assert json.dumps(key, ensure_ascii=False) + ": " in line


def test_a_pointer_to_nothing_gets_the_deepest_place_there_is() -> None:
    """A missing key is told at the object that lacks it."""
    content = b'\n{\n "modes": [\n  {"name": "x",\n   "footprint": 1}\n ]\n}'
    found = lines_of(
        content, ["", "/modes", "/modes/0", "/modes/0/number", "/modes/9/name", "/x", "/modes/0/footprint"]
    )
    assert found == {
        "": 2,
        "/modes": 3,
        "/modes/0": 4,
        "/modes/0/number": 4,
        "/modes/9/name": 3,
        "/x": 2,
        "/modes/0/footprint": 5,
    }


@pytest.mark.parametrize("content", [b"", b"{", b'{"a', b'{"a": [', b"]]]", b"\xff\xfe", b'{"a" 1, :]}'])
def test_broken_texts_get_a_line_and_no_error(content: bytes) -> None:
    """What cannot be followed is at the first line."""
    assert lines_of(content, ["/b/c"]) == {"/b/c": 1}


@CALM
@given(st.binary(max_size=80), st.lists(st.sampled_from(("", "/a", "/0/a", "/a/0")), max_size=3))
def test_any_bytes_have_lines(content: bytes, pointers: list[str]) -> None:
    """Each pointer gets a line of the text, whatever the text is."""
    found = lines_of(content, pointers)
    assert found.keys() == set(pointers)
    assert all(1 <= line <= content.count(b"\n") + 1 for line in found.values())
    repeated_keys(content)


def test_brackets_without_end_do_not_fill_the_memory() -> None:
    """A million open brackets would make pointers of a terabyte; none longer than asked for is made."""
    assert lines_of(b"[" * 1_000_000, ["", "/0/0"]) == {"": 1, "/0/0": 1}
    assert repeated_keys(b"[" * 1_000_000) == []


def test_keys_that_stand_again() -> None:
    """Each with pointer, key and both lines; the same key in another object is another key."""
    content = b'{"a": {"x": 1},\n"b": [{"x": 1}, {"x": 1,\n"x": 2}],\n"\\u0061": {"x": 3,\n"x": 4, "x": 5}}'
    assert repeated_keys(content) == [
        ("/b/1/x", "x", 2, 3),
        ("/a", "a", 1, 4),
        ("/a/x", "x", 4, 5),
        ("/a/x", "x", 5, 5),
    ]
