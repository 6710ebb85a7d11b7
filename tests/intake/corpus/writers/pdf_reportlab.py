"""Writes a manual as PDF with reportlab: the same looks in other hands, with other fonts and text order."""

from __future__ import annotations

from io import BytesIO
from typing import Any

from reportlab.lib import colors
from reportlab.lib.pagesizes import A4, LETTER, landscape
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import LongTable, PageBreak, Paragraph, SimpleDocTemplate, Spacer
from reportlab.platypus import Table as SmallTable

from intake.corpus.grids import Break, Element, Heading, Para, Table
from intake.corpus.writers.fonts import FACES, face

PAPERS = {"A4": A4, "letter": LETTER, "A4 across": landscape(A4)}
CORE = {"helvetica": ("Helvetica", "Helvetica-Bold"), "times": ("Times-Roman", "Times-Bold")}


def _fonts(name: str) -> tuple[str, str]:
    if name in CORE:
        return CORE[name]
    regular, bold = face(name)
    for key, path in ((name, regular), (f"{name}-bold", bold)):
        if key not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(key, str(path)))
    return name, f"{name}-bold"


def _escaped(text: str, arrows: bool = True) -> str:
    # Of all signs that the charts use, the standard fonts and Vera lack the arrow alone.
    text = text if arrows else text.replace("→", "->")
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\n", "<br/>")


def reportlab_pdf(
    elements: list[Element], font: str = "helvetica", size: float = 9, foot: str = "", paper: str = "A4"
) -> bytes:
    """The manual's bytes; the same elements give the same bytes. `font`: a face, or helvetica, or times."""
    if font not in CORE and font not in FACES:
        raise ValueError(f"no face {font!r}: take one of {', '.join([*CORE, *FACES])}")
    regular, bold = _fonts(font)
    arrows = font not in CORE and font != "vera"
    out = BytesIO()
    doc = SimpleDocTemplate(
        out,
        pagesize=PAPERS[paper],
        leftMargin=16 * mm,
        rightMargin=16 * mm,
        topMargin=16 * mm,
        bottomMargin=18 * mm,
        invariant=1,
        title=foot,
    )
    body = ParagraphStyle("body", fontName=regular, fontSize=size, leading=size * 1.3, spaceAfter=4)
    story: list[Any] = []
    for element in elements:
        match element:
            case Break():
                story.append(PageBreak())
            case Heading(text, level):
                big = {1: size + 6, 2: size + 2.5}.get(level, size + 0.5)
                style = ParagraphStyle(
                    f"h{level}",
                    fontName=bold,
                    fontSize=big,
                    leading=big * 1.25,
                    spaceBefore=5,
                    spaceAfter=3,
                    keepWithNext=1,
                )
                story.append(Paragraph(_escaped(text, arrows), style))
            case Para(text):
                story.append(Paragraph(_escaped(text, arrows), body))
            case Table():
                story += [_table(element, regular, bold, doc.width, arrows), Spacer(1, 5)]

    def page(canvas: Any, made: Any) -> None:
        canvas.setFont(regular, 7.5)
        canvas.drawString(16 * mm, 10 * mm, foot)
        canvas.drawRightString(PAPERS[paper][0] - 16 * mm, 10 * mm, str(made.page))

    doc.build(story, onFirstPage=page, onLaterPages=page)
    return out.getvalue()


def _table(table: Table, regular: str, bold: str, room: float, arrows: bool) -> Any:
    grid, look = table.grid, table.look
    heads = len(grid.head)
    align = 1 if look.center else 0
    normal = ParagraphStyle(
        "cell", fontName=regular, fontSize=look.size, leading=look.size * 1.2, alignment=align
    )
    strong = ParagraphStyle("head", parent=normal, fontName=bold)
    rows: list[list[Any]] = []
    style: list[tuple[Any, ...]] = [
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE" if look.lines == "ruled" else "TOP")
    ]
    style += [("TOPPADDING", (0, 0), (-1, -1), 1.5), ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5)]
    style += [("LEFTPADDING", (0, 0), (-1, -1), 3), ("RIGHTPADDING", (0, 0), (-1, -1), 3)]
    merged = False
    for y, line in enumerate([*grid.head, *grid.body]):
        made: list[Any] = []
        for x, cell in enumerate(line):
            made.append(
                ""
                if cell is None
                else Paragraph(_escaped(cell.text, arrows), strong if y < heads else normal)
            )
            if cell is not None and (cell.rows > 1 or cell.cols > 1):
                style.append(("SPAN", (x, y), (x + cell.cols - 1, y + cell.rows - 1)))
                merged = merged or y >= heads
        rows.append(made)
    if look.lines == "ruled":
        style.append(("GRID", (0, 0), (-1, -1), 0.5, colors.black))
    elif look.lines == "rows":
        style.append(("LINEBELOW", (0, 0), (-1, -1), 0.4, colors.grey))
    elif look.lines == "frame":
        style += [("LINEBELOW", (0, heads - 1), (-1, heads - 1), 0.8, colors.black)] if heads else []
    elif look.lines == "zebra":
        style.append(("ROWBACKGROUNDS", (0, heads), (-1, -1), [colors.whitesmoke, colors.lightgrey]))
    scale = min(1.0, room / (sum(grid.widths) * mm))
    kind = SmallTable if merged else LongTable
    return kind(rows, [w * mm * scale for w in grid.widths], repeatRows=heads, style=style, hAlign="LEFT")
