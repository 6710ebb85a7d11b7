"""A CSV of ours opens as text and numbers; no cell is computed, and what stood there can be read again."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.render.csv_guard import FORMULA_STARTS, csv_text, guarded

CELLS = st.text(max_size=30) | st.sampled_from(
    ["=1+1", "+1", "-2", "@x", "\tx", "\r=1", " =1", "\u200b=1", "-270"]
)


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_the_starts_that_owasp_names_are_guarded(start):
    """Outside check: OWASP, 'CSV Injection': cells that begin with these are taken for formulas."""
    assert guarded(f"{start}cmd|' /C calc'!A0").startswith("'")


@given(st.lists(st.lists(CELLS, min_size=3, max_size=3), max_size=6))
def test_no_cell_begins_a_formula_and_every_text_comes_back(rows):
    read = list(csv.reader(io.StringIO(csv_text(["a", "b", "c"], rows), newline="")))[1:]
    assert len(read) == len(rows)
    for row, given_row in zip(read, rows, strict=True):
        for cell, was in zip(row, given_row, strict=True):
            assert cell in (was, "'" + was)
            bare = cell.lstrip(" \u00a0\ufeff\u200b\u200e\u200f")
            if bare.startswith(FORMULA_STARTS):
                float(cell)


@given(st.integers() | st.floats(allow_nan=False, allow_infinity=False, width=32))
def test_numbers_stay_numbers(number):
    assert float(guarded(number)) == pytest.approx(number, rel=1e-11)


def test_nothing_and_yes_and_no():
    assert [guarded(None), guarded(True), guarded(False)] == ["", "yes", "no"]
