"""A sheet's percent cells, errors and formulas without a result come out as a person sees them."""

from __future__ import annotations

import io

import openpyxl
import pytest

from modebook.shelf.sheet_marks import UNWORKED
from modebook.shelf.sheets import read_sheets


def cells(rows, formats):
    """The cells of a workbook that another library writes; formats by cell."""
    book = openpyxl.Workbook()
    sheet = book.active
    for row in rows:
        sheet.append(row)
    for place, told in formats.items():
        sheet[place].number_format = told
    file = io.BytesIO()
    book.save(file)
    (found,) = read_sheets(file.getvalue(), "a.xlsx")
    return found.cells


@pytest.mark.parametrize(
    ("value", "shown", "told"),
    [
        (0.5, "0%", "50%"),
        (1, "0%", "100%"),
        (0.125, "0.0 %", "12.5%"),
        (0.07, "0.00%", "7%"),
        (0, "0%", "0%"),
    ],
)
def test_percent_is_read_as_it_is_shown(value, shown, told):
    """0.5 in a cell of percent is 50 %, never half a percent (ECMA-376, part 1, 18.8.30)."""
    assert cells([["to"], [value]], {"A2": shown}) == [["to"], [told]]


def test_a_quoted_percent_sign_is_no_percent():
    """The format 0.0"%" writes a sign behind a number that is meant as it stands."""
    assert cells([["to"], [50]], {"A2": '0.0"%"'}) == [["to"], ["50"]]


def test_an_error_is_shown_and_no_formula():
    """#REF! stays; a formula without a saved result says so, and its text is not passed on."""
    found = cells([["to", "from"], ["#REF!", "=10+10"]], {})
    assert found[1] == ["#REF!", UNWORKED]


def test_marks_are_of_their_own_sheet():
    """The second sheet's percent is not the first one's."""
    book = openpyxl.Workbook()
    book.active.append([0.5])
    other = book.create_sheet("Other")
    other.append([0.5])
    other["A1"].number_format = "0%"
    file = io.BytesIO()
    book.save(file)
    assert [sheet.cells for sheet in read_sheets(file.getvalue(), "a.xlsx")] == [[["0.5"]], [["50%"]]]
