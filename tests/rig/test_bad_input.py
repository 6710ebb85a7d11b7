"""Everything that a spreadsheet does to a patch, through the audit: the cell is named, the rest goes on."""

from __future__ import annotations

import datetime
import io

import openpyxl
import pytest

from modebook.checks.finding import Finding
from modebook.documents.rig import Rig
from modebook.rig.audit import Audit, audit
from modebook.rig.examples import rig_of
from modebook.rig.fixtures import GivenFixtures
from modebook.rig.patch_reading import patch_from_table
from modebook.rig.reading import RigReading
from modebook.rig.titles import KNOWN
from modebook.shelf.tables import table_from_bytes

PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}
TWO = {
    "model": "Wand",
    "modes": [
        {
            "name": "Two starts",
            "footprint": 8,
            "parameters": [],
            "parts": [{"key": "yoke", "footprint": 4}, {"key": "head", "footprint": 4}],
        }
    ],
}


def of_bytes(content: bytes, path: str) -> Audit:
    patch = patch_from_table(table_from_bytes(content, path, KNOWN))
    fixtures = rig_of({"fixtures": [PAR, TWO], "patch": "unit,fixture,mode,address\n"}).fixtures
    assert isinstance(fixtures, GivenFixtures)
    return audit(RigReading("rig", Rig(name="rig"), patch, fixtures))


def of_text(text: str, encoding: str = "utf-8") -> Audit:
    return of_bytes(text.encode(encoding), "patch.csv")


def of_sheet(*rows, merge=(), formats=None) -> Audit:
    book = openpyxl.Workbook()
    sheet = book.active
    for row in rows:
        sheet.append(row)
    for cells in merge:
        sheet.merge_cells(cells)
    for cell, told in (formats or {}).items():
        sheet[cell].number_format = told
    out = io.BytesIO()
    book.save(out)
    return of_bytes(out.getvalue(), "patch.xlsx")


def places(found: Audit) -> list[tuple[int | None, str]]:
    """Row and column of each fault of a row."""
    return [(f.row, f.pointer) for f in found.findings if f.rule == "bad-row"]


def only(found: Audit) -> Finding:
    (finding,) = [f for f in found.findings if f.rule == "bad-row"]
    return finding


TITLES = "Unit,Fixture,Mode,Universe,Address"


def test_a_sound_patch_in_every_dress_is_the_same_patch():
    """A byte order mark, UTF-16, semicolons, tabs, Windows line ends: two units, no fault."""
    text = f"{TITLES}\n1,Par,Wide,1,1\n12A,Par,Wide,1,9\n"
    for dressed in (
        text,
        text.replace(",", ";"),
        text.replace(",", "\t"),
        text.replace("\n", "\r\n"),
    ):
        for encoding in ("utf-8", "utf-8-sig", "utf-16"):
            found = of_text(dressed, encoding)
            assert (found.units, found.findings) == (2, []), (dressed, encoding)
            assert found.universes[0].slots_used == 16


def test_two_rows_of_titles_blank_rows_headings_and_totals_are_no_units():
    """Rows keep the numbers that the file gives them."""
    found = of_text(
        "DMX,DMX,,,\nUniverse,Address,Unit,Fixture,Mode\n"
        ",,,,\n,,FRONT TRUSS,,\n1,1,1,Par,Wide\n,,,,\n1,600,2,Par,Wide\n,,Total,2,\n"
    )
    assert found.units == 2
    assert places(found) == [(7, "Address")]


def test_cells_merged_over_rows_hold_in_each_and_merged_titles_are_found():
    """One universe written once over three units; titles over two rows."""
    found = of_sheet(
        ["Unit", "Fixture", "DMX", None, "Mode"],
        [None, None, "Universe", "Address", None],
        [1, "Par", 3, 1, "Wide"],
        [2, "Par", None, 9, "Wide"],
        [3, "Par", None, 17, "Wide"],
        merge=("A1:A2", "B1:B2", "C1:D1", "E1:E2", "C3:C5"),
    )
    assert found.findings == []
    assert [(load.universe, load.slots_used) for load in found.universes] == [(3, 24)]


