"""Charts with something hard: footnotes, smoothing that is held, an overlap, a slot of two meanings."""

from __future__ import annotations

import datetime
import io
from html import escape
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

HELD = {"hold_s": 3, "kept": "until power off"}
NOTED = (
    P(("pan",), "Pan", (1, 2), ("Pan fine",), "0-540 deg", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fine",), "0-265 deg", (span(0, 265, "deg"),)),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (5,),
        ranges=(k.closed(0, 15), k.flash(16, 239, "Strobe slow-fast"), k.opened(240, 255)),
    ),
    P(("dimmer",), "Dimmer", (6, 7), ("Dimmer fine",), "0-100 %", k.LEVEL),
    P(("zoom",), "Zoom", (8,), text="Wide to narrow"),
    P(
        ("control",),
        "Control",
        (9,),
        ranges=(
            k.nothing(0, 9),
            R(10, 19, "Dimmer curve linear (1)", sets=("dimmer-curve", "linear", "linear"), **HELD),  # type: ignore[arg-type]
            R(20, 29, "Dimmer curve square law (1)", sets=("dimmer-curve", "square", "square law"), **HELD),  # type: ignore[arg-type]
            R(30, 39, "Smoothing off (1)", sets=("smoothing", "off", "off"), **HELD),  # type: ignore[arg-type]
            R(40, 49, "Smoothing on (1)", sets=("smoothing", "on", "on"), **HELD),  # type: ignore[arg-type]
            k.nothing(50, 199),
            R(200, 209, "Reset (2)", hazard="reset", hold_s=5, needs=(("shutter", 0, 15),)),
            k.nothing(210, 255),
        ),
    ),
)


@chart("fresh-notes", "fixed-width text, footnotes", "txt", "en", "Ashlock", "Dunlin 90", 15)
def notes(seed: int) -> Made:
    text = ["DUNLIN 90 - DMX CHANNELS", "", f"{'CH':<5}{'NAME':<16}{'VALUE':<12}FUNCTION", "-" * 60]
    for line in k.lines(NOTED):
        for n, (lo, hi, said) in enumerate(line.rows):
            head = f"{line.slot:<5}{line.name:<16}" if n == 0 else " " * 21
            text.append(f"{head}{k.hyphen(lo, hi):<12}{said}".rstrip())
    text += ["-" * 60, "(1) Hold the value for 3 seconds. Kept until power off."]
    text += ["(2) Hold the value for 5 seconds while channel 5 is at 0-15.", ""]
    return k.made("Ashlock", "Dunlin 90", [k.mode(NOTED)], "\n".join(text))


def as_menu(lo: int, hi: int, text: str, kind: str) -> R:
    return k.optional(R(lo, hi, text, "as-menu"), sets=(kind,))


