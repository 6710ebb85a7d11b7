"""The readers: whatever the format, cells come with their place, and columns as a person sees them."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path
from typing import Any

import fpdf
import pytest

from modebook.intake.draft import draft, draft_text
from modebook.intake.grid import Grid, Line, Source
from modebook.intake.opening import from_bytes, from_text, open_chart

HEAD = ("Channel", "Function", "Value", "Description")
ROWS = [
    ("1", "Dimmer", "0-255", "0-100 %"),
    ("2", "Pan", "0-255", "0-540 deg"),
    ("3", "Pan fine", "0-255", ""),
    ("4", "Shutter", "0-9", "Closed"),
    ("", "", "10-199", "Flashes from slow to fast, and faster the higher the value is"),
    ("", "", "200-255", "Open"),
    ("5", "Red", "0-255", ""),
    ("6", "Green", "0-255", ""),
    ("7", "Blue", "0-255", ""),
]
TRUE = [
    ("dimmer", [1], []),
    ("pan", [2, 3], []),
    ("shutter", [4], [(0, 9), (10, 199), (200, 255)]),
    ("red", [5], []),
    ("green", [6], []),
    ("blue", [7], []),
]


def texts(source: Source) -> list[list[str]]:
    """The rows of all grids, and lines as rows of one cell."""
    found = []
    for leaf in source.leaves:
        for item in leaf.items:
            if isinstance(item, Grid):
                found.extend([cell.flat for cell in row] for row in item.rows)
            else:
                found.append([item.text])
    return found


def pdf(
    path: Path,
    rows: list[tuple[str, ...]],
    *,
    title: str = "Mode 1: Tour (7 channels)",
    pages_before: int = 0,
    **table: Any,
) -> Path:
    """A PDF with one table, drawn by fpdf2 in the style that `table` says."""
    document = fpdf.FPDF()
    for number in range(pages_before):
        document.add_page()
        document.set_font("helvetica", size=10)
        document.multi_cell(0, 5, f"Chapter {number + 1}. Words about safety, and more of them.")
    document.add_page()
    document.set_font("helvetica", size=9)
    document.cell(text=title, new_x="LMARGIN", new_y="NEXT")
    plain = fpdf.fonts.FontFace(emphasis=None)
    with document.table(headings_style=plain, col_widths=(2, 4, 3, 6), **table) as made:
        for row in [HEAD, *rows]:
            made.row(row)
    document.output(str(path))
    return path


STYLES: dict[str, dict[str, Any]] = {
    "ruled": {},
    "unruled": {"borders_layout": "NONE"},
    "zebra": {"borders_layout": "NONE", "cell_fill_color": 220, "cell_fill_mode": "ROWS"},
    "rules between rows": {"borders_layout": "HORIZONTAL_LINES"},
    "one rule below the titles": {"borders_layout": "SINGLE_TOP_LINE"},
    "narrow, so that words wrap": {"width": 110},
    "narrow and striped": {
        "width": 110,
        "borders_layout": "NONE",
        "cell_fill_color": 220,
        "cell_fill_mode": "ROWS",
    },
    "narrow with rules between rows": {"width": 110, "borders_layout": "HORIZONTAL_LINES"},
    "centered": {"text_align": "CENTER"},
}


@pytest.mark.parametrize("style", STYLES)
def test_a_pdf_table_in_any_style_gives_the_same_mode(style: str, tmp_path: Path) -> None:
    document = draft(pdf(tmp_path / "chart.pdf", ROWS, **STYLES[style])).document
    assert document.doubts == []
    (mode,) = document.modes
    assert (mode.name, mode.number, mode.footprint) == ("Tour", 1, 7)
    assert [(p.parameter, p.slots, [(r.from_, r.to) for r in p.ranges]) for p in mode.parameters] == TRUE
    assert [r.meaning for r in mode.parameters[2].ranges] == [
        "Closed",
        "Flashes from slow to fast, and faster the higher the value is",
        "Open",
    ]


def test_cells_of_several_lines_are_paired_by_their_height(tmp_path: Path) -> None:
    rows = [*ROWS[:3], ("4", "Shutter", "0-9\n10-199\n200-255", "Closed\nSlow to fast\nOpen"), *ROWS[6:]]
    document = draft(pdf(tmp_path / "chart.pdf", rows)).document
    assert [(r.from_, r.meaning) for r in document.modes[0].parameters[2].ranges] == [
        (0, "Closed"),
        (10, "Slow to fast"),
        (200, "Open"),
    ]
    assert document.doubts == []


def test_cells_of_several_lines_that_do_not_match_are_not_paired(tmp_path: Path) -> None:
    rows = [*ROWS[:3], ("4", "Shutter", "0-9\n10-199\n200-255", "Closed\nSlow\nFast\nOpen"), *ROWS[6:]]
    document = draft(pdf(tmp_path / "chart.pdf", rows)).document
    assert document.modes[0].parameters[2].ranges == []
    assert any("not paired" in doubt.why for doubt in document.doubts)


def test_a_table_goes_on_over_pages_with_its_titles_repeated(tmp_path: Path) -> None:
    rows = [("1", "Dimmer", "0-255", "")]
    rows += [
        (str(2 + 3 * i + j), f"{c} {i + 1}", "0-255", "")
        for i in range(40)
        for j, c in enumerate(("Red", "Green", "Blue"))
    ]
    document = draft(pdf(tmp_path / "chart.pdf", rows, title="Mode 2: Pixel (121 channels)")).document
    (mode,) = document.modes
    assert (mode.footprint, mode.cells[0].count, mode.cells[0].stride, mode.cells[0].first) == (121, 40, 3, 2)
    assert document.doubts == []


def test_places_name_page_table_and_row_and_carry_a_box(tmp_path: Path) -> None:
    source = open_chart(pdf(tmp_path / "chart.pdf", ROWS))
    (grid,) = [item for item in source.leaves[0].items if isinstance(item, Grid)]
    place = grid.rows[1][0].place
    assert str(place) == "page 1, table 1, row 2"
    assert place.box is not None
    left, top, right, bottom = place.box
    assert 0 < left < right < 600
    assert 0 < top < bottom < 850


def test_two_tables_side_by_side_keep_their_headings(tmp_path: Path) -> None:
    document = fpdf.FPDF()
    document.add_page()
    document.set_font("helvetica", size=9)
    plain = fpdf.fonts.FontFace(emphasis=None)
    for left, title, names in (
        (20, "Mode 1: Eco", ("Dimmer", "Red")),
        (110, "Mode 2: Full", ("Dimmer", "Strobe", "Red")),
    ):
        document.text(left, 20, title)
        document.set_left_margin(left)
        document.set_xy(left, 25)
        with document.table(width=70, align="LEFT", headings_style=plain, col_widths=(1, 3)) as made:
            made.row(("Ch", "Function"))
            for number, name in enumerate(names, 1):
                made.row((str(number), name))
    document.output(str(tmp_path / "chart.pdf"))
    modes = draft(tmp_path / "chart.pdf").document.modes
    assert [(m.name, [p.parameter for p in m.parameters]) for m in modes] == [
        ("Eco", ["dimmer", "red"]),
        ("Full", ["dimmer", "strobe", "red"]),
    ]


def test_only_the_asked_pages_are_read(tmp_path: Path) -> None:
    told: list[str] = []
    path = pdf(tmp_path / "chart.pdf", ROWS, pages_before=6)
    document = draft(path, pages="7", progress=told.append).document
    assert told == ["page 7 (1 of 1)"]
    assert document.sources[0].pages == "7"
    assert len(document.modes) == 1


def test_pages_without_rows_are_passed_over_unasked(tmp_path: Path) -> None:
    told: list[str] = []
    document = draft(pdf(tmp_path / "chart.pdf", ROWS, pages_before=9), progress=told.append).document
    assert len(document.modes) == 1
    assert len(told) < 5


def test_text_columns_follow_white_space_and_tabs() -> None:
    assert texts(from_text("a  b\nc  d\n"))[0:2] == [["a", "b"], ["c", "d"]]
    assert texts(from_text("a\tb\n\td\n")) == [["a", "b"], ["", "d"]]


def test_a_sentence_is_not_cut_where_a_column_happens_to_end() -> None:
    sentence = "Keep off any moving parts of the head."
    rows = "Channel 1: Macro\n    000-009  No macro\n    010-255  Fire\n\n"
    items = from_text(rows + sentence, "chart.txt").leaves[0].items
    assert sentence in [item.text for item in items if isinstance(item, Line)]


def test_feet_that_count_up_are_of_pages_and_names_that_count_up_are_not() -> None:
    """The foot of a pasted page may not say that it is one: the same words with the next number tell it."""
    rows = "\n".join(f"{slot} {name} 0-255" for slot, name in enumerate(["Dimmer", *["Red", "Green"] * 5], 1))
    feet = "".join(f"Mode {n}\n{rows}\nKorvel 60 Operating Notes {n + 11}\n\n" for n in (1, 2))
    assert "Notes" not in str(from_text(feet, "chart.txt").leaves[0].items)
    named = "".join(f"Mode {n}\n{rows}\nRotation speed of gobo {n}\n\n" for n in (1, 2))
    lines = [item.text for item in from_text(named, "chart.txt").leaves[0].items if isinstance(item, Line)]
    assert sum("of gobo" in line for line in lines) == 2


def test_a_page_that_is_turned_inside_a_table_leaves_neither_foot_nor_head_in_it() -> None:
    """The foot's number stands far to the right, the section's heading is said again, and so are the titles;
    the second line of a long text above them names no mode.
    """
    head = "5   DMX CHANNELS\n\n"
    titles = "Channel   Function      Value       Effect\n"
    text = f"""{head}{titles}\
