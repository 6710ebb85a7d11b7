"""The new patch: the person's file, byte by byte, but for the planned cells."""

from __future__ import annotations

import csv
import difflib
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.address import Address
from modebook.rig.examples import rig_of
from modebook.rig.patch_reading import patch_from_table
from modebook.rig.reading import RigReading
from modebook.rig.repatch.build import repatch
from modebook.rig.repatch.raw_cells import cells_by_line, content_of, with_cells
from modebook.rig.repatch.rewrite import rewritten
from modebook.rig.repatch.wording import address_as_written
from modebook.rig.titles import KNOWN
from modebook.shelf.tables import table_from_bytes
from rig.repatch.rigs import WASH, YOKE, rig


def changed_lines(before: str, after: str) -> list[str]:
    """The lines that a diff shows as new."""
    lines = difflib.ndiff(before.splitlines(keepends=True), after.splitlines(keepends=True))
    return [line[2:] for line in lines if line.startswith("+ ")]


def read(content: bytes) -> RigReading:
    """A rig whose patch is these bytes."""
    reading = rig("unit,fixture,mode,address\n1,Yoke,Fine,1/1\n")
    reading.patch = patch_from_table(table_from_bytes(content, "patch.csv", KNOWN))
    return reading


def planned(content: bytes) -> bytes:
    """The bytes after the repatch of the rig in these bytes."""
    reading = read(content)
    return rewritten(content, reading, repatch(reading))


def test_only_the_planned_cells_differ() -> None:
    """Notes, quotes, odd spaces, blank lines, headings and line ends stay as they were."""
    text = (
        "My job, as of Tuesday\r\n\r\n"
        'Unit,Fixture,"Mode",Universe,Address,Notes\r\n'
        '1 ,"Yoke","Basic",1, 001 ,"said ""no"", twice\r\nand left"\r\n'
        "\r\n"
        "2,Yoke,Fine,1,004,=not ours\r\n"
        "3,Wash,Short,2,1,\r\n"
        "Total,,,,,3 units"
    )
    after = planned(text.encode()).decode()
    assert changed_lines(text, after) in (
        [
            '1 ,"Yoke","Fine",1, 008 ,"said ""no"", twice\r\n',
            "3,Wash,Long,2,1,\r\n",
        ],
        [
            '1 ,"Yoke","Fine",1, 001 ,"said ""no"", twice\r\n',
            "2,Yoke,Fine,1,005,=not ours\r\n",
            "3,Wash,Long,2,1,\r\n",
        ],
    )


def test_a_plan_without_changes_gives_the_same_bytes() -> None:
    """Nothing to change, nothing changed, whatever the encoding and the line ends."""
    text = "Unit;Fixture;Mode;Address;Täg\r1;Yoke;Fine;1/1;ü\r2;Yoke;Fine;1/5;\r"
    for content in (text.encode("utf-8-sig"), text.encode("cp1252"), text.encode("utf-16")):
        assert planned(content) == content


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_the_encoding_stays(encoding: str) -> None:
    """Read in the same encoding, the new file says the new mode and the old accents."""
    text = "Unit\tFixture\tMode\tAddress\tPlace\n1\tYoke\tBasic\t1/1\tBühne\n"
    after = planned(text.encode(encoding)).decode(encoding)
    assert after == text.replace("Basic", "Fine")


def test_big_endian_text_stays_so() -> None:
    """UTF-16 with its mark the other way round."""
    text = "Unit,Fixture,Mode,Address\n1,Yoke,Basic,1/1\n"
    content = b"\xfe\xff" + text.encode("utf-16-be")
    assert planned(content) == b"\xfe\xff" + text.replace("Basic", "Fine").encode("utf-16-be")


@pytest.mark.parametrize(
    ("written", "expected"),
    [("1", "2"), ("01", "02"), ("Mode 1", "Mode 2"), ("basic", "Fine"), ("Basic", "Fine")],
)
def test_a_mode_is_written_the_way_it_was(written: str, expected: str) -> None:
    """By number where the person writes numbers, by name otherwise."""
    text = f"Unit,Fixture,Mode,Address\n1,Yoke,{written},1/1\n"
    assert planned(text.encode()).decode() == f"Unit,Fixture,Mode,Address\n1,Yoke,{expected},1/1\n"


