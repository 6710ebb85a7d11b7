"""Charts with something hard: kelvin sent as they are, holds, smoothing in a slot, marked slots."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

KELVIN = (
    P(("dimmer",), "Intensity", (1, 2), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(
        ("color-temperature",),
        "CCT",
        (3, 4),
        ranges=(R(2500, 9000, "value is kelvin", span=span(2500, 9000, "K", raw=True)),),
        wide=True,
        doubt="may",
        why="values below 2500 and above 9000 are not told",
    ),
    P(("tint", "green-correction"), "Tint", (5,), text="magenta to green"),
    P(("cie-x",), "x", (6, 7), text="0.0000 to 0.8000", spans=(span(0, 0.8, "1"),), wide=True),
    P(("cie-y",), "y", (8, 9), text="0.0000 to 0.9000", spans=(span(0, 0.9, "1"),), wide=True),
    P(("white-color-crossfade",), "Crossfade white to color", (10,), text="0 to 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobe",
        (11,),
        ranges=(k.out(0, 9, "off"), k.flash(10, 255, "0.5 to 25 Hz", (0.5, 25))),
    ),
)


@chart(
    "second-kelvin",
    "two slots joined by a plus, value ranges of 16 bits",
    "pdf",
    "en",
    "Sallowfield",
    "Dipper CX",
    7,
)
def kelvin(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 13)
    pdf.cell(text="Mode 5: Color coordinates", new_x="LMARGIN", new_y="NEXT")
    pdf.ln(2)
    pdf.set_font("Helvetica", size=9.5)
    with pdf.table(col_widths=(16, 50, 30, 50), width=146, align="L", line_height=6) as table:
        table.row(["Slot", "Parameter", "Value", "Meaning"])
        for p in KELVIN:
            rows = [(r.lo, r.hi, r.text) for r in p.ranges] or [(0, p.top, p.text)]
            for n, (lo, hi, text) in enumerate(rows):
                row = table.row()
                if n == 0:
                    row.cell("+".join(map(str, p.slots)), rowspan=len(rows))
                    row.cell(p.label, rowspan=len(rows))
                row.cell(k.hyphen(lo, hi))
                row.cell(text)
    mode = M(
        "Mode 5: Color coordinates", ("Color coordinates", "Mode 5", "Mode 5: Color coordinates"), 11, KELVIN
    )
    return k.made("Sallowfield", "Dipper CX", [mode], bytes(pdf.output()))


TENIR = (
    P(("dimmer",), "Gradateur", (1, 2), ("Gradateur fin",), "0 à 100 %", k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturateur",
        (3,),
        ranges=(
            k.closed(0, 19, "Fermé"),
            k.flash(20, 199, "Stroboscope lent à rapide"),
            k.opened(200, 255, "Ouvert"),
        ),
    ),
    P(("cyan",), "Cyan", (4,), text="0 à 100 %", spans=k.LEVEL),
    P(("magenta",), "Magenta", (5,), text="0 à 100 %", spans=k.LEVEL),
    P(("yellow",), "Jaune", (6,), text="0 à 100 %", spans=k.LEVEL),
    P(("zoom",), "Zoom", (7,), text="7° à 42°", spans=(span(7, 42, "deg"),)),
    P(
        ("control",),
        "Contrôle",
        (8,),
        ranges=(
            k.nothing(0, 9, "Aucune fonction"),
            R(
                10,
                14,
                "Ventilateur silencieux (maintenir 2 s)",
                sets=("fan", "silent", "Ventilateur silencieux"),
                hold_s=2,
            ),
            R(
                15,
                19,
                "Ventilateur normal (maintenir 2 s)",
                sets=("fan", "normal", "Ventilateur normal"),
                hold_s=2,
            ),
            R(
                20,
                24,
                "Courbe linéaire (maintenir 2 s)",
                sets=("dimmer-curve", "linear", "Courbe linéaire"),
                hold_s=2,
            ),
            R(
                25,
                29,
                "Courbe quadratique (maintenir 2 s)",
                sets=("dimmer-curve", "square", "Courbe quadratique"),
                hold_s=2,
            ),
            k.nothing(30, 199, "Aucune fonction"),
            R(200, 209, "Réinitialisation (maintenir 5 s)", hazard="reset", hold_s=5),
            k.nothing(210, 255, "Aucune fonction"),
        ),
    ),
)


@chart("second-tenir", "ruled, holds in brackets", "pdf", "fr", "Aubrelle", "Pinson 300")
def tenir(seed: int) -> Made:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import Paragraph, SimpleDocTemplate, Table

    sheet = getSampleStyleSheet()
    body: list[Any] = [["Canal", "Valeur DMX", "Fonction", "Description"]]
    marks: list[Any] = [("GRID", (0, 0), (-1, -1), 0.4, "#000000"), ("VALIGN", (0, 0), (-1, -1), "MIDDLE")]
    for line in k.lines(TENIR):
        top = len(body)
        for n, (lo, hi, text) in enumerate(line.rows):
            body.append([line.slot if n == 0 else "", k.dash(lo, hi), line.name if n == 0 else "", text])
        marks += [("SPAN", (c, top), (c, len(body) - 1)) for c in (0, 2) if len(line.rows) > 1]
    kept = io.BytesIO()
    parts: list[Any] = [
        Paragraph("Canaux DMX", sheet["Heading1"]),
        Table(body, [45, 75, 100, 220], style=marks),
    ]
    SimpleDocTemplate(kept, title="Pinson 300", invariant=1).build(parts)
    return k.made("Aubrelle", "Pinson 300", [k.mode(TENIR)], kept.getvalue())


MENU = "As set in the menu"
RESPONSE = P(
    ("smoothing",),
    "Dimmer response",
    ranges=(
        k.optional(R(0, 51, MENU, "as-menu"), sets=("smoothing",)),
        R(52, 101, "Off", sets=("smoothing", "off", "Off"), may={"does": ("nothing",)}),
        R(102, 152, "Fast", sets=("smoothing", "fast", "Fast")),
        R(153, 203, "Medium", sets=("smoothing", "medium", "Medium")),
        R(204, 255, "Slow", sets=("smoothing", "slow", "Slow")),
    ),
    doubt="may",
    why="the name leaves open whether a curve or smoothing is meant",
)
MARKED = (
    P(("dimmer", "intensity-master"), "Master", text="0-100%", spans=k.LEVEL),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 10, "Off"), k.flash(11, 255, "Slow to fast"))),
    P(("red",), "Red", text="0-100%", spans=k.LEVEL),
    P(("green",), "Green", text="0-100%", spans=k.LEVEL),
    P(("blue",), "Blue", text="0-100%", spans=k.LEVEL),
    P(("white",), "White", text="0-100%", spans=k.LEVEL),
    RESPONSE,
)
MARKED_PLANS = (("4ch", "- - 1 2 3 4 -"), ("6ch", "1 2 3 4 5 6 -"), ("7ch", "1 2 3 4 5 6 7"))


@chart(
    "second-marked",
    "stars where a mode lacks a slot, with a legend",
    "xlsx",
    "en",
    "Birchover",
    "Firecrest 12",
    13,
)
def marked(seed: int) -> Made:
    from openpyxl import Workbook

    book = Workbook()
    book.properties.created = book.properties.modified = datetime.datetime(2026, 1, 2)
    sheet = book.worksheets[0]
    sheet.title = "Channels"
    sheet.append([*(name for name, _ in MARKED_PLANS), "Function", "Value", "Description"])
    for side in k.sides(MARKED, *(plan for _, plan in MARKED_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = [None if n else ("*" if s is None else s) for s in side.slots]
            sheet.append([*slots, None if n else side.name, k.zeros(lo, hi), text])
    sheet.append([])
    sheet.append(["* not in this mode"])
    kept = io.BytesIO()
    book.save(kept)
    modes = [k.mode(k.seat(MARKED, plan), name) for name, plan in MARKED_PLANS]
    return k.made("Birchover", "Firecrest 12", modes, k.steady(kept.getvalue()))
