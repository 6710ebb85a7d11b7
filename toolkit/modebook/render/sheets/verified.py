"""What was found otherwise than planned, on paper: by position, for the person with the ladder."""

from __future__ import annotations

from collections.abc import Iterator

from modebook.render.csv_guard import Cell, csv_text
from modebook.render.findings_text import sentence
from modebook.render.sheets import cautions
from modebook.render.sheets.listing import Section, listing
from modebook.render.terminal import counted
from modebook.render.verify_text import natural
from modebook.rig.verify import Deviation, Verification

TITLES = (
    "Severity",
    "Rule",
    "Position",
    "Reach",
    "Unit",
    "Fixture",
    "To do",
    "Over RDM",
    "What differs",
    "Row of the list",
    "Row of the patch",
)
_RDM = {"yes": "yes", "no": "no", "unknown": "if it passes"}


def verify_csv(result: Verification) -> str:
    """The findings as CSV, the worst first."""
    return csv_text(TITLES, _cells(result))


def verify_page(result: Verification) -> str:
    """The comparison as a page."""
    places: dict[str, list[Deviation]] = {}
    for one in result.findings:
        places.setdefault(one.position or "no position known", []).append(one)
    sections = []
    for place, some in sorted(places.items(), key=lambda pair: natural(pair[0])):
        rows = [
            (
                one.severity,
                one.unit or "-",
                one.reach or "",
                one.fixture,
                sentence(one.task) if one.task else "-",
                _over_rdm(one),
                sentence(one.message),
            )
            for one in sorted(some, key=lambda one: (natural(one.unit), one.rule != "match-doubtful"))
        ]
        titles = ("", "Unit", "Reach", "Fixture", "To do", "Over RDM", "What differs")
        sections.append(Section(place, titles, rows, small=counted(len(rows), "finding"), tick=True))
    if not sections:
        sections.append(Section("Everything that the list tells is as planned"))
    by = ", ".join(f"{count} by {how}" for how, count in result.by.items())
    subtitle = f"{result.as_found} against {result.patch}: {result.matched} of {result.units} units found"
    return listing(
        f"{result.rig}: as found",
        subtitle + (f" ({by})" if by else "") + (f"; {result.doubtful} in doubt" if result.doubtful else ""),
        sections,
        [sentence(note) for note in result.notes],
        cautions.CREW,
    )


def _over_rdm(one: Deviation) -> str:
    return _RDM[one.rdm] if one.by_rdm else "-"


def _cells(result: Verification) -> Iterator[tuple[Cell, ...]]:
    for one in result.findings:
        yield (
            one.severity,
            one.rule,
            one.position,
            one.reach or "",
            one.unit,
            one.fixture,
            one.task,
            _RDM[one.rdm] if one.by_rdm else None,
            sentence(one.message),
            one.row,
            one.patch_row,
        )