FRESNEL = (
    P(("dimmer",), "Dimmer", (1, 2), ("Dimmer fein",), "0 bis 100 %", k.LEVEL, default=0, fine_default=0),
    P(
        ("color-temperature",),
        "Farbtemperatur",
        (3,),
        text="2700 K bis 6500 K",
        spans=(span(2700, 6500, "K"),),
        default=128,
    ),
    P(("tint", "green-correction"), "Grün/Magenta", (4,), text="Minusgrün bis Plusgrün", default=128),
    P(("zoom",), "Zoom", (5,), text="15° bis 50°", spans=(span(15, 50, "deg"),), default=0),
    P(
        ("strobe", "shutter"),
        "Stroboskop",
        (6,),
        ranges=(k.out(0, 9, "Aus"), k.flash(10, 255, "1 Hz bis 20 Hz", (1, 20))),
        default=0,
    ),
    P(
        ("dimmer-curve",),
        "Dimmerkurve",
        (7,),
        ranges=(
            as_menu(0, 63, "Wie im Menü eingestellt", "dimmer-curve"),
            R(64, 127, "Linear", sets=("dimmer-curve", "linear", "Linear")),
            R(128, 191, "Quadratisch", sets=("dimmer-curve", "square", "Quadratisch")),
            R(192, 255, "S-Kurve", sets=("dimmer-curve", "s", "S-Kurve")),
        ),
        default=0,
    ),
    P(
        ("smoothing",),
        "Glättung",
        (8,),
        ranges=(
            as_menu(0, 63, "Wie im Menü eingestellt", "smoothing"),
            R(64, 127, "Keine Glättung", sets=("smoothing", "none", "Keine Glättung")),
            R(128, 191, "Kurze Glättung", sets=("smoothing", "short", "Kurze Glättung")),
            R(192, 255, "Lange Glättung", sets=("smoothing", "long", "Lange Glättung")),
        ),
        default=0,
    ),
    P(
        ("control",),
        "Steuerung",
        (9,),
        ranges=(
            k.nothing(0, 9, "Keine Funktion"),
            R(
                10,
                19,
                "Lüfter automatisch (3 s halten)",
                sets=("fan", "auto", "Lüfter automatisch"),
                hold_s=3,
            ),
            R(20, 29, "Lüfter leise (3 s halten)", sets=("fan", "quiet", "Lüfter leise"), hold_s=3),
            k.nothing(30, 249, "Keine Funktion"),
            k.reset(250, 255, "Reset (5 s halten)", 5),
        ),
        default=0,
    ),
)


@chart("fresh-fresnel", "a default a slot, holds in brackets", "pdf", "de", "Immenrode", "Kiebitz F1")
def fresnel(seed: int) -> Made:
    from reportlab.lib.pagesizes import A4
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import Paragraph, SimpleDocTemplate, Table

    sheet = getSampleStyleSheet()
    body: list[Any] = [["Kanal", "Funktion", "DMX-Wert", "Beschreibung", "Standard"]]
    marks: list[Any] = [
        ("GRID", (0, 0), (-1, -1), 0.5, "#555555"),
        ("BACKGROUND", (0, 0), (-1, 0), "#dddddd"),
    ]
    for line in k.lines(FRESNEL):
        top = len(body)
        default = line.p.fine_default if line.byte else line.p.default
        for n, (lo, hi, text) in enumerate(line.rows):
            first = [line.slot, line.name] if n == 0 else ["", ""]
            body.append([*first, k.dash(lo, hi), text, default if n == 0 else ""])
        if len(line.rows) > 1:
            marks += [("SPAN", (c, top), (c, len(body) - 1)) for c in (0, 1, 4)]
    marks.append(("VALIGN", (0, 0), (-1, -1), "TOP"))
    parts: list[Any] = [
        Paragraph("7 DMX-Protokoll", sheet["Heading1"]),
        Paragraph("Der Scheinwerfer belegt neun Kanäle.", sheet["BodyText"]),
        Table(body, [40, 100, 70, 190, 60], style=marks),
    ]
    kept = io.BytesIO()
    SimpleDocTemplate(kept, pagesize=A4, title="Kiebitz F1", invariant=1).build(parts)
    return k.made("Immenrode", "Kiebitz F1", [k.mode(FRESNEL)], kept.getvalue())


TORN = (
    k.level("dimmer", "Dimmer", "0-100%"),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.flash(1, 255, "Slow to fast"),),
        doubt="must",
        why="nothing is said of 0",
    ),
    k.level("red", "Red", "0-100%"),
    k.level("green", "Green", "0-100%"),
    k.level("blue", "Blue", "0-100%"),
    k.level("warm-white", "Warm white", "0-100%"),
    P(
        ("macro", "effect"),
        "Program",
        ranges=(k.nothing(0, 9), k.runs(10, 90, "Fade"), k.runs(90, 170, "Jump"), k.runs(171, 255, "Sound")),
        doubt="must",
        why="90 belongs to two ranges",
    ),
    P(("macro-speed", "effect-speed"), "Program speed", text="Slow to fast"),
)
TORN_SEATS = k.seat(TORN, "1 2 3 4 5 6 7 8")


