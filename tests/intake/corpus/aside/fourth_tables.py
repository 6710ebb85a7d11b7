"""Tables on paper: section bands, equal signs, pages without heads, modes in columns of the page."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside.fourth_kit import head, paper, table, vary
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def cyc_params() -> tuple[tuple[str, tuple[P, ...]], ...]:
    colors = (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("amber", "Amber"), ("lime", "Lime"))
    return (
        (
            "Intensity",
            (
                P(("dimmer",), "Dimmer", (1, 2), ("Dimmer fine",), "Off to full"),
                P(
                    ("dimmer-curve",),
                    "Dimmer curve",
                    (3,),
                    ranges=(
                        R(0, 63, "Linear", may={"sets": ("dimmer-curve",)}),
                        R(64, 127, "Square law", may={"sets": ("dimmer-curve",)}),
                        R(128, 191, "Inverse square law", may={"sets": ("dimmer-curve",)}),
                        R(192, 255, "S-curve", may={"sets": ("dimmer-curve",)}),
                    ),
                ),
                P(
                    ("strobe", "shutter"),
                    "Strobe",
                    (4,),
                    ranges=(k.out(0, 4, "No strobe"), k.flash(5, 255, "Rate, slow to fast")),
                ),
            ),
        ),
        (
            "Color",
            tuple(
                P((word,), name, (5 + 2 * n, 6 + 2 * n), (f"{name} fine",), "Off to full")
                for n, (word, name) in enumerate(colors)
            ),
        ),
        (
            "Presets",
            (
                P(
                    ("color-preset", "color-macro", "virtual-color-wheel", "swatch"),
                    "Gel colors",
                    (15,),
                    ranges=(
                        k.nothing(0, 10, "No effect"),
                        *k.steps(
                            11, 35, "Bastard amber", "Straw", "Steel blue", "Primary green", "Rose pink"
                        ),
                        R(186, 255, "Surprise pink"),
                    ),
                ),
                P(("color-time", "color-speed"), "Color fade time", (16,), text="Snap to slow"),
            ),
        ),
    )


@chart("fourth-cyc", "full-width section bands, fine as own row", "pdf", "en", "Aldercombe", "Wryneck Cyc")
def cyc(seed: int) -> Made:
    rows: list[list[object]] = [["#", "Values", "Parameter", "Remarks"]]
    marks: list[Any] = []
    every: list[P] = []
    for title, plain in cyc_params():
        params = vary(plain, seed)
        marks += [
            ("SPAN", (0, len(rows)), (-1, len(rows))),
            ("BACKGROUND", (0, len(rows)), (-1, len(rows)), "#dddddd"),
        ]
        rows.append([title.upper(), "", "", ""])
        every += params
        for line in k.lines(params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append(["" if n else line.slot, k.dash(lo, hi), "" if n else line.name, text])
    parts = [
        head("Control channels"),
        head("The fixture has one personality of 16 channels. Fit the safety bond before hanging.", 0),
        table(rows, [30, 70, 110, 190], *marks),
    ]
    return k.made(
        "Aldercombe", "Wryneck Cyc", [k.mode(every)], paper(parts, "Wryneck Cyc, installation and use")
    )


FOCO = (
    P(("dimmer", "intensity-master"), "Dimmer general", (1,), text="0 = apagado, 255 = máximo"),
    *(
        P((word,), name, (n,), text="0 = apagado, 255 = máximo")
        for n, (word, name) in enumerate(
            (("red", "Rojo"), ("green", "Verde"), ("blue", "Azul"), ("white", "Blanco")), 2
        )
    ),
    P(
        ("strobe", "shutter"),
        "Estrobo",
        (6,),
        ranges=(k.out(0, 9, "sin estrobo"), k.flash(10, 255, "de lento a rápido")),
    ),
    P(
        ("macro", "color-macro", "effect"),
        "Programas",
        (7,),
        ranges=(
            k.nothing(0, 50, "sin programa"),
            k.runs(51, 100, "cambio de color"),
            k.runs(101, 150, "fundido de color"),
            k.runs(151, 200, "pulso de color"),
            k.runs(201, 255, "audiorrítmico"),
        ),
    ),
    P(
        ("macro-speed", "color-macro-speed", "effect-speed"),
        "Velocidad de programas",
        (8,),
        text="de lenta a rápida",
    ),
)


@chart("fourth-foco", "values with equal signs in one cell a slot", "pdf", "es", "Robledal", "Oropéndola 7")
def foco(seed: int) -> Made:
    params = vary(FOCO, seed)
    rows = [["Canal", "Función", "Valor = efecto"]]
    for line in k.lines(params):
        cell = "\n".join(f"{k.hyphen(lo, hi)} = {text}" for lo, hi, text in line.rows)
        rows.append([str(line.slot), line.name, line.p.text if not line.p.ranges else cell])
    parts = [
        head("Modo de 8 canales"),
        table(rows, [45, 130, 200]),
        head("Pines del XLR: 1 masa, 2 datos -, 3 datos +.", 0),
    ]
    modes = [k.mode(params, "Modo de 8 canales", "8 canales")]
    return k.made("Robledal", "Oropéndola 7", modes, paper(parts, "Oropéndola 7 · manual de usuario"))


def spot_params() -> tuple[P, ...]:
    return (
        P(
            ("pan",),
            "Pan MSB",
            (1, 2),
            ("Pan LSB",),
            "540° movement",
            (None, span(0, 540, "deg")),
            doubt="may",
        ),
        P(
            ("tilt",),
            "Tilt MSB",
            (3, 4),
            ("Tilt LSB",),
            "250° movement",
            (None, span(0, 250, "deg")),
            doubt="may",
        ),
        P(("movement-speed",), "P/T speed", (5,), text="Fast to slow"),
        P(("dimmer",), "Dimmer MSB", (6, 7), ("Dimmer LSB",), "0-100%", k.LEVEL),
        P(
            ("shutter", "strobe"),
            "Shutter",
            (8,),
            ranges=(
                k.closed(0, 31, "Shutter closed"),
                k.opened(32, 63, "Shutter open"),
                k.flash(64, 95, "Strobe effect, slow to fast"),
                k.opened(96, 127, "Shutter open"),
                k.pulse(128, 159, "Pulse effect in sequences"),
                k.opened(160, 191, "Shutter open"),
                k.chance(192, 223, "Random strobe, slow to fast"),
                k.opened(224, 255, "Shutter open"),
            ),
        ),
        *(
            P((word,), name, (n,), text="0-100%", spans=k.LEVEL)
            for n, (word, name) in enumerate(
                (("cyan", "Cyan"), ("magenta", "Magenta"), ("yellow", "Yellow")), 9
            )
        ),
        P(
            ("color-wheel",),
            "Color wheel",
            (12,),
            ranges=(
                k.opened(0, 10, "Open"),
                *k.steps(11, 15, "Red 29", "Blue 119", "Green 124", "Orange 158", "CTB 201", "UV 181"),
                *k.steps(101, 15, "Open / Red 29", "Red 29 / Blue 119", "Blue 119 / Green 124"),
                k.rainbow(146, 200, "Forward rainbow, slow to fast"),
                k.rainbow(201, 255, "Backward rainbow, slow to fast"),
            ),
        ),
        P(
            ("rotating-gobo-wheel", "gobo-wheel"),
            "Rotating gobos",
            (13,),
            ranges=(
                k.opened(0, 9, "Open"),
                *k.steps(10, 10, *(f"Rotating gobo {n}" for n in range(1, 8))),
                *(k.shake(80 + 15 * n, 94 + 15 * n, f"Rotating gobo {n + 1} shake") for n in range(7)),
                k.spin(185, 255, "Scroll, slow to fast", "gobo-wheel"),
            ),
        ),
        P(
            ("gobo-index-rotation", "gobo-rotation", "gobo-index"),
            "Gobo indexing MSB",
            (14, 15),
            ("Gobo indexing LSB",),
            ranges=(
                k.index(0, 127, "Indexing", "gobo"),
                k.spin(128, 189, "Forward rotation, fast to slow", "gobo"),
                k.stop(190, 193, "No rotation"),
                k.spin(194, 255, "Backward rotation, slow to fast", "gobo"),
            ),
        ),
        P(
            ("animation-wheel", "effects-wheel"),
            "Animation wheel",
            (16,),
            ranges=(k.out(0, 19, "Out"), R(20, 255, "In")),
        ),
        P(("iris",), "Iris", (17,), text="Max to min aperture"),
        P(("zoom",), "Zoom MSB", (18, 19), ("Zoom LSB",), "6° to 44°", (span(6, 44, "deg"),)),
        P(("focus",), "Focus MSB", (20, 21), ("Focus LSB",), "Near to far"),
        P(("frost",), "Frost", (22,), text="0-100%", spans=k.LEVEL),
        P(
            ("control", "reset"),
            "Special",
            (23,),
            ranges=(
                k.nothing(0, 69, "Reserved"),
                R(70, 79, "Blackout while moving", sets=("blackout-on-move", "on", "on")),
                R(80, 89, "No blackout while moving", sets=("blackout-on-move", "off", "off")),
                k.nothing(90, 199, "Reserved"),
                k.reset(200, 209, "Reset all"),
                k.nothing(210, 255, "Reserved"),
            ),
        ),
    )


@chart(
    "fourth-headless",
    "over pages without repeated heads, remarks column",
    "pdf",
    "en",
    "Tolsey Stage",
    "Nuthatch S",
)
def headless(seed: int) -> Made:
    params = vary(spot_params(), seed)
    rows: list[list[object]] = [["Ch.", "Function", "From - to", "What it does", "Type"]]
    for line in k.lines(params):
        for n, (lo, hi, text) in enumerate(line.rows):
            kind = "proportional" if " to " in text or "%" in text or not text else "step"
            rows.append(["" if n else line.slot, "" if n else line.name, k.zeros(lo, hi), text, kind])
    parts = [
        head("DMX protocol"),
        head(
            "Extended mode uses all of the channels below. Mains voltage inside: disconnect before service.",
            0,
        ),
        table(rows, [30, 110, 60, 190, 70], top=0),
    ]
    data = paper(parts, "Nuthatch S manual, firmware 1.8 and later")
    return k.made("Tolsey Stage", "Nuthatch S", [k.mode(params)], data)


LEISTE = (
    P(("dimmer",), "Dimmer", text="0-100%", spans=k.LEVEL),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 7, "aus"), k.flash(8, 255, "langsam - schnell"))),
    *(
        P((word,), name, text="0-100%", spans=k.LEVEL)
        for word, name in (("red", "Rot"), ("green", "Grün"), ("blue", "Blau"), ("amber", "Amber"))
    ),
    P(
        ("macro", "color-macro", "effect"),
        "Programm",
        ranges=(
            k.nothing(0, 31, "ohne Funktion"),
            k.runs(32, 95, "Farbüberblendung"),
            k.runs(96, 159, "Farbwechsel"),
            k.runs(160, 255, "Musiksteuerung"),
        ),
    ),
    P(("macro-speed", "color-macro-speed", "effect-speed"), "Programmtempo", text="langsam - schnell"),
)
LEISTE_PLANS = (
    ("4-Kanal-Modus", "- - 1 2 3 4 - -"),
    ("6-Kanal-Modus", "1 2 3 4 5 6 - -"),
    ("8-Kanal-Modus", "1 2 3 4 5 6 7 8"),
)


@chart(
    "fourth-leiste",
    "three whole tables beside each other on a page",
    "pdf",
    "de",
    "Grünlanden",
    "Goldammer 24",
)
def leiste(seed: int) -> Made:
    params = vary(LEISTE, seed)
    from reportlab.platypus import Table

    modes = [k.mode(k.seat(params, plan), name, name.removesuffix("-Modus")) for name, plan in LEISTE_PLANS]
    beside = []
    for mode in modes:
        rows: list[list[object]] = [["Kanal", "Funktion", "Wert", "Wirkung"]]
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append(["" if n else line.slot, "" if n else line.name, k.hyphen(lo, hi), text])
        beside.append([head(mode.title, 3), table(rows, [32, 74, 46, 84])])
    outer = Table([beside], [250, 250, 250], style=[("VALIGN", (0, 0), (-1, -1), "TOP")])
    data = paper([head("DMX-Modi"), outer], "Goldammer 24 - Anleitung", across=True)
    return k.made("Grünlanden", "Goldammer 24", modes, data)
