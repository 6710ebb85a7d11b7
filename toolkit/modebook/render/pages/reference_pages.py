"""Pages to look things up: the words, how figures are computed, and how scripts ask."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass
from itertools import groupby

from modebook.documents.policy import Threshold
from modebook.render.pages.reply import Drawn, Place, Query, known_only


@dataclass(frozen=True, slots=True)
class WordLine:
    """A parameter of the vocabulary, or another word."""

    word: str
    name: str
    unit: str
    label: str
    about: str


@dataclass(frozen=True, slots=True)
class WordsPage:
    """The vocabulary, family by family, and the words of the trade as the pages use them."""

    families: tuple[tuple[str, tuple[WordLine, ...]], ...]
    terms: tuple[tuple[str, str], ...]


TERMS = (
    ("fixture", "a model of light, as its maker sells it"),
    ("unit", "one fixture in a rig, with its unit number"),
    ("mode", "one of a fixture's slot layouts; RDM calls it a personality and numbers it (ANSI E1.20)"),
    ("slot", "one byte of a DMX512 packet; slot 1 of a mode sits at the unit's start address (ANSI E1.11)"),
    ("footprint", "how many slots a mode takes (ANSI E1.20)"),
    ("coarse, fine", "the more and the less significant byte of one parameter"),
    ("packet", "one DMX512 update of a universe; a frame is always a camera's"),
    ("setting", "something a fixture remembers about itself, such as smoothing or its dimmer curve"),
    ("smoothing", "the fixture filling in between the packets it hears, at the cost of running behind them"),
    ("length", "how many packets, or how long, a smoothing choice looks at; unknown is never taken for zero"),
    ("way", "how a setting is changed: by a slot, over RDM, at the menu, by an app or the fixture's page"),
    ("remote", "a way that needs no hand on the fixture: by a slot of the mode in use, or over RDM"),
    ("finding", "one fault found by a rule, with its place and its figure"),
    ("standing", "how far a record can be trusted: draft, transcribed, second-read, proved"),
)
"""The words that pages use, each the trade's daily one or an open standard's."""


@dataclass(frozen=True, slots=True)
class FiguresPage:
    """Every threshold and assumption, with its source."""

    thresholds: tuple[Threshold, ...]


@dataclass(frozen=True, slots=True)
class Example:
    """An address that a script may ask."""

    about: str
    address: str


@dataclass(frozen=True, slots=True)
class ApiPage:
    """Examples that work against this very catalog."""

    examples: tuple[Example, ...]
    queries: tuple[Example, ...]


def words(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The vocabulary."""
    known_only(query)
    rows = connection.execute(
        "SELECT words.family, word, words.name, unit, slot_labels.name, about FROM words "
        "LEFT JOIN slot_labels ON slot_labels.number = words.slot_label ORDER BY words.family, word"
    ).fetchall()
    families = tuple(
        (family, tuple(WordLine(row[1], row[2], row[3] or "", row[4] or "", row[5] or "") for row in some))
        for family, some in groupby(rows, key=lambda row: row[0])
    )
    return Drawn("words.html", WordsPage(families, TERMS))


def figures(_connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """How figures are computed, and what they are compared with."""
    from modebook.documents.policy import house_policy

    known_only(query)
    return Drawn("figures.html", FiguresPage(tuple(house_policy().thresholds)))


def api(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The API page."""
    known_only(query)
    row = connection.execute(
        "SELECT id FROM fixtures WHERE standing <> 'draft' ORDER BY id LIMIT 1"
    ).fetchone()
    identity = row[0] if row else "maker/model"
    return Drawn(
        "api.html",
        ApiPage(
            examples=(
                Example("Search, as the front page does while one types", "/-/search.json?q=pan&limit=5"),
                Example(
                    "Modes with a 16-bit pan of which smoothing is changed remotely",
                    "/-/search.json?smoothing_by=remote&parameter=pan&bits=16&limit=100",
                ),
                Example("A fade, with and without smoothing", "/-/fade.json?bits=8&seconds=4&from=20&to=0"),
                Example("A fixture's document", f"/fixtures/{identity}/document.json"),
                Example("A fixture's chart sheet as CSV", f"/fixtures/{identity}/chart.csv"),
                Example("A table as an array of objects", "/modebook/modes.json?_shape=array&_size=5"),
                Example("A table as CSV, all rows", "/modebook/units.csv?_stream=on"),
                Example("A table filtered by a column", "/modebook/ways.json?way=rdm&_shape=array&_size=5"),
                Example(
                    "SQL, read only and limited to two seconds",
                    "/modebook.json?sql=select+word,+count(*)+from+parameters+group+by+word&_shape=array",
                ),
            ),
            queries=(
                Example(
                    "Who allows smoothing to be changed remotely",
                    "/modebook/who-allows-remote-smoothing-change.json?parameter=pan&min_bits=16&_shape=array",
                ),
                Example(
                    "What a mode's slots do",
                    "/modebook/what-a-modes-slots-do.json?words=&_shape=array&_size=5",
                ),
                Example(
                    "Where resolution is low", "/modebook/where-is-resolution-low.json?maker=&_shape=array"
                ),
                Example(
                    "Units of a rig that change smoothing remotely",
                    "/modebook/units-that-allow-remote-smoothing-change.json?rig=&_shape=array",
                ),
            ),
        ),
    )
