"""CSV by four makers: a bi-color panel, a beam head, a theater fresnel and an outdoor projector."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside import eighth_b_kit as e
from intake.corpus.content import M, Made
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import csv_text
from intake.corpus.registry import chart

SLATE = x.params("""
dimmer intensity-master: Intensity = 0-100% [0 100 %]
color-temperature: CCT = 2800K-6800K [2800 6800 K]
tint green-correction: G/M = Full magenta to full green
strobe shutter: Strobe
  0-9 out: Off | 10-255 flash: 1-25 Hz [1 25 Hz]
effect macro: Effect
  0-15 nothing: None | 16-63 runs: Fireworks | 64-111 runs: Faulty bulb | 112-159 runs: Police car
  160-207 runs: Campfire | 208-255 runs: Lightning
effect-speed macro-speed: Effect rate = Slow to fast
fan-mode fan: Fan
  0-84 fan: Auto | 85-169 fan: Low | 170-255 fan: High
""")
SLATE_PLANS = (("CCT", "1 2 3 - - - -"), ("CCT & FX", "1 2 3 4 5 6 7"))


@chart(
    "eighth-b-slate",
    "every cell repeated in each row, the mode first, minimum and maximum columns",
    "csv",
    "en",
    "Ashgrove Cine Lighting",
    "Slate 60",
)
def slate(seed: int) -> Made:
    rows: list[list[Any]] = [["Mode", "Channel", "Parameter", "DMX Min", "DMX Max", "Description"]]
    modes: list[M] = []
    for name, plan in SLATE_PLANS:
        modes.append(k.mode(k.seat(SLATE, plan), name))
        rows += [[name, *row] for row in s.body(modes[-1].params, "slot name from to text", every=True)]
    return k.made("Ashgrove Cine Lighting", "Slate 60", modes, csv_text(rows))


ZHONGYUE = s.row_of(
    x.params("""
color-wheel: Color disc
  0-4 white: White | 5-9: Red | 10-14: Orange | 15-19: Water blue | 20-24: Green | 25-29: Yellow
  30-34: Lavender | 35-127: Deep blue | 128-189 rainbow: Forward flowing water effect, fast to slow
  190-193 stop: Stop | 194-255 rainbow: Reverse flowing water effect, slow to fast
shutter strobe: Strobe
  0-3 closed: Close light | 4-103 flash: Strobe, slow to fast | 104-107 open: Open light
  108-207 random: Random strobe, slow to fast | 208-255 open: Open light
dimmer: Dimming = 0-100% linear dimming [0 100 %]
gobo-wheel: Gobo disc
  0-4 open: White light | 5-9: Gobo 1 | 10-14: Gobo 2 | 15-19: Gobo 3 | 20-24: Gobo 4 | 25-29: Gobo 5
  30-127: Gobo 6 | 128-255 spin gobo-wheel: Gobo disc rotation, slow to fast
prism: Prism
  0-127 out: No prism | 128-255: Insert prism
prism-rotation prism-index prism: Prism rotation
  0-127 index prism: Prism angle 0-360 degrees [0 360 deg]
  128-190 spin prism: Forward rotation, fast to slow | 191-192 stop: Stop
  193-255 spin prism: Reverse rotation, slow to fast
frost: Frost
  0-127 out: No frost | 128-255: Insert frost
focus: Focusing = Far to near
pan: X axis + X axis fine = 0-540 degrees [0 540 deg]
tilt: Y axis + Y axis fine = 0-270 degrees [0 270 deg]
movement-speed: XY speed = Fast to slow
reserved: Reserved
reset: Reset
  0-199 nothing: No function | 200-255 reset: Reset after holding 3 seconds {hold 3}
lamp-control control: Lamp
  0-25 nothing: No function | 26-100 lamp-off: Lamp off after holding 5 seconds {hold 5}
  101-199 nothing: No function | 200-255 lamp-on: Lamp on
