"""Web pages and pasted texts: a heading a slot, three modes with counts, tabs, and a slot's dashes lost."""

from __future__ import annotations

from html import escape

from intake.corpus.content import M, Made, P, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

EYE = (
    P(("pan",), "Pan", (1, 2), ("Pan fine",), "0° … 540°", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (3, 4), ("Tilt fine",), "0° … 220°", (span(0, 220, "deg"),)),
    P(
        ("zoom",),
        "Zoom",
        (5,),
        text="4° … 60°",
        spans=(span(4, 60, "deg"),),
    ),
    P(
        ("roll-rotation", "roll", "other", "prism-rotation", "beam-shaper-rotation"),
        "Lens rotation",
        (6,),
        ranges=(
            k.stop(0, 9, "No rotation"),
            k.spin(10, 131, "Clockwise, slow … fast"),
            k.spin(132, 255, "Counterclockwise, slow … fast"),
        ),
        doubt="may",
        why="a lens that turns has no word of its own",
    ),
    P(("red",), "Red", (7,), text="0 … 100 %", spans=k.LEVEL),
    P(("green",), "Green", (8,), text="0 … 100 %", spans=k.LEVEL),
    P(("blue",), "Blue", (9,), text="0 … 100 %", spans=k.LEVEL),
    P(("white",), "White", (10,), text="0 … 100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter / Strobe",
        (11,),
        ranges=(
            k.closed(0, 15),
            k.flash(16, 127, "Strobe, 1 … 24 Hz", (1, 24)),
            k.chance(128, 191, "Random strobe"),
            k.opened(192, 255),
        ),
    ),
    P(("dimmer",), "Dimmer", (12,), text="0 … 100 %", spans=k.LEVEL),
    P(
        ("pixel-effect", "effect", "pixel-macro", "macro"),
        "Effect",
        (13,),
        ranges=(
            k.nothing(0, 15, "No effect"),
            *(k.maybe_runs(16 + 48 * n, 63 + 48 * n, f"Effect {n + 1}") for n in range(5)),
        ),
    ),
    P(("pixel-effect-speed", "effect-speed", "macro-speed"), "Effect speed", (14,), text="Slow … fast"),
    P(("control", "reset"), "Control", (15,), ranges=(k.nothing(0, 239), k.reset(240, 255, "Reset"))),
)


@chart("second-eye", "web page, a heading and a table a slot", "html", "en", "Quarrendon", "Nightjar 7")
def eye(seed: int) -> Made:
    page = ["<!doctype html><html lang=en><head><meta charset=utf-8><title>Nightjar 7</title></head><body>"]
    page += ["<h1>Nightjar 7</h1><h2>DMX functions</h2><p>One mode with 15 channels.</p>"]
    for line in k.lines(EYE):
        page.append(f"<h3>Ch. {line.slot}: {line.name}</h3><table><tr><th>Value</th><th>Meaning</th></tr>")
        for lo, hi, text in line.rows:
            page.append(f"<tr><td>{k.dash(lo, hi)}</td><td>{escape(text) or 'fine control'}</td></tr>")
        page.append("</table>")
    return k.made("Quarrendon", "Nightjar 7", [k.mode(EYE)], "\n".join([*page, "</body></html>"]))


