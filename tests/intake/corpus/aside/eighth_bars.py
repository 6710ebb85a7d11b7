"""Bars and washes in PDFs: a pixel bar, a cyc light, a battery uplight, a strobe panel and a par."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.aside import eighth_kit as e
from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

RIFF = x.params("""
dimmer intensity-master: Master Dimmer = 0%-100% [0 100 %]
red: Red = 0%-100% [0 100 %]
green: Green = 0%-100% [0 100 %]
blue: Blue = 0%-100% [0 100 %]
strobe shutter: Strobe
  0-10 out: Off | 11-255 flash: Slow-Fast
macro effect color-macro pixel-effect pixel-macro: Built-in Chase
  0-25 nothing: Off | 26-50 perhaps: Chase 1 | 51-75 perhaps: Chase 2 | 76-100 perhaps: Chase 3
  101-125 perhaps: Chase 4 | 126-150 perhaps: Chase 5 | 151-175 perhaps: Chase 6 | 176-200 perhaps: Chase 7
  201-255 sound: Sound Mode
macro-speed effect-speed pixel-effect-speed pixel-macro-speed color-macro-speed: Chase Speed = Slow-Fast
""")


@chart(
    "eighth-riff",
    "three modes in bands, cells as R1 G1 B1, repeated slots in every row",
    "pdf",
    "en",
    "Nightjar Audio & Light",
    "Riff Bar 8",
)
def riff(seed: int) -> Made:
    modes = [
        e.part(RIFF, "Red | Green | Blue", "3-CH MODE", "3-CH", "3CH"),
        e.part(
            RIFF,
            "Master Dimmer | Red | Green | Blue | Strobe | Built-in Chase | Chase Speed",
            "7-CH MODE",
            "7-CH",
            "7CH",
        ),
        e.named(
            e.cells(8, "R=red G=green B=blue", "{color}{n}", text="0%-100%"), "24-CH MODE", "24-CH", "24CH"
        ),
    ]
    sheet = x.Sheet("Helvetica", "", "Riff Bar 8 - User Guide")
    sheet.say("DMX TRAITS", 15, True)
    sheet.say("Use the 3-pin DMX sockets. Up to 32 bars may be linked before a splitter is needed.")
    for m in modes:
        sheet.band(m.title, 380, gray=0.75)
        rows = [["Channel", "Function", "DMX", "Effect"]]
        rows += f.body(m.params, "slot name value text", k.zeros, again=True)
        sheet.table(rows, (60, 120, 80, 120), "rows", 8)
    return k.made("Nightjar Audio & Light", "Riff Bar 8", modes, sheet.data())


CYC = x.params("""
dimmer intensity-master: Intensity = 0–100% [0 100 %]
red: Red = 0–100% [0 100 %]
green: Green = 0–100% [0 100 %]
blue: Blue = 0–100% [0 100 %]
amber: Amber = 0–100% [0 100 %]
lime: Lime = 0–100% [0 100 %]
hue: Hue = 0–360° [0 360 deg]
saturation: Saturation = 0–100% [0 100 %]
color-temperature white-point: White Point = 2700–6500 K [2700 6500 K]
strobe shutter: Strobe
  0-7 out: No strobe | 8-255 flash: Slow to fast
fan-mode fan: Fan
  0-63 fan: Auto | 64-127 fan: Quiet | 128-255 fan: Full
