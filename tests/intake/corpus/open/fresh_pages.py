"""A panel with four modes on pages without rules, and a beam light with decimal, hex and percent columns."""

from __future__ import annotations

import datetime
import io
from collections.abc import Sequence

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

DIMMER = P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0 to 100 %", spans=k.LEVEL)
CCT = P(
    ("color-temperature",), "CCT", fine=("CCT fine",), text="2800 K to 6500 K", spans=(span(2800, 6500, "K"),)
)
TINT = P(("tint", "green-correction"), "Tint", text="Minus green to plus green")
FADE = P(("white-color-crossfade",), "Crossfade white to color", text="0 to 100 %", spans=k.LEVEL)
HUE = P(("hue",), "Hue", fine=("Hue fine",), text="0 to 360°", spans=(span(0, 360, "deg"),))
SATURATION = P(("saturation",), "Saturation", text="0 to 100 %", spans=k.LEVEL)
COLORS = [k.level(name.lower(), name, "0 to 100 %") for name in ("Red", "Green", "Blue", "White")]
STROBE = P(
    ("strobe", "shutter"),
    "Strobe",
    ranges=(k.out(0, 9, "No strobe"), k.flash(10, 255, "1 Hz to 25 Hz", (1, 25))),
)
FAN = P(
    ("fan-mode", "fan"),
    "Fan",
    ranges=(k.fan_choice(0, 84, "Auto"), k.fan_choice(85, 169, "Quiet"), k.fan_choice(170, 255, "Full")),
)
RESERVED = P(("reserved",), "Reserved", text="No function")
PANEL = (
    ("CCT 8-bit", (DIMMER, CCT, TINT, STROBE, FAN, RESERVED), "1 2 3 4 5 6"),
    ("CCT 16-bit", (DIMMER, CCT, TINT, STROBE, FAN, RESERVED), "1/2 3/4 5 6 7 8"),
    ("HSI", (DIMMER, CCT, TINT, FADE, HUE, SATURATION, STROBE, FAN), "1 2 3 4 5/6 7 8 9"),
    ("RGBW", (DIMMER, CCT, TINT, FADE, *COLORS, STROBE, FAN), "1/2 3 4 5 6 7 8 9 10 11"),
)


@chart("fresh-panel", "unruled columns, a heading a mode", "pdf", "en", "Vanthorp", "Loden 60")
def panel(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(595, 842), invariant=1)
    modes = []
    y = 0.0

    def turn() -> None:
        nonlocal y
        if y:
            page.showPage()
        y = 790
        page.setFont("Helvetica", 8)
        page.drawString(60, 30, "Vanthorp Loden 60 – DMX reference")

    def put(cells: Sequence[tuple[int, str]], font: str = "Helvetica", size: int = 9) -> None:
        nonlocal y
        page.setFont(font, size)
        for x, text in cells:
            page.drawString(x, y, text)
        y -= size + 5

    turn()
    put([(60, "DMX reference")], "Helvetica-Bold", 16)
    put([(60, "All modes keep the last look when DMX is lost. RDM reports the mode as its personality.")])
    for number, (name, params, plan) in enumerate(PANEL, 1):
        mode = k.mode(
            k.seat(params, plan),
            f"Mode {number}: {name} ({max(int(s) for s in plan.replace('/', ' ').split())} channels)",
            name,
            f"Mode {number}: {name}",
            f"Mode {number}",
        )
        modes.append(mode)
        rows = sum(len(line.rows) for line in k.lines(mode.params))
        if y < 130 + 14 * rows:
            turn()
        y -= 14
        put([(60, mode.title)], "Helvetica-Bold", 11)
        put([(60, "Ch."), (100, "Parameter"), (250, "Value"), (330, "Range")], "Helvetica-Bold")
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                head = [(60, str(line.slot)), (100, line.name)] if n == 0 else []
                put([*head, (250, k.hyphen(lo, hi)), (330, text)])
    page.save()
    return k.made("Vanthorp", "Loden 60", modes, kept.getvalue())


