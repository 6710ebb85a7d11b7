"""Workbooks: two head rows, a cell for all ranges, bands, a matrix with a legend, pairs."""

from __future__ import annotations

import datetime
import io
from collections.abc import Sequence
from dataclasses import replace
from random import Random
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def book(*sheets: tuple[str, Sequence[Sequence[Any]], Sequence[str]]) -> bytes:
    """A workbook of sheets: title, rows, merged areas."""
    from openpyxl import Workbook
    from openpyxl.styles import Alignment

    made = Workbook()
    made.properties.created = made.properties.modified = datetime.datetime(2026, 1, 2)
    made.remove(made.worksheets[0])
    for title, rows, merged in sheets:
        sheet = made.create_sheet(title)
        for row in rows:
            sheet.append(list(row))
        for area in merged:
            sheet.merge_cells(area)
            sheet[area.split(":")[0]].alignment = Alignment(vertical="top", wrap_text=True)
    kept = io.BytesIO()
    made.save(kept)
    return k.steady(kept.getvalue())


def varied(
    params: Sequence[P], seed: int, label: str, unit: str, say: str, *ends: tuple[int, int]
) -> list[P]:
    """The same with other ends, by seed, of one parameter's span and of its text."""
    lo, hi = ends[(seed - 1) % len(ends)]
    return [
        replace(p, text=say.format(lo, hi), spans=(span(lo, hi, unit),)) if p.label == label else p
        for p in params
    ]


def _spot(pan: int) -> tuple[P, ...]:
    return (
        P(("pan",), "Pan", fine=("Pan fine",), text=f"0 to {pan}°", spans=(span(0, pan, "deg"),)),
        P(("tilt",), "Tilt", fine=("Tilt fine",), text="0 to 265°", spans=(span(0, 265, "deg"),)),
        P(("movement-speed",), "Pan/Tilt speed", text="Fast to slow"),
        P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0 to 100%", spans=k.LEVEL),
        P(
            ("shutter", "strobe"),
            "Shutter",
            ranges=(
                k.closed(0, 31, "Shutter closed"),
                k.opened(32, 63, "Shutter open"),
                k.flash(64, 95, "Strobe effect slow to fast"),
                k.opened(96, 127, "Shutter open"),
                k.pulse(128, 159, "Pulse effect in sequences"),
                k.opened(160, 191, "Shutter open"),
                k.chance(192, 223, "Random strobe effect slow to fast"),
                k.opened(224, 255, "Shutter open"),
            ),
        ),
        P(
            ("color-wheel",),
            "Color wheel",
            ranges=(
                k.opened(0, 7, "Open"),
                *k.steps(
                    8, 8, "Deep red", "Congo blue", "Primary green", "Light amber", "Steel blue", "CTO 3200K"
                ),
                k.stop(56, 63, "Stop"),
                k.rainbow(64, 159, "Rotation clockwise fast to slow"),
                k.rainbow(160, 255, "Rotation counter-clockwise slow to fast"),
            ),
        ),
        P(
            ("rotating-gobo-wheel", "gobo-wheel"),
            "Rotating gobos",
            ranges=(
                k.opened(0, 9, "Open"),
                *k.steps(10, 10, "Gobo 1", "Gobo 2", "Gobo 3", "Gobo 4", "Gobo 5", "Gobo 6"),
                *(k.shake(70 + 20 * n, 89 + 20 * n, f"Gobo {n + 1} shake") for n in range(6)),
                k.opened(190, 255, "Open"),
            ),
        ),
        P(
            ("gobo-index-rotation", "gobo-rotation"),
            "Gobo index / rotation",
            ranges=(
                k.index(0, 127, "Index", "gobo"),
                k.spin(128, 190, "Rotation forward, fast to slow", "gobo"),
                k.stop(191, 192, "Stop"),
                k.spin(193, 255, "Rotation backward, slow to fast", "gobo"),
            ),
        ),
        P(("prism",), "Prism", ranges=(k.out(0, 127, "Prism out"), R(128, 255, "3-facet prism in"))),
        P(("focus",), "Focus", text="Far to near"),
        P(("zoom",), "Zoom", text="Wide to narrow"),
        P(
            ("control",),
            "Special functions",
            ranges=(
                k.nothing(0, 69, "Reserved"),
                R(70, 79, "Fan auto", sets=("fan", "auto", "Fan auto")),
                R(80, 89, "Fan silent", sets=("fan", "silent", "Fan silent")),
                k.nothing(90, 199, "Reserved"),
                k.reset(200, 209, "Reset all"),
                k.nothing(210, 255, "Reserved"),
            ),
        ),
    )


