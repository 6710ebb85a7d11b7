"""A table inside a cell of an HTML page: its rows are rows of the chart, and no two texts run together."""

from __future__ import annotations

from modebook.intake.draft import About, draft
from modebook.intake.readers.html import read_html

PAGE = """<table><tr><th>Kanal</th><th>Funktion</th><th>Werte</th></tr>
<tr><td>1</td><td>Dimmer</td><td><table><tr><td>0 – 255</td><td>0–100 %</td></tr></table></td></tr>
<tr><td>2</td><td>Shutter</td><td><table><tr><td>0 – 9</td><td>Zu</td></tr>
<tr><td>10 – 255</td><td>Strobe, langsam bis schnell</td></tr></table></td></tr></table>"""


def test_inner_rows_and_columns_become_the_outer_ones():
    (grid,) = read_html(PAGE.encode(), "page.html").leaves[0].items
    assert [[cell.flat for cell in row] for row in grid.rows] == [
        ["Kanal", "Funktion", "Werte", ""],
        ["1", "Dimmer", "0 – 255", "0–100 %"],
        ["2", "Shutter", "0 – 9", "Zu"],
        ["", "", "10 – 255", "Strobe, langsam bis schnell"],
    ]


def test_a_number_and_a_text_of_two_cells_are_never_one(tmp_path):
    """`255` and `0–100 %` were once read as `2550–100 %`."""
    path = tmp_path / "page.html"
    path.write_text(PAGE, encoding="utf-8")
    (mode,) = draft(path, About(maker="Quimber", model="Sill 2")).document.modes
    dimmer, shutter = mode.parameters
    assert (dimmer.span.from_, dimmer.span.to) == (0, 100)
    assert [(r.from_, r.to, r.meaning) for r in shutter.ranges] == [
        (0, 9, "Zu"),
        (10, 255, "Strobe, langsam bis schnell"),
    ]
