"""Workbooks by five more makers: a film light, a beam, a profile, a bar of pixels, a cyc light."""

from __future__ import annotations

from intake.corpus.content import M, Made, P
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

CELL = x.params("""
dimmer intensity-master: Dimmer + Dimmer fine = 0-100% [0 100 %]
color-temperature: CCT + CCT fine = 2000-10000 K [2000 10000 K]
tint green-correction: Green/magenta = Full magenta to full green, 128 is neutral
hue: Hue + Hue fine = 0-360° [0 360 deg]
saturation: Saturation + Saturation fine = 0-100% [0 100 %]
red: Red = 0-100% [0 100 %]
green: Green = 0-100% [0 100 %]
blue: Blue = 0-100% [0 100 %]
warm-white: Warm white = 0-100% [0 100 %]
cool-white: Cool white = 0-100% [0 100 %]
strobe shutter: Strobe
  0-15 out: Off | 16-255 flash: 1-30 Hz [1 30 Hz]
fan-mode fan: Fan
  0-63 fan: Smart | 64-127 fan: Low | 128-191 fan: High | 192-255 maybe-set fan: Off
""")
CELL_MODES = (
    ("CCT 8-bit", "1 2 3 - - - - - - - 4 5"),
    ("CCT 16-bit", "1/2 3/4 5 - - - - - - - 6 7"),
    ("HSI 16-bit", "1/2 - - 3/4 5/6 - - - - - 7 8"),
    ("RGBWW 8-bit", "1 - - - - 2 3 4 5 6 7 8"),
)


@chart(
    "seventh-b-cell",
    "a sheet a mode, its name in the second row, the resolution in a column of its own",
    "xlsx",
    "en",
    "Ravenglass Cine",
    "Cell 2x1",
)
def cell(seed: int) -> Made:
    sheets: list[tuple[str, list[list[v.Item]]]] = []
    modes: list[M] = []
    for name, plan in CELL_MODES:
        modes.append(k.mode(k.seat(CELL, plan), name, f"Mode: {name}"))
        rows: list[list[v.Item]] = [["Ravenglass Cine Cell 2x1"], [f"Mode: {name}"], []]
        rows.append(["Channel", "Parameter", "Resolution", "DMX", "Range"])
        for line in k.lines(modes[-1].params):
            bits = "16 bit" if len(line.p.slots) > 1 else "8 bit"
            for n, (lo, hi, text) in enumerate(line.rows):
                first: list[v.Item] = ["", "", ""] if n else [line.slot, line.name, bits]
                rows.append([*first, k.hyphen(lo, hi), text])
        sheets.append((name, rows))
    return k.made("Ravenglass Cine", "Cell 2x1", modes, v.workbook(sheets))


BEAM = x.params("""
pan: Pan + Pan fine = 0~540 degree [0 540 deg]
tilt: Tilt + Tilt fine = 0~270 degree [0 270 deg]
movement-speed: Pan/Tilt speed = Fast to slow
dimmer intensity-master: Dimmer = Dark to bright
strobe shutter: Strobe
  0-3 closed: Close | 4-103 flash: Strobe slow to fast | 104-107 open: Open
  108-207 pulse: Pulse strobe slow to fast | 208-212 open: Open | 213-251 random: Random strobe slow to fast
  252-255 open: Open
color-wheel: Color
  0-4 white: White | 5-9: Red | 10-14: Orange | 15-19: Aquamarine | 20-24: Deep green | 25-29: Light green
  30-34: Lavender | 35-39: Pink | 40-44: Yellow | 45-49: Magenta | 50-54: Cyan | 55-59: CTO 260
  60-64: CTO 190 | 65-127: Deep blue | 128-189 rainbow: Forward rainbow fast to slow
  190-193 stop: Stop | 194-255 rainbow: Backward rainbow slow to fast
gobo-wheel: Gobo
  0-9 open: Open | 10-19: Gobo 1 | 20-29: Gobo 2 | 30-39: Gobo 3 | 40-49: Gobo 4 | 50-59: Gobo 5
  60-69: Gobo 6 | 70-79: Gobo 7 | 80-89: Gobo 8 | 90-109 shake: Gobo 1 shake | 110-129 shake: Gobo 2 shake
  130-149 shake: Gobo 3 shake | 150-255 spin gobo-wheel: Gobo wheel rotate slow to fast
prism: Prism
  0-127 out: No prism | 128-255: Prism in
prism-rotation prism-index: Prism rotation
  0-127 index prism: Angle 0~360 degree [0 360 deg] | 128-189 spin prism: Forward fast to slow
  190-193 stop: Stop | 194-255 spin prism: Backward slow to fast
frost: Frost
  0-127 out: No frost | 128-255: Frost in
focus: Focus + Focus fine = Far to near
control lamp-control reset: Reset / lamp
  0-25 nothing: No function | 26-100 lamp-off: Lamp off (hold 3 s) {hold 3}
  101-200 lamp-on: Lamp on (hold 3 s) {hold 3} | 201-255 reset: Reset (hold 3 s) {hold 3}
""")
BEAM_PLANS = (("12CH", "1 2 3 4 5 6 7 8 9 10 11 12"), ("15CH", "1/2 3/4 5 6 7 8 9 10 11 12 13/14 15"))


