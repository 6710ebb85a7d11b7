"""Patches as people type them: titles, units, and everything that a spreadsheet does to them."""

from __future__ import annotations

import datetime
import io

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.documents.address import Address
from modebook.documents.patch import Patch
from modebook.rig.patch_reading import patch_from_table, patch_from_text, read_patch
from modebook.rig.titles import KNOWN, TITLES, columns_of
from modebook.shelf.errors import ShelfError
from modebook.shelf.table import fold_title
from modebook.shelf.tables import table_from_bytes


def from_sheet(*rows) -> Patch:
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append(row)
    out = io.BytesIO()
    book.save(out)
    return patch_from_table(table_from_bytes(out.getvalue(), "patch.xlsx", KNOWN))


@pytest.mark.parametrize(
    "titles",
    [
        "unit,fixture,mode,universe,address",
        "Unit Number,Type,Personality,Univ,Start Address",
        "#,Model,MODE,U,DMX",
        "UNIT NO.,Fixture_Type,DMX Mode,Universe #,dmx-address",
        "No,Fixture Model,Mode Name,Uni,Addr",
    ],
)
def test_the_titles_people_use_mean_the_same(titles):
    """Any case and punctuation, several words for one column."""
    patch = patch_from_text(f"{titles}\n12A,Par,Wide,2,101\n")
    assert not patch.faults
    (unit,) = patch.units
    assert (unit.number, unit.row, unit.fixture, unit.mode) == ("12A", 2, "Par", "Wide")
    assert unit.address == Address(2, 101)


def test_no_title_means_two_columns_and_all_are_folded():
    """A title in two lists would be read by whichever comes first."""
    titles = [title for names in TITLES.values() for title in names]
    assert len(titles) == len(set(titles))
    assert [fold_title(title) for title in titles] == titles


@pytest.mark.parametrize(
    ("text", "meters"),
    [("8", 8.0), ("8,5", 8.5), ("8.5 m", 8.5), ("12m", 12.0), ("10 ft", 3.048), ("10'", 3.048), ("", None)],
)
def test_a_throw_is_read_in_meters(text, meters):
    """With a decimal comma, with its unit; 1 ft is 0.3048 m (international foot)."""
    patch = patch_from_text(f"unit;fixture;mode;address;throw\n1;Par;Wide;1/1;{text}\n")
    assert not patch.faults
    assert patch.units[0].throw_m == pytest.approx(meters)


def test_a_throw_under_a_title_in_feet_is_turned_into_meters():
    """The title tells the unit where the cell does not."""
    patch = patch_from_text("unit,fixture,mode,address,Throw (ft)\n1,Par,Wide,1/1,10\n2,Par,Wide,1/9,10 m\n")
    assert [unit.throw_m for unit in patch.units] == [pytest.approx(3.048), 10.0]


def test_all_other_columns_are_read_or_kept():
    """What nothing reads is kept under its title."""
    patch = patch_from_text(
        "unit,maker,model,mode,address,position,purpose,group,part,uid,serial,firmware,access,notes,Gel\n"
        "1,Invented Maker,Par,Wide,2/1,Truss,key,A,head,7FF1:00000001,S1,2.4,ladder,mind it,L201\n"
    )
    (unit,) = patch.units
    assert not patch.faults
    assert unit.fixture == "Invented Maker Par"
    assert (unit.position, unit.purpose, unit.group, unit.part) == ("Truss", "key", "A", "head")
    assert (unit.uid, unit.serial, unit.firmware) == ("7FF1:00000001", "S1", "2.4")
    assert (unit.reach, unit.note, unit.extra) == ("ladder", "mind it", {"Gel": "L201"})


def test_the_makers_name_is_not_written_twice():
    """A model that begins with its maker's name stays as it is."""
    patch = patch_from_text("unit,maker,model,mode,address\n1,Arden,Arden Lumo,Wide,1\n")
    assert patch.units[0].fixture == "Arden Lumo"


def test_two_titles_for_one_column_are_told():
    """The plainer one is read, the other kept."""
    patch = patch_from_text("unit,type,fixture,mode,address\n1,Wash,Par,Wide,1\n")
    assert patch.units[0].fixture == "Par"
    assert patch.notes == ("the titles 'fixture' and 'type' both mean the fixture: 'fixture' was read",)
    assert patch.units[0].extra == {"type": "Wash"}


def test_a_model_beside_a_maker_goes_before_a_fixture():
    """Then the fixture is often a number."""
    assert columns_of(["Fixture", "Maker", "Model"]).at["fixture"] == 2


