"""A search finds what reading every document by hand would find, whatever is typed."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import product
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.documents.layout import all_parameters
from modebook.documents.modes import Mode
from modebook.documents.ways import reached_by, slot_ways, smoothing_by, smoothing_settings
from modebook.shelf.catalog import Catalog, data_folder
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import read_fixture
from modebook.store.build import build
from modebook.store.errors import SearchError
from modebook.store.opening import open_database
from modebook.store.search import FoundMode, ModeQuery, find

Pair = tuple[Fixture, Mode]


@dataclass(frozen=True)
class Asked:
    """A question, and the same put to a document in hand."""

    query: ModeQuery
    holds: Callable[[Pair], bool]


@pytest.fixture(scope="module")
def pairs() -> list[Pair]:
    """Every mode of the demo catalog, by reading."""
    found: list[Pair] = []
    for path in Catalog(data_folder("catalog")).fixture_files():
        try:
            fixture = read_fixture(path)
        except ShelfError:
            continue
        found.extend((fixture, mode) for mode in fixture.modes)
    return found


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Iterator[sqlite3.Connection]:
    """The demo catalog's database."""
    path = tmp_path_factory.mktemp("search") / "db.sqlite"
    build(Catalog(data_folder("catalog")), path)
    connection = open_database(path)
    yield connection
    connection.close()


def _bits(pair: Pair, word: str) -> int:
    return max((8 * len(p.slots) for p, _ in all_parameters(pair[1]) if p.parameter == word), default=0)


def _has(pair: Pair, word: str) -> bool:
    for parameter, _ in all_parameters(pair[1]):
        if parameter.slots and (
            parameter.parameter == word or any(piece.parameter == word for piece in parameter.ranges)
        ):
            return True
    return False


def _by(pair: Pair, by: str) -> bool:
    ways = smoothing_by(*pair)
    return "slot" in ways or "rdm" in ways if by == "remote" else by in ways


def _lengths(pair: Pair, by: str | None) -> set[float]:
    """Lengths in packets (seconds at 30 a second, in whole packets) that the ways asked for lead to."""
    fixture, mode = pair
    found: set[float] = set()
    for setting in smoothing_settings(fixture):
        reached = {("slot", w.choice) for w in slot_ways(mode) if w.setting == setting.key}
        reached |= {(way.by, choice) for way in setting.ways for choice in reached_by(way, setting)}
        for choice in setting.choices:
            ways = {way for way, key in reached if key == choice.key}
            wanted = {"slot", "rdm"} if by == "remote" else {by} if by else ways
            if choice.length is None or not ways & wanted:
                continue
            for one in choice.length.durations:
                found.add(one.packets if one.packets is not None else round((one.seconds or 0) * 30))
    return found


def _key(fixture: Fixture, mode: Mode) -> tuple[str, str, str, int | None, int]:
    return (fixture.maker, fixture.model, mode.name, mode.number, mode.footprint)


def _found(mode: FoundMode) -> tuple[str, str, str, int | None, int]:
    return (mode.maker, mode.model, mode.mode, mode.number, mode.footprint)


