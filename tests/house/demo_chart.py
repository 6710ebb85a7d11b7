"""Makes the demo's chart: three pages of an invented maker's user guide, the same bytes every time."""

from __future__ import annotations

import io
from collections.abc import Sequence
from pathlib import Path
from typing import Any

PATH = Path("catalog", "charts", "snorrigand-quindle-30.pdf")
MAKER, MODEL = "Snorrigand", "Quindle 30"
TITLE = "Quindle 30 user guide"

Row = tuple[str, str, str, str]
"""Slot, function, value, description; blank where the cell above goes on."""

BASIC: Sequence[Row] = (
    ("1", "Dimmer", "000 - 255", "0 to 100 %"),
    ("2", "Shutter", "000 - 009", "Closed"),
    ("", "", "010 - 019", "Open"),
    ("", "", "020 - 255", "Strobe, 1 to 20 Hz"),
    # Where the 540 degrees begin is not printed here.
    ("3", "Pan", "000 - 255", "540°"),
    ("4", "Tilt", "000 - 255", "-110° to 110°"),
    ("5", "Color temperature", "000 - 255", "2700 K to 6500 K"),
    ("6", "Zoom", "000 - 255", "8° to 46°"),
)
EXTENDED: Sequence[Row] = (
    ("1", "Dimmer", "000 - 255", "0 to 100 %"),
    ("2", "Dimmer fine", "000 - 255", ""),
    ("3", "Shutter", "000 - 009", "Closed"),
    ("", "", "010 - 019", "Open"),
    ("", "", "020 - 255", "Strobe, 1 to 20 Hz"),
    ("4", "Pan", "000 - 255", "-270° to 270°"),
    ("5", "Pan fine", "000 - 255", ""),
    ("6", "Tilt", "000 - 255", "-110° to 110°"),
    ("7", "Tilt fine", "000 - 255", ""),
    ("8", "Color temperature", "000 - 255", "2700 K to 6500 K"),
    ("9", "Color temperature fine", "000 - 255", ""),
    ("10", "Zoom", "000 - 255", "8° to 46°"),
    ("11", "Frost", "000 - 255", "0 to 100 %"),
    ("12", "Control", "000 - 009", "No function"),
    ("", "", "010 - 019", "Response: fast (hold 3 s)"),
    # Printed wrong, as happens: it begins inside the row above.
    ("", "", "015 - 029", "Response: smooth (hold 3 s)"),
    ("", "", "030 - 239", "No function"),
    ("", "", "240 - 255", "Reset (hold 5 s)"),
)
INTRODUCTION = (
    "The Quindle 30 is a moving spotlight with white light from 2700 K to 6500 K.",
    "It is invented, as its maker is: this guide belongs to the demonstration catalog.",
    "",
    "Before you begin",
    "Hang it with a safety bond. Work at height, rigging and electrical work belong to qualified",
    "people and to local codes. The head moves without warning: keep people clear of it.",
    "Strobe light can bring on seizures: warn people before it is used.",
    "",
    "Menu",
    "Setup > Mode: Basic, Extended",
    "Setup > Response: Fast, Smooth",
    "Setup > Address: 001 to 512",
)

_LEFT, _TOP, _LINE = 56.0, 780.0, 17.0
_COLUMNS = (0.0, 44.0, 170.0, 270.0, 484.0)


def demo_chart() -> bytes:
    """The PDF: a page of words, a page for each mode."""
    from reportlab.pdfgen.canvas import Canvas

    out = io.BytesIO()
    # Without compression: two libraries of one name may squeeze the same text into different bytes.
    canvas: Any = Canvas(out, pagesize=(595.0, 842.0), pageCompression=0, invariant=1)
    canvas.setTitle(TITLE)
    canvas.setAuthor(MAKER)
    _words(canvas)
    _mode(canvas, "Mode 1: Basic (6 channels)", BASIC, 2)
    _mode(canvas, "Mode 2: Extended (12 channels)", EXTENDED, 3)
    canvas.save()
    return out.getvalue()


def _words(canvas: Any) -> None:
    canvas.setFont("Helvetica-Bold", 22)
    canvas.drawString(_LEFT, _TOP, f"{MAKER} {MODEL}")
    canvas.setFont("Helvetica", 12)
    canvas.drawString(_LEFT, _TOP - 24, "User guide, revision B, for firmware 1.4")
    for number, line in enumerate(INTRODUCTION):
        canvas.setFont("Helvetica-Bold" if line in ("Before you begin", "Menu") else "Helvetica", 10)
        canvas.drawString(_LEFT, _TOP - 70 - _LINE * number, line)
    _foot(canvas, 1)


def _mode(canvas: Any, title: str, rows: Sequence[Row], page: int) -> None:
    canvas.setFont("Helvetica-Bold", 14)
    canvas.drawString(_LEFT, _TOP, title)
    top = _TOP - 16
    _row(canvas, top, ("Channel", "Function", "Value", "Description"), bold=True)
    for number, row in enumerate(rows, start=1):
        _row(canvas, top - _LINE * number, row, bold=False)
    bottom = top - _LINE * (len(rows) + 1)
    canvas.setLineWidth(0.6)
    for x in _COLUMNS:
        canvas.line(_LEFT + x, top, _LEFT + x, bottom)
    for number in range(len(rows) + 2):
        begins = number <= 1 or number > len(rows) or bool(rows[number - 1][0])
        left = 0.0 if begins else _COLUMNS[2]
        canvas.line(_LEFT + left, top - _LINE * number, _LEFT + _COLUMNS[-1], top - _LINE * number)
    _foot(canvas, page)


def _row(canvas: Any, top: float, cells: Row, *, bold: bool) -> None:
    canvas.setFont("Helvetica-Bold" if bold else "Helvetica", 9.5)
    for x, text in zip(_COLUMNS, cells, strict=False):
        canvas.drawString(_LEFT + x + 5, top - 12, text)


def _foot(canvas: Any, page: int) -> None:
    canvas.setFont("Helvetica", 8)
    canvas.drawCentredString(297.5, 40, f"{TITLE}, revision B  ·  {page}")
    canvas.showPage()
