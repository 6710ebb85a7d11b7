"""CSV by makers of five habits: units in a column, modes at the end, old encodings, settings, defaults."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import csv_text, p
from intake.corpus.registry import chart

OSPREY = s.row_of(
    (
        P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0..100 %", spans=k.LEVEL),
        P(("color-temperature",), "CCT", text="2700..6500 K", spans=(span(2700, 6500, "K"),)),
        P(("tint", "green-correction"), "Tint", text="-100..100 %", spans=(span(-100, 100, "%"),)),
        p(
            "strobe shutter",
            "Strobe",
            "0-7 out: off",
            replace(k.flash(8, 255, "1..30 Hz", (1, 30)), also=("1..30",)),
        ),
        p("fan-mode fan", "Fan", "0-99 fan: auto", "100-199 fan: quiet", "200-255 fan: full"),
    )
)


@chart("sixth-b-osprey", "a column of units after the range", "csv", "en", "Kallbrook Optics", "Plane 40 B")
def osprey(seed: int) -> Made:
    rows: list[list[Any]] = [["Plane 40 B DMX slots, firmware 3"], [], ["Slot", "Parameter", "DMX"]]
    rows[-1] += ["Range", "Unit"]
    for *first, text in s.body(OSPREY, "slot name value text", s.dots):
        figures, _, unit = text.partition(" ")
        rows.append([*first, figures, unit])
    return k.made("Kallbrook Optics", "Plane 40 B", [k.mode(OSPREY)], csv_text(rows))


def _lamp(label: str) -> P:
    return P((label.lower(),), label, text=f"{label} brightness, from dark to light")


FLAT = (
    P(("dimmer", "intensity-master"), "Total dimmer", text="All color brightness, from dark to light"),
    *(_lamp(label) for label in ("Red", "Green", "Blue", "White")),
    p("strobe shutter", "Strobe", "0-7 out: No strobe", "8-255 flash: Strobe, from slow to quick"),
    p(
        "macro color-macro effect",
        "Self-walking mode",
        k.optional(R(0, 10, "Hand control by channel 1 to 5"), does=("nothing",)),
        "11-85 perhaps: Color jump change",
        "86-170 perhaps: Color gradual change",
        R(171, 255, "Voice control", may={"does": ("runs", "random")}),
    ),
    P(("macro-speed", "effect-speed", "color-macro-speed"), "Self-walking speed", text="From slow to quick"),
)
FLAT_PLANS = (("4CH", "- 1 2 3 4 - - -"), ("8CH", "1 2 3 4 5 6 7 8"))


@chart(
    "sixth-b-flat",
    "slot columns of two modes after the text, slashes where absent",
    "csv",
    "en",
    "Wendeshun Stage Light",
    "WDS-5418 Flat Par",
)
def flat(seed: int) -> Made:
    rows: list[list[Any]] = [["Function", "DMX Value", "Explain", *(name for name, _ in FLAT_PLANS)]]
    for side in k.sides(FLAT, *(plan for _, plan in FLAT_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n else "/" if at is None else at for at in side.slots]
            rows.append(["" if n else side.name, k.zeros(lo, hi), text, *slots])
    rows += [[], ["Factory default: 8CH, address code 001."]]
    modes = [k.mode(k.seat(FLAT, plan), name) for name, plan in FLAT_PLANS]
    return k.made("Wendeshun Stage Light", "WDS-5418 Flat Par", modes, csv_text(rows))


VERFOLGER = s.row_of(
    (
        P(("dimmer",), "Helligkeit", fine=("Helligkeit fein",), text="0–100 %", spans=k.LEVEL),
        P(("iris",), "Irisblende", text="groß bis klein"),
        P(("zoom",), "Zoom", text="8° bis 16°", spans=(span(8, 16, "deg"),)),
        p(
            "color-scroller color-wheel color-semaphore",
            "Farbwechsler",
            "0-20 white: frei",
            *k.steps(21, 40, "Rosa", "Stroh", "Stahlblau", "Hellblau", "CTO"),
            "221-255: Minusgrün",
        ),
        p("strobe shutter", "Strobe", "0-9 out: aus", k.flash(10, 255, "1 bis 12 Hz", (1, 12))),
        p("frost", "Frost", "0-127 out: ausgeschwenkt", "128-255: eingeschwenkt"),
    )
)


@chart(
    "sixth-b-verfolger",
    "letterhead lines, semicolons, an old encoding",
    "csv",
    "de",
    "Kranichholm Bühnentechnik",
    "VF 600 LED",
)
def verfolger(seed: int) -> Made:
    rows: list[list[Any]] = [
        ["Kranichholm Bühnentechnik e. K.", "", "", ""],
        ["Verfolger VF 600 LED", "", "", ""],
        ["Belegung der DMX-Kanäle", "", "", ""],
        ["DMX-Kanal", "Funktion", "Werte", "Erläuterung"],
        *s.body(VERFOLGER, "slot name value text", lambda lo, hi: f"{lo}–{hi}"),
        ["Die Schieber am Gerät haben Vorrang, sobald sie bewegt werden.", "", "", ""],
    ]
    data = csv_text(rows, ";").encode("cp1252")
    return k.made("Kranichholm Bühnentechnik", "VF 600 LED", [k.mode(VERFOLGER)], data)


OUTS = tuple(
    P(("dimmer",), f"Output {n}", fine=(f"Output {n} fine",), text="0-100%", spans=k.LEVEL)
    for n in range(1, 5)
)
OUTS_8 = tuple(replace(out, fine=()) for out in OUTS)
OUTS_MORE = (
    p(
        "dimmer-curve",
        "Dimming curve",
        "0-63 curve: Linear",
        "64-127 curve: Gamma 1.8",
        "128-191 curve: Gamma 2.2",
        "192-255 curve: S-curve",
    ),
    p(
        "smoothing",
        "Output smoothing",
        s.smooth(0, 63, "None", "none", may={"does": ("nothing",)}),
        s.smooth(64, 127, "Short, 40 ms", "short", also=("Short",), spans_also=(span(40, 40, "ms"),)),
        s.smooth(128, 191, "Medium, 150 ms", "medium", also=("Medium",), spans_also=(span(150, 150, "ms"),)),
        s.smooth(192, 255, "Long, 600 ms", "long", also=("Long",), spans_also=(span(600, 600, "ms"),)),
    ),
    p(
        "modulation-frequency",
        "PWM frequency",
        *(
            k.optional(s.figure(lo, lo + 63, f"{hz} Hz", hz, "Hz"), sets=("modulation-frequency",))
            for lo, hz in ((0, 600), (64, 1200), (128, 4000), (192, 16000))
        ),
    ),
)
TUNED = (
    P(("dimmer",), "Intensity", text="0-100%", spans=k.LEVEL),
    P(("color-temperature",), "Color temperature", text="2700-6500 K", spans=(span(2700, 6500, "K"),)),
)
DRIVER = (
    ("Mode 1", "Four outputs", OUTS_8),
    ("Mode 2", "Four outputs 16 bit", OUTS),
    ("Mode 3", "Tunable white", TUNED),
    ("Mode 4", "Four outputs and settings", (*OUTS_8, *OUTS_MORE)),
)


@chart(
    "sixth-b-driver",
    "four modes under each other, number and name of the mode in two cells",
    "csv",
    "en",
    "Norrvik Drives",
    "Quattro 8A",
)
def driver(seed: int) -> Made:
    rows: list[list[Any]] = [["Norrvik Drives", "Quattro 8A", "LED driver for constant voltage"]]
    modes: list[M] = []
    for number, name, params in DRIVER:
        modes.append(k.mode(s.row_of(params), f"{number}: {name}", number, name, f"{number} {name}"))
        rows += [[], [number, name], ["Slot", "Function", "Value", "Description"]]
        rows += s.body(modes[-1].params, "slot name value text")
    rows += [[], ["Values are read at the start of each packet."]]
    return k.made("Norrvik Drives", "Quattro 8A", modes, csv_text(rows, ",", "\n"))


VAUCLAIRE = s.row_of(
    (
        P(
            ("dimmer",),
            "Intensité",
            fine=("Intensité (fin)",),
            text="0 à 100 %",
            spans=k.LEVEL,
            default=0,
            fine_default=0,
        ),
        P(
            ("color-temperature",),
            "Température de couleur",
            text="2800 à 6000 K",
            spans=(span(2800, 6000, "K"),),
            default=128,
        ),
        P(("zoom",), "Ouverture du faisceau", text="14° à 58°", spans=(span(14, 58, "deg"),), default=255),
        p(
            "strobe shutter",
            "Stroboscope",
            "0-9 out: Éteint",
            k.flash(10, 255, "1 à 20 Hz", (1, 20)),
            default=0,
        ),
        p(
            "dimmer-curve",
            "Courbe",
            "0-84 curve: Linéaire",
            "85-169 curve: Quadratique",
            "170-255 curve: Halogène",
            default=85,
        ),
        p("fan-mode fan", "Ventilateur", "0-127 fan: Automatique", "128-255 fan: Silencieux", default=0),
    )
)


@chart(
    "sixth-b-vauclaire",
    "defaults in the last column, semicolons, a title of one cell",
    "csv",
    "fr",
    "Atelier Vauclaire",
    "Lentille F180",
)
def vauclaire(seed: int) -> Made:
    rows: list[list[Any]] = [
        ["Lentille F180 - charte DMX v1.2"],
        ["Canal", "Paramètre", "Plage", "Action", "Valeur par défaut"],
        *s.body(VAUCLAIRE, "slot name value text default", s.spaced),
    ]
    return k.made("Atelier Vauclaire", "Lentille F180", [k.mode(VAUCLAIRE)], csv_text(rows, ";"))
