"""Names in paths, and the types that all documents share."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from modebook.documents.base import Date, Hex16, Key, Part, Pointer, each_once, slug


@given(st.text(min_size=1))
@example("№ 5")
@example("İ")
@example("灯")
@example("ŉ")
def test_a_slug_is_fit_for_a_path_and_stays_what_it_is(name: str) -> None:
    """Any name at all gives small letters, digits and single hyphens, and a slug is its own slug."""
    made = slug(name)
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", made)
    assert slug(made) == made


@pytest.mark.parametrize(
    ("name", "made"),
    [
        ("Île Nº 2", "ile-no-2"),
        ("№ 5", "no-5"),
        ("Lumo™ 40", "lumotm-40"),
        ("ARDENFELL  & Sons.", "ardenfell-sons"),
        ("Straße", "strasse"),
        ("Łódź Ørsted Æther", "lodz-orsted-aether"),
        ("e\u0301cole", "ecole"),
        ("灯", "u706f"),
    ],
)
def test_slugs_by_hand(name: str, made: str) -> None:
    """Marks go, signs that stand for letters become them, and what is left over becomes one hyphen."""
    assert slug(name) == made


def test_composed_and_decomposed_spellings_give_one_path() -> None:
    """The same name typed on two systems (NFC, NFD) is one fixture."""
    assert slug("Zoë 5") == slug("Zoe\u0308 5") == "zoe-5"


@pytest.mark.parametrize(
    ("kind", "good", "bad"),
    [
        (Key, ["a", "gobo-wheel-2", "0"], ["", "A", "a_b", "-a", "a-", "a--b", "a\n", "a" * 81]),
        (Hex16, ["0x7FF1", "0x0000"], ["7FF1", "0x7ff1", "0x7FF", "0x7FF11", "0x7FF1\n"]),
        (Date, ["2026", "2026-03", "2026-03-31"], ["26", "2026-13", "2026-03-32", "2026-3", "March 2026"]),
        (Pointer, ["", "/", "/modes/0", "/a~1b/~0"], ["modes", "/a~b", "/~2", "#/modes"]),
    ],
)
def test_what_the_shared_types_take(kind: Any, good: list[str], bad: list[str]) -> None:
    """Keys, numbers of RDM, dates and pointers are taken as documented, and nothing near them is."""
    adapter: TypeAdapter[str] = TypeAdapter(kind)
    for word in good:
        assert adapter.validate_python(word) == word
    for word in bad:
        with pytest.raises(ValidationError):
            adapter.validate_python(word)


def test_parts_are_closed_and_do_not_change() -> None:
    """An unknown key is refused, a number in quotes is not read as one, and what was read stays as it is."""

    class Piece(Part):
        count: int

    piece = Piece(count=1)
    with pytest.raises(ValidationError):
        piece.count = 2  # type: ignore[misc]
    for content in ('{"count": 1, "more": 2}', '{"count": "1"}', '{"count": 1.0}', "{}", "[]", "null"):
        with pytest.raises(ValidationError):
            Piece.model_validate_json(content)


def test_keys_that_stand_twice_are_named() -> None:
    """The message says which key it is."""
    each_once("wheels", ["a", "b"])
    with pytest.raises(ValueError, match=r"^two wheels have the key 'a': give each its own$"):
        each_once("wheels", ["a", "b", "a"])
