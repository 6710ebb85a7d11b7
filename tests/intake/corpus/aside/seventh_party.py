"""Lights for events in PDFs: a par, a bar of pixels, a battery uplight, a strobe and a strip of lamps."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made, P
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

KITE = x.params("""
intensity-master dimmer: Master dimmer = 0% → 100% [0 100 %]
red: Red = 0% → 100% [0 100 %]
green: Green = 0% → 100% [0 100 %]
blue: Blue = 0% → 100% [0 100 %]
white: White = 0% → 100% [0 100 %]
amber: Amber = 0% → 100% [0 100 %]
uv: UV = 0% → 100% [0 100 %]
strobe shutter: Strobe
  0-15 out: No function | 16-255 flash: Slow → fast
color-macro macro color-preset virtual-color-wheel: Color macros
  0-15 nothing: No function | 16-55: Red | 56-95: Yellow | 96-135: Green | 136-175: Cyan | 176-215: Blue
  216-255: Magenta
macro effect color-macro: Auto programs
  0-31 nothing: No function | 32-95 runs: Color change | 96-159 runs: Color fade | 160-223 runs: Pulse
  224-255 sound: Sound active
macro-speed effect-speed color-macro-speed: Program speed = Slow → fast
""")
KITE_PLANS = (
    ("6-Channel Mode", "- 1 2 3 4 5 6 - - - -"),
    ("8-Channel Mode", "1 2 3 4 5 6 7 8 - - -"),
    ("11-Channel Mode", "1 2 3 4 5 6 7 8 9 10 11"),
)


@chart(
    "seventh-kite",
    "name and effect in one cell, arrows, a small table a mode",
    "pdf",
    "en",
    "Beltane Sound & Light",
    "Kite 7 Hex",
)
def kite(seed: int) -> Made:
    font = f.letter("dejavu")
    parts: list[Any] = [f.say("DMX Channel Assignments and Values", 13, f"{font}-Bold", 8)]
    modes = []
    for title, plan in KITE_PLANS:
        seated = k.seat(KITE, plan)
        modes.append(s.titled(seated, title, title.removesuffix(" Mode")))
        rows = [["Channel", "Value", "Function"]]
        for p in seated:
            at = str(p.slots[0])
            if not p.ranges:
                rows.append([at, s.padded(0, 255).replace("-", "→"), f"{p.label} {p.text}"])
                continue
            rows.append([at, "", p.label])
            rows += [["", s.padded(r.lo, r.hi).replace("-", "→"), r.text] for r in p.ranges]
        marks: list[tuple[Any, ...]] = [("BOX", (0, 0), (-1, -1), 0.6, "#000000"), *s.above(rows, "#000000")]
        marks += [("LINEAFTER", (0, 0), (1, -1), 0.4, "#000000"), ("BACKGROUND", (0, 0), (-1, 0), "#000000")]
        marks += [("SPAN", (0, y), (0, y + len(_ranges(rows, y)))) for y in range(1, len(rows)) if rows[y][0]]
        parts += [
            f.say(title, 10.5, f"{font}-Bold"),
            f.grid(rows, [50, 90, 190], *marks, font=font, size=8, white=True),
        ]
    parts.append(f.say("Do not daisy chain more than 10 units on one power outlet.", 8, font))
    data = f.flow(parts, "Beltane Sound & Light", head="Kite 7 Hex user manual rev. 2")
    return k.made("Beltane Sound & Light", "Kite 7 Hex", modes, data)


def _ranges(rows: f.Rows, y: int) -> f.Rows:
    """The rows below that have no slot of their own."""
    end = next((n for n in range(y + 1, len(rows)) if rows[n][0]), len(rows))
    return rows[y + 1 : end]


STROBE = x.params("""
strobe shutter: Strobe
  0-7 out: No strobe | 8-255 flash: Strobe from slow to fast
""")
MACRO = x.params("""
macro effect pixel-effect pixel-macro color-macro: Built-in program
  0-10 nothing: No function | 11-60 runs: Program 1 | 61-110 runs: Program 2 | 111-160 runs: Program 3
  161-210 runs: Program 4 | 211-255 sound: Voice control
