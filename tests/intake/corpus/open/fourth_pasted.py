"""Texts out of PDF viewers: tabs, names first, a cell a line, bullets, leaders, cells as a grid."""

from __future__ import annotations

from collections.abc import Sequence

from intake.corpus.aside.fourth_sheets import varied
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

LEISTE = (
    k.level("dimmer", "Gesamtdimmer", "0–100 %", also=("intensity-master",)),
    k.level("red", "Rot", "0–100 %"),
    k.level("green", "Grün", "0–100 %"),
    k.level("blue", "Blau", "0–100 %"),
    k.level("amber", "Amber", "0–100 %"),
    k.level("uv", "UV", "0–100 %"),
    P(
        ("strobe", "shutter"),
        "Stroboskop",
        ranges=(k.out(0, 15, "kein Stroboskop"), k.flash(16, 255, "zunehmende Blitzfrequenz")),
    ),
    P(
        ("dimmer-fade-time", "dimmer-curve", "smoothing"),
        "Dimmerverhalten",
        ranges=(
            k.optional(R(0, 51, "wie im Menü eingestellt", "as-menu"), sets=("dimmer-curve", "smoothing")),
            *(
                k.optional(r, sets=("dimmer-curve", "smoothing"))
                for r in (R(52, 101, "schnell"), R(102, 152, "mittel"), R(153, 255, "langsam"))
            ),
        ),
    ),
)
LEISTE_PLANS = (("6-Kanal-Modus", "- 1 2 3 4 5 6 -"), ("8-Kanal-Modus", "1 2 3 4 5 6 7 8"))


@chart(
    "fourth-paste-leiste",
    "single blanks, name before slot, dashes spaced",
    "txt",
    "de",
    "Tannried",
    "Lichtleiste UV",
)
def leiste(seed: int) -> Made:
    text = ["Lichtleiste UV", "DMX-Funktionen", "Das Gerät lässt sich in zwei Modi betreiben."]
    modes = []
    for name, plan in LEISTE_PLANS:
        mode = k.mode(k.seat(LEISTE, plan), name, name.removesuffix("-Modus"))
        modes.append(mode)
        text += ["", name, "Funktion Kanal Wert Bedeutung"]
        for line in k.lines(mode.params):
            for n, (lo, hi, said) in enumerate(line.rows):
                first = f"{line.name} {line.slot} " if n == 0 else ""
                text.append(f"{first}{lo} – {hi} {said}")
    text += ["", "Technische Daten", "Leistungsaufnahme 90 W", "Gewicht 4,1 kg", "Schutzart IP20", ""]
    return k.made("Tannried", "Lichtleiste UV", modes, "\n".join(text))


CYC = (
    k.level("dimmer", "Intensité", "0-100 %"),
    k.level("red", "Rouge", "0-100 %"),
    k.level("green", "Vert", "0-100 %"),
    k.level("blue", "Bleu", "0-100 %"),
    k.level("cool-white", "Blanc froid", "0-100 %"),
    k.level("warm-white", "Blanc chaud", "0-100 %"),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 9, "Arrêt"), k.flash(10, 255, "Lent à rapide"))),
)


@chart("fourth-paste-cyc", "one cell a line", "txt", "fr", "Aigrevent", "Cyclo 6")
def cyc(seed: int) -> Made:
    mode = k.mode(k.seat(CYC, "1 2 3 4 5 6 7"), "Mode 7 canaux", "7 canaux")
    text = ["Mode 7 canaux", "Canal", "Fonction", "Valeur DMX", "Effet"]
    for line in k.lines(mode.params):
        text += [str(line.slot), line.name]
        for lo, hi, said in line.rows:
            text += [k.zeros(lo, hi), said]
    return k.made("Aigrevent", "Cyclo 6", [mode], "\n".join([*text, ""]))


