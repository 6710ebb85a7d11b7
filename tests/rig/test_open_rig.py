"""A rig is found by its name, its folder or its patch file, and what is wrong with it is one line."""

from __future__ import annotations

import json
from pathlib import Path

import openpyxl
import pytest

from modebook.rig.audit import audit
from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.rigs import rigs_of

PATCH = "unit,fixture,mode,address\n1,Par,Wide,1/1\n2,Par,Wide,1/5\n"
PAR = {
    "maker": "Invented",
    "model": "Par",
    "category": "fixed",
    "standing": "draft",
    "modes": [{"name": "Wide", "footprint": 8, "parameters": []}],
}


@pytest.fixture
def catalog(tmp_path: Path) -> Catalog:
    """A fixture, and a rig called pier."""
    rig = tmp_path / "rigs" / "pier"
    rig.mkdir(parents=True)
    (rig / "patch.csv").write_text(PATCH)
    (rig / "rig.json").write_text(json.dumps({"name": "The pier", "refresh_hz": 40}))
    file = tmp_path / "fixtures" / "invented" / "par.json"
    file.parent.mkdir(parents=True)
    file.write_text(json.dumps(PAR))
    return Catalog(tmp_path)


def test_a_rig_is_found_by_name_folder_file_and_rig_json(catalog: Catalog):
    """All four mean the same rig, with its rig.json."""
    folder = catalog.rigs / "pier"
    for told in ("pier", folder, folder / "patch.csv", folder / "rig.json"):
        reading = open_rig(told, catalog)
        assert reading.rig.refresh_hz == 40
        assert [row.identity for row in reading.rows] == ["invented/par"] * 2
        assert reading.policy["assumed-refresh"].value == 40
    assert [files.name for files in rigs_of(catalog)] == ["pier"]


def test_a_patch_alone_has_the_defaults(catalog: Catalog, tmp_path: Path):
    """30 packets a second, nothing known of links; a workbook will do."""
    book = openpyxl.Workbook()
    for line in PATCH.splitlines():
        book.active.append(line.split(","))
    book.save(tmp_path / "tour.xlsx")
    reading = open_rig(tmp_path / "tour.xlsx", catalog)
    assert (reading.name, reading.rig.refresh_hz) == ("tour", 30)
    assert [finding.rule for finding in audit(reading).findings if finding.severity == "error"] == [
        "address-overlap"
    ]


def test_a_sheet_is_chosen_by_its_name(catalog: Catalog, tmp_path: Path):
    """The first with titles is read unless another is named."""
    book = openpyxl.Workbook()
    for name in ("Stage", "Floor"):
        sheet = book.create_sheet(name)
        sheet.append(["unit", "fixture", "mode", "address"])
        sheet.append([name, "Par", "Wide", "1/1"])
    book.save(tmp_path / "tour.xlsx")
    for name, told in (("Stage", None), ("Floor", "Floor")):
        reading = open_rig(tmp_path / "tour.xlsx", catalog, sheet=told)
        assert [row.unit.number for row in reading.rows] == [name]


def test_a_unit_that_only_rig_json_knows_is_told(catalog: Catalog):
    """Someone renumbered the patch."""
    path = catalog.rigs / "pier" / "rig.json"
    path.write_text(json.dumps({"name": "P", "units": {"1": {"reach": "lift"}, "9": {"reach": "floor"}}}))
    reading = open_rig("pier", catalog)
    assert audit(reading).notes == ("rig.json speaks of units that the patch lacks: 9",)
    assert [row.reach for row in reading.rows] == ["lift", None]


def line(told: object, catalog: Catalog) -> str:
    with pytest.raises(ShelfError) as error:
        open_rig(str(told), catalog)
    assert "\n" not in str(error.value)
    return str(error.value).replace(str(catalog.root), "CATALOG")


def test_what_cannot_be_opened_is_told_in_a_line(catalog: Catalog):
    """A wrong name, an empty folder, two patches, a threshold nobody knows, a torn rig.json."""
    assert line("peer", catalog) == "peer: no such rig, folder or file; is pier meant?"
    assert line("../pier", catalog).startswith("../pier: no such rig, folder or file")
    pier = catalog.rigs / "pier"
    (pier / "rig.json").write_text(json.dumps({"name": "P", "policy": {"pan-step": 1}}))
    assert line("pier", catalog).startswith(
        "CATALOG/rigs/pier/rig.json, /policy/pan-step: the policy has no threshold 'pan-step'; it has "
    )
    (pier / "rig.json").write_text('{"name": ')
    assert line("pier", catalog).startswith("CATALOG/rigs/pier/rig.json: not JSON: ")
    (pier / "patch.ods").write_text("")
    assert line("pier", catalog) == (
        "CATALOG/rigs/pier: patch.csv and patch.ods are both in it; keep one, or name the one that is meant"
    )
    (pier / "patch.csv").unlink()
    (pier / "patch.ods").unlink()
    assert line(pier, catalog) == (
        "CATALOG/rigs/pier: no patch is in it; put patch.csv or patch.xlsx or patch.ods there"
    )


def test_a_record_that_cannot_be_read_is_a_finding_and_the_rest_goes_on(catalog: Catalog):
    """The fixture's document is torn; the units are told, one line each."""
    (catalog.fixtures / "invented" / "par.json").write_text('{"maker": 3}')
    found = audit(open_rig("pier", catalog)).findings
    assert [(finding.rule, finding.unit) for finding in found] == [
        ("unknown-fixture", "1"),
        ("unknown-fixture", "2"),
    ]
    assert found[0].message.startswith("the record of Par cannot be read: ")
    assert "\n" not in found[0].message