def test_blank_rows_headings_and_totals_are_no_units():
    """Their lines still count, and headings and totals are noted."""
    patch = patch_from_text(
        "unit,fixture,mode,address,slots\n"
        ",,,,\n"
        "FRONT TRUSS,,,,\n"
        "1,Par,Wide,1,8\n"
        "Subtotal,,,,8\n"
        ",,,Total:,8\n"
        ",,,,\n"
        "2,Par,Wide,9,8\n"
        ",,,,\n"
    )
    assert [(unit.number, unit.row) for unit in patch.units] == [("1", 4), ("2", 8)]
    assert not patch.faults
    assert len(patch.notes) == 3


@pytest.mark.parametrize(
    ("titles", "message"),
    [
        (
            "unit,fixture,address",
            "patch.csv, row 1: the columns are 'unit', 'fixture', 'address': no mode among them; "
            "add one for the mode, such as 'mode' or 'mode name'",
        ),
        (
            "unit,mode,Lens",
            "patch.csv, row 1: the columns are 'unit', 'mode', 'Lens': no fixture and no address among them; "
            "add one for the fixture, such as 'fixture' or 'fixture type' and one for the address, such as "
            "'address' or 'addr'",
        ),
    ],
)
def test_a_missing_column_is_one_clear_line(titles, message):
    """It names the columns found and what would be right."""
    with pytest.raises(ShelfError) as told:
        patch_from_text(f"{titles}\n1,2,3\n")
    assert str(told.value) == message


@pytest.mark.parametrize(
    ("row", "column", "found", "part"),
    [
        ("1,,Wide,1,1,", "fixture", "", "no fixture: write it"),
        ("1,Par,,1,1,", "mode", "", "no mode: write it"),
        (",Par,Wide,1,1,", "unit", "", "no unit: write it"),
        ("1,Par,Wide,1,x,", "address", "x", "'x' is not a number"),
        ("1,Par,Wide,1,0,", "address", "0", "address 0 is not within 1 to 512"),
        ("1,Par,Wide,1,513,", "address", "513", "address 513 beside universe 1 is not within 1 to 512"),
        (
            "1,Par,Wide,1,1e9,",
            "address",
            "1e9",
            "address 1000000000 beside universe 1 is not within 1 to 512",
        ),
        ("1,Par,Wide,64000,1,", "universe", "64000", "universe 64000 is not within 1 to 63999"),
        ("1,Par,Wide,B,1,", "universe", "B", "a universe by letter"),
        ("1,Par,Wide,,1,", "address", "1", "address 1 has no universe"),
        ("1,Par,Wide,1,,", "address", "", "a universe, 1, without an address"),
        ("1,Par,Wide,1,1,far", "throw", "far", "'far' is not a number"),
        ("1,Par,Wide,1,1,-2", "throw", "-2", "a throw is above 0 and at most 10000 m"),
        ("1,Par,Wide,1,1,0", "throw", "0", "a throw is above 0 and at most 10000 m"),
        ("1,,,,,8", "fixture", "1", "neither fixture, mode nor address"),
    ],
)
def test_a_bad_row_is_told_and_the_others_are_read(row, column, found, part):
    """Row, column, what stands there and why it will not do; the rows around it are sound."""
    patch = patch_from_text(
        f"unit,fixture,mode,universe,address,throw\n7,Par,Wide,9,1,\n{row}\n8,Par,Wide,9,9,\n"
    )
    (fault,) = patch.faults
    assert (fault.row, fault.column, fault.found) == (3, column, found)
    assert part in fault.why
    assert [unit.number for unit in patch.units if unit.row != 3] == ["7", "8"]


def test_a_unit_with_a_bad_cell_is_kept_without_it():
    """It hangs in the rig all the same: its mode can still be judged."""
    patch = patch_from_text("unit,fixture,mode,universe,address\n1,Par,Wide,1,600\n")
    assert patch.units[0].address is None
    assert patch.units[0].mode == "Wide"


def test_a_reach_that_is_no_reach_is_told():
    """The words are those of the documents."""
    patch = patch_from_text("unit,fixture,mode,address,reach\n1,Par,Wide,1,Ladder\n2,Par,Wide,9,crane\n")
    assert patch.units[0].reach == "ladder"
    assert patch.faults[0].why == "write one of floor, ladder, lift, not at all"