BLINDER = (
    P(("dimmer", "intensity-master"), "Gesamtdimmer", text="0–100 %", spans=k.LEVEL),
    P(("dimmer",), "Dimmer 1", text="0–100 %", spans=k.LEVEL),
    P(("dimmer",), "Dimmer 2", text="0–100 %", spans=k.LEVEL),
    P(("dimmer",), "Dimmer 3", text="0–100 %", spans=k.LEVEL),
    P(("dimmer",), "Dimmer 4", text="0–100 %", spans=k.LEVEL),
    P(("red",), "Rot", text="0–100 %", spans=k.LEVEL),
    P(("green",), "Grün", text="0–100 %", spans=k.LEVEL),
    P(("blue",), "Blau", text="0–100 %", spans=k.LEVEL),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 9, "Aus"), k.flash(10, 255, "1–20 Hz", (1, 20)))),
    P(
        ("macro", "effect"),
        "Makro",
        ranges=(
            k.nothing(0, 15, "Aus"),
            *(k.runs(16 + 60 * n, 75 + 60 * n, f"Lauflicht {n + 1}") for n in range(4)),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Makrogeschwindigkeit", text="Langsam → schnell"),
)
BLINDER_PLANS = (
    ("Modus A", "1 - - - - 2 3 4 5 6 7"),
    ("Modus B", "1 2 3 4 5 - - - 6 - -"),
    ("Modus C", "1 2 3 4 5 6 7 8 9 10 11"),
)


@chart("second-blinder", "web page, three tables with counts", "html", "de", "Wolkenrain", "Uhu 4")
def blinder(seed: int) -> Made:
    page = [
        "<html lang='de'><head><meta charset='utf-8'><title>Uhu 4</title></head><body><h1>DMX-Tabellen</h1>"
    ]
    modes = []
    for name, plan in BLINDER_PLANS:
        params = k.seat(BLINDER, plan)
        mode = k.mode(
            params, f"{name} ({len(params)} Kanäle)", name, name.split()[1], f"{len(params)} Kanäle"
        )
        modes.append(mode)
        page.append(f"<h2>{mode.title}</h2><table border=1>")
        page.append("<tr><th>Kanal</th><th>Funktion</th><th>Beschreibung</th><th>Werte</th></tr>")
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                head = f"<td>{line.slot}</td><td>{line.name}</td>" if n == 0 else "<td></td><td></td>"
                page.append(f"<tr>{head}<td>{text}</td><td>{k.zeros(lo, hi)}</td></tr>")
        page.append("</table>")
    return k.made("Wolkenrain", "Uhu 4", modes, "\n".join([*page, "</body></html>"]))


COMPACT = (
    P(("pan",), "Pan", text="0-540°", spans=(span(0, 540, "deg"),), fine=("Pan Fine",)),
    P(("tilt",), "Tilt", text="0-180°", spans=(span(0, 180, "deg"),), fine=("Tilt Fine",)),
    P(("movement-speed",), "Pan/Tilt Speed", text="Fast - Slow"),
    P(("dimmer", "intensity-master"), "Master Dimmer", text="0-100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 9, "Strobe off"), k.flash(10, 255, "Strobe slow - fast")),
    ),
    P(("red",), "Red", text="0-100%", spans=k.LEVEL),
    P(("green",), "Green", text="0-100%", spans=k.LEVEL),
    P(("blue",), "Blue", text="0-100%", spans=k.LEVEL),
    P(("white",), "White", text="0-100%", spans=k.LEVEL),
    P(
        ("macro", "effect"),
        "Show",
        ranges=(
            k.nothing(0, 15, "No function"),
            k.runs(16, 135, "Auto show"),
            k.runs(136, 255, "Sound show"),
        ),
    ),
    P(("reset", "control"), "Reset", ranges=(k.nothing(0, 149, "No function"), k.reset(150, 255, "Reset"))),
)
COMPACT_PLANS = (
    ("9 Channel Mode", "1 2 - 3 4 5 6 7 8 9 -"),
    ("13 Channel Mode", "1/2 3/4 5 6 7 8 9 10 11 12 13"),
)


@chart("second-compact", "pasted text, tabs, CH before the number", "txt", "en", "Thornsea", "Wigeon 9")
def compact(seed: int) -> Made:
    text = ["DMX CHANNELS", ""]
    modes = []
    for name, plan in COMPACT_PLANS:
        mode = k.mode(k.seat(COMPACT, plan), name, name.removesuffix(" Mode"))
        modes.append(mode)
        text += [name, "Channel\tFunction\tValue\tDescription"]
        for line in k.lines(mode.params):
            for n, (lo, hi, said) in enumerate(line.rows):
                text.append(
                    "\t".join(
                        (
                            f"CH{line.slot}" if n == 0 else "",
                            line.name if n == 0 else "",
                            k.hyphen(lo, hi),
                            said,
                        )
                    )
                )
        text.append("")
    return k.made("Thornsea", "Wigeon 9", modes, "\n".join(text))


FADED = (
    P(("dimmer",), "Dimmer", (1,), text="0 to 100%", spans=k.LEVEL),
    P(("red",), "Red", (2,), text="0 to 100%", spans=k.LEVEL),
    P(("green",), "Green", (3,), text="0 to 100%", spans=k.LEVEL),
    P(("blue",), "Blue", (4,), text="0 to 100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobe",
        (5,),
        ranges=(k.out(0, 9, "No strobe"), k.flash(10, 255, "Strobe slow to fast")),
        doubt="must",
        why="the dashes between the ends are lost",
    ),
    P(
        ("macro", "effect"),
        "Program",
        (6,),
        ranges=(k.nothing(0, 31), k.runs(32, 143, "Color fade"), k.runs(144, 255, "Color jump")),
        doubt="must",
        why="the dashes between the ends are lost",
    ),
    P(("macro-speed", "effect-speed"), "Program speed", (7,), text="Slow to fast"),
)


@chart("second-faded", "pasted text, dashes lost in two slots", "txt", "en", "Ottersby", "Bunting 36", 1)
def faded(seed: int) -> Made:
    text = ["Bunting 36 User Manual", "7-Channel Mode", "Channel Function Value Description"]
    for line in k.lines(FADED):
        for n, (lo, hi, said) in enumerate(line.rows):
            values = k.zeros(lo, hi).replace("-", " ") if line.p.doubt else k.zeros(lo, hi)
            text.append(f"{line.slot} {line.name} {values} {said}" if n == 0 else f"{values} {said}")
    mode = M("7-Channel Mode", ("7-Channel Mode", "7-Channel"), 7, FADED)
    return k.made("Ottersby", "Bunting 36", [mode], "\n".join([*text, ""]))
