"""Lights for floor and wall in PDFs: a cyc light, a pocket cube, battery uplights, a strobe, and a hazer."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

CYC = [
    P((word,), name, fine=(f"{name} fin",), text="0 à 100 %", spans=k.LEVEL)
    for word, name in (
        ("dimmer", "Intensité"),
        ("red", "Rouge"),
        ("green", "Vert"),
        ("blue", "Bleu"),
        ("amber", "Ambre"),
    )
]
CYC += [
    P(
        ("strobe", "shutter"),
        "Stroboscope",
        ranges=(k.out(0, 7, "Sans stroboscope"), k.flash(8, 255, "Lent à rapide")),
    ),
    P(
        ("dimmer-curve",),
        "Courbe de gradation",
        ranges=(
            R(0, 84, "Linéaire", sets=("dimmer-curve", "linear", "Linéaire")),
            R(85, 169, "Quadratique", sets=("dimmer-curve", "square", "Quadratique")),
            R(170, 255, "Courbe en S", sets=("dimmer-curve", "s", "Courbe en S")),
        ),
    ),
]
CYC_PLANS = (
    (("Mode 8 bits", "7 canaux"), "1 2 3 4 5 6 7"),
    (("Mode 16 bits", "12 canaux"), "1/2 3/4 5/6 7/8 9/10 11 12"),
)


@chart("fifth-cyclo", "function first, paired slots in one row", "pdf", "fr", "Ateliers Corvenne", "Cyclo 8")
def cyclo(seed: int) -> Made:
    modes = []
    parts: list[Any] = [f.say("Tableaux DMX", 14, "Helvetica-Bold", 8)]
    for titles, plan in CYC_PLANS:
        mode = f.named(k.seat(CYC, plan), *titles, joint=" – ")
        modes.append(mode)
        rows = [["Fonction", "Canal", "Valeur", "Action"]]
        for p in mode.params:
            values = p.ranges or (R(0, p.top, p.text),)
            where = " + ".join(map(str, p.slots))
            rows += [
                ["" if n else p.label, "" if n else where, f"{r.lo} à {r.hi}", r.text]
                for n, r in enumerate(values)
            ]
        marks: list[tuple[Any, ...]] = [
            ("BOX", (0, 0), (-1, -1), 1, "#000000"),
            ("LINEBELOW", (0, 0), (-1, 0), 1, "#000000"),
        ]
        marks += [("LINEABOVE", (0, y), (-1, y), 0.3, "#808080") for y, row in enumerate(rows) if row[0]]
        parts += [
            f.say(mode.title, 11, "Helvetica-Bold"),
            f.grid(rows, [150, 70, 100, 180], *marks, *f.merges(rows, (0, 1))),
        ]
    parts.append(f.say("En mode 16 bits, le premier canal de chaque paire est l'octet de poids fort.", 8))
    data = f.flow(parts, "Cyclo 8 – notice technique", (842, 595), "Ateliers Corvenne")
    return k.made("Ateliers Corvenne", "Cyclo 8", modes, data)


CUBE = (
    P(("dimmer",), "Intensidad", text="0 % a 100 %", spans=k.LEVEL),
    *(
        P((word,), name, text="0 % a 100 %", spans=k.LEVEL)
        for word, name in (
            ("red", "Rojo"),
            ("lime", "Lima"),
            ("amber", "Ámbar"),
            ("cyan-emitter", "Cian"),
            ("blue", "Azul"),
        )
    ),
    P(("color-temperature",), "Temperatura de color", text="2500 K a 9000 K", spans=(span(2500, 9000, "K"),)),
    P(("hue",), "Tono", text="0° a 360°", spans=(span(0, 360, "deg"),)),
    P(("saturation",), "Saturación", text="0 % a 100 %", spans=k.LEVEL),
    P(
        ("effect", "macro"),
        "Efecto",
        ranges=(
            k.nothing(0, 20, "Sin efecto"),
            k.runs(21, 70, "Vela"),
            k.runs(71, 120, "Sirena"),
            k.runs(121, 170, "Tormenta"),
            k.runs(171, 220, "Flash de cámara"),
            k.runs(221, 255, "Ciclo de color"),
        ),
    ),
)
CUBE_PLANS = (
    ("MODO BLANCO", "1 - - - - - 2 - - -"),
    ("MODO TONO", "1 - - - - - - 2 3 4"),
    ("MODO DIRECTO", "1 2 3 4 5 6 - - - 7"),
)


@chart(
    "fifth-cubo", "from and to, the mode's name over each table", "pdf", "es", "Grupo Tarrasol", "Cubo Nueve"
)
def cubo(seed: int) -> Made:
    pdf = f.book("dejavu", "Guía rápida", "Grupo Tarrasol · Cubo Nueve ·", f.A5)
    pdf.say("Control por DMX", 13, True)
    pdf.say("Carga completa: 3 h. Autonomía: 2 h al 100 %. No cubra la lente del cubo.", 8)
    modes = []
    for title, plan in CUBE_PLANS:
        mode = f.named(k.seat(CUBE, plan), title, title.split()[1])
        modes.append(mode)
        pdf.say(title, 10, True)
        rows = [["Canal", "Nombre", "Desde", "Hasta", "Acción"]]
        rows += f.body(mode.params, "slot name low high text")
        pdf.grid(rows, (13, 36, 14, 14, 39), (0, 1), 8, borders_layout="MINIMAL")
    return k.made("Grupo Tarrasol", "Cubo Nueve", modes, bytes(pdf.output()))


EMBER = (
    P(("dimmer", "intensity-master"), "Master dimmer", text="0 - 100%", spans=k.LEVEL),
    *(
        P((name.lower(),), name, text="0 - 100%", spans=k.LEVEL)
        for name in ("Red", "Green", "Blue", "White", "Amber", "UV")
    ),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 9, "Strobe off"), k.flash(10, 255, "Strobe slow - fast")),
    ),
    P(
        ("color-macro", "macro", "color-preset"),
        "Color macros",
        ranges=(
            k.nothing(0, 9, "No function"),
            *k.steps(10, 20, "Red", "Yellow", "Green", "Cyan", "Blue", "Magenta", "Warm white"),
            k.runs(150, 185, "Color jump program"),
            k.runs(186, 220, "Color fade program"),
            k.maybe_runs(221, 255, "Sound active"),
        ),
    ),
    P(("color-macro-speed", "macro-speed"), "Program speed", text="Slow - fast"),
)
EMBER_PLANS = (
    ("4CH", "- 1 2 3 4 - - - - -"),
    ("6CH", "- 1 2 3 4 5 6 - - -"),
    ("8CH", "1 2 3 4 5 6 7 8 - -"),
    ("10CH", "1 2 3 4 5 6 7 8 9 10"),
)


@chart(
    "fifth-uplight", "four slot columns first, zeros and spaces", "pdf", "en", "Pontelux Event", "Ember 6 B"
)
def uplight(seed: int) -> Made:
    pdf = f.book("Helvetica", "", "Pontelux Event - Ember 6 B - user manual - page", "letter")
    pdf.say("DMX channel functions", 14, True)
    pdf.say("To set the mode: MENU, UP to CHAN, ENTER, UP or DOWN to 4CH, 6CH, 8CH or 10CH, ENTER.")
    rows = [[*(name for name, _ in EMBER_PLANS), "Function", "Value", "Description"]]
    plans = [plan for _, plan in EMBER_PLANS]
    rows += f.beside(EMBER, plans, "slots name value text", lambda lo, hi: f"{lo:03} - {hi:03}", "---")
    pdf.grid(rows, (13, 13, 13, 14, 36, 30, 60), range(5), v_align="TOP")
    pdf.say("Battery", 14, True)
    pdf.grid(
        [["Level", "Run time", "Charge time"], ["One color", "18 h", "4 h"], ["Full", "6 h", "4 h"]],
        (40, 40, 40),
    )
    modes = [f.named(k.seat(EMBER, plan), name) for name, plan in EMBER_PLANS]
    return k.made("Pontelux Event", "Ember 6 B", modes, bytes(pdf.output()))


FLASH = (
    P(("dimmer", "strobe-dimmer"), "Intensity", text="0 to 100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Flash rate",
        ranges=(k.out(0, 5, "No flash"), k.flash(6, 255, "0.5 to 25 Hz", (0.5, 25))),
    ),
    P(("strobe-duration",), "Flash duration", text="10 to 500 ms", spans=(span(10, 500, "ms"),)),
    P(
        ("strobe-mode", "effect", "macro"),
        "Flash pattern",
        ranges=(
            k.optional(R(0, 51, "Even"), parameter=("strobe",)),
            k.optional(k.chance(52, 102, "Random"), does=("runs",)),
            k.maybe_runs(103, 153, "Ramp up"),
            k.maybe_runs(154, 204, "Ramp down"),
            k.maybe_runs(205, 255, "Lightning"),
        ),
    ),
    *(
        P(("dimmer", "strobe-dimmer"), f"Zone {n} intensity", text="0 to 100%", spans=k.LEVEL)
        for n in range(1, 9)
    ),
)
FLASH_PLANS = (
    ("Two", "1 2 - - - - - - - - - -"),
    ("Four", "1 2 3 4 - - - - - - - -"),
    ("Zones", "1 2 3 4 5 6 7 8 9 10 11 12"),
)


@chart("fifth-strobe", "percent before decimal, a table a mode", "pdf", "en", "Blaxter Effects", "Arc Nine")
def strobe(seed: int) -> Made:
    parts: list[Any] = [
        f.say("DMX modes", 15, "Helvetica-Bold", 8),
        f.say("Warning: flashing light can cause seizures. Put up signs before the public enters.", 9),
    ]
    modes = []
    for name, plan in FLASH_PLANS:
        params = k.seat(FLASH, plan)
        mode = f.named(params, name, f"({max(p.slots[0] for p in params)}ch)")
        modes.append(mode)
        rows = [["Slot", "Attribute", "%", "Value", "Result"]]
        rows += f.body(params, "slot name share value text", lambda lo, hi: f"{lo}..{hi}")
        marks = [("LINEBELOW", (0, 0), (-1, 0), 1.2, "#c02020")]
        marks += [("LINEABOVE", (0, y), (-1, y), 0.3, "#999999") for y in range(1, len(rows)) if rows[y][0]]
        parts += [f.say(mode.title, 11, "Helvetica-Bold"), f.grid(rows, [36, 120, 60, 60, 150], *marks)]
    parts.append(f.say("Duty is limited: above 10 s of full output the fixture dims itself to 60%.", 8))
    data = f.flow(parts, "Arc Nine manual rev C")
    return k.made("Blaxter Effects", "Arc Nine", modes, data)


def _off(lo: int, hi: int) -> R:
    return k.optional(R(lo, hi, "Off"), does=("nothing", "stop", "closed"))


DRIFT = (
    P(
        ("haze-output", "fog-output"),
        "Haze output",
        ranges=(_off(0, 5), R(6, 255, "1% to 100%", span=span(1, 100, "%"))),
    ),
    P(("fan",), "Fan speed", text="30% to 100%", spans=(span(30, 100, "%"),)),
    P(
        ("power", "control", "heater", "output-mode", "other"),
        "Standby",
        ranges=(
            k.optional(R(0, 127, "Heater on"), sets=("standby", "other")),
            k.optional(R(128, 255, "Heater off"), sets=("standby", "other")),
        ),
        doubt="may",
        why="no one word for it",
    ),
)
DRIFT_PLANS = (("Simple", "1 - -"), ("Full", "1 2 3"))


@chart("fifth-hazer", "footnote stars at the names, notes below", "pdf", "en", "Wexmoor Effects", "Drift Two")
def hazer(seed: int) -> Made:
    pdf = f.book("Times", "Wexmoor Effects Ltd", "Drift Two operating instructions", f.A5)
    pdf.say("DMX operation", 14, True)
    pdf.say("Select Simple or Full under DMX in the menu. Use water based fluid only and air the room.", 9)
    modes = []
    for name, plan in DRIFT_PLANS:
        mode = k.mode(k.seat(DRIFT, plan), f"{name} mode", name)
        modes.append(mode)
        pdf.say(f"{name} mode", 11, True)
        rows = [["Channel", "Function", "DMX value", "Setting"]]
        rows += f.body(mode.params, "slot name value text", lambda lo, hi: f"{lo} to {hi}")
        stars = {"Haze output": "Haze output*", "Fan speed": "Fan speed**"}
        rows = [[a, stars.get(b, b), c, d] for a, b, c, d in rows]
        pdf.grid(rows, (18, 34, 30, 34), (0, 1), 9)
    pdf.say("* There is no output until the display reads READY, about 6 minutes from cold.", 8)
    pdf.say("** The fan runs on for 30 seconds after output stops.", 8)
    return k.made("Wexmoor Effects", "Drift Two", modes, bytes(pdf.output()))
