"""Moving lights in PDFs: a band a slot, and slot columns of three modes behind the text."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

HYBRID = (
    P(("pan",), "PAN", (1, 2), ("PAN FINE",), "Position 0-530 degrees", (span(0, 530, "deg"),)),
    P(("tilt",), "TILT", (3, 4), ("TILT FINE",), "Position 0-280 degrees", (span(0, 280, "deg"),)),
    P(
        ("color-wheel",),
        "COLOUR WHEEL",
        (5,),
        ranges=(
            k.opened(0, 6, "Open"),
            *k.steps(
                7, 7, "Deep red", "Deep blue", "Orange", "Green", "Magenta", "Yellow", "Lavender", "CTB"
            ),
            *k.steps(
                63, 10, "Open + deep red", "Deep red + deep blue", "Deep blue + orange", "Orange + green"
            ),
            *k.steps(103, 10, "Green + magenta", "Magenta + yellow", "Yellow + lavender", last=132),
            k.rainbow(133, 192, "Forward spin, fast to slow"),
            k.stop(193, 195, "No spin"),
            k.rainbow(196, 255, "Reverse spin, slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "STATIC GOBO WHEEL",
        (6,),
        ranges=(
            k.opened(0, 9, "Open"),
            *k.steps(10, 10, *(f"Static gobo {n}" for n in range(1, 11))),
            k.shake(110, 129, "Static gobo 1 shake"),
            k.shake(130, 149, "Static gobo 2 shake"),
            k.spin(150, 200, "Forward spin, fast to slow", "gobo-wheel"),
            k.stop(201, 204, "No spin"),
            k.spin(205, 255, "Reverse spin, slow to fast", "gobo-wheel"),
        ),
    ),
    P(
        ("rotating-gobo-wheel", "gobo-wheel"),
        "ROTATING GOBO WHEEL",
        (7,),
        ranges=(
            k.opened(0, 9, "Open"),
            *k.steps(10, 20, *(f"Rotating gobo {n}" for n in range(1, 8))),
            *(k.shake(150 + 15 * n, 164 + 15 * n, f"Rotating gobo {n + 1} shake") for n in range(6)),
            k.shake(240, 255, "Rotating gobo 7 shake"),
        ),
    ),
    P(
        ("gobo-index-rotation", "gobo-rotation"),
        "GOBO ROTATION",
        (8, 9),
        ("GOBO ROTATION FINE",),
        ranges=(
            k.index(0, 127, "Index", "gobo"),
            k.spin(128, 190, "Forward rotation, fast to slow", "gobo"),
            k.stop(191, 192, "No rotation"),
            k.spin(193, 255, "Reverse rotation, slow to fast", "gobo"),
        ),
    ),
    P(
        ("prism",),
        "PRISM",
        (10,),
        ranges=(k.out(0, 9, "Prism out"), R(10, 130, "Linear prism"), R(131, 255, "Round prism")),
    ),
    P(("focus",), "FOCUS", (11,), text="Far to near"),
    P(("zoom",), "ZOOM", (12,), text="2-38 degrees", spans=(span(2, 38, "deg"),)),
    P(("frost",), "FROST", (13,), text="0-100%", spans=k.LEVEL),
    P(("dimmer",), "DIMMER", (14,), text="0-100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "SHUTTER",
        (15,),
        ranges=(
            k.closed(0, 9, "Shutter closed"),
            k.opened(10, 49, "Shutter open"),
            k.flash(50, 149, "Strobe, slow to fast"),
            k.chance(150, 199, "Random strobe, slow to fast"),
            k.opened(200, 255, "Shutter open"),
        ),
    ),
    P(
        ("control",),
        "CONTROL",
        (16,),
        ranges=(
            k.nothing(0, 69, "Not used"),
            R(70, 79, "Lamp on", hazard="lamp on"),
            k.nothing(80, 129, "Not used"),
            k.reset(130, 139, "Reset"),
            k.nothing(140, 229, "Not used"),
            R(230, 239, "Lamp off (hold 3 seconds)", hazard="lamp off", hold_s=3),
            k.nothing(240, 255, "Not used"),
        ),
    ),
)


@chart("second-hybrid", "a band a slot over its values", "pdf", "en", "Cragmere Lighting", "Shrike 380")
def hybrid(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.set_auto_page_break(False)

    def turn() -> None:
        pdf.add_page()
        pdf.set_font("Helvetica", "I", 8)
        pdf.text(15, 287, f"Shrike 380 User Guide    {pdf.page_no() + 21}")
        pdf.set_font("Helvetica", "B", 9)
        for width, text in ((30, "DMX VALUE"), (110, "FUNCTION")):
            pdf.cell(width, 6, text, border="B")
        pdf.ln(7)

    pdf.add_page()
    pdf.set_font("Helvetica", "B", 16)
    pdf.cell(text="DMX Functions", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=9)
    pdf.multi_cell(
        0,
        5,
        "The Shrike 380 uses 16 channels. When it is switched on the head moves by itself: keep clear of it.",
    )
    turn()
    for line in k.lines(HYBRID):
        if pdf.get_y() + 7 + 5.2 * len(line.rows) > 278:
            turn()
        pdf.set_fill_color(200, 210, 200)
        pdf.set_font("Helvetica", "B", 9)
        pdf.cell(140, 6, f"CHANNEL {line.slot}: {line.name}", fill=True, new_x="LMARGIN", new_y="NEXT")
        pdf.set_font("Helvetica", size=9)
        for lo, hi, text in line.rows:
            pdf.cell(30, 5.2, k.zeros(lo, hi))
            pdf.cell(110, 5.2, text or "Fine control", new_x="LMARGIN", new_y="NEXT")
    return k.made("Cragmere Lighting", "Shrike 380", [k.mode(HYBRID)], bytes(pdf.output()))


TRIO = (
    P(("pan",), "Pan", fine=("Pan 16 bit",)),
    P(("tilt",), "Tilt", fine=("Tilt 16 bit",)),
    P(("movement-speed",), "Speed pan/tilt", text="Fast to slow"),
    P(("dimmer",), "Intensity", fine=("Intensity 16 bit",), text="0..100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(
            k.closed(0, 10),
            k.opened(11, 20),
            k.flash(21, 120, "Strobe slow to fast"),
            k.pulse(121, 180, "Pulse slow to fast"),
            k.chance(181, 240, "Random slow to fast"),
            k.opened(241, 255),
        ),
    ),
    P(("red",), "Red"),
    P(("green",), "Green"),
    P(("blue",), "Blue"),
    P(("white",), "White"),
    P(("amber",), "Amber"),
    P(("uv",), "UV"),
    P(
        ("color-temperature",),
        "CCT",
        ranges=(k.nothing(0, 9, "Off"), R(10, 255, "2700K..8000K", span=span(2700, 8000, "K"))),
    ),
    P(("zoom",), "Zoom", text="Wide to narrow"),
    P(
        ("pixel-effect", "effect", "pixel-macro", "macro"),
        "Pixel effects",
        ranges=(
            k.nothing(0, 19, "Off"),
            *(k.maybe_runs(20 + 40 * n, 59 + 40 * n, f"Effect {n + 1}") for n in range(5)),
            k.maybe_runs(220, 255, "Effect 6"),
        ),
    ),
    P(("pixel-effect-speed", "effect-speed"), "Effect speed", text="Slow to fast"),
    P(("control", "reset"), "Function", ranges=(k.nothing(0, 199, "Off"), k.reset(200, 255, "Reset"))),
)
TRIO_PLANS = (
    ("Standard", "1 2 - 3 4 5 6 7 8 - - - 9 - - 10"),
    ("Extended", "1/2 3/4 5 6/7 8 9 10 11 12 13 14 - 15 - - 16"),
    ("Pixel", "1/2 3/4 5 6/7 8 9 10 11 12 13 14 15 16 17 18 19"),
)


@chart(
    "second-trio", "function first, slot columns of three modes last", "pdf", "en", "Oxbarrow", "Dabchick Z"
)
def trio(seed: int) -> Made:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import LongTable, PageBreak, Paragraph, SimpleDocTemplate, Table

    sheet = getSampleStyleSheet()
    body: list[Any] = [["Function", "DMX", "Effect", *(name for name, _ in TRIO_PLANS)]]
    marks: list[Any] = [
        ("LINEABOVE", (0, 1), (-1, 1), 1, "#000000"),
        ("FONTNAME", (0, 0), (-1, 0), "Times-Bold"),
        ("FONTNAME", (0, 1), (-1, -1), "Times-Roman"),
        ("TOPPADDING", (0, 0), (-1, -1), 1.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
    ]
    for side in k.sides(TRIO, *(plan for _, plan in TRIO_PLANS)):
        marks.append(("LINEABOVE", (0, len(body)), (-1, len(body)), 0.3, "#777777"))
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if s is None or n else str(s) for s in side.slots]
            body.append([side.name if n == 0 else "", f"{lo}..{hi}", text, *slots])
    pids = [
        ["PID", "Name", "Get", "Set"],
        ["0x0060", "DEVICE_INFO", "yes", "no"],
        ["0x00E0", "DMX_PERSONALITY", "yes", "yes"],
    ]
    pids += [["0x00F0", "DMX_START_ADDRESS", "yes", "yes"], ["0x1000", "IDENTIFY_DEVICE", "yes", "yes"]]
    parts: list[Any] = [
        Paragraph("RDM", sheet["Heading1"]),
        Table(pids, [60, 150, 40, 40], style=[("GRID", (0, 0), (-1, -1), 0.4, "#999999")], hAlign="LEFT"),
        PageBreak(),
        Paragraph("DMX protocol", sheet["Heading1"]),
        LongTable(body, [95, 60, 130, 58, 58, 48], style=marks, repeatRows=1, hAlign="LEFT"),
    ]
    kept = io.BytesIO()
    SimpleDocTemplate(kept, title="Dabchick Z", invariant=1).build(parts)
    modes = [k.mode(k.seat(TRIO, plan), name) for name, plan in TRIO_PLANS]
    return k.made("Oxbarrow", "Dabchick Z", modes, kept.getvalue())
