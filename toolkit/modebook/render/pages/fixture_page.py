"""The page of a fixture: modes side by side, charts, settings with what to send, findings, sources."""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from modebook.checks.finding import SEVERITIES
from modebook.documents.bits import bits
from modebook.documents.cases import CaseError, mode_named
from modebook.documents.fixture import Fixture, Source
from modebook.documents.layout import all_parameters
from modebook.documents.modes import Mode
from modebook.documents.policy import house_policy
from modebook.documents.ways import smoothing_by
from modebook.render.chart_rows import chart_lines
from modebook.render.pages.find_page import ways_words
from modebook.render.pages.fixture_chart import ModeChart, mode_chart
from modebook.render.pages.fixture_settings import SettingBlock, setting_blocks
from modebook.render.pages.links import Link, compare_href, fade_href, fixture_href, rule_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only, nothing_there, number, one, refused
from modebook.render.pointer_words import in_words, mode_number
from modebook.store.documents import fixture_of
from modebook.words.parameters import PARAMETERS

MOST_ROWS = 220
"""Rows of charts on one page; a fixture with more shows one mode at a time."""


@dataclass(frozen=True, slots=True)
class FoundHere:
    """A finding about the fixture."""

    severity: str
    rule: Link
    where: str
    message: str
    help: str
    mode: int | None


@dataclass(frozen=True, slots=True)
class ModeColumn:
    """A mode beside the others."""

    link: Link
    shown: bool
    number: int | None
    footprint: int
    given: str
    ways: str
    remote: bool
    findings: str
    bits: dict[str, str]
    fade: str
    compare: str


@dataclass(frozen=True, slots=True)
class SentIn:
    """What to send in one mode."""

    anchor: str
    mode: str
    blocks: tuple[SettingBlock, ...]


@dataclass(frozen=True, slots=True)
class DoubtLine:
    """An open doubt."""

    where: str
    printed: str
    read: str
    why: str


@dataclass(frozen=True, slots=True)
class FixturePage:
    """All that the page draws."""

    identity: str
    maker: str
    model: str
    category: str
    standing: str
    about: str
    rdm: str
    address: int | None
    mode: str
    """The one mode that is asked for; empty for all."""
    columns: tuple[ModeColumn, ...]
    rows: tuple[tuple[str, str], ...]
    """Words of parameters, and their names, in the order of the charts."""
    charts: tuple[ModeChart, ...]
    left_out: int
    """Modes whose charts are a link away, so that the page stays light."""
    sent: tuple[SentIn, ...]
    refresh_hz: float
    findings: tuple[FoundHere, ...]
    doubts: tuple[DoubtLine, ...]
    sources: tuple[Source, ...]
    href: str


def fixture(connection: sqlite3.Connection, place: Place, query: Query) -> Drawn:
    """The page; a fixture that is not there is a 404, a mode that it lacks a 400."""
    known_only(query, "mode", "address")
    identity = f"{place['maker']}/{place['model']}"
    record = taken(connection, identity)
    rows = connection.execute(
        "SELECT severity, rule, pointer, message, help FROM findings WHERE fixture = ? AND rig IS NULL",
        (identity,),
    ).fetchall()
    address = number(query, "address", 1, 512)
    return Drawn("fixture.html", fixture_page(identity, record, rows, one(query, "mode"), address))


def taken(connection: sqlite3.Connection, identity: str) -> Fixture:
    """The record of a fixture. Raises PageError where the database has none."""
    record = fixture_of(connection, identity)
    if record is None:
        raise nothing_there(f"There is no fixture {identity[:80]} here.")
    return record