PROFILE = (
    P(("dimmer",), "Intensity", fine=("Intensity LSB",), text="0 - 100%", spans=k.LEVEL),
    P(("cyan",), "Cyan", text="0 - 100%", spans=k.LEVEL),
    P(("magenta",), "Magenta", text="0 - 100%", spans=k.LEVEL),
    P(("yellow",), "Yellow", text="0 - 100%", spans=k.LEVEL),
    P(("warm-correction", "color-correction"), "CTO", text="0 - 100%", spans=k.LEVEL),
    P(("iris",), "Iris", text="Open to minimum"),
    P(("zoom",), "Zoom", fine=("Zoom LSB",), text="6 - 48 deg", spans=(span(6, 48, "deg"),)),
    P(("focus",), "Focus", fine=("Focus LSB",), text="Near to far"),
    P(("pan",), "Pan", fine=("Pan LSB",), text="0 - 540 deg", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt LSB",), text="0 - 265 deg", spans=(span(0, 265, "deg"),)),
    P(
        ("lamp-control", "control"),
        "Lamp",
        ranges=(
            k.nothing(0, 99, "No action"),
            R(100, 109, "Lamp on", hazard="lamp on"),
            R(110, 119, "Lamp off", hazard="lamp off"),
            k.nothing(120, 255, "No action"),
        ),
    ),
)
PROFILE_PLANS = (("8 bit", "1 2 3 4 5 6 7 8 9 10 11"), ("16 bit", "1/2 3 4 5 6 7 8/9 10/11 12/13 14/15 16"))


@chart(
    "fourth-paste-profile",
    "tabs, modes first with n/a, MSB named by its byte",
    "txt",
    "en",
    "Lanyon",
    "Kittiwake 900",
)
def profile(seed: int) -> Made:
    params = varied(PROFILE, seed, "Zoom", "deg", "{} - {} deg", (6, 48), (7, 55), (5, 50))
    text = ["\t".join((*(name for name, _ in PROFILE_PLANS), "Parameter", "DMX", "Use"))]
    for side in k.sides(params, *(plan for _, plan in PROFILE_PLANS)):
        for n, (lo, hi, said) in enumerate(side.rows):
            slots = [("n/a" if s is None else str(s)) if n == 0 else "" for s in side.slots]
            text.append("\t".join((*slots, side.name if n == 0 else "", k.hyphen(lo, hi), said)))
    text += ["", "RDM parameters", "Name\tPID\tGet\tSet", "Device info\t0x0060\tyes\tno"]
    text += ["DMX start address\t0x00F0\tyes\tyes", "Pan invert\t0x0600\tyes\tyes", ""]
    modes = [k.mode(k.seat(params, plan), name) for name, plan in PROFILE_PLANS]
    return k.made("Lanyon", "Kittiwake 900", modes, "\n".join(text))


PUNTO = (
    P(("dimmer",), "Dimmer", text="0 – 100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturador",
        ranges=(
            k.closed(0, 7, "Cerrado"),
            k.opened(8, 15, "Abierto"),
            k.flash(16, 131, "Estrobo de lento a rápido"),
            k.opened(132, 139, "Abierto"),
            k.chance(140, 247, "Estrobo aleatorio"),
            k.opened(248, 255, "Abierto"),
        ),
    ),
    P(("hue",), "Tono", text="0° – 360°", spans=(span(0, 360, "deg"),)),
    P(("saturation",), "Saturación", text="0 – 100 %", spans=k.LEVEL),
    P(("color-temperature",), "Temperatura de color", text="2700 K – 6500 K", spans=(span(2700, 6500, "K"),)),
    P(("zoom",), "Zoom", text="10° – 60°", spans=(span(10, 60, "deg"),)),
    P(
        ("fan-mode", "fan"),
        "Ventilador",
        ranges=(
            k.fan_choice(0, 85, "Automático"),
            k.fan_choice(86, 170, "Silencioso"),
            k.fan_choice(171, 255, "Máximo"),
        ),
    ),
)


@chart(
    "fourth-paste-punto", "a bracketed number a slot, bullets below", "txt", "es", "Altozano", "Grillo 200"
)
def punto(seed: int) -> Made:
    params = varied(PUNTO, seed, "Zoom", "deg", "{}° – {}°", (10, 60), (8, 45), (15, 50))
    mode = k.mode(k.seat(params, "1 2 3 4 5 6 7"), "Modo HSI (7 canales)", "Modo HSI", "HSI", "7 canales")
    text = ["Modo HSI (7 canales)"]
    for line in k.lines(mode.params):
        text += ["", f"[{line.slot}] {line.name}"]
        text += [f"• {lo} a {hi}: {said}" for lo, hi, said in line.rows]
    return k.made("Altozano", "Grillo 200", [mode], "\n".join([*text, ""]))


TUBO = (
    k.level("dimmer", "Dimmer", "0-100%"),
    P(("color-temperature",), "Temperatura colore", text="2000-10000 K", spans=(span(2000, 10000, "K"),)),
    P(
        ("tint", "green-correction"),
        "Verde/Magenta",
        text="da magenta a verde",
    ),
    k.level("white-color-crossfade", "Dissolvenza bianco/colore", "0-100%"),
    k.level("red", "Rosso", "0-100%"),
    k.level("green", "Verde", "0-100%"),
    k.level("blue", "Blu", "0-100%"),
    P(("effect-speed", "macro-speed"), "Velocità effetto", text="da lento a veloce"),
)
TUBO_PLANS = (("Modo Bianco", "1 2 3 - - - - -"), ("Modo Completo", "1 2 3 4 5 6 7 8"))


@chart("fourth-paste-tubo", "dotted leaders, no values", "txt", "it", "Valdombra", "Tubo 120")
def tubo(seed: int) -> Made:
    text = ["TUBO 120 - CANALI DMX", ""]
    params = varied(TUBO, seed, "Temperatura colore", "K", "{}-{} K", (2000, 10000), (2700, 6500))
    modes = []
    for name, plan in TUBO_PLANS:
        mode = k.mode(k.seat(params, plan), name, name.removeprefix("Modo "))
        modes.append(mode)
        text.append(name)
        for line in k.lines(mode.params):
            said = f" ({line.rows[0][2]})" if line.rows[0][2] else ""
            text.append(f"Canale {line.slot} {'.' * (30 - len(line.name))} {line.name}{said}")
        text.append("")
    return k.made("Valdombra", "Tubo 120", modes, "\n".join(text))


FIRE = tuple(
    P((word,), f"{label} {cell}", (3 + 4 * (cell - 1) + n,), text="0-100%", spans=(*k.LEVEL, None))
    for cell in range(1, 7)
    for n, (word, label) in enumerate(
        (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("white", "White"))
    )
)


@chart(
    "fourth-paste-cells",
    "single slots in rows, cells as a grid of slots",
    "txt",
    "en",
    "Minsterley",
    "Wren Strip 6",
)
def cells(seed: int) -> Made:
    top = (
        P(("dimmer", "intensity-master"), "Master", (1,), text="0-100%", spans=k.LEVEL),
        P(
            ("strobe", "shutter"),
            "Strobe",
            (2,),
            ranges=(k.out(0, 9, "Off"), k.flash(10, 255, "Slow to fast")),
        ),
    )
    text = ["26 channel mode", "", f"{'Ch':<6}{'Function':<12}{'Value':<10}Effect"]
    for line in k.lines(top):
        for n, (lo, hi, said) in enumerate(line.rows):
            first = f"{line.slot:<6}{line.name:<12}" if n == 0 else " " * 18
            text.append(f"{first}{k.hyphen(lo, hi):<10}{said}")
    text += ["", "Cells (0-100% each)", f"{'Cell':<8}{'Red':<8}{'Green':<8}{'Blue':<8}White"]
    for cell in range(1, 7):
        slots: Sequence[int] = [p.slots[0] for p in FIRE[4 * cell - 4 : 4 * cell]]
        text.append(f"{cell:<8}" + "".join(f"{s:<8}" for s in slots).rstrip())
    modes = [k.mode((*top, *(FIRE)), "26 channel mode", "26 channel")]
    return k.made("Minsterley", "Wren Strip 6", modes, "\n".join([*text, ""]))


TUBE = (
    P(("dimmer",), "Master dimmer", text="0 > 100%", spans=k.LEVEL),
    P(("red",), "Red", text="0 > 100%", spans=k.LEVEL),
    P(("green",), "Green", text="0 > 100%", spans=k.LEVEL),
    P(("blue",), "Blue", text="0 > 100%", spans=k.LEVEL),
    P(("mint",), "Mint", text="0 > 100%", spans=k.LEVEL),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 5, "OFF"), k.flash(6, 255, "Slow > Fast"))),
    P(
        ("effect", "pixel-effect", "macro"),
        "FX select",
        ranges=(
            k.out(0, 9, "OFF"),
            *(
                k.maybe_runs(10 + 41 * n, 50 + 41 * n, text)
                for n, text in enumerate(("Candle", "Torch", "Welding", "Police", "Paparazzi", "TV"))
            ),
        ),
    ),
    P(("effect-speed", "pixel-effect-speed", "macro-speed"), "FX speed", text="Slow > Fast"),
)


