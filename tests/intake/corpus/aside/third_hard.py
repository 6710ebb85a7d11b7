"""Charts with something hard: smoothing held in a control slot, and a prism slot of two meanings."""

from __future__ import annotations

import datetime
import io

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

HELD = {"hold_s": 2.0, "kept": "stored"}
NOTED = (
    P(("pan",), "Pan", (1, 2), ("Pan fine",), "0 to 540 degrees", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fine",), "0 to 250 degrees", (span(0, 250, "deg"),)),
    P(("dimmer",), "Dimmer", (5, 6), ("Dimmer fine",), "0 to 100 %", k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (7,),
        ranges=(k.closed(0, 15), k.opened(16, 31), k.flash(32, 255, "Strobe 1 to 20 Hz", (1, 20))),
    ),
    P(("red",), "Red", (8,), text="0 to 100 %", spans=k.LEVEL),
    P(("green",), "Green", (9,), text="0 to 100 %", spans=k.LEVEL),
    P(("blue",), "Blue", (10,), text="0 to 100 %", spans=k.LEVEL),
    P(("zoom",), "Zoom", (11,), text="5 to 52 degrees", spans=(span(5, 52, "deg"),)),
    P(
        ("control",),
        "Control",
        (12,),
        ranges=(
            k.nothing(0, 9),
            R(10, 19, "Dimmer smoothing off *", sets=("smoothing", "off", "off"), **HELD),  # type: ignore[arg-type]
            R(20, 29, "Dimmer smoothing short *", sets=("smoothing", "short", "short"), **HELD),  # type: ignore[arg-type]
            R(30, 39, "Dimmer smoothing long *", sets=("smoothing", "long", "long"), **HELD),  # type: ignore[arg-type]
            R(40, 49, "Fan quiet *", sets=("fan", "quiet", "quiet"), **HELD),  # type: ignore[arg-type]
            R(50, 59, "Fan automatic *", sets=("fan", "automatic", "automatic"), **HELD),  # type: ignore[arg-type]
            k.nothing(60, 239),
            R(240, 255, "Reset **", hazard="reset", hold_s=5, needs=(("shutter", 0, 15),)),
        ),
    ),
)


@chart("third-starred", "ruled, stars explained below the table", "pdf", "en", "Haverbeck", "Merlin W", 15)
def starred(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Times", "B", 14)
    pdf.cell(text="DMX chart", new_x="LMARGIN", new_y="NEXT")
    pdf.ln(1)
    pdf.set_font("Times", size=10)
    with pdf.table(col_widths=(20, 45, 25, 70), width=160, align="L", line_height=5) as table:
        table.row(["Channel", "Parameter", "Value", "Effect"])
        for line in k.lines(NOTED):
            for n, (lo, hi, text) in enumerate(line.rows):
                row = table.row()
                if n == 0:
                    row.cell(str(line.slot), rowspan=len(line.rows))
                    row.cell(line.name, rowspan=len(line.rows))
                row.cell(k.hyphen(lo, hi))
                row.cell(text)
    pdf.ln(2)
    pdf.cell(text="* Hold for 2 seconds. The setting is stored.", new_x="LMARGIN", new_y="NEXT")
    pdf.cell(text="** Hold for 5 seconds with channel 7 at 0-15.", new_x="LMARGIN", new_y="NEXT")
    return k.made("Haverbeck", "Merlin W", [k.mode(NOTED)], bytes(pdf.output()))


SHARED = (
    P(("dimmer",), "Dimmer", (1,), text="0-100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (2,),
        ranges=(k.closed(0, 15), k.opened(16, 127), k.flash(128, 255, "Strobe, slow to fast")),
    ),
    P(("zoom",), "Zoom", (3,), text="Narrow to wide"),
    P(("focus",), "Focus", (4,), text="Near to far"),
    P(
        ("prism",),
        "Prism",
        (5,),
        ranges=(
            k.out(0, 63, "Out"),
            k.optional(R(64, 159, "In, indexed"), does=("index",)),
            k.optional(R(160, 255, "In, rotating"), does=("rotate",)),
        ),
        key="prism",
    ),
    P(
        ("prism-index",),
        "Prism angle (when channel 5 is 64-159)",
        (6,),
        text="0° to 360°",
        spans=(span(0, 360, "deg"),),
        when=({"parameter": "prism", "from": 64, "to": 159},),
        key="prism-angle",
        doubt="may",
        why="nothing is said of channel 6 while channel 5 is at 0-63",
    ),
    P(
        ("prism-rotation",),
        "Prism rotation (when channel 5 is 160-255)",
        (6,),
        ranges=(
            k.spin(0, 120, "Clockwise, fast to slow"),
            k.stop(121, 134),
            k.spin(135, 255, "Counterclockwise, slow to fast"),
        ),
        when=({"parameter": "prism", "from": 160, "to": 255},),
        key="prism-rotation",
        doubt="may",
        why="nothing is said of channel 6 while channel 5 is at 0-63",
    ),
    P(("reset", "control"), "Reset", (7,), ranges=(k.nothing(0, 199), k.reset(200, 255, "Reset"))),
)


@chart("third-shared", "a sheet with a slot of two meanings", "xlsx", "en", "Yarnbury", "Goshawk 2", 12)
def shared(seed: int) -> Made:
    from openpyxl import Workbook

    book = Workbook()
    book.properties.created = book.properties.modified = datetime.datetime(2026, 1, 2)
    sheet = book.worksheets[0]
    sheet.title = "DMX"
    sheet.append(["Channel", "Function", "DMX value", "Description"])
    for line in k.lines(SHARED):
        for n, (lo, hi, text) in enumerate(line.rows):
            sheet.append([*((line.slot, line.name) if n == 0 else (None, None)), k.hyphen(lo, hi), text])
    kept = io.BytesIO()
    book.save(kept)
    return k.made("Yarnbury", "Goshawk 2", [k.mode(SHARED)], k.steady(kept.getvalue()))
