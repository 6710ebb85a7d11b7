"""Workbooks by four makers: a RGBWW film light, a small wash, a theater profile and a follow spot."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside import eighth_b_kit as e
from intake.corpus.content import Made
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

EMBER = x.params("""
dimmer intensity-master: Intensity + Intensity Fine = 0–100% [0 100 %]
color-temperature: CCT + CCT Fine = 2000–10,000 K [2000 10000 K]
tint green-correction: Green/Magenta Shift = -100% to +100% [-100 100 %]
white-color-crossfade: Crossfade to Color = White to color
red: Red + Red Fine = 0–100% [0 100 %]
green: Green + Green Fine = 0–100% [0 100 %]
blue: Blue + Blue Fine = 0–100% [0 100 %]
warm-white: Warm White + Warm White Fine = 0–100% [0 100 %]
cool-white: Cool White + Cool White Fine = 0–100% [0 100 %]
hue: Hue + Hue Fine = 0–360° [0 360 deg]
saturation: Saturation = 0–100% [0 100 %]
strobe shutter: Strobe
  0-15 out: No strobe | 16-255 flash: 1–30 Hz [1 30 Hz]
""")
EMBER_PLANS = (
    ("CCT 8 bit", "1 2 3 - - - - - - - - 4"),
    ("CCT RGBWW 8 bit", "1 2 3 4 5 6 7 8 9 - - 10"),
    ("CCT RGBWW 16 bit", "1/2 3/4 5 6 7/8 9/10 11/12 13/14 15/16 - - 17"),
    ("HSI 16 bit", "1/2 3/4 5 6 - - - - - 7/8 9 10"),
)


@chart(
    "eighth-b-ember",
    "a sheet a mode named as its title, a cover sheet, fine bytes in rows of their own",
    "xlsx",
    "en",
    "Larkhill Motion",
    "Ember 2x1",
)
def ember(seed: int) -> Made:
    modes = [k.mode(k.seat(EMBER, plan), name) for name, plan in EMBER_PLANS]
    cover: list[list[v.Item]] = [["Ember 2x1 DMX specification"], ["Firmware", "1.4.0"], ["Revision", "C"]]
    sheets: list[tuple[str, list[list[v.Item]]]] = [("Cover", cover)]
    for mode in modes:
        rows: list[list[v.Item]] = [["DMX Channel", "Function", "DMX Value", "Range"]]
        rows += s.body(mode.params, "slot name value text", v.en, "Fine control")
        sheets.append((mode.title, rows))
    return k.made("Larkhill Motion", "Ember 2x1", modes, v.workbook(sheets))


JINCAI = x.params("""
pan: PAN + PAN FINE = 0-540° [0 540 deg]
tilt: TILT + TILT FINE = 0-180° [0 180 deg]
movement-speed: P/T SPEED = From fast to slow
dimmer intensity-master: DIMMER = From dark to bright
strobe shutter: STROBE
  0-9 out: No strobe | 10-255 flash: Strobe from slow to fast
red: RED = From dark to bright
green: GREEN = From dark to bright
blue: BLUE = From dark to bright
white: WHITE = From dark to bright
color-macro macro color-preset virtual-color-wheel effect: COLOR MACRO
  0-9 nothing: No function | 10-129: Color selection | 130-189 perhaps: Color jump
  190-255 perhaps: Color gradual change
macro movement-macro effect control other: MODE
  0-49 out: DMX control | 50-149 perhaps: Auto running | 150-255 sound: Voice control
reset control: RESET
  0-149 nothing: No function | 150-255 reset: Reset (keep for 3 seconds) {hold 3}
""")
JINCAI_PLANS = (("9CH MODE", "1 2 - 3 4 5 6 7 8 - - 9"), ("14CH MODE", "1/2 3/4 5 6 7 8 9 10 11 12 13 14"))


@chart(
    "eighth-b-jincai",
    "two modes under each other in one sheet, merged titles, merged slot and name cells, capitals",
    "xlsx",
    "en",
    "Jincai Stage Lighting Factory",
    "JC-719 Mini Wash",
)
def jincai(seed: int) -> Made:
    modes, rows = e.stacked(
        JINCAI,
        JINCAI_PLANS,
        ["CHANNEL", "FUNCTION", "DMX VALUE", "DESCRIPTION"],
        lambda params: s.body(params, "slot name value text", e.between("-", 3), reach=True),
        lambda title: (title.removesuffix(" MODE"),),
    )
    titles = {mode.title for mode in modes}
    rows = [[C(row[0], cols=4), None, None, None] if row and row[0] in titles else row for row in rows]
    return k.made("Jincai Stage Lighting Factory", "JC-719 Mini Wash", modes, s.book([("Sheet1", rows)]))


PROFIL = x.params("""
dimmer: Dimmer + Dimmer (fein) = 0 … 100 % [0 100 %]
shutter strobe: Strobe
  0-15 open: offen | 16-127 flash: Strobe langsam … schnell | 128-239 random: Zufallsstrobe langsam … schnell
  240-255 open: offen
