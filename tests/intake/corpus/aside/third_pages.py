"""Manuals' pages: a default in the middle of the table, and mode columns in the middle."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

NEW = datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC)

SPOT = (
    P(
        ("dimmer",),
        "Intensity",
        (1, 2),
        ("Intensity (fine)",),
        "0% to 100%",
        k.LEVEL,
        default=0,
        fine_default=0,
    ),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (3,),
        ranges=(
            k.closed(0, 19, "Blackout"),
            k.opened(20, 49, "Open"),
            k.flash(50, 139, "Strobe, slow to fast"),
            k.pulse(140, 199, "Pulse open, slow to fast"),
            k.chance(200, 249, "Random strobe, slow to fast"),
            k.opened(250, 255, "Open"),
        ),
        default=20,
    ),
    P(("cyan",), "Cyan", (4,), text="0% to 100%", spans=k.LEVEL, default=0),
    P(("magenta",), "Magenta", (5,), text="0% to 100%", spans=k.LEVEL, default=0),
    P(("yellow",), "Yellow", (6,), text="0% to 100%", spans=k.LEVEL, default=0),
    P(("warm-correction", "color-correction"), "CTO", (7,), text="0% to 100%", spans=k.LEVEL, default=0),
    P(
        ("color-wheel",),
        "Color wheel",
        (8,),
        ranges=(
            k.opened(0, 15),
            *k.steps(16, 16, "Dark blue", "Dark green", "Orange", "Red", "Minus green", "CTB"),
            k.rainbow(112, 183, "Rotate clockwise, fast to slow"),
            k.stop(184, 187),
            k.rainbow(188, 255, "Rotate counterclockwise, slow to fast"),
        ),
        default=0,
    ),
    P(
        ("rotating-gobo-wheel", "gobo-wheel"),
        "Gobo wheel 1",
        (9,),
        ranges=(
            k.opened(0, 15),
            *k.steps(16, 16, *(f"Gobo {n}" for n in range(1, 8))),
            *(k.shake(128 + 18 * n, 145 + 18 * n, f"Gobo {n + 1} shake") for n in range(6)),
            k.shake(236, 255, "Gobo 7 shake"),
        ),
        default=0,
    ),
    P(
        ("gobo-index-rotation", "gobo-rotation"),
        "Gobo wheel 1 index/rotation",
        (10, 11),
        ("Gobo wheel 1 index/rotation (fine)",),
        ranges=(
            k.index(0, 127, "Index, 0° to 360°", "gobo", (0, 360)),
            k.spin(128, 190, "Rotate clockwise, fast to slow", "gobo"),
            k.stop(191, 192),
            k.spin(193, 255, "Rotate counterclockwise, slow to fast", "gobo"),
        ),
        default=64,
        fine_default=0,
    ),
    P(("prism",), "Prism", (12,), ranges=(k.out(0, 127, "Out"), R(128, 255, "In")), default=0),
    P(("iris",), "Iris", (13,), text="Open to closed", default=0),
    P(("zoom",), "Zoom", (14,), text="Wide to narrow", default=128),
    P(("focus",), "Focus", (15, 16), ("Focus (fine)",), "Infinity to near", default=128, fine_default=0),
    P(("frost",), "Frost", (17,), text="0% to 100%", spans=k.LEVEL, default=0),
    P(
        ("pan",),
        "Pan",
        (18, 19),
        ("Pan (fine)",),
        "-270° to +270°",
        (span(-270, 270, "deg"),),
        default=128,
        fine_default=0,
    ),
    P(
        ("tilt",),
        "Tilt",
        (20, 21),
        ("Tilt (fine)",),
        "-130° to +130°",
        (span(-130, 130, "deg"),),
        default=128,
        fine_default=0,
    ),
    P(
        ("control",),
        "Fixture control",
        (22,),
        ranges=(
            k.nothing(0, 9, "No function"),
            k.reset(10, 14, "Reset entire fixture (hold 5 s)", 5),
            k.nothing(15, 39, "No function"),
            R(40, 44, "Fan mode: full (hold 1 s)", sets=("fan", "full", "Fan mode: full"), hold_s=1),
            R(
                45,
                49,
                "Fan mode: regulated (hold 1 s)",
                sets=("fan", "regulated", "Fan mode: regulated"),
                hold_s=1,
            ),
            k.nothing(50, 255, "No function"),
        ),
        default=0,
    ),
)


@chart("third-spot", "slot, name, default, low, high, action", "pdf", "en", "Hartsmere", "Osprey P")
def spot(seed: int) -> Made:
    from fpdf import FPDF
    from fpdf.fonts import FontFace

    pdf = FPDF(orientation="landscape")
    pdf.set_creation_date(NEW)
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 15)
    pdf.cell(text="Control menu", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=9)
    with pdf.table(col_widths=(40, 60, 60), width=160, align="L", line_height=5) as table:
        for row in (
            ("Menu", "Submenu", "Options"),
            ("DMX ADDRESS", "", "1 - 491"),
            ("PERSONALITY", "FANS", "FULL, REGULATED"),
            ("", "DISPLAY", "ON, OFF"),
        ):
            table.row(row)
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 15)
    pdf.cell(text="DMX protocol", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=8.5)
    bold = FontFace(emphasis="BOLD", fill_color=(220, 220, 220))
    with pdf.table(
        col_widths=(12, 60, 18, 14, 14, 90), width=220, align="L", line_height=4.8, headings_style=bold
    ) as table:
        table.row(["Slot", "Attribute", "Default", "Low", "High", "Action"])
        for line in k.lines(SPOT):
            tall = len(line.rows)
            default = line.p.fine_default if line.byte else line.p.default
            for n, (lo, hi, text) in enumerate(line.rows):
                row = table.row()
                if n == 0:
                    for cell in (str(line.slot), line.name, str(default)):
                        row.cell(cell, rowspan=tall)
                row.cell(str(lo))
                row.cell(str(hi))
                row.cell(text)
    return k.made("Hartsmere", "Osprey P", [k.mode(SPOT)], bytes(pdf.output()))


TESTA = (
    P(("pan",), "Pan", fine=("Pan fine",), text="0° ÷ 540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0° ÷ 250°", spans=(span(0, 250, "deg"),)),
    P(("movement-speed",), "Velocità movimento", text="Da veloce a lenta"),
    P(("dimmer",), "Dimmer", text="0 ÷ 100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Otturatore",
        ranges=(
            k.closed(0, 3, "Chiuso"),
            k.flash(4, 203, "Strobo, da lento a veloce"),
            k.chance(204, 251, "Strobo casuale"),
            k.opened(252, 255, "Aperto"),
        ),
    ),
    P(("red",), "Rosso", text="0 ÷ 100%", spans=k.LEVEL),
    P(("green",), "Verde", text="0 ÷ 100%", spans=k.LEVEL),
    P(("blue",), "Blu", text="0 ÷ 100%", spans=k.LEVEL),
    P(("white",), "Bianco", text="0 ÷ 100%", spans=k.LEVEL),
    P(("color-temperature",), "Temperatura colore", text="2500 K ÷ 8000 K", spans=(span(2500, 8000, "K"),)),
    P(("zoom",), "Zoom", text="Da stretto a largo"),
    P(
        ("color-macro", "color-preset"),
        "Macro colore",
        ranges=(
            k.nothing(0, 25, "Nessuna macro"),
            *(k.maybe_runs(26 + 46 * n, 71 + 46 * n, f"Macro {n + 1}") for n in range(5)),
        ),
    ),
    P(
        ("reset", "control"),
        "Reset",
        ranges=(k.nothing(0, 199, "Nessuna funzione"), k.reset(200, 255, "Reset completo")),
    ),
)
TESTA_PLANS = (
    ("Base", "1 2 - 3 4 5 6 7 8 - - - -"),
    ("Standard", "1 2 3 4 5 6 7 8 9 - 10 - 11"),
    ("Esteso", "1/2 3/4 5 6 7 8 9 10 11 12 13 14 15"),
)


@chart("third-testa", "mode columns between function and value", "pdf", "it", "Montefalda", "Averla 19")
def testa(seed: int) -> Made:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import LongTable, Paragraph, SimpleDocTemplate

    sheet = getSampleStyleSheet()
    body: list[Any] = [["Funzione", *(name for name, _ in TESTA_PLANS), "Valore", "Descrizione"]]
    marks: list[Any] = [
        ("GRID", (0, 0), (-1, -1), 0.4, "#666666"),
        ("ALIGN", (1, 0), (4, -1), "CENTER"),
        ("BACKGROUND", (0, 0), (-1, 0), "#ffe9c7"),
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
    ]
    for side in k.sides(TESTA, *(plan for _, plan in TESTA_PLANS)):
        top = len(body)
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n else ("—" if s is None else s) for s in side.slots]
            body.append(["" if n else side.name, *slots, k.hyphen(lo, hi), text])
        if len(side.rows) > 1:
            marks += [("SPAN", (c, top), (c, len(body) - 1)) for c in range(4)]
            marks.append(("NOSPLIT", (0, top), (-1, len(body) - 1)))
    kept = io.BytesIO()
    parts: list[Any] = [
        Paragraph("6. Protocollo DMX", sheet["Heading1"]),
        Paragraph(
            "Ad ogni accensione la testa esegue un ciclo di movimenti: tenersi a distanza.", sheet["BodyText"]
        ),
        LongTable(body, [110, 45, 55, 45, 60, 140], style=marks, repeatRows=1, spaceBefore=10),
    ]
    SimpleDocTemplate(kept, title="Averla 19", invariant=1).build(parts)
    modes = [k.mode(k.seat(TESTA, plan), name) for name, plan in TESTA_PLANS]
    return k.made("Montefalda", "Averla 19", modes, kept.getvalue())
