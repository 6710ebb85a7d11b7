"""More pages: German with percents, French with two short modes, a Spanish matrix."""

from __future__ import annotations

import datetime
import io
from collections.abc import Sequence

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

NEW = datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC)

PROFIL = (
    P(("pan",), "Pan", (1, 2), ("Pan fein",), "Drehung 0° bis 540°", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fein",), "Neigung 0° bis 265°", (span(0, 265, "deg"),)),
    P(("movement-speed",), "Pan/Tilt-Geschwindigkeit", (5,), text="Schnell nach langsam"),
    P(("dimmer",), "Dimmer", (6, 7), ("Dimmer fein",), "Dunkel nach hell"),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (8,),
        ranges=(
            k.closed(0, 31, "Shutter geschlossen"),
            k.opened(32, 63, "Shutter offen"),
            k.flash(64, 127, "Strobe langsam nach schnell"),
            k.chance(128, 223, "Zufalls-Strobe langsam nach schnell"),
            k.opened(224, 255, "Shutter offen"),
        ),
    ),
    P(
        ("color-wheel",),
        "Farbrad",
        (9,),
        ranges=(
            k.opened(0, 7, "Offen"),
            *k.steps(8, 8, "Rot", "Gelb", "Grün", "Blau", "Magenta", "Orange", "Hellblau"),
            *k.steps(
                64,
                8,
                "Offen/Rot",
                "Rot/Gelb",
                "Gelb/Grün",
                "Grün/Blau",
                "Blau/Magenta",
                "Magenta/Orange",
                "Orange/Hellblau",
                "Hellblau/Offen",
            ),
            k.rainbow(128, 189, "Rotation rechts, schnell nach langsam"),
            k.stop(190, 193, "Stopp"),
            k.rainbow(194, 255, "Rotation links, langsam nach schnell"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Goborad",
        (10,),
        ranges=(
            k.opened(0, 7, "Offen"),
            *k.steps(8, 8, *(f"Gobo {n}" for n in range(1, 8))),
            *(k.shake(64 + 8 * n, 71 + 8 * n, f"Gobo {n + 1} Shake, langsam nach schnell") for n in range(7)),
            k.spin(120, 255, "Goborad-Rotation, langsam nach schnell", "gobo-wheel"),
        ),
    ),
    P(("prism",), "Prisma", (11,), ranges=(k.out(0, 63, "Prisma aus"), R(64, 255, "Prisma ein"))),
    P(
        ("prism-rotation", "prism-index"),
        "Prismarotation",
        (12,),
        ranges=(
            k.index(0, 127, "Position 0° bis 360°", "prism", (0, 360)),
            k.spin(128, 190, "Rotation rechts, schnell nach langsam"),
            k.stop(191, 192, "Stopp"),
            k.spin(193, 255, "Rotation links, langsam nach schnell"),
        ),
    ),
    P(("zoom",), "Zoom", (13,), text="Weit nach eng"),
    P(("focus",), "Fokus", (14,), text="Nah nach fern"),
    P(("frost",), "Frost", (15,), ranges=(k.out(0, 127, "Frost aus"), R(128, 255, "Frost ein"))),
    P(
        ("control", "reset"),
        "Steuerung",
        (16,),
        ranges=(
            k.nothing(0, 199, "Ohne Funktion"),
            k.reset(200, 227, "Reset Pan/Tilt"),
            k.reset(228, 255, "Reset gesamt"),
        ),
    ),
)


@chart("third-profil", "percent column behind the value, zebra", "pdf", "de", "Kaltenrode", "Eisvogel 200")
def profil(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(595, 842), invariant=1)
    columns = (56, 100, 230, 295, 360)
    y = 0.0

    def put(cells: Sequence[str], font: str = "Helvetica") -> None:
        nonlocal y
        page.setFont(font, 8.5)
        for x, text in zip(columns, cells, strict=True):
            page.drawString(x, y, text)
        y -= 13

    def turn() -> None:
        nonlocal y
        if y:
            page.showPage()
        page.setFont("Helvetica-Bold", 13)
        page.drawString(56, 785, "DMX-Kanäle")
        page.setFont("Helvetica", 7)
        page.drawRightString(540, 800, "Eisvogel 200 · Bedienungsanleitung")
        y = 760.0
        put(["Kanal", "Name", "Wert", "Prozent", "Wirkung"], "Helvetica-Bold")

    turn()
    shade = False
    for line in k.lines(PROFIL):
        if y - 13 * len(line.rows) < 50:
            turn()
        for n, (lo, hi, text) in enumerate(line.rows):
            if shade := not shade:
                page.setFillColorRGB(0.92, 0.92, 0.86)
                page.rect(52, y - 3.5, 490, 13, stroke=0, fill=1)
                page.setFillColorRGB(0, 0, 0)
            share = f"{lo / 2.55:.0f} – {hi / 2.55:.0f} %"
            put([*((str(line.slot), line.name) if n == 0 else ("", "")), k.dash(lo, hi), share, text])
    page.showPage()
    page.setFont("Helvetica-Bold", 13)
    page.drawString(56, 785, "Technische Daten")
    page.setFont("Helvetica", 9)
    for n, text in enumerate(("Lichtquelle: LED, 200 W", "Gewicht: 14,8 kg", "Netz: 100 – 240 V, 50/60 Hz")):
        page.drawString(56, 765 - 14 * n, text)
    page.save()
    return k.made("Kaltenrode", "Eisvogel 200", [k.mode(PROFIL)], kept.getvalue())


BARRE = (
    P(("dimmer", "intensity-master"), "Gradateur général", text="0 à 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Stroboscope",
        ranges=(
            k.optional(R(0, 9, "Arrêt"), does=("stop", "nothing", "open")),
            k.flash(10, 255, "Lent à rapide"),
        ),
    ),
    P(("red",), "Rouge", text="0 à 100 %", spans=k.LEVEL),
    P(("green",), "Vert", text="0 à 100 %", spans=k.LEVEL),
    P(("blue",), "Bleu", text="0 à 100 %", spans=k.LEVEL),
    P(("warm-white",), "Blanc chaud", text="0 à 100 %", spans=k.LEVEL),
    P(("cool-white",), "Blanc froid", text="0 à 100 %", spans=k.LEVEL),
    P(
        ("color-macro", "color-preset"),
        "Couleurs préréglées",
        ranges=(
            k.nothing(0, 15, "Pas de fonction"),
            *k.steps(16, 40, "Rouge", "Ambre", "Jaune", "Vert", "Cyan", "Bleu"),
        ),
    ),
    P(
        ("macro", "effect"),
        "Programmes",
        ranges=(
            k.nothing(0, 51, "Pas de fonction"),
            *(k.runs(52 + 51 * n, 102 + 51 * n, f"Programme {n + 1}") for n in range(3)),
            k.runs(205, 255, "Mode musical"),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Vitesse des programmes", text="Lent à rapide"),
)
BARRE_PLANS = (("Mode 7 voies", "1 2 3 4 5 6 7 - - -"), ("Mode 10 voies", "1 2 3 4 5 6 7 8 9 10"))


@chart("third-barre", "two short tables on a page", "pdf", "fr", "Tavernelle", "Mésange 6")
def barre(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF()
    pdf.set_creation_date(NEW)
    pdf.add_page()
    modes = []
    for name, plan in BARRE_PLANS:
        mode = k.mode(k.seat(BARRE, plan), name, name.removeprefix("Mode "))
        modes.append(mode)
        pdf.set_font("Times", "B", 13)
        pdf.cell(text=name, new_x="LMARGIN", new_y="NEXT")
        pdf.ln(1)
        pdf.set_font("Times", size=10)
        with pdf.table(col_widths=(15, 48, 30, 60), width=153, align="L", line_height=5) as table:
            table.row(["Voie", "Fonction", "Valeurs", "Effet"])
            for line in k.lines(mode.params):
                for n, (lo, hi, text) in enumerate(line.rows):
                    row = table.row()
                    if n == 0:
                        row.cell(str(line.slot), rowspan=len(line.rows))
                        row.cell(line.name, rowspan=len(line.rows))
                    row.cell(f"{lo} à {hi}")
                    row.cell(text)
        pdf.ln(6)
    return k.made("Tavernelle", "Mésange 6", modes, bytes(pdf.output()))


TONOS = (("red", "Rojo"), ("green", "Verde"), ("blue", "Azul"), ("white", "Blanco"), ("amber", "Ámbar"))
UNO = [P((word,), name) for word, name in TONOS]
ZONES = [P((word,), f"{name} {n}") for n in (1, 2) for word, name in TONOS]
HEAD = (P(("pan",), "Pan"), P(("tilt",), "Tilt"))
LUZ = (P(("dimmer", "intensity-master"), "Dimmer"), P(("strobe", "shutter"), "Estrobo"))
TAIL = (P(("zoom",), "Zoom"), P(("macro",), "Macros"), P(("macro-speed",), "Velocidad de macros"))
MATRIZ = (
    ("Corto", (*HEAD, *LUZ, *UNO)),
    ("Medio", (*HEAD, *LUZ, *UNO, *TAIL)),
    ("Largo", (*HEAD, *LUZ, *ZONES, *TAIL)),
)


@chart("third-matriz", "slot by mode, zones written out", "pdf", "es", "Sierralba", "Vencejo 2Z")
def matriz(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(595, 842), invariant=1)
    modes = [k.mode([p.at(n) for n, p in enumerate(params, 1)], name) for name, params in MATRIZ]
    page.setFont("Helvetica-Bold", 14)
    page.drawString(60, 780, "Modos DMX")
    page.setFont("Helvetica", 9)
    page.drawString(60, 762, "El modo se elige en el menú. Todos los canales van de 0 a 255.")
    rows = [["Canal", *(m.title for m in modes)]]
    for slot in range(1, 18):
        rows.append(
            [str(slot), *(next((p.label for p in m.params if p.slots == (slot,)), "–") for m in modes)]
        )
    columns = (60, 110, 230, 350, 470)
    for n, row in enumerate(rows):
        top = 745 - 16 * n
        page.setFont("Helvetica-Bold" if n == 0 else "Helvetica", 9)
        for left, right, text in zip(columns[:-1], columns[1:], row, strict=True):
            page.rect(left, top - 16, right - left, 16)
            page.drawString(left + 4, top - 11.5, text)
    page.save()
    return k.made("Sierralba", "Vencejo 2Z", modes, kept.getvalue())
