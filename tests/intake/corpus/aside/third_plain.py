"""Plain pages: values and meanings as lines of one cell, and a strobe with a page a mode."""

from __future__ import annotations

import datetime
import io
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

NEW = datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC)

RGBA = (
    ("red", "Red"),
    ("green", "Green"),
    ("blue", "Blue"),
    ("amber", "Amber"),
    ("white", "White"),
    ("uv", "UV"),
)
HEX = (
    P(("dimmer", "intensity-master"), "Master dimmer", text="from dark to full"),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 15, "off"), k.flash(16, 255, "from slow to fast"))),
    *(P((word,), name, text="from dark to full") for word, name in RGBA),
    P(
        ("color-preset", "color-macro", "virtual-color-wheel"),
        "Preset colors",
        ranges=(
            k.nothing(0, 10, "off"),
            *k.steps(11, 49, "Primary red", "Lemon", "Emerald", "Cobalt", "Candle"),
        ),
    ),
    P(
        ("macro", "effect"),
        "Built-in programs",
        ranges=(
            k.nothing(0, 10, "off"),
            k.runs(11, 100, "Color fade"),
            k.runs(101, 200, "Color jump"),
            k.runs(201, 255, "Sound active"),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Program speed", text="from slow to fast"),
)
HEX_PLANS = (
    ("6-channel", "- - 1 2 3 4 5 6 - - -"),
    ("8-channel", "1 2 3 4 5 6 7 8 - - -"),
    ("11-channel", "1 2 3 4 5 6 7 8 9 10 11"),
)


@chart("third-par", "values and meanings as lines of one cell", "pdf", "en", "Wendlebury", "Smew 12")
def par(seed: int) -> Made:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import KeepTogether, Paragraph, SimpleDocTemplate, Table

    sheet = getSampleStyleSheet()
    rules: list[Any] = [("LINEBELOW", (0, 0), (-1, -1), 0.3, "#444444"), ("VALIGN", (0, 0), (-1, -1), "TOP")]
    modes = [k.mode(k.seat(HEX, plan), f"{name} mode", name) for name, plan in HEX_PLANS]
    parts: list[Any] = [Paragraph("Setting the DMX mode", sheet["Heading1"])]
    parts.append(
        Paragraph("Press MODE until CH appears, then choose 6, 8 or 11 with UP and DOWN.", sheet["BodyText"])
    )
    for mode in modes:
        body = [["No.", "Function", "Values"]]
        for line in k.lines(mode.params):
            body.append(
                [
                    str(line.slot),
                    line.name,
                    "\n".join(f"{k.zeros(lo, hi)}  {text}" for lo, hi, text in line.rows),
                ]
            )
        parts.append(
            KeepTogether(
                [
                    Paragraph(mode.title, sheet["Heading2"]),
                    Table(body, [40, 130, 230], style=rules, hAlign="LEFT"),
                ]
            )
        )
    kept = io.BytesIO()
    SimpleDocTemplate(kept, title="Smew 12", invariant=1).build(parts)
    return k.made("Wendlebury", "Smew 12", modes, kept.getvalue())


FLASHER = (
    P(("dimmer",), "Intensity", text="0-100 %", spans=k.LEVEL),
    P(("strobe-duration",), "Flash duration", text="Short to long"),
    P(
        ("strobe", "shutter"),
        "Flash rate",
        ranges=(k.out(0, 5, "No flash"), k.flash(6, 255, "0.5-25 Hz", (0.5, 25))),
    ),
    P(
        ("effect", "strobe-mode", "macro"),
        "Effects",
        ranges=(
            k.nothing(0, 5, "No effect"),
            k.maybe_runs(6, 85, "Ramp up"),
            k.maybe_runs(86, 170, "Ramp down"),
            k.optional(R(171, 255, "Lightning"), does=("runs", "random")),
        ),
    ),
    P(("red",), "Red", text="0-100 %", spans=k.LEVEL),
    P(("green",), "Green", text="0-100 %", spans=k.LEVEL),
    P(("blue",), "Blue", text="0-100 %", spans=k.LEVEL),
    P(("tilt",), "Tilt", text="0-190 degrees", spans=(span(0, 190, "deg"),)),
    P(("control", "reset"), "Control", ranges=(k.nothing(0, 239), k.reset(240, 255, "Reset tilt"))),
)
FLASHER_PLANS = (
    ("Mode 1", "1 2 3 4 - - - 5 6"),
    ("Mode 2", "1 - 2 - 3 4 5 6 -"),
    ("Mode 3", "1 2 3 4 5 6 7 8 9"),
)


@chart("third-flasher", "unruled, a page a mode, name before slot", "pdf", "en", "Loxbourne", "Hobby S")
def flasher(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF(format="letter")
    pdf.set_creation_date(NEW)
    modes = []
    for name, plan in FLASHER_PLANS:
        mode = k.mode(k.seat(FLASHER, plan), f"DMX {name}", name)
        modes.append(mode)
        pdf.add_page()
        pdf.set_font("Courier", "B", 13)
        pdf.cell(text=mode.title, new_x="LMARGIN", new_y="NEXT")
        pdf.ln(3)
        pdf.set_font("Courier", "B", 9)
        for width, text in ((45, "FUNCTION"), (20, "CHAN"), (28, "VALUE"), (60, "DETAIL")):
            pdf.cell(width, 5, text)
        pdf.ln(6)
        pdf.set_font("Courier", size=9)
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                pdf.cell(45, 5, line.name if n == 0 else "")
                pdf.cell(20, 5, str(line.slot) if n == 0 else "")
                pdf.cell(28, 5, k.zeros(lo, hi))
                pdf.cell(60, 5, text)
                pdf.ln(5)
    return k.made("Loxbourne", "Hobby S", modes, bytes(pdf.output()))