def test_a_sheets_numbers_and_dates_are_not_guessed_at():
    """2.1 and a date where addresses were typed are refused; a number as unit and mode is what it was."""
    patch = from_sheet(
        ["Unit", "Fixture", "Mode", "Address"],
        [1, "Par", 2, 2.101],
        [2, "Par", 2, 2.1],
        [3, "Par", 2, datetime.date(2026, 10, 2)],
        ["4", "Par", 2, "2/10"],
        [5, datetime.date(2026, 10, 2), 2, "2/20"],
    )
    assert [(unit.number, unit.mode, unit.address) for unit in patch.units] == [
        ("1", "2", Address(2, 101)),
        ("2", "2", None),
        ("3", "2", None),
        ("4", "2", Address(2, 10)),
        ("5", "2", Address(2, 20)),
    ]
    assert [(fault.row, fault.found) for fault in patch.faults] == [
        (3, "2.1"),
        (4, "2026-10-02"),
        (6, "2026-10-02"),
    ]


@settings(deadline=None)
@given(
    st.lists(
        st.tuples(st.integers(1, 63_999), st.integers(1, 512), st.text("ABC x12", max_size=6).map(str.strip)),
        min_size=1,
        max_size=12,
    ),
    st.sampled_from([",", ";", "\t"]),
)
def test_what_was_written_is_read_back(units, delimiter):
    """Universe, address and position of every unit, in any delimiter."""
    lines = ["unit,fixture,mode,universe,address,position".replace(",", delimiter)]
    lines += [
        delimiter.join([str(i), "Par", "Wide", str(u), str(a), position])
        for i, (u, a, position) in enumerate(units)
    ]
    patch = patch_from_text("\n".join(lines) + "\n")
    assert not patch.faults
    assert [(x.address, x.position, x.row) for x in patch.units] == [
        (Address(u, a), position, row) for row, (u, a, position) in enumerate(units, 2)
    ]


@settings(deadline=None)
@given(st.lists(st.lists(st.text("12A/.-x ,UPar\u00e9", max_size=6), min_size=6, max_size=6), max_size=6))
def test_any_rows_give_units_or_faults(rows):
    """Nothing that is typed raises, and no row that says something is lost without a word."""
    lines = ["unit;fixture;mode;universe;address;throw", *(";".join(row) for row in rows)]
    patch = patch_from_text("\n".join(lines) + "\n")
    told = {unit.row for unit in patch.units} | {fault.row for fault in patch.faults}
    for number, row in enumerate(rows, 2):
        if any(cell.strip() for cell in row) and number not in told:
            assert any(note.startswith(f"row {number}") for note in patch.notes)


def test_a_file_is_read_from_disk(tmp_path):
    """The same, by path."""
    (tmp_path / "patch.csv").write_text("unit,fixture,mode,address\n1,Par,Wide,1\n")
    assert len(read_patch(tmp_path / "patch.csv").units) == 1


def test_a_unit_whose_name_speaks_of_a_total_is_a_unit_all_the_same():
    """Number, fixture and mode are all written."""
    patch = patch_from_text("unit,fixture,mode,address\nTotal 1,Par,Wide,1\n2,Total Par,Wide,9\n")
    assert [unit.number for unit in patch.units] == ["Total 1", "2"]


def test_several_units_in_one_row_are_told():
    """3-5 in a unit's cell is three units, and was read as one."""
    patch = patch_from_text("unit,fixture,mode,address\n1,Wash,M,1/1\n3-5,Wash,M,1/10\n6 to 8,Wash,M,1/40\n")
    assert [(fault.row, fault.found) for fault in patch.faults] == [(3, "3-5"), (4, "6 to 8")]
    assert patch.faults[0].why.startswith("3 units in one row")


def test_names_with_hyphens_are_no_ranges():
    """1-1, 1-2, 2-1: one number begins several names."""
    rows = "".join(f"{name},Wash,M,1/{10 * n + 1}\n" for n, name in enumerate(("1-1", "1-2", "2-1")))
    assert not patch_from_text(f"unit,fixture,mode,address\n{rows}").faults


@pytest.mark.parametrize(
    "titles",
    [
        "Einheit;Hersteller;Gerät;Modus;Universum;Adresse",
        "Unité;Fabricant;Appareil;Mode;Univers;Adresse",
        "Unidad;Fabricante;Aparato;Modo;Universo;Dirección",
        "Unità;Produttore;Apparecchio;Modalità;Universo;Indirizzo",
    ],
)
def test_titles_of_other_languages(titles):
    """German, French, Spanish and Italian titles mean the same columns; accents do not count."""
    (unit,) = patch_from_text(f"{titles}\n7;Pelluwick;Brumlet 19;Wash 16;2;101\n").units
    assert (unit.number, unit.fixture, unit.mode) == ("7", "Pelluwick Brumlet 19", "Wash 16")
    assert unit.address == Address(2, 101)
