"""A CSV in pieces comes out whole, row by row, with formulas as text."""

from __future__ import annotations

import csv
import io

from hypothesis import given
from hypothesis import strategies as st

from modebook.render.csv_guard import FORMULA_STARTS, guarded
from modebook.render.pages.csv_stream import GuardedRows

cells = st.text(alphabet=st.characters(blacklist_categories=["Cs"], blacklist_characters="\0"), max_size=12)


def through(text: bytes, sizes: list[int]) -> str:
    """The text fed in pieces of the sizes given, then the rest."""
    rows, out = GuardedRows(), b""
    for size in sizes:
        out += rows.feed(text[:size], False)
        text = text[size:]
    return (out + rows.feed(text, True)).decode()


@given(st.lists(st.lists(cells, min_size=2, max_size=4), max_size=6), st.lists(st.integers(0, 9), max_size=8))
def test_pieces_do_not_matter_and_every_cell_is_guarded(table: list[list[str]], sizes: list[int]) -> None:
    """Wherever it is cut, the same cells come out, each as csv_guard has it."""
    out = io.StringIO()
    csv.writer(out).writerows(table)
    told = list(csv.reader(io.StringIO(through(out.getvalue().encode(), sizes), newline="")))
    assert told == [[guarded(cell) for cell in row] for row in table]


def test_a_formula_becomes_text() -> None:
    """OWASP's examples of CSV injection."""
    assert through(b'a,=1+1\r\n"@x",2\r\n', [3]) == "a,'=1+1\r\n'@x,2\r\n"
    assert "=" in FORMULA_STARTS
