"""Tables that are laid out here look as the library lays them out (reference: rich)."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from modebook.render.plain_table import Justify, Rows, plain_table
from modebook.render.terminal import styled, width

CELLS = st.text(st.characters(min_codepoint=32, max_codepoint=126), max_size=14) | st.sampled_from(
    ["", "-", "12", "[bold]x", "a  b", " c", "d ", "é", "光", "e\nf", "g\th", ":smile:", "word " * 12]
)


@st.composite
def _tables(draw: st.DrawFn) -> Rows:
    count = draw(st.integers(1, 6))
    sides: st.SearchStrategy[Justify] = st.sampled_from(("left", "right"))
    columns = draw(st.lists(st.tuples(CELLS, sides), min_size=count, max_size=count))
    return Rows(columns, draw(st.lists(st.lists(CELLS, min_size=count, max_size=count), max_size=5)))


@given(_tables())
def test_looks_as_the_library_lays_it_out(made: Rows) -> None:
    """Whatever is laid out here has the library's signs, line by line."""
    plain = plain_table(made, width())
    assert plain is None or plain == styled(made)


def test_an_ordinary_table_is_laid_out_here() -> None:
    """Words and figures in one line each need no library; the expected text was set by hand."""
    made = Rows([("mode", "left"), ("slots", "right")], [("Basic", "8"), ("Extended", "16")])
    assert plain_table(made, 80) == "mode      slots\n───────────────\nBasic         8\nExtended     16\n"


def test_what_takes_more_is_left_to_the_library() -> None:
    """Wide letters, several lines and tables wider than their place are not laid out here."""
    for cell in ("光", "a\nb", " a", "a" * 30):
        assert plain_table(Rows([("mode", "left")], [(cell,)]), 30) is None