BY = ("slot", "rdm", "remote", "menu", "app", "page", "none", "unknown")
QUESTIONS = [
    *[Asked(ModeQuery(smoothing_by=by), lambda pair, by=by: _by(pair, by)) for by in BY],
    *[
        Asked(
            ModeQuery(smoothing_by=by, smoothing_length_packets=length),
            lambda pair, by=by, length=length: (by is None or _by(pair, by)) and length in _lengths(pair, by),
        )
        for by, length in product((None, "slot", "rdm", "remote", "menu"), (0, 1, 2, 4, 8, 15, 2.5))
    ],
    *[
        Asked(ModeQuery(min_bits={word: bits}), lambda pair, word=word, bits=bits: _bits(pair, word) >= bits)
        for word, bits in product(("pan", "dimmer", "hue", "color-temperature", "cie-x"), (1, 8, 9, 16, 24))
    ],
    *[
        Asked(ModeQuery(has=[word]), lambda pair, word=word: _has(pair, word))
        for word in ("hue", "color-temperature", "strobe", "gobo-wheel", "fan", "dimmer", "fog-output")
    ],
    *[
        Asked(ModeQuery(max_footprint=most), lambda pair, most=most: pair[1].footprint <= most)
        for most in (0, 1, 8, 20, 600)
    ],
    *[
        Asked(ModeQuery(category=word), lambda pair, word=word: pair[0].category == word)
        for word in ("fixed", "moving yoke", "moving mirror", "atmospheric effect")
    ],
    Asked(ModeQuery(standing="draft"), lambda pair: pair[0].standing == "draft"),
    Asked(ModeQuery(standing="proved"), lambda pair: pair[0].standing == "proved"),
    Asked(
        ModeQuery(smoothing_by="remote", min_bits={"pan": 16, "tilt": 16}, has=["zoom"], max_footprint=60),
        lambda pair: (
            _by(pair, "remote")
            and _bits(pair, "pan") >= 16
            and _bits(pair, "tilt") >= 16
            and _has(pair, "zoom")
            and pair[1].footprint <= 60
        ),
    ),
]


@pytest.mark.parametrize("asked", QUESTIONS, ids=lambda asked: str(asked.query)[10:80])
def test_a_search_agrees_with_reading_every_document(
    asked: Asked, database: sqlite3.Connection, pairs: list[Pair]
) -> None:
    """The index answers as the documents do, drafts left out unless they are asked for."""
    drafts = asked.query.standing == "draft"
    expected = sorted(
        (_key(f, m) for f, m in pairs if asked.holds((f, m)) and (drafts or f.standing != "draft")), key=repr
    )
    found = find(database, asked.query)
    assert sorted(map(_found, found.modes), key=repr) == expected
    assert found.total == len(expected)


def test_the_questions_have_answers(database: sqlite3.Connection) -> None:
    """The comparison above compares something: most questions find some modes of the demo, and not all."""
    totals = [find(database, asked.query).total for asked in QUESTIONS]
    everything = find(database, ModeQuery(include_drafts=True)).total
    assert sum(0 < total < everything for total in totals) > len(totals) / 2


def test_each_mode_tells_its_own_ways(database: sqlite3.Connection, pairs: list[Pair]) -> None:
    """What a result says of smoothing is what its document says."""
    told = {_found(mode): mode.smoothing_by for mode in find(database, ModeQuery(include_drafts=True)).modes}
    assert told == {_key(f, m): list(smoothing_by(f, m)) for f, m in pairs}


def test_drafts_are_left_out_unless_asked_for(database: sqlite3.Connection, pairs: list[Pair]) -> None:
    """With or without anything else asked."""
    for query in (ModeQuery(), ModeQuery(smoothing_by="unknown"), ModeQuery(max_footprint=512)):
        assert all(mode.standing != "draft" for mode in find(database, query).modes)
    assert find(database, ModeQuery(include_drafts=True)).total == len(pairs)


@pytest.mark.parametrize("limit", [0, 1, 5, 1000])
def test_a_limit_gives_the_first_ones_and_the_true_total(database: sqlite3.Connection, limit: int) -> None:
    """However many answer, the first ones are those that come first among all."""
    for query in (
        ModeQuery(),
        ModeQuery(smoothing_by="remote"),
        ModeQuery(text="co"),
        ModeQuery(max_footprint=9),
    ):
        whole = find(database, query)
        part = find(database, query, limit)
        assert (part.total, part.modes) == (whole.total, whole.modes[:limit])


def test_results_come_by_maker_model_and_number(database: sqlite3.Connection) -> None:
    """In the order in which a person would look for them; modes without a number come first."""
    modes = find(database, ModeQuery(include_drafts=True)).modes
    keys = [(mode.maker, mode.model, mode.number or 0, mode.mode) for mode in modes]
    assert keys == sorted(keys)


