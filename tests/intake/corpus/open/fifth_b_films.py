"""Workbooks of film and event lights: a sheet a mode, bands of modes, modes merged beside their rows."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C, Element, Heading, Para
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_b_kit import Cell, beside, p, table
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import xlsx


def _share(word: str, label: str, fine: bool = False, text: str = "0-100%") -> P:
    return k.level(word, label, text, f"{label} (fine)" if fine else "")


FILM_STROBE = p("strobe shutter", "Strobe", "0-9 out: Strobe off", k.flash(10, 255, "1-25 Hz", (1, 25)))
FILM_FAN = p(
    "fan-mode fan",
    "Fan",
    "0-63 fan: Smart",
    "64-127 fan: Silent",
    "128-191 fan: Full",
    R(192, 255, "Off (max. 40% output)", may={"sets": ("fan",), "does": ("nothing", "stop")}),
)
FILM_CCT = P(("color-temperature",), "CCT", (), ("CCT (fine)",), "2500-10000 K", (span(2500, 10000, "K"),))
FILM_TINT = P(("green-correction", "tint"), "+/- Green", text="-100% to +100%", spans=(span(-100, 100, "%"),))
FILM_BASE = (
    ("red", "Red"),
    ("green", "Green"),
    ("blue", "Blue"),
    ("warm-white", "Warm white"),
    ("cool-white", "Cool white"),
)
FILM: tuple[tuple[str, tuple[P, ...], str], ...] = (
    ("CCT 8-bit", (_share("dimmer", "Dimmer"), FILM_CCT, FILM_TINT, FILM_STROBE), "1 2 3 4"),
    (
        "CCT 16-bit",
        (_share("dimmer", "Dimmer", True), FILM_CCT, FILM_TINT, FILM_STROBE, FILM_FAN),
        "1/2 3/4 5 6 7",
    ),
    (
        "HSI 8-bit",
        (
            _share("dimmer", "Dimmer"),
            P(("hue",), "Hue", text="0-360°", spans=(span(0, 360, "deg"),)),
            _share("saturation", "Saturation"),
            FILM_CCT,
            FILM_STROBE,
        ),
        "1 2 3 4 5",
    ),
    (
        "RGBWW 16-bit",
        (
            _share("dimmer", "Dimmer", True),
            *(_share(word, label, True) for word, label in FILM_BASE),
            FILM_STROBE,
            FILM_FAN,
        ),
        "1/2 3/4 5/6 7/8 9/10 11/12 13 14",
    ),
)


@chart(
    "fifth-b-film",
    "a cover sheet, then a sheet a mode that only its tab names, slots in the second column",
    "xlsx",
    "en",
    "Marrowfield Light Co.",
    "Gannet 600C",
)
def film(seed: int) -> Made:
    cover = [
        Heading("Gannet 600C DMX profiles"),
        Para("One sheet for each mode. Choose the mode on the lamp head: Menu > DMX > Mode."),
        Para("Firmware 1.2 and later"),
    ]
    sheets: list[Any] = [("Read me", cover)]
    modes: list[M] = []
    for name, params, plan in FILM:
        modes.append(k.mode(k.seat(params, plan), name))
        rows: list[list[Cell]] = [["Parameter", "Slot", "DMX", "Result"]]
        for line in k.lines(modes[-1].params):
            rows += beside([line.name, line.slot], [[k.hyphen(lo, hi), text] for lo, hi, text in line.rows])
        sheets.append((name, [table(rows)]))
    return k.made("Marrowfield Light Co.", "Gannet 600C", modes, xlsx(sheets))


COLORS = (("red", "Red"), ("green", "Green"), ("blue", "Blue"))
TUBE_ALL = (
    P(("dimmer", "intensity-master"), "Master dimmer", text="0-100%", spans=k.LEVEL),
    *(_share(word, label) for word, label in COLORS),
    p("strobe shutter", "Strobe", "0-7 open: Open", k.flash(8, 255, "0.5 to 20 Hz", (0.5, 20))),
    p(
        "pixel-effect effect macro pixel-macro",
        "Pixel effect",
        "0-31 nothing: No effect",
        "32-75 runs: Chase left to right",
        "76-119 runs: Chase right to left",
        "120-163 runs: Rainbow",
        "164-207 runs: Sparkle",
        "208-255 runs: Police",
    ),
    P(
        ("pixel-effect-speed", "effect-speed", "macro-speed", "pixel-macro-speed"),
        "Effect speed",
        text="Slow to fast",
    ),
)


def _pixels(count: int, word: str) -> tuple[P, ...]:
    return tuple(
        _share(key, f"{word} {n} {label.lower()}") for n in range(1, count + 1) for key, label in COLORS
    )


TUBE = (
    ("Mode A", "whole tube, 7 slots", TUBE_ALL),
    ("Mode B", "4 sections, 13 slots", (TUBE_ALL[0], *_pixels(4, "Section"))),
    ("Mode C", "12 pixels, 37 slots", (TUBE_ALL[0], *_pixels(12, "Pixel"))),
)


@chart(
    "fifth-b-tube",
    "modes under each other on one sheet, titles merged over the table, an empty first column",
    "xlsx",
    "en",
    "Pixelmere",
    "Reed 120",
)
def tube(seed: int) -> Made:
    rows: list[list[Cell]] = [["", C("Pixelmere Reed 120: DMX modes", cols=4), None, None, None], []]
    modes: list[M] = []
    for name, about, params in TUBE:
        title = f"{name}: {about}"
        m = k.mode([q.at(n) for n, q in enumerate(params, 1)], title, name, about, about.split(",")[0])
        modes.append(m)
        rows += [["", C(title, cols=4), None, None, None], ["", "Slot", "Function", "Value", "Detail"]]
        for line in k.lines(m.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append(["", *(["", ""] if n else [line.slot, line.name]), k.dash(lo, hi), text])
        rows += [[], []]
    return k.made("Pixelmere", "Reed 120", modes, xlsx([("DMX", [table(rows)])]))


def _color(word: str, label: str, fine: bool = True) -> P:
    return P((word,), label, fine=(f"{label} fino",) if fine else (), text="0 % a 100 %", spans=k.LEVEL)


CYC = tuple(
    _color(*pair) for pair in (("red", "Rojo"), ("green", "Verde"), ("blue", "Azul"), ("amber", "Ámbar"))
)
CYC_MASTER = _color("dimmer", "Intensidad")
CYC_STROBE = p("strobe shutter", "Estrobo", "0-9 out: Sin estrobo", "10-255 flash: Estrobo de lento a rápido")
CYC_CURVE = p(
    "dimmer-curve",
    "Curva de regulación",
    "0-84 curve: Lineal",
    "85-169 curve: Cuadrática",
    "170-255 curve: Curva en S",
)
CYC_MODES = (
    ("Modo 1", CYC, "1 2 3 4"),
    ("Modo 2", (CYC_MASTER, *CYC, CYC_STROBE), "1 2 3 4 5 6"),
    ("Modo 3", (CYC_MASTER, *CYC, CYC_STROBE, CYC_CURVE), "1/2 3/4 5/6 7/8 9/10 11 12"),
)


@chart("fifth-b-cyc", "the mode merged beside all its rows", "xlsx", "es", "Telón del Norte", "Ciclorama 4C")
def cyc(seed: int) -> Made:
    rows: list[list[Cell]] = [["Modo", "Canal", "Función", "Valor", "Descripción"]]
    modes: list[M] = []
    for name, params, plan in CYC_MODES:
        m = k.mode(k.seat(params, plan), name)
        title = f"{name} ({m.footprint} canales)"
        modes.append(
            M(
                title,
                (name, title, name.removeprefix("Modo "), f"{m.footprint} canales"),
                m.footprint,
                m.params,
            )
        )
        body: list[list[Cell]] = []
        for line in k.lines(m.params):
            body += beside([line.slot, line.name], [[f"{lo} - {hi}", text] for lo, hi, text in line.rows])
        rows += beside([title], body)
    sheet: list[Element] = [Heading("Canales DMX"), table(rows), Para("Peso: 7,4 kg. Consumo máximo: 240 W.")]
    return k.made("Telón del Norte", "Ciclorama 4C", modes, xlsx([("Canales", sheet)]))


def _lamp(word: str, label: str) -> P:
    return P((word,), label, text=f"{label} LED dimming 0~100%", spans=k.LEVEL)


PUCK_MASTER = P(("dimmer", "intensity-master"), "Master dimmer", text="All LED dimming 0~100%", spans=k.LEVEL)


PUCK_COLORS = tuple(
    _lamp(word, label)
    for word, label in (
        ("red", "Red"),
        ("green", "Green"),
        ("blue", "Blue"),
        ("white", "White"),
        ("amber", "Amber"),
        ("uv", "UV"),
    )
)
PUCK_MORE = (
    p("strobe shutter", "Strobe", "0-9 out: No strobe", "10-255 flash: Strobe, slow to fast"),
    p(
        "color-macro color-preset macro virtual-color-wheel",
        "Color selection",
        "0-9 nothing: No function",
        *k.steps(10, 35, "Red", "Orange", "Yellow", "Cyan", "Purple", "Warm white", "Cold white", last=255),
    ),
    p(
        "macro effect color-macro",
        "Auto program",
        "0-9 nothing: No function",
        "10-89 perhaps: Gradual change",
        "90-169 perhaps: Jump change",
        R(170, 255, "Sound active", may={"does": ("runs", "random")}),
    ),
    P(("macro-speed", "effect-speed", "color-macro-speed"), "Program speed", text="From slow to fast"),
)
PUCK = (
    ("6CH", PUCK_COLORS),
    ("7CH", (PUCK_MASTER, *PUCK_COLORS)),
    ("11CH", (PUCK_MASTER, *PUCK_COLORS, *PUCK_MORE)),
)


@chart(
    "fifth-b-puck",
    "tables with a merged title row of the mode, tildes, translated wording",
    "xlsx",
    "en",
    "Brightmoth Event",
    "Ember Puck 6",
)
def puck(seed: int) -> Made:
    rows: list[list[Cell]] = [["Wireless battery LED uplight, channel table"], []]
    modes: list[M] = []
    for name, params in PUCK:
        title = f"{name} mode"
        modes.append(k.mode([q.at(n) for n, q in enumerate(params, 1)], title, name))
        rows += [[C(title, cols=4), None, None, None], ["Channel", "Function", "DMX Value", "Description"]]
        for line in k.lines(modes[-1].params):
            values: list[list[Cell]] = [[f"{lo}~{hi}", text] for lo, hi, text in line.rows]
            rows += beside([f"CH{line.slot}", line.name], values)
        rows.append([])
    rows.append(["Attention: Please charge the lamp at least 6 hours before first using."])
    return k.made("Brightmoth Event", "Ember Puck 6", modes, xlsx([("Sheet1", [table(rows)])]))
