"""Two languages in a sheet, a beam pasted over pages, lists with coarse and fine, and quoted commas."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from dataclasses import replace
from random import Random
from typing import Any

from intake.corpus.aside.fourth_sheets import book
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def _beam(pan: int) -> tuple[tuple[str, tuple[P, ...]], ...]:
    return (
        (
            "Position",
            (
                P(("pan",), "Pan", (1, 2), ("Pan Fine",), f"0-{pan} deg.", (span(0, pan, "deg"),)),
                P(("tilt",), "Tilt", (3, 4), ("Tilt Fine",), "0-250 deg.", (span(0, 250, "deg"),)),
            ),
        ),
        (
            "Color",
            (
                P(
                    ("color-wheel",),
                    "Color Wheel",
                    (5,),
                    ranges=(
                        k.opened(0, 4, "Open"),
                        *k.steps(5, 5, "Red", "Orange", "Aquamarine", "Green", "Light green", "Lavender"),
                        *k.steps(35, 5, "Pink", "Yellow", "Magenta", "Cyan", "CTO 190", "CTB 8000", last=127),
                        k.rainbow(128, 189, "Rainbow, fast to slow"),
                        k.stop(190, 193, "No rotation"),
                        k.rainbow(194, 255, "Reverse rainbow, slow to fast"),
                    ),
                ),
            ),
        ),
        (
            "Gobo and prism",
            (
                P(
                    ("gobo-wheel",),
                    "Gobo Wheel",
                    (6,),
                    ranges=(
                        k.opened(0, 5, "Open"),
                        *k.steps(6, 6, *(f"Gobo {n}" for n in range(1, 11))),
                        *(
                            k.shake(66 + 6 * n, 71 + 6 * n, f"Gobo {n + 1} shake, slow to fast")
                            for n in range(10)
                        ),
                        k.spin(126, 255, "Scroll, slow to fast", "gobo-wheel"),
                    ),
                ),
                P(("prism",), "Prism", (7,), ranges=(k.out(0, 127, "Out"), R(128, 255, "8-facet in"))),
                P(
                    ("prism-rotation",),
                    "Prism Rotation",
                    (8,),
                    ranges=(
                        k.index(0, 127, "Index", "prism"),
                        k.spin(128, 190, "CW, fast to slow", "prism"),
                        k.stop(191, 192, "Stop"),
                        k.spin(193, 255, "CCW, slow to fast", "prism"),
                    ),
                ),
            ),
        ),
        (
            "Beam and intensity",
            (
                P(("frost",), "Frost", (9,), ranges=(k.out(0, 9, "Out"), R(10, 255, "Light to heavy"))),
                P(("focus",), "Focus", (10, 11), ("Focus Fine",), "Near to far"),
                P(
                    ("shutter", "strobe"),
                    "Shutter",
                    (12,),
                    ranges=(
                        k.closed(0, 3, "Closed"),
                        k.flash(4, 103, "Strobe, slow to fast"),
                        k.opened(104, 107, "Open"),
                        k.pulse(108, 207, "Pulse, slow to fast"),
                        k.opened(208, 212, "Open"),
                        k.chance(213, 251, "Random strobe, slow to fast"),
                        k.opened(252, 255, "Open"),
                    ),
                ),
                P(("dimmer",), "Dimmer", (13, 14), ("Dimmer Fine",), "0-100%", k.LEVEL),
            ),
        ),
        (
            "Control",
            (
                P(
                    ("control",),
                    "Function",
                    (15,),
                    ranges=(
                        k.nothing(0, 25, "No function"),
                        k.reset(26, 76, "Effects reset (hold 3 s)", 3),
                        k.reset(77, 127, "Pan and tilt reset (hold 3 s)", 3),
                        k.reset(128, 255, "Total reset (hold 3 s)", 3),
                    ),
                ),
            ),
        ),
    )


@chart(
    "fourth-paste-beam",
    "aligned, sections, feet and heads between pages",
    "txt",
    "en",
    "Quarrington",
    "Osprey 380",
)
def beam(seed: int) -> Made:
    head = f"{'Channel':<9}{'Function':<18}{'Value':<12}Description"
    text = ["Osprey 380 User Manual", "", "DMX CHANNEL TABLE", "", head]
    params: list[P] = []
    page = 17
    for title, group in _beam(Random(seed).choice((540, 530))):
        if title in ("Gobo and prism", "Control"):
            text += ["", f"Osprey 380 User Manual Rev. 1.2{'':<30}{page}", "\f", head]
            page += 1
        text.append(title)
        params += group
        for line in k.lines(group):
            for n, (lo, hi, said) in enumerate(line.rows):
                first = f"{line.slot:<9}{line.name:<18}" if n == 0 else " " * 27
                text.append(f"{first}{k.zeros(lo, hi):<12}{said}".rstrip())
    text += ["", f"Osprey 380 User Manual Rev. 1.2{'':<30}{page}", ""]
    return k.made("Quarrington", "Osprey 380", [k.mode(params)], "\n".join(text))


def both(make: Callable[..., R], lo: int, hi: int, italian: str, english: str) -> R:
    """A range that is printed in two languages, either of which may be taken."""
    return replace(make(lo, hi, italian), also=(english, f"{italian} / {english}", f"{italian} {english}"))


SAID = {"Dimmer": "Dimmer", "Rosso": "Red", "Verde": "Green", "Blu": "Blue", "Bianco": "White"}
SAID |= {"Stroboscopio": "Strobe", "Macro colore": "Color macros"}
ITALIAN_PAR = (
    *(
        k.level(word, name, "0–100 %")
        for word, name in zip(("dimmer", "red", "green", "blue", "white"), SAID, strict=False)
    ),
    P(
        ("strobe", "shutter"),
        "Stroboscopio",
        ranges=(
            both(k.out, 0, 9, "Nessuna funzione", "No function"),
            both(k.flash, 10, 255, "Da lento a veloce", "Slow to fast"),
        ),
    ),
    P(
        ("color-macro", "color-preset", "virtual-color-wheel"),
        "Macro colore",
        ranges=(
            both(k.nothing, 0, 15, "Nessuna funzione", "No function"),
            both(R, 16, 75, "Ambra", "Amber"),
            both(R, 76, 135, "Turchese", "Turquoise"),
            both(R, 136, 195, "Viola", "Purple"),
            both(R, 196, 255, "Bianco caldo", "Warm white"),
        ),
    ),
)
PAR_PLANS = (
    ("3 CH", "- 1 2 3 - - -"),
    ("4 CH", "- 1 2 3 4 - -"),
    ("5 CH", "1 2 3 4 5 - -"),
    ("7 CH", "1 2 3 4 5 6 7"),
)


@chart(
    "fourth-sheet-bilingual",
    "Italian and English columns, four modes first",
    "xlsx",
    "it",
    "Acquarossa",
    "Gufo 14",
)
def bilingual(seed: int) -> Made:
    rows: list[list[Any]] = [[*(name for name, _ in PAR_PLANS), "Funzione", "Function", "DMX"]]
    rows[0] += ["Descrizione", "Description"]
    for side in k.sides(ITALIAN_PAR, *(plan for _, plan in PAR_PLANS)):
        p = next(one for one in ITALIAN_PAR if one.label == side.name)
        for n, (lo, hi, text) in enumerate(side.rows):
            english = p.ranges[n].also[0] if p.ranges else text
            first = [*side.slots, side.name, SAID[side.name]] if n == 0 else [None] * 6
            rows.append([*first, k.zeros(lo, hi), text, english])
    modes = [k.mode(k.seat(ITALIAN_PAR, plan), name) for name, plan in PAR_PLANS]
    return k.made("Acquarossa", "Gufo 14", modes, book(("DMX chart", rows, ())))


FASCIO = (
    P(("pan",), "Pan", (1, 2), ("Pan",), "0–540°", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt",), "0–270°", (span(0, 270, "deg"),)),
    P(("dimmer",), "Dimmer", (5, 6), ("Dimmer",), "0–100%", k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Otturatore",
        (7,),
        ranges=(
            k.closed(0, 15, "Chiuso"),
            k.flash(16, 199, "Strobo da lento a veloce"),
            k.chance(200, 239, "Strobo casuale"),
            k.opened(240, 255, "Aperto"),
        ),
    ),
    P(
        ("color-wheel",),
        "Ruota colori",
        (8,),
        ranges=(
            k.opened(0, 13, "Aperto"),
            *k.steps(14, 14, "Rosso", "Blu", "Verde", "Giallo", "Magenta", "Azzurro", "Arancio"),
            k.rainbow(112, 183, "Rotazione oraria, da veloce a lenta"),
            k.rainbow(184, 255, "Rotazione antioraria, da lenta a veloce"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Ruota gobo",
        (9,),
        ranges=(k.opened(0, 19, "Aperto"), *k.steps(20, 25, *(f"Gobo {n}" for n in range(1, 10)), last=255)),
    ),
    P(("prism",), "Prisma", (10,), ranges=(k.out(0, 99, "Escluso"), R(100, 255, "Inserito"))),
    P(("focus",), "Messa a fuoco", (11,), text="Da vicino a lontano"),
    P(
        ("reset", "control"),
        "Reset",
        (12,),
        ranges=(
            k.nothing(0, 229, "Nessuna funzione"),
            k.reset(230, 255, "Reset generale (tenere per 5 secondi)", 5),
        ),
    ),
)


@chart("fourth-list-fascio", "a byte column, minimum and maximum", "csv", "it", "Cimadoro", "Falco B")
def fascio(seed: int) -> Made:
    kept = io.StringIO()
    sheet = csv.writer(kept, delimiter=";", lineterminator="\r\n")
    sheet.writerow(["Canale", "Funzione", "Byte", "Valore min.", "Valore max.", "Descrizione"])
    for line in k.lines(FASCIO):
        byte = "LSB" if line.byte else "MSB" if len(line.p.slots) > 1 else ""
        for n, (lo, hi, text) in enumerate(line.rows):
            first = [line.slot, line.name, byte] if n == 0 else ["", "", ""]
            sheet.writerow([*first, lo, hi, text])
    return k.made("Cimadoro", "Falco B", [k.mode(FASCIO)], "\ufeff" + kept.getvalue())


BANO = (
    k.level("dimmer", "Intensidad", "0 % - 100 %"),
    P(
        ("strobe", "shutter"),
        "Estrobo",
        ranges=(k.out(0, 9, "Sin efecto"), k.flash(10, 255, "Con efecto, de lento a rápido")),
    ),
    *(
        k.level(word, label, "0 % - 100 %")
        for word, label in (
            ("red", "Rojo"),
            ("green", "Verde"),
            ("blue", "Azul"),
            ("amber", "Ámbar"),
            ("cool-white", "Blanco frío"),
        )
    ),
    P(
        ("color-macro", "color-preset", "virtual-color-wheel"),
        "Colores fijos",
        ranges=(
            k.nothing(0, 15, "Sin efecto"),
            *k.steps(16, 40, "Salmón", "Turquesa", "Violeta", "Lima", "Coral", "Índigo"),
        ),
    ),
    P(("dimmer-fade-time", "smoothing"), "Tiempo de fundido", text="0 s - 4 s", spans=(span(0, 4, "s"),)),
)
BANO_PLANS = (("5 canales", "- - 1 2 3 4 5 - -"), ("7 canales", "1 2 3 4 5 6 7 - -"))
BANO_PLANS += (("9 canales", "1 2 3 4 5 6 7 8 9"),)


@chart(
    "fourth-list-bano", "name, slots of three modes, then value; quoted", "csv", "es", "Solvega", "Garza 36"
)
def bano(seed: int) -> Made:
    kept = io.StringIO()
    sheet = csv.writer(kept, lineterminator="\n", quoting=csv.QUOTE_ALL)
    sheet.writerow(["Función", *(name for name, _ in BANO_PLANS), "Valor DMX", "Descripción"])
    for side in k.sides(BANO, *(plan for _, plan in BANO_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots: list[Any] = ["–" if s is None else s for s in side.slots]
            sheet.writerow([*((side.name, *slots) if n == 0 else [""] * 4), f"{lo} - {hi}", text])
    modes = [k.mode(k.seat(BANO, plan), name) for name, plan in BANO_PLANS]
    return k.made("Solvega", "Garza 36", modes, kept.getvalue())
