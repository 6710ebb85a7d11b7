"""Lights for film sets: a plank, a panel, a fresnel, a softlight of steps, a wand and an ellipsoidal."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import Made, P
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

PLANK = x.params("""
dimmer: Dimmer = 0-100% [0 100 %]
color-temperature: CCT = 2800-6800 K [2800 6800 K]
tint green-correction: Green/Magenta = Full magenta to full green
strobe shutter: Strobe
  0-5 out: Off | 6-255 flash: 1-30 Hz [1 30 Hz]
effect macro: FX
  0-9 nothing: No effect | 10-39 runs: Candle | 40-69 runs: Bad bulb | 70-99 runs: Fireworks
  100-129 runs: Club | 130-159 runs: Storm | 160-189 runs: TV | 190-255 nothing: Reserved
effect-speed macro-speed: FX rate = Slow to fast
""")


@chart(
    "sixth-plank",
    "gray bands over unruled columns on a bare canvas, 16 bits in one row",
    "pdf",
    "en",
    "Halvard Cine",
    "Plank 300",
)
def plank(seed: int) -> Made:
    sheet = x.Sheet(head="Plank 300  /  DMX profiles  /  v1.3", foot="halvard cine")
    sheet.say("DMX profiles", 16, True, 8)
    sheet.say(
        "Pick a profile on the head under Setup > DMX > Profile. Profiles with 16 bits use two slots for"
    )
    sheet.say("dimmer and color temperature; the first slot is the high byte.", after=12)
    modes = []
    for name, plan in (
        ("P1 CCT 8 bit", "1 2 3 - - -"),
        ("P2 CCT 16 bit", "1/2 3/4 5 6 - -"),
        ("P3 CCT 16 bit + FX", "1/2 3/4 5 6 7 8"),
    ):
        number, rest = name.split(" ", 1)
        seated = k.seat([replace(p, fine=("fine",)) if p in PLANK[:2] else p for p in PLANK], plan)
        count = max(s for p in seated for s in p.slots)
        modes.append(x.mode(seated, f"{name}, {count} slots", name, rest, number))
        sheet.band(modes[-1].title, 480)
        rows = [["Slot", "Parameter", "DMX", "Range"]]
        rows += x.joined(seated, lambda lo, hi: f"{lo}–{hi}", "slot name value text")
        sheet.table(rows, (50, 130, 90, 210))
    sheet.say("In P3 the effect plays at the dimmer's level and color temperature.", 8)
    return k.made("Halvard Cine", "Plank 300", modes, sheet.data())


PANEL = x.params("""
dimmer: Light intensity = 0%~100% brightness adjust [0 100 %]
color-temperature: Color temp. = 2700K~10000K [2700 10000 K]
green-correction tint: G/M compensate = -100%~+100% [-100 100 %]
strobe shutter: Flash
  0-10 out: Flash close | 11-255 flash: Flash speed from slow to fast
hue: Hue = 0°~360° [0 360 deg]
saturation: Saturation = 0%~100% [0 100 %]
red: R = Red brightness 0%~100% [0 100 %]
green: G = Green brightness 0%~100% [0 100 %]
blue: B = Blue brightness 0%~100% [0 100 %]
warm-white: WW = Warm white brightness 0%~100% [0 100 %]
cool-white: CW = Cool white brightness 0%~100% [0 100 %]
effect macro: Light effect
  0-24 runs: Police car | 25-49 runs: Ambulance | 50-74 runs: Fire truck | 75-99 runs: Firework
  100-124 runs: Party | 125-149 runs: Broken lamp | 150-174 runs: Lightning | 175-199 runs: Paparazzi
  200-255 runs: SOS
effect-speed macro-speed: Effect frequency = From slow to fast
""")
PANEL_MODES = (
    ("CCT", "Light intensity | Color temp. | G/M compensate | Flash"),
    ("HSI", "Light intensity | Hue | Saturation | Color temp. | Flash"),
    ("RGBCW", "Light intensity | R | G | B | WW | CW | Flash"),
    ("EFFECT", "Light intensity | Light effect | Effect frequency"),
)


@chart(
    "sixth-panel",
    "merged and centered grid a mode, tildes, menus and faults around, translated English",
    "pdf",
    "en",
    "Shengpai Photo",
    "SP-600C",
)
def panel(seed: int) -> Made:
    pdf = f.book("dejavu", "Shengpai SP-600C LED video light", "Please read this manual carefully -")
    pdf.say("Product parameter", 12, True)
    pdf.grid(
        [
            ["Item", "Parameter"],
            ["Power", "600W max"],
            ["Color temperature", "2700K~10000K"],
            ["Working environment", "-10°C~40°C"],
        ],
        (50, 60),
    )
    pdf.say("DMX channel instruction", 12, True)
    pdf.say("Long press MODE key 3 seconds to enter the DMX set. The below table is every mode channel.")
    modes = []
    for name, labels in PANEL_MODES:
        count = labels.count("|") + 1
        seated = x.pick(PANEL, labels, " ".join(map(str, range(1, count + 1))))
        modes.append(x.mode(seated, f"{name} mode ({count} channel)", name, f"{name} mode"))
        pdf.say(modes[-1].title, 10, True)
        rows = [["Channel NO.", "Content", "Value", "Remarks"]]
        rows += f.body(seated, "slot name value text", f.tilde)
        pdf.grid(rows, (26, 44, 30, 74), (0, 1), 8, text_align="CENTER", v_align="MIDDLE")
    pdf.say("Attention: when no DMX signal, the lamp keep the last state.")
    return k.made("Shengpai Photo", "SP-600C", modes, bytes(pdf.output()))


FOCALE = x.params("""
dimmer: Intensité + Intensité (fin) = 0 à 100 % [0 100 %]
color-temperature: Température de couleur + Température de couleur (fin) = 2 700 à 6 500 K [2700 6500 K]
tint green-correction: Vert / magenta = de magenta à vert, neutre à 128
zoom: Zoom + Zoom (fin) = de 12° à 58° [12 58 deg]
strobe shutter: Stroboscope
  0-15 out: sans stroboscope | 16-255 flash: de 1 à 18 Hz [1 18 Hz]
