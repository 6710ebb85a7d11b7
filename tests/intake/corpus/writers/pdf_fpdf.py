"""Writes a manual as PDF with fpdf2: ruled, bare and zebra tables, merged cells, repeated headers."""

from __future__ import annotations

import datetime
import logging
from dataclasses import replace

from fpdf import FPDF
from fpdf.enums import TableBordersLayout
from fpdf.fonts import FontFace

from intake.corpus.grids import Break, Element, Heading, Look, Para, Table
from intake.corpus.writers.fonts import face

logging.getLogger("fontTools").setLevel(logging.ERROR)

LINES = {
    "ruled": TableBordersLayout.ALL,
    "zebra": TableBordersLayout.NONE,
    "bare": TableBordersLayout.NONE,
    "rows": TableBordersLayout.HORIZONTAL_LINES,
    "frame": TableBordersLayout.MINIMAL,
}


class _Manual(FPDF):
    foot = ""

    def footer(self) -> None:
        self.set_y(-12)
        self.set_font("body", size=8)
        self.cell(0, 6, f"{self.foot}  ·  {self.page_no()}", align="C")


def fpdf_pdf(
    elements: list[Element], font: str = "dejavu", size: float = 9.5, foot: str = "", paper: str = "A4"
) -> bytes:
    """The manual's bytes; the same elements give the same bytes."""
    if font == "vera":
        elements = [_no_arrows(element) for element in elements]
    pdf = _Manual(format=paper)
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    regular, bold = face(font)
    pdf.add_font("body", "", str(regular))
    pdf.add_font("body", "B", str(bold))
    pdf.foot = foot
    pdf.set_auto_page_break(True, 16)
    pdf.add_page()
    for element in elements:
        match element:
            case Break():
                pdf.add_page()
            case Heading(text, level):
                if level == 3 and pdf.get_y() > pdf.h - 45:
                    pdf.add_page()
                pdf.set_font("body", "B", {1: size + 5, 2: size + 2}.get(level, size + 0.5))
                pdf.ln(2)
                pdf.multi_cell(0, size * 0.62, text, align="L", new_x="LMARGIN", new_y="NEXT")
                pdf.ln(1)
            case Para(text):
                pdf.set_font("body", "", size)
                pdf.multi_cell(0, size * 0.5, text, align="L", new_x="LMARGIN", new_y="NEXT")
                pdf.ln(1.5)
            case Table():
                _table(pdf, element)
    return bytes(pdf.output())


def _no_arrows(element: Element) -> Element:
    """Vera has no arrow: `->` stands for it, as typesetters do."""
    if not isinstance(element, Table):
        return element
    grid = element.grid
    plain = [[cell and replace(cell, text=cell.text.replace("→", "->")) for cell in row] for row in grid.body]
    return Table(replace(grid, body=plain), element.look)


def _table(pdf: _Manual, table: Table) -> None:
    grid, look = table.grid, table.look
    pdf.set_font("body", "", look.size)
    total = min(sum(grid.widths), pdf.epw)
    with pdf.table(
        col_widths=tuple(grid.widths),
        width=total,
        align="LEFT",
        borders_layout=LINES[look.lines],
        cell_fill_color=(228, 232, 238) if look.lines == "zebra" else None,
        cell_fill_mode="ROWS" if look.lines == "zebra" else "NONE",
        headings_style=FontFace(emphasis="BOLD"),
        num_heading_rows=len(grid.head),
        first_row_as_headings=bool(grid.head),
        line_height=look.size * 0.5,
        text_align="CENTER" if look.center else "LEFT",
        padding=(0.6, 1.2),
        repeat_headings=1,
        v_align="MIDDLE" if look.lines == "ruled" else "TOP",
    ) as made:
        for line in [*grid.head, *grid.body]:
            row = made.row()
            for cell in line:
                if cell is not None:
                    row.cell(cell.text, colspan=cell.cols, rowspan=cell.rows)
    pdf.ln(3)


LOOKS = {name: Look(name) for name in LINES}
