"""More pages: two head rows, two languages of names, newspaper columns, letters for modes, stacked bytes."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.aside.fourth_kit import head, paper, table, vary
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def _fpdf(title: str) -> Any:
    from fpdf import FPDF

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 14)
    pdf.cell(text=title, new_x="LMARGIN", new_y="NEXT")
    pdf.ln(3)
    pdf.set_font("Helvetica", size=9)
    return pdf


SUIVEUR = (
    P(("dimmer",), "Gradateur", (1, 2), ("Gradateur fin",), "0 à 100 %", k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturateur",
        (3,),
        ranges=(
            k.closed(0, 19, "Fermé"),
            k.flash(20, 219, "Stroboscope, lent à rapide"),
            k.opened(220, 255, "Ouvert"),
        ),
    ),
    P(("iris",), "Iris", (4,), text="ouvert à fermé"),
    P(("zoom",), "Zoom", (5,), text="8° à 16°", spans=(span(8, 16, "deg"),)),
    P(("focus",), "Mise au point", (6,), text="loin à près"),
    P(("frost",), "Diffuseur", (7,), ranges=(k.out(0, 127, "Retiré"), R(128, 255, "Inséré"))),
    P(("warm-correction", "color-correction"), "CTO", (8,), text="0 à 100 %", spans=k.LEVEL),
)
IN_ENGLISH = {
    "Gradateur": "Dimmer",
    "Gradateur fin": "Fine dimmer",
    "Obturateur": "Shutter",
    "Mise au point": "Focus",
    "Diffuseur": "Frost",
}


@chart("fourth-suiveur", "names in two columns of languages", "pdf", "fr", "Brisecombe", "Hirondelle F7")
def suiveur(seed: int) -> Made:
    params = vary(SUIVEUR, seed)
    pdf = _fpdf("Commande DMX / DMX control")
    with pdf.table(col_widths=(16, 38, 34, 26, 60), width=174, align="L", line_height=5) as made:
        made.row(["Canal", "Fonction", "Function", "Valeurs", "Détail"])
        for line in k.lines(params):
            for n, (lo, hi, text) in enumerate(line.rows):
                row = made.row()
                if n == 0:
                    for cell in (str(line.slot), line.name, IN_ENGLISH.get(line.name, line.name)):
                        row.cell(cell, rowspan=len(line.rows))
                row.cell(k.hyphen(lo, hi))
                row.cell(text)
    pdf.ln(2)
    pdf.cell(text="Ne jamais diriger le faisceau vers les yeux.")
    return k.made("Brisecombe", "Hirondelle F7", [k.mode(params)], bytes(pdf.output()))


FARETTO = (
    P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="da 0 a 100%", spans=k.LEVEL),
    P(("warm-white",), "Bianco caldo", fine=("Bianco caldo fine",), text="da 0 a 100%", spans=k.LEVEL),
    P(("cool-white",), "Bianco freddo", fine=("Bianco freddo fine",), text="da 0 a 100%", spans=k.LEVEL),
    P(
        ("strobe",),
        "Effetto strobo",
        ranges=(k.out(0, 15, "Nessuno strobo"), k.flash(16, 255, "Strobo da 1 a 18 Hz", (1, 18))),
    ),
    P(("zoom",), "Zoom", text="da stretto a largo"),
    P(
        ("dimmer-curve",),
        "Curva dimmer",
        ranges=tuple(
            k.optional(R(lo, hi, text), sets=("dimmer-curve",))
            for lo, hi, text in ((0, 84, "Lineare"), (85, 169, "Quadratica"), (170, 255, "Curva a S"))
        ),
    ),
)
FARETTO_PLANS = (("8 bit", "1 2 3 4 5 -"), ("16 bit", "1/2 3/4 5/6 7 8 9"))


@chart(
    "fourth-faretto", "two head rows, slot columns under one head", "pdf", "it", "Valdirosso", "Fiorrancino F"
)
def faretto(seed: int) -> Made:
    params = vary(FARETTO, seed)
    pdf = _fpdf("Tabella canali DMX")
    with pdf.table(
        col_widths=(18, 18, 44, 26, 62), width=168, align="L", line_height=5, num_heading_rows=2
    ) as made:
        top = made.row()
        top.cell("Modo", colspan=2)
        for title in ("Funzione", "Valore", "Effetto"):
            top.cell(title, rowspan=2)
        made.row([name for name, _ in FARETTO_PLANS])
        for side in k.sides(params, *(plan for _, plan in FARETTO_PLANS)):
            for n, (lo, hi, text) in enumerate(side.rows):
                row = made.row()
                if n == 0:
                    for slot in side.slots:
                        row.cell("-" if slot is None else str(slot), rowspan=len(side.rows))
                    row.cell(side.name, rowspan=len(side.rows))
                row.cell(k.zeros(lo, hi))
                row.cell(text)
    modes = [k.mode(k.seat(params, plan), name, f"Modo {name}") for name, plan in FARETTO_PLANS]
    return k.made("Valdirosso", "Fiorrancino F", modes, bytes(pdf.output()))


CABEZA = (
    P(("pan",), "Pan", (1, 2), ("Pan fino",), "0° a 540°", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fino",), "0° a 210°", (span(0, 210, "deg"),)),
    P(("movement-speed",), "Velocidad Pan/Tilt", (5,), text="Rápida a lenta"),
    P(("dimmer",), "Dimmer", (6,), text="0% a 100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturador",
        (7,),
        ranges=(
            k.closed(0, 7, "Cerrado"),
            k.opened(8, 15, "Abierto"),
            k.flash(16, 131, "Estrobo lento a rápido"),
            k.chance(132, 239, "Estrobo aleatorio"),
            k.opened(240, 255, "Abierto"),
        ),
    ),
    *(
        P((word,), name, (n,), text="0% a 100%", spans=k.LEVEL)
        for n, (word, name) in enumerate(
            (("red", "Rojo"), ("green", "Verde"), ("blue", "Azul"), ("white", "Blanco")), 8
        )
    ),
    P(
        ("color-macro", "color-preset", "virtual-color-wheel"),
        "Colores fijos",
        (12,),
        ranges=(
            k.nothing(0, 9, "Sin función"),
            *k.steps(10, 24, "Rojo", "Amarillo", "Verde", "Cian", "Azul", "Magenta", "Blanco 3200 K"),
            *k.steps(178, 26, "Blanco 4200 K", "Blanco 5600 K", "Blanco 8000 K"),
        ),
    ),
    P(("zoom",), "Zoom", (13,), text="4° a 40°", spans=(span(4, 40, "deg"),)),
    P(
        ("pixel-effect", "pixel-macro", "effect", "macro"),
        "Efectos de anillo",
        (14,),
        ranges=(
            k.nothing(0, 15, "Sin efecto"),
            *(k.runs(16 + 30 * n, 45 + 30 * n, f"Efecto {n + 1}") for n in range(8)),
        ),
    ),
    P(
        ("pixel-effect-speed", "pixel-macro-speed", "effect-speed", "macro-speed"),
        "Velocidad de efectos",
        (15,),
        text="Lenta a rápida",
    ),
    P(
        ("reset", "control"),
        "Reinicio",
        (16,),
        ranges=(k.nothing(0, 199, "Sin función"), k.reset(200, 255, "Reinicio general")),
    ),
)


@chart(
    "fourth-cabeza", "one table that flows through two page columns", "pdf", "es", "Altosoto", "Carricero W16"
)
def cabeza(seed: int) -> Made:
    params = vary(CABEZA, seed)
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

    rows: list[list[object]] = [["Canal", "Función", "Valor", "Descripción"]]
    for line in k.lines(params):
        for n, (lo, hi, text) in enumerate(line.rows):
            rows.append(["" if n else line.slot, "" if n else line.name, k.hyphen(lo, hi), text])
    kept = io.BytesIO()
    doc = BaseDocTemplate(kept, title="Carricero W16", invariant=1)
    frames = [Frame(30, 280, 265, 500), Frame(305, 280, 265, 500)]
    doc.addPageTemplates(PageTemplate(frames=frames))
    doc.build([head("Canales DMX"), table(rows, [30, 84, 44, 96])])
    return k.made("Altosoto", "Carricero W16", [k.mode(params)], kept.getvalue())


PAR = (
    P(("dimmer",), "Dimmer", text="Dark to bright"),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 5, "Steady light"), k.flash(6, 255, "1 Hz to 22 Hz", (1, 22))),
    ),
    *(P((w,), n, text="Dark to bright") for w, n in (("red", "Red"), ("green", "Green"), ("blue", "Blue"))),
    P(("amber",), "Amber", text="Dark to bright"),
    P(("color-temperature",), "White tuning", text="2700 K to 6500 K", spans=(span(2700, 6500, "K"),)),
    P(
        ("dimmer-fade-time", "smoothing"),
        "Dimmer speed",
        ranges=(
            k.optional(R(0, 63, "As the menu", "as-menu"), sets=("smoothing",)),
            k.optional(R(64, 127, "Fast"), sets=("smoothing",)),
            k.optional(R(128, 191, "Medium"), sets=("smoothing",)),
            k.optional(R(192, 255, "Slow"), sets=("smoothing",)),
        ),
    ),
)
PAR_PLANS = (("A", "- - 1 2 3 - - -"), ("B", "1 2 3 4 5 6 - -"), ("C", "1 2 3 4 5 6 7 8"))


@chart(
    "fourth-letters",
    "modes by letters, a legend above, dots where absent",
    "pdf",
    "en",
    "Kelstowe",
    "Crake 18",
)
def letters(seed: int) -> Made:
    params = vary(PAR, seed)
    rows: list[list[object]] = [["A", "B", "C", "Function", "DMX", "Result"]]
    for side in k.sides(params, *(plan for _, plan in PAR_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n else ("." if s is None else s) for s in side.slots]
            rows.append([*slots, "" if n else side.name, k.hyphen(lo, hi), text])
    legend = (
        "A = basic mode, 3 slots. B = standard mode, 6 slots. C = full mode, 8 slots. Dot = not in this mode."
    )
    parts = [head("Slot map"), head(legend, 0), table(rows, [24, 24, 24, 110, 60, 150])]
    named = {"A": ("basic", "Basic mode"), "B": ("standard", "Standard mode"), "C": ("full", "Full mode")}
    modes = [k.mode(k.seat(params, plan), name, name, *named[name]) for name, plan in PAR_PLANS]
    return k.made("Kelstowe", "Crake 18", modes, paper(parts, "Crake 18 quick guide"))


COUTEAUX = (
    P(("dimmer",), "Dimmer", (1, 2), ("",), "de 0 à 100 %", k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturateur",
        (3,),
        ranges=(
            k.closed(0, 31, "fermé"),
            k.opened(32, 63, "ouvert"),
            k.flash(64, 255, "stroboscope de 1 à 15 Hz", (1, 15)),
        ),
    ),
    P(
        ("color-temperature",),
        "Température de couleur",
        (4, 5),
        ("",),
        "de 2700 à 6500 K",
        (span(2700, 6500, "K"),),
    ),
    *(
        P((word,), f"Couteau {n} {what}", (6 + 2 * (n - 1) + at,), text=text)
        for n in (1, 2, 3, 4)
        for at, (word, what, text) in enumerate(
            (
                ("blade-position", "insertion", "retiré à inséré"),
                ("blade-angle", "angle", "de gauche à droite"),
            )
        )
    ),
    P(
        ("framing-rotation",),
        "Rotation des couteaux",
        (14, 15),
        ("",),
        "de -60° à +60°",
        (span(-60, 60, "deg"),),
    ),
    P(("zoom",), "Zoom", (16, 17), ("",), "serré à large"),
    P(("focus",), "Netteté", (18, 19), ("",), "proche à loin"),
)


@chart(
    "fourth-couteaux", "both bytes in a cell, marked MSB and LSB", "pdf", "fr", "Sarcelière", "Rousserolle D"
)
def couteaux(seed: int) -> Made:
    params = vary(COUTEAUX, seed)
    rows: list[list[object]] = [["Canal", "Paramètre", "Plage", "Effet"]]
    for p in sorted(params, key=lambda p: p.slots):
        slot = str(p.slots[0]) if len(p.slots) < 2 else f"{p.slots[0]} (MSB)\n{p.slots[1]} (LSB)"
        for n, r in enumerate(p.ranges or (R(0, p.top, p.text),)):
            rows.append(["" if n else slot, "" if n else p.label, k.hyphen(r.lo, r.hi), r.text])
    parts = [head("Tableau DMX, 19 canaux"), table(rows, [52, 130, 70, 150])]
    modes = [k.mode(params, "Tableau DMX, 19 canaux", "19 canaux")]
    return k.made("Sarcelière", "Rousserolle D", modes, paper(parts, "Rousserolle D - mode d'emploi"))