""")
CYC_PLANS = (
    ("Direct", "- 1 2 3 4 5 - - - - -"),
    ("RGBAL", "1 2 3 4 5 6 - - - 7 8"),
    ("HSI", "3 - - - - - 1 2 4 5 6"),
)


@chart(
    "eighth-horizon",
    "parameters down, modes across in an order of their own, an en dash for none",
    "pdf",
    "en",
    "Ashgrove Theatrical",
    "Horizon Cyc 4",
)
def horizon(seed: int) -> Made:
    font = f.letter("stix")
    rows = [["Parameter", *(name for name, _ in CYC_PLANS), "DMX", "Result"]]
    rows += f.beside(CYC, [plan for _, plan in CYC_PLANS], "name slots value text", v.spaced, "–")
    marks: list[tuple[Any, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1, "#000000")]
    marks += [*s.above(rows, "#777777", 0.3), ("BACKGROUND", (1, 1), (3, -1), "#f0f0f0")]
    parts = [
        f.say("DMX Control Channels", 16, f"{font}-Bold", 6),
        f.say("The figures below Direct, RGBAL and HSI are channel numbers in that mode.", 10, font),
        f.grid(rows, [100, 48, 48, 48, 70, 130], *marks, font=font, size=9.5),
    ]
    modes = [k.mode(k.seat(CYC, plan), name) for name, plan in CYC_PLANS]
    data = f.flow(
        parts, "Horizon Cyc 4 Installation and User Manual", (612, 792), "Ashgrove Theatrical, Inc."
    )
    return k.made("Ashgrove Theatrical", "Horizon Cyc 4", modes, data)


LUMI = x.params("""
dimmer intensity-master: Master dimmer = 0–100%, dark to bright [? 0 100 %]
red: Red = 0–100%, dark to bright [? 0 100 %]
green: Green = 0–100%, dark to bright [? 0 100 %]
blue: Blue = 0–100%, dark to bright [? 0 100 %]
white: White = 0–100%, dark to bright [? 0 100 %]
amber: Amber = 0–100%, dark to bright [? 0 100 %]
uv: UV = 0–100%, dark to bright [? 0 100 %]
strobe shutter: Strobe
  0-5 out: No function | 6-255 flash: Strobe slow to fast
macro color-macro effect color-preset: Color macro
  0-10 nothing: No function | 11-60: Fixed colors | 61-110 perhaps: Color jump | 111-160 perhaps: Color fade
  161-210 perhaps: Color pulse | 211-255 sound: Voice control
macro-speed color-macro-speed effect-speed: Speed = Speed of macro slow to fast
""")


@chart(
    "eighth-ember",
    "two tables of a battery light, values before functions, striped rows",
    "pdf",
    "en",
    "Lanqiao Event Light",
    "Ember Six",
)
def ember(seed: int) -> Made:
    pdf = f.book("vera", "Ember Six wireless battery uplight", "Lanqiao Event Light")
    pdf.say("DMX mode", 14, True)
    pdf.say("Switch on the built-in receiver before DMX use. Blue signal lamp on: the receiver is matched.")
    modes = []
    head = "Master dimmer | Red | Green | Blue | White | Amber | UV"
    for labels in (head.partition(" | ")[2], f"{head} | Strobe | Color macro | Speed"):
        m = e.part(LUMI, labels)
        title = f"{m.footprint} channels mode"
        modes.append(e.named(m.params, title, f"{m.footprint} channels", f"{m.footprint}CH"))
        rows = [["CH", "DMX value", "Function", "Explanation"]]
        rows += f.body(m.params, "slot value name text", k.hyphen)
        pdf.say(title, 10.5, True, 1)
        pdf.grid(
            rows,
            (14, 26, 40, 70),
            borders_layout="NO_HORIZONTAL_LINES",
            cell_fill_color=236,
            cell_fill_mode="ROWS",
        )
    return k.made("Lanqiao Event Light", "Ember Six", modes, bytes(pdf.output()))


BLITZ = x.params("""
dimmer intensity-master: Dimmer = 0 – 100 % [0 100 %]
strobe-duration: Blitzdauer = 10 ms – 600 ms [10 600 ms]
strobe shutter: Blitzrate
  0-5 out: kein Blitz | 6-255 flash: 1 Hz – 25 Hz [1 25 Hz]
strobe-mode effect macro: Blitzeffekt
  0-41 nothing: kein Effekt | 42-84 perhaps: Rampe auf | 85-127 perhaps: Rampe ab
  128-170 perhaps: Rampe auf und ab | 171-213 erratic: Zufall | 214-255 perhaps: Gewitter
