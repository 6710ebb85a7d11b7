"""Workbooks around the stage: a hazer behind a sheet of data, a follow spot with percents, a garden laser."""

from __future__ import annotations

from intake.corpus.content import Made, P, R, span
from intake.corpus.grids import Element, Heading, Para
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_b_kit import Cell, beside, p, table
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import ods, xlsx

OUTPUT = p("haze-output fog-output", "Nebelausstoß", "0-5 off: aus", "6-255: min. bis max.")
AIR = p("fan", "Lüfter", "0-5 off: aus", "6-255: langsam bis schnell")
HAZE = (
    ("1-Kanal-Modus", (OUTPUT,)),
    ("2-Kanal-Modus", (OUTPUT, AIR)),
    (
        "4-Kanal-Modus",
        (
            OUTPUT,
            AIR,
            P(("output-duration",), "Ausstoßdauer", text="1 s bis 60 s", spans=(span(1, 60, "s"),)),
            P(("output-interval",), "Pausenzeit", text="5 s bis 300 s", spans=(span(5, 300, "s"),)),
        ),
    ),
)


@chart(
    "fifth-b-dunst",
    "a sheet of data first, modes under each other, slots in words",
    "xlsx",
    "de",
    "Dunstwerk Sörholt",
    "Schleier 3",
)
def dunst(seed: int) -> Made:
    data: list[list[Cell]] = [
        ["Technische Daten", "Schleier 3"],
        ["Spannung", "230 V, 50 Hz"],
        ["Leistung", "950 W"],
        ["Aufheizzeit", "4 min"],
        ["Tank", "2,5 l"],
        ["DMX-Modi", "1, 2 oder 4 Kanäle"],
    ]
    rows: list[list[Cell]] = []
    modes = []
    for name, params in HAZE:
        modes.append(k.mode([q.at(n) for n, q in enumerate(params, 1)], name, name.removesuffix("-Modus")))
        rows += [[name], ["Kanal", "Parameter", "DMX-Wert", "Wirkung"]]
        for line in k.lines(modes[-1].params):
            values: list[list[Cell]] = [[f"{lo} bis {hi}", text] for lo, hi, text in line.rows]
            rows += beside([f"Kanal {line.slot}", line.name], values)
        rows.append([])
    rows.append(["Nur Fluid des Herstellers verwenden. Rauchmelder beachten."])
    book = xlsx([("Technische Daten", [table(data)]), ("DMX", [table(rows)])])
    return k.made("Dunstwerk Sörholt", "Schleier 3", modes, book)


FOLLOW = (
    P(("dimmer",), "Dimmer", (1, 2), ("Dimmer fine",), "0 to 100%", k.LEVEL),
    p(
        "shutter strobe",
        "Strobe",
        "0-12 open: Open",
        k.flash(13, 242, "Strobe 1 to 20 Hz", (1, 20)),
        "243-255 open: Open",
        slots=(3,),
    ),
    P(("iris",), "Iris", (4,), text="Open to smallest"),
    P(("zoom",), "Zoom", (5,), text="7 to 18 degrees", spans=(span(7, 18, "deg"),)),
    p("frost", "Frost", "0-127 out: Out", "128-255: In", slots=(6,)),
    p(
        "color-wheel color-scroller",
        "Color changer",
        "0-25 white: No color",
        *k.steps(26, 38, "Pale rose", "Straw", "Pale amber", "Steel blue", "CTO", last=215),
        "216-255: Minus green",
        slots=(7,),
    ),
    p("fan-mode fan", "Fan", "0-127 fan: Automatic", "128-255 fan: Quiet, output limited to 70%", slots=(8,)),
)


@chart(
    "fifth-b-follow",
    "percents beside decimals, notes above and below",
    "ods",
    "en",
    "Bannerhall",
    "Limelight 700 FS",
)
def follow(seed: int) -> Made:
    rows: list[list[Cell]] = [["Slot", "Name", "Decimal", "Percent", "What it does"]]
    for line in k.lines(FOLLOW):
        for n, (lo, hi, text) in enumerate(line.rows):
            share = f"{round(lo / 2.55)}-{round(hi / 2.55)}%"
            rows.append(["" if n else line.slot, "" if n else line.name, k.hyphen(lo, hi), share, text])
    sheet: list[Element] = [
        Para("Limelight 700 FS, DMX remote control of the follow spot"),
        Para("The operator's faders are out of use while DMX is received."),
        table(rows),
        Para("The color changer takes 0.8 s from one color to the next."),
    ]
    return k.made("Bannerhall", "Limelight 700 FS", [k.mode(FOLLOW)], ods([("Sheet1", sheet)]))


LASER = (
    p(
        "laser-output control",
        "Laser output",
        R(0, 49, "Laser off", "closed", may={"does": ("nothing",), "hazard": ("blackout", "laser")}),
        R(50, 255, "Laser on", may={"hazard": ("laser",), "does": ("open",)}),
        slots=(1,),
    ),
    p(
        "laser-pattern",
        "Pattern",
        *k.steps(0, 32, "Dots", "Lines", "Circles", "Squares", "Waves", "Stars", "Flowers", "Grid"),
        slots=(2,),
    ),
    p(
        "image-scale zoom",
        "Pattern size",
        "0-127: Size from small to big",
        "128-255 perhaps: Zoom in and out, slow to fast",
        slots=(3,),
    ),
    p(
        "image-rotation",
        "Pattern rotation",
        k.optional(R(0, 127, "Angle 0 to 360 degree", span=span(0, 360, "deg")), does=("index",)),
        "128-191 spin image: Clockwise rotation, slow to fast",
        "192-255 spin image: Anticlockwise rotation, slow to fast",
        slots=(4,),
    ),
    P(("image-position-x",), "X position", (5,), text="Left to right"),
    P(("image-position-y",), "Y position", (6,), text="Bottom to top"),
    p(
        "color-preset color-macro color-mode",
        "Color",
        *k.steps(0, 32, "White", "Red", "Green", "Blue", "Yellow", "Cyan", "Violet"),
        "224-255 perhaps: Color change by itself",
        slots=(7,),
    ),
)


@chart(
    "fifth-b-laser",
    "two lines of title, channel in words, translated wording",
    "ods",
    "en",
    "Yunque Garden Lasers",
    "YQ-9 RGB",
)
def laser(seed: int) -> Made:
    rows: list[list[Cell]] = [["DMX channel", "Control content", "DMX value", "Explanation"]]
    for line in k.lines(LASER):
        rows += beside(
            [f"CH {line.slot}", line.name], [[k.hyphen(lo, hi), text] for lo, hi, text in line.rows]
        )
    sheet: list[Element] = [
        Heading("YQ-9 RGB"),
        Para("DMX control table"),
        table(rows),
        Para("Never look into the beam. Keep 3 meters above the public. Remove the key after using."),
    ]
    return k.made("Yunque Garden Lasers", "YQ-9 RGB", [k.mode(LASER)], ods([("DMX512", sheet)]))