""")
)


@chart(
    "eighth-b-zhongyue",
    "one table, three digits with tildes, channel as 1CH, translated wording",
    "csv",
    "en",
    "Zhongyue Lighting Equipment",
    "ZY-B280",
)
def zhongyue(seed: int) -> Made:
    body = s.body(ZHONGYUE, "slot name value text", e.between("~", 3), "Fine adjust")
    rows = [[f"{row[0]}CH" if row[0] else "", *row[1:]] for row in body]
    rows = [["Channel", "Function", "DMX value", "Explanation"], *rows]
    mode = k.mode(ZHONGYUE)
    return k.made("Zhongyue Lighting Equipment", "ZY-B280", [mode], csv_text(rows))


SCHAUBURG = x.params("""
dimmer: Dimmer + Dimmer fein = 0 bis 100 % [0 100 %]
strobe shutter: Shutter
  0-7 closed: geschlossen | 8-15 open: offen | 16-239 flash: Stroboskop 1 bis 15 Hz [1 15 Hz]
  240-255 open: offen
color-temperature: Weißton = 2800 bis 6500 K [2800 6500 K]
zoom: Zoom + Zoom fein = 15° bis 55° [15 55 deg]
dimmer-curve: Dimmerkurve
  0-63 curve: linear | 64-127 curve: quadratisch | 128-191 curve: S-Kurve | 192-255 curve: Glühlampe
fan-mode fan: Lüfterbetrieb
  0-127 fan: geregelt | 128-255 fan: Theater (leise)
reset control: Gerätereset
  0-239 nothing: ohne Funktion | 240-255 reset: Reset auslösen
""")
SCHAUBURG_PLANS = (
    ("Kompakt", "1 - 2 3 - - -"),
    ("Standard", "1 2 3 4 5 6 7"),
    ("16 Bit", "1/2 3 4 5/6 7 8 9"),
)


@chart(
    "eighth-b-schauburg",
    "function and values first, slots of three modes behind, hyphens where absent",
    "csv",
    "de",
    "Schauburg Bühnentechnik",
    "Stufenlinse 200 TW",
)
def schauburg(seed: int) -> Made:
    plans = [plan for _, plan in SCHAUBURG_PLANS]
    rows: list[list[Any]] = [["Funktion", "DMX-Wert", "Wirkung", *(name for name, _ in SCHAUBURG_PLANS)]]
    rows += e.abreast(
        SCHAUBURG,
        plans,
        lambda slots, name, value, text: [name, value, text, *slots],
        e.between(" - "),
        "-",
        "Feinabstimmung",
    )
    modes = [k.mode(k.seat(SCHAUBURG, plan), name) for name, plan in SCHAUBURG_PLANS]
    return k.made("Schauburg Bühnentechnik", "Stufenlinse 200 TW", modes, csv_text(rows, ";"))


LANTERNE = x.params("""
dimmer intensity-master: Gradateur général = 0 à 100 % [0 100 %]
red: Rouge = 0 à 100 % [0 100 %]
green: Vert = 0 à 100 % [0 100 %]
blue: Bleu = 0 à 100 % [0 100 %]
white: Blanc = 0 à 100 % [0 100 %]
strobe shutter: Stroboscope
  0-5 out: Sans strobe | 6-255 flash: Lent à rapide
color-macro macro effect: Scénarios
  0-20 nothing: Aucun | 21-80 perhaps: Arc-en-ciel | 81-140 perhaps: Coucher de soleil
  141-200 perhaps: Aurore | 201-255 perhaps: Vagues
macro-speed color-macro-speed effect-speed: Vitesse du scénario = Lent à rapide
""")
LANTERNE_PLANS = (("Mode 4 canaux", "- 1 2 3 4 - - -"), ("Mode 8 canaux", "1 2 3 4 5 6 7 8"))


@chart(
    "eighth-b-lanterne",
    "two tables under their titles, an old code page, address notes behind",
    "csv",
    "fr",
    "Atelier Lanterne",
    "Façade 48 RVBB",
)
def lanterne(seed: int) -> Made:
    modes, rows = e.stacked(
        LANTERNE,
        LANTERNE_PLANS,
        ["Canal", "Désignation", "Plage", "Commentaire"],
        lambda params: s.body(params, "slot name value text", e.between(" à ")),
        lambda title: (title.removeprefix("Mode "),),
    )
    rows += [[], ["Adresse réglée en usine : 001. Terminaison de ligne : 120 ohms."]]
    data = csv_text(rows, ";").encode("cp1252")
    made = k.made("Atelier Lanterne", "Façade 48 RVBB", modes, "")
    return Made(data, made.truth)
