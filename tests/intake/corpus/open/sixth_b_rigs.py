"""Workbooks by five more makers: modes at the end, tables side by side, gels, notes, percents."""

from __future__ import annotations

import datetime
from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import p
from intake.corpus.registry import chart

CEGADORA = (
    P(("intensity-master", "dimmer"), "Intensidad general", text="0 a 100 %", spans=k.LEVEL),
    *(P(("dimmer",), f"Lámpara {n}", text="0 a 100 %", spans=k.LEVEL) for n in range(1, 5)),
    p("strobe shutter", "Estrobo", "0-10 out: Sin estrobo", "11-255 flash: De lento a rápido"),
    p(
        "effect macro",
        "Efecto",
        "0-50 nothing: Sin efecto",
        "51-101 runs: Persecución",
        "102-152 runs: Vaivén",
        "153-203 random: Aleatorio",
        "204-255 runs: Latido",
    ),
    P(("effect-speed", "macro-speed"), "Velocidad del efecto", text="De lento a rápido"),
)
CEGADORA_PLANS = (
    ("Simple", "1 - - - - 2 - -"),
    ("Lámparas", "- 1 2 3 4 - - -"),
    ("Total", "1 2 3 4 5 6 7 8"),
)


@chart(
    "sixth-b-cegadora",
    "a head of two rows, values as two numbers, slots of three modes at the end",
    "xlsx",
    "es",
    "Ráfaga Escena",
    "Cegadora 4",
)
def cegadora(seed: int) -> Made:
    heads = [C(text, rows=2) for text in ("Función", "Mín.", "Máx.", "Descripción")]
    rows: list[Any] = [["Cegadora 4: canales DMX"], [*heads, C("Canal según el modo", cols=3), None, None]]
    rows.append([None, None, None, None, *(name for name, _ in CEGADORA_PLANS)])
    for side in k.sides(CEGADORA, *(plan for _, plan in CEGADORA_PLANS)):
        reach = len(side.rows)
        for n, (lo, hi, text) in enumerate(side.rows):
            slots: list[Any] = ["–" if at is None else at for at in side.slots]
            if reach > 1:
                slots = [None if n else C(str(at), rows=reach) for at in slots]
            name = side.name if reach == 1 else None if n else C(side.name, rows=reach)
            rows.append([name, lo, hi, text, *slots])
    rows += [[], ["No mire a las lámparas a menos de 2 m."]]
    modes = [k.mode(k.seat(CEGADORA, plan), name) for name, plan in CEGADORA_PLANS]
    return k.made("Ráfaga Escena", "Cegadora 4", modes, s.book([("DMX", rows)]))


TOTEM = (
    ("3 channel mode", ("Red", "Green", "Blue")),
    ("5 channel mode", ("Red", "Green", "Blue", "Amber", "White")),
    ("7 channel mode", ("Dimmer", "Red", "Green", "Blue", "Amber", "White", "Strobe")),
)
TOTEM_WORDS = {"Dimmer": ("dimmer", "intensity-master"), "Strobe": ("strobe", "shutter")}


@chart(
    "sixth-b-totem",
    "a small table for each mode, next to each other, without values",
    "xlsx",
    "en",
    "Candlewick Event Supply",
    "Totem 5",
)
def totem(seed: int) -> Made:
    rows: list[list[s.Item]] = [["Candlewick Totem 5 battery uplight"], []]
    rows.append([one for title, _ in TOTEM for one in (C(title, cols=2), None, "")])
    rows.append(["Channel", "Function", ""] * len(TOTEM))
    for at in range(max(len(labels) for _, labels in TOTEM)):
        row: list[s.Item] = []
        for _, labels in TOTEM:
            row += [at + 1, labels[at], ""] if at < len(labels) else ["", "", ""]
        rows.append(row)
    modes = [
        k.mode(
            [P(TOTEM_WORDS.get(name, (name.lower(),)), name, (at,)) for at, name in enumerate(labels, 1)],
            title,
            title.removesuffix(" mode"),
        )
        for title, labels in TOTEM
    ]
    return k.made("Candlewick Event Supply", "Totem 5", modes, s.book([("Sheet1", rows)]))


GELS = (
    "Clear",
    "Pale straw",
    "Straw",
    "Deep straw",
    "Apricot",
    "Pale amber",
    "Salmon",
    "Primary red",
    "Rose pink",
    "Lavender",
    "Night blue",
    "Steel blue",
    "Half blue correction",
    "Full blue correction",
    "Half orange correction",
    "Full orange correction",
)
SCROLLER = s.row_of(
    (
        p(
            "color-scroller",
            "Gel frame",
            R(0, 15, "Clear", also=("1 Clear",), may={"does": ("open", "nothing")}),
            *(replace(r, also=(f"{n} {r.text}",)) for n, r in enumerate(k.steps(16, 16, *GELS[1:]), 2)),
        ),
        P(("color-speed", "beam-speed", "motor-speed"), "Scroll speed", text="Fastest to slowest"),
        p("fan-mode fan", "Fan", "0-85 fan: Quiet", "86-170 fan: Normal", "171-255 fan: Full"),
        p(
            "control reset other",
            "Service",
            "0-239 nothing: Idle",
            R(240, 249, "Calibrate string, hold 5 s", hazard="calibration", hold_s=5),
            "250-255 nothing: Idle",
        ),
    )
)


