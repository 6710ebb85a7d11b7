"""The front page and the lists count what the documents say, not what the index says."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest

from modebook.documents.bits import bits
from modebook.documents.fixture import Fixture
from modebook.documents.layout import all_parameters
from modebook.documents.ways import smoothing_by
from modebook.render.pages.find_page import FindPage, found
from modebook.render.pages.front_page import front_page
from modebook.render.pages.kept import kept
from modebook.render.pages.low_page import low
from modebook.render.pages.reply import Drawn, PageError, Raw
from modebook.render.pages.search_reply import search
from modebook.shelf.catalog import Catalog
from modebook.shelf.reading import read_fixture
from modebook.store.build import build
from support.program import CATALOG


@pytest.fixture(scope="module")
def database(tmp_path_factory: pytest.TempPathFactory) -> Iterator[sqlite3.Connection]:
    """The demo catalog's."""
    path = tmp_path_factory.mktemp("lists") / "modebook.sqlite"
    build(Catalog(CATALOG), path)
    connection = sqlite3.connect(path)
    yield connection
    connection.close()


@pytest.fixture(scope="module")
def documents() -> list[Fixture]:
    """All that the demo catalog holds."""
    return [read_fixture(path) for path in sorted((CATALOG / "fixtures").glob("*/*.json"))]


def lines(database: sqlite3.Connection, query: dict[str, list[str]]) -> FindPage:
    """The list that answers."""
    answer = found(database, {}, query)
    assert isinstance(answer, Drawn)
    assert isinstance(answer.page, FindPage)
    return answer.page


def remote_pan(documents: list[Fixture]) -> set[tuple[str, str]]:
    """Modes with a 16-bit pan of which smoothing is changed remotely, by a look at every document."""
    return {
        (f"{one.maker} {one.model}", mode.name)
        for one in documents
        if one.standing != "draft"
        for mode in one.modes
        if any(p.parameter == "pan" and bits(p) >= 16 for p, _ in all_parameters(mode))
        and {"slot", "rdm"} & set(smoothing_by(one, mode))
    }


def test_the_question_of_the_front_page_leads_to_its_count(
    database: sqlite3.Connection, documents: list[Fixture]
) -> None:
    """16-bit pan with remote smoothing: as many as the documents have, and the very same modes."""
    question = front_page(database).combined[0]
    wanted = remote_pan(documents)
    assert question.count == len(wanted) > 0
    page = lines(database, parse_qs(urlsplit(question.link.href).query))
    assert {(line.link.words, line.mode) for line in page.lines} == wanted


def test_every_link_of_the_front_page_counts_what_its_list_has(database: sqlite3.Connection) -> None:
    """A count beside a link is the list's own."""
    front = front_page(database)
    for one in (*front.combined, *front.smoothing):
        assert lines(database, parse_qs(urlsplit(one.link.href).query)).total == one.count, one.link


def test_the_newest_records_come_by_their_sources_dates(
    database: sqlite3.Connection, documents: list[Fixture]
) -> None:
    """The latest date of a record's sources decides."""
    dates = sorted(
        (max(s.date for s in one.sources if s.date) for one in documents if any(s.date for s in one.sources)),
        reverse=True,
    )
    shown = [one.date for one in front_page(database).newest]
    assert shown == dates[: len(shown)]


def test_the_start_address_goes_on_to_the_fixtures_pages(database: sqlite3.Connection) -> None:
    """Whoever typed it need not type it again."""
    page = lines(database, {"parameter": ["pan"], "address": ["101"]})
    assert all(parse_qs(urlsplit(line.link.href).query)["address"] == ["101"] for line in page.lines)


def test_pages_of_a_list_join_without_gap_or_overlap(
    database: sqlite3.Connection, documents: list[Fixture]
) -> None:
    """Walking on by the links gives every mode once."""
    seen: list[tuple[str, str]] = []
    query: dict[str, list[str]] = {"drafts": ["1"]}
    for _ in range(20):
        page = lines(database, query)
        seen += [(line.link.words, line.mode) for line in page.lines]
        if not page.after:
            break
        query = parse_qs(urlsplit(page.after).query)
    assert len(seen) == len(set(seen)) == sum(len(one.modes) for one in documents)


@pytest.mark.parametrize(
    "query",
    [
        {"smoothing_by": ["wish"]},
        {"parameter": ["pann"]},
        {"bits": ["16"]},
        {"parameter": ["pan"], "bits": ["0"]},
        {"page": ["0"]},
        {"address": ["513"]},
        {"category": ["lamp"]},
        {"x": ["1"]},
    ],
)
def test_what_cannot_be_answered_is_a_400(database: sqlite3.Connection, query: dict[str, list[str]]) -> None:
    """By the list and by the search alike."""
    with pytest.raises(PageError) as refused:
        found(database, {}, query)
    assert refused.value.status == 400
    assert len(refused.value.message) < 300


def test_the_search_answers_with_pages_addresses(database: sqlite3.Connection) -> None:
    """Every hit leads to its mode's page; `limit` bounds them, `total` does not."""
    answer = search(database, {}, {"q": ["torvane"], "limit": ["2"]})
    assert isinstance(answer, Raw)
    told: dict[str, Any] = json.loads(answer.body)
    assert len(told["modes"]) == 2 < told["total"]
    assert all(mode["href"].startswith(f"/fixtures/{mode['fixture']}?mode=") for mode in told["modes"])


def test_low_resolution_counts_add_up(database: sqlite3.Connection) -> None:
    """The rules' counts come to the list of all; a rule that is none of these is refused."""
    page: Any = low(database, {}, {}).page  # type: ignore[union-attr]
    assert sum(one.count for one in page.counts) == len(page.lines) > 0
    with pytest.raises(PageError, match="coarse-"):
        low(database, {}, {"rule": ["slot-twice"]})


def test_what_is_kept_is_made_once_for_a_file(database: sqlite3.Connection, tmp_path: Path) -> None:
    """And again for another file, and for each asking of one in memory."""
    made: list[int] = []

    def make() -> int:
        made.append(1)
        return len(made)

    assert kept(database, "a test", make) == kept(database, "a test", make) == 1
    other = sqlite3.connect(tmp_path / "other.sqlite")
    other.execute("CREATE TABLE a (b)")
    assert kept(other, "a test", make) == 2
    other.close()
    memory = sqlite3.connect(":memory:")
    assert [kept(memory, "a test", make), kept(memory, "a test", make)] == [3, 4]
    memory.close()
