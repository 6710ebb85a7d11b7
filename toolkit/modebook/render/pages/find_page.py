"""The list of modes that answer a search: words and filters, with counts for each way to change smoothing."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass, replace

from modebook.render.pages.front_page import WAY_WORDS, Counted
from modebook.render.pages.kept import kept
from modebook.render.pages.links import Link, counted, find_href, fixture_href
from modebook.render.pages.reply import Drawn, Place, Query, choice, known_only, number, one, refused
from modebook.store.errors import SearchError
from modebook.store.search import SMOOTHING_BY, FoundMode, ModeQuery, find
from modebook.words.e120 import CATEGORIES
from modebook.words.parameters import PARAMETERS
from modebook.words.records import STANDINGS

PAGE = 50
"""Modes on one page."""
LAST_PAGE = 400
LONGEST_TEXT = 200

SEARCHED = (
    "q",
    "smoothing_by",
    "length",
    "parameter",
    "bits",
    "footprint",
    "category",
    "standing",
    "drafts",
    "address",
)
"""What an address may ask a search by."""


@dataclass(frozen=True, slots=True)
class ModeLine:
    """One mode of the list."""

    link: Link
    mode: str
    number: int | None
    footprint: int
    given: str
    ways: str
    category: str
    standing: str


@dataclass(frozen=True, slots=True)
class FindPage:
    """All that the list draws."""

    asked: dict[str, str]
    """The address's parameters, as the form shows them."""
    total: int
    told: str
    lines: tuple[ModeLine, ...]
    ways: tuple[Counted, ...]
    """The same question with each way to change smoothing."""
    parameters: tuple[str, ...]
    smoothing: tuple[tuple[str, str], ...]
    categories: tuple[str, ...]
    standings: tuple[str, ...]
    before: str
    after: str
    """Addresses of the pages beside this one; empty where there is none."""
    json: str


def found(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The page. Refuses what is not in the vocabulary."""
    known_only(query, *SEARCHED, "page")
    return Drawn("find.html", find_page(connection, query))


def asked_modes(query: Query) -> ModeQuery:
    """The question in an address's parameters. Raises PageError."""
    bits = number(query, "bits", 1, 32)
    parameter = one(query, "parameter")
    if parameter and parameter not in PARAMETERS:
        raise refused(f"There is no parameter {parameter[:40]!r} in the vocabulary; see /words.")
    if bits is not None and not parameter:
        raise refused(f"bits is {bits}, but no parameter is named that should have them.")
    return ModeQuery(
        text=one(query, "q")[:LONGEST_TEXT],
        smoothing_by=choice(query, "smoothing_by", SMOOTHING_BY) or None,
        smoothing_length_packets=number(query, "length", 0, 100_000),
        min_bits={parameter: bits} if parameter and bits else {},
        has=(parameter,) if parameter and not bits else (),
        max_footprint=number(query, "footprint", 0, 65_536),
        category=choice(query, "category", tuple(map(str, CATEGORIES))) or None,
        standing=choice(query, "standing", tuple(STANDINGS)) or None,
        include_drafts=choice(query, "drafts", ("1",)) == "1",
    )


def find_page(connection: sqlite3.Connection, query: Query) -> FindPage:
    """The list that answers."""
    asked = {name: one(query, name)[:LONGEST_TEXT] for name in (*SEARCHED, "page") if one(query, name)}
    modes = asked_modes(query)
    page = number(query, "page", 1, LAST_PAGE, 1) or 1
    address = number(query, "address", 1, 512)
    try:
        answer = find(connection, modes, page * PAGE)
        ways = tuple(
            Counted(
                Link(words, find_href(**{**asked, "smoothing_by": by, "page": ""})),
                count,
            )
            for (by, words), count in zip(WAY_WORDS.items(), _by_way(connection, modes), strict=True)
        )
    except SearchError as error:
        raise refused(f"{error}.") from error
    shown = answer.modes[(page - 1) * PAGE :]
    more = answer.total > page * PAGE and page < LAST_PAGE
    told = counted(answer.total, "mode")
    if answer.total > PAGE and shown:
        told += f", {(page - 1) * PAGE + 1} to {(page - 1) * PAGE + len(shown)} of them here"
    return FindPage(
        asked=asked,
        total=answer.total,
        told=told,
        lines=tuple(_line(mode, address) for mode in shown),
        ways=ways,
        parameters=tuple(sorted(PARAMETERS)),
        smoothing=tuple(WAY_WORDS.items()),
        categories=kept(connection, "categories", lambda: _categories(connection)),
        standings=tuple(STANDINGS),
        before=find_href(**{**asked, "page": str(page - 1)}) if page > 1 else "",
        after=find_href(**{**asked, "page": str(page + 1)}) if more else "",
        json="/-/search.json?" + find_href(**{**asked, "page": ""}).partition("?")[2],
    )


def _by_way(connection: sqlite3.Connection, modes: ModeQuery) -> tuple[int, ...]:
    """How many modes answer the same question with each way, in the order of WAY_WORDS.

    Kept, since whoever pages or changes the way asks for the same counts again.
    """
    asked = replace(modes, smoothing_by=None)
    return kept(
        connection,
        f"ways {asked}",
        lambda: tuple(find(connection, replace(asked, smoothing_by=by), 0).total for by in WAY_WORDS),
    )


def _categories(connection: sqlite3.Connection) -> tuple[str, ...]:
    """Those that any fixture is of."""
    rows = connection.execute("SELECT DISTINCT category FROM fixtures ORDER BY category")
    return tuple(category for (category,) in rows)


def _line(mode: FoundMode, address: int | None) -> ModeLine:
    return ModeLine(
        Link(f"{mode.maker} {mode.model}", fixture_href(mode.fixture, mode.mode, address)),
        mode.mode,
        mode.number,
        mode.footprint,
        mode.given or "",
        ways_words(mode.smoothing_by),
        mode.category,
        mode.standing,
    )


def ways_words(by: list[str]) -> str:
    """``slot, RDM, menu``; ``has none``; ``unknown``."""
    words = {"rdm": "RDM", "none": "has none"}
    return ", ".join(words.get(one, one) for one in by)
