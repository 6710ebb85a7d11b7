"""Three more workbooks and three of the open format: uplight, cyc, spot head, hazer, laser, pendant."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside import eighth_b_kit as e
from intake.corpus.content import M, Made
from intake.corpus.grids import C, Element, Heading, Para
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import Cell, table
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import ods

PEBBLE = x.params("""
dimmer intensity-master: Master Dimmer
red: Red
green: Green
blue: Blue
amber: Amber
white: White
uv: UV
strobe shutter: Strobe
color-macro macro color-preset: Color Macro
macro-speed color-macro-speed effect-speed: Macro Speed
""")
PEBBLE_PLANS = (
    ("4 CH", "- 1 2 3 4 - - - - -"),
    ("6 CH", "- 1 2 3 4 5 6 - - -"),
    ("8 CH", "1 2 3 4 5 6 7 8 - -"),
    ("10 CH", "1 2 3 4 5 6 7 8 9 10"),
)


@chart(
    "eighth-b-pebble",
    "a matrix of slots by modes with functions as cells, no values",
    "xlsx",
    "en",
    "Tansy Event Lighting",
    "Pebble 6 Battery",
)
def pebble(seed: int) -> Made:
    modes = [k.mode(k.seat(PEBBLE, plan), title, title.replace(" ", "")) for title, plan in PEBBLE_PLANS]
    rows: list[list[v.Item]] = [["Pebble 6 Battery"], [], ["Channel", *(mode.title for mode in modes)]]
    for slot in range(1, 11):
        names = [next((p.label for p in mode.params if slot in p.slots), "") for mode in modes]
        rows.append([slot, *names])
    return k.made("Tansy Event Lighting", "Pebble 6 Battery", modes, v.workbook([("DMX", rows)]))


HERSE = x.params("""
dimmer intensity-master: Intensité + Intensité fin = 0 - 100 % [0 100 %]
red: Rouge = 0 - 100 % [0 100 %]
green: Vert = 0 - 100 % [0 100 %]
blue: Bleu = 0 - 100 % [0 100 %]
amber: Ambre = 0 - 100 % [0 100 %]
lime: Citron vert = 0 - 100 % [0 100 %]
strobe shutter: Strobe
  0-7 out: Pas de strobe | 8-255 flash: Lent vers rapide
color-preset color-macro virtual-color-wheel: Couleurs mémorisées
  0-15 nothing: Pas de couleur | 16-63: Blanc 3200 K [? 3200 3200 K] | 64-111: Blanc 5600 K [? 5600 5600 K]
  112-159: Bleu nuit | 160-207: Ciel de jour | 208-255: Coucher de soleil
dimmer-curve: Courbe
  0-127 curve: Linéaire | 128-255 curve: Carrée
dimmer-fade-time smoothing: Temps de réponse = 0 s à 4 s [0 4 s]
""")
HERSE_PLANS = (("5 canaux", "- 1 2 3 4 5 - - - -"), ("11 canaux", "1/2 3 4 5 6 7 8 9 10 11"))


@chart(
    "eighth-b-herse",
    "a sheet for each mode, min and max columns, the mode's name above the head",
    "xlsx",
    "fr",
    "Cintre et Cour",
    "Herse Cyclo 5",
)
def herse(seed: int) -> Made:
    modes: list[M] = []
    sheets: list[tuple[str, list[list[v.Item]]]] = []
    for name, plan in HERSE_PLANS:
        title = f"Mode {name}"
        modes.append(k.mode(k.seat(HERSE, plan), title, name))
        rows: list[list[v.Item]] = [[title], ["N° canal", "Paramètre", "Min", "Max", "Action"]]
        rows += s.body(modes[-1].params, "slot name from to text", fine="Réglage fin")
        sheets.append((name, rows))
    return k.made("Cintre et Cour", "Herse Cyclo 5", modes, s.book(sheets))


CORVID = s.row_of(
    x.params("""
pan: Pan + Pan Fine = Movement of the yoke
tilt: Tilt + Tilt Fine = Movement of the head
dimmer: Dimmer + Dimmer Fine = Dark to full
shutter strobe: Shutter
  0-19 closed: Shutter closed | 20-49 open: Shutter open | 50-200 flash: Strobe slow to fast
  201-210 open: Shutter open | 211-255 random: Random strobe slow to fast
color-wheel: Color Wheel
  0-9 white: Open white | 10-19: Red | 20-29: Blue | 30-39: Green | 40-49: Orange | 50-59: Magenta
  60-69: CTO | 70-79: Pink | 80-167 rainbow: Clockwise rotation fast to slow | 168-175 stop: Stop
  176-255 rainbow: Counterclockwise rotation slow to fast
gobo-wheel: Static Gobos
  0-9 open: Open | 10-19: Gobo 1 | 20-29: Gobo 2 | 30-39: Gobo 3 | 40-49: Gobo 4
  50-89 shake: Gobo 1 shake slow to fast | 90-129 shake: Gobo 2 shake slow to fast
  130-169 shake: Gobo 3 shake slow to fast | 170-209 shake: Gobo 4 shake slow to fast
  210-255 spin gobo-wheel: Wheel rotation slow to fast
rotating-gobo-wheel gobo-wheel: Rotating Gobos
  0-9 open: Open | 10-69: Rotating gobo 1 | 70-129: Rotating gobo 2 | 130-189: Rotating gobo 3
  190-255: Rotating gobo 4