BEAM = (
    P(("pan",), "X axis (Pan)", (1, 3), ("X axis fine",), "Pan movement"),
    P(("tilt",), "Y axis (Tilt)", (2, 4), ("Y axis fine",), "Tilt movement"),
    P(("movement-speed",), "XY speed", (5,), text="Fast to slow"),
    P(
        ("strobe", "shutter"),
        "Strobe",
        (6,),
        ranges=(
            k.closed(0, 3, "Closed"),
            k.flash(4, 103, "Pulse strobe, slow to fast"),
            k.opened(104, 107),
            k.chance(108, 207, "Random strobe, slow to fast"),
            k.opened(208, 255),
        ),
    ),
    P(("dimmer",), "Dimmer", (7,), text="Dark to bright"),
    P(
        ("color-wheel",),
        "Color",
        (8,),
        ranges=(
            k.optional(R(0, 4, "White"), does=("open",)),
            *k.steps(5, 11, "Red", "Orange", "Aquamarine", "Light green", "Amber", "CTO", "Violet", "Pink"),
            *k.steps(93, 11, "Yellow", "Magenta", "Cyan", last=127),
            k.rainbow(128, 191, "Rainbow forward, fast to slow"),
            k.rainbow(192, 255, "Rainbow backward, slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Fixed gobo",
        (9,),
        ranges=(
            k.opened(0, 7, "Open"),
            *k.steps(8, 8, *(f"Gobo {n}" for n in range(1, 15)), last=127),
            k.spin(128, 255, "Gobo wheel rotation, slow to fast", "gobo-wheel"),
        ),
    ),
    P(("prism",), "Prism", (10,), ranges=(k.out(0, 127, "Off"), R(128, 255, "8-facet prism"))),
    P(
        ("prism-rotation", "prism-index"),
        "Prism rotation",
        (11,),
        ranges=(
            k.index(0, 127, "0 to 360 degrees", "prism", (0, 360)),
            k.spin(128, 190, "Forward rotation, fast to slow"),
            k.stop(191, 192),
            k.spin(193, 255, "Backward rotation, slow to fast"),
        ),
    ),
    P(("frost",), "Frost", (12,), ranges=(k.out(0, 127, "Frost off"), R(128, 255, "Frost on"))),
    P(("focus",), "Focus", (13,), text="Near to far"),
    P(
        ("macro", "movement-macro"),
        "Auto run",
        (14,),
        ranges=(k.nothing(0, 127, "No function"), k.runs(128, 255, "Auto program")),
    ),
    P(
        ("reset", "control"),
        "Reset",
        (15,),
        ranges=(k.nothing(0, 249), k.reset(250, 255, "Reset (hold for 5 seconds)", 5)),
    ),
    P(
        ("lamp-control",),
        "Lamp",
        (16,),
        ranges=(
            k.nothing(0, 99),
            R(100, 199, "Lamp on", hazard="lamp on"),
            R(200, 255, "Lamp off", hazard="lamp off"),
        ),
    ),
)


@chart("fresh-hex", "decimal, hex and percent columns", "pdf", "en", "Kessomar", "Sable 230")
def hexed(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF(format="letter")
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.set_auto_page_break(False)
    widths = (14, 34, 24, 22, 22, 70)

    def line(cells: Sequence[str], shade: bool, style: str = "") -> None:
        pdf.set_font("Times", style, 10)
        pdf.set_fill_color(228, 228, 228)
        for width, text in zip(widths, cells, strict=True):
            pdf.cell(width, 6, text, fill=shade)
        pdf.ln(6)

    def head() -> None:
        pdf.add_page()
        pdf.set_font("Times", "B", 14)
        pdf.cell(text="Sable 230 DMX chart" if pdf.page_no() == 1 else "Sable 230 DMX chart (continued)")
        pdf.ln(10)
        line(["CH", "Function", "Decimal", "Hex", "Percent", "Description"], False, "B")
        pdf.line(pdf.l_margin, pdf.get_y(), pdf.l_margin + sum(widths), pdf.get_y())

    head()
    for number, one in enumerate(k.lines(BEAM)):
        if pdf.get_y() + 6 * len(one.rows) > 262:
            head()
        for n, (lo, hi, text) in enumerate(one.rows):
            first = [str(one.slot), one.name] if n == 0 else ["", ""]
            share = f"{round(lo / 2.55)} - {round(hi / 2.55)}"
            line([*first, k.zeros(lo, hi), f"{lo:02X} - {hi:02X}", share, text], number % 2 == 0)
    pdf.add_page()
    pdf.set_font("Times", "B", 14)
    pdf.cell(text="Technical data")
    pdf.ln(10)
    data = (
        ("Lamp", "230 W discharge"),
        ("Beam angle", "2.8°"),
        ("Power draw", "360 W at 230 V"),
        ("Weight", "17.5 kg"),
    )
    pdf.set_font("Times", "", 10)
    for name, value in data:
        pdf.cell(60, 6, name, border=1)
        pdf.cell(60, 6, value, border=1)
        pdf.ln(6)
    return k.made("Kessomar", "Sable 230", [k.mode(BEAM)], bytes(pdf.output()))