dimmer-curve: Courbe
  0-63 menu dimmer-curve: selon le menu | 64-127 set dimmer-curve linear: linéaire
  128-191 set dimmer-curve square: quadratique | 192-255 set dimmer-curve s: en S
smoothing: Lissage
  0-63 menu smoothing: selon le menu | 64-127 set smoothing off: sans lissage
  128-191 set smoothing soft: lissage doux | 192-255 set smoothing slow: lissage lent
fan-mode fan: Ventilation
  0-84 fan: automatique | 85-169 fan: silencieuse | 170-255 fan: forte
""")
FOCALE_PLANS = (
    ("8 bits", "1 2 3 4 5 - - -"),
    ("8 bits +", "1 2 3 4 5 6 7 8"),
    ("16 bits", "1/2 3/4 5 6/7 8 9 10 11"),
)


@chart(
    "sixth-focale",
    "three slot columns at the right, values first, lines above each parameter",
    "pdf",
    "fr",
    "Ateliers Brévannes",
    "Focale 200 VW",
)
def focale(seed: int) -> Made:
    rows = f.beside(FOCALE, [plan for _, plan in FOCALE_PLANS], "name value text slots", k.dash, "")
    rows.insert(0, ["Fonction", "Valeur DMX", "Action", *(name for name, _ in FOCALE_PLANS)])
    sheet = x.Sheet("Times-Roman", "Ateliers Brévannes", "Focale 200 VW, notice d'utilisation")
    sheet.say("4. Commande DMX512", 14, True)
    sheet.say(
        "Choisissez le mode dans le menu DMX / Mode. Les trois dernières colonnes donnent le numéro de canal "
        "dans chaque mode ; une case vide signifie que la fonction n'existe pas dans ce mode.",
        after=10,
    )
    sheet.table(rows, (140, 75, 150, 42, 46, 46), "slots", 9)
    sheet.say("5. Nettoyez la lentille avec un chiffon doux.", 12, True)
    modes = [f.named(k.seat(FOCALE, plan), name) for name, plan in FOCALE_PLANS]
    return k.made("Ateliers Brévannes", "Focale 200 VW", modes, sheet.data())


SOFT = x.params("""
dimmer: Helligkeit + Helligkeit fein = 0 bis 100 % [0 100 %]
color-temperature: Weißton
  0-31: 2700 K [? 2700 2700 K] | 32-63: 3000 K [? 3000 3000 K] | 64-95: 3200 K [? 3200 3200 K]
  96-127: 4000 K [? 4000 4000 K] | 128-159: 4500 K [? 4500 4500 K] | 160-191: 5000 K [? 5000 5000 K]
  192-223: 5600 K [? 5600 5600 K] | 224-255: 6500 K [? 6500 6500 K]
green-correction tint: Grünkorrektur
  0-51: 1/4 Minusgrün | 52-102: 1/8 Minusgrün | 103-153 white: neutral | 154-204: 1/8 Plusgrün
  205-255: 1/4 Plusgrün
strobe shutter: Blitz
  0-9 out: aus | 10-255 flash: langsam bis schnell
""")


@chart(
    "sixth-softlight",
    "ruled, two modes, a slot of kelvin steps",
    "pdf",
    "de",
    "Wendelbach Filmlicht",
    "Fläche 60",
)
def softlight(seed: int) -> Made:
    font = f.letter("vera")
    parts: list[Any] = [f.say("DMX-Belegung Fläche 60", 14, f"{font}-Bold", 8)]
    modes = []
    for name, plan in (("Modus A", "1 2 3 -"), ("Modus B", "1/2 3 4 5")):
        seated = k.seat(SOFT, plan)
        modes.append(f.named(seated, name, f"({max(s for p in seated for s in p.slots)} Kanäle)"))
        rows = [["Kanal", "Werte", "Funktion", "Wirkung"]]
        rows += f.body(seated, "slot value name text", lambda lo, hi: f"{lo} bis {hi}", "Feineinstellung")
        marks = [("GRID", (0, 0), (-1, -1), 0.6, "#333333"), *f.merges(rows, (0,))]
        parts += [
            f.say(modes[-1].title, 11, f"{font}-Bold"),
            f.grid(rows, [45, 80, 140, 180], *marks, font=font),
        ]
    parts.append(f.say("Farbtemperaturen gelten bei 25 °C. Leistungsaufnahme höchstens 60 W.", 8, font))
    data = f.flow(parts, "Wendelbach Filmlicht   Fläche 60   Stand 03", head="Bedienungsanleitung")
    return k.made("Wendelbach Filmlicht", "Fläche 60", modes, data)


WAND = x.params("""
intensity-master dimmer: Master dimmer = Off to full
red: Red = Off to full
green: Green = Off to full
blue: Blue = Off to full
white: White = Off to full
color-temperature white-point: White point
  0-9 nothing: Off (color channels rule) | 10-255: 2000 K to 10,000 K [2000 10000 K]