macro-speed effect-speed pixel-effect-speed pixel-macro-speed color-macro-speed: Program speed
""")
HEAD = P(("intensity-master", "dimmer"), "Total dimming", text="From dark to bright")
COLORS = [P((name.lower(),), name, text="From dark to bright") for name in ("Red", "Green", "Blue", "White")]
DONGXU = (
    ("4CH mode", COLORS),
    ("8CH mode", [HEAD, *COLORS, *STROBE, MACRO[0], replace(MACRO[1], text="From slow to fast")]),
    (
        "34CH mode",
        [
            HEAD,
            *STROBE,
            *(replace(p, label=f"{p.label} {n}") for n in range(1, 9) for p in COLORS),
        ],
    ),
)


@chart(
    "seventh-dongxu",
    "plain grid, values repeated on every slot, 34 slots over the page",
    "pdf",
    "en",
    "Dongxu Electronic",
    "DX-1808 RGBW",
)
def dongxu(seed: int) -> Made:
    pdf = f.book("Helvetica", "", "DX-1808 LED wall wash bar, page")
    pdf.say("Channel description", 14, True)
    modes = []
    for title, params in DONGXU:
        seated = x.run(params)
        modes.append(s.titled(seated, title, title.removesuffix(" mode")))
        pdf.say(title, 11, True, 1)
        rows = [["Channel", "Value", "Function", "Remark"]]
        rows += f.body(seated, "slot value name text", k.zeros)
        pdf.grid([[f"CH{a}" if a.isdecimal() else a, *b] for a, *b in rows], (22, 28, 44, 62), (0, 2))
    pdf.say("Red 1, Green 1, Blue 1 and White 1 is the section near the power cable.", 8.5)
    return k.made("Dongxu Electronic", "DX-1808 RGBW", modes, bytes(pdf.output()))


PEBBLE_LABELS = (
    ("3-CH", ("Red", "Green", "Blue")),
    ("5-CH", ("Red", "Green", "Blue", "Amber", "White")),
    ("8-CH", ("Dimmer", "Red", "Green", "Blue", "Amber", "White", "Strobe", "Auto Show")),
)
APART = "its values stand in a table of their own"
PEBBLE = {
    p.label: replace(p, doubt="may" if p.ranges else None, why=APART if p.ranges else "")
    for p in x.params("""
intensity-master dimmer: Dimmer
red: Red
green: Green
blue: Blue
amber: Amber
white: White
strobe shutter: Strobe
  0-9 out: Off | 10-255 flash: Slow to fast
macro effect color-macro: Auto Show
  0-9 nothing: Off | 10-89 runs: Fade through colors | 90-169 runs: Snap through colors
  170-255 runs: Candle flicker
""")
}


@chart(
    "seventh-pebble",
    "slots down, modes across, functions in the cells; values of two functions in a second table",
    "pdf",
    "en",
    "Voltaic Event Supply",
    "Pebble B6",
)
def pebble(seed: int) -> Made:
    pdf = f.book("vera", "PEBBLE B6 WIRELESS UPLIGHT", "Voltaic Event Supply |", "letter")
    pdf.say("DMX Traits", 14, True)
    pdf.say("Hold MODE until the display flashes, then pick 3-CH, 5-CH or 8-CH.")
    rows = [["Channel", *(name for name, _ in PEBBLE_LABELS)]]
    for at in range(8):
        rows.append([str(at + 1), *(labels[at] if at < len(labels) else "" for _, labels in PEBBLE_LABELS)])
    pdf.grid(rows, (24, 36, 36, 36), size=9, text_align="CENTER")
    pdf.say("DMX Values", 12, True)
    rows = [["Function", "Value", "Description"]]
    for label in ("Strobe", "Auto Show"):
        rows += [["" if n else label, k.dash(r.lo, r.hi), r.text] for n, r in enumerate(PEBBLE[label].ranges)]
    pdf.grid(rows, (36, 36, 60), (0,), size=9)
    pdf.say("Battery", 12, True)
    pdf.grid([["Setting", "Hours"], ["One color", "16"], ["All colors", "7"]], (36, 36), size=9)
    modes = [
        s.titled(k.seat([PEBBLE[one] for one in labels], " ".join(map(str, range(1, len(labels) + 1)))), name)
        for name, labels in PEBBLE_LABELS
    ]
    return k.made("Voltaic Event Supply", "Pebble B6", modes, bytes(pdf.output()))


BLITZ = x.params("""
dimmer strobe-dimmer: Intensität = dunkel bis hell
strobe: Blitzrate
  0-9 off: kein Blitz | 10-255: 0,5 bis 20 Hz [0.5 20 Hz]