red: Rot = 0 – 100 % [0 100 %]
green: Grün = 0 – 100 % [0 100 %]
blue: Blau = 0 – 100 % [0 100 %]
""")


@chart(
    "eighth-wetterleuchten",
    "a card across, two modes as columns behind the names, boxes",
    "pdf",
    "de",
    "Hagelstolz Effektlicht",
    "Blitzfeld 1000 RGB",
)
def wetterleuchten(seed: int) -> Made:
    plans = (("Modus 4", "1 2 3 4 - - -"), ("Modus 7", "1 2 3 4 5 6 7"))
    rows = [["Funktion", "Modus 4", "Modus 7", "Wert", "Wirkung"]]
    rows += f.beside(BLITZ, [plan for _, plan in plans], "name slots value text", k.dash, "")
    sheet = x.Sheet("Helvetica", "Hagelstolz Effektlicht", "Blitzfeld 1000 RGB · Kurzanleitung", (842, 595))
    sheet.say("DMX-Kanäle", 14, True)
    sheet.say("Achtung: Stroboskoplicht kann epileptische Anfälle auslösen. Bitte Publikum vorher warnen.", 9)
    sheet.table(rows, (150, 60, 60, 90, 220), "box", 9)
    modes = [k.mode(k.seat(BLITZ, plan), name) for name, plan in plans]
    return k.made("Hagelstolz Effektlicht", "Blitzfeld 1000 RGB", modes, sheet.data())


CANNON = x.params("""
red: Red = Red intensity 0% to 100% [0 100 %]
green: Green = Green intensity 0% to 100% [0 100 %]
blue: Blue = Blue intensity 0% to 100% [0 100 %]
white: White = White intensity 0% to 100% [0 100 %]
dimmer intensity-master: Dimmer = Overall intensity 0% to 100% [0 100 %]
strobe shutter: Strobe
  0-15 out: No strobe | 16-255 flash: Strobe slow to fast
smoothing dimmer-fade-time dimmer-curve: Dimmer Speed
  0-51 menu smoothing: As set in the menu | 52-101 maybe-set smoothing: Speed off
  102-152 maybe-set smoothing: Fast | 153-203 maybe-set smoothing: Medium | 204-255 maybe-set smoothing: Slow
""")
CANNON = (*CANNON[:6], replace(CANNON[6], doubt="may", why="its name may mean smoothing, a time or a curve"))
CANNON_MODES = (
    ("4-Channel Mode", "Red | Green | Blue | White"),
    ("6-Channel Mode", "Dimmer | Red | Green | Blue | White | Strobe"),
    ("7-Channel Mode", "Dimmer | Red | Green | Blue | White | Strobe | Dimmer Speed"),
)


@chart(
    "eighth-cannon",
    "decimal and percent columns, three modes with merged slots, columns centered",
    "pdf",
    "en",
    "Bluestem Lighting Co.",
    "Cannon Par 12Q",
)
def cannon(seed: int) -> Made:
    parts = [f.say("DMX Modes and Channels", 15, "Times-Bold", 8)]
    modes = []
    for title, labels in CANNON_MODES:
        m = e.part(CANNON, labels, title, title.removesuffix(" Mode"), title.split("-")[0] + "CH")
        modes.append(m)
        rows = [["Channel", "Decimal", "Percent", "Function", "Description"]]
        rows += f.body(m.params, "slot value share name text", v.en)
        marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.5, "#333333")]
        marks += [("BACKGROUND", (0, 0), (-1, 0), "#3b3b3b"), *f.merges(rows, (0, 3))]
        marks += [("VALIGN", (0, 0), (-1, -1), "MIDDLE")]
        grid = f.grid(rows, [55, 65, 65, 95, 190], *marks, font="Times-Roman", size=9.5, align=1, white=True)
        parts += [f.say(title, 12, "Times-Bold", 3), grid]
    parts.append(f.say("In dimmer speed Off the output follows each value at once.", 9, "Times-Roman"))
    data = f.flow(parts, "Cannon Par 12Q User Manual Rev. 3", (612, 792))
    return k.made("Bluestem Lighting Co.", "Cannon Par 12Q", modes, data)
