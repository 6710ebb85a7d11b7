"""An audit on paper: what is wrong by cause, then unit by unit where to go."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from modebook.checks.finding import Finding
from modebook.render.csv_guard import Cell, csv_text
from modebook.render.findings_text import sentence
from modebook.render.sheets import cautions
from modebook.render.sheets.listing import Section, listing
from modebook.render.terminal import counted
from modebook.render.verify_text import natural
from modebook.rig.audit import Audit
from modebook.rig.grouping import Cause, by_cause

FINDING_TITLES = ("Severity", "Rule", "Unit", "Row", "Position", "Fixture", "Mode", "What is wrong", "Cure")


def finding_cells(findings: Iterable[Finding]) -> Iterator[tuple[Cell, ...]]:
    """Each finding's cells below FINDING_TITLES."""
    for one in findings:
        yield (
            one.severity,
            one.rule,
            one.unit,
            one.row,
            str(one.figure.get("position") or ""),
            str(one.figure.get("fixture") or ""),
            str(one.figure.get("mode") or ""),
            sentence(one.message),
            sentence(one.help) if one.help else "",
        )


def findings_csv(findings: Iterable[Finding]) -> str:
    """The findings as CSV, in the order of the patch."""
    return csv_text(FINDING_TITLES, finding_cells(findings))


def findings_page(found: Audit, pages: Sequence[tuple[str, str]] = ()) -> str:
    """The audit as a page; `pages` are sheets beside it that it leads to."""
    told = [
        f"{count} {word}{'s' * (count != 1)}"
        for word, count in found.summary.items()
        if word != "info" and count
    ]
    told += [f"{found.summary['info']} to know"] if found.summary["info"] else []
    causes = by_cause(found.findings)
    sections = [
        Section(
            "Causes, the worst first" if causes else "Nothing is wrong",
            ("", "Rule", "Units", "Fixture, mode", "What is wrong", "Cure"),
            [_cause(cause) for cause in causes],
            small=f"{len(causes)} causes of {len(found.findings)} findings" if causes else "",
            tick=bool(causes),
        )
    ]
    places: dict[str, list[Finding]] = {}
    for one in found.findings:
        if one.severity != "info":
            places.setdefault(str(one.figure.get("position") or "no position written"), []).append(one)
    for place, some in sorted(places.items(), key=lambda pair: natural(pair[0])):
        rows = [
            (one.severity, one.unit or "-", one.row, one.rule, sentence(one.message))
            for one in sorted(some, key=lambda one: natural(one.unit or ""))
        ]
        sections.append(
            Section(
                place,
                ("", "Unit", "Row", "Rule", "What is wrong"),
                rows,
                small=counted(len(rows), "finding"),
                numbers=frozenset({2}),
            )
        )
    subtitle = f"{found.units} units; {', '.join(told) or 'no findings'}; rows are those of {found.patch}"
    return listing(f"{found.rig}: findings", subtitle, sections, found.notes, cautions.CREW, pages)


def _cause(cause: Cause) -> tuple[Cell, ...]:
    what = ", ".join(word for word in (cause.fixture, cause.mode) if word)
    more = f" ({len(cause.messages) - 1} more like it, with other figures)" if len(cause.messages) > 1 else ""
    return (
        cause.severity,
        cause.rule,
        cause.units or "-",
        what,
        sentence(cause.message) + more,
        sentence(cause.help) if cause.help else "",
    )
