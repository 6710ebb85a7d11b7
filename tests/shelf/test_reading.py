"""Reading documents: what is wrong with a file is told in one line, with file, place and remedy."""

from __future__ import annotations

import errno
import json
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import settings as calm
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.documents.policy import Policy
from modebook.documents.rig import Rig
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import (
    LARGEST_BYTES,
    MOST_FAULTS,
    DocumentError,
    DocumentFault,
    parse,
    read_bytes,
    read_document,
    read_fixture,
)
from support.documents import Json, fixture, fixtures, mode, parameter, setting

CALM = calm(deadline=None, max_examples=60)


def _faults(content: bytes | Json, model: type[Any] = Fixture) -> list[DocumentFault]:
    """All faults of a document, after making sure that the error is one line that names the file."""
    written = json.dumps(content).encode() if isinstance(content, dict) else content
    with pytest.raises(DocumentError) as caught:
        parse(written, model, "shelf/lumo.json")
    assert str(caught.value).startswith("shelf/lumo.json")
    assert len(str(caught.value).splitlines()) == 1
    return caught.value.faults


# Whole files ------------------------------------------------------------------------------------------------


def _written(content: bytes) -> Callable[[Path], Path]:
    def write(folder: Path) -> Path:
        path = folder / "lumo.json"
        path.write_bytes(content)
        return path

    return write


def _fifty_megabytes(folder: Path) -> Path:
    path = folder / "lumo.json"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    return path


def _link_to_itself(folder: Path) -> Path:
    path = folder / "lumo.json"
    path.symlink_to(path)
    return path


GOOD = json.dumps(fixture()).encode()

BAD_FILES: dict[str, tuple[Callable[[Path], Path], str]] = {
    "missing": (
        lambda folder: folder / "lumo.json",
        "no such file or directory; name a file that can be read",
    ),
    "a folder": (lambda folder: folder, "is a directory; name a file that can be read"),
    "a link to itself": (
        _link_to_itself,
        "too many levels of symbolic links; name a file that can be read",
    ),
    "50 MB": (_fifty_megabytes, "larger than 8 MB; no fixture document is: is this the right file?"),
    "empty": (_written(b""), "the file is empty; start from one of the catalog's documents"),
    "white space alone": (
        _written(b" \n\t"),
        "the file is empty; start from one of the catalog's documents",
    ),
    "a byte order mark": (
        _written(b"\xef\xbb\xbf" + GOOD),
        "a byte order mark stands before the first bracket; save it without one",
    ),
    "broken UTF-8": (
        _written(b'{\n"maker": "\xff"}'),
        "byte 12 (line 2) is not UTF-8; save the file in UTF-8 and try again",
    ),
    "UTF-16": (
        _written(GOOD.decode().encode("utf-16")),
        "byte 0 (line 1) is not UTF-8; save the file in UTF-8 and try again",
    ),
    "truncated": (
        _written(b'{"maker": "Ard'),
        "not JSON: EOF while parsing a string at line 1 column 14; look there for a comma, quote or bracket",
    ),
    "nested too deeply": (
        _written(b"[" * 100_000),
        "brackets are nested too deeply; no document needs more than a few levels",
    ),
    "something after it": (
        _written(GOOD + b"{}"),
        f"not JSON: trailing characters at line 1 column {len(GOOD) + 1}; "
        "look there for a comma, quote or bracket",
    ),
    "a list": (_written(b"[]"), "[] stands where an object in { } belongs; write an object in { }"),
    "null": (_written(b"null"), "null stands where an object in { } belongs; write an object in { }"),
}


@pytest.mark.parametrize("what", BAD_FILES)
def test_a_bad_file_is_told_in_one_line(what: str, tmp_path: Path) -> None:
    """File, what is wrong, and what to do."""
    make, message = BAD_FILES[what]
    path = make(tmp_path)
    with pytest.raises(ShelfError) as caught:
        read_fixture(path)
    assert str(caught.value) == f"{path}: {message}"


