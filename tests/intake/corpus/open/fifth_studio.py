"""Lights for film studios in PDFs: a panel, a tube, a fresnel and a profile."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

BRIGHT = P(("dimmer",), "Brightness", text="Brightness from dark to bright")
TONE = P(("color-temperature",), "Color temperature", text="2700K~6500K", spans=(span(2700, 6500, "K"),))
PANEL = (
    BRIGHT,
    TONE,
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 10, "No strobe"), k.flash(11, 255, "Strobe from slow to quick")),
    ),
    P(
        ("effect", "macro"),
        "Scene effect",
        ranges=(
            k.nothing(0, 9, "No effect"),
            k.runs(10, 49, "Lightning"),
            k.runs(50, 89, "Paparazzi"),
            k.runs(90, 129, "Television"),
            k.runs(130, 169, "Candle light"),
            k.runs(170, 209, "Fire"),
            k.runs(210, 255, "Welding"),
        ),
    ),
    P(("effect-speed", "macro-speed"), "Effect speed", text="Effect from slow to quick"),
    P(
        ("fan-mode", "fan"),
        "Fan mode",
        ranges=(
            k.fan_choice(0, 100, "Fan intelligent"),
            k.fan_choice(101, 200, "Fan silent"),
            k.fan_choice(201, 255, "Fan full speed"),
        ),
    ),
)


@chart(
    "fifth-panel", "centered grid with tildes, translated English", "pdf", "en", "Lumqian Photo", "LQ-P120 Bi"
)
def panel(seed: int) -> Made:
    pdf = f.book("vera", "LQ-P120 Bi instruction manual", "Lumqian Photo Equipment -")
    pdf.say("6. DMX512 control", 13, True)
    pdf.say(
        "Connect the DMX signal line to the DMX IN interface of the lamp. Press the MENU key to enter the"
    )
    pdf.say("DMX page, turn the knob to choose address code 001~512, then choose the channel mode.", after=5)
    modes = []
    for title, plan in (("2CH mode", "1 2 - - - -"), ("6CH mode", "1 2 3 4 5 6")):
        mode = k.mode(k.seat(PANEL, plan), title, title.split()[0])
        modes.append(mode)
        pdf.say(title, 10.5, True)
        rows = [["Channel", "Function", "DMX value", "Explain"]]
        rows += f.body(mode.params, "slot name value text", f.tilde)
        rows = [[f"CH{row[0]}" if n and row[0] else row[0], *row[1:]] for n, row in enumerate(rows)]
        pdf.grid(rows, (22, 44, 34, 70), (0, 1), text_align="CENTER", v_align="MIDDLE")
    pdf.say("7. Common failures", 13, True)
    pdf.grid(
        [
            ["Failure", "Reason", "Method"],
            ["Lamp not bright", "Power not connected", "Check the power line"],
            ["DMX no response", "Address code wrong", "Set address code again"],
        ],
        (44, 60, 66),
    )
    return k.made("Lumqian Photo", "LQ-P120 Bi", modes, bytes(pdf.output()))


LEVEL = P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0 to 100%", spans=k.LEVEL)
WHITE = P(("color-temperature",), "CCT", text="2000 K to 10000 K", spans=(span(2000, 10000, "K"),))
GREEN = P(("tint", "green-correction"), "+/- Green", text="Full minus green to full plus green")
FADE = P(("white-color-crossfade",), "Crossfade", text="White to color")
HUE = P(("hue",), "Hue", fine=("Hue fine",), text="0 to 360°", spans=(span(0, 360, "deg"),))
SAT = P(("saturation",), "Saturation", text="0 to 100%", spans=k.LEVEL)
RGBWW = [
    P((word,), name, text="0 to 100%", spans=k.LEVEL)
    for word, name in (
        ("red", "Red"),
        ("green", "Green"),
        ("blue", "Blue"),
        ("warm-white", "Warm white"),
        ("cool-white", "Cool white"),
    )
]
PIXELS = [
    P((color.lower(),), f"Pixel {n} {color}", text="0 to 100%", spans=k.LEVEL)
    for n in range(1, 9)
    for color in ("Red", "Green", "Blue")
]
TUBE: tuple[tuple[tuple[str, ...], list[P], str], ...] = (
    (("Mode 1", "White", "3 slots"), [LEVEL, WHITE, GREEN], "1 2 3"),
    (("Mode 2", "RGBWW", "6 slots"), [LEVEL, *RGBWW], "1 2 3 4 5 6"),
    (
        ("Mode 3", "White and HSI", "8 slots"),
        [LEVEL, WHITE, GREEN, FADE, HUE, SAT],
        "1/2 3 4 5 6/7 8",
    ),
    (
        ("Mode 4", "8 pixels RGB", "25 slots"),
        [P(("intensity-master", "dimmer"), "Master dimmer", text="0 to 100%", spans=k.LEVEL), *PIXELS],
        " ".join(map(str, range(1, 26))),
    ),
)


@chart("fifth-tube", "zebra by slot under dark heads, four modes", "pdf", "en", "Fernquist Light", "Stem 4")
def tube(seed: int) -> Made:
    font = f.letter("dejavu")
    parts: list[Any] = [
        f.say("DMX implementation", 15, f"{font}-Bold", 10),
        f.say("Firmware 2.1 and up. All values are decimal. Fine slots count 256 steps within one.", 8, font),
        f.say("The tube joins a wireless DMX net from Settings, Link. Battery time is 3 h at 100%.", 8, font),
    ]
    modes = []
    for titles, params, plan in TUBE:
        mode = f.named(k.seat(params, plan), *titles, joint=" · ")
        modes.append(mode)
        rows = [["Slot", "Parameter", "DMX", "Range"]]
        rows += f.body(mode.params, "slot name value text", lambda lo, hi: f"{lo} – {hi}")
        marks = [("BACKGROUND", (0, 0), (-1, 0), "#23272e")]
        marks += [("BACKGROUND", (0, y), (-1, y), "#e9ecf1") for y in range(2, len(rows), 2)]
        parts += [
            f.say(mode.title, 11, f"{font}-Bold"),
            f.grid(rows, [44, 150, 80, 200], *marks, font=font, white=True),
        ]
    data = f.flow(parts, "fernquist light / stem 4", (612, 792))
    return k.made("Fernquist Light", "Stem 4", modes, data)


STUFEN = (
    P(("dimmer",), "Dimmer", fine=("Dimmer fein",), text="0 – 100 %", spans=k.LEVEL, default=0),
    P(
        ("color-temperature",),
        "Farbtemperatur",
        fine=("Farbtemperatur fein",),
        text="2700 – 6500 K",
        spans=(span(2700, 6500, "K"),),
        default=128,
    ),
    P(("tint", "green-correction"), "Grün/Magenta", text="Magenta – neutral – Grün", default=128),
    P(("zoom", "focus"), "Fokus (Flut/Spot)", text="55° – 12°", spans=(span(55, 12, "deg"),), default=0),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 9, "aus"), k.flash(10, 255, "1 – 20 Hz", (1, 20))),
        default=0,
    ),
    P(
        ("dimmer-curve",),
        "Dimmerkurve",
        ranges=(
            R(0, 63, "linear", sets=("dimmer-curve", "linear", "linear")),
            R(64, 127, "quadratisch", sets=("dimmer-curve", "square", "quadratisch")),
            R(128, 255, "S-Kurve", sets=("dimmer-curve", "s", "S-Kurve")),
        ),
        default=0,
    ),
    P(
        ("smoothing",),
        "Glättung",
        ranges=(
            R(0, 63, "aus", sets=("smoothing", "off", "aus")),
            R(64, 127, "schwach", sets=("smoothing", "weak", "schwach")),
            R(128, 255, "stark", sets=("smoothing", "strong", "stark")),
        ),
        default=64,
    ),
    P(
        ("fan-mode", "fan"),
        "Lüfter",
        ranges=(
            k.fan_choice(0, 84, "Automatik"),
            k.fan_choice(85, 169, "leise"),
            k.fan_choice(170, 255, "maximal"),
        ),
        default=0,
    ),
)
STUFEN = (replace(STUFEN[0], fine_default=0), replace(STUFEN[1], fine_default=0), *STUFEN[2:])
STUFEN_PLANS = (
    ("Modus 1", "1 2 - - - - - -"),
    ("Modus 2", "1/2 3 4 5 6 - - 7"),
    ("Modus 3", "1/2 3/4 5 6 7 8 9 10"),
)


@chart(
    "fifth-stufenlinse",
    "name first, three modes, default before values, merged",
    "pdf",
    "de",
    "Ostramer Scheinwerferbau",
    "SL 250 F",
)
def stufenlinse(seed: int) -> Made:
    plans = [plan for _, plan in STUFEN_PLANS]
    rows = f.beside(STUFEN, plans, "name slots value text", k.dash, "–")
    defaults = {p.label: p.default for p in STUFEN} | {name: 0 for p in STUFEN for name in p.fine}
    rows = [[*r[:4], str(defaults[r[0]]) if r[0] else "", *r[4:]] for r in rows]
    rows.insert(0, ["Funktion", *(name for name, _ in STUFEN_PLANS), "Grundwert", "DMX-Wert", "Wirkung"])
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.4, "#000000")]
    marks += [("BACKGROUND", (0, 0), (-1, 0), "#d8d8d8"), ("VALIGN", (0, 1), (4, -1), "MIDDLE")]
    for y in [n for n in range(1, len(rows)) if rows[n][0]]:
        end = next((n for n in range(y + 1, len(rows)) if rows[n][0]), len(rows)) - 1
        marks += [("SPAN", (x, y), (x, end)) for x in range(5) if end > y]
    parts = [
        f.say("5.3 Kanalbelegung", 13, "Times-Bold", 8),
        f.say(
            "Der Modus wird im Menü unter DMX / Modus gewählt. Ohne DMX-Signal hält der Scheinwerfer den "
            "letzten Wert. Wird ein Grundwert nicht gesendet, gilt der Wert der Tabelle.",
            9.5,
            "Times-Roman",
        ),
        f.grid(rows, [104, 46, 46, 46, 60, 66, 135], *marks, font="Times-Roman", size=9),
        f.say("– = in diesem Modus nicht vorhanden", 8, "Times-Roman"),
    ]
    modes = [f.named(k.seat(STUFEN, plan), name) for name, plan in STUFEN_PLANS]
    data = f.flow(parts, "Betriebsanleitung SL 250 F", head="Ostramer Scheinwerferbau GmbH")
    return k.made("Ostramer Scheinwerferbau", "SL 250 F", modes, data)


PROFILE = (
    P(("dimmer",), "Intensity", (1, 2), ("Intensity Fine",), "Closed to full"),
    P(("red",), "Red", (3,), text="Off to full"),
    P(("green",), "Green", (4,), text="Off to full"),
    P(("blue",), "Blue", (5,), text="Off to full"),
    P(("lime",), "Lime", (6,), text="Off to full"),
    P(
        ("color-preset", "color-macro", "virtual-color-wheel", "swatch"),
        "Color Preset",
        (7,),
        ranges=(
            k.nothing(0, 15, "No preset (color mix in control)"),
            *k.steps(16, 24, "Candlelight", "Tungsten", "Daylight", "Straw", "Rose", "Lavender", "Steel"),
            *k.steps(184, 24, "Moss green", "Primary red", "Primary blue"),
        ),
    ),
    P(
        ("shutter", "strobe"),
        "Strobe",
        (8,),
        ranges=(
            k.opened(0, 19, "Open"),
            k.flash(20, 127, "Strobe, slow to fast"),
            k.chance(128, 235, "Random strobe, slow to fast"),
            k.opened(236, 255, "Open"),
        ),
    ),
    P(("dimmer-fade-time",), "Fade Time", (9,), text="0 to 5 s", spans=(span(0, 5, "s"),)),
)


@chart(
    "fifth-profile", "decimal, hex and percent, lines between rows", "pdf", "en", "Tessel & Brandreth", "L6 P"
)
def profile(seed: int) -> Made:
    pdf = f.book("serif", "", "L6 P User Guide, page", "letter")
    pdf.say("DMX Map", 15, True, 4)
    pdf.say("The L6 P has one DMX profile of 9 channels. Percent is rounded to the nearest whole number.")
    rows = [["Ch.", "Control", "Decimal", "Hex", "Percent", "Action"]]
    rows += f.body(PROFILE, "slot name value hex share text", k.hyphen, "Fine control")
    pdf.grid(rows, (13, 38, 26, 22, 28, 56), (0, 1), borders_layout="HORIZONTAL_LINES")
    pdf.say("Presets override channels 3 through 6. Strobe acts on presets as well.", 8)
    return k.made("Tessel & Brandreth", "L6 P", [k.mode(PROFILE)], bytes(pdf.output()))