def fixture_page(
    identity: str, record: Fixture, findings: Sequence[Sequence[str]], mode: str, address: int | None
) -> FixturePage:
    """The page. findings: severity, rule, pointer, message, help of each."""
    told = tuple(_finding(record, row) for row in _worst_first(findings))
    chosen = _chosen(record, mode)
    shown = [chosen] if chosen is not None else _light(record)
    refresh_hz = house_policy()["assumed-refresh"].value
    columns = tuple(
        _column(identity, record, index, told, index in shown, address) for index in range(len(record.modes))
    )
    rdm = f"{record.rdm.manufacturer}:{record.rdm.model}" if record.rdm else ""
    return FixturePage(
        identity=identity,
        maker=record.maker,
        model=record.model,
        category=record.category,
        standing=record.standing,
        about=record.about or "",
        rdm=rdm,
        address=address,
        mode=record.modes[chosen].name if chosen is not None else "",
        columns=columns,
        rows=_words(record.modes),
        charts=tuple(mode_chart(record, index, address) for index in shown),
        left_out=len(record.modes) - len(shown),
        sent=tuple(_sent(record, index, refresh_hz, address) for index in shown) if record.settings else (),
        refresh_hz=refresh_hz,
        findings=told,
        doubts=tuple(
            DoubtLine(in_words(record, one.pointer), one.printed or "", one.read or "", one.why)
            for one in record.open_doubts
        ),
        sources=tuple(record.sources),
        href=fixture_href(identity),
    )


def _chosen(record: Fixture, mode: str) -> int | None:
    """The place of the mode that is asked for; None for all. Raises PageError."""
    if not mode:
        return None
    try:
        found = mode_named(record, mode)
    except CaseError as error:
        raise refused(f"{str(error)[:400]}.") from error
    return next(index for index, each in enumerate(record.modes) if each is found)


def _light(record: Fixture) -> list[int]:
    """The modes whose charts are on the page when none is asked for: all, or as many as stay light."""
    shown: list[int] = []
    rows = 0
    for index in range(len(record.modes)):
        rows += len(chart_lines(record, index))
        if shown and rows > MOST_ROWS:
            break
        shown.append(index)
    return shown


def _sent(record: Fixture, index: int, refresh_hz: float, address: int | None) -> SentIn:
    mode = record.modes[index]
    return SentIn(f"set-{index + 1}", mode.name, setting_blocks(record, mode, refresh_hz, address))


def _column(
    identity: str,
    record: Fixture,
    index: int,
    findings: Sequence[FoundHere],
    shown: bool,
    address: int | None,
) -> ModeColumn:
    mode = record.modes[index]
    by = list(smoothing_by(record, mode))
    found: dict[str, set[int]] = {}
    for parameter, _ in all_parameters(mode):
        found.setdefault(parameter.parameter, set()).add(bits(parameter))
    href = f"#mode-{index + 1}" if shown else fixture_href(identity, mode.name, address)
    return ModeColumn(
        link=Link(mode.name, href),
        shown=shown,
        number=mode.number,
        footprint=mode.footprint,
        given=mode.given or "",
        ways=ways_words([str(one) for one in by]),
        remote="slot" in by or "rdm" in by,
        findings=_counts(one.severity for one in findings if one.mode == index),
        bits={
            word: ", ".join(str(one) if one else "-" for one in sorted(some)) for word, some in found.items()
        },
        fade=fade_href(fixture=identity, mode=mode.name),
        compare=compare_href(a=identity, mode_a=mode.name),
    )


def _words(modes: Sequence[Mode]) -> tuple[tuple[str, str], ...]:
    found = dict.fromkeys(one.parameter for mode in modes for one, _ in all_parameters(mode))
    return tuple((word, PARAMETERS[word].name) for word in found)


def _counts(severities: Iterable[str]) -> str:
    counts = Counter(severities)
    told = [f"{counts[one]} {one}{'s' * (counts[one] != 1)}" for one in SEVERITIES[:2] if counts[one]]
    return ", ".join(told)


def _worst_first(findings: Sequence[Sequence[str]]) -> list[Sequence[str]]:
    order: list[str] = list(SEVERITIES)
    return sorted(findings, key=lambda row: order.index(row[0]))


def _finding(record: Fixture, row: Sequence[str]) -> FoundHere:
    severity, rule, pointer, message, help_ = row
    return FoundHere(
        severity,
        Link(rule, rule_href(rule)),
        in_words(record, pointer),
        message,
        help_ or "",
        mode_number(pointer),
    )
