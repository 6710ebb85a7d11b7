"""From a fixture document to the rows of its tables; pure, so that it runs in any process."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from modebook.checks.finding import Finding
from modebook.checks.reading import FixtureReading
from modebook.documents.fixture import Fixture
from modebook.store.ids import mode_names, row_number
from modebook.store.mode_rows import ModeRows
from modebook.store.search_rows import fixture_text, search_row
from modebook.store.setting_rows import setting_rows, slot_way_rows
from modebook.store.values import Rows, as_json

__all__ = ["FixtureFile", "finding_rows", "fixture_rows", "text_row"]


@dataclass(frozen=True, slots=True)
class FixtureFile:
    """Which document the rows are made of."""

    identity: str
    """``maker/model``, by its path."""
    path: str
    """Its path in the catalog, with slashes."""
    size_bytes: int
    sha256: str
    content: bytes = b""
    """The file itself, which pages draw from; nothing is kept where it is empty."""


def fixture_rows(reading: FixtureReading, file: FixtureFile, findings: list[Finding]) -> Rows:
    """All rows of a document that was taken in, by table, each table's in the order of its key.

    `reading` holds what the checks worked out already, so that it is not worked out twice.
    """
    fixture, identity = reading.fixture, file.identity
    rows: Rows = {"documents": [(file.path, "fixture", file.size_bytes, file.sha256)]}
    if file.content:
        rows["texts"] = [text_row(file.path, file.content)]
    names = [f"{identity}#{name}" for name in mode_names(fixture.modes)]
    rows["fixtures"] = [_fixture_row(fixture, file)]
    refresh_hz = reading.policy["assumed-refresh"].value
    settings = setting_rows(rows, fixture, identity, refresh_hz)
    text = fixture_text(fixture)
    for index in sorted(range(len(names)), key=names.__getitem__):
        mode, mode_id = reading.modes[index], names[index]
        made = ModeRows(mode, mode_id)
        by = slot_way_rows(rows, mode, mode_id, made.names, settings)
        rows.setdefault("modes", []).append(
            (
                row_number(mode_id),
                mode_id,
                identity,
                fixture.maker,
                fixture.model,
                mode.mode.name,
                mode.mode.number,
                mode.mode.footprint,
                fixture.category,
                fixture.standing,
                " ".join(by),
                int("slot" in by or "rdm" in by),
                mode.mode.given,
                int(mode.mode.continues),
                mode.mode.source,
                mode.mode.place,
                mode.mode.note,
                mode.pointer,
            )
        )
        made.add_to(rows)
        rows.setdefault("search", []).append(search_row(fixture, mode, mode_id, by, settings, text))
    rows["ways"].sort()
    _record_rows(rows, fixture, identity)
    rows["findings"] = finding_rows(findings, identity, names)
    return rows


def text_row(path: str, content: bytes) -> tuple[object, ...]:
    """The row of a file's content: text where it is UTF-8, else its bytes."""
    try:
        return (path, content.decode())
    except UnicodeDecodeError:
        return (path, content)


def finding_rows(
    findings: Iterable[Finding], fixture: str | None, modes: list[str]
) -> list[tuple[object, ...]]:
    """The rows of a document's findings. `modes` are the ids of its modes in the document's order."""
    rows: list[tuple[object, ...]] = []
    seen: dict[tuple[str, str, str], int] = {}
    for finding in findings:
        key = (finding.file, finding.rule, finding.pointer)
        nth = seen[key] = seen.get(key, 0) + 1
        rows.append(
            (
                *key,
                nth,
                finding.severity,
                finding.message,
                as_json(finding.figure) if finding.figure else None,
                finding.help or None,
                fixture,
                _mode_of(finding.pointer, modes),
                None,
                finding.unit,
                finding.row,
            )
        )
    return rows


def _mode_of(pointer: str, modes: list[str]) -> str | None:
    steps = pointer.split("/", 3)
    if len(steps) > 2 and steps[1] == "modes" and steps[2].isdecimal() and int(steps[2]) < len(modes):
        return modes[int(steps[2])]
    return None


def _fixture_row(fixture: Fixture, file: FixtureFile) -> tuple[object, ...]:
    return (
        row_number(file.identity),
        file.identity,
        fixture.maker,
        fixture.model,
        fixture.category,
        fixture.standing,
        fixture.rdm.manufacturer if fixture.rdm else None,
        fixture.rdm.model if fixture.rdm else None,
        fixture.about,
        max((source.date for source in fixture.sources if source.date), default=None),
        file.path,
    )


def _record_rows(rows: Rows, fixture: Fixture, identity: str) -> None:
    """Sources, wheels, emitters, doubts, acceptances, promotions."""
    rows["sources"] = sorted(
        (identity, s.key, s.title, s.revision, s.date, s.firmware, s.pages, s.language, s.note)
        for s in fixture.sources
    )
    for wheel in fixture.wheels:
        rows.setdefault("wheels", []).append((identity, wheel.key, wheel.label, wheel.source))
        for place, at in enumerate(wheel.positions, 1):
            color = at.color
            rows.setdefault("positions", []).append(
                (
                    identity,
                    wheel.key,
                    at.key,
                    place,
                    at.label,
                    color.x if color else None,
                    color.y if color else None,
                    color.filter if color else None,
                    as_json(at.between) if at.between else None,
                )
            )
    for emitter in fixture.emitters:
        rows.setdefault("emitters", []).append(
            (identity, emitter.key, emitter.label, emitter.x, emitter.y, emitter.peak_nm, emitter.source)
        )
    for nth, doubt in enumerate(fixture.doubts, 1):
        settled = doubt.settled
        rows.setdefault("doubts", []).append(
            (
                identity,
                doubt.pointer,
                nth,
                as_json(doubt.slots) if doubt.slots else None,
                doubt.place,
                doubt.printed,
                doubt.read,
                doubt.why,
                int(settled is None),
                settled.by if settled else None,
                settled.date if settled else None,
                settled.decision if settled else None,
            )
        )
    for nth, one in enumerate(fixture.accepted, 1):
        rows.setdefault("accepted", []).append(
            (identity, one.rule, one.pointer, nth, one.reason, one.by, one.date)
        )
    for nth, rise in enumerate(fixture.promotions, 1):
        rows.setdefault("promotions", []).append((identity, rise.to, rise.date, rise.by, nth, rise.note))