SPOT_PLANS = (
    ("Basic", "1 2 - 3 4 5 6 7 8 9 10 11"),
    ("Standard", "1/2 3/4 5 6 7 8 9 10 11 12 13 14"),
    ("Extended", "1/2 3/4 5 6/7 8 9 10 11 12 13 14 15"),
)


@chart(
    "fourth-sheet-spot",
    "two head rows, from and to, other sheets",
    "xlsx",
    "en",
    "Orrinvale",
    "Sandpiper 250",
)
def spot(seed: int) -> Made:
    params = _spot(Random(seed).choice((530, 540, 560)))
    rows: list[list[Any]] = [["Sandpiper 250 DMX protocol", *[None] * 6], []]
    rows += [["Mode / channel", None, None, "Function", "DMX value", None, "Description"]]
    rows += [[*(name for name, _ in SPOT_PLANS), None, "from", "to", None]]
    merged = ["A1:G1", "A3:C3", "D3:D4", "E3:F3", "G3:G4"]
    for side in k.sides(params, *(plan for _, plan in SPOT_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = [s or "-" for s in side.slots] if n == 0 else [None] * 3
            rows.append([*slots, side.name if n == 0 else None, lo, hi, text or None])
    menu = [["Menu", "Entry", "Choices", "Factory"], ["Address", "DMX address", "001-512", "001"]]
    menu += [["Setup", "Pan reverse", "On / Off", "Off"], ["Setup", "Screen saver", "1-10 min", "5 min"]]
    log = [["Revision", "Date", "Change"], ["1.0", "2025-02-11", "First issue"]]
    log += [["1.1", "2025-09-30", "Fan settings added"]]
    modes = [k.mode(k.seat(params, plan), name) for name, plan in SPOT_PLANS]
    data = book(("DMX", rows, merged), ("Menu", menu, ()), ("History", log, ()))
    return k.made("Orrinvale", "Sandpiper 250", modes, data)


def _panel(kelvin: tuple[int, int]) -> tuple[P, ...]:
    low, high = kelvin
    return (
        P(("dimmer",), "Dimmer", text="0 bis 100 %", spans=k.LEVEL, wide=True),
        P(
            ("color-temperature",),
            "Farbtemperatur",
            text=f"{low} K bis {high} K",
            spans=(span(low, high, "K"),),
            wide=True,
        ),
        P(
            ("tint", "green-correction"),
            "Grün-Magenta-Korrektur",
            ranges=(
                k.optional(R(0, 9, "Neutral"), does=("nothing",)),
                R(10, 129, "Voll Magenta bis neutral"),
                R(130, 255, "Neutral bis voll Grün"),
            ),
        ),
        P(
            ("strobe", "shutter"),
            "Strobe",
            ranges=(k.out(0, 5, "Aus"), k.flash(6, 255, "Langsam bis schnell")),
        ),
        P(
            ("fan-mode", "fan"),
            "Lüfter",
            ranges=(k.fan_choice(0, 99, "Automatik"), k.fan_choice(100, 255, "Leise")),
        ),
    )


PANEL_PLANS = (("CCT 8 Bit", "1 2 - - -"), ("CCT 16 Bit", "1/2 3/4 5 - -"), ("Voll", "1/2 3/4 5 6 7"))


@chart("fourth-sheet-panel", "a sheet a mode, 1+2 in a cell", "xlsx", "de", "Lichtweiler", "Flachlicht 60")
def panel(seed: int) -> Made:
    params = _panel(Random(seed).choice(((2700, 6500), (2800, 6500), (2500, 8000))))
    sheets: list[tuple[str, Sequence[Sequence[Any]], Sequence[str]]] = []
    modes = []
    for name, plan in PANEL_PLANS:
        mode = k.mode(k.seat(params, plan), name)
        modes.append(mode)
        rows: list[list[Any]] = [["Kanal", "Parameter", "Werte", "Wirkung"]]
        for p in mode.params:
            at = p.slots[0] if len(p.slots) == 1 else "+".join(map(str, p.slots))
            label = p.label if len(p.slots) == 1 else f"{p.label} (16 Bit)"
            said = [(r.lo, r.hi, r.text) for r in p.ranges] or [(0, p.top, p.text)]
            for n, (lo, hi, text) in enumerate(said):
                rows.append([*((at, label) if n == 0 else (None, None)), f"{lo} – {hi}", text])
        sheets.append((name, rows, ()))
    return k.made("Lichtweiler", "Flachlicht 60", modes, book(*sheets))


BATTEN = (
    k.level("dimmer", "Master dimmer", "0-100%", also=("intensity-master",)),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 9, "Off"), k.flash(10, 255, "Slow to fast"))),
    *(
        # The legend names the colors without a cell: a reading need not carry its percents to them.
        P((word,), f"{label} {cell}".strip(), text="0-100%", spans=(*k.LEVEL, None))
        for cell in ("", 1, 2, 3, 4, 5, 6)
        for word, label in (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("amber", "Amber"))
    ),
    P(
        ("macro", "color-macro", "effect"),
        "Auto programs",
        ranges=(
            k.out(0, 15, "Programs off"),
            *(k.maybe_runs(16 + 40 * n, 55 + 40 * n, f"Program {n + 1}") for n in range(6)),
        ),
    ),
    P(
        ("macro-speed", "effect-speed", "color-macro-speed"),
        "Program speed",
        text="Slow to fast",
    ),
)
CELLS = " ".join(["-"] * 24)
BATTEN_PLANS = (
    ("4CH", f"- - 1 2 3 4 {CELLS} - -"),
    ("8CH", f"1 2 3 4 5 6 {CELLS} 7 8"),
    ("28CH", f"1 2 - - - - {' '.join(map(str, range(3, 27)))} 27 28"),
)


