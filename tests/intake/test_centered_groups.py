"""Labels in the middle of their groups' rows are of all of them; labels at the top stay what they are."""

from __future__ import annotations

from pathlib import Path

import fpdf

from intake.drafted import drafted, slots, spans
from modebook.intake.draft import draft

CENTERED = """\
14-channel    mode    (Extended)
Group           Channel     Function        DMX value      Effect
                1           Pan             0-255          0-540°
                2           Pan fine        0-255
Movement
                3           Tilt            0-255          0-230°
                4           Tilt fine       0-255
                5           Shutter         0-19           Closed
Light                                       20-255         Open
                6           Dimmer          0-255          0-100 %
                7           Red             0-255          0-100 %
                8           Green           0-255          0-100 %
Ring 1
                9           Blue            0-255          0-100 %
                10          White           0-255          0-100 %
                11          Red             0-255          0-100 %
                12          Green           0-255          0-100 %
Ring 2
                13          Blue            0-255          0-100 %
                14          White           0-255          0-100 %
"""


def test_a_label_in_the_middle_is_of_the_rows_above_it_as_well():
    """Two rings of four colors, whatever row their labels stand at."""
    document = drafted(CENTERED)
    mode = document.modes[0]
    (cells,) = mode.cells
    assert (cells.count, cells.first, cells.stride) == (2, 7, 4)
    assert [part.parameter for part in cells.parameters] == ["red", "green", "blue", "white"]
    assert mode.name == "Extended"
    assert not document.doubts


def test_a_label_between_rows_glues_none_of_them():
    """Tilt keeps its span: the label is no part of the rows that it stands between."""
    assert spans(drafted(CENTERED).modes[0])["tilt"] == [(0, 230, "deg")]


def test_on_a_page_without_rules_it_stands_between_the_rows(tmp_path: Path):
    """Half a row away from both: the lines beside it are no one row."""
    document = fpdf.FPDF(unit="pt")
    document.add_page()
    document.set_font("helvetica", size=9)
    y = 60.0
    for line in CENTERED.splitlines()[1:]:
        cells = [line[a:b].strip() for a, b in ((0, 16), (16, 28), (28, 44), (44, 59), (59, 99))]
        label = not any(cells[1:])
        for x, text in zip((40, 110, 160, 260, 340), cells, strict=True):
            if text:
                document.text(x, y - 7 if label else y, text.replace("°", "\u00b0"))
        y += 0 if label else 14
    path = tmp_path / "chart.pdf"
    document.output(str(path))
    made = draft(path).document
    assert [(c.count, c.first, c.stride) for c in made.modes[0].cells] == [(2, 7, 4)]
    assert spans(made.modes[0])["tilt"] == [(0, 230, "deg")]
    assert not made.doubts


def test_a_label_at_the_top_is_of_the_rows_below_it():
    """The first slots are of no group."""
    text = "Group\tChannel\tFunction\tValue\n\t1\tDimmer\t0-255\n\t2\tStrobe\t0-255\n"
    text += "Ring 1\t3\tRed\t0-255\n\t4\tGreen\t0-255\nRing 2\t5\tRed\t0-255\n\t6\tGreen\t0-255\n"
    mode = drafted(text).modes[0]
    assert slots(mode) == [("dimmer", [1]), ("strobe", [2])]
    assert [(c.count, c.first, c.stride) for c in mode.cells] == [(2, 3, 2)]
