"""The front page: how much there is, the three questions with their counts, rigs, the newest records."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

from modebook.render.pages.kept import kept
from modebook.render.pages.links import Link, counted, find_href, fixture_href, rig_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only
from modebook.store.search import ModeQuery, find

NEWEST = 12
"""Records in the list of the newest."""

WAY_WORDS = {
    "slot": "by a slot of the mode",
    "rdm": "over RDM",
    "remote": "remotely: by a slot or over RDM",
    "menu": "at the fixture's menu",
    "app": "by an app",
    "page": "on the fixture's network page",
    "none": "it has no smoothing",
    "unknown": "not known",
}
"""How smoothing is changed, as pages say it."""


@dataclass(frozen=True, slots=True)
class Counted:
    """A link to a list, with how much is in it."""

    link: Link
    count: int


@dataclass(frozen=True, slots=True)
class RigLine:
    """A rig, and how its units' smoothing is changed."""

    link: Link
    units: int
    remote: int
    by_hand: int
    unknown: int


@dataclass(frozen=True, slots=True)
class NewRecord:
    """A fixture by the newest date among its sources."""

    link: Link
    date: str
    standing: str


@dataclass(frozen=True, slots=True)
class FrontPage:
    """All that the front page draws."""

    sizes: str
    combined: tuple[Counted, ...]
    """Questions that people ask together, each one link."""
    smoothing: tuple[Counted, ...]
    low: tuple[Counted, ...]
    rigs: tuple[RigLine, ...]
    newest: tuple[NewRecord, ...]


def front(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The front page."""
    known_only(query)
    return Drawn("front.html", kept(connection, "front", lambda: front_page(connection)))


def front_page(connection: sqlite3.Connection) -> FrontPage:
    """The front page of a database. Drafts are in no count but that of the fixtures, as in a search."""
    (fixtures,) = connection.execute("SELECT count(*) FROM fixtures").fetchone()
    (makers,) = connection.execute("SELECT count(DISTINCT maker) FROM fixtures").fetchone()
    (drafts,) = connection.execute("SELECT count(*) FROM fixtures WHERE standing = 'draft'").fetchone()
    recorded = _count(connection, {})
    told = f"{counted(fixtures, 'fixture')} of {counted(makers, 'maker')}"
    told += f", {counted(drafts, 'draft')} among them" if drafts else ""
    return FrontPage(
        sizes=f"{told}; {counted(recorded, 'mode')} on record beside the drafts'.",
        combined=tuple(
            _question(connection, label, asked)
            for label, asked in (
                (
                    "16-bit pan, smoothing changed remotely",
                    {"smoothing_by": "remote", "parameter": "pan", "bits": "16"},
                ),
                ("16-bit dimmer", {"parameter": "dimmer", "bits": "16"}),
                (
                    "16-bit dimmer, smoothing changed by a slot",
                    {"smoothing_by": "slot", "parameter": "dimmer", "bits": "16"},
                ),
                ("16-bit CIE x", {"parameter": "cie-x", "bits": "16"}),
            )
        ),
        smoothing=tuple(_question(connection, WAY_WORDS[by], {"smoothing_by": by}) for by in WAY_WORDS),
        low=low_counts(connection),
        rigs=rig_lines(connection),
        newest=_newest(connection),
    )


def _question(connection: sqlite3.Connection, label: str, asked: dict[str, str]) -> Counted:
    return Counted(Link(label, find_href(**asked)), _count(connection, asked))


def _count(connection: sqlite3.Connection, asked: dict[str, str]) -> int:
    min_bits = {asked["parameter"]: int(asked["bits"])} if "parameter" in asked else {}
    return find(
        connection, ModeQuery(smoothing_by=asked.get("smoothing_by"), min_bits=min_bits), limit=0
    ).total


def low_counts(connection: sqlite3.Connection) -> tuple[Counted, ...]:
    """What the rules on resolution found in modes, by rule."""
    rows = connection.execute(
        "SELECT rule, count(*) FROM findings WHERE rule LIKE 'coarse-%' AND mode IS NOT NULL AND rig IS NULL "
        "GROUP BY rule ORDER BY rule"
    )
    return tuple(
        Counted(Link(rule.removeprefix("coarse-").replace("-", " "), f"/low?rule={rule}"), count)
        for rule, count in rows
    )


def rig_lines(connection: sqlite3.Connection) -> tuple[RigLine, ...]:
    """The rigs by name."""
    rows = connection.execute(
        "SELECT rigs.id, rigs.name, coalesce(units, 0), coalesce(by_slot + by_rdm, 0), "
        "coalesce(by_hand_only, 0), coalesce(unknown, 0) "
        "FROM rigs LEFT JOIN rig_smoothing ON rig_smoothing.rig = rigs.id ORDER BY rigs.name, rigs.id"
    )
    return tuple(RigLine(Link(name, rig_href(rig)), *figures) for rig, name, *figures in rows)


def _newest(connection: sqlite3.Connection) -> tuple[NewRecord, ...]:
    rows = connection.execute(
        "SELECT id, maker, model, latest_source, standing FROM fixtures WHERE latest_source IS NOT NULL "
        "ORDER BY latest_source DESC, maker, model LIMIT ?",
        (NEWEST,),
    )
    return tuple(
        NewRecord(Link(f"{maker} {model}", fixture_href(identity)), date, standing)
        for identity, maker, model, date, standing in rows
    )
