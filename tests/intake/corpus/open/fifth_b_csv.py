"""CSV as makers offer it for download: commas, semicolons and tabs, one mode and several."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made, P, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_b_kit import csv_text, p
from intake.corpus.registry import chart

INTENSITY = P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0% - 100%", spans=k.LEVEL)
KELVIN = P(
    ("color-temperature",), "CCT", fine=("CCT fine",), text="2700K - 6500K", spans=(span(2700, 6500, "K"),)
)
TINT = P(
    ("tint", "green-correction"),
    "Green/Magenta",
    text="-100% (magenta) - +100% (green)",
    spans=(span(-100, 100, "%"),),
)
STROBE = p("strobe shutter", "Strobe", "0-5 out: Off", k.flash(6, 255, "1 Hz - 20 Hz", (1, 20)))
EFFECT = p(
    "effect macro",
    "Effect",
    "0-19 nothing: None",
    "20-49 runs: Lightning",
    "50-79 runs: Television",
    "80-109 runs: Candle",
    "110-139 runs: Fireplace",
    "140-169 runs: Faulty bulb",
    "170-199 runs: Paparazzi",
    "200-229 runs: Pulse",
    "230-255 runs: Fireworks",
)
SPEED = P(("effect-speed", "macro-speed"), "Effect speed", text="Slow - Fast")
SLATE = (
    ("Bi-Color 8bit", (INTENSITY, KELVIN, TINT, STROBE), "1 2 3 4"),
    ("Bi-Color 16bit", (INTENSITY, KELVIN, TINT, STROBE), "1/2 3/4 5 6"),
    ("Effects", (INTENSITY, KELVIN, EFFECT, SPEED), "1 2 3 4"),
)


@chart(
    "fifth-b-panel",
    "the mode's name in every row, percents in the text",
    "csv",
    "en",
    "Copperlark Lighting",
    "Slate 2 Bi",
)
def panel(seed: int) -> Made:
    rows: list[list[Any]] = [["Mode", "Channel", "Parameter", "DMX range", "Function"]]
    modes: list[M] = []
    for name, params, plan in SLATE:
        modes.append(k.mode(k.seat(params, plan), name))
        for line in k.lines(modes[-1].params):
            rows += [[name, line.slot, line.name, k.hyphen(lo, hi), text] for lo, hi, text in line.rows]
    return k.made("Copperlark Lighting", "Slate 2 Bi", modes, csv_text(rows))


FRESNEL = (
    P(("dimmer",), "Dimmer", (1, 2), ("Dimmer fein",), "0–100 %", k.LEVEL),
    p(
        "shutter strobe",
        "Strobe",
        "0-15 open: offen",
        k.flash(16, 235, "Blitzen 1–18 Hz", (1, 18)),
        "236-255 open: offen",
        slots=(3,),
    ),
    P(("zoom",), "Zoom", (4,), text="12°–60°", spans=(span(12, 60, "deg"),)),
    p(
        "dimmer-curve",
        "Dimmkurve",
        "0-63 curve: linear",
        "64-127 curve: quadratisch",
        "128-191 curve: S-Kurve",
        "192-255 curve: Halogen",
        slots=(5,),
    ),
    p(
        "fan-mode fan",
        "Lüfter",
        "0-84 fan: Automatik",
        "85-169 fan: leise",
        "170-255 fan: volle Drehzahl",
        slots=(6,),
    ),
)


@chart(
    "fifth-b-fresnel",
    "from and to columns under a title, notes at the foot, semicolons",
    "csv",
    "de",
    "Lichtbau Uhlenbruch",
    "Stufenlinse 180 WW",
)
def fresnel(seed: int) -> Made:
    rows: list[list[Any]] = [
        ["DMX-Belegung Stufenlinse 180 WW", "", "", "", ""],
        ["Stand: 03/2025, ab Firmware 1.4", "", "", "", ""],
        ["", "", "", "", ""],
        ["Kanal", "Bezeichnung", "von", "bis", "Bedeutung"],
    ]
    for line in k.lines(FRESNEL):
        for n, (lo, hi, text) in enumerate(line.rows):
            first = ["", ""] if n else [line.slot, line.name]
            rows.append([*first, lo, hi, text or "Feineinstellung"])
    rows += [
        ["", "", "", "", ""],
        ["Werkseinstellung der Startadresse: 001", "", "", "", ""],
        ["Die Farbtemperatur beträgt 3200 K und ist nicht einstellbar.", "", "", "", ""],
    ]
    return k.made("Lichtbau Uhlenbruch", "Stufenlinse 180 WW", [k.mode(FRESNEL)], csv_text(rows, ";"))


def _light(word: str, label: str) -> P:
    return P((word,), label, text=f"{label} brightness from dark to bright")


BAR_COLORS = (_light("red", "Red"), _light("green", "Green"), _light("blue", "Blue"))
BAR_SEVEN = (
    P(("dimmer", "intensity-master"), "Total dimming", text="Linear dimming from dark to bright"),
    *BAR_COLORS,
    p("strobe shutter", "Strobe", "0-10 out: No strobe", "11-255 flash: Strobe speed from slow to fast"),
    p(
        "macro color-macro effect",
        "Function",
        "0-50 nothing: No function",
        "51-100 perhaps: Color jumping",
        "101-150 perhaps: Color gradual change",
        "151-200 perhaps: Pulse change",
        "201-255 perhaps: Running water effect",
    ),
    P(
        ("macro-speed", "effect-speed", "color-macro-speed"),
        "Function speed",
        text="Function speed from slow to fast",
    ),
)
BAR_SEGMENTS = tuple(
    P((c.words[0],), f"{c.label} {n}", text=f"Segment {n} {c.label.lower()} brightness from dark to bright")
    for n in range(1, 9)
    for c in BAR_COLORS
)


@chart(
    "fifth-b-bar",
    "stacked modes with a row of their footprint, tabs, three digits",
    "csv",
    "en",
    "Meifen Stage Lamps",
    "MF-1812 Wall Bar",
)
def bar(seed: int) -> Made:
    rows: list[list[Any]] = [["MF-1812 DMX512 channel description"], []]
    modes: list[M] = []
    for params in (BAR_COLORS, BAR_SEVEN, BAR_SEGMENTS):
        size = len(params)
        title = f"{size}CH MODE"
        modes.append(k.mode([q.at(n) for n, q in enumerate(params, 1)], title, f"{size}CH"))
        rows += [[title], ["CH", "DMX value", "Item", "Description"]]
        for line in k.lines(modes[-1].params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append(["" if n else f"CH{line.slot}", k.zeros(lo, hi), "" if n else line.name, text])
        rows.append([])
    return k.made("Meifen Stage Lamps", "MF-1812 Wall Bar", modes, csv_text(rows, "\t"))


PACK = (
    P(("intensity-master", "dimmer"), "Master", text="Scales all outputs, 0-100%", spans=k.LEVEL),
    *(P(("dimmer",), f"Output {n}", text="0-100%", spans=k.LEVEL) for n in range(1, 7)),
)
PACK_PLANS = (("6 slots", "- 1 2 3 4 5 6"), ("7 slots with master", "7 1 2 3 4 5 6"))


@chart(
    "fifth-b-pack",
    "name first, a column of slots for each mode, no ranges but the whole",
    "csv",
    "en",
    "Ashdown Road Controls",
    "PackSix",
)
def pack(seed: int) -> Made:
    rows: list[list[Any]] = [["Name", *(name for name, _ in PACK_PLANS), "Level", "Effect"]]
    for side in k.sides(PACK, *(plan for _, plan in PACK_PLANS)):
        rows += [[side.name, *("-" if s is None else s for s in side.slots), "0-255", side.rows[0][2]]]
    modes = [k.mode(k.seat(PACK, plan), name, name.removesuffix(" with master")) for name, plan in PACK_PLANS]
    return k.made("Ashdown Road Controls", "PackSix", modes, csv_text(rows, ",", "\n"))


FLASHES = replace(k.flash(6, 255, "1 à 25 éclairs/s", (1, 25)), spans_also=(None,))
RATE = p("strobe shutter", "Fréquence", "0-5 off: Arrêt", FLASHES)
LENGTH = P(("strobe-duration",), "Durée d'éclair", text="5 à 650 ms", spans=(span(5, 650, "ms"),))
FLASH = P(("strobe-dimmer", "dimmer"), "Intensité", text="0 à 100 %", spans=k.LEVEL)
PATTERN = p(
    "strobe-mode effect macro",
    "Effets",
    "0-5 nothing: Aucun effet",
    "6-42 perhaps: Rampe montante",
    "43-85 perhaps: Rampe descendante",
    "86-128 perhaps: Rampe montante et descendante",
    "129-171 random: Éclairs aléatoires",
    "172-214 perhaps: Foudre",
    "215-255 perhaps: Rafales",
)
TONNERRE = (
    ("Mode 1 canal", (RATE,)),
    ("Mode 3 canaux", (FLASH, LENGTH, RATE)),
    ("Mode 4 canaux", (FLASH, LENGTH, RATE, PATTERN)),
)


@chart(
    "fifth-b-strobe",
    "stacked modes, slot and name written in every row",
    "csv",
    "fr",
    "Ateliers Sauvegrain",
    "Tonnerre 1000",
)
def strobe(seed: int) -> Made:
    rows: list[list[Any]] = [["Ateliers Sauvegrain", "Tonnerre 1000", "Tableau DMX"], []]
    modes: list[M] = []
    for title, params in TONNERRE:
        size = title.removeprefix("Mode ")
        modes.append(k.mode([q.at(n) for n, q in enumerate(params, 1)], title, size))
        rows += [[title], ["Canal", "Fonction", "Valeur", "Action"]]
        for line in k.lines(modes[-1].params):
            rows += [[line.slot, line.name, f"{lo} à {hi}", text] for lo, hi, text in line.rows]
        rows.append([])
    rows.append(["Ne pas dépasser 30 s d'éclairs à pleine puissance, puis laisser refroidir 2 min."])
    return k.made("Ateliers Sauvegrain", "Tonnerre 1000", modes, csv_text(rows))


WIND = (
    p("fan", "Velocità ventola", "0-9 off: Spenta", "10-255: Velocità minima-massima", slots=(1,), default=0),
    P(("red",), "Rosso", (2,), text="0-100%", spans=k.LEVEL, default=0),
    P(("green",), "Verde", (3,), text="0-100%", spans=k.LEVEL, default=0),
    P(("blue",), "Blu", (4,), text="0-100%", spans=k.LEVEL, default=0),
    p(
        "strobe shutter",
        "Strobo",
        "0-9 open: Luce fissa",
        "10-255 flash: Strobo lento-veloce",
        slots=(5,),
        default=0,
    ),
)


@chart("fifth-b-wind", "a column of defaults, tabs, ellipses", "csv", "it", "Ventoscena", "Maestrale 40")
def wind(seed: int) -> Made:
    rows: list[list[Any]] = [["Canale", "Parametro", "Predefinito", "Valore DMX", "Effetto"]]
    for line in k.lines(WIND):
        for n, (lo, hi, text) in enumerate(line.rows):
            first = ["", "", ""] if n else [line.slot, line.name, line.p.default]
            rows.append([*first, f"{lo}…{hi}", text])
    return k.made("Ventoscena", "Maestrale 40", [k.mode(WIND)], csv_text(rows, "\t"))
