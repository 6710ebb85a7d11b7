"""Paper for charts made by other hands: a flow of reportlab parts, a book of fpdf2, and rows of cells."""

from __future__ import annotations

import datetime
import io
import logging
from collections.abc import Callable, Iterable, Sequence
from typing import Any

from fpdf import FPDF

from intake.corpus.content import M, P
from intake.corpus.open import fresh_kit as k
from intake.corpus.writers.fonts import face

logging.getLogger("fontTools").setLevel(logging.ERROR)

Rows = list[list[str]]
Value = Callable[[int, int], str]
A5 = (148.0, 210.0)
"""In millimeters."""


def named(params: Sequence[P], *parts: str, joint: str = " ", count: bool = True) -> M:
    """A mode whose title is made of parts; any run of them but the count alone names it."""
    runs = [parts[a:b] for a in range(len(parts)) for b in range(a + 1, len(parts) + 1)]
    if count and len(parts) > 1:
        runs.remove(parts[-1:])
    names = (" ".join(run) for run in runs)
    return k.mode(params, joint.join(parts), *names)


def tilde(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo}~{hi}"


def body(
    params: Iterable[P], columns: str, value: Value = k.hyphen, fine: str = "", again: bool = False
) -> Rows:
    """Rows of a chart. Columns are named: slot, name, value, low, high, hex, share, text, default.

    `fine` is what stands in the text column of fine bytes; `again` repeats slot and name in every row.
    """
    made: Rows = []
    for line in k.lines(params):
        default = line.p.fine_default if line.byte else line.p.default
        for n, (lo, hi, text) in enumerate(line.rows):
            first = n == 0 or again
            share = f"{round(lo / 2.55)}-{round(hi / 2.55)}%" if lo != hi else f"{round(lo / 2.55)}%"
            cells = {
                "slot": str(line.slot) if first else "",
                "name": line.name if first else "",
                "default": "" if default is None or not first else str(default),
                "value": value(lo, hi),
                "low": str(lo),
                "high": str(hi),
                "hex": f"{lo:02X}-{hi:02X}" if lo != hi else f"{lo:02X}",
                "share": share,
                "text": fine if line.byte else text,
            }
            made.append([cells[column] for column in columns.split()])
    return made


def beside(
    params: Sequence[P], plans: Sequence[str], columns: str, value: Value = k.hyphen, lacks: str = "-"
) -> Rows:
    """Rows of a chart with its modes side by side; `slots` stands for one column a mode."""
    made: Rows = []
    for side in k.sides(params, *plans):
        for n, (lo, hi, text) in enumerate(side.rows):
            row: list[str] = []
            for column in columns.split():
                if column == "slots":
                    row += ["" if n else lacks if slot is None else str(slot) for slot in side.slots]
                else:
                    row.append({"name": "" if n else side.name, "value": value(lo, hi), "text": text}[column])
            made.append(row)
    return made


def merges(rows: Rows, columns: Iterable[int], first: int = 1) -> list[tuple[Any, ...]]:
    """reportlab's marks for cells that reach over the blank ones below them."""
    marks: list[tuple[Any, ...]] = []
    for x in columns:
        starts = [y for y in range(first, len(rows)) if rows[y][x]]
        for y, end in zip(starts, [*starts[1:], len(rows)], strict=True):
            if end - y > 1:
                marks.append(("SPAN", (x, y), (x, end - 1)))
    return marks


