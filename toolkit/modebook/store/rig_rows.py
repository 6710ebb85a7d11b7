"""From a catalog's rigs to rows: the rig, its links, its units as the catalog knows them, the audit."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from modebook.checks.bulk import INVALID
from modebook.checks.finding import Finding
from modebook.documents.rig import Link, Loss
from modebook.rig.audit import audit
from modebook.rig.fixtures import CatalogFixtures
from modebook.rig.open_rig import open_files
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.remote import remote
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import DocumentError
from modebook.shelf.rigs import PATCH_FILES, RIG_FILE, RigFiles, rig_in
from modebook.store.ids import mode_names
from modebook.store.rows import finding_rows, text_row
from modebook.store.values import Row, Rows

SHOTS_FILE = "shots.csv"
"""What a rig's list of shots is called, in the folder of its rig.json."""

_KINDS = {RIG_FILE: "rig", **dict.fromkeys(PATCH_FILES, "patch"), SHOTS_FILE: "shots"}


def rig_documents(catalog: Catalog) -> list[Row]:
    """The rows of the table `documents` for rigs: each folder, and the files in it that say something."""
    rows: list[Row] = [(_below(folder, catalog), "rig folder", 0, "") for folder in _folders(catalog)]
    for path, kind, content in _contents(catalog):
        rows.append((path, kind, len(content), hashlib.sha256(content).hexdigest()))
    return sorted(rows, key=lambda row: str(row[0]))


def _contents(catalog: Catalog) -> Iterator[tuple[str, str, bytes]]:
    """The rigs' files: path in the catalog, kind, content."""
    for folder in _folders(catalog):
        for name, kind in _KINDS.items():
            path = folder / name
            if path.is_file():
                try:
                    content = path.read_bytes()
                except OSError:
                    content = b""  # opening the rig reports it
                yield _below(path, catalog), kind, content


def rig_rows(catalog: Catalog) -> Rows:
    """All rows of all rigs. A rig that cannot be opened becomes a finding, and the rest goes on."""
    rows: Rows = {"documents": rig_documents(catalog), "rigs": [], "links": [], "units": [], "findings": []}
    rows["texts"] = sorted(text_row(path, content) for path, _, content in _contents(catalog) if content)
    fixtures = CatalogFixtures(catalog)
    for folder in _folders(catalog):
        try:
            files = rig_in(folder)
            reading = open_files(files, catalog, fixtures=fixtures)
        except ShelfError as error:
            rows["findings"].extend(_invalid(error, folder, catalog))
            continue
        _add(rows, reading, files, catalog)
    return rows


def _folders(catalog: Catalog) -> list[Path]:
    return [folder for folder in catalog.rig_folders() if not folder.name.startswith(".")]


def _below(path: Path, catalog: Catalog) -> str:
    return path.relative_to(catalog.root).as_posix()


def _invalid(error: ShelfError, folder: Path, catalog: Catalog) -> list[Row]:
    place = Path(error.file)
    # An error about something else than a file of the catalog is told of the rig's folder.
    file = _below(place if place.is_relative_to(catalog.root) else folder, catalog)
    if isinstance(error, DocumentError):
        told = [(fault.pointer, fault.message, fault.remedy) for fault in error.faults]
    else:
        told = [(error.place, error.problem, error.remedy)]
    findings = [Finding(INVALID, "error", file, *fault[:2], {}, fault[2]) for fault in told]
    return finding_rows(findings, None, [])


def _add(rows: Rows, reading: RigReading, files: RigFiles, catalog: Catalog) -> None:
    rig, name = reading.rig, files.name
    camera = rig.camera
    patch = _below(files.patch, catalog)
    rows["rigs"].append(
        (
            name,
            rig.name,
            rig.about,
            rig.refresh_hz,
            camera.fps if camera else None,
            camera.shutter_deg if camera else None,
            f"{_below(files.patch.parent, catalog)}/{RIG_FILE}" if files.rig else None,
            patch,
        )
    )
    rows["links"].extend(_link(name, universe, link) for universe, link in sorted(rig.links.items()))
    modes: dict[int, list[str]] = {}
    answers = {id(unit.row): unit for unit in remote(reading).units}
    by_mode: dict[tuple[str, int], tuple[str, str]] = {}
    for row in reading.rows:
        answer = answers.get(id(row))
        key = (row.unit.number.casefold(), id(row.mode))
        if answer is not None:
            by_mode[key] = (answer.answer, " ".join(answer.by))
        told = by_mode[key]
        reaches = reading.rig.link(row.unit.address.universe).rdm if row.unit.address else "unknown"
        ids = _mode_ids(row, modes)
        rows["units"].append(_unit(name, row, ids, (*told, reaches, int(answer is not None))))
    findings = [replace(finding, file=patch) for finding in audit(reading).findings]
    for row_told in finding_rows(findings, None, []):
        rows["findings"].append((*row_told[:10], name, *row_told[11:]))


def _mode_ids(row: PatchedRow, known: dict[int, list[str]]) -> str | None:
    if row.mode is None or row.fixture is None or row.identity is None:
        return None
    key = id(row.fixture)
    if key not in known:
        known[key] = [f"{row.identity}#{name}" for name in mode_names(row.fixture.fixture.modes)]
    return known[key][row.modes[0]]


def _link(rig: str, universe: str, link: Link) -> Row:
    loss = link.loss
    rate = loss.rate if isinstance(loss, Loss) else loss
    burst = loss.burst_packets if isinstance(loss, Loss) else None
    return (rig, universe, link.gateway_hz, link.delay_s, rate, burst, link.rdm, link.about)


def _unit(rig: str, row: PatchedRow, mode_id: str | None, smoothing: tuple[str, str, str, int]) -> Row:
    unit = row.unit
    address = unit.address
    return (
        rig,
        unit.row,
        unit.number,
        unit.fixture,
        unit.mode,
        row.identity if row.fixture is not None else None,
        mode_id,
        row.part or None,
        address.universe if address else None,
        address.address if address else None,
        row.block.footprint if row.block else None,
        unit.position or None,
        unit.purpose or None,
        unit.group or None,
        unit.throw_m,
        *smoothing,
        unit.uid or None,
        unit.serial or None,
        unit.firmware or None,
        unit.reach,
        unit.note or None,
    )
