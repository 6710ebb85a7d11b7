"""The rules: a list, and each rule's own explanation with its examples and what it found here."""

from __future__ import annotations

import json
import sqlite3
from dataclasses import dataclass
from functools import cache
from typing import Any

from modebook.checks.rule import Example, Rule
from modebook.render.pages.front_page import Counted
from modebook.render.pages.links import Link, rule_href
from modebook.render.pages.reply import Drawn, Place, Query, known_only, nothing_there


@dataclass(frozen=True, slots=True)
class RuleLine:
    """A rule in the list."""

    link: Link
    severity: str
    summary: str
    found: int


@dataclass(frozen=True, slots=True)
class RulesPage:
    """All rules."""

    lines: tuple[RuleLine, ...]


@dataclass(frozen=True, slots=True)
class RulePage:
    """One rule, explained."""

    name: str
    severity: str
    summary: str
    checks: tuple[str, ...]
    why: tuple[str, ...]
    bad: tuple[str, str]
    """What the example shows, and the example."""
    good: tuple[str, str]
    references: tuple[str, ...]
    found: Counted


@cache
def known_rules() -> dict[str, Rule[Any]]:
    """All rules, of fixtures and of patches."""
    from modebook.checks.registry import FIXTURE_RULES, all_rules
    from modebook.rig.rules import PACKAGE

    return {rule.name: rule for rule in all_rules(FIXTURE_RULES, PACKAGE).values()}


def rules(connection: sqlite3.Connection, _place: Place, query: Query) -> Drawn:
    """The list, with how often each fired in this catalog."""
    known_only(query)
    found = dict(connection.execute("SELECT rule, count(*) FROM findings GROUP BY rule").fetchall())
    rows = connection.execute("SELECT rule, severity, summary FROM rules ORDER BY rule")
    lines = tuple(
        RuleLine(
            Link(name, rule_href(name) if name in known_rules() else ""),
            severity,
            summary,
            found.get(name, 0),
        )
        for name, severity, summary in rows
    )
    return Drawn("rules.html", RulesPage(lines))


def rule(connection: sqlite3.Connection, place: Place, query: Query) -> Drawn:
    """One rule's page."""
    known_only(query)
    known = known_rules().get(place["rule"])
    if known is None:
        raise nothing_there(f"There is no rule {place['rule'][:80]}; /rules lists all of them.")
    (count,) = connection.execute("SELECT count(*) FROM findings WHERE rule = ?", (known.name,)).fetchone()
    return Drawn("rule.html", rule_page(known, count))


def rule_page(known: Rule[Any], count: int) -> RulePage:
    """The page of a rule that fired so many times."""
    return RulePage(
        known.name,
        known.severity,
        known.summary,
        tuple(known.checks.strip().split("\n\n")),
        tuple(known.why.strip().split("\n\n")),
        (known.bad.about, _shown(known.bad)),
        (known.good.about, _shown(known.good)),
        tuple(known.references),
        Counted(Link("in this catalog", f"/modebook/findings?rule={known.name}"), count),
    )


def _shown(example: Example) -> str:
    from modebook.shelf.canonical import form

    lines = []
    for key, value in example.content.items():
        if isinstance(value, str) and "\n" in value:
            lines.append(f"{key}:\n{value.rstrip()}")
        else:
            lines.append(f"{json.dumps(key)}: {form(value, 88)}")
    return "\n".join(lines)
