"""Moving lights in PDFs: a ruled table over pages, modes side by side, a block a slot."""

from __future__ import annotations

import io
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

SPOT = (
    P(("pan",), "Pan", (1, 2), ("Pan fine",), "0 – 540°", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fine",), "0 – 270°", (span(0, 270, "deg"),)),
    P(("movement-speed",), "Pan/Tilt speed", (5,), text="Fast to slow"),
    P(
        ("color-wheel",),
        "Color wheel",
        (6,),
        ranges=(
            k.opened(0, 9, "Open"),
            *k.steps(10, 10, "Red", "Orange", "Yellow", "Green", "Blue", "Magenta", "Congo"),
            k.rainbow(80, 164, "Clockwise rotation, fast to slow"),
            k.stop(165, 170),
            k.rainbow(171, 255, "Counter-clockwise rotation, slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel", "rotating-gobo-wheel"),
        "Gobo wheel",
        (7,),
        ranges=(
            k.opened(0, 7, "Open"),
            *k.steps(8, 8, "Gobo 1", "Gobo 2", "Gobo 3", "Gobo 4", "Gobo 5", "Gobo 6"),
            *(k.shake(56 + 20 * n, 75 + 20 * n, f"Gobo {n + 1} shake, slow to fast") for n in range(6)),
            k.spin(176, 255, "Wheel scroll, slow to fast", "gobo-wheel"),
        ),
    ),
    P(
        ("gobo-index-rotation", "gobo-rotation"),
        "Gobo rotation",
        (8,),
        ranges=(
            k.index(0, 127, "Gobo index 0 – 360°", "gobo", (0, 360)),
            k.spin(128, 189, "Clockwise rotation, fast to slow", "gobo"),
            k.stop(190, 193),
            k.spin(194, 255, "Counter-clockwise rotation, slow to fast", "gobo"),
        ),
    ),
    P(
        ("prism",),
        "Prism",
        (9,),
        ranges=(k.out(0, 19, "Prism out"), R(20, 255, "3-facet prism in")),
    ),
    P(
        ("prism-rotation",),
        "Prism rotation",
        (10,),
        ranges=(
            k.stop(0, 9, "No rotation"),
            k.spin(10, 130, "Clockwise rotation, slow to fast"),
            k.spin(131, 255, "Counter-clockwise rotation, slow to fast"),
        ),
    ),
    P(("focus",), "Focus", (11,), text="Far to near"),
    P(("zoom",), "Zoom", (12,), text="Narrow to wide"),
    P(("frost",), "Frost", (13,), text="0 – 100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter / Strobe",
        (14,),
        ranges=(
            k.closed(0, 31, "Shutter closed"),
            k.opened(32, 63, "Shutter open"),
            k.flash(64, 95, "Strobe, slow to fast"),
            k.opened(96, 127, "Shutter open"),
            k.pulse(128, 159, "Pulse effect"),
            k.opened(160, 191, "Shutter open"),
            k.chance(192, 223, "Random strobe"),
            k.opened(224, 255, "Shutter open"),
        ),
    ),
    P(("dimmer",), "Dimmer", (15, 16), ("Dimmer fine",), "0 – 100 %", k.LEVEL),
    P(
        ("movement-macro", "macro"),
        "Movement macro",
        (17,),
        ranges=(
            k.nothing(0, 15),
            *(k.runs(16 + 48 * n, 63 + 48 * n, f"Macro {n + 1}") for n in range(5)),
        ),
    ),
    P(
        ("control", "reset"),
        "Control / Reset",
        (18,),
        ranges=(
            k.nothing(0, 199),
            k.reset(200, 219, "Reset all motors"),
            k.reset(220, 239, "Reset pan and tilt"),
            k.nothing(240, 255),
        ),
    ),
)


@chart("fresh-spot", "slot, function, value, description", "pdf", "en", "Brindlewick", "Wren S18")
def spot(seed: int) -> Made:
    from reportlab.lib import colors
    from reportlab.lib.pagesizes import A4
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import LongTable, PageBreak, Paragraph, SimpleDocTemplate, Spacer, Table

    sheet = getSampleStyleSheet()
    rule = [("GRID", (0, 0), (-1, -1), 0.5, colors.grey), ("FONTSIZE", (0, 0), (-1, -1), 9)]
    body: list[Any] = [["Channel", "Function", "Value", "Description"]]
    marks: list[Any] = [
        *rule,
        ("FONTNAME", (0, 0), (-1, 0), "Helvetica-Bold"),
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
    ]
    for line in k.lines(SPOT):
        top = len(body)
        for n, (lo, hi, text) in enumerate(line.rows):
            first = n == 0
            body.append([line.slot if first else "", line.name if first else "", k.zeros(lo, hi), text])
        if len(line.rows) > 1:
            marks += [("SPAN", (c, top), (c, len(body) - 1)) for c in (0, 1)]
            marks.append(("NOSPLIT", (0, top), (-1, len(body) - 1)))
    menu = [
        ["Menu", "Options", "Note"],
        ["Addr", "001 – 512", "Start address"],
        ["Mode", "18CH", "DMX layout"],
    ]
    menu += [["Disp", "On / Off", "Display stays lit"], ["Pan Inv", "Yes / No", "Reverses pan"]]
    faults = [["Message", "Cause", "What to do"], ["PAN ERR", "Pan sensor not found", "Call the service"]]
    faults += [
        ["TEMP HI", "Air inlet blocked", "Clean the filters"],
        ["FAN 2", "Fan stands still", "Call the service"],
    ]
    parts: list[Any] = [
        Paragraph("3. Operation", sheet["Heading1"]),
        Paragraph("3.1 Display menu", sheet["Heading2"]),
        Table(menu, [90, 120, 200], style=rule),
        Spacer(1, 12),
        Paragraph(
            "The start address can be any number from 1 to 495. Keep people out of reach of the head.",
            sheet["BodyText"],
        ),
        PageBreak(),
        Paragraph("3.2 DMX protocol – 18-channel mode", sheet["Heading2"]),
        LongTable(body, [50, 110, 70, 240], style=marks, repeatRows=1),
        PageBreak(),
        Paragraph("4. Error messages", sheet["Heading1"]),
        Table(faults, [90, 160, 160], style=rule),
    ]
    kept = io.BytesIO()
    SimpleDocTemplate(kept, pagesize=A4, title="Wren S18 user manual", invariant=1).build(parts)
    mode = k.mode(
        SPOT,
        "3.2 DMX protocol – 18-channel mode",
        "18-channel mode",
        "18-channel",
        "DMX protocol – 18-channel mode",
        "DMX protocol",
    )
    return k.made("Brindlewick", "Wren S18", [mode], kept.getvalue())


WASH = (
    P(("pan",), "Pan", fine=("Pan fine",), text="0 - 540 deg", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0 - 230 deg", spans=(span(0, 230, "deg"),)),
    P(("movement-speed",), "P/T speed", text="max to min speed"),
    k.level("dimmer", "Master dimmer", "0 - 100%", also=("intensity-master",)),
    P(
        ("shutter", "strobe"),
        "Strobe",
        ranges=(
            k.closed(0, 15, "Closed"),
            k.flash(16, 131, "Strobe 1 - 20 Hz", (1, 20)),
            k.chance(132, 239, "Random strobe slow to fast"),
            k.opened(240, 255, "Open"),
        ),
    ),
    k.level("red", "Red", "0 - 100%"),
    k.level("green", "Green", "0 - 100%"),
    k.level("blue", "Blue", "0 - 100%"),
    k.level("white", "White", "0 - 100%"),
    P(
        ("color-macro", "color-preset", "virtual-color-wheel"),
        "Color macros",
        ranges=(
            k.nothing(0, 7, "No macro"),
            *k.steps(8, 31, "Amber", "Rose", "Lavender", "Mint", "Turquoise", "Sky", "Peach", "Straw"),
        ),
    ),
    P(("color-macro-speed", "macro-speed"), "Macro speed", text="slow to fast"),
    P(("zoom",), "Zoom", text="10 - 60 deg", spans=(span(10, 60, "deg"),)),
    P(
        ("macro", "effect"),
        "Auto program",
        ranges=(
            k.nothing(0, 9, "Off"),
            *(k.runs(10 + 41 * n, 50 + 41 * n, f"Program {n + 1}") for n in range(5)),
            k.runs(215, 255, "Sound mode"),
        ),
    ),
    P(("control",), "Control", ranges=(k.nothing(0, 229), k.reset(230, 255, "Reset"))),
)
WASH_PLANS = (
    "1 2 - 3 4 5 6 7 8 - - - - -",
    "1/2 3/4 5 6 7 8 9 10 11 - - 12 - -",
    "1/2 3/4 5 6 7 8 9 10 11 12 13 14 15 16",
)


@chart("fresh-wash", "modes side by side before the function", "pdf", "en", "Ostelane", "Tansy 7")
def wash(seed: int) -> Made:
    import datetime

    from fpdf import FPDF
    from fpdf.fonts import FontFace

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 15)
    pdf.cell(text="DMX channel assignment", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=9)
    pdf.multi_cell(
        0,
        5,
        "Select the mode in the menu under SETUP > MODE. The factory mode is Mode 3.",
        new_x="LMARGIN",
        new_y="NEXT",
    )
    pdf.ln(3)
    bold = FontFace(emphasis="BOLD", fill_color=(215, 225, 235))
    heads = ["Mode 1\n8CH", "Mode 2\n12CH", "Mode 3\n16CH", "Function", "DMX value", "Description"]
    with pdf.table(col_widths=(9, 9, 9, 22, 17, 34), headings_style=bold, line_height=5) as table:
        row = table.row()
        for head in heads:
            row.cell(head, align="C")
        for side in k.sides(WASH, *WASH_PLANS):
            count = len(side.rows)
            for n, (lo, hi, text) in enumerate(side.rows):
                row = table.row()
                if n == 0:
                    for slot in side.slots:
                        row.cell("-" if slot is None else str(slot), align="C", rowspan=count)
                    row.cell(side.name, rowspan=count)
                row.cell(k.dash(lo, hi).replace("–", "-"), align="C")
                row.cell(text)
    names = (("Mode 1", "8CH"), ("Mode 2", "12CH"), ("Mode 3", "16CH"))
    modes = [
        k.mode(k.seat(WASH, plan), f"{n} {c}", n, c, f"{n} ({c})")
        for (n, c), plan in zip(names, WASH_PLANS, strict=True)
    ]
    return k.made("Ostelane", "Tansy 7", modes, bytes(pdf.output()))
