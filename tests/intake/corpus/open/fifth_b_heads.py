"""Moving heads: CSV and XLSX with columns of slots for several modes, ODS with a sheet a mode."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C, Element, Heading
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_b_kit import Cell, beside, csv_text, p, table
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import ods, xlsx

BEAM = (
    P(("pan",), "Pan", fine=("Pan fine",), text="0–540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0–265°", spans=(span(0, 265, "deg"),)),
    P(("movement-speed",), "Pan/Tilt speed", text="Fast to slow"),
    P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0–100%", spans=k.LEVEL),
    p(
        "shutter strobe",
        "Shutter",
        "0-7 closed: Shutter closed",
        "8-15 open: Shutter open",
        "16-131 flash: Strobe slow to fast",
        "132-139 open: Shutter open",
        "140-181 pulse: Pulse slow to fast",
        "182-189 open: Shutter open",
        "190-247 random: Random strobe slow to fast",
        "248-255 open: Shutter open",
    ),
    p(
        "color-wheel",
        "Color wheel",
        "0-9 open: Open",
        *k.steps(10, 10, "Deep red", "Orange", "Aqua", "Leaf green", "Light green", "Lavender", "Pink"),
        *k.steps(80, 10, "Yellow", "Magenta", "Cyan", "CTO 2700K", "CTO 3200K", "CTB 8000K", "Blue"),
        "150-199 rainbow: Rainbow clockwise fast to slow",
        "200-205 stop: Stop",
        "206-255 rainbow: Rainbow counterclockwise slow to fast",
    ),
    p(
        "gobo-wheel",
        "Static gobo wheel",
        "0-7 open: Open",
        *k.steps(8, 8, *(f"Gobo {n}" for n in range(1, 13))),
        *(f"{104 + 8 * n}-{111 + 8 * n} shake: Gobo {n + 1} shake slow to fast" for n in range(12)),
        "200-255 spin gobo-wheel: Wheel rotation slow to fast",
    ),
    p("prism", "Prism", "0-127 out: Prism out", "128-255: 8-facet prism in"),
    p(
        "prism-rotation prism-index",
        "Prism rotation",
        "0-127 index prism: Index",
        "128-189 spin prism: Rotation clockwise fast to slow",
        "190-193 stop: Stop",
        "194-255 spin prism: Rotation counterclockwise slow to fast",
    ),
    p("frost", "Frost", "0-127 out: Frost out", "128-255: Frost in"),
    P(("focus",), "Focus", fine=("Focus fine",), text="Near to far"),
    p(
        "control lamp-control reset",
        "Control",
        "0-99 nothing: No function",
        R(100, 105, "Lamp on", hazard="lamp on"),
        "106-199 nothing: No function",
        R(200, 205, "Lamp off, hold 5 s", hazard="lamp off", hold_s=5),
        "206-235 nothing: No function",
        "236-240 reset: Reset pan and tilt",
        "241-245 reset: Reset effects",
        "246-250 reset: Reset all",
        "251-255 nothing: No function",
    ),
)
BEAM_PLANS = (
    ("14 ch", "1/2 3/4 5 6 7 8 9 10 11 12 13 14"),
    ("16 ch", "1/2 3/4 5 6/7 8 9 10 11 12 13 14/15 16"),
)


@chart(
    "fifth-b-beam",
    "two columns of slots before the attribute, long lists of gobos, semicolons",
    "csv",
    "en",
    "Kestrelwood Motion",
    "Thornbeam 260",
)
def beam(seed: int) -> Made:
    rows: list[list[Any]] = [[*(name for name, _ in BEAM_PLANS), "Attribute", "Value", "Action"]]
    for side in k.sides(BEAM, *(plan for _, plan in BEAM_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            first = ["", "", ""] if n else ["" if s is None else s for s in side.slots] + [side.name]
            rows.append([*first, k.dash(lo, hi), text])
    modes = [k.mode(k.seat(BEAM, plan), name) for name, plan in BEAM_PLANS]
    return k.made("Kestrelwood Motion", "Thornbeam 260", modes, csv_text(rows, ";"))


def _rest(word: str, label: str, default: int = 0, fine: bool = False, text: str = "0–100%") -> P:
    """A level with the value that it has when nobody touches it."""
    spans = k.LEVEL if "%" in text else ()
    fines = (f"{label} fine",) if fine else ()
    return P(tuple(word.split()), label, fine=fines, text=text, spans=spans, default=default, fine_default=0)


SPOT = (
    P(("pan",), "Pan", (), ("Pan fine",), "0–540°", (span(0, 540, "deg"),), default=128, fine_default=0),
    P(("tilt",), "Tilt", (), ("Tilt fine",), "0–270°", (span(0, 270, "deg"),), default=128, fine_default=0),
    _rest("movement-speed", "P/T speed", text="Max. to min. speed"),
    _rest("dimmer", "Dimmer", fine=True),
    p(
        "shutter strobe",
        "Shutter",
        "0-19 closed: Closed",
        "20-49 open: Open",
        "50-149 flash: Strobe, slow to fast",
        "150-199 pulse: Pulse, slow to fast",
        "200-249 random: Random strobe, slow to fast",
        "250-255 open: Open",
        default=20,
    ),
    _rest("cyan", "Cyan"),
    _rest("magenta", "Magenta"),
    _rest("yellow", "Yellow"),
    _rest("warm-correction color-correction", "CTO"),
    p(
        "color-wheel",
        "Color wheel",
        "0-15 open: Open",
        *k.steps(16, 16, "Red", "Blue", "Green", "Magenta", "Minus green", "CTB"),
        "112-127 open: Open",
        "128-191 rainbow: Rotation CW, fast to slow",
        "192-255 rainbow: Rotation CCW, slow to fast",
        default=0,
    ),
    p(
        "rotating-gobo-wheel gobo-wheel",
        "Rotating gobos",
        "0-15 open: Open",
        *k.steps(16, 16, *(f"Rotating gobo {n}" for n in range(1, 8))),
        *(f"{112 + 16 * n}-{127 + 16 * n} shake: Rotating gobo {n} shake" for n in range(1, 8)),
        "240-255 spin gobo-wheel: Wheel scroll, slow to fast",
        default=0,
    ),
    p(
        "gobo-index-rotation gobo-rotation gobo-index",
        "Gobo rotation",
        k.index(0, 127, "Index 0–360°", "gobo", (0, 360)),
        "128-187 spin gobo: CW rotation, fast to slow",
        "188-195 stop: Stop",
        "196-255 spin gobo: CCW rotation, slow to fast",
        fine=("Gobo rotation fine",),
        default=0,
        fine_default=0,
    ),
    p(
        "gobo-wheel",
        "Static gobos",
        "0-24 open: Open",
        *k.steps(25, 25, *(f"Static gobo {n}" for n in range(1, 9))),
        "225-255 spin gobo-wheel: Wheel scroll, slow to fast",
        default=0,
    ),
    p("prism", "Prism", "0-127 out: Out", "128-255: 5-facet prism", default=0),
    p(
        "prism-rotation prism-index",
        "Prism rotation",
        k.index(0, 127, "Index 0–360°", "prism", (0, 360)),
        "128-187 spin prism: CW rotation, fast to slow",
        "188-195 stop: Stop",
        "196-255 spin prism: CCW rotation, slow to fast",
        default=0,
    ),
    _rest("frost", "Frost"),
    _rest("iris", "Iris", text="Open to closed"),
    _rest("zoom", "Zoom", 128, fine=True, text="Wide to narrow"),
    _rest("focus", "Focus", 128, fine=True, text="Infinity to near"),
    p(
        "control reset",
        "Control",
        "0-9 nothing: No function",
        R(10, 14, "Fans automatic", sets=("fan", "automatic", "automatic")),
        R(15, 19, "Fans quiet", sets=("fan", "quiet", "quiet")),
        R(20, 24, "Dimmer smoothing off", sets=("smoothing", "off", "off")),
        R(25, 29, "Dimmer smoothing on", sets=("smoothing", "on", "on")),
        "30-199 nothing: No function",
        R(200, 209, "Reset pan and tilt, hold 3 s", hazard="reset", hold_s=3),
        R(210, 219, "Reset wheels, hold 3 s", hazard="reset", hold_s=3),
        R(220, 229, "Reset all, hold 3 s", hazard="reset", hold_s=3),
        "230-255 nothing: No function",
        default=0,
    ),
)
SPOT_PLANS = (
    ("Basic", "1/2 3/4 - 5 6 - - - - 7 8 9 10 11 - - - 12 13 14"),
    ("Standard", "1/2 3/4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22"),
    ("Extended", "1/2 3/4 5 6/7 8 9 10 11 12 13 14 15/16 17 18 19 20 21 22/23 24/25 26"),
)


@chart(
    "fifth-b-spot",
    "a head of two rows over three modes, defaults in a column before the values, merged cells",
    "xlsx",
    "en",
    "Oakhanger Stage",
    "Peregrin 450 Spot",
)
def spot(seed: int) -> Made:
    rows: list[list[Cell]] = [
        [
            C("DMX mode", cols=3),
            None,
            None,
            *(C(t, rows=2) for t in ("Parameter", "Default", "DMX value", "Function")),
        ],
        [*(name for name, _ in SPOT_PLANS), None, None, None, None],
    ]
    defaults = {q.label: q.default for q in SPOT}
    for side in k.sides(SPOT, *(plan for _, plan in SPOT_PLANS)):
        first: list[Cell] = ["–" if s is None else s for s in side.slots]
        first += [side.name, defaults.get(side.name, 0)]
        rows += beside(first, [[k.dash(lo, hi), text] for lo, hi, text in side.rows])
    sheet: list[Element] = [Heading("Peregrin 450 Spot – DMX chart v2.0"), table(rows)]
    modes = [k.mode(k.seat(SPOT, plan), name) for name, plan in SPOT_PLANS]
    return k.made("Oakhanger Stage", "Peregrin 450 Spot", modes, xlsx([("DMX", sheet)]))


WASH = (
    P(("pan",), "Pan", fine=("Pan fin",), text="0 à 540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fin",), text="0 à 220°", spans=(span(0, 220, "deg"),)),
    P(("movement-speed",), "Vitesse pan/tilt", text="Rapide à lent"),
    P(("dimmer",), "Gradateur", fine=("Gradateur fin",), text="0 à 100 %", spans=k.LEVEL),
    p(
        "shutter strobe",
        "Obturateur",
        "0-19 closed: Fermé",
        "20-39 open: Ouvert",
        "40-139 flash: Stroboscope lent à rapide",
        "140-239 random: Stroboscope aléatoire lent à rapide",
        "240-255 open: Ouvert",
    ),
    *(
        P((word,), label, fine=(f"{label} fin",), text="0 à 100 %", spans=k.LEVEL)
        for word, label in (("red", "Rouge"), ("green", "Vert"), ("blue", "Bleu"), ("white", "Blanc"))
    ),
    p(
        "color-temperature",
        "Température de couleur",
        "0-9 nothing: Sans effet",
        R(10, 255, "2700 K à 8000 K", span=span(2700, 8000, "K")),
    ),
    P(("zoom",), "Zoom", text="Serré à large"),
    p(
        "color-macro color-preset macro",
        "Macros couleurs",
        "0-15 nothing: Aucune macro",
        *k.steps(16, 24, "Ambre", "Rose", "Turquoise", "Lavande", "Bleu nuit"),
        "136-195 perhaps: Fondu enchaîné lent à rapide",
        "196-255 perhaps: Changement de couleurs lent à rapide",
    ),
    p(
        "reset control",
        "Réinitialisation",
        "0-249 nothing: Sans effet",
        "250-255 reset: Réinitialisation complète",
    ),
)
WASH_PLANS = (
    ("Standard", "1 2 3 4 5 6 7 8 9 10 11 12 13"),
    ("Étendu", "1/2 3/4 5 6/7 8 9/10 11/12 13/14 15/16 17 18 19 20"),
)


@chart(
    "fifth-b-lyre",
    "a sheet a mode, a column that says steps or sweep",
    "ods",
    "fr",
    "Lumières de Beauvoir",
    "Phalène 19",
)
def lyre(seed: int) -> Made:
    sheets: list[Any] = []
    modes: list[M] = []
    for name, plan in WASH_PLANS:
        m = k.mode(k.seat(WASH, plan), name)
        title = f"Mode {name} ({m.footprint} canaux)"
        modes.append(
            M(title, (name, title, f"Mode {name}", f"{name} ({m.footprint} canaux)"), m.footprint, m.params)
        )
        rows: list[list[Cell]] = [["Canal", "Attribut", "Type", "Décimal", "Description"]]
        for line in k.lines(m.params):
            kind = "Paliers" if len(line.rows) > 1 else "Progressif"
            rows += beside(
                [line.slot, line.name, kind], [[k.zeros(lo, hi), text] for lo, hi, text in line.rows]
            )
        sheets.append((name, [Heading(title), table(rows)]))
    return k.made("Lumières de Beauvoir", "Phalène 19", modes, ods(sheets))