gobo-index-rotation gobo-rotation gobo-index: Gobo Rotation
  0-127 index gobo: Gobo indexing | 128-187 spin gobo: Clockwise rotation fast to slow | 188-195 stop: Stop
  196-255 spin gobo: Counterclockwise rotation slow to fast
prism: Prism
  0-19 out: Out | 20-255: 3-facet prism in
focus: Focus = Near to far
zoom: Zoom = Narrow to wide
movement-speed: Pan/Tilt Speed = Fast to slow
control reset: Control
  0-79 nothing: No function | 80-99 reset: Reset pan and tilt | 100-119 reset: Reset all
  120-255 nothing: No function
""")
)


@chart(
    "eighth-b-corvid",
    "a row with number and name above the values of each slot",
    "xlsx",
    "en",
    "Hathersage Moving Heads",
    "Corvid Spot 250",
)
def corvid(seed: int) -> Made:
    rows: list[list[v.Item]] = [["Channel", "Value", "Function"]]
    for line in k.lines(CORVID):
        rows.append([line.slot, "", line.name])
        rows += [["", k.zeros(lo, hi), text or "Fine movement"] for lo, hi, text in line.rows]
    mode = k.mode(CORVID)
    return k.made("Hathersage Moving Heads", "Corvid Spot 250", [mode], s.book([("DMX chart", rows)]))


NIEBLA = s.row_of(
    x.params("""
haze-output fog-output fluid-pump: Salida de niebla
  0-9 off: Apagada | 10-255: Caudal de mínimo a máximo
fan: Ventilador = Velocidad de mínima a máxima
control other power display: Bloqueo de teclado
  0-127 maybe-set lock: Teclado libre | 128-255 maybe-set lock: Teclado bloqueado
""")
)


@chart(
    "eighth-b-niebla",
    "three slots, title and version above, the word a between values",
    "ods",
    "es",
    "Almazara Efectos",
    "Niebla 700",
)
def niebla(seed: int) -> Made:
    rows: list[list[Cell]] = [["Canal", "Función", "Valor DMX", "Descripción"]]
    rows += s.body(NIEBLA, "slot name value text", e.between(" a "))
    sheet: list[Element] = [Heading("Niebla 700: canales DMX"), Para("Versión de programa 3.1"), table(rows)]
    return k.made("Almazara Efectos", "Niebla 700", [k.mode(NIEBLA)], ods([("Canales", sheet)]))


FILAMENT = s.row_of(
    x.params("""
control laser-output output-mode other macro: Mode
  0-49 off: Laser off | 50-99 sound: Sound mode | 100-149 perhaps: Auto mode | 150-255 out: DMX mode
laser-pattern: Pattern = 32 patterns, 8 values each
image-position-x other pan mirror-position: X position = Left to right
image-position-y other tilt mirror-position: Y position = Bottom to top
image-scale other effect-size: Pattern size = Small to large
image-rotation other gobo-rotation: Pattern rotation
  0-127 index image: Angle setting | 128-255 spin image: Rotation speed slow to fast
color-preset color-macro color-wheel: Color
  0-63 white: Original color | 64-127: Red | 128-191: Green | 192-255: Yellow
""")
)


@chart(
    "eighth-b-filament",
    "every row with its slot, values with blanks around the hyphen, a safety line below",
    "ods",
    "en",
    "Oxlode Club Effects",
    "Filament RG",
)
def filament(seed: int) -> Made:
    rows: list[list[Cell]] = [["Ch", "Value", "Function", "Description"]]
    rows += s.body(FILAMENT, "slot value name text", e.between(" - ", 3), every=True)
    note = Para("Keep the beam above head height. Use a remote interlock.")
    return k.made(
        "Oxlode Club Effects", "Filament RG", [k.mode(FILAMENT)], ods([("DMX", [table(rows), note])])
    )


PENDEL = x.params("""
dimmer intensity-master: Helligkeit direkt = 0–100 % [0 100 %]
dimmer: Helligkeit indirekt = 0–100 % [0 100 %]
color-temperature: Farbtemperatur = 2700–6500 K [2700 6500 K]
dimmer-fade-time smoothing: Überblendung
  0-63 maybe-set smoothing: keine | 64-127 maybe-set smoothing: kurz | 128-191 maybe-set smoothing: mittel
  192-255 maybe-set smoothing: lang
""")
PENDEL_PLANS = (("Weiß fest", "1 - - -"), ("Weiß 3", "1 2 3 -"), ("Weiß 4", "1 2 3 4"))


@chart(
    "eighth-b-pendel",
    "slots of three modes between name and value, merged over their heading",
    "ods",
    "de",
    "Lindenhof Leuchtenbau",
    "Pendelring 90",
)
def pendel(seed: int) -> Made:
    names = [name for name, _ in PENDEL_PLANS]
    rows: list[list[Any]] = [
        [C("Funktion", rows=2), C("Kanal", cols=3), None, None, C("Wert", rows=2), C("Bedeutung", rows=2)],
        [None, *names, None, None],
    ]
    rows += e.abreast(
        PENDEL,
        [plan for _, plan in PENDEL_PLANS],
        lambda slots, name, value, text: [name, *slots, value, text],
        v.en,
        "–",
    )
    modes = [k.mode(k.seat(PENDEL, plan), name) for name, plan in PENDEL_PLANS]
    return k.made("Lindenhof Leuchtenbau", "Pendelring 90", modes, ods([("Belegung", [table(rows)])]))
