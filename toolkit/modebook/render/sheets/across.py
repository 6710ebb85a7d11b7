"""All rigs on paper: whose smoothing can be changed and how, what is too coarse, what has no record."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from modebook.render.csv_guard import Cell, csv_text
from modebook.render.sheets.listing import Section, listing
from modebook.rig.across import RigDemands, UsingMode
from modebook.rig.grouping import unit_ranges
from modebook.rig.remote import RigRemote, UnitRemote

Answers = Sequence[tuple[RigRemote, RigDemands, Sequence[UsingMode]]]

TITLES = (
    "Rig",
    "Unit",
    "Row",
    "Fixture",
    "Mode",
    "Position",
    "Smoothing changed by",
    "RDM passes",
    "Too coarse",
    "Record",
)
_ANSWERS = {
    "slot": "by a slot",
    "rdm": "only over RDM",
    "hand": "only by hand",
    "none": "has none",
    "unknown": "unknown",
}


def rigs_csv(answers: Answers) -> str:
    """Every unit of every rig as CSV."""
    return csv_text(TITLES, _cells(answers))


def rigs_page(answers: Answers, identity: str | None = None) -> str:
    """The answers as a page; with `identity` (``maker/model``) also who uses that fixture."""
    counts: list[tuple[Cell, ...]] = []
    for one, left, _ in answers:
        reaches = one.rdm_reaches
        kinds = [len(one.of(answer)) for answer in ("slot", "rdm", "hand", "none", "unknown")]
        reached = f"{reaches['yes']} of {sum(reaches.values())}"
        counts.append(
            (
                one.rig,
                len(one.units),
                *kinds[:2],
                reached,
                *kinds[2:],
                len(left.unmet),
                len(left.without_record),
            )
        )
    titles = (
        "Rig",
        "Units",
        "By slot",
        "Only RDM",
        "It reaches",
        "Only hand",
        "None",
        "Unknown",
        "Too coarse",
        "No record",
    )
    sections = [Section("Smoothing, resolution, records", titles, counts, numbers=frozenset(range(1, 10)))]
    if identity is not None:
        rows = [
            (
                one.rig,
                mode.mode + ("" if mode.known else " (no such mode)"),
                len(mode.units),
                unit_ranges(mode.units),
            )
            for one, _, modes in answers
            for mode in modes
        ]
        sections.insert(
            0,
            Section(f"Who uses {identity}", ("Rig", "Mode", "Units", "Which"), rows, numbers=frozenset({2})),
        )
    for one, left, _ in answers:
        kinds_of: list[tuple[Cell, ...]] = []
        for answer, words in _ANSWERS.items():
            names: dict[tuple[str, str], list[UnitRemote]] = {}
            for unit in one.of(answer):  # type: ignore[arg-type]
                names.setdefault(_model(unit), []).append(unit)
            kinds_of += [
                (words, *name, unit_ranges(unit.row.unit.number for unit in some))
                for name, some in sorted(names.items())
            ]
        notes = []
        if left.unmet:
            notes.append(f"Too coarse somewhere: {unit_ranges(each.row.unit.number for each in left.unmet)}.")
        if left.without_record:
            notes.append(f"No record: {unit_ranges(row.unit.number for row in left.without_record)}.")
        sections.append(Section(one.rig, ("Smoothing", "Fixture", "Mode", "Units"), kinds_of, notes=notes))
    title = "Rigs" if identity is None else f"Rigs that use {identity}"
    return listing(title, f"{len(answers)} rig{'s' * (len(answers) != 1)}", sections)


def _model(unit: UnitRemote) -> tuple[str, str]:
    row = unit.row
    if row.fixture is None:
        return f"{row.unit.fixture} (no record)", row.unit.mode
    fixture = row.fixture.fixture
    return (
        f"{fixture.maker} {fixture.model}",
        row.mode.mode.name if row.mode else f"{row.unit.mode} (no such mode)",
    )


def _cells(answers: Answers) -> Iterator[tuple[Cell, ...]]:
    for one, left, _ in answers:
        coarse = {
            each.row.unit.row: ", ".join(sorted({finding.rule for finding in each.findings}))
            for each in left.unmet
        }
        for unit in one.units:
            row = unit.row
            fixture, mode = _model(unit)
            yield (
                one.rig,
                row.unit.number,
                row.unit.row,
                fixture,
                mode,
                row.unit.position,
                _ANSWERS[unit.answer],
                unit.rdm_reaches,
                coarse.get(row.unit.row, ""),
                "none" if row.fixture is None else row.fixture.fixture.standing,
            )