@chart(
    "fourth-paste-tube",
    "columns of blanks, three modes last, wrapped notes",
    "txt",
    "en",
    "Brackwell",
    "Glow Tube 4",
)
def tube(seed: int) -> Made:
    plans = (("RGB", "- 1 2 3 - - - -"), ("RGBM", "1 2 3 4 5 - - -"), ("FULL", "1 2 3 4 5 6 7 8"))
    text = [f"{'FUNCTION':<16}{'DMX':<10}{'WHAT IT DOES':<16}{'RGB':<6}{'RGBM':<6}FULL"]
    for side in k.sides(TUBE, *(plan for _, plan in plans)):
        for n, (lo, hi, said) in enumerate(side.rows):
            slots = [("--" if s is None else str(s)) if n == 0 else "" for s in side.slots]
            name = side.name if n == 0 else ""
            row = f"{name:<16}{k.hyphen(lo, hi):<10}{said:<16}{slots[0]:<6}{slots[1]:<6}{slots[2]}"
            text.append(row.rstrip())
    text += [
        "",
        "NOTE: the tube holds its last look for one",
        "second when the signal is lost, then goes dark.",
        "",
    ]
    modes = [k.mode(k.seat(TUBE, plan), name) for name, plan in plans]
    return k.made("Brackwell", "Glow Tube 4", modes, "\n".join(text))
