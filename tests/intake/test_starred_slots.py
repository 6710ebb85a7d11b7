"""A number between stars is a slot that the mode does not have, if a legend says so; else it is asked."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots, whys
from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.headings import read_footnote

CHART = (
    "Short   Full   Function   Value\n"
    "1       1      Dimmer     0-255\n"
    "* 2 *   2      Strobe     0-255\n"
    "2       3      Red        0-255\n"
    "* 4 *   4      Green      0-255\n"
    "3       5      Blue       0-255\n"
)


@pytest.mark.parametrize("text", ["* 5 *", "*5*", "** 12 **"])
def test_a_starred_number_is_absent(text):
    assert read_slot_cell(text).kind == "absent"


@pytest.mark.parametrize("text", ["5 *", "* 5", "* 5 **"])
def test_one_star_is_another_mark(text):
    assert read_slot_cell(text).kind != "absent"


@pytest.mark.parametrize("legend", ["* n * = not available in this mode", "*n*: not in this mode"])
def test_its_legend(legend):
    note = read_footnote(legend)
    assert note is not None
    assert note.mark == "*"


def test_with_a_legend_nothing_is_asked():
    document = drafted(CHART + "* n * = not available in this mode\n")
    one, two = document.modes
    assert slots(one) == [("dimmer", [1]), ("red", [2]), ("blue", [3])]
    assert len(two.parameters) == 5
    assert not document.doubts


def test_without_a_legend_it_is_asked():
    assert any("legend" in why for why in whys(drafted(CHART)))