@chart("fresh-torn", "slot, function, value, description", "pdf", "en", "Fernholt", "Pipit 7", 9)
def torn(seed: int) -> Made:
    from fpdf import FPDF

    pdf = FPDF()
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Helvetica", "B", 13)
    pdf.cell(text="8 Channel mode", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Helvetica", size=10)
    with pdf.table(col_widths=(12, 28, 22, 40), width=120, align="L") as table:
        table.row(["Ch", "Function", "Value", "Description"])
        for line in k.lines(TORN_SEATS):
            for n, (lo, hi, text) in enumerate(line.rows):
                row = table.row()
                if n == 0:
                    row.cell(f"CH{line.slot}", rowspan=len(line.rows))
                    row.cell(line.name, rowspan=len(line.rows))
                row.cell(k.hyphen(lo, hi))
                row.cell(text)
    return k.made(
        "Fernholt", "Pipit 7", [k.mode(TORN_SEATS, "8 Channel mode", "8 Channel")], bytes(pdf.output())
    )


INDEXED = ({"parameter": "gobo-mode", "from": 0, "to": 127},)
TURNING = ({"parameter": "gobo-mode", "from": 128, "to": 255},)
SHARED = (
    P(("dimmer",), "Dimmer", (1,), text="0-100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (2,),
        ranges=(k.closed(0, 31), k.opened(32, 95), k.flash(96, 255, "Strobe slow to fast")),
    ),
    P(("focus",), "Focus", (3,), text="Near to far"),
    P(
        ("rotating-gobo-wheel", "gobo-wheel"),
        "Gobo wheel",
        (4,),
        ranges=(k.opened(0, 31), *k.steps(32, 32, *(f"Gobo {n}" for n in range(1, 8)))),
    ),
    P(
        ("gobo-wheel-mode",),
        "Gobo mode",
        (5,),
        ranges=(
            k.optional(R(0, 127, "Index"), does=("index",)),
            k.optional(R(128, 255, "Rotation"), does=("rotate",)),
        ),
        key="gobo-mode",
    ),
    P(
        ("gobo-index",),
        "Gobo index (channel 5 at 0-127)",
        (6,),
        text="0-360°",
        spans=(span(0, 360, "deg"),),
        when=INDEXED,
        key="gobo-index",
    ),
    P(
        ("gobo-rotation",),
        "Gobo rotation (channel 5 at 128-255)",
        (6,),
        ranges=(
            k.spin(0, 126, "Clockwise, fast to slow"),
            k.stop(127, 128),
            k.spin(129, 255, "Counterclockwise, slow to fast"),
        ),
        when=TURNING,
        key="gobo-rotation",
    ),
    P(("prism",), "Prism", (7,), ranges=(k.out(0, 127, "Out"), R(128, 255, "In"))),
)


@chart("fresh-shared", "a slot of two meanings", "html", "en", "Wexcombe", "Siskin G")
def shared(seed: int) -> Made:
    page = [
        "<html><head><title>Siskin G</title></head><body><h1>Siskin G</h1><h2>DMX channels</h2>",
        "<table border='1'>",
    ]
    page.append("<tr><th>Channel</th><th>Function</th><th>Value</th><th>Description</th></tr>")
    for line in k.lines(SHARED):
        merged = f"<td rowspan='{len(line.rows)}'>"
        for n, (lo, hi, text) in enumerate(line.rows):
            head = f"{merged}{line.slot}</td>{merged}{line.name}</td>" if n == 0 else ""
            page.append(f"<tr>{head}<td>{k.hyphen(lo, hi)}</td><td>{escape(text)}</td></tr>")
    return k.made("Wexcombe", "Siskin G", [k.mode(SHARED)], "\n".join([*page, "</table></body></html>"]))
