"""Last pages: dot leaders, four slots in a row, numbered notes, and defaults behind mode columns."""

from __future__ import annotations

import io
from typing import Any

from intake.corpus.aside.fourth_kit import head, paper, table, vary
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

BULB = (
    P(("dimmer",), "Dimmer", (1,), text="0-100%", spans=k.LEVEL),
    P(("color-temperature",), "Color temperature", (2,), text="2200-6500 K", spans=(span(2200, 6500, "K"),)),
    P(("hue",), "Hue", (3,), text="0-360 degrees", spans=(span(0, 360, "deg"),)),
    P(("saturation",), "Saturation", (4,), text="0-100%", spans=k.LEVEL),
    P(
        ("effect", "macro"),
        "Effect",
        (5,),
        ranges=(
            k.nothing(0, 20, "No effect"),
            k.runs(21, 60, "Candle"),
            k.runs(61, 100, "Bad bulb"),
            k.runs(101, 140, "Television"),
            k.runs(141, 180, "Welding"),
            k.runs(181, 220, "Police"),
            k.runs(221, 255, "Party"),
        ),
    ),
    P(("effect-speed", "macro-speed"), "Effect speed", (6,), text="Slow to fast"),
)


@chart(
    "fourth-bulb", "dot leaders, a line a value under the slot", "pdf", "en", "Gaslamp Yard", "Goldcrest A60"
)
def bulb(seed: int) -> Made:
    params = vary(BULB, seed)
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(420, 595), invariant=1)
    page.setFont("Helvetica-Bold", 12)
    page.drawString(40, 550, "DMX slots (via the wireless base)")
    page.setFont("Helvetica", 8)
    page.drawString(40, 536, "Do not use the bulb in closed lanterns or with phase dimmers.")
    y = 512
    for line in k.lines(params):
        page.setFont("Helvetica-Bold", 9)
        page.drawString(40, y, f"{line.slot}  {line.name}")
        page.setFont("Helvetica", 9)
        for lo, hi, text in line.rows:
            y -= 13
            value = k.hyphen(lo, hi)
            page.drawString(60, y, f"{value} {'.' * (30 - 2 * len(value))} {text}")
        y -= 18
    page.showPage()
    page.save()
    return k.made("Gaslamp Yard", "Goldcrest A60", [k.mode(params)], kept.getvalue())


def _cells(count: int) -> tuple[P, ...]:
    colors = (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("white", "White"))
    return tuple(
        P((word,), name, (4 * cell + n,), text="0-100%", spans=k.LEVEL)
        for cell in range(count)
        for n, (word, name) in enumerate(colors, 1)
    )


@chart(
    "fourth-cells", "four slots in a row, their colors listed", "pdf", "en", "Thistlewick", "Redpoll Bar 6"
)
def cells(seed: int) -> Made:
    modes = []
    parts: list[Any] = [head("DMX modes")]
    for count, title in ((1, "Mode 4CH"), (2, "Mode 8CH (halves)"), (6, "Mode 24CH (all cells)")):
        rows: list[list[object]] = [["Channels", "Section", "Colors in order", "Value"]]
        for cell in range(count):
            where = "Whole bar" if count == 1 else f"{'Half' if count == 2 else 'Cell'} {cell + 1}"
            rows.append(
                [f"{4 * cell + 1}-{4 * cell + 4}", where, "Red, Green, Blue, White", "0-255 = 0-100%"]
            )
        parts += [head(title, 3), table(rows, [60, 80, 150, 100])]
        modes.append(k.mode(_cells(count), title, title.removeprefix("Mode "), title.split()[1]))
    return k.made("Thistlewick", "Redpoll Bar 6", modes, paper(parts, "Redpoll Bar 6 instructions"))


HAZE = (
    P(("haze-output", "fog-output"), "Haze output 1)", (1,), text="0-100%", spans=k.LEVEL),
    P(("fan",), "Fan speed 2)", (2,), text="Min to max"),
    P(
        ("output-interval", "macro"),
        "Timer interval",
        (3,),
        ranges=(
            k.nothing(0, 9, "Timer off"),
            R(10, 255, "10 s to 300 s", span=span(10, 300, "s")),
        ),
    ),
    P(("output-duration",), "Timer duration", (4,), text="5 s to 60 s", spans=(span(5, 60, "s"),)),
)