@chart(
    "seventh-b-dengyue",
    "two slot columns and names that reach down, tildes, the table some rows below a blank corner",
    "xlsx",
    "en",
    "Dengyue Lighting",
    "DY-B380",
)
def dengyue(seed: int) -> Made:
    rows: list[list[v.Item]] = [["DY-B380 DMX channel"], [*(n for n, _ in BEAM_PLANS), "Function", "Value"]]
    rows[-1].append("Description")
    for side in k.sides(BEAM, *(plan for _, plan in BEAM_PLANS)):
        reach = len(side.rows)
        for n, (lo, hi, text) in enumerate(side.rows):
            first: list[v.Item] = [f"CH{at}" if at else "-" for at in side.slots]
            first.append(side.name)
            if reach > 1:
                first = [None if n else C(str(one), rows=reach) for one in first]
            rows.append([*first, f"{lo}~{hi}", text])
    modes = [k.mode(k.seat(BEAM, plan), name) for name, plan in BEAM_PLANS]
    return k.made("Dengyue Lighting", "DY-B380", modes, v.workbook([("Sheet1", rows)], top=4))


PROFIL = x.params("""
dimmer intensity-master: Dimmer + Dimmer fein = 0 bis 100 % [0 100 %] @0+0
shutter strobe: Shutter @40
  0-19 closed: geschlossen | 20-59 open: offen | 60-159 flash: Blitz 1 bis 20 Hz [1 20 Hz]
  160-229 random: Zufallsblitz | 230-255 open: offen
red: Rot = 0 bis 100 % [0 100 %] @255
green: Grün = 0 bis 100 % [0 100 %] @255
blue: Blau = 0 bis 100 % [0 100 %] @255
lime: Lime = 0 bis 100 % [0 100 %] @255
zoom: Zoom = 25° bis 50° [25 50 deg] @128
focus: Fokus = nah bis fern @128
blade-position: Schieber oben = offen bis Mitte @0
blade-angle: Schieber oben Winkel = -30° bis +30° [-30 30 deg] @128
blade-position: Schieber rechts = offen bis Mitte @0
blade-angle: Schieber rechts Winkel = -30° bis +30° [-30 30 deg] @128
blade-position: Schieber unten = offen bis Mitte @0
blade-angle: Schieber unten Winkel = -30° bis +30° [-30 30 deg] @128
blade-position: Schieber links = offen bis Mitte @0
blade-angle: Schieber links Winkel = -30° bis +30° [-30 30 deg] @128
framing-rotation: Blendenmodul drehen = -45° bis +45° [-45 45 deg] @128
""")
PROFIL_PLANS = (
    ("Kompakt", "1 2 3 4 5 6 7 8 - - - - - - - - -"),
    ("Voll", "1/2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18"),
)


@chart(
    "seventh-b-profil",
    "name first, defaults before values, slots of two modes last, merged downward, blades",
    "xlsx",
    "de",
    "Sternbach Theatertechnik",
    "Profil 26 M",
)
def profil(seed: int) -> Made:
    default = {p.label: p.default for p in PROFIL} | {p.fine[0]: p.fine_default for p in PROFIL if p.fine}
    head = ["Parameter", "Vorgabe", "DMX", "Wirkung", *(name for name, _ in PROFIL_PLANS)]
    rows: list[list[v.Item]] = [["Profil 26 M – Kanalbelegung"], [], [*head]]
    for side in k.sides(PROFIL, *(plan for _, plan in PROFIL_PLANS)):
        reach = len(side.rows)
        for n, (lo, hi, text) in enumerate(side.rows):
            first: list[v.Item] = [side.name, default[side.name]]
            last: list[v.Item] = ["–" if at is None else at for at in side.slots]
            if reach > 1:
                first = [None if n else C(str(one), rows=reach) for one in first]
                last = [None if n else C(str(one), rows=reach) for one in last]
            rows.append([*first, v.spaced(lo, hi), text, *last])
    rows += [[], ["Die Vorgabe gilt, wenn der Kanal nach dem Einschalten noch nicht gesendet wurde."]]
    modes = [k.mode(k.seat(PROFIL, plan), name) for name, plan in PROFIL_PLANS]
    return k.made("Sternbach Theatertechnik", "Profil 26 M", modes, v.workbook([("DMX", rows)]))


