"""Moving heads in PDFs: a spot over several pages, a wash with a table a slot, a beam without rules."""

from __future__ import annotations

import io
from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

SPOT = (
    P(("pan",), "Pan", fine=("Pan fine",), text="0° to 540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0° to 265°", spans=(span(0, 265, "deg"),)),
    P(("movement-speed",), "Pan/tilt speed", text="Fast to slow"),
    P(
        ("control",),
        "Special functions",
        ranges=(
            k.nothing(0, 49, "Unused"),
            R(50, 59, "Blackout while head moves", sets=("blackout-on-move", "on", "Blackout")),
            R(60, 69, "No blackout while head moves", sets=("blackout-on-move", "off", "No blackout")),
            R(70, 79, "Fans quiet", sets=("fan", "quiet", "quiet")),
            R(80, 89, "Fans automatic", sets=("fan", "automatic", "automatic")),
            k.nothing(90, 139, "Unused"),
            k.reset(140, 149, "Pan/tilt reset, hold 3 s", 3),
            k.reset(150, 159, "Full reset, hold 3 s", 3),
            k.nothing(160, 255, "Unused"),
        ),
    ),
    P(
        ("color-wheel",),
        "Color wheel",
        ranges=(
            k.opened(0, 13, "Open"),
            *k.steps(14, 14, "Red", "Amber", "Yellow", "Green", "Cyan", "Blue", "Magenta", "CTO"),
            k.index(126, 189, "Indexed position", "color-wheel"),
            k.rainbow(190, 221, "Forward rotation, fast to slow"),
            k.stop(222, 223, "Stop"),
            k.rainbow(224, 255, "Backward rotation, slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Fixed gobo wheel",
        ranges=(
            k.opened(0, 9, "Open"),
            *k.steps(10, 10, *(f"Gobo {n}" for n in range(1, 9))),
            *(k.shake(90 + 14 * n, 103 + 14 * n, f"Gobo {n + 1} shake, slow to fast") for n in range(8)),
            k.spin(202, 227, "Forward rotation, fast to slow", "gobo-wheel"),
            k.spin(228, 255, "Backward rotation, slow to fast", "gobo-wheel"),
        ),
    ),
    P(
        ("rotating-gobo-wheel", "gobo-wheel"),
        "Rotating gobo wheel",
        ranges=(k.opened(0, 15, "Open"), *k.steps(16, 40, *(f"Rotating gobo {n}" for n in range(1, 7)))),
    ),
    P(
        ("gobo-index-rotation", "gobo-rotation"),
        "Gobo rotation",
        fine=("Gobo rotation fine",),
        ranges=(
            k.index(0, 127, "Indexing", "gobo"),
            k.spin(128, 189, "Forward rotation, fast to slow", "gobo"),
            k.stop(190, 193, "Stop"),
            k.spin(194, 255, "Backward rotation, slow to fast", "gobo"),
        ),
    ),
    P(("prism",), "Prism", ranges=(k.out(0, 19, "Out"), R(20, 255, "4-facet prism"))),
    P(
        ("prism-rotation",),
        "Prism rotation",
        ranges=(
            k.stop(0, 9, "Stop"),
            k.spin(10, 132, "Forward, slow to fast"),
            k.spin(133, 255, "Backward, slow to fast"),
        ),
    ),
    P(("frost",), "Frost", text="0% to 100%", spans=k.LEVEL),
    P(("iris",), "Iris", text="Open to closed"),
    P(("zoom",), "Zoom", fine=("Zoom fine",), text="Narrow to wide"),
    P(("focus",), "Focus", fine=("Focus fine",), text="Near to far"),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(
            k.closed(0, 31, "Closed"),
            k.opened(32, 63, "Open"),
            k.flash(64, 127, "Strobe, slow to fast"),
            k.pulse(128, 191, "Pulse, slow to fast"),
            k.chance(192, 223, "Random strobe, slow to fast"),
            k.opened(224, 255, "Open"),
        ),
    ),
    P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0% to 100%", spans=k.LEVEL),
)
SPOT_PLANS = (
    ("Basic", "1/2 3/4 5 6 7 8 9 10 11 - - - 12 13 14 15"),
    ("Extended", "1/2 3/4 5 6 7 8 9 10/11 12 13 14 15 16/17 18/19 20 21/22"),
)


@chart("fifth-spot", "two slot columns first, several pages", "pdf", "en", "Veldray Automation", "V4 Spot")
def spot(seed: int) -> Made:
    pdf = f.book("dejavu", "V4 Spot user manual", "Veldray Automation  |")
    pdf.say("Appendix A  DMX protocol", 14, True)
    pdf.say("Basic has 15 channels, Extended 22. A dash: the mode lacks the function.")
    rows = [[*(name for name, _ in SPOT_PLANS), "Function", "DMX", "Meaning"]]
    plans = [plan for _, plan in SPOT_PLANS]
    rows += f.beside(SPOT, plans, "slots name value text", lambda lo, hi: f"{lo} – {hi}", "–")
    pdf.grid(rows, (18, 22, 44, 28, 64), range(3), v_align="TOP")
    pdf.say("Appendix B  Error codes", 14, True)
    codes = [["Code", "Cause"], ["E01", "Pan sensor"], ["E02", "Tilt sensor"], ["E07", "Zoom motor"]]
    pdf.grid(codes, (30, 80))
    modes = [f.named(k.seat(SPOT, plan), name) for name, plan in SPOT_PLANS]
    return k.made("Veldray Automation", "V4 Spot", modes, bytes(pdf.output()))


WASH = (
    P(("pan",), "Pan", (1, 2), ("Pan fino",), "0° a 630°", (span(0, 630, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fino",), "0° a 220°", (span(0, 220, "deg"),)),
    P(("movement-speed",), "Velocidad Pan/Tilt", (5,), text="Rápido a lento"),
    P(("dimmer", "intensity-master"), "Dimmer general", (6,), text="0 a 100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturador",
        (7,),
        ranges=(
            k.closed(0, 9, "Cerrado"),
            k.flash(10, 119, "Estrobo, lento a rápido"),
            k.chance(120, 229, "Estrobo aleatorio, lento a rápido"),
            k.opened(230, 255, "Abierto"),
        ),
    ),
    *(
        P((word,), name, (at,), text="0 a 100 %", spans=k.LEVEL)
        for at, word, name in ((8, "red", "Rojo"), (9, "green", "Verde"), (10, "blue", "Azul"))
    ),
    P(("white",), "Blanco", (11,), text="0 a 100 %", spans=k.LEVEL),
    P(("zoom",), "Zoom", (12,), text="8° a 50°", spans=(span(8, 50, "deg"),)),
    P(
        ("macro", "color-macro", "effect"),
        "Programas automáticos",
        (13,),
        ranges=(
            k.nothing(0, 19, "Sin función"),
            *(k.runs(20 + 40 * n, 59 + 40 * n, f"Programa {n + 1}") for n in range(5)),
            k.maybe_runs(220, 255, "Activado por sonido"),
        ),
    ),
    P(
        ("macro-speed", "effect-speed", "color-macro-speed"),
        "Velocidad de programas",
        (14,),
        text="Lento a rápido",
    ),
    P(
        ("reset", "control"),
        "Reinicio",
        (15,),
        ranges=(k.nothing(0, 249, "Sin función"), k.reset(250, 255, "Reinicio, mantener 5 s", 5)),
    ),
)


@chart("fifth-lavado", "a heading and a small table a slot", "pdf", "es", "Iluminación Cardeña", "Lava 19Z")
def lavado(seed: int) -> Made:
    parts: list[Any] = [
        f.say("Canales DMX", 16, "Helvetica-Bold", 8),
        f.say("El Lava 19Z ocupa 15 canales. La dirección inicial se ajusta en el menú DIR (001 a 498)."),
    ]
    for line in k.lines(WASH):
        rows = [["Valor", "Función"]]
        rows += [[f"{lo} - {hi}", "Ajuste fino" if line.byte else text] for lo, hi, text in line.rows]
        box = [("GRID", (0, 0), (-1, -1), 0.4, "#404040"), ("BACKGROUND", (0, 0), (-1, 0), "#f0dca8")]
        parts += [
            f.say(f"Canal {line.slot}: {line.name}", 10.5, "Helvetica-Bold"),
            f.grid(rows, [70, 220], *box),
        ]
    parts.append(f.say("Iluminación Cardeña se reserva el derecho de cambiar este manual sin aviso.", 7.5))
    data = f.flow(parts, "Manual Lava 19Z", head="Iluminación Cardeña")
    return k.made("Iluminación Cardeña", "Lava 19Z", [k.mode(WASH)], data)


BEAM = (
    P(("pan",), "X axis", (1, 2), ("X axis fine tuning",), "0-540 degree", (span(0, 540, "deg"),)),
    P(("tilt",), "Y axis", (3, 4), ("Y axis fine tuning",), "0-270 degree", (span(0, 270, "deg"),)),
    P(("movement-speed",), "XY speed", (5,), text="From fast to slow"),
    P(("dimmer",), "Dimming", (6,), text="0-100% dimming", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobe",
        (7,),
        ranges=(
            k.closed(0, 3, "Light off"),
            k.flash(4, 127, "Strobe from slow to fast"),
            k.chance(128, 251, "Random strobe from slow to fast"),
            k.opened(252, 255, "Light on"),
        ),
    ),
    P(
        ("color-wheel",),
        "Color disk",
        (8,),
        ranges=(
            k.opened(0, 8, "White light"),
            *k.steps(9, 9, "Red", "Orange", "Aquamarine", "Green", "Light green", "Lavender", "Pink"),
            *k.steps(72, 9, "Light yellow", "Magenta", "Blue", "CTO", "CTB", "Purple", last=127),
            k.rainbow(128, 191, "Forward flowing water from fast to slow"),
            k.rainbow(192, 255, "Reverse flowing water from slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Pattern disk (gobo)",
        (9,),
        ranges=(
            k.opened(0, 7, "White light"),
            *k.steps(8, 8, *(f"Pattern {n}" for n in range(1, 13))),
            *(k.shake(104 + 12 * n, 115 + 12 * n, f"Pattern {n + 1} shake") for n in range(6)),
            k.spin(176, 215, "Forward rotation from fast to slow", "gobo-wheel"),
            k.spin(216, 255, "Reverse rotation from slow to fast", "gobo-wheel"),
        ),
    ),
    P(("prism",), "Prism", (10,), ranges=(k.out(0, 127, "No prism"), R(128, 255, "8 facet prism"))),
    P(
        ("prism-rotation",),
        "Prism rotation",
        (11,),
        ranges=(
            k.index(0, 127, "Prism angle", "prism"),
            k.spin(128, 190, "Forward rotation from fast to slow"),
            k.stop(191, 192, "Stop"),
            k.spin(193, 255, "Reverse rotation from slow to fast"),
        ),
    ),
    P(("focus",), "Focusing", (12,), text="From far to near"),
    P(("frost",), "Frost", (13,), ranges=(k.out(0, 127, "No frost"), R(128, 255, "Frost"))),
    P(
        ("lamp-control", "control"),
        "Lamp",
        (14,),
        ranges=(
            k.nothing(0, 99, "No function"),
            R(100, 105, "Lamp off (keep 5 seconds)", hazard="lamp off", hold_s=5),
            k.nothing(106, 199, "No function"),
            R(200, 205, "Lamp on (keep 5 seconds)", hazard="lamp on", hold_s=5),
            k.nothing(206, 255, "No function"),
        ),
    ),
    P(
        ("reset", "control"),
        "Reset",
        (15,),
        ranges=(k.nothing(0, 249), k.reset(250, 255, "Reset (keep 5 seconds)", 5)),
    ),
)


@chart("fifth-beam", "columns without rules, translated English", "pdf", "en", "Jinglanhe Stage", "JL-B260")
def beam(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(595, 842), invariant=1)
    y = 0

    def put(cells: tuple[str, ...], bold: bool = False) -> None:
        nonlocal y
        page.setFont("Times-Bold" if bold else "Times-Roman", 10)
        for x, text in zip((56, 104, 220, 296), cells, strict=False):
            page.drawString(x, y, text)
        y -= 15

    def turn() -> None:
        nonlocal y
        page.setFont("Times-Roman", 8)
        page.drawString(56, 800, "JL-B260 Beam Moving Head Light Instruction Manual")
        page.drawCentredString(298, 30, f"-{page.getPageNumber()}-")
        y = 770
        put(("CH", "Function", "Value", "Explanation"), True)

    y = 800
    turn()
    page.setFont("Times-Bold", 13)
    page.drawString(220, 786, "15 Channel Table")
    for line in k.lines(BEAM):
        if y - 15 * len(line.rows) < 50:
            page.showPage()
            turn()
        for n, (lo, hi, text) in enumerate(line.rows):
            put(("" if n else str(line.slot), "" if n else line.name, k.zeros(lo, hi), text))
    page.save()
    mode = k.mode(BEAM, "15 Channel Table", "15 Channel", "15 Channels")
    return k.made("Jinglanhe Stage", "JL-B260", [mode], kept.getvalue())