@chart("fourth-haze", "numbered notes behind names, notes below", "pdf", "en", "Fenmarket", "Bittern MkII")
def haze(seed: int) -> Made:
    params = vary(HAZE, seed)
    rows: list[list[object]] = [["DMX channel", "Control", "DMX value", "Setting"]]
    for line in k.lines(params):
        for n, (lo, hi, text) in enumerate(line.rows):
            rows.append(["" if n else line.slot, "" if n else line.name, k.zeros(lo, hi), text])
    parts = [
        head("Operation by DMX"),
        table(
            [["Display", "Meaning"], ["HEAT", "Warming up"], ["REDY", "Ready"], ["EMTY", "No fluid"]],
            [70, 120],
        ),
        head("Channel assignment", 3),
        table(rows, [70, 110, 70, 140]),
        head("1) There is no output until the heater is ready, about 4 minutes after power on.", 0),
        head("2) The fan runs on for 60 seconds after output has ended.", 0),
        head("The nozzle is hot: keep a distance of 1 m, and water-based fluid only.", 0),
    ]
    return k.made(
        "Fenmarket", "Bittern MkII", [k.mode(params)], paper(parts, "Bittern MkII operating manual")
    )


KOPF = (
    P(
        ("pan",),
        "Pan",
        fine=("Pan fein",),
        text="0° … 540°",
        spans=(span(0, 540, "deg"),),
        default=128,
        fine_default=0,
    ),
    P(
        ("tilt",),
        "Tilt",
        fine=("Tilt fein",),
        text="0° … 230°",
        spans=(span(0, 230, "deg"),),
        default=128,
        fine_default=0,
    ),
    P(("movement-speed",), "Pan-/Tilt-Geschwindigkeit", text="schnell … langsam", default=0),
    P(
        ("shutter", "strobe"),
        "Verschluss",
        ranges=(
            k.closed(0, 9, "geschlossen"),
            k.opened(10, 19, "offen"),
            k.flash(20, 129, "Strobe langsam … schnell"),
            k.pulse(130, 189, "Puls langsam … schnell"),
            k.chance(190, 245, "Zufallsstrobe"),
            k.opened(246, 255, "offen"),
        ),
        default=10,
    ),
    P(
        ("dimmer",),
        "Dimmer",
        fine=("Dimmer fein",),
        text="0 … 100 %",
        spans=k.LEVEL,
        default=0,
        fine_default=0,
    ),
    *(
        P((word,), name, text="0 … 100 %", spans=k.LEVEL, default=0)
        for word, name in (("red", "Rot"), ("green", "Grün"), ("blue", "Blau"), ("lime", "Lime"))
    ),
    P(
        ("color-temperature",),
        "Farbtemperatur",
        text="2700 K … 8000 K",
        spans=(span(2700, 8000, "K"),),
        default=96,
    ),
    P(("zoom",), "Zoom", text="eng … weit", default=128),
    P(
        ("barn-door-rotation", "beam-shaper-rotation"),
        "Torblendendrehung",
        text="-90° … +90°",
        spans=(span(-90, 90, "deg"),),
        default=128,
    ),
    P(
        ("control", "reset"),
        "Gerätesteuerung",
        ranges=(
            k.nothing(0, 99, "ohne Funktion"),
            R(100, 119, "Lüfter leise", sets=("fan", "quiet", "leise")),
            R(120, 139, "Lüfter automatisch", sets=("fan", "automatic", "automatisch")),
            k.nothing(140, 229, "ohne Funktion"),
            k.reset(230, 255, "Reset, 3 s halten", 3),
        ),
        default=0,
    ),
)
KOPF_PLANS = (("Kurz", "1 2 - 3 4 5 6 7 8 - 9 - 10"), ("Lang", "1/2 3/4 5 6 7/8 9 10 11 12 13 14 15 16"))