def test_text_is_found_in_names_labels_meanings_and_by_beginnings(
    database: sqlite3.Connection, pairs: list[Pair]
) -> None:
    """Every maker's name, and its beginning, finds exactly that maker's modes among others that say it."""
    for maker in {fixture.maker for fixture, _ in pairs}:
        expected = {_key(f, m) for f, m in pairs if f.maker == maker and f.standing != "draft"}
        for text in (maker, maker.upper(), maker[:-1]):
            assert expected <= set(map(_found, find(database, ModeQuery(text=text)).modes))
    for fixture, mode in pairs:
        for parameter, _ in all_parameters(mode):
            for words in [parameter.label, *[piece.meaning for piece in parameter.ranges]]:
                if words and any(sign.isalnum() for sign in words):
                    query = ModeQuery(text=words, include_drafts=True)
                    assert _key(fixture, mode) in set(map(_found, find(database, query).modes)), words
            break


def test_marks_are_not_found_by_text(database: sqlite3.Connection) -> None:
    """The words by which exact questions are answered do not turn up in free text."""
    for text in ("is_recorded", "has_pan", "by_remote", "length_2"):
        for mode in find(database, ModeQuery(text=text)).modes:
            row = database.execute("SELECT * FROM search WHERE mode = ?", (mode.id,)).fetchone()
            words = " ".join(str(piece) for piece in row[1:-1]).casefold()
            assert all(piece in words for piece in text.split("_"))


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None, max_examples=300)
@given(text=st.text(max_size=40))
@example(text='"')
@example(text="pan OR tilt NOT (")
@example(text="marks : by_slot")
@example(text="* ^ NEAR(a b, 3) -x")
@example(text="'; DROP TABLE modes; --")
@example(text="ㄱ①²ǅ")
@example(text="é")
def test_whatever_is_typed_is_a_question(database: sqlite3.Connection, text: str) -> None:
    """No text is an error, and none changes or breaks the query around it."""
    found = find(database, ModeQuery(text=text), 5)
    assert len(found.modes) <= 5
    assert found.total <= find(database, ModeQuery()).total


@pytest.mark.parametrize(
    ("query", "told"),
    [
        (ModeQuery(smoothing_by="slots"), "slot, rdm, remote"),
        (ModeQuery(has=["panning"]), "pan"),
        (ModeQuery(min_bits={"dimer": 8}), "dimmer"),
        (ModeQuery(min_bits={"pan": 0}), "1 to 32"),
        (ModeQuery(min_bits={"pan": 33}), "1 to 32"),
        (ModeQuery(max_footprint=-1), "-1"),
        (ModeQuery(category="moving yolk"), "moving yoke"),
        (ModeQuery(standing="proven"), "proved"),
        (ModeQuery(smoothing_length_packets=-1), "-1"),
        (ModeQuery(smoothing_length_packets=float("nan")), "nan"),
    ],
)
def test_a_word_that_is_not_known_is_refused(
    database: sqlite3.Connection, query: ModeQuery, told: str
) -> None:
    """Nothing is guessed: the line names what was asked and what may have been meant."""
    with pytest.raises(SearchError, match=told):
        find(database, query)


def test_keys_of_the_json_stay(database: sqlite3.Connection) -> None:
    """People script on these keys."""
    told = find(database, ModeQuery(), 1).to_json()
    modes = told["modes"]
    assert isinstance(modes, list)
    assert {"maker", "model", "mode", "number", "footprint", "smoothing_by"} <= modes[0].keys()


def test_the_database_is_read_only(database: sqlite3.Connection) -> None:
    """Asking never writes."""
    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        database.execute("DELETE FROM modes")


def test_a_search_in_a_damaged_file_is_told_in_one_line(tmp_path: Path) -> None:
    """A file that broke in the middle: what is wrong and what to run."""
    from modebook.store.errors import StoreError
    from modebook.store.opening import clear_errors

    path = tmp_path / "db.sqlite"
    build(Catalog(data_folder("catalog")), path)
    content = bytearray(path.read_bytes())
    for at in range(40_000, len(content), 4096):
        content[at : at + 3000] = b"\xa5" * 3000
    path.write_bytes(content)
    with pytest.raises(StoreError, match="modebook build"), clear_errors(path):
        find(open_database(path), ModeQuery(text="a"))