def letter(name: str) -> str:
    """A face of matplotlib's under its own name, for reportlab."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    regular, bold = face(name)
    for key, path in ((f"fifth-{name}", regular), (f"fifth-{name}-Bold", bold)):
        if key not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(key, str(path)))
    return f"fifth-{name}"


def say(text: str, size: float = 9, font: str = "Helvetica", after: float = 4, align: int = 0) -> Any:
    """A paragraph."""
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.platypus import Paragraph

    style = ParagraphStyle(
        "p", fontName=font, fontSize=size, leading=size * 1.25, spaceAfter=after, alignment=align
    )
    style.keepWithNext = int(size > 10)
    return Paragraph(text.replace("&", "&amp;").replace("\n", "<br/>"), style)


def grid(
    rows: Rows,
    widths: Sequence[float],
    *marks: tuple[Any, ...],
    font: str = "Helvetica",
    size: float = 8.5,
    heads: int = 1,
    align: int = 0,
    white: bool = False,
) -> Any:
    """A table of wrapped cells; `white` prints its head in white, for a dark ground."""
    from reportlab.lib.colors import black
    from reportlab.lib.colors import white as paper
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.platypus import Paragraph, Table

    bold = "Times-Bold" if font == "Times-Roman" else f"{font}-Bold"
    plain = ParagraphStyle("c", fontName=font, fontSize=size, leading=size * 1.2, alignment=align)
    ink = paper if white else black
    strong = ParagraphStyle("h", parent=plain, fontName=bold, textColor=ink)
    cells = [
        [Paragraph(t.replace("\n", "<br/>"), strong if y < heads else plain) if t else "" for t in row]
        for y, row in enumerate(rows)
    ]
    pad = [(f"{side}PADDING", (0, 0), (-1, -1), 2) for side in ("TOP", "BOTTOM")]
    style = [("VALIGN", (0, 0), (-1, -1), "TOP"), *pad, *marks]
    return Table(cells, list(widths), repeatRows=heads, style=style, hAlign="LEFT", spaceAfter=10)


def flow(parts: list[Any], foot: str, paper: tuple[float, float] = (595, 842), head: str = "") -> bytes:
    """Parts down as many pages as they need, with a running head and a foot."""
    from reportlab.platypus import SimpleDocTemplate

    kept = io.BytesIO()
    doc = SimpleDocTemplate(
        kept, pagesize=paper, leftMargin=46, rightMargin=46, topMargin=54, bottomMargin=50, invariant=1
    )

    def page(canvas: Any, made: Any) -> None:
        canvas.setFont("Helvetica", 7.5)
        canvas.drawString(46, paper[1] - 34, head)
        canvas.drawString(46, 30, foot)
        canvas.drawRightString(paper[0] - 46, 30, str(made.page))

    doc.build(parts, onFirstPage=page, onLaterPages=page)
    return kept.getvalue()


class Book(FPDF):
    """An fpdf2 document with a line at the head and at the foot of each page."""

    top = ""
    foot = ""
    font = "Helvetica"

    def header(self) -> None:
        if self.top:
            self.set_font(self.font, size=7.5)
            self.cell(0, 5, self.top, align="R", new_x="LMARGIN", new_y="NEXT")
            self.ln(3)

    def footer(self) -> None:
        self.set_y(-13)
        self.set_font(self.font, size=7.5)
        self.cell(0, 5, f"{self.foot}  {self.page_no()}", align="C")

    def say(self, text: str, size: float = 9, bold: bool = False, after: float = 2) -> None:
        self.set_font(self.font, "B" if bold else "", size)
        self.multi_cell(0, size * 0.5, text, new_x="LMARGIN", new_y="NEXT", align="L")
        self.ln(after)

    def grid(
        self, rows: Rows, widths: Sequence[float], merged: Iterable[int] = (), size: float = 8.5, **how: Any
    ) -> None:
        """A table of fpdf2's own; cells of the columns `merged` reach over the blank ones below."""
        self.set_font(self.font, size=size)
        columns = set(merged)
        height = how.pop("line_height", size * 0.52)
        with self.table(
            col_widths=tuple(widths), width=sum(widths), line_height=height, align="LEFT", **how
        ) as made:
            for y, cells in enumerate(rows):
                row = made.row()
                for x, text in enumerate(cells):
                    if x not in columns or y == 0:
                        row.cell(text)
                    elif text:
                        below = next((n for n in range(y + 1, len(rows)) if rows[n][x]), len(rows))
                        row.cell(text, rowspan=below - y)
        self.ln(4)


def book(
    font: str = "Helvetica",
    top: str = "",
    foot: str = "",
    paper: str | tuple[float, float] = "A4",
    across: bool = False,
) -> Book:
    """An empty book at its first page; a font is one of fpdf2's own, or a face by its name."""
    made = Book("landscape" if across else "portrait", format=paper)
    made.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    if font in ("dejavu", "serif", "stix", "vera"):
        for emphasis, path in zip(("", "B"), face(font), strict=True):
            made.add_font(font, emphasis, str(path))
    made.font, made.top, made.foot = font, top, foot
    made.set_auto_page_break(True, 18)
    made.set_margin(16)
    made.add_page()
    return made
