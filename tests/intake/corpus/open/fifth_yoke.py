"""A small moving head, a tilting bar, a laser and a follow spot in PDFs."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

MINI = (
    P(("pan",), "Pan", fine=("Pan fine",), text="Pan move 0-540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="Tilt move 0-180°", spans=(span(0, 180, "deg"),)),
    P(("movement-speed",), "Speed of Pan/Tilt", text="Fast to slow"),
    P(("dimmer",), "Dimmer", text="Dark to bright"),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 9, "No strobe"), k.flash(10, 255, "Strobe slow to fast")),
    ),
    P(
        ("color-wheel",),
        "Color",
        ranges=(
            k.opened(0, 15, "White"),
            *k.steps(16, 16, "Red", "Yellow", "Green", "Blue", "Orange", "Pink", "Light blue"),
            k.rainbow(128, 255, "Color rotate slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Gobo",
        ranges=(
            k.opened(0, 15, "Open"),
            *k.steps(16, 16, *(f"Gobo {n}" for n in range(1, 8))),
            k.spin(128, 255, "Gobo wheel rotate slow to fast", "gobo-wheel"),
        ),
    ),
    P(
        ("macro", "effect", "control"),
        "Auto",
        ranges=(
            k.nothing(0, 59),
            k.runs(60, 159, "Auto program"),
            k.maybe_runs(160, 255, "Sound program"),
        ),
    ),
    P(
        ("reset", "control"),
        "Reset",
        ranges=(k.nothing(0, 249), k.reset(250, 255, "Reset")),
    ),
)
MINI_PLANS = (("9CH", "1 2 3 4 5 6 7 8 9"), ("11CH", "1/2 3/4 5 6 7 8 9 10 11"))


@chart(
    "fifth-mini", "all values of a slot in one cell of lines", "pdf", "en", "Ningfaro Lighting", "Sprat 60"
)
def mini(seed: int) -> Made:
    pdf = f.book("dejavu", "", "Sprat 60 -")
    pdf.say("DMX channels", 14, True)
    pdf.say(
        "Hold MENU for 2 seconds, press UP until the display shows CHnd, press ENTER, choose 9CH or 11CH."
    )
    modes = []
    for name, plan in MINI_PLANS:
        mode = f.named(k.seat(MINI, plan), f"{name} mode", name)
        modes.append(mode)
        pdf.say(f"{name} mode", 11, True)
        rows = [["CH", "Function", "DMX value and meaning"]]
        for line in k.lines(mode.params):
            values = [f"{lo:03}-{hi:03}  {text or 'Fine'}" for lo, hi, text in line.rows]
            rows.append([str(line.slot), line.name, "\n".join(values)])
        pdf.grid(rows, (14, 44, 90), v_align="TOP")
    pdf.say("Keep 0.5 m free around the head. It moves at power on.", 8)
    return k.made("Ningfaro Lighting", "Sprat 60", modes, bytes(pdf.output()))


BAR = [
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0° – 190°", spans=(span(0, 190, "deg"),)),
    P(("tilt-speed", "movement-speed"), "Velocità tilt", text="Da veloce a lenta"),
    P(("dimmer", "intensity-master"), "Dimmer", text="0 – 100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Strobo",
        ranges=(
            k.closed(0, 7, "Chiuso"),
            k.opened(8, 15, "Aperto"),
            k.flash(16, 131, "Strobo da lento a veloce"),
            k.chance(132, 247, "Strobo casuale"),
            k.opened(248, 255, "Aperto"),
        ),
    ),
    P(("zoom",), "Zoom", text="Da stretto a largo"),
]
COLORS = (("red", "Rosso"), ("green", "Verde"), ("blue", "Blu"), ("white", "Bianco"))
ALL = [P((word,), name, text="0 – 100%", spans=k.LEVEL) for word, name in COLORS]
PLAY = [
    P(
        ("pixel-macro", "pixel-effect", "macro"),
        "Macro pixel",
        ranges=(
            k.nothing(0, 9, "Nessuna funzione"),
            *(k.runs(10 + 35 * n, 44 + 35 * n + n // 6, f"Macro {n + 1}") for n in range(7)),
        ),
    ),
    P(("pixel-macro-speed", "pixel-effect-speed", "macro-speed"), "Velocità macro", text="Da lenta a veloce"),
]
BAR_MODES = (
    ("Modo Base", [*BAR[:1], *BAR[2:4], *ALL], "1/2 3 4 5 6 7 8"),
    (
        "Modo Pixel",
        [*BAR, *ALL * 5, *PLAY],
        "1/2 3 4 5 6 " + " ".join(map(str, range(7, 29))),
    ),
)


@chart("fifth-barra", "zones merged beside the colors", "pdf", "it", "Officina Branzolo", "Barra 5T")
def barra(seed: int) -> Made:
    font = f.letter("serif")
    parts: list[Any] = [f.say("Protocollo DMX", 15, f"{font}-Bold", 8)]
    modes = []
    for title, params, plan in BAR_MODES:
        seated = k.seat(params, plan)
        last = max(slot for p in seated for slot in p.slots)
        mode = f.named(seated, title, f"({last} canali)")
        modes.append(k.mode(seated, mode.title, title, title.split()[1], *mode.names))
        rows = [["Canale", "Zona", "Funzione", "Valore", "Descrizione"]]
        for line in k.lines(seated):
            color = line.name in {name for _, name in COLORS}
            first = line.name == "Rosso"
            zone = "Tutte" if title == "Modo Base" else f"Zona {(line.slot - 3) // 4}"
            for n, (lo, hi, text) in enumerate(line.rows):
                where = (zone if first else "") if color else "–" if n == 0 else ""
                name = ("", "") if n else (str(line.slot), line.name)
                rows.append([name[0], where, name[1], f"{lo} – {hi}", text])
        marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.4, "#000000")]
        marks += [("VALIGN", (0, 1), (2, -1), "MIDDLE"), *f.merges(rows, (0, 1, 2))]
        table = f.grid(rows, [44, 54, 110, 70, 190], *marks, font=font, size=8)
        parts += [f.say(modes[-1].title, 11, f"{font}-Bold"), table]
    parts.append(f.say("La zona 1 è quella vicina al connettore di ingresso.", 8, font))
    data = f.flow(parts, "Barra 5T – manuale di istruzioni", head="Officina Branzolo")
    return k.made("Officina Branzolo", "Barra 5T", modes, data)


def _lasing(r: R) -> R:
    return k.optional(r, hazard=("laser",))


UNSURE = "a laser has few words in the vocabulary"
LASER = (
    P(
        ("control", "macro", "laser-output", "output-mode", "other"),
        "Working mode",
        (1,),
        ranges=(
            k.closed(0, 49, "Laser off"),
            _lasing(k.maybe_runs(50, 99, "Sound active")),
            _lasing(k.maybe_runs(100, 149, "Auto run")),
            _lasing(R(150, 255, "DMX control")),
        ),
        doubt="may",
        why=UNSURE,
    ),
    P(("laser-pattern",), "Pattern", (2,), text="One pattern every 4 values"),
    P(
        ("image-scale", "zoom"),
        "Pattern size",
        (3,),
        text="From big to small",
    ),
    P(
        ("image-rotation",),
        "Pattern rotation",
        (4,),
        ranges=(
            k.optional(R(0, 127, "Fixed angle", "index"), parameter=("image-rotation",)),
            k.spin(128, 191, "Clockwise rotation, slow to fast", "image"),
            k.spin(192, 255, "Counterclockwise rotation, slow to fast", "image"),
        ),
        doubt="may",
        why=UNSURE,
    ),
    P(("image-position-x",), "Horizontal position", (5,), text="Left to right"),
    P(("image-position-y",), "Vertical position", (6,), text="Down to up"),
    P(
        ("color-preset", "color-macro", "virtual-color-wheel", "effect-color", "color-wheel"),
        "Color",
        (7,),
        ranges=(
            *k.steps(0, 32, "White", "Red", "Yellow", "Green", "Cyan", "Blue", "Purple"),
            k.maybe_runs(224, 255, "Color change"),
        ),
    ),
    P(("effect-speed", "macro-speed"), "Effect speed", (8,), text="Slow to fast"),
)


@chart("fifth-laser", "ruled, slots as CH1, safety text around", "pdf", "en", "Haoxilan Laser", "HX-8")
def laser(seed: int) -> Made:
    pdf = f.book("Helvetica", "HX-8 ANIMATION LASER", "Page")
    pdf.say("DMX CHANNEL DESCRIPTION", 13, True)
    pdf.say("Only trained people may run this product. Never let the beam reach eyes. A key switch and an")
    pdf.say("emergency stop must be in reach of the operator. Class 4 laser product, 500 mW.", after=4)
    rows = [["Channel", "Function", "Value", "Content"]]
    rows += f.body(LASER, "slot name value text", f.tilde)
    rows = [[f"CH{row[0]}" if n and row[0] else row[0], *row[1:]] for n, row in enumerate(rows)]
    pdf.grid(rows, (22, 44, 30, 70), (0, 1), text_align="CENTER", v_align="MIDDLE")
    pdf.say("Technical parameters", 13, True)
    pdf.grid([["Item", "Data"], ["Scan speed", "20 kpps"], ["Weight", "2.6 kg"]], (50, 60))
    return k.made("Haoxilan Laser", "HX-8", [k.mode(LASER)], bytes(pdf.output()))


FOLLOW = (
    P(("dimmer",), "Dimmer", (1, 2), ("Dimmer fein",), "zu bis offen"),
    P(
        ("shutter", "strobe"),
        "Verschluss",
        (3,),
        ranges=(
            k.closed(0, 25, "geschlossen"),
            k.opened(26, 51, "offen"),
            k.flash(52, 255, "Blitzen, langsam bis schnell"),
        ),
    ),
    P(("iris",), "Iris", (4,), text="groß bis klein"),
    P(("zoom",), "Zoom", (5,), text="7° bis 15°", spans=(span(7, 15, "deg"),)),
    P(("focus",), "Schärfe", (6,), text="nah bis fern"),
    P(("frost",), "Frost", (7,), ranges=(k.out(0, 127, "ohne Frost"), R(128, 255, "mit Frost"))),
    P(
        ("color-wheel",),
        "Farbrad",
        (8,),
        ranges=(
            k.opened(0, 25, "offen"),
            *k.steps(26, 26, "Bernstein", "Rosa", "Hellblau", "Kongoblau", "Rot", "Grün"),
            k.rainbow(182, 255, "Drehung, langsam bis schnell"),
        ),
    ),
    P(("warm-correction", "color-correction"), "CTO", (9,), text="0 bis 100 %", spans=k.LEVEL),
)


@chart(
    "fifth-verfolger", "decimal and percent, lines between slots", "pdf", "de", "Lindhof Theaterbau", "VF 800"
)
def verfolger(seed: int) -> Made:
    rows = [["Kan.", "Bezeichnung", "DMX", "Prozent", "Bedeutung"]]
    rows += f.body(FOLLOW, "slot name value share text", lambda lo, hi: f"{lo}…{hi}", "Feineinstellung")
    marks: list[tuple[Any, ...]] = [("LINEABOVE", (0, 0), (-1, 0), 1, "#000000")]
    marks += [("LINEABOVE", (0, y), (-1, y), 0.4, "#000000") for y in range(1, len(rows)) if rows[y][0]]
    parts = [
        f.say("8  Fernsteuerung über DMX", 13, "Helvetica-Bold", 8),
        f.say(
            "Der Verfolger wird am Griff bedient. Werte vom DMX-Pult haben Vorrang, solange der Schalter am "
            "Griff auf DMX steht. Die Startadresse wird an drei Drehschaltern eingestellt."
        ),
        f.say("Kanalbelegung (9 Kanäle)", 11, "Helvetica-Bold"),
        f.grid(rows, [34, 100, 70, 70, 190], *marks, size=9),
        f.say("Frost und Farbrad schalten um; Zwischenstellungen sind nicht möglich.", 8),
    ]
    data = f.flow(parts, "VF 800 – Betriebsanleitung – Stand 03", head="Lindhof Theaterbau")
    return k.made("Lindhof Theaterbau", "VF 800", [k.mode(FOLLOW)], data)