@pytest.mark.parametrize(
    ("universe", "address", "expected"),
    [
        ("2", "101", ("3", "7")),
        ("U2", "A101", ("U3", "A7")),
        ("02", "0101", ("03", "0007")),
        ("", "2/101", ("", "3/7")),
        ("", "2:101", ("", "3:7")),
        ("", "U2.101", ("", "U3.7")),
        ("", "2.101", ("", "3.7")),
        ("2", "2/101", ("3", "3/7")),
        ("", "613", ("", "1031")),
    ],
)
def test_an_address_is_written_the_way_it_was(universe: str, address: str, expected: tuple[str, str]) -> None:
    """From 2/101 to 3/7 in every notation; counted on, 3/7 is 2 x 512 + 7."""
    assert address_as_written(universe, address, Address(2, 101), Address(3, 7)) == expected


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [("1.001", "1.004", {"1.008", "1.005"}), ("1", "4", {"8", "5"}), ("U1 1", "U1 4", {"U1 8", "U1 5"})],
)
def test_moves_are_read_back_in_every_notation(first: str, second: str, expected: set[str]) -> None:
    """The cell that changed is in the person's notation, with three digits after a point."""
    text = f"Unit,Fixture,Mode,Address\n1,Yoke,Basic,{first}\n2,Yoke,Fine,{second}\n"
    rows = list(csv.reader(io.StringIO(planned(text.encode()).decode())))
    assert {rows[1][3], rows[2][3]} & expected
    assert {rows[1][3], rows[2][3]} & {first, second}


def test_a_point_keeps_three_digits_behind_it() -> None:
    """1.5 could be 1/5, 1/50 or 1/500, so the moved unit is written with its zeros."""
    text = "Unit,Fixture,Mode,Address\n1,Yoke,Fine,1.101\n2,Yoke,Fine,1.103\n"
    rows = list(csv.reader(io.StringIO(planned(text.encode()).decode())))
    (moved,) = {rows[1][3], rows[2][3]} - {"1.101", "1.103"}
    universe, _, address = moved.partition(".")
    assert (universe, len(address)) == ("1", 3)


def test_a_workbook_becomes_a_csv_with_its_columns() -> None:
    """Titles and order stay; a note that a spreadsheet would compute is made harmless."""
    import openpyxl

    book = openpyxl.Workbook()
    for row in (
        ["Unit", "Fixture", "Mode", "Address", "Notes"],
        [1, "Yoke", "Basic", "1/1", "on the arm"],
        ["2A", "Yoke", "Fine", "1/11", "@home"],
    ):
        book.active.append(row)
    out = io.BytesIO()
    book.save(out)
    after = planned(out.getvalue()).decode()
    assert after == "Unit,Fixture,Mode,Address,Notes\n1,Yoke,Fine,1/1,on the arm\n2A,Yoke,Fine,1/11,'@home\n"


_CELLS = st.text(st.sampled_from('ab ",;\r\n\t='), max_size=6)


@given(st.lists(st.lists(_CELLS, min_size=2, max_size=4), min_size=1, max_size=5), st.data())
def test_cells_are_found_where_the_csv_module_finds_them(rows: list[list[str]], data: st.DataObject) -> None:
    """Every cell's text agrees with csv, and rewriting one changes that one alone."""
    out = io.StringIO()
    csv.writer(out, lineterminator=data.draw(st.sampled_from(["\n", "\r\n", "\r"]))).writerows(rows)
    text = out.getvalue()
    # The module's own writer leaves a lone carriage return unquoted, and its reader then ends the row there.
    rows = [row or [""] for row in csv.reader(io.StringIO(text, newline=""), strict=True)]
    found = list(cells_by_line(text, ",").values())
    assert [[content_of(text, cell) for cell in row] for row in found] == rows
    at = data.draw(st.integers(0, len(rows) - 1))
    column = data.draw(st.integers(0, len(rows[at]) - 1))
    new = with_cells(text, {found[at][column]: 'x,"y"'}, ",")
    again = [row or [""] for row in csv.reader(io.StringIO(new, newline=""), strict=True)]
    old = rows[at][column]
    bare = old.strip()
    rows[at][column] = old.replace(bare, 'x,"y"', 1) if bare else 'x,"y"' + old
    assert again == rows


def test_fixtures_of_the_tests_are_what_they_say() -> None:
    """The rigs above can be read: both fixtures are known."""
    reading = rig_of({"fixtures": [YOKE, WASH], "patch": "unit,fixture,mode,address\n1,Wash,Long,1/1\n"})
    assert reading.rows[0].mode is not None