@chart(
    "fourth-sheet-batten",
    "slot by mode matrix, values in a second table",
    "xlsx",
    "en",
    "Petherwin",
    "Dipper 6",
)
def batten(seed: int) -> Made:
    last = 16 + 40 * 6 - 1
    modes = [k.mode(k.seat(BATTEN, plan), name) for name, plan in BATTEN_PLANS]
    rows: list[list[Any]] = [["DMX channel assignment"], ["Channel", *(name for name, _ in BATTEN_PLANS)]]
    named = [{p.slots[0]: p.label for p in mode.params} for mode in modes]
    rows += [[slot, *(one.get(slot, "") for one in named)] for slot in range(1, 29)]
    rows += [[], ["Function", "DMX values", "Effect"], ["Red / Green / Blue / Amber", "000-255", "0-100%"]]
    for p in (BATTEN[0], BATTEN[1], *BATTEN[-2:]):
        said = [(r.lo, r.hi, r.text) for r in p.ranges] or [(0, last, p.text)]
        rows += [[p.label if n == 0 else None, k.zeros(*one[:2]), one[2]] for n, one in enumerate(said)]
    return k.made("Petherwin", "Dipper 6", modes, book(("Channels", rows, ("A1:D1",))))


FOLLOW = (
    P(("dimmer",), "Intensité", fine=("Intensité (fin)",), text="0 à 100 %", spans=k.LEVEL),
    P(("iris",), "Iris", text="Ouvert à fermé"),
    P(("zoom",), "Zoom", text="7° à 15°", spans=(span(7, 15, "deg"),)),
    P(("focus",), "Netteté", text="De près à loin"),
    P(("frost",), "Frost", ranges=(k.out(0, 127, "Hors faisceau"), R(128, 255, "Dans le faisceau"))),
    P(("warm-correction", "color-correction"), "CTO linéaire", text="0 à 100 %", spans=k.LEVEL),
    P(
        ("color-wheel",),
        "Roue de couleurs",
        ranges=(
            k.optional(R(0, 20, "Blanc"), does=("open",)),
            *k.steps(21, 21, "Rouge", "Rose", "Bleu nuit", "Vert d'eau", "Ambre", "Lavande"),
            k.rainbow(147, 255, "Défilement lent à rapide"),
        ),
    ),
    P(
        ("shutter", "strobe"),
        "Obturateur",
        ranges=(
            k.closed(0, 9, "Fermé"),
            k.opened(10, 25, "Ouvert"),
            k.flash(26, 240, "Stroboscope 1 à 15 Hz", (1, 15)),
            k.opened(241, 255, "Ouvert"),
        ),
    ),
)


