"""Open traps 6, 7, 8, 11, 12, 13, 15 as PDF: the truth says what is safe."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C, Element, Grid, Heading, Look, Para, Table, cells
from intake.corpus.layouts.sides import side_grid
from intake.corpus.registry import chart

RULED = Look("ruled", 9)
DIMMER = P(("dimmer",), "Dimmer", text="0-100 %", spans=(span(0, 100, "%"),))


def table(head: list[str], rows: list[list[str]], widths: list[float], look: Look = RULED) -> Table:
    return Table(Grid([[C(text) for text in head]], [cells(*row) for row in rows], widths), look)


def one(
    maker: str,
    model: str,
    inner: list[Element],
    footprint: int,
    *params: P,
    language: str = "en",
    pdf: m.Pdf = m.FPDF,
) -> Made:
    b = m.start(language, 3)
    return m.as_pdf(b, maker, model, [M("", (), footprint, params)], inner, RULED, pdf)


FOUR = ["Channel", "Function", "Value", "Description"]
WIDE = [20.0, 36.0, 40.0, 70.0]


@chart("dotted-sixteen", "5-6 with one range", "pdf", "de", "Feldnarr", "Trap 6", trap=6)
def dotted_sixteen(seed: int) -> Made:
    rows = [
        ["1", "Dimmer", "0–255", "0-100 %"],
        ["2/3", "Farbtemperatur", "000.000–089.255", "2.700 K"],
        ["", "", "090.000–143.255", "3.400 K"],
        ["", "", "144.000–255.255", "5.600 K"],
    ]
    ranges = []
    for lo, hi, kelvin in ((0, 23039, 2700), (23040, 36863, 3400), (36864, 65535, 5600)):
        text = f"{kelvin:,} K".replace(",", ".")
        also = (span(kelvin, kelvin, "K"),)
        ranges.append(R(lo, hi, text, spans_also=also))
    cct = P(("color-temperature",), "Farbtemperatur", (2, 3), ranges=tuple(ranges), wide=True)
    inner: list[Element] = [table(["Kanal", "Funktion", "DMX-Wert", "Beschreibung"], rows, WIDE)]
    return one("Feldnarr", "Trap 6", inner, 3, DIMMER.at(1), cct, language="de")


@chart("raw-unit", "5-6 with one range", "pdf", "en", "Nubberly", "Trap 7", trap=7)
def raw_unit(seed: int) -> Made:
    rows = [
        ["1+2", "Dimmer", "0–65535", "0-100 %"],
        ["3", "Green/Magenta", "0–255", ""],
        ["4+5", "Crossfade", "0–65535", "white to color"],
        ["6+7", "CCT", "2200–9000", "send kelvin"],
    ]
    cct = P(
        ("color-temperature",),
        "CCT",
        (6, 7),
        wide=True,
        ranges=(R(2200, 9000, "send kelvin", span=span(2200, 9000, "K", raw=True)),),
        doubt="may",
        why="what the values outside do is not printed",
    )
    fade = P(("white-color-crossfade",), "Crossfade", (4, 5), text="white to color")
    tint = P(("tint", "green-correction"), "Green/Magenta", (3,))
    inner: list[Element] = [table(FOUR, rows, WIDE)]
    return one("Nubberly", "Trap 7", inner, 7, DIMMER.at(1, 2), tint, fade, cct, pdf=m.REPORTLAB)


@chart("degree-zero", "slot, function, value, description", "pdf", "en", "Nubberly", "Trap 8", trap=8)
def degree_zero(seed: int) -> Made:
    rows = [
        ["1", "Pan", "0-255", "Pan 0-4800"],
        ["2", "Pan fine", "0-255", ""],
        ["3", "Tilt", "0-255", "Tilt 0-270°"],
        ["4", "Dimmer", "0-255", "0-100 %"],
    ]
    pan = P(
        ("pan",), "Pan", (1, 2), text="Pan 0-4800", doubt="must", why="the degree sign was read as a zero"
    )
    tilt = P(("tilt",), "Tilt", (3,), text="Tilt 0-270°", spans=(span(0, 270, "deg"),))
    return one("Nubberly", "Trap 8", [table(FOUR, rows, WIDE)], 4, pan, tilt, DIMMER.at(4))


@chart("one-title-twice", "one title, two tables", "pdf", "en", "Nubberly", "Trap 11", trap=11)
def one_title_twice(seed: int) -> Made:
    plain = {word: P((word,), word.title()) for word in ("red", "green", "blue", "white", "amber", "zoom")}
    first = (DIMMER.at(1), plain["red"].at(2), plain["green"].at(3), plain["blue"].at(4))
    second = (
        DIMMER.at(1),
        plain["white"].at(2),
        plain["amber"].at(3),
        plain["zoom"].at(4),
        plain["red"].at(5),
    )
    inner: list[Element] = []
    for params in (first, second):
        rows = [[str(p.slots[0]), p.label, "0-255", p.text] for p in params]
        inner += [Heading("Standard mode", 2), table(FOUR, rows, WIDE)]
    modes = [M("Standard mode", (), len(params), params) for params in (first, second)]
    b = m.start("en", 3)
    made = m.as_pdf(b, "Nubberly", "Trap 11", modes, inner, RULED, m.REPORTLAB)
    made.truth["doubt"] += [
        {"pointer": f"/modes/{n}", "must": False, "why": "one title, two contents"} for n in (0, 1)
    ]
    return made


@chart("conditions", "slot, function, value, description", "pdf", "en", "Nubberly", "Trap 12", trap=12)
def conditions(seed: int) -> Made:
    rows = [
        ["1", "Dimmer", "0-255", "0-100 %"],
        ["2", "Color mode", "0-99", "Color"],
        ["", "", "100-199", "White"],
        ["", "", "200-255", "Reserved"],
        ["3", "Red (only if channel 2 is 0-99)", "0-255", ""],
        ["3", "CCT (only if channel 2 is 100-199)", "0-255", "2800-10000 K"],
        ["4", "Green (only if channel 2 is 0-99)", "0-255", ""],
        ["4", "Tint (only if channel 2 is 100-199)", "0-255", ""],
    ]
    why = "slots 3 and 4 have no meaning while slot 2 is 200-255"
    choices = (R(0, 99, "Color"), R(100, 199, "White"), R(200, 255, "Reserved", does="nothing"))
    color = ({"parameter": "color-mode", "from": 0, "to": 99},)
    white = ({"parameter": "color-mode", "from": 100, "to": 199},)
    cct = P(
        ("color-temperature",), "CCT", (3,), text="2800-10000 K", spans=(span(2800, 10000, "K"),), when=white
    )
    params = (
        DIMMER.at(1),
        P(("color-mode", "control"), "Color mode", (2,), ranges=choices),
        P(("red",), "Red", (3,), when=color),
        cct,
        P(("green",), "Green", (4,), when=color),
        P(("tint", "green-correction"), "Tint", (4,), when=white),
    )
    return one(
        "Nubberly",
        "Trap 12",
        [table(FOUR, rows, [20, 62, 24, 50])],
        4,
        *(replace(p, doubt="may", why=why) if p.when else p for p in params),
    )


@chart("marks-unexplained", "two modes side by side", "pdf", "en", "Nubberly", "Trap 13", trap=13)
def marks_unexplained(seed: int) -> Made:
    b = m.start("en", seed)
    order = [
        DIMMER,
        P(("strobe", "shutter"), "Strobe"),
        *(P((word,), word.title()) for word in ("red", "green", "blue")),
    ]
    why = "a mark that no legend explains"
    short = M("Short", ("Short",), 5, tuple(p.at(n) for n, p in enumerate(order, 1)))
    marked = [
        replace(p.at(n), doubt="must", why=why) if n == 2 else replace(p.at(n), doubt="may", why=why)
        for n, p in enumerate(order, 1)
    ]
    full = M("Full", ("Full",), 5, tuple(marked))
    grid = side_grid(b, [short, full], order, m.style(b, "hyphen"), "-")
    grid.body[1][1] = C("* 2 *")
    made = m.as_pdf(b, "Nubberly", "Trap 13", [short, full], [Table(grid, RULED)], RULED)
    made.truth["doubt"].append({"pointer": "/modes/1", "must": False, "why": why})
    return made


@chart("mixed-control", "slot, function, value, description", "pdf", "en", "Nubberly", "Trap 15", trap=15)
def mixed_control(seed: int) -> Made:
    held, until = "hold 3 s, kept until power off", "until power off"
    texts = [
        (0, 9, "No function"),
        (10, 19, f"Dimmer response: fast ({held})"),
        (20, 29, f"Dimmer response: smooth ({held})"),
        (30, 39, "Fans off (only while sent)"),
        (40, 49, "Reset all (hold 5 s, only if channel 2 is 0-9)"),
        (50, 255, "No function"),
    ]
    rows = [
        ["1", "Dimmer", "0-255", "0-100 %"],
        ["2", "Shutter", "0-9", "Closed"],
        ["", "", "10-255", "Open"],
    ]
    rows += [
        ["3" if n == 0 else "", "Control" if n == 0 else "", f"{a}-{z}", t]
        for n, (a, z, t) in enumerate(texts)
    ]
    fast, smooth = (("smoothing", key, f"Dimmer response: {key}") for key in ("fast", "smooth"))
    short = [t.split(" (")[0] for _, _, t in texts]
    ranges = (
        R(0, 9, texts[0][2], does="nothing"),
        R(10, 19, texts[1][2], sets=fast, hold_s=3.0, kept=until, also=(short[1],)),
        R(20, 29, texts[2][2], sets=smooth, hold_s=3.0, kept=until, also=(short[2],)),
        R(30, 39, texts[3][2], kept="while sent", also=(short[3],), may={"sets": ("fan",)}),
        R(40, 49, texts[4][2], hold_s=5.0, hazard="reset", needs=(("shutter", 0, 9),), also=(short[4],)),
        R(50, 255, texts[5][2], does="nothing"),
    )
    shutter = P(
        ("shutter",),
        "Shutter",
        (2,),
        ranges=(R(0, 9, "Closed", does="closed"), R(10, 255, "Open", does="open")),
    )
    inner: list[Element] = [table(FOUR, rows, [20, 36, 24, 86]), Para("All other values have no effect.")]
    return one(
        "Nubberly",
        "Trap 15",
        inner,
        3,
        DIMMER.at(1),
        shutter,
        P(("control",), "Control", (3,), ranges=ranges),
    )
