"""CSV and text files: percents and hex beside decimals, slots of two modes first, a bar of forty slots."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import csv_text, p
from intake.corpus.registry import chart

CYC_LEVELS = tuple(
    # The percents beside the values may be read as those of the light.
    P(words, label, text=text, spans=(None, *k.LEVEL))
    for words, label, text in (
        (("dimmer", "intensity-master"), "Master", "Out to full"),
        (("red",), "Red", "Out to full"),
        (("amber",), "Amber", "Out to full"),
        (("lime",), "Lime", "Out to full"),
        (("cyan-emitter",), "Cyan", "Out to full"),
        (("blue",), "Blue", "Out to full"),
        (("indigo",), "Indigo", "Out to full"),
    )
)
CYC_STROBE = p("strobe shutter", "Strobe", "0-12 out: No strobe", "13-255 flash: Slow to fast")
CYC_PRESET = p(
    "color-preset color-macro swatch virtual-color-wheel",
    "Color presets",
    "0-12 nothing: No preset",
    *k.steps(13, 27, "Sunrise", "Noon sky", "Dusk", "Night blue", "Forest", "Rose", "Gold", "Warm white"),
    "229-255: Cool white",
)
CYC = (
    ("Direct", CYC_LEVELS[1:]),
    ("Standard", (*CYC_LEVELS, CYC_STROBE)),
    ("Preset", (CYC_LEVELS[0], CYC_PRESET, CYC_STROBE)),
)


@chart(
    "sixth-b-cyc",
    "percents before decimals, a line with a colon for each mode",
    "csv",
    "en",
    "Prairie Bell Lighting",
    "Skyline Cyc 6",
)
def cyc(seed: int) -> Made:
    rows: list[list[Any]] = [["Skyline Cyc 6 DMX Channel Assignments"], ["Rev. C, 6/2/2025"]]
    modes: list[M] = []
    for name, params in CYC:
        modes.append(s.counted(s.row_of(params), name, "channels", "Mode: {} ({} {})"))
        rows += [[], [modes[-1].title], ["Ch", "Function", "Percent", "DMX", "Details"]]
        for slot, label, lo, hi, text in s.body(modes[-1].params, "slot name from to text"):
            rows.append([slot, label, f"{round(lo / 2.55)}-{round(hi / 2.55)}%", k.hyphen(lo, hi), text])
    return k.made("Prairie Bell Lighting", "Skyline Cyc 6", modes, csv_text(rows))


RONDO = (
    P(("pan",), "Pan", fine=("Pan fine",), text="0-540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0-210°", spans=(span(0, 210, "deg"),)),
    P(("movement-speed",), "Velocità Pan/Tilt", text="Da veloce a lento"),
    P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0-100%", spans=k.LEVEL),
    p(
        "shutter strobe",
        "Otturatore",
        "0-15 closed: Chiuso",
        "16-31 open: Aperto",
        "32-127 flash: Strobo da lento a veloce",
        "128-223 random: Strobo casuale da lento a veloce",
        "224-255 open: Aperto",
    ),
    *(
        P((word,), label, text="0-100%", spans=k.LEVEL)
        for word, label in (("red", "Rosso"), ("green", "Verde"), ("blue", "Blu"), ("white", "Bianco"))
    ),
    p(
        "color-temperature",
        "Temperatura colore",
        "0-15 nothing: Nessuna funzione",
        R(16, 255, "Da 2700 K a 8000 K", span=span(2700, 8000, "K")),
    ),
    P(("zoom",), "Zoom", text="Da stretto a largo"),
    p(
        "color-macro color-preset macro",
        "Macro colori",
        "0-15 nothing: Nessuna funzione",
        *k.steps(16, 20, "Arancio", "Ambra", "Turchese", "Lavanda", "Fucsia"),
        "116-185 perhaps: Arcobaleno da lento a veloce",
        "186-255 perhaps: Cambio colore da lento a veloce",
    ),
    p("reset control", "Reset", "0-239 nothing: Nessuna funzione", "240-255 reset: Reset completo"),
)
RONDO_PLANS = (
    ("Compatto", "1 2 3 4 5 6 7 8 9 10 11 12 13"),
    ("Esteso", "1/2 3/4 5 6/7 8 9 10 11 12 13 14 15 16"),
)


@chart(
    "sixth-b-rondo",
    "slots of two modes, then from and to",
    "csv",
    "it",
    "Scenalta",
    "Rondò 19 W",
)
def rondo(seed: int) -> Made:
    rows: list[list[Any]] = [["Scenalta - Rondò 19 W - Tabella canali DMX"]]
    rows.append([*(name for name, _ in RONDO_PLANS), "Parametro", "Da", "A", "Descrizione"])
    for side in k.sides(RONDO, *(plan for _, plan in RONDO_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots: list[Any] = ["" if n else "-" if at is None else at for at in side.slots]
            rows.append([*slots, "" if n else side.name, lo, hi, text])
    modes = [k.mode(k.seat(RONDO, plan), name) for name, plan in RONDO_PLANS]
    return k.made("Scenalta", "Rondò 19 W", modes, csv_text(rows, ";"))


SCANNER = s.row_of(
    (
        P(("pan", "mirror-position"), "Mirror pan", text="Left to right"),
        P(("tilt", "mirror-position"), "Mirror tilt", text="Up to down"),
        p(
            "shutter strobe",
            "Shutter",
            "0-19 closed: Shutter closed",
            "20-199 flash: Strobe slow to fast",
            "200-255 open: Shutter open",
        ),
        P(("dimmer",), "Dimmer", text="0 to 100%", spans=k.LEVEL),
        p(
            "color-wheel",
            "Color wheel",
            "0-15 open: Open",
            *k.steps(16, 16, "Red", "Yellow", "Green", "Magenta", "Light blue", "Orange", "Deep blue"),
            "128-255 rainbow: Rainbow slow to fast",
        ),
        p(
            "gobo-wheel",
            "Gobo wheel",
            "0-31 open: Open",
            *k.steps(32, 32, "Star", "Tunnel", "Leaves"),
            *(f"{128 + 32 * n}-{159 + 32 * n} shake: Shaking {n + 1}" for n in range(3)),
            "224-255 spin gobo-wheel: Wheel rotation slow to fast",
        ),
        p(
            "gobo-rotation gobo-index-rotation",
            "Gobo rotation",
            "0-9 stop: No rotation",
            "10-119 spin: Clockwise, fast to slow",
            "120-135 stop: No rotation",
            "136-255 spin: Counterclockwise, slow to fast",
        ),
    )
)


@chart(
    "sixth-b-scanner",
    "decimal and hex, slot and name in every row, tabs",
    "csv",
    "en",
    "Halcombe Effects",
    "MirrorScan 150",
)
def scanner(seed: int) -> Made:
    rows = [["DMX channel", "Function", "Decimal", "Hex", "Effect"]]
    rows += s.body(SCANNER, "slot name value hex text", every=True)
    return k.made("Halcombe Effects", "MirrorScan 150", [k.mode(SCANNER)], csv_text(rows, "\t"))


BAR_TOP = (
    P(("intensity-master", "dimmer"), "Master", text="0...100%", spans=k.LEVEL),
    p("strobe shutter", "Strobe", "0-9 out: Off", k.flash(10, 255, "1...20 Hz", (1, 20))),
    p(
        "pixel-effect effect pixel-macro macro",
        "Pixel effect",
        "0-9 nothing: Off",
        *(
            f"{10 + 41 * n}-{50 + 41 * n} runs: {name}"
            for n, name in enumerate(("Chase", "Wave", "Comet", "Sparkle", "Fire"))
        ),
        "215-255 runs: Rainbow",
    ),
    P(
        ("pixel-effect-speed", "effect-speed", "pixel-macro-speed", "macro-speed"),
        "Effect speed",
        text="Slow...fast",
    ),
)
RGB = ("Red", "Green", "Blue")
BAR_ALL = tuple(k.level(name.lower(), name, "0...100%") for name in RGB)
BAR_CELLS = tuple(k.level(name.lower(), f"P{n:02} {name}", "0...100%") for n in range(1, 13) for name in RGB)
BAR = (("Wash", BAR_ALL), ("Effect", (*BAR_TOP, *BAR_ALL)), ("Pixel", (*BAR_TOP, *BAR_CELLS)))


@chart(
    "sixth-b-bar",
    "a row of stars around each mode's name, forty slots",
    "csv",
    "en",
    "Longreach Audio and Light",
    "Dotbar 12",
)
def bar(seed: int) -> Made:
    rows: list[list[Any]] = [["DOTBAR 12", "Firmware 2.4"]]
    modes: list[M] = []
    for name, params in BAR:
        m = k.mode(s.row_of(params))
        title = f"{name} mode, {m.footprint} channels"
        modes.append(k.mode(m.params, title, name, f"{name} mode", f"{m.footprint} channels"))
        rows += [[], [f"*** {title} ***"], ["Channel", "Name", "Value", "Description"]]
        rows += s.body(m.params, "slot name value text", lambda lo, hi: f"{lo}...{hi}")
    rows += [[], ["P01 is the pixel next to the data input."]]
    return k.made("Longreach Audio and Light", "Dotbar 12", modes, csv_text(rows))


STICK_LEVEL = P(("dimmer",), "Brightness", fine=("Brightness, low byte",), text="0 to 100%", spans=k.LEVEL)
STICK = s.row_of(
    (
        STICK_LEVEL,
        P(("hue",), "Hue", text="0 to 360 deg", spans=(span(0, 360, "deg"),)),
        P(("saturation",), "Saturation", text="0 to 100%", spans=k.LEVEL),
        P(("color-temperature",), "White", text="2500 to 7500 K", spans=(span(2500, 7500, "K"),)),
        p(
            "effect macro",
            "Effect",
            "0-15 nothing: none",
            "16-79 runs: candle",
            "80-143 runs: storm",
            "144-207 runs: police",
            "208-255 runs: bad neon",
        ),
        P(("effect-speed", "macro-speed"), "Effect speed", text="slow to fast"),
    )
)
STICK_TOP = """stickd - firmware for the Marsh Wand, version 0.9.3
===================================================

BUILDING

    make flash PORT=/dev/ttyUSB0

DMX

    The wand takes 7 channels. Hold the button while it starts to set the address,
    one blink for each hundred, then tens, then ones.

"""
STICK_END = """
LICENSE

    Do what you like, but keep the battery away from fire.
"""


@chart(
    "sixth-b-wand",
    "a readme with leader dots between name and values",
    "txt",
    "en",
    "Tinkers of Saltmarsh",
    "Marsh Wand",
)
def wand(seed: int) -> Made:
    out = ["    Ch  Function              Value     Meaning"]
    for slot, name, value, text in s.body(STICK, "slot name value text"):
        label = f"{name} ".ljust(22, ".") if name else " " * 22
        out.append(f"    {slot!s:<3} {label} {value:<9} {text}".rstrip())
    mode = k.mode(STICK)
    return k.made("Tinkers of Saltmarsh", "Marsh Wand", [mode], STICK_TOP + "\n".join(out) + "\n" + STICK_END)