BAR_GLOBAL = x.params("""
intensity-master dimmer: Dimmer = 0-100% [0 100 %]
strobe shutter: Strobe
  0-9 out: Off | 10-255 flash: Slow to fast
macro effect color-macro pixel-macro pixel-effect: Program
  0-9 nothing: Off | 10-59 perhaps: Rainbow | 60-109 perhaps: Chase left | 110-159 perhaps: Chase right
  160-209 perhaps: Color fade | 210-255 sound: Sound active
""")
PIXELS = tuple(
    P((name.lower(),), f"Pixel {n} {name}", text="0-100%", spans=k.LEVEL)
    for n in range(1, 13)
    for name in ("Red", "Green", "Blue")
)
WHOLE = tuple(P((name.lower(),), name, text="0-100%", spans=k.LEVEL) for name in ("Red", "Green", "Blue"))


@chart(
    "seventh-b-bar",
    "two tables on one sheet, groups of pixels merged before the slots",
    "xlsx",
    "en",
    "Quillon Labs",
    "Pixel Bar 12",
)
def bar(seed: int) -> Made:
    rows: list[list[v.Item]] = [["Pixel Bar 12 - DMX channels"]]
    modes: list[M] = []
    for name, params in (("Whole bar", (*BAR_GLOBAL, *WHOLE)), ("Pixels", (*BAR_GLOBAL, *PIXELS))):
        modes.append(v.sized(s.row_of(params), name, "{} ({} channels)", "{} mode", "{1} channels"))
        rows += [[], [modes[-1].title], ["Section", "Channel", "Function", "Value", "Description"]]
        groups = {line.slot: "Global" if line.slot < 4 else "Bar" for line in k.lines(modes[-1].params)}
        if params[3:] == PIXELS:
            groups |= {slot: f"Pixel {(slot - 1) // 3}" for slot in groups if slot > 3}
        body = [(line, row) for line in k.lines(modes[-1].params) for row in line.rows]
        seen: set[object] = set()
        for line, (lo, hi, text) in body:
            group = groups[line.slot]
            reach = sum(groups[other.slot] == group for other, _ in body)
            first: list[v.Item] = [None if group in seen else C(group, rows=reach)]
            label = line.name.removeprefix(f"{group} ")
            first += ["", ""] if line.slot in seen else [line.slot, label]
            seen |= {group, line.slot}
            rows.append([*first, k.hyphen(lo, hi), text])
    return k.made("Quillon Labs", "Pixel Bar 12", modes, v.workbook([("DMX chart", rows)]))


RAMPE_WORDS = {
    "Dimmer": "dimmer intensity-master",
    "Rouge": "red",
    "Vert": "green",
    "Bleu": "blue",
    "Ambre": "amber",
    "Blanc": "white",
    "Stroboscope": "strobe shutter",
    "Programme": "macro effect color-macro",
    "Vitesse du programme": "macro-speed effect-speed color-macro-speed",
}
RAMPE = (
    ("Mode 4", "Rouge, Vert, Bleu, Ambre"),
    ("Mode 6", "Dimmer, Rouge, Vert, Bleu, Ambre, Blanc"),
    ("Mode 9", "Dimmer, Rouge, Vert, Bleu, Ambre, Blanc, Stroboscope, Programme, Vitesse du programme"),
)


@chart(
    "seventh-b-rampe",
    "slots downward, a column of functions for each of three modes, a sheet of data first",
    "xlsx",
    "fr",
    "Atelier Grandvallon",
    "Rampe Cyclo 8",
)
def rampe(seed: int) -> Made:
    modes = [k.mode(v.one_a_slot(labels, RAMPE_WORDS), name, name.split()[1]) for name, labels in RAMPE]
    rows: list[list[v.Item]] = [["Canal", *(name for name, _ in RAMPE)]]
    for at in range(9):
        rows.append([at + 1, *(m.params[at].label if at < m.footprint else "—" for m in modes)])
    data: list[list[v.Item]] = [["Rampe Cyclo 8"], ["Puissance", "320 W"], ["Indice de protection", "IP 20"]]
    data += [["Poids", "7,9 kg"], ["Angle", "60° x 20°"]]
    book = v.workbook([("Caractéristiques", data), ("Canaux DMX", rows)])
    return k.made("Atelier Grandvallon", "Rampe Cyclo 8", modes, book)