strobe-duration: Blitzdauer = 5 bis 600 ms [5 600 ms]
strobe-mode effect macro: Blitzart
  0-63 perhaps: gleichmäßig | 64-127 erratic: zufällig | 128-191 perhaps: anschwellend
  192-255 perhaps: abschwellend
""")
BLITZ_ZONES = [P(("dimmer", "strobe-dimmer"), f"Zone {n}", text="dunkel bis hell") for n in range(1, 7)]
BLITZ_MODES = (
    ("Modus 1", "2 Kanäle", BLITZ[:2]),
    ("Modus 2", "4 Kanäle", BLITZ),
    ("Modus 3", "10 Kanäle", [*BLITZ, *BLITZ_ZONES]),
)


@chart(
    "seventh-blitz",
    "from and to columns before the name, a heading over each table",
    "pdf",
    "de",
    "Sturmlicht",
    "Blitz 12 Z",
)
def blitz(seed: int) -> Made:
    pdf = f.book("dejavu", "Sturmlicht GmbH", "Blitz 12 Z · Handbuch ·")
    pdf.say("DMX-Kanäle", 14, True)
    pdf.say(
        "Achtung: Blitzlicht kann epileptische Anfälle auslösen. Publikum vor der Vorstellung warnen. "
        "Bei Dauerbetrieb über 8 s begrenzt das Gerät die Leistung."
    )
    modes: list[M] = []
    for name, count, params in BLITZ_MODES:
        seated = x.run(params)
        modes.append(f.named(seated, name, count, joint=" – "))
        pdf.say(modes[-1].title, 11, True, 1)
        rows = [["Kanal", "von", "bis", "Funktion", "Bemerkung"]]
        rows += f.body(seated, "slot low high name text")
        pdf.grid(rows, (16, 14, 14, 44, 56), (0, 3), v_align="TOP")
    return k.made("Sturmlicht", "Blitz 12 Z", modes, bytes(pdf.output()))


RUBAN = (
    ("Mode 1 canal", [P(("dimmer",), "Toutes les lampes", text="0 à 100 %", spans=k.LEVEL)]),
    (
        "Mode 2 canaux",
        [
            P(("dimmer",), "Lampes impaires", text="0 à 100 %", spans=k.LEVEL),
            P(("dimmer",), "Lampes paires", text="0 à 100 %", spans=k.LEVEL),
        ],
    ),
    (
        "Mode 10 canaux",
        [P(("dimmer",), f"Lampe {n}", text="0 à 100 %", spans=k.LEVEL) for n in range(1, 11)],
    ),
)


@chart(
    "seventh-ruban",
    "three bare tables of lamps, slots as two figures",
    "pdf",
    "fr",
    "Maélis Événement",
    "Ruban 10",
)
def ruban(seed: int) -> Made:
    sheet = x.Sheet("Times-Roman", "Maélis Événement", "Ruban 10 - rampe de 10 lampes halogènes", (420, 595))
    sheet.say("Adressage DMX", 14, True)
    sheet.say("Les roues codeuses donnent l'adresse ; le commutateur M choisit le mode.", 9.5)
    modes = []
    for title, params in RUBAN:
        seated = x.run(params)
        modes.append(s.titled(seated, title, title.removeprefix("Mode ")))
        sheet.say(title, 10.5, True, 1)
        rows = [["Canal", "Lampe", "Valeur", "Niveau"]]
        rows += f.body(seated, "slot name value text", lambda lo, hi: f"{lo} à {hi}")
        rows = [[f"{int(a):02}" if a.isdecimal() else a, *b] for a, *b in rows]
        sheet.table(rows, (50, 110, 80, 80), "head", 9, after=8)
    return k.made("Maélis Événement", "Ruban 10", modes, sheet.data())
