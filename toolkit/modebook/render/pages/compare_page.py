"""Two fixtures, or two modes, side by side by meaning."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass

from modebook.documents.fixture import Fixture
from modebook.intake.compare import compare, compare_modes, mode_pairs
from modebook.intake.errors import PickError
from modebook.intake.picking import one_mode
from modebook.render.compare_text import difference_row, heading_of
from modebook.render.pages.fixture_page import taken
from modebook.render.pages.links import Link, fixture_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only, one, refused

MOST = 1000
"""Differences on the page: two documents that share nothing differ in everything."""


@dataclass(frozen=True, slots=True)
class Side:
    """One of the two."""

    link: Link
    identity: str
    mode: str
    modes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ComparePage:
    """All that the page draws; without a second side it asks for one."""

    a: Side | None
    b: Side | None
    asked_a: str
    asked_b: str
    groups: tuple[tuple[str, tuple[tuple[str, str, str], ...]], ...]
    """Heading, and rows: where, what A says, what B says."""
    count: int
    left_out: int


def compared(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The page: `a` and `b` are ``maker/model``; `mode_a`, `mode_b` pick a mode of each."""
    known_only(query, "a", "b", "mode_a", "mode_b")
    asked_a, asked_b = one(query, "a"), one(query, "b")
    a = taken(connection, asked_a) if asked_a else None
    b = taken(connection, asked_b) if asked_b else None
    mode_a, mode_b = one(query, "mode_a"), one(query, "mode_b")
    if a is not None and b is None and mode_b:
        b, asked_b = a, asked_a
    return Drawn("compare.html", compare_page(asked_a, a, mode_a, asked_b, b, mode_b))


def compare_page(
    asked_a: str, a: Fixture | None, mode_a: str, asked_b: str, b: Fixture | None, mode_b: str
) -> ComparePage:
    """The page. With a mode on one side alone, the mode of its name is looked for on the other."""
    side_a = _side(asked_a, a, mode_a)
    if a is None or b is None:
        return ComparePage(side_a, _side(asked_b, b, mode_b), asked_a, asked_b, (), 0, 0)
    try:
        if mode_a or mode_b:
            first, second = one_mode(a, mode_a or mode_b), one_mode(b, mode_b or mode_a)
            pairs: Mapping[int, int] = {first: second}
            differences = compare_modes(a, first, b, second)
            mode_a, mode_b = a.modes[first].name, b.modes[second].name
        else:
            pairs, differences = mode_pairs(a, b), compare(a, b)
    except PickError as error:
        raise refused(f"{str(error)[:400]}") from error
    groups: dict[str, list[tuple[str, str, str]]] = {}
    for difference in differences[:MOST]:
        row = difference_row(a, b, difference, differences)
        if row is not None:
            groups.setdefault(heading_of(a, b, difference, pairs), []).append(row)
    return ComparePage(
        _side(asked_a, a, mode_a),
        _side(asked_b, b, mode_b),
        asked_a,
        asked_b,
        tuple((heading, tuple(rows)) for heading, rows in groups.items()),
        sum(map(len, groups.values())),
        max(len(differences) - MOST, 0),
    )


def _side(identity: str, record: Fixture | None, mode: str) -> Side | None:
    if record is None:
        return None
    name = f"{record.maker} {record.model}" + (f", {mode}" if mode else "")
    return Side(
        Link(name, fixture_href(identity, mode)), identity, mode, tuple(one.name for one in record.modes)
    )