1         Dimmer        000 - 255   0 to 100%
2         Strobe        000 - 009   Off
                        010 - 255   Strobe effect from slow
                                    to fast

Korvel 60 Operating Notes                 Page 9
{head}{titles}\
3         Zoom          000 - 255   Narrow to wide
4         Frost         000 - 255   0 to 100%
"""
    document = draft_text(text).document
    (mode,) = document.modes
    assert [p.slots for p in mode.parameters] == [[1], [2], [3], [4]]
    assert mode.parameters[1].ranges[1].meaning == "Strobe effect from slow to fast"
    assert document.doubts == []


def test_a_text_keeps_its_line_numbers() -> None:
    source = from_text("first\n\nSlot  Function\n1     Dimmer\n2     Red\n")
    line, grid = source.leaves[0].items
    assert isinstance(line, Line)
    assert isinstance(grid, Grid)
    assert (line.place.row, [row[0].place.row for row in grid.rows]) == (1, [3, 4, 5])


def test_html_keeps_spans_breaks_and_superscripts() -> None:
    page = (
        b"<p>Mode 1</p><table><tr><td colspan=2>Head</td></tr><tr><td rowspan=2>5<sup>1</sup></td>"
        b"<td>a<br>b</td></tr><tr><td>c</td></tr></table>"
    )
    source = from_bytes(page, "page.html", ".html")
    grid = next(item for item in source.leaves[0].items if isinstance(item, Grid))
    assert [[cell.text for cell in row] for row in grid.rows] == [["Head", ""], ["5¹", "a\nb"], ["", "c"]]
    assert grid.rows[0][0].span == 2


def test_html_refers_to_nothing_outside() -> None:
    """A page is read as it is: scripts are no text, and no address in it is opened."""
    page = (
        b"<html><head><script>var x='1 Dimmer 0-255'</script></head><body><iframe "
        b"src='http://localhost:1/'>x</iframe><p>Words</p></body></html>"
    )
    assert texts(from_bytes(page, "page.html", ".html")) == [["Words"]]


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_csv_of_any_delimiter(delimiter: str, tmp_path: Path) -> None:
    path = tmp_path / "chart.csv"
    rows = [HEAD, *[r for r in ROWS if "," not in r[3]]]
    path.write_text("\n".join(delimiter.join(row) for row in rows), encoding="utf-8")
    assert [p.parameter for p in draft(path).document.modes[0].parameters] == [word for word, _, _ in TRUE]


def test_a_workbook_gives_values_of_merged_cells_and_formulas(tmp_path: Path) -> None:
    import openpyxl

    book = openpyxl.Workbook()
    sheet = book.active
    for row in [HEAD, *ROWS]:
        sheet.append([int(c) if c.isdigit() else c or None for c in row])
    sheet.merge_cells("A5:A7")
    sheet.merge_cells("B5:B7")
    book.save(tmp_path / "chart.xlsx")
    document = draft(tmp_path / "chart.xlsx").document
    assert [
        (p.parameter, p.slots, [(r.from_, r.to) for r in p.ranges]) for p in document.modes[0].parameters
    ] == TRUE
    assert document.doubts == []
    assert document.modes[0].parameters[0].place == "sheet Sheet, row 2"


def test_the_title_of_a_cover_sheet_names_no_mode_of_the_next(tmp_path: Path) -> None:
    """Each sheet is called as its tab is; what the cover says is said of all of them."""
    import openpyxl

    book = openpyxl.Workbook()
    book.active.title = "Cover"
    book.active.append(["Korvel 60 DMX modes"])
    for name in ("Short", "Long"):
        sheet = book.create_sheet(name)
        for row in (["Slot", "Function", "Value"], [1, "Dimmer", "0-255"], [2, "Red", "0-255"]):
            sheet.append(row)
    book.save(tmp_path / "chart.xlsx")
    assert [mode.name for mode in draft(tmp_path / "chart.xlsx").document.modes] == ["Short", "Long"]


def test_a_formula_is_not_run(tmp_path: Path) -> None:
    """A cell with a formula and no stored value is blank: nothing is computed."""
    import openpyxl

    book = openpyxl.Workbook()
    sheet = book.active
    for row in [
        HEAD,
        ("1", "Dimmer", "0-255", '=HYPERLINK("http://localhost/","x")'),
        ("2", "Red", "0-255", "=1+1"),
    ]:
        sheet.append(row)
    book.save(tmp_path / "chart.xlsx")
    document = draft(tmp_path / "chart.xlsx").document
    assert [(p.parameter, p.ranges) for p in document.modes[0].parameters] == [("dimmer", []), ("red", [])]


def test_an_ods_is_read(tmp_path: Path) -> None:
    content = (
        '<?xml version="1.0"?><office:document-content '
        'xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
        'xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" '
        'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0">'
        '<office:body><office:spreadsheet><table:table table:name="Chart">'
        + "".join(
            "<table:table-row>"
            + "".join(
                f'<table:table-cell office:value-type="string"><text:p>{c}</text:p></table:table-cell>'
                for c in row
            )
            + "</table:table-row>"
            for row in (HEAD, ("1", "Dimmer", "0-255", ""), ("2", "Red", "0-255", ""))
        )
        + "</table:table></office:spreadsheet></office:body></office:document-content>"
    )
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
        archive.writestr(
            "META-INF/manifest.xml",
            '<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"/>',
        )
    (tmp_path / "chart.ods").write_bytes(out.getvalue())
    assert [p.parameter for p in draft(tmp_path / "chart.ods").document.modes[0].parameters] == [
        "dimmer",
        "red",
    ]


def test_lines_drawn_with_plus_and_minus_signs_part_no_table():
    """The titles above such a line are those of the rows below it."""
    source = from_text(
        "Slot | Name | DMX\n-----+------+------\n1 | Dimmer | 0-255\n2 | Zoom | 0-255\n", "pasted"
    )
    assert texts(source) == [["Slot", "Name", "DMX"], ["1", "Dimmer", "0-255"], ["2", "Zoom", "0-255"]]
