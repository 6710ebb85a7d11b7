"""Where resolution is low: what the coarse rules found, by rule and maker, with the figure."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

from modebook.render.pages.front_page import Counted, low_counts
from modebook.render.pages.links import Link, counted, fixture_href, rule_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only, one, refused, short

MOST = 200
"""Findings on the page; the table of all is datasette's."""


@dataclass(frozen=True, slots=True)
class LowLine:
    """One finding."""

    severity: str
    rule: Link
    fixture: Link
    mode: str
    parameter: str
    bits: int | None
    message: str
    help: str


@dataclass(frozen=True, slots=True)
class LowPage:
    """All that the page draws."""

    rule: str
    maker: str
    told: str
    lines: tuple[LowLine, ...]
    counts: tuple[Counted, ...]
    all: str
    """The address of datasette's table with all of them."""


def low(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The page; a rule that is none of the coarse ones is refused."""
    known_only(query, "rule", "maker")
    rule, maker = one(query, "rule"), one(query, "maker")[:200]
    known = [row[0] for row in connection.execute("SELECT rule FROM rules WHERE rule LIKE 'coarse-%'")]
    if rule and rule not in known:
        raise refused(f"rule is {short(rule)!r}; it may be {', '.join(known)}.")
    return Drawn("low.html", low_page(connection, rule, maker))


def low_page(connection: sqlite3.Connection, rule: str = "", maker: str = "") -> LowPage:
    """What was found, worst first; `maker` may be a part of the maker's name."""
    where = "rule LIKE 'coarse-%' AND findings.mode IS NOT NULL AND findings.rig IS NULL"
    values: list[object] = []
    if rule:
        where += " AND rule = ?"
        values.append(rule)
    if maker:
        where += " AND instr(lower(modes.maker), lower(?)) > 0"
        values.append(maker)
    join = "findings JOIN modes ON modes.id = findings.mode"
    (total,) = connection.execute(f"SELECT count(*) FROM {join} WHERE {where}", values).fetchone()
    rows = connection.execute(
        "SELECT findings.severity, rule, modes.fixture, modes.maker, modes.model, modes.mode, "
        "(SELECT name || char(10) || bits FROM parameters WHERE parameters.mode = modes.id AND "
        "(parameters.pointer = findings.pointer OR substr(findings.pointer, 1, length(parameters.pointer) + "
        "1) = parameters.pointer || '/') LIMIT 1), message, help "
        f"FROM {join} WHERE {where} ORDER BY "
        "CASE findings.severity WHEN 'error' THEN 0 WHEN 'warning' THEN 1 ELSE 2 END, modes.rowid, "
        f"findings.pointer LIMIT {MOST}",
        values,
    )
    lines = []
    for severity, found, fixture, by, model, mode, parameter, message, helped in rows:
        name, _, bits = (parameter or "").partition("\n")
        lines.append(
            LowLine(
                severity,
                Link(found, rule_href(found)),
                Link(f"{by} {model}", fixture_href(fixture, mode)),
                mode,
                name,
                int(bits) if bits else None,
                message,
                helped or "",
            )
        )
    told = counted(total, "finding") + (f", the first {MOST} here" if total > MOST else "")
    every = "/modebook/low_resolution" + (f"?rule={rule}" if rule else "")
    return LowPage(rule, maker, told, tuple(lines), low_counts(connection), every)