@chart(
    "sixth-b-gels",
    "gels by name, numbers of frames before the ranges, merged slots",
    "xlsx",
    "en",
    "Threadneedle Stagecraft",
    "Gelstring 16",
)
def gels(seed: int) -> Made:
    rows: list[Any] = [["Gelstring 16 color scroller"], ["Slot", "Function", "Frame", "DMX", "Result"]]
    for row in s.body(SCROLLER, "slot name value text", reach=True):
        frame: s.Item = GELS.index(row[3]) + 1 if row[3] in GELS else ""
        rows.append([*row[:2], frame, *row[2:]])
    rows += [[], ["Frames as delivered. A custom string keeps the ranges and changes the names."]]
    sheets: list[tuple[str, list[list[s.Item]]]] = [("DMX", rows)]
    sheets.append(("Power", [["Units per supply", "Cable"], [12, "30 m"], [8, "60 m"], [6, "100 m"]]))
    return k.made("Threadneedle Stagecraft", "Gelstring 16", [k.mode(SCROLLER)], s.book(sheets))


ABOUT = "a note under the table says so"
HEATED = ({"parameter": "heater", "from": 128, "to": 255},)
FOGGED = ({"parameter": "fog-output", "from": 10, "to": 255},)
LOWLIE = s.row_of(
    (
        p(
            "fog-output",
            "Fog output",
            "0-9 off: Off",
            R(10, 255, "10% to 100%", span=span(10, 100, "%")),
            when=HEATED,
            doubt="may",
            why=ABOUT,
        ),
        P(("fan",), "Blower", text="Slow to fast"),
        p("heater power", "Heater", "0-127 off: Heater off", "128-255: Heater on", key="heater"),
        P(
            ("output-duration",),
            "Burst length",
            text="1 s to 30 s",
            spans=(span(1, 30, "s"),),
            when=FOGGED,
            doubt="may",
            why=ABOUT,
        ),
        P(
            ("output-interval",),
            "Pause between bursts",
            text="5 s to 240 s",
            spans=(span(5, 240, "s"),),
            when=FOGGED,
            doubt="may",
            why=ABOUT,
        ),
    )
)


@chart(
    "sixth-b-lowlie",
    "a frame of titles and a date, conditions in notes under the table",
    "xlsx",
    "en",
    "Murkwater Effects",
    "LowLie 2",
)
def lowlie(seed: int) -> Made:
    rows: list[Any] = [
        [C("LowLie 2 low fog generator", cols=4), None, None, None],
        ["Document", "LL2-DMX", "Issued", datetime.date(2025, 9, 22)],
        [],
        ["DMX slot", "Function", "Value", "Response"],
        *s.body(LOWLIE, "slot name value text", lambda lo, hi: f"{lo} to {hi}", reach=True),
        [],
        ["Notes"],
        ["Slot 1 has an effect only while slot 3 is at 128 to 255."],
        ["Slots 4 and 5 have an effect only while slot 1 is at 10 to 255."],
        ["Fluid use at full output: 90 ml in a minute."],
    ]
    return k.made("Murkwater Effects", "LowLie 2", [k.mode(LOWLIE)], s.book([("DMX slots", rows)]))


CARRE_LEVEL = P(
    ("dimmer",),
    "Intensité",
    fine=("Intensité fine",),
    text="Éteint à plein feu",
    # The percents beside the values may be read as those of the light.
    spans=(None, *k.LEVEL),
)
CARRE_KELVIN = P(
    ("color-temperature",),
    "Température de couleur",
    fine=("Température fine",),
    text="2700 K à 6500 K",
    spans=(span(2700, 6500, "K"),),
)
CARRE_TINT = P(("tint", "green-correction"), "Vert / magenta", text="Magenta à vert")
CARRE_EFFECT = p(
    "effect macro",
    "Effet",
    "0-25 nothing: Aucun",
    "26-71 runs: Bougie",
    "72-117 runs: Téléviseur",
    "118-163 runs: Éclairs",
    "164-209 runs: Feu de cheminée",
    "210-255 runs: Néon défaillant",
)
CARRE = (
    ("Mode A", (CARRE_LEVEL, CARRE_KELVIN, CARRE_TINT), "1 2 3"),
    ("Mode B", (CARRE_LEVEL, CARRE_KELVIN, CARRE_TINT, CARRE_EFFECT), "1/2 3/4 5 6"),
)


@chart(
    "sixth-b-carre",
    "numbers and percents in four columns of figures, a band over each mode",
    "xlsx",
    "fr",
    "Bellecombe Cinéma",
    "Carré 400",
)
def carre(seed: int) -> Made:
    rows: list[list[s.Item]] = [["Carré 400 - panneau LED bicolore - implantation DMX"]]
    modes: list[M] = []
    for name, params, plan in CARRE:
        modes.append(s.counted(k.seat(params, plan), name, "canaux", "{} : {} {}"))
        rows += [[], [C(modes[-1].title, cols=7), *[None] * 6]]
        rows.append(["Canal", "Fonction", "DMX min", "DMX max", "% min", "% max", "Action"])
        rows += s.body(modes[-1].params, "slot name from to low high text")
    rows += [[], ["Mise à jour", datetime.date(2025, 1, 20)]]
    return k.made("Bellecombe Cinéma", "Carré 400", modes, s.book([("Feuil1", rows)], "dd/mm/yyyy"))