def test_a_file_that_may_not_be_read(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The system's own refusal is passed on (root may read all, so it is feigned here)."""

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr("builtins.open", refuse)
    with pytest.raises(ShelfError) as caught:
        read_bytes(tmp_path / "lumo.json")
    monkeypatch.undo()
    assert str(caught.value) == f"{tmp_path}/lumo.json: permission denied; name a file that can be read"


def test_a_path_that_no_system_knows() -> None:
    """A zero byte in a path is an error of the shelf, not a traceback."""
    with pytest.raises(ShelfError, match="null byte"):
        read_bytes("lumo\0.json")


def test_a_document_of_the_largest_size_is_read(tmp_path: Path) -> None:
    """The limit itself is allowed, one byte more is not."""
    path = tmp_path / "lumo.json"
    path.write_bytes(GOOD + b" " * (LARGEST_BYTES - len(GOOD)))
    assert read_fixture(path).maker == "Ardenfell"
    with path.open("ab") as file:
        file.write(b" ")
    with pytest.raises(ShelfError, match="larger than 8 MB"):
        read_fixture(path)
    assert read_document(path, Fixture, largest=LARGEST_BYTES + 1).maker == "Ardenfell"


def test_signs_that_a_terminal_would_obey_are_spelled(tmp_path: Path) -> None:
    """Neither a file's name nor what stands in it can color or clear a screen, or break a line."""
    path = tmp_path / "a\x1b[2J\nb.json"
    with pytest.raises(ShelfError) as caught:
        read_fixture(path)
    assert "a\\x1b[2J b.json" in str(caught.value)
    undecodable = os.fsdecode(os.fsencode(tmp_path) + b"/\xff.json")
    with pytest.raises(ShelfError) as caught:
        read_fixture(undecodable)
    str(caught.value).encode("ascii")
    [fault] = _faults(fixture(category="\x9b2J\u2028x"))
    assert fault.message == '"\\x9b2J\\u2028x" is not a word that is known here'


# What stands in them ----------------------------------------------------------------------------------------


def _in_range(**more: Any) -> Json:
    return fixture(modes=[mode(parameter(ranges=[{"from": 0, "to": 255, "meaning": "x", **more}]))])


RANGE = "/modes/0/parameters/0/ranges/0"
CHOICE = setting({"key": "one"}, ways=[{"by": "rdm", "values": {"one": "first"}}])

FAULTS: list[tuple[Json, str, str, str]] = [
    (fixture(makr="x"), "/makr", "the key 'makr' is unknown here", "is 'maker' meant?"),
    (_in_range(mening="x"), f"{RANGE}/mening", "the key 'mening' is unknown here", "is 'meaning' meant?"),
    (
        _in_range(sets={"a": {"form": 0, "to": 1, "from": 0, "unit": "deg"}}),
        f"{RANGE}/sets/a/form",
        "the key 'form' is unknown here",
        "is 'from' meant?",
    ),
    (
        fixture(rdm={"manufacturer": "0x7FF1", "model": "0x0001", "zzz": 1}),
        "/rdm/zzz",
        "the key 'zzz' is unknown here",
        "take it out; known here are manufacturer, model",
    ),
    (
        {key: one for key, one in fixture().items() if key != "maker"},
        "/maker",
        "the key 'maker' is missing",
        "add 'maker'",
    ),
    (
        _in_range(sets={"a": {"from": 0, "to": 1}}),
        f"{RANGE}/sets/a/unit",
        "the key 'unit' is missing",
        "add 'unit'",
    ),
    (fixture(maker=7), "/maker", "7 stands where text in quotes belongs", "write text in quotes"),
    (_in_range(to="9"), f"{RANGE}/to", '"9" stands where a whole number belongs', "write a whole number"),
    (_in_range(to=9.0), f"{RANGE}/to", "9.0 stands where a whole number belongs", "write a whole number"),
    (_in_range(snap=1), f"{RANGE}/snap", "1 stands where true or false belongs", "write true or false"),
    (fixture(modes={}), "/modes", "{} stands where a list in [ ] belongs", "write a list in [ ]"),
    (
        fixture(modes=["x"]),
        "/modes/0",
        '"x" stands where an object in { } belongs',
        "write an object in { }",
    ),
    (
        _in_range(sets={"a": 5}),
        f"{RANGE}/sets/a",
        "5 does not fit here",
        "give text in quotes, or an object",
    ),
    (
        fixture(settings=[CHOICE]),
        "/settings/0/ways/0/values/one",
        '"first" stands where a whole number belongs',
        "write a whole number",
    ),
    (
        _in_range(hazard="Reset"),
        f"{RANGE}/hazard",
        '"Reset" is not a word that is known here',
        "is 'reset' meant?",
    ),
    (
        _in_range(key="Blade 1"),
        f"{RANGE}/key",
        '"Blade 1" is not written as it must be here',
        "write small letters, digits and single hyphens, such as gobo-wheel-2",
    ),
    (
        fixture(rdm={"manufacturer": "7FF1", "model": "0x0001"}),
        "/rdm/manufacturer",
        '"7FF1" is not written as it must be here',
        "write a number such as 0x7FF1",
    ),
    (
        _in_range(hold_s=-1),
        f"{RANGE}/hold_s",
        "-1 does not fit here",
        "it should be greater than or equal to 0",
    ),
    (_in_range(**{"from": 300}), RANGE, "from 300 is above to 255", "the smaller one comes first"),
    (
        fixture(
            modes=[mode(parameter("pan", 1, span=[{"from": 0, "to": 1, "unit": "deg"}, {"unit": "deg"}]))]
        ),
        "/modes/0/parameters/0/span/1/from",
        "the key 'from' is missing",
        "add 'from'",
    ),
    (
        fixture(**{"a/b~c": 1}),
        "/a~1b~0c",
        "the key 'a/b~c' is unknown here",
        "take it out; known here are $schema, maker, model, category, standing, rdm, about, sources, "
        "settings, wheels, emitters, modes, doubts, accepted, promotions",
    ),
]


@pytest.mark.parametrize(("document", "pointer", "message", "remedy"), FAULTS)
def test_a_fault_says_where_what_and_what_instead(
    document: Json, pointer: str, message: str, remedy: str
) -> None:
    """The pointer leads to the place; what stands there is quoted; the remedy can be followed."""
    assert _faults(document)[0] == DocumentFault(pointer, message, remedy)


def test_a_fault_leads_to_the_place_in_a_rig_too() -> None:
    """Names of a map are places and not keys: the key that is unknown is looked up among a link's."""
    [fault] = _faults({"name": "Night", "links": {"2": {"gatway_hz": 44}}}, Rig)
    assert fault == DocumentFault(
        "/links/2/gatway_hz", "the key 'gatway_hz' is unknown here", "is 'gateway_hz' meant?"
    )
    [fault] = _faults({"name": "Night", "links": {"70000": {}}}, Rig)
    assert (fault.pointer, fault.remedy) == ("/links/70000", "write a universe from 1 to 63999, or other")


def test_all_faults_are_told_up_to_a_number() -> None:
    """Two faults are two; a thousand are as many as a person reads, and the line says how many more."""
    assert [fault.pointer for fault in _faults(fixture(maker=1, model=2))] == ["/maker", "/model"]
    many = fixture(settings=[{}] * 1000)
    assert len(_faults(many)) == MOST_FAULTS
    with pytest.raises(DocumentError) as caught:
        parse(json.dumps(fixture(maker=1, model=2)).encode(), Fixture, "a.json")
    assert str(caught.value) == (
        "a.json, /maker: 1 stands where text in quotes belongs (and 1 more); write text in quotes"
    )


def test_long_values_are_cut() -> None:
    """A fault quotes no more than fits on a line."""
    [fault] = _faults(fixture(category="x" * 5000))
    assert len(fault.message) < 120


@CALM
@given(st.binary(max_size=200))
@example(b"\x00")
@example(b'{"maker": NaN}')
@example(b'{"maker": "\\ud800"}')
@example(b'{"a": 1' + b"0" * 5000 + b"}")
@example(b'{"a": 1' + b"0" * 4400 + b"}")
@example(b'{"a": -1e999}')
def test_any_bytes_are_a_document_or_an_error(content: bytes) -> None:
    """Nothing but DocumentError comes out of bytes that are no document."""
    for model in (Fixture, Rig, Policy):
        with pytest.raises(DocumentError):
            parse(content, model, "a.json")


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=8,
)


@CALM
@given(fixtures(), JSON, st.sampled_from(("maker", "modes", "settings", "sources", "rdm", "x", "$schema")))
def test_any_value_anywhere_is_taken_or_told(document: Json, value: Any, key: str) -> None:
    """A strange value under a key never ends in anything but a document or a DocumentError."""
    content = json.dumps({**document, key: value}).encode()
    faults: list[DocumentFault] = []
    try:
        parse(content, Fixture, "a.json")
    except DocumentError as error:
        faults = error.faults
    for fault in faults:
        assert fault.pointer == "" or fault.pointer.startswith(f"/{key}")
        assert fault.message.isprintable()