@pytest.mark.parametrize("throw", ["8,5", "8.5", "8,5 m"])
def test_decimal_commas_are_read(throw):
    """In a file parted by semicolons, as such countries have it."""
    found = of_text(f"Unit;Fixture;Mode;Universe;Address;Throw\n1;Par;Wide;1;1;{throw}\n")
    assert found.findings == []


@pytest.mark.parametrize(
    "cell", ["02-Oct", "2-Oct-26", "Oct 2", "2026-10-02", "10/2/2026", "2.10.2026", "02.10.26"]
)
def test_a_date_where_an_address_was_is_said_and_not_guessed(cell):
    """As a CSV keeps what a sheet made of 2/10 or 10/2."""
    found = of_text(f"Unit,Fixture,Mode,Address\n1,Par,Wide,{cell}\n2,Par,Wide,2/20\n")
    finding = only(found)
    assert (finding.unit, finding.row, finding.pointer) == ("1", 2, "Address")
    assert "a date" in finding.message
    assert found.universes[0].slots_used == 8


def test_a_date_in_a_sheet_is_a_date_however_it_is_shown():
    """2/101 has become the first of February 101 or of a year near it; the file says date."""
    found = of_sheet(
        ["Unit", "Fixture", "Mode", "Address"],
        [1, "Par", "Wide", datetime.date(2026, 2, 10)],
        [2, "Par", "Wide", datetime.datetime(1901, 2, 1, 0, 0)],
        [3, "Par", "Wide", "2/20"],
        formats={"A2": "0", "D2": "m/d", "D3": "m/yy"},
    )
    assert places(found) == [(2, "Address"), (3, "Address")]
    assert all("a date" in f.message for f in found.findings)


@pytest.mark.parametrize(("universe", "address"), [("A", "1"), ("", "B/101"), ("", "A101")])
def test_a_universe_by_letter_is_refused_with_what_would_be_right(universe, address):
    """Nobody says that A is 1."""
    found = of_text(f"{TITLES}\n1,Par,Wide,{universe},{address}\n")
    finding = only(found)
    assert "by letter" in finding.message
    assert finding.row == 2


def test_an_address_that_lost_its_zeros_is_refused_and_one_that_kept_them_is_read():
    """2.100 and 2.1 are one number to a sheet; as text 2.100 has only one reading."""
    found = of_sheet(
        ["Unit", "Fixture", "Mode", "Address"],
        [1, "Par", "Wide", 2.1],
        [2, "Par", "Wide", "2.100"],
        [3, "Par", "Wide", 2.101],
    )
    finding = only(found)
    assert (finding.unit, finding.row) == ("1", 2)
    assert "2/1 or 2/10 or 2/100" in finding.message
    # Both of the others were read: 2/100 to 2/107 meets 2/101 to 2/108.
    assert [f.unit for f in found.findings if f.rule == "address-overlap"] == ["3"]


def test_what_is_no_fault_is_none():
    """12A is a number; one unit over two rows has two start addresses; twins are for information."""
    found = of_text(
        "Unit,Fixture,Mode,Part,Address\n12,Par,Wide,,1/1\n12A,Par,Wide,,1/9\n12B,Par,Wide,,1/9\n"
        "7,Wand,Two starts,yoke,1/17\n7,Wand,Two starts,head,2/1\n"
    )
    assert [(f.rule, f.severity) for f in found.findings] == [("address-shared", "info")]
    assert found.units == 4


def test_one_bad_row_costs_the_others_nothing():
    """Ten sorts of bad rows among sound ones: each is told once, and the sound ones are audited."""
    bad = ["B,1", "1,513", "64000,1", "0,1", ",5", "1,", "1,x", "1,1.5", "02-Oct,1", "1,1e9"]
    rows = []
    for number, cells in enumerate(bad):
        rows += [f"G{number},Par,Wide,{number + 1},1", f"B{number},Par,Wide,{cells}"]
    found = of_text(TITLES + "\n" + "\n".join(rows) + "\n")
    assert [row for row, _ in places(found)] == list(range(3, 3 + 2 * len(bad), 2))
    assert found.summary["error"] == len(bad)
    assert sum(load.slots_used for load in found.universes) == 8 * len(bad)