@chart(
    "fourth-sheet-follow", "a merged band a slot, percents first", "xlsx", "fr", "Roqueval", "Poursuite 700"
)
def follow(seed: int) -> Made:
    params = varied(FOLLOW, seed, "Zoom", "deg", "{}° à {}°", (7, 15), (5, 12), (8, 16))
    mode = k.mode(k.seat(params, "1/2 3 4 5 6 7 8 9"))
    rows: list[list[Any]] = [["Poursuite 700 – 9 canaux", None, None], ["%", "DMX", "Fonction"]]
    merged = ["A1:C1"]
    for line in k.lines(mode.params):
        rows.append([f"Canal {line.slot} : {line.name}", None, None])
        merged.append(f"A{len(rows)}:C{len(rows)}")
        for lo, hi, text in line.rows:
            share = f"{round(lo / 2.55)} – {round(hi / 2.55)}"
            rows.append([share, f"{lo} – {hi}", text or "Réglage fin"])
    mode = k.mode(mode.params, "Poursuite 700 – 9 canaux", "9 canaux", "Poursuite 700")
    return k.made("Roqueval", "Poursuite 700", [mode], book(("DMX", rows, merged)))


FRESNEL = (
    P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0-100 %", spans=k.LEVEL),
    P(("color-temperature",), "CCT", text="2000-10000 K", spans=(span(2000, 10000, "K"),)),
    P(
        ("tint", "green-correction"),
        "+/- Green",
        ranges=(
            k.optional(R(0, 10, "neutral"), does=("nothing",)),
            R(11, 130, "full minus green to neutral"),
            R(131, 255, "neutral to full plus green"),
        ),
    ),
    P(("white-color-crossfade",), "Crossfade to color", text="0-100 %", spans=k.LEVEL),
    P(("hue",), "Hue", fine=("Hue fine",), text="0-360 deg", spans=(span(0, 360, "deg"),)),
    P(("saturation",), "Saturation", text="0-100 %", spans=k.LEVEL),
    P(("zoom",), "Beam angle", text="14-58 deg", spans=(span(14, 58, "deg"),)),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(
            k.out(0, 19, "off"),
            k.flash(20, 129, "regular, 1-25 Hz", (1, 25)),
            k.chance(130, 255, "random, slow to fast"),
        ),
    ),
    P(
        ("fan-mode", "fan"),
        "Fan",
        ranges=(
            k.fan_choice(0, 63, "auto"),
            k.fan_choice(64, 127, "low"),
            k.fan_choice(128, 191, "high"),
            k.fan_choice(192, 255, "off (output limited)"),
        ),
    ),
)


@chart(
    "fourth-sheet-fresnel",
    "a row a slot, 'range: meaning' lines in a cell",
    "xlsx",
    "en",
    "Hallowmere",
    "Dabchick F",
)
def fresnel(seed: int) -> Made:
    params = varied(FRESNEL, seed, "CCT", "K", "{}-{} K", (2000, 10000), (2200, 15000), (2700, 6500))
    params = varied(params, seed, "Beam angle", "deg", "{}-{} deg", (14, 58), (12, 50))
    mode = k.mode(k.seat(params, "1/2 3 4 5 6/7 8 9 10 11"))
    rows: list[list[Any]] = [["Ch.", "Control", "Values"]]
    for line in k.lines(mode.params):
        said = [f"{k.hyphen(lo, hi)}: {text}" if text else k.hyphen(lo, hi) for lo, hi, text in line.rows]
        rows.append([line.slot, line.name, "\n".join(said)])
    rows += [[], ["Weight 7.4 kg, IP20, 100-240 V AC 50/60 Hz"]]
    return k.made("Hallowmere", "Dabchick F", [mode], book(("Sheet1", rows, ())))