color-wheel: Farbrad
  0-15 white: weiß | 16-47: Rot | 48-79: Amber | 80-111: Grün | 112-143: Blau | 144-175: Lavendel
  176-255 rainbow: Farbradrotation langsam … schnell
gobo-wheel: Goborad
  0-31 open: offen | 32-75: Gobo 1 (Zweige) | 76-119: Gobo 2 (Fenster) | 120-163: Gobo 3 (Wolken)
  164-255: Gobo 4 (Punkte)
gobo-index-rotation gobo-rotation gobo-index: Goborotation
  0-127 index gobo: Position 0° … 360° [0 360 deg] | 128-191 spin gobo: rechts, schnell … langsam
  192-255 spin gobo: links, langsam … schnell
iris: Iris = offen … geschlossen
focus: Schärfe = nah … fern
zoom: Zoom = 12° … 36° [12 36 deg]
frost: Frost
  0-127 out: aus | 128-255: ein
""")
PROFIL_PLANS = (("Modus 1 (7 Kanäle)", "1 2 3 4 5 - 6 7 -"), ("Modus 2 (10 Kanäle)", "1/2 3 4 5 6 7 8 9 10"))


@chart(
    "eighth-b-profil",
    "slots of two modes in the first columns, merged names, an ellipsis between values",
    "xlsx",
    "de",
    "Rautenberg Theaterlicht",
    "Profil 300 LED",
)
def profil(seed: int) -> Made:
    rows: list[list[v.Item]] = [["Profil 300 LED – DMX-Protokoll"], []]
    rows.append([*(title for title, _ in PROFIL_PLANS), "Funktion", "Wert", "Beschreibung"])
    for side in k.sides(PROFIL, *(plan for _, plan in PROFIL_PLANS)):
        high = len(side.rows)
        for n, (lo, hi, text) in enumerate(side.rows):
            first: list[Any] = ["–" if at is None else str(at) for at in side.slots] + [side.name]
            reach = [None if n else C(one, rows=high) for one in first] if high > 1 else first
            rows.append([*reach, e.between("…")(lo, hi), text or "Feinsteuerung"])
    modes = [
        k.mode(k.seat(PROFIL, plan), title, title.split(" (")[0], title[9:-1]) for title, plan in PROFIL_PLANS
    ]
    return k.made("Rautenberg Theaterlicht", "Profil 300 LED", modes, s.book([("DMX", rows)]))


FOLLOW = s.row_of(
    x.params("""
dimmer: Intensity + Intensity LSB = Closed to full
iris: Iris = Open to closed
color-temperature: Color Temperature = 3200 K to 6000 K [3200 6000 K]
color-wheel color-semaphore color-scroller color-preset: Color Flag
  0-31 white: No flag | 32-63: Pale rose | 64-95: Straw | 96-127: Steel | 128-159: Amber | 160-255: Congo
frost: Frost
  0-31 out: Out | 32-255: Light to heavy
strobe shutter: Strobe
  0-15 out: Off | 16-255 flash: 1 Hz to 12 Hz [1 12 Hz]
fan-mode fan: Fan
  0-127 fan: Standard | 128-255 fan: Quiet
""")
)


@chart(
    "eighth-b-follow",
    "facts of the product above the table, begin and end columns, notes under it",
    "xlsx",
    "en",
    "Garrick & Stowe",
    "Long Throw 900",
)
def follow(seed: int) -> Made:
    rows: list[list[v.Item]] = [
        ["Product", "Long Throw 900"],
        ["Document", "DMX protocol"],
        ["DMX connector", "5 pin"],
        [],
        ["DMX Slot", "Attribute", "Begin", "End", "Function"],
    ]
    rows += s.body(FOLLOW, "slot name from to text")
    rows += [[], ["The operator's handles have priority over DMX for 2 seconds after the last touch."]]
    return k.made("Garrick & Stowe", "Long Throw 900", [k.mode(FOLLOW)], s.book([("Protocol", rows)]))