pixel-effect effect macro pixel-macro: Pixel FX
  0-9 nothing: None | 10-59 runs: Chase up | 60-109 runs: Chase down | 110-159 runs: Twinkle
  160-209 runs: Rainbow | 210-255 runs: Flame
pixel-effect-speed effect-speed macro-speed pixel-macro-speed: FX speed = Slow to fast
""")


@chart(
    "sixth-wand",
    "a heading a channel with a small table under it, two modes",
    "pdf",
    "en",
    "Juniper Row",
    "Wand 8",
)
def wand(seed: int) -> Made:
    pdf = f.book("Helvetica", "", "Juniper Row Wand 8 quick guide -", "letter")
    pdf.say("Wand 8 DMX guide", 16, True, 4)
    pdf.say("The Wand has two modes. Simple runs the tube as one light; Full adds effects over its 8 pixels.")
    modes = []
    for name, plan in (("Simple mode", "1 2 3 4 5 - - -"), ("Full mode", "1 2 3 4 5 6 7 8")):
        seated = k.seat(WAND, plan)
        modes.append(f.named(seated, name, f"- {len(seated)} channels"))
        modes[-1] = replace(modes[-1], names=(*modes[-1].names, name.split()[0]))
        pdf.say(modes[-1].title, 13, True)
        for line in k.lines(seated):
            if pdf.get_y() > 225:
                pdf.add_page()
            pdf.say(f"Channel {line.slot}: {line.name}", 9.5, True, 0.5)
            rows = [["DMX value", "What it does"]]
            rows += [[k.hyphen(lo, hi), text] for lo, hi, text in line.rows]
            pdf.grid(rows, (30, 80), size=8)
    return k.made("Juniper Row", "Wand 8", modes, bytes(pdf.output()))


GELS = """
No gel, Pale straw, Straw, Deep straw, Gold, Pale rose, Rose, Bastard pink, Salmon, Cherry, Primary red,
Lavender, Violet, Steel, Pale blue, Sky blue, Primary blue, Night blue, Sea green, Moss green, Primary green
"""
ELL = x.params("""
dimmer: Intensity + Intensity fine = 0 to 100 % [0 100 %]
color-preset swatch color-macro virtual-color-wheel: Gel
color-temperature: Base white = 2800 to 6500 K [2800 6500 K]
shutter strobe: Shutter
  0-9 closed: Closed | 10-19 open: Open | 20-229 flash: Strobe, slow to fast | 230-255 open: Open
fan-mode fan: Fan
  0-127 fan: Auto | 128-255 fan: Quiet
""")
GEL = replace(
    ELL[1],
    ranges=x.listed(GELS, 10, 12),
    doubt="may",
    why="its values stand in a table of their own",
)


@chart(
    "sixth-ellipsoidal",
    "the gels of one slot in a list of two halves under the chart",
    "pdf",
    "en",
    "Copsewood Optics",
    "Ell 19 CL",
)
def ellipsoidal(seed: int) -> Made:
    seated = k.seat((ELL[0], GEL, *ELL[2:]), "1/2 3 4 5 6")
    pdf = f.book("stix", "Copsewood Optics", "Ell 19 CL")
    pdf.say("DMX channels", 15, True, 3)
    pdf.say("The Ell 19 CL uses six channels.")
    shown: list[P] = [
        replace(p, ranges=(), text="See gel list below") if p.label == "Gel" else p for p in seated
    ]
    rows = [["Channel", "Function", "Values", "Result"]]
    rows += f.body(shown, "slot name value text", k.hyphen, "Fine control of channel 1")
    pdf.grid(rows, (20, 40, 30, 70), size=9, borders_layout="HORIZONTAL_LINES")
    pdf.say("Gel list (channel 3)", 12, True)
    half = [[k.hyphen(r.lo, r.hi), r.text] for r in GEL.ranges]
    left, right = half[:11], [*half[11:], ["", ""]]
    pdf.grid(
        [["Value", "Gel", "Value", "Gel"], *(a + b for a, b in zip(left, right, strict=True))], (22, 42) * 2
    )
    return k.made("Copsewood Optics", "Ell 19 CL", [k.mode(seated)], bytes(pdf.output()))