@chart(
    "fourth-kopf",
    "mode columns first, default last, ellipses",
    "pdf",
    "de",
    "Ahrenshoop Licht",
    "Rauchschwalbe 9",
)
def kopf(seed: int) -> Made:
    params = vary(KOPF, seed)
    rows: list[list[object]] = [
        [*(name for name, _ in KOPF_PLANS), "Funktion", "DMX-Wert", "Beschreibung", "Default"]
    ]
    defaults: dict[str, object] = {p.label: p.default for p in params}
    for side in k.sides(params, *(plan for _, plan in KOPF_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            first = ["" if s is None else s for s in side.slots] if n == 0 else ["", ""]
            value = f"{lo} … {hi}"
            last = "" if n else defaults.get(side.name, 0)
            rows.append([*first, "" if n else side.name, value, text, last])
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    from intake.corpus.writers.fonts import face

    pdfmetrics.registerFont(TTFont("stix", str(face("stix")[0])))
    marks = [("FONTNAME", (0, 0), (-1, -1), "stix"), ("LINEBELOW", (0, 0), (-1, 0), 1, "#000000")]
    data = paper(
        [head("DMX-Protokoll"), table(rows, [34, 34, 130, 66, 160, 48], *marks)],
        "Rauchschwalbe 9 - Handbuch",
    )
    modes = [k.mode(k.seat(params, plan), name) for name, plan in KOPF_PLANS]
    return k.made("Ahrenshoop Licht", "Rauchschwalbe 9", modes, data)


ELLIPSE = (
    P(("dimmer",), "Intensity", (1, 2), ("Intensity (fine)",), "0 to 100 percent", (span(0, 100, "%"),)),
    P(("red",), "Red", (3,), text="0 to 100 percent", spans=k.LEVEL),
    P(("green",), "Green", (4,), text="0 to 100 percent", spans=k.LEVEL),
    P(("blue",), "Blue", (5,), text="0 to 100 percent", spans=k.LEVEL),
    P(("lime", "mint"), "Lime", (6,), text="0 to 100 percent", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Strobe",
        (7,),
        ranges=(
            k.opened(0, 4, "LEDs on, no strobe"),
            k.flash(5, 129, "Even strobe, slow to fast"),
            k.chance(130, 250, "Random strobe, slow to fast"),
            k.opened(251, 255, "LEDs on, no strobe"),
        ),
    ),
    P(
        ("color-preset", "color-macro", "virtual-color-wheel", "swatch"),
        "Color presets",
        (8,),
        ranges=(
            k.nothing(0, 9, "Not used"),
            *k.steps(
                10, 30, "Tungsten", "Daylight", "Straw", "Steel", "Surprise pink", "Congo blue", "Primary red"
            ),
            k.optional(R(220, 255, "Color fade, slow to fast"), does=("runs",)),
        ),
    ),
    P(
        ("color-temperature",),
        "White point",
        (9,),
        text="2800 to 6500 kelvin",
        spans=(span(2800, 6500, "K"),),
    ),
    P(
        ("dimmer-curve", "dimmer-fade-time"),
        "Dimming curve",
        (10,),
        ranges=(
            k.optional(R(0, 127, "Linear"), sets=("dimmer-curve",)),
            k.optional(R(128, 255, "Tungsten-like"), sets=("dimmer-curve",)),
        ),
    ),
)


@chart(
    "fourth-ellipse",
    "ranges in words, rules between slots only",
    "pdf",
    "en",
    "Hollinsclough",
    "Reed Bunting LP",
)
def ellipse(seed: int) -> Made:
    params = vary(ELLIPSE, seed)
    import datetime

    from fpdf import FPDF

    pdf = FPDF(format="letter")
    pdf.set_creation_date(datetime.datetime(2026, 1, 2, tzinfo=datetime.UTC))
    pdf.add_page()
    pdf.set_font("Times", "B", 15)
    pdf.cell(text="Appendix B: DMX slots", new_x="LMARGIN", new_y="NEXT")
    pdf.set_font("Times", size=10)
    pdf.multi_cell(
        0, 5, "All attributes snap unless said otherwise. Set the start slot in the menu.", new_x="LMARGIN"
    )
    pdf.ln(8)
    for cell, width in (("Slot", 18), ("Attribute", 42), ("Level", 34), ("Result", 80)):
        pdf.cell(width, 6, cell, border="B")
    pdf.ln(7)
    for line in k.lines(params):
        for n, (lo, hi, text) in enumerate(line.rows):
            border = "B" if n == len(line.rows) - 1 else ""
            pdf.cell(18, 5.5, "" if n else str(line.slot), border=border)
            pdf.cell(42, 5.5, "" if n else line.name, border=border)
            pdf.cell(34, 5.5, f"{lo} to {hi}", border=border)
            pdf.cell(80, 5.5, text, border=border, new_x="LMARGIN", new_y="NEXT")
    return k.made("Hollinsclough", "Reed Bunting LP", [k.mode(params)], bytes(pdf.output()))


RAGGIO = (
    P(("pan",), "Movimento Pan", fine=("Movimento Pan fine",), text="0°–540°", spans=(span(0, 540, "deg"),)),
    P(
        ("tilt",),
        "Movimento Tilt",
        fine=("Movimento Tilt fine",),
        text="0°–270°",
        spans=(span(0, 270, "deg"),),
    ),
    P(("dimmer",), "Dimmer", text="0–100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobo",
        ranges=(
            k.closed(0, 15, "Otturatore chiuso"),
            k.flash(16, 239, "Strobo lento-veloce"),
            k.opened(240, 255, "Otturatore aperto"),
        ),
    ),
    P(
        ("color-wheel",),
        "Ruota colori",
        ranges=(
            k.opened(0, 15, "Bianco"),
            *k.steps(16, 16, "Rosso", "Arancio", "Giallo", "Verde", "Azzurro", "Viola", "Rosa"),
            k.rainbow(128, 255, "Rotazione continua lenta-veloce"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Ruota gobo",
        ranges=(
            k.opened(0, 15, "Aperto"),
            *k.steps(16, 20, *(f"Gobo {n}" for n in range(1, 7))),
            k.spin(136, 255, "Rotazione ruota lenta-veloce", "gobo-wheel"),
        ),
    ),
    P(("prism",), "Prisma", ranges=(k.out(0, 127, "Prisma escluso"), R(128, 255, "Prisma inserito"))),
    P(("focus",), "Fuoco", text="Vicino-lontano"),
    P(
        ("reset", "control"),
        "Reset",
        ranges=(k.nothing(0, 199, "Nessuna funzione"), k.reset(200, 255, "Reset motori")),
    ),
)
RAGGIO_PLANS = (("Modo ridotto", "1 2 3 4 5 6 - - 7"), ("Modo completo", "1/2 3/4 5 6 7 8 9 10 11"))


@chart(
    "fourth-raggio", "modes as bands of one table, from and to", "pdf", "it", "Chiarosole", "Balestruccio 100"
)
def raggio(seed: int) -> Made:
    params = vary(RAGGIO, seed)
    modes = [k.mode(k.seat(params, plan), name, name.removeprefix("Modo ")) for name, plan in RAGGIO_PLANS]
    rows: list[list[object]] = [["Canale", "Nome", "Da", "A", "Effetto"]]
    marks: list[Any] = []
    for mode in modes:
        at = len(rows)
        marks += [("SPAN", (0, at), (-1, at)), ("BACKGROUND", (0, at), (-1, at), "#cfe0f0")]
        rows.append([f"{mode.title} - {mode.footprint} canali", "", "", "", ""])
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append(["" if n else line.slot, "" if n else line.name, lo, hi, text])
    parts = [head("Funzioni DMX"), table(rows, [44, 120, 36, 36, 170], *marks)]
    return k.made("Chiarosole", "Balestruccio 100", modes, paper(parts, "Balestruccio 100 - manuale d'uso"))
