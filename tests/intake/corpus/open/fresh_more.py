"""A scanner with the function first, a profile in blocks a slot, and a bar as a slot by mode matrix."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

SCANNER = (
    P(("pan",), "Pan", (1,), text="Movimento orizzontale 0° - 180°", spans=(span(0, 180, "deg"),)),
    P(("tilt",), "Tilt", (2,), text="Movimento verticale 0° - 90°", spans=(span(0, 90, "deg"),)),
    P(("movement-speed",), "Velocità Pan/Tilt", (3,), text="Da veloce a lento"),
    P(
        ("color-wheel",),
        "Ruota colori",
        (4,),
        ranges=(
            k.opened(0, 9, "Aperto"),
            *k.steps(10, 15, "Rosso", "Giallo", "Verde", "Blu", "Magenta", "Azzurro", "Arancio", "Rosa"),
            k.stop(130, 139, "Stop"),
            k.rainbow(140, 255, "Effetto arcobaleno, da lento a veloce"),
        ),
    ),
    P(
        ("rotating-gobo-wheel", "gobo-wheel"),
        "Ruota gobo rotanti",
        (5,),
        ranges=(
            k.opened(0, 31, "Aperto"),
            *k.steps(32, 32, *(f"Gobo {n}" for n in range(1, 8))),
        ),
    ),
    P(
        ("gobo-rotation", "gobo-index-rotation"),
        "Rotazione gobo",
        (6,),
        ranges=(
            k.stop(0, 9, "Nessuna rotazione"),
            k.spin(10, 120, "Rotazione oraria, da lenta a veloce", "gobo"),
            k.stop(121, 134, "Stop"),
            k.spin(135, 255, "Rotazione antioraria, da veloce a lenta", "gobo"),
        ),
    ),
    P(
        ("shutter", "strobe"),
        "Otturatore / Strobo",
        (7,),
        ranges=(
            k.closed(0, 9, "Chiuso"),
            k.flash(10, 199, "Strobo da lento a veloce"),
            k.chance(200, 239, "Strobo casuale"),
            k.opened(240, 255, "Aperto"),
        ),
    ),
    P(("dimmer",), "Dimmer", (8,), text="Intensità 0 - 100%", spans=k.LEVEL),
    P(("focus",), "Messa a fuoco", (9,), text="Da lontano a vicino"),
    P(
        ("control", "reset"),
        "Controllo",
        (10,),
        ranges=(k.nothing(0, 239, "Nessuna funzione"), k.reset(240, 255, "Reset")),
    ),
)


@chart("fresh-scanner", "function, slot, value, description", "pdf", "it", "Luvandri", "Rondine 150")
def scanner(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(595, 842), invariant=1)
    columns = (50, 180, 230, 310)
    y = 780.0
    page.setFont("Times-Bold", 15)
    page.drawString(50, y, "8. Canali DMX")
    y -= 20
    page.setFont("Times-Roman", 10)
    page.drawString(50, y, "L'apparecchio occupa 10 canali. Non guardare direttamente la sorgente luminosa.")
    y -= 26

    def line(cells: list[str], font: str = "Times-Roman") -> None:
        nonlocal y
        page.setFont(font, 9.5)
        for x, text in zip(columns, cells, strict=True):
            page.drawString(x, y, text)
        y -= 15

    line(["Funzione", "Canale", "Valore DMX", "Descrizione"], "Times-Bold")
    for number, one in enumerate(k.lines(SCANNER)):
        if number % 2 == 0:
            page.setFillGray(0.9)
            page.rect(45, y + 11 - 15 * len(one.rows), 500, 15 * len(one.rows), stroke=0, fill=1)
            page.setFillGray(0)
        for n, (lo, hi, text) in enumerate(one.rows):
            line([*([one.name, str(one.slot)] if n == 0 else ["", ""]), k.dash(lo, hi), text])
    y -= 20
    page.setFont("Times-Bold", 13)
    page.drawString(50, y, "9. Messaggi di errore")
    y -= 18
    for code, cause in (("Er 1", "Sensore pan non trovato"), ("Er 2", "Sensore tilt non trovato")):
        line([code, "", "", cause])
    page.save()
    return k.made("Luvandri", "Rondine 150", [k.mode(SCANNER)], kept.getvalue())


PROFILE = (
    P(("dimmer",), "Dimmer", (1, 2), ("Dimmer fine",), "0 – 100 %", k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (3,),
        ranges=(
            k.opened(0, 19, "Shutter open"),
            k.closed(20, 24, "Shutter closed"),
            k.opened(25, 64, "Shutter open"),
            k.flash(65, 189, "Strobe, 0.5 – 20 Hz", (0.5, 20)),
            k.opened(190, 255, "Shutter open"),
        ),
    ),
    k.level("red", "Red", "0 – 100 %"),
    k.level("lime", "Lime", "0 – 100 %"),
    k.level("green", "Green", "0 – 100 %"),
    k.level("blue", "Blue", "0 – 100 %"),
    k.level("amber", "Amber", "0 – 100 %"),
    P(
        ("color-temperature",),
        "Color temperature",
        ranges=(k.nothing(0, 9), R(10, 255, "2700 K – 8000 K", span=span(2700, 8000, "K"))),
    ),
    P(
        ("color-preset", "virtual-color-wheel", "color-macro"),
        "Virtual color wheel",
        ranges=(
            k.nothing(0, 9),
            *k.steps(10, 40, "Straw", "Salmon", "Rose", "Lavender", "Steel", last=209),
            k.optional(R(210, 255, "Rainbow, slow to fast"), does=("runs", "rotate")),
        ),
    ),
    P(("zoom",), "Zoom", text="15° – 35°", spans=(span(15, 35, "deg"),)),
    P(
        ("fan-mode", "fan"),
        "Fan mode",
        ranges=(k.fan_choice(0, 127, "Standard"), k.fan_choice(128, 255, "Silent")),
    ),
)
PROFILE_SEATS = k.seat(PROFILE, "1/2 3 4 5 6 7 8 9 10 11 12")


@chart("fresh-profile", "a block a slot, slot in the heading", "pdf", "en", "Pradelune", "Aster LP")
def profile(seed: int) -> Made:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import KeepTogether, Paragraph, SimpleDocTemplate, Spacer, Table

    sheet = getSampleStyleSheet()
    menu = [
        ["Level 1", "Level 2", "Choices"],
        ["DMX", "Address", "1 – 501"],
        ["", "No signal", "Hold, Black"],
    ]
    grid: Any = [("LINEBELOW", (0, 0), (-1, -1), 0.4, "#888888"), ("FONTSIZE", (0, 0), (-1, -1), 9)]
    parts: list[Any] = [
        Paragraph("Menu", sheet["Heading1"]),
        Table(menu, [100, 100, 160], style=grid, hAlign="LEFT"),
        Paragraph("DMX channels", sheet["Heading1"]),
        Paragraph("The fixture has one mode with 12 channels.", sheet["BodyText"]),
    ]
    for line in k.lines(PROFILE_SEATS):
        body = [["DMX values", "Function"]] + [
            [k.dash(lo, hi), text or line.name] for lo, hi, text in line.rows
        ]
        table = Table(body, [90, 260], style=grid, hAlign="LEFT")
        parts.append(
            KeepTogether(
                [Paragraph(f"Channel {line.slot} – {line.name}", sheet["Heading3"]), table, Spacer(1, 6)]
            )
        )
    kept = io.BytesIO()
    SimpleDocTemplate(kept, title="Aster LP", invariant=1).build(parts)
    return k.made("Pradelune", "Aster LP", [k.mode(PROFILE_SEATS)], kept.getvalue())


MASTER = P(("dimmer", "intensity-master"), "Master dimmer")
FLASH = P(("strobe", "shutter"), "Strobe")
HUES = ("Red", "Green", "Blue", "White")
CELLS = [P((hue.lower(),), f"{hue} {n}") for n in range(1, 5) for hue in HUES]
WHOLE = [P((hue.lower(),), hue) for hue in HUES]
MACRO = (P(("macro",), "Program"), P(("macro-speed",), "Program speed"))
MATRIX = (
    ("6CH", (MASTER, FLASH, *WHOLE)),
    ("10CH", (MASTER, FLASH, *CELLS[:8])),
    ("20CH", (MASTER, FLASH, *CELLS, *MACRO)),
)


@chart("fresh-bar", "slot by mode, functions as cells", "pdf", "en", "Harlinge", "Tern Bar 4")
def bar(seed: int) -> Made:
    from fpdf import FPDF
    from fpdf.fonts import FontFace

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 14)
    pdf.cell(text="DMX modes", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=9)
    pdf.multi_cell(
        0,
        5,
        "Three modes can be chosen in the menu. All channels run from 0 to 255.",
        new_y="NEXT",
        new_x="LMARGIN",
    )
    pdf.ln(2)
    modes = [k.mode([p.at(n) for n, p in enumerate(params, 1)], name) for name, params in MATRIX]
    with pdf.table(
        col_widths=(14, 30, 30, 30),
        width=130,
        align="L",
        line_height=5.4,
        headings_style=FontFace(emphasis="BOLD"),
    ) as table:
        row = table.row()
        for head in ("Channel", *(m.title for m in modes)):
            row.cell(head)
        for slot in range(1, 21):
            row = table.row()
            row.cell(str(slot))
            for m in modes:
                row.cell(next((p.label for p in m.params if p.slots == (slot,)), ""))
    return k.made("Harlinge", "Tern Bar 4", modes, bytes(pdf.output()))
