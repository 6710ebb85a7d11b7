"""A comparison with the fixtures as found, for people: what differs, then what to do, by position."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import groupby

from modebook.render.findings_text import SEVERITY_STYLE, sentence
from modebook.render.terminal import paint, printed, table, wrapped
from modebook.rig.grouping import unit_ranges
from modebook.rig.verify import Deviation, Verification

_TITLES = {"error": "Errors", "warning": "Warnings", "info": "To know"}
_CAUTION = (
    "Work at height, electrical work and rigging belong to qualified people and local codes; warn everyone "
    "before a head moves or a lamp strikes."
)
_DIGITS = re.compile(r"([0-9]+)")


def verify_text(result: Verification) -> str:
    """The comparison as text. Ends in what to do, by position."""
    out = [paint(f"{result.rig}: {result.as_found} against {result.patch}", "bold"), _matched(result)]
    out += [sentence(note) for note in result.notes]
    out.append("")
    for severity, group in groupby(result.findings, key=lambda one: one.severity):
        out.append(paint(f"{_TITLES[severity]} ({result.summary[severity]})", SEVERITY_STYLE[severity]))
        for rule, same in groupby(group, key=lambda one: one.rule):
            out.append(f"  {paint(rule, 'bold')}")
            out += _paragraphs(list(same))
        out.append("")
    tasks = [one for one in result.findings if one.task]
    if tasks:
        out += [paint("By position", "bold"), by_position(tasks), wrapped(_CAUTION, "")]
    elif not result.findings:
        out.append("Everything that the list tells is as planned.")
    return "\n".join(out).rstrip() + "\n"


def by_position(findings: Sequence[Deviation]) -> str:
    """What to do, one line a task, by position and unit; ``yes``: it can be done over RDM, which passes."""
    rows = [
        (
            one.position or "unknown",
            one.reach or "unknown",
            one.unit or "-",
            one.fixture,
            one.task,
            _over_rdm(one),
        )
        for one in sorted(findings, key=_on_the_way)
    ]
    return printed(
        table(
            [
                ("position", "left"),
                ("reach", "left"),
                ("unit", "left"),
                ("fixture", "left"),
                ("to do", "left"),
                ("over RDM", "left"),
            ],
            rows,
        )
    )


def _on_the_way(one: Deviation) -> tuple[object, ...]:
    """By position, then unit; who it is comes before what to set."""
    return (not one.position, natural(one.position), natural(one.unit), one.rule != "match-doubtful")


def natural(words: str) -> list[tuple[int, int, str]]:
    """A key that sorts numbers in words by their size: Truss 2 before Truss 10."""
    return [
        (0, int(piece[:18]), "") if piece.isdigit() and piece.isascii() else (1, 0, piece)
        for piece in _DIGITS.split(words.casefold())
        if piece
    ]


def _over_rdm(one: Deviation) -> str:
    """Whether RDM can do a task, as far as the rig says whether it passes."""
    if not one.by_rdm:
        return "-"
    return {"yes": "yes", "no": "no", "unknown": "if it passes"}[one.rdm]


def _matched(result: Verification) -> str:
    by = ", ".join(f"{count} by {how}" for how, count in result.by.items())
    words = f"{result.matched} of {result.units} units found in {result.rows} rows"
    words += f" ({by})" if by else ""
    return f"{words}; {result.doubtful} in doubt." if result.doubtful else f"{words}."


def _paragraphs(findings: list[Deviation]) -> list[str]:
    """The findings of one rule; those with one sentence together."""
    by_message: dict[tuple[str, str], list[Deviation]] = {}
    for one in findings:
        by_message.setdefault((one.fixture, one.message), []).append(one)
    out = []
    for (fixture, message), same in by_message.items():
        units = unit_ranges(one.unit for one in same)
        rows = [one.row for one in same if one.row is not None]
        place = f"  row{'s' * (len(rows) != 1)} {', '.join(map(str, rows))} of the list" if rows else ""
        what = f"  {paint(fixture, 'dim')}" if fixture else ""
        out.append(f"    unit {paint(units or '-', 'bold')}{place}{what}")
        out.append(wrapped(sentence(message), "      "))
    return out
