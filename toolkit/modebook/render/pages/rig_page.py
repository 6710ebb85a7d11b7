"""A rig's page: its units with addresses, ways and findings, its universes drawn, its plan of the day."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass, replace

from modebook.checks.finding import Finding
from modebook.render.pages.front_page import RigLine, rig_lines
from modebook.render.pages.kept import kept
from modebook.render.pages.links import Link, counted, fixture_href, rig_href, rule_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only, nothing_there, one
from modebook.render.sheets.cautions import CREW
from modebook.render.sheets.crew import CrewLine, UniverseSheet, by_universe, crew_lines
from modebook.rig.gathered import units_once
from modebook.rig.reading import RigReading
from modebook.store.documents import rig_of, text_of

NOWHERE = "(none)"
"""What a filter calls units without a position or group."""


@dataclass(frozen=True, slots=True)
class RigsPage:
    """All rigs."""

    lines: tuple[RigLine, ...]


@dataclass(frozen=True, slots=True)
class UnitRow:
    """A unit, with what it is filtered by."""

    line: CrewLine
    fixture_href: str
    rules: tuple[Link, ...]
    shown: bool = True
    """Whether the filters leave it; the others are there too, hidden, so that a script can filter at once."""


@dataclass(frozen=True, slots=True)
class RigFinding:
    """A finding of the rig."""

    severity: str
    rule: Link
    unit: str
    message: str
    help: str


@dataclass(frozen=True, slots=True)
class RigPage:
    """All that the page draws."""

    rig: str
    name: str
    about: str
    facts: str
    units: tuple[UnitRow, ...]
    shown: int
    total: int
    positions: tuple[str, ...]
    groups: tuple[str, ...]
    rules: tuple[str, ...]
    asked: dict[str, str]
    universes: tuple[UniverseSheet, ...]
    findings: tuple[RigFinding, ...]
    plan_href: str
    """Empty where the rig has no shots."""
    caution: str
    all: str


def rigs(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The list of rigs."""
    known_only(query)
    return Drawn("rigs.html", RigsPage(rig_lines(connection)))


def opened(connection: sqlite3.Connection, rig: str) -> RigReading:
    """A rig of the database. Raises PageError where there is none."""
    reading = rig_of(connection, rig)
    if reading is None:
        raise nothing_there(f"There is no rig {rig[:80]} here; /rigs lists all of them.")
    return reading


def rig(connection: sqlite3.Connection, place: Place, query: Query) -> Drawn:
    """A rig's page; `position`, `group` and `finding` leave some of its units."""
    known_only(query, "position", "group", "finding")
    asked = {name: one(query, name) for name in ("position", "group", "finding") if one(query, name)}
    name = place["rig"]
    return Drawn(
        "rig.html", filtered(kept(connection, f"rig {name}", lambda: _whole(connection, name)), asked)
    )


def filtered(page: RigPage, asked: dict[str, str]) -> RigPage:
    """The page with those of its units shown that the filters leave."""
    units = tuple(replace(unit, shown=_matches(unit, asked)) for unit in page.units)
    return replace(page, units=units, shown=sum(unit.shown for unit in units), asked=asked)


def _whole(connection: sqlite3.Connection, name: str) -> RigPage:
    reading = opened(connection, name)
    rows = connection.execute(
        "SELECT rule, severity, file, pointer, message, help, unit, row FROM findings WHERE rig = ?", (name,)
    )
    findings = [
        Finding(rule, severity, file, pointer, message, {}, help_ or "", unit, row)
        for rule, severity, file, pointer, message, help_, unit, row in rows
    ]
    has_shots = text_of(connection, f"rigs/{name}/shots.csv") is not None
    return rig_page(reading, findings, has_shots)


def rig_page(reading: RigReading, findings: list[Finding], has_shots: bool) -> RigPage:
    """The page of a rig with its findings as the database has them, no unit left out."""
    lines = crew_lines(reading, findings)
    by_row: dict[int, list[str]] = {}
    for finding in findings:
        if finding.row is not None:
            by_row.setdefault(finding.row, []).append(finding.rule)
    units = []
    for row in units_once(reading):
        line = lines[row.unit.row]
        same = [number for number, other in lines.items() if other is line]
        fired = sorted({rule for number in same for rule in by_row.get(number, ())})
        mode = row.mode.mode.name if row.mode else ""
        href = fixture_href(row.identity, mode) if row.fixture is not None and row.identity else ""
        units.append(UnitRow(line, href, tuple(Link(rule, rule_href(rule)) for rule in fired)))
    camera = reading.rig.camera
    facts = [counted(len(units), "unit"), counted(len(reading.universes), "universe")]
    facts += [f"{reading.rig.refresh_hz:g} packets a second"] if reading.rig.refresh_hz else []
    facts += [f"camera {camera.fps:g} frames a second, shutter {camera.shutter_deg:g}°"] if camera else []
    return RigPage(
        rig=reading.name,
        name=reading.rig.name,
        about=reading.rig.about or "",
        facts=", ".join(facts),
        units=tuple(units),
        shown=len(units),
        total=len(units),
        positions=_values(unit.line.position for unit in units),
        groups=_values(unit.line.group for unit in units),
        rules=tuple(sorted({link.words for unit in units for link in unit.rules})),
        asked={},
        universes=tuple(by_universe(reading, lines)),
        findings=tuple(
            RigFinding(
                one.severity, Link(one.rule, rule_href(one.rule)), one.unit or "", one.message, one.help
            )
            for one in sorted(findings, key=lambda each: ("error", "warning", "info").index(each.severity))
        ),
        plan_href=f"{rig_href(reading.name)}/plan" if has_shots else "",
        caution=CREW,
        all=rig_href(reading.name),
    )


def _matches(unit: UnitRow, asked: dict[str, str]) -> bool:
    line = unit.line
    return (
        ("position" not in asked or asked["position"] == (line.position or NOWHERE))
        and ("group" not in asked or asked["group"] == (line.group or NOWHERE))
        and ("finding" not in asked or asked["finding"] in [link.words for link in unit.rules])
    )


def _values(values: Iterable[str]) -> tuple[str, ...]:
    from modebook.render.verify_text import natural

    found = sorted({value for value in values if value}, key=natural)
    return (*found, NOWHERE)
