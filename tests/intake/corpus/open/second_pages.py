"""Manuals' pages: German mode columns first, French lists without a table, paired slots."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

DERBY = (
    P(("dimmer", "intensity-master"), "Dimmer", text="0 % - 100 %", spans=k.LEVEL),
    P(("red",), "Rot", text="0 % - 100 %", spans=k.LEVEL),
    P(("green",), "Grün", text="0 % - 100 %", spans=k.LEVEL),
    P(("blue",), "Blau", text="0 % - 100 %", spans=k.LEVEL),
    P(("warm-white",), "Warmweiß", text="0 % - 100 %", spans=k.LEVEL),
    P(("cool-white",), "Kaltweiß", text="0 % - 100 %", spans=k.LEVEL),
    P(("amber",), "Amber", text="0 % - 100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(
            k.closed(0, 5, "Geschlossen"),
            k.opened(6, 10, "Offen"),
            k.pulse(11, 33, "Impulseffekt, zunehmende Geschwindigkeit"),
            k.chance(34, 56, "Zufälliger Strobe-Effekt, zunehmende Geschwindigkeit"),
            k.opened(57, 79, "Offen"),
            k.flash(80, 250, "Strobe-Effekt, zunehmende Geschwindigkeit"),
            k.opened(251, 255, "Offen"),
        ),
    ),
    P(
        ("color-temperature", "color-correction"),
        "Farbtemperatur",
        ranges=(
            k.nothing(0, 15, "Keine Funktion"),
            *(
                R(16 + 60 * n, 75 + 60 * n, f"{kelvin} K", spans_also=(span(kelvin, kelvin, "K"),))
                for n, kelvin in enumerate((3200, 4200, 5600, 6500))
            ),
        ),
    ),
    P(
        ("macro", "effect"),
        "Automatikprogramm",
        ranges=(
            k.nothing(0, 7, "Keine Funktion"),
            *(k.runs(8 + 31 * n, 38 + 31 * n, f"Programm {n + 1}") for n in range(8)),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Geschwindigkeit Automatikprogramm", text="Zunehmend"),
    P(
        ("dimmer-curve",),
        "Dimmerkurve",
        ranges=(
            k.optional(R(0, 63, "Gemäß Menüeinstellung", "as-menu"), sets=("dimmer-curve",)),
            R(64, 127, "Linear", sets=("dimmer-curve", "linear", "Linear")),
            R(128, 191, "Exponentiell", sets=("dimmer-curve", "exponential", "Exponentiell")),
            R(192, 255, "S-Kurve", sets=("dimmer-curve", "s", "S-Kurve")),
        ),
    ),
)
DERBY_PLANS = (("8-Kanal", "1 2 3 4 5 6 7 8 - - - -"), ("12-Kanal", "1 2 3 4 5 6 7 8 9 10 11 12"))


@chart(
    "second-derby",
    "slot columns of two modes, value, name and text in one cell",
    "pdf",
    "de",
    "Rehwinkel",
    "Stieglitz 12",
)
def derby(seed: int) -> Made:
    from fpdf import FPDF
    from fpdf.enums import TableCellFillMode
    from fpdf.fonts import FontFace

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.set_margin(18)
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 14)
    pdf.cell(text="Funktionen im 8- und 12-Kanal-Modus", new_x="LMARGIN", new_y="NEXT")
    pdf.ln(2)
    pdf.set_font("Helvetica", size=9)
    head = FontFace(emphasis="BOLD", color=(255, 255, 255), fill_color=(70, 70, 70))
    with pdf.table(
        col_widths=(18, 18, 32, 40, 62),
        headings_style=head,
        line_height=5,
        cell_fill_color=(240, 240, 240),
        cell_fill_mode=TableCellFillMode.NONE,
    ) as table:
        table.row(["8-Kanal", "12-Kanal", "DMX-Wert", "Bezeichnung", "Funktion"])
        for side in k.sides(DERBY, *(plan for _, plan in DERBY_PLANS)):
            tall = len(side.rows)
            for n, (lo, hi, text) in enumerate(side.rows):
                row = table.row()
                if n == 0:
                    for slot in side.slots:
                        row.cell("" if slot is None else str(slot), rowspan=tall, align="C")
                row.cell(k.zeros(lo, hi).replace("-", " - "), align="C")
                if n == 0:
                    row.cell(side.name, rowspan=tall)
                row.cell(text)
    pdf.ln(6)
    pdf.set_font("Helvetica", "B", 12)
    pdf.cell(text="Fehlerbehebung", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=9)
    with pdf.table(col_widths=(60, 110), line_height=5) as table:
        table.row(["Fehler", "Abhilfe"])
        table.row(["Keine Reaktion auf DMX", "Startadresse und Kabel prüfen"])
        table.row(["Kein Licht", "Netzanschluss und Sicherung prüfen"])
    modes = [k.mode(k.seat(DERBY, plan), name, name, f"{name}-Modus") for name, plan in DERBY_PLANS]
    return k.made("Rehwinkel", "Stieglitz 12", modes, bytes(pdf.output()))


CHENIL = (
    P(("dimmer",), "Intensité", fine=("Intensité fin",), text="0 % à 100 %", spans=k.LEVEL),
    P(
        ("color-temperature",),
        "Température de couleur",
        fine=("Température de couleur fin",),
        text="de 2700 K à 6500 K",
        spans=(span(2700, 6500, "K"),),
    ),
    P(("green-correction", "tint"), "Correction vert/magenta", text="du magenta au vert"),
    P(("hue",), "Teinte", text="0° à 360°", spans=(span(0, 360, "deg"),)),
    P(("saturation",), "Saturation", text="0 % à 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Stroboscope",
        ranges=(k.out(0, 10, "Pas de stroboscope"), k.flash(11, 255, "Stroboscope de 1 Hz à 20 Hz", (1, 20))),
    ),
    P(
        ("fan-mode", "fan"),
        "Ventilateur",
        ranges=(
            k.fan_choice(0, 100, "Automatique"),
            k.fan_choice(101, 200, "Silencieux"),
            k.fan_choice(201, 255, "Vitesse maximale"),
        ),
    ),
)
CHENIL_PLANS = (("Mode simple", "1 2 3 - - 4 5"), ("Mode étendu", "1/2 3/4 5 6 7 8 9"))


@chart("second-chenil", "a line a slot, values indented below", "pdf", "fr", "Orgeval Lumière", "Loriot P2")
def chenil(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(595, 842), invariant=1)
    modes = []
    for name, plan in CHENIL_PLANS:
        mode = k.mode(k.seat(CHENIL, plan), name)
        modes.append(mode)
        page.setFont("Helvetica-Bold", 14)
        page.drawString(70, 770, name)
        page.setFont("Helvetica", 10)
        page.drawString(70, 750, f"Ce mode occupe {mode.footprint} canaux.")
        y = 722.0
        for line in k.lines(mode.params):
            page.setFont("Helvetica-Bold", 10)
            page.drawString(70, y, f"Canal {line.slot} : {line.name}")
            y -= 15
            page.setFont("Helvetica", 10)
            for lo, hi, text in line.rows:
                page.drawString(100, y, k.hyphen(lo, hi))
                page.drawString(170, y, text or "réglage fin")
                y -= 14
            y -= 5
        page.showPage()
    page.save()
    return k.made("Orgeval Lumière", "Loriot P2", modes, kept.getvalue())


PAIRED = (
    P(("pan",), "Pan", (1, 2), text="0 to 540 degrees", spans=(span(0, 540, "deg"),), wide=True),
    P(("tilt",), "Tilt", (3, 4), text="0 to 270 degrees", spans=(span(0, 270, "deg"),), wide=True),
    P(("dimmer",), "Intensity", (5, 6), text="0 to 100 percent", spans=k.LEVEL, wide=True),
    P(("cyan",), "Cyan", (7, 8), text="0 to 100 percent", spans=k.LEVEL, wide=True),
    P(("magenta",), "Magenta", (9, 10), text="0 to 100 percent", spans=k.LEVEL, wide=True),
    P(("yellow",), "Yellow", (11, 12), text="0 to 100 percent", spans=k.LEVEL, wide=True),
    P(("warm-correction", "color-correction"), "CTO", (13,), text="0 to 100 percent", spans=k.LEVEL),
    P(("zoom",), "Zoom", (14, 15), text="5 to 50 degrees", spans=(span(5, 50, "deg"),), wide=True),
    P(("focus",), "Focus", (16, 17), text="near to far", wide=True),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (18,),
        ranges=(
            k.closed(0, 4, "closed"),
            k.flash(5, 204, "strobe 1 to 20 Hz", (1, 20)),
            k.chance(205, 249, "random strobe"),
            k.opened(250, 255, "open"),
        ),
    ),
    P(
        ("movement-macro", "macro", "effect"),
        "Macro",
        (19,),
        ranges=(
            k.nothing(0, 31, "no macro"),
            *(k.runs(32 + 32 * n, 63 + 32 * n, f"macro {n + 1}") for n in range(7)),
        ),
    ),
    P(
        ("control", "reset"),
        "Control",
        (20,),
        ranges=(k.nothing(0, 229, "no function"), k.reset(230, 255, "reset")),
    ),
)


@chart("second-paired", "paired slots with one range", "pdf", "en", "Fallowmere", "Godwit W")
def paired(seed: int) -> Made:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import LongTable, Paragraph, SimpleDocTemplate

    sheet = getSampleStyleSheet()
    body: list[Any] = [["Slots", "Parameter", "DMX", "Range"]]
    marks: list[Any] = [
        ("BOX", (0, 0), (-1, -1), 0.8, "#000000"),
        ("LINEBELOW", (0, 0), (-1, 0), 0.8, "#000000"),
    ]
    marks += [("FONTSIZE", (0, 0), (-1, -1), 8.5), ("FONTNAME", (0, 0), (-1, 0), "Helvetica-Bold")]
    for number, p in enumerate(PAIRED):
        slots = "-".join(map(str, p.slots))
        rows = [(k.hyphen(r.lo, r.hi), r.text) for r in p.ranges] or [
            ("0-65535" if len(p.slots) == 2 else "0-255", p.text)
        ]
        if number % 2:
            marks.append(("BACKGROUND", (0, len(body)), (-1, len(body) + len(rows) - 1), "#e6eef6"))
        for n, (values, text) in enumerate(rows):
            body.append([*((slots, p.label) if n == 0 else ("", "")), values, text])
    kept = io.BytesIO()
    parts: list[Any] = [
        Paragraph("Appendix B: DMX parameters", sheet["Heading1"]),
        Paragraph("Two slots with one range are coarse and fine, in this order.", sheet["BodyText"]),
        LongTable(body, [50, 90, 70, 200], style=marks, repeatRows=1, spaceBefore=8),
    ]
    SimpleDocTemplate(kept, title="Godwit W", invariant=1).build(parts)
    return k.made("Fallowmere", "Godwit W", [M("", (), 20, PAIRED)], kept.getvalue())
